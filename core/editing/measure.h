#pragma once

#include <string>
#include <variant>

#include "editing/item.h"
#include "geometry/built_layout.h"

/// Measuring between two things.
namespace gw::editing {

/// A thing, or a bare point.
using Picked = std::variant<Item, Vec3>;

struct Measured {
    units::Inches gap;  ///< surface to surface; negative where they overlap
    Vec3 from;          ///< on the first thing's surface (or the point)
    Vec3 to;
    Vec3 between;          ///< to - from
    std::string sentence;  ///< "conductor S1-A to block A: 1 3/8 in (x 0 in, y 1 3/8 in, z 0 in)"
};

/// Entries as their holes, conductors as tubes, blocks as boxes. Error missing: not there, or a
/// circuit.
Result<Measured> measure(const geometry::BuiltLayout& built, const Picked& a, const Picked& b);

}  // namespace gw::editing
