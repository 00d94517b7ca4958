#pragma once

#include <cstddef>
#include <span>
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

/// The occupants of every port. Cost linear in ports and conductors.
class Occupancy {
public:
    explicit Occupancy(const geometry::BuiltLayout& built);

    /// In order of the layout; in one conductor from, to, passes.
    std::span<const Occupant> of(std::size_t block, std::size_t port) const {
        const std::size_t slot = firstSlots_[block] + port;
        return {occupants_.data() + starts_[slot], starts_[slot + 1] - starts_[slot]};
    }

private:
    std::vector<std::size_t> firstSlots_;  ///< [block] -> slot of its first port
    std::vector<std::size_t> starts_;      ///< [slot] -> its first occupant; one more at the end
    std::vector<Occupant> occupants_;
};

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
