#pragma once

#include <array>
#include <cstddef>

#include "base/vec3.h"
#include "geometry/path.h"

/// Where a piece turns as seen along a direction: what reach and fill are built on.
namespace gw::geometry {

/// n·P along an arc, n any direction: middle + swing * cos(angle - phase), swing >= 0.
struct Wave {
    double middle = 0.0;
    double swing = 0.0;
    double phase = 0.0;  ///< radians from the arc's start, -pi to pi
};
Wave waveOf(const Piece& arc, const Vec3& direction);

/// Angles strictly inside (first, last) radians at which n·P turns, in order. A span below one
/// whole turn holds at most two; more are not looked for.
class Turns {
public:
    Turns(const Wave& wave, double first, double last);
    const double* begin() const { return angles_.data(); }
    const double* end() const { return angles_.data() + count_; }

private:
    std::array<double, 2> angles_{};
    std::size_t count_ = 0;
};

/// How far a tube around a part of one piece reaches both ways along a direction, and where on the
/// piece (arc length from its start). Flat ends. Exact, also for an arc tighter than the tube.
struct Extent {
    double least = 0.0;
    double leastAt = 0.0;
    double greatest = 0.0;
    double greatestAt = 0.0;
};
Extent extentAlong(
    const Piece& piece, double first, double last, double radius, const Vec3& direction);

/// How far a disc square to `tangent` (unit) reaches from its centre along `direction` (unit).
double discReach(double radius, const Vec3& direction, const Vec3& tangent);

}  // namespace gw::geometry
