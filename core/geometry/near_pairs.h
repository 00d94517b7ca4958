#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include "geometry/solids.h"

/// Which of many tubes and boxes come near each other: a uniform grid, then exact distances.
namespace gw::geometry {

/// One thing in the scene: a tube (path set) or a box (path null).
struct SceneItem {
    const Path* path = nullptr;
    double radius = 0.0;
    double from = 0.0;  ///< arc length of the part that counts
    double to = 0.0;
    Box box;  ///< when path is null
    /// Items with equal, non-zero groups are never compared: parts of one conductor, or a
    /// conductor's end and the block whose port holds it.
    std::uint32_t group = 0;
};

struct NearPair {
    std::uint32_t a = 0;  ///< index into the items, a < b
    std::uint32_t b = 0;
    Closest closest;
};

/// Whether a pair of items, a < b, is to be compared. Must not change between calls.
using Counts = std::function<bool(std::uint32_t a, std::uint32_t b)>;

/// Every pair that counts (all, where none is given) with a gap of at most `within` inches (>= 0),
/// in order of (a, b). Box–box pairs are included. Cost near-linear in the items at constant
/// density; `counts` is asked only of pairs that are near or nearly so.
std::vector<NearPair> nearPairs(std::span<const SceneItem> items,
                                double within,
                                const Counts& counts = {});

/// Of these pairs those with an item that is asked for, one flag an item: what is near a few things
/// that moved. The same to the last bit. Cost: the parts asked for times all parts.
std::vector<NearPair> nearPairsOf(std::span<const SceneItem> items,
                                  std::span<const bool> asked,
                                  double within,
                                  const Counts& counts = {});

}  // namespace gw::geometry
