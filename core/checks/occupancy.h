#pragma once

#include <cstddef>
#include <vector>

#include "geometry/built_layout.h"

/// Which conductors sit in which port.
namespace gw::checks {

/// One conductor in a port: by one of its ends, or passing through uncut.
struct Occupant {
    enum class How { from, to, pass };
    std::size_t conductor = 0;
    How how = How::from;
    std::size_t pass = 0;  ///< index into the conductor's passes
};

/// [block][port] -> occupants, in order of the layout; in one conductor from, to, passes.
using Occupancy = std::vector<std::vector<std::vector<Occupant>>>;
Occupancy occupancyOf(const geometry::BuiltLayout& built);

/// The end meant; nullptr for a pass.
const geometry::BuiltEnd* endOf(const geometry::BuiltLayout& built, const Occupant& occupant);
/// The pass meant; nullptr for an end.
const geometry::BuiltPass* passOf(const geometry::BuiltLayout& built, const Occupant& occupant);

/// Whether an end in a port enters by the bore's far mouth. REQUIRES an end in a port.
bool entersFar(const geometry::BuiltLayout& built, const geometry::BuiltEnd& end);

/// Whether the layout says how far this end of that conductor is pushed in. REQUIRES an end in a
/// port.
bool insertionStated(const geometry::BuiltLayout& built,
                     std::size_t conductor,
                     const geometry::BuiltEnd& end);
/// Whether it is known: stated, or else to the stop, where the bore has one (a bore open at both
/// mouths has none).
bool insertionKnown(const geometry::BuiltLayout& built,
                    std::size_t conductor,
                    const geometry::BuiltEnd& end);

/// Bore depth of a port, inches.
double boreDepth(const geometry::BuiltLayout& built, std::size_t block, std::size_t port);

/// Centres of a port's screws along the bore from the near mouth, inches, ascending.
std::vector<double> screwsAlongBore(const geometry::BuiltLayout& built,
                                    std::size_t block,
                                    std::size_t port);

}  // namespace gw::checks
