#pragma once

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "geometry/built_layout.h"
#include "geometry/near_pairs.h"

/// Who comes near whom in the gutter, less what belongs together: a conductor and the block that
/// holds it near the port, conductors in one port near it, and conductors in the bores of one
/// block, which the block keeps apart.
namespace gw::checks {

/// inches. Neighbours further away than this are not looked for.
inline constexpr double kNeighbourhood = 1.0;

/// Beyond the mouth of a port that holds it, a conductor counts as inside the block for this many
/// of its radii. Geometry measures swept balls: the end of what remains then stays half a radius
/// clear.
inline constexpr double kHeldRadii = 1.5;

using Pair = std::pair<std::size_t, std::size_t>;

struct Neighbour {
    Pair pair;
    geometry::Closest closest;  ///< A is the first of the pair
};

/// The nearest place of every pair within kNeighbourhood, by their indices in the layout, in order.
struct Neighbours {
    std::vector<Neighbour> conductors;           ///< first < second
    std::vector<Neighbour> conductorsAndBlocks;  ///< conductor, block
    std::vector<Neighbour> blocks;               ///< first < second
};
Neighbours neighboursOf(const geometry::BuiltLayout& built);

}  // namespace gw::checks
