#include "takeoff/bend_marks.h"

#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "checks/bending_force.h"
#include "takeoff/words.h"

namespace gw::takeoff {

using geometry::BuiltLayout;
using units::Inches;
using units::Radians;

std::string directionText(const Vec3& direction) {
    struct Axis {
        double along;
        const char* ahead;
        const char* back;
    };
    const std::array<Axis, 3> axes = {{{direction.x, "right", "left"},
                                       {direction.y, "up", "down"},
                                       {direction.z, "front", "back"}}};
    std::string text;
    int parts = 0;
    for (const auto& axis : axes) {
        if (std::abs(axis.along) > kLargestKink) {
            text += (parts++ == 0 ? "" : " and ") +
                    std::string(axis.along > 0 ? axis.ahead : axis.back);
        }
    }
    return parts > 1 ? "slanting " + text : text;
}

namespace {

BendMark markOf(const BuiltLayout& built, std::size_t index, std::size_t bend, int number) {
    const auto& path = built.conductors[index].built.path;
    const auto& one = built.conductors[index].built.bends[bend];
    const auto& said = built.layout.conductors[index];
    const double arc = one.radius * one.turn;
    BendMark mark;
    mark.conductor = index;
    mark.number = number;
    mark.start = Inches::of(one.start);
    mark.end = Inches::of(one.start + arc);
    mark.fromSecondEnd = path.length() - mark.start;
    mark.angle = Radians::of(one.turn);
    mark.radius = Inches::of(one.radius);
    mark.plane = "from " + directionText(path.tangentAt(one.start)) + " to " +
                 directionText(path.tangentAt(one.start + arc));
    mark.springsOpen = Radians::of(
        checks::bendingForce(said.size, said.metal, built.layout.edition).opening * arc);
    return mark;
}

}  // namespace

std::vector<BendMark> bendMarks(const BuiltLayout& built) {
    std::vector<BendMark> marks;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& bends = built.conductors[i].built.bends;
        int number = 0;
        for (std::size_t bend = 0; bend < bends.size(); ++bend) {
            if (bends[bend].radius > 0.0 && bends[bend].turn > kSameDirection) {
                marks.push_back(markOf(built, i, bend, ++number));
            }
        }
    }
    return marks;
}

Table bendMarkTable(const BuiltLayout& built) {
    Table table{"bend-marks",
                "Bend marks",
                "Along the conductor from its first end: from the tip, or from where it passes the "
                "wall when it comes out of a raceway. Directions as seen from the cover side.",
                {{"Tag"},
                 {"First end"},
                 {"Bend", Kind::count},
                 {"Start", Kind::length},
                 {"End", Kind::length},
                 {"Start from the second end", Kind::length},
                 {"Angle", Kind::number, "deg"},
                 {"Radius", Kind::length},
                 {"Plane"},
                 {"Bend on, up to", Kind::number, "deg"}},
                {}};
    for (const auto& mark : bendMarks(built)) {
        const auto& conductor = built.layout.conductors[mark.conductor];
        const bool raceway = std::holds_alternative<layout::AtEntry>(conductor.from);
        table.rows.push_back({tagOf(conductor),
                              std::string(raceway ? "at the wall" : "tip"),
                              static_cast<double>(mark.number),
                              mark.start.in(),
                              mark.end.in(),
                              mark.fromSecondEnd.in(),
                              mark.angle.degrees(),
                              mark.radius.in(),
                              mark.plane,
                              mark.springsOpen.degrees()});
    }
    table.notes.emplace_back(
        "A bend springs open when it is let go. \"Bend on\" is an upper estimate for wires that "
        "slide on one another, of the harder metal sold; hand bending and insulation differ. Try "
        "it "
        "on an offcut.");
    return table;
}

}  // namespace gw::takeoff
