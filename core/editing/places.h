#pragma once

#include <cstddef>

#include "geometry/built_layout.h"
#include "geometry/section.h"

/// Where on a path something is, and how things look in a view: what hits, snapping and measuring
/// share.
namespace gw::editing {

/// Leg or corner of a conductor at arc length s. A corner speaks for its bend and for `around`
/// inches either side of its middle.
struct PathPlace {
    bool bend = false;
    std::size_t index = 0;
};
PathPlace placeAt(const geometry::BuiltPath& path, double s, double around);

/// Where a path comes nearest to a point: in space, or as seen in a view.
struct Nearest {
    double s = 0.0;         ///< arc length
    double distance = 0.0;  ///< inches
    Vec3 at;
};
Nearest nearestInSpace(const geometry::Path& path, const Vec3& point);
/// Of places within `alike` inches of the point as seen, one that is well in front of the others
/// (more than twice that); else the nearest.
Nearest nearestInView(const geometry::Path& path,
                      geometry::View view,
                      geometry::Point2 point,
                      double alike);

/// An upright rectangle of a view.
struct ViewBox {
    geometry::Point2 least;
    geometry::Point2 greatest;
    double distanceTo(geometry::Point2 point) const;  ///< 0 inside
    bool holds(const ViewBox& other) const;           ///< to kLimitSlack
};
ViewBox viewBox(geometry::Point2 a, geometry::Point2 b);
ViewBox viewBox(geometry::View view, const geometry::Box& box);

double distance(geometry::Point2 a, geometry::Point2 b);
/// From a point to a segment.
double distance(geometry::Point2 point, geometry::Point2 a, geometry::Point2 b);

/// Which of x, y, z a view looks along: 0, 1 or 2.
int lookedAlong(geometry::View view);

}  // namespace gw::editing
