#include "routing/reasons.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "checks/support.h"

namespace gw::routing {
namespace {

using checks::inText;
using geometry::BuiltLayout;

Unresolved reason(const BuiltLayout& built, const Span& span, Unresolved::Why why) {
    Unresolved unresolved;
    unresolved.conductor = built.layout.conductors[span.conductor].id;
    unresolved.why = why;
    return unresolved;
}

void setNumbers(Unresolved& unresolved, const Vec3& place, double needed, double free) {
    unresolved.place = place;
    unresolved.needed = needed;
    unresolved.free = free;
}

std::string terminalName(const BuiltLayout& built, const Terminal& terminal) {
    if (terminal.entry) {
        return checks::entryName(built, *terminal.entry);
    }
    return terminal.block ? checks::portName(built, *terminal.block, *terminal.port)
                          : "its capped end";
}

std::string placeText(const Vec3& place) {
    return "x " + inText(place.x) + ", y " + inText(place.y) + ", z " + inText(place.z);
}

// ---- what is proven -------------------------------------------------------------------------

std::optional<Unresolved> thinnerThanConductor(const BuiltLayout& built, const Span& span) {
    const Vec3& inside = built.gutter().inside;
    const double needed = 2.0 * span.radius;
    const bool deep = inside.z < inside.y;
    const double free = std::min(inside.y, inside.z);
    if (atLeast(free, needed)) {
        return std::nullopt;
    }
    Unresolved found = reason(built, span, Unresolved::Why::provenImpossible);
    setNumbers(found, span.starts.front().mouth, needed, free);
    found.sentence = "the gutter is " + inText(free) + (deep ? " deep" : " high") +
                     ", and the conductor is " + inText(needed) + " thick";
    return found;
}

/// inches along a terminal's axis to the wall or cover before it.
double toWallBefore(const Vec3& inside, const Terminal& terminal) {
    const auto room = [](double at, double axis, double greatest) {
        return axis > 0.5 ? greatest - at : at;
    };
    const Vec3& axis = terminal.axis;
    if (std::abs(axis.x) > 0.5) {
        return room(terminal.mouth.x, axis.x, inside.x);
    }
    return std::abs(axis.y) > 0.5 ? room(terminal.mouth.y, axis.y, inside.y)
                                  : room(terminal.mouth.z, axis.z, inside.z);
}

/// It leaves along its axis and has to arrive across or against it: then it turns by a right angle
/// somewhere, has gone on by its lead-in and a bend's radius till there, and is as thick as it is.
std::optional<Unresolved> facesWall(const BuiltLayout& built,
                                    const Span& span,
                                    const Terminal& terminal,
                                    const Terminal& other) {
    const bool mustTurn = other.held() && dot(terminal.axis, -other.axis) < 1e-6;
    const double bends = mustTurn ? span.bend + span.radius : 0.0;
    const double needed = terminal.lead + bends;
    const double free = toWallBefore(built.gutter().inside, terminal);
    if (atLeast(free, needed)) {
        return std::nullopt;
    }
    Unresolved found = reason(built, span, Unresolved::Why::provenImpossible);
    setNumbers(found, terminal.mouth, needed, free);
    const std::string name = terminalName(built, terminal);
    found.sentence = mustTurn ? "no room to turn before " + name + ": needs " + inText(needed) +
                                    " to the wall " + "(lead-in " + inText(terminal.lead) +
                                    ", bend radius " + inText(span.bend) + ", half its thickness " +
                                    inText(span.radius) + "), " + inText(free) + " free"
                              : "the straight lead-in before " + name + " alone needs " +
                                    inText(needed) + ", " + inText(free) + " free";
    return found;
}

/// The lead-in's straight leg inside a body, with no other way in.
std::optional<Unresolved> leadInBlocked(const BuiltLayout& built,
                                        const Span& span,
                                        const Terminal& terminal) {
    const double held = 1.6 * span.radius;
    if (terminal.lead <= held) {
        return std::nullopt;
    }
    const std::vector<geometry::CornerInput> none;
    const auto leg =
        geometry::buildPath(terminal.mouth, none, terminal.mouth + terminal.axis * terminal.lead);
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        const double from = terminal.block == i ? held : 0.0;
        const auto near =
            geometry::clearance(geometry::Tube{&leg.path, span.radius, from, terminal.lead},
                                geometry::toOriented(built.blocks[i].body));
        // The end counts as round: only what reaches beyond it is in the way for sure.
        if (near.gap.in() < -span.radius) {
            Unresolved found = reason(built, span, Unresolved::Why::provenImpossible);
            setNumbers(found, near.onA, terminal.lead, near.sA);
            found.sentence = "the straight lead-in before " + terminalName(built, terminal) +
                             " needs " + inText(terminal.lead) + " and meets " +
                             checks::blockName(built, i) + " after " + inText(near.sA);
            return found;
        }
    }
    return std::nullopt;
}

std::optional<Unresolved> atTerminal(const BuiltLayout& built,
                                     const Span& span,
                                     const std::vector<Terminal>& terminals,
                                     const std::vector<Terminal>& others) {
    if (terminals.size() != 1 || others.size() != 1 || !terminals.front().held()) {
        return std::nullopt;
    }
    if (auto found = facesWall(built, span, terminals.front(), others.front())) {
        return found;
    }
    return leadInBlocked(built, span, terminals.front());
}

// ---- what was not found ---------------------------------------------------------------------

struct Gap {
    double room = 0.0;
    const char* where = "";
};

/// The widest room beside a body, from wall to body.
Gap widestBeside(const Vec3& inside, const geometry::Box& body) {
    const std::array<Gap, 4> gaps = {{{inside.z - body.greatest.z, "in front of"},
                                      {body.least.z, "behind"},
                                      {inside.y - body.greatest.y, "above"},
                                      {body.least.y, "below"}}};
    return *std::max_element(
        gaps.begin(), gaps.end(), [](const Gap& a, const Gap& b) { return a.room < b.room; });
}

std::string spanText(const BuiltLayout& built, const Span& span) {
    return terminalName(built, span.starts.front()) + " to " +
           terminalName(built, span.ends.front());
}

void blockedByBody(Unresolved& found, const BuiltLayout& built, const Item& item) {
    const std::size_t index = item.ways.inTheWay.index;
    const auto& body = built.blocks[index].body;
    const Gap gap = widestBeside(built.gutter().inside, body);
    const double thick = 2.0 * item.span.radius;
    const std::string name = checks::blockName(built, index);
    const std::string between =
        " between x " + inText(body.least.x) + " and " + inText(body.greatest.x);
    if (!atLeast(gap.room, thick)) {
        setNumbers(found, item.ways.inTheWay.overlap.place, thick, std::max(0.0, gap.room));
        found.sentence = "no lane left " + std::string(gap.where) + " " + name + between +
                         ": needs " + inText(thick) + ", " + inText(std::max(0.0, gap.room)) +
                         " free";
        return;
    }
    const double depth = item.ways.inTheWay.overlap.depth;
    setNumbers(found, item.ways.inTheWay.overlap.place, thick, std::max(0.0, thick - depth));
    found.sentence = "no way found past " + name + between + " from " + spanText(built, item.span) +
                     ": the nearest to one overlaps it by " + inText(depth) + " (bend radius " +
                     inText(item.span.bend) + ")";
}

void blockedByConductor(Unresolved& found, const BuiltLayout& built, const Item& item) {
    const auto& in = item.ways.inTheWay;
    const double thick = 2.0 * item.span.radius;
    setNumbers(found, in.overlap.place, thick, std::max(0.0, thick - in.overlap.depth));
    found.sentence = "no way found past " + checks::conductorName(built, in.index) +
                     ", which stays where it lies: overlaps it by " + inText(in.overlap.depth) +
                     " at " + placeText(in.overlap.place);
}

void blockedByWalls(Unresolved& found, const BuiltLayout& built, const Item& item) {
    const Vec3& inside = built.gutter().inside;
    const double needed = item.span.bend + item.span.radius;
    const double free = std::min(inside.y, inside.z);
    setNumbers(found, item.span.starts.front().mouth, needed, free);
    found.sentence =
        "no way found from " + spanText(built, item.span) + ": a bend of radius " +
        inText(item.span.bend) + " with half the thickness needs " + inText(needed) +
        " across, the gutter is " + inText(inside.y) + " high and " + inText(inside.z) +
        " deep, and the ends are " +
        inText(std::abs(item.span.starts.front().mouth.x - item.span.ends.front().mouth.x)) +
        " apart along it";
}

}  // namespace

