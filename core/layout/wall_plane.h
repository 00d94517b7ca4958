#pragma once

#include "layout/layout.h"

namespace gw::layout {

/// A place on a wall, or a shift along it, inches: u and v as in Entry.
struct OnWall {
    double u = 0.0;
    double v = 0.0;
};

/// What of a point or direction of the gutter lies in the plane of a wall. Of the gutter's inside:
/// the greatest u and v on it.
OnWall alongWall(Wall wall, const Vec3& at);

}  // namespace gw::layout
