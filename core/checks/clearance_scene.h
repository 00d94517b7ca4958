#pragma once

#include <cstddef>
#include <vector>

#include "checks/occupancy.h"
#include "geometry/built_layout.h"
#include "geometry/solids.h"
#include "geometry/things.h"

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

/// What is near a thing.
struct Neighbour {
    std::size_t other = 0;      ///< by its index in the layout
    geometry::Closest closest;  ///< A is the thing itself, B the other
};

struct NearThings {
    std::vector<Neighbour> conductors;  ///< each once, in order
    std::vector<Neighbour> blocks;
};

/// The nearest place of every pair within kNeighbourhood, told at both.
struct Neighbours {
    std::vector<NearThings> ofConductors;
    std::vector<NearThings> ofBlocks;
};
Neighbours neighboursOf(const geometry::BuiltLayout& built, const Occupancy& occupancy);

/// Makes the neighbours those of the built layout as it is, after some things moved. around: all
/// that may be within kNeighbourhood of where these are now, themselves among them. Gives back
/// whose neighbours are others, or elsewhere. Cost: by what is around, not by the layout.
geometry::Things updateNeighbours(Neighbours& neighbours,
                                  const geometry::BuiltLayout& built,
                                  const Occupancy& occupancy,
                                  const geometry::Things& moved,
                                  const geometry::Things& around);

}  // namespace gw::checks
