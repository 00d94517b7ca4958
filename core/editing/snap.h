#pragma once

#include <optional>
#include <string>

#include "editing/item.h"
#include "geometry/built_layout.h"
#include "geometry/section.h"

/// Places a pointer likes to go to.
namespace gw::editing {

struct SnapOptions {
    bool held = false;    ///< off altogether: the point stays where it is
    double reach = 0.25;  ///< inches of the view; grows as the view shrinks
    double grid = 0.25;   ///< inches; 0: no grid
    double radius = 0.0;  ///< of the conductor being drawn: it touches others surface to surface
    Items leaveOut;       ///< what is being moved does not attract
    std::optional<Vec3> from;     ///< where the gesture started: lines through it attract
    std::optional<Vec3> extents;  ///< of a body being moved by its least corner: its faces and
                                  ///< middles attract too
};

/// Across and up are snapped apart, each to the nearest line within reach; of lines equally near
/// (to 1/64 in) the first of: port axis, entry axis, touching a conductor, edge and middle of a
/// block, the start of the gesture, the middle of the gutter, its walls, the grid.
struct Snapped {
    geometry::Point2 at;   ///< in the view, as geometry::project
    std::string across;    ///< "on the axis of port 2 of block A"; empty: free
    std::string up;        ///< the same for the other direction
    std::string sentence;  ///< both, for the status bar; empty when nothing was snapped to
    std::optional<double> lineAcross;  ///< the view coordinate snapped to, to be drawn
    std::optional<double> lineUp;
};

Snapped snap(const geometry::BuiltLayout& built,
             geometry::View view,
             geometry::Point2 at,
             const SnapOptions& options = {});

/// The least steps of keys, inches: 1/16, 1/4, 1.
inline constexpr double kNudgeFine = 1.0 / 16.0;
inline constexpr double kNudge = 1.0 / 4.0;
inline constexpr double kNudgeCoarse = 1.0;

}  // namespace gw::editing
