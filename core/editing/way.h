#pragma once

#include <optional>
#include <vector>

#include "geometry/built_layout.h"

/// A conductor's path as points that can be pulled about. Inches.
namespace gw::editing {

/// One end of a way.
struct WayEnd {
    bool held = false;      ///< in a port or raceway: it stays, and so does the axis of its leg
    Vec3 axis;              ///< unit, into the gutter; of a held end
    double straight = 0.0;  ///< inches from the tip on that must stay straight
};

struct Way {
    std::vector<Vec3> points;   ///< tip, corners, tip; at least 2
    std::vector<double> radii;  ///< of the corners: two less than points
    WayEnd first;
    WayEnd last;
    double radius = 0.0;  ///< for bends that are added

    std::size_t legs() const { return points.size() - 1; }
    Vec3 leg(std::size_t i) const { return points[i + 1] - points[i]; }
};

/// Straight conductor asked for outside a port, in diameters. *Common practice, no source.*
inline constexpr double kLeadInDiameters = 1.0;

Way wayOf(const geometry::BuiltLayout& built, std::size_t conductor);
Way reversed(Way way);

/// Corners, and the tips of capped ends, as the way has them. Coordinates that the way moved are
/// rounded to 1e-9 in.
void lay(layout::Conductor& conductor, const Way& way);

/// How far a way is from one that can be bent: 0 where every bend fits, no leg turns back and the
/// ends leave straight; else inches that are missing, and more for what cannot be bent at all.
double shortfall(const Way& way);
bool isSound(const Way& way);

/// Without the corners that do not turn.
Way withoutIdleCorners(const Way& way);

// ---- pulling --------------------------------------------------------------------------------

/// The points first … last moved by `by`; the others follow: every leg keeps the axes along which
/// it runs and takes up what lies along them, so that no more moves than must. What would reach a
/// held end is met by an offset, or dropped from the move.
struct Pull {
    std::size_t first = 0;
    std::size_t last = 0;
    Vec3 by;
    bool mayOffset = true;  ///< false: what would reach a held end is dropped
};
Way pulled(const Way& way, const Pull& pull);

/// Its first end moved by `by`, the rest following.
Way withFirstMoved(const Way& way, const Vec3& by);
Way withLastMoved(const Way& way, const Vec3& by);
Way shifted(Way way, const Vec3& by);

// ---- offsets --------------------------------------------------------------------------------

/// Two equal bends that carry a straight run sideways.
struct Offset {
    double turn = 0.0;  ///< radians of either bend
    double run = 0.0;   ///< inches along the leg from corner to corner
    double room = 0.0;  ///< inches along the leg with the tangents of both bends
};
/// The gentlest of at most `steepest` radians that `radius` allows. aside: inches, > 0.
Offset offsetFor(double aside, double radius, double steepest);

/// inches along leg i that bends at its ends and straight ends leave free: from, to.
struct Stretch {
    double from = 0.0;
    double to = 0.0;
    double length() const { return to - from; }
};
Stretch freeStretch(const Way& way, std::size_t leg);

/// An offset with its middle at `at` inches along the leg (moved into the free stretch where it
/// fits); what is behind it moves by `by`, which is square to the leg.
Way withOffset(const Way& way, std::size_t leg, double at, const Vec3& by);

}  // namespace gw::editing
