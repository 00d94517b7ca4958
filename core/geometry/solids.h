#pragma once

#include <array>

#include "base/vec3.h"
#include "geometry/path.h"
#include "units/length.h"

/// Tubes and boxes, and how near they come to each other. Inches, gutter coordinates.
namespace gw::geometry {

struct Tube {
    const Path* path = nullptr;  ///< a loan for the call
    double radius = 0.0;         ///< > 0
    double from = 0.0;           ///< arc length: only this part of the path counts
    double to = 0.0;
};

/// A box in any attitude.
struct OrientedBox {
    Vec3 centre;
    std::array<Vec3, 3> axes{Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}};  ///< orthonormal
    Vec3 half;                                                              ///< half extents, > 0
};

/// An axis-aligned box, least and greatest corner.
struct Box {
    Vec3 least;
    Vec3 greatest;
    Vec3 extents() const { return greatest - least; }
    Vec3 centre() const { return (least + greatest) * 0.5; }
};
OrientedBox toOriented(const Box& box);

/// The place where two things come nearest.
struct Closest {
    units::Inches gap;  ///< surface to surface; negative: they overlap by that much
    Vec3 onA;           ///< on A's centreline, or on the box
    Vec3 onB;
    double sA = 0.0;  ///< arc length on A's path; 0 for a box
    double sB = 0.0;
};

/// Tubes count as swept balls (their ends are round). Exact to kClearanceError; a leg with a leg in
/// closed form, arcs by bracketed minimisation.
Closest clearance(const Tube& a, const Tube& b);
/// onA on the tube's centreline, onB on the box. Inside the box the gap is negative: minus the
/// radius minus the depth below the nearest face.
Closest clearance(const Tube& a, const OrientedBox& b);
/// Largest gap along an axis, negative when they overlap.
units::Inches clearance(const Box& a, const Box& b);

/// How far a tube reaches in a direction: the greatest value of direction·point over its surface,
/// counting the tube as discs square to the centreline (flat ends), and where. Closed form.
/// direction: unit.
struct Reach {
    double value = 0.0;
    double s = 0.0;
    Vec3 at;  ///< on the centreline
};
Reach reach(const Tube& tube, const Vec3& direction);

/// Everything the tube covers, from reach() in the six directions.
Box bounds(const Tube& tube);

}  // namespace gw::geometry
