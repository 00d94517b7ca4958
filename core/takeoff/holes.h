#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/built_layout.h"
#include "takeoff/table.h"

/// What is cut and drilled in the gutter's walls.
namespace gw::takeoff {

/// One hole. u, v as in layout::Entry: top and bottom x and z; left and right y and z; back x and
/// y.
struct Hole {
    std::string what;                       ///< "entry Service", "block A"
    std::string size;                       ///< "knockout for trade size 2", "mounting hole"
    std::optional<units::Inches> diameter;  ///< nominal; empty: not stated
    double u = 0.0;                         ///< inches
    double v = 0.0;
};

struct WallHoles {
    layout::Wall wall = layout::Wall::top;
    double width = 0.0;   ///< inches along u
    double height = 0.0;  ///< inches along v
    std::vector<Hole> holes;
};

/// The walls that have holes, in the order left, right, top, bottom, back: knockouts of the
/// entries, then the mounting holes of the blocks that are bolted down on that wall.
/// Knockouts: nominal sizes of the table of knockouts (standards::knockout).
std::vector<WallHoles> wallHoles(const geometry::BuiltLayout& built);

/// What has no hole, and why: a block that is bolted down but lies off the wall, one of which it is
/// not stated, a part without mounting holes.
std::vector<std::string> holeNotes(const geometry::BuiltLayout& built);

Table holeTable(const geometry::BuiltLayout& built);

}  // namespace gw::takeoff
