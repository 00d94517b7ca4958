#pragma once

#include <array>
#include <string>

#include "editing/hit.h"
#include "editing/snap.h"

/// Distances between places that are pointed at.
namespace gw::editing {

/// A place in the gutter, as far as a view tells: along the line of sight it is known only where
/// something is hit.
struct Picked {
    Vec3 at;
    std::array<bool, 3> known{};  ///< of x, y, z
    std::string what;             ///< "port 2 of block A", "conductor S1-A"; empty: no thing
};

/// The mouth, hole, end or centreline under a point of a view, a block's face, or the point itself,
/// snapped as `snap` does. cut: of the end view, where it is cut.
Picked pick(const geometry::BuiltLayout& built,
            geometry::View view,
            geometry::Point2 at,
            double cut,
            const SnapOptions& options);

struct Measured {
    Vec3 by;                      ///< from the first to the second; 0 where it is not known
    std::array<bool, 3> known{};  ///< of both
    units::Inches distance;       ///< of what is known
    bool whole() const { return known[0] && known[1] && known[2]; }
};
Measured measured(const Picked& from, const Picked& to);

/// "12 1/2 in: 10 in along, 7 1/2 in up, depth not known". To 1/64 in or 0.1 mm.
std::string measuredText(const Measured& measured, units::LengthUnit unit);

}  // namespace gw::editing
