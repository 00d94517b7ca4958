#pragma once

#include <functional>
#include <vector>

#include "routing/ways.h"

/// Who takes which way: conductors that want the same room settle it by rising prices.
namespace gw::routing {

struct Item {
    Span span;
    Ways ways;
};

struct Settled {
    std::vector<std::size_t> chosen;  ///< by item, index of its way; kNone: none
    std::vector<std::size_t> conflictsByRound;
    bool stopped = false;
};
inline constexpr std::size_t kNone = static_cast<std::size_t>(-1);

/// Told the round and the conflicts left; false stops.
using OnRound = std::function<bool(std::size_t round, std::size_t conflicts)>;

/// Chosen ways are free of conflicts among themselves: where not all can be, items that clash with
/// the most go without. Items without ways have none. Deterministic in the order of items, which
/// may get more ways.
Settled settle(std::vector<Item>& items,
               const Surroundings& around,
               std::size_t mostRounds,
               const OnRound& onRound);

}  // namespace gw::routing