std::optional<Unresolved> provenImpossible(const BuiltLayout& built, const Span& span) {
    if (auto found = thinnerThanConductor(built, span)) {
        return found;
    }
    if (auto found = atTerminal(built, span, span.starts, span.ends)) {
        return found;
    }
    return atTerminal(built, span, span.ends, span.starts);
}

Unresolved noWay(const BuiltLayout& built, const Item& item) {
    Unresolved found = reason(built, item.span, Unresolved::Why::notFound);
    switch (item.ways.inTheWay.kind) {
        case InTheWay::Kind::body:
            blockedByBody(found, built, item);
            break;
        case InTheWay::Kind::conductor:
            blockedByConductor(found, built, item);
            break;
        case InTheWay::Kind::wall:
        case InTheWay::Kind::nothing:
            blockedByWalls(found, built, item);
            break;
    }
    return found;
}

Unresolved noRoom(const BuiltLayout& built,
                  const std::vector<Item>& items,
                  const std::vector<std::size_t>& chosen,
                  std::size_t index,
                  std::size_t rounds) {
    const Item& item = items[index];
    Unresolved found = reason(built, item.span, Unresolved::Why::notFound);
    const double thick = 2.0 * item.span.radius;
    const std::string tried =
        "none of the " + checks::counted(item.ways.ways.size(), "way", "ways") + " tried from " +
        spanText(built, item.span) + " is left after " + checks::counted(rounds, "round", "rounds");
    found.sentence = tried;
    const Way& best = *item.ways.ways.front();
    for (std::size_t j = 0; j < items.size(); ++j) {
        if (chosen[j] == kNone || items[j].span.conductor == item.span.conductor) {
            continue;
        }
        const Way& other = *items[j].ways.ways[chosen[j]];
        if (const auto overlap = conflictOf(item.span, best, items[j].span, other)) {
            setNumbers(found, overlap->place, thick, std::max(0.0, thick - overlap->depth));
            found.sentence = tried + ": the shortest meets " +
                             checks::conductorName(built, items[j].span.conductor) + " at " +
                             placeText(overlap->place) + ", needs " + inText(thick) + ", " +
                             inText(*found.free) + " free";
            return found;
        }
    }
    return found;
}

}  // namespace gw::routing
