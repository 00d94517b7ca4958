#pragma once

#include <optional>
#include <string>

#include "editing/item.h"
#include "geometry/built_layout.h"
#include "geometry/section.h"

/// Places a pointer likes to go to.
namespace gw::editing {

struct SnapOptions {
    bool held = false;            ///< off altogether: the point stays where it is
    double reach = 0.25;          ///< inches of the view
    double grid = 0.25;           ///< inches; 0: no grid
    Items leaveOut;               ///< what is being moved does not attract
    std::optional<Vec3> from;     ///< where the gesture started: lines through it attract
    std::optional<Vec3> extents;  ///< of a body moved by its least corner: its faces are drawn to
                                  ///< faces, its middle to axes and middles
};

/// Across and up are snapped apart, each to the nearest line within reach; of lines equally near
/// (to 1/64 in) the first of: axis of a port, axis of an entry, face or middle of a block, the
/// start of the gesture, the middle of the gutter, its walls. Where there is none, to the grid.
struct Snapped {
    geometry::Point2 at;   ///< in the view, as geometry::project
    std::string sentence;  ///< "on the axis of port 2 of block A"; empty: the grid, or free
    std::optional<double> lineAcross;  ///< the view coordinate snapped to, to be drawn
    std::optional<double> lineUp;
};

/// front and top views; of the end view the point stays where it is.
Snapped snap(const geometry::BuiltLayout& built,
             geometry::View view,
             geometry::Point2 at,
             const SnapOptions& options = {});

/// The steps of keys, inches.
inline constexpr double kNudgeFine = 1.0 / 16.0;
inline constexpr double kNudge = 1.0 / 4.0;
inline constexpr double kNudgeCoarse = 1.0;

}  // namespace gw::editing
