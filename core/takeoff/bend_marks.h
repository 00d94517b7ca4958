#pragma once

#include <string>
#include <vector>

#include "geometry/built_layout.h"
#include "takeoff/table.h"

/// Where each bend is marked on the straight conductor.
namespace gw::takeoff {

/// Measured along the conductor from its first end: from the tip, or, where it comes out of a
/// raceway, from where it passes the wall.
struct BendMark {
    std::size_t conductor = 0;  ///< index in the layout
    int number = 1;             ///< from the first end
    units::Inches start;
    units::Inches end;
    units::Inches
        fromSecondEnd;  ///< the start, seen from the other end of the length in the gutter
    units::Radians angle;
    units::Inches radius;        ///< of the centreline
    std::string plane;           ///< "from right to up", "from right to slanting down and front"
    units::Radians springsOpen;  ///< at most, when let go: bend as much further
};

/// Conductor by conductor, bend by bend. Corners that do not turn have no mark.
/// springsOpen: elastic - perfectly plastic wires that slide on one another, harder metal
/// (checks/bending_force.h): an upper estimate, as advice. Insulation and hardening left out.
std::vector<BendMark> bendMarks(const geometry::BuiltLayout& built);

Table bendMarkTable(const geometry::BuiltLayout& built);

/// "right", "up", "slanting left and front": a direction as seen from the cover side.
std::string directionText(const Vec3& direction);

}  // namespace gw::takeoff
