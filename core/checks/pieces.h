#pragma once

#include <cstddef>
#include <vector>

#include "geometry/built_layout.h"

/// What is electrically one piece of metal: conductors and blocks joined by ends in ports and by
/// passes.
namespace gw::checks {

/// Groups of things that were joined, whichever way round.
class Groups {
public:
    explicit Groups(std::size_t things);
    void join(std::size_t a, std::size_t b);
    /// The least member of the group: the same for all its members.
    std::size_t groupOf(std::size_t thing) const;
    bool together(std::size_t a, std::size_t b) const { return groupOf(a) == groupOf(b); }

private:
    std::vector<std::size_t> parent_;
};

/// Blocks a conductor touches, each once, ascending.
std::vector<std::size_t> blocksOf(const geometry::BuiltConductor& conductor);

/// Groups of conductors by index. Those with leaveOut set join nothing.
Groups piecesOf(const geometry::BuiltLayout& built, const std::vector<bool>& leaveOut);

}  // namespace gw::checks
