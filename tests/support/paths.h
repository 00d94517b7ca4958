#pragma once

#include <vector>

#include "geometry/path.h"
#include "support/random.h"

/// Paths made by hand, independent of the program's own filleting.
namespace gw::test_support {

geometry::Piece leg(const Vec3& from, const Vec3& to);

/// start: where it begins. tangent, inward: unit, square to each other; inward points to the
/// centre.
geometry::Piece arc(
    const Vec3& start, const Vec3& tangent, const Vec3& inward, double radius, double angle);

geometry::Path pathOf(std::vector<geometry::Piece> pieces);

/// The polyline with every corner rounded to `radius`. REQUIRES that the bends fit.
geometry::Path rounded(const std::vector<Vec3>& points, double radius);

/// Legs and bends alternating, wandering through space: `bends` bends of 5 to 90 degrees, radii
/// 1.5 to 5 in. Every third one or so stays along the axes.
geometry::Path wandering(Random& random, const Vec3& start, int bends);

}  // namespace gw::test_support
