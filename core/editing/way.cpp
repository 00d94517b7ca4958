#include "editing/way.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/contract.h"
#include "base/tolerance.h"
#include "editing/conductors.h"

namespace gw::editing {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::CornerInput;
using geometry::PathFault;

/// inches. A remainder below this is none.
constexpr double kNothing = 1e-9;
/// A leg runs along an axis when so much of its direction does.
constexpr double kRuns = 1e-3;
/// radians. An offset is bent no steeper where there is room.
constexpr double kUsualOffset = std::numbers::pi / 6.0;
/// What cannot be bent at all counts as so many missing inches.
constexpr double kImpossible = 1000.0;

WayEnd endOf(const BuiltEnd& end, double diameter) {
    WayEnd made;
    made.held = end.kind != BuiltEnd::Kind::spare;
    made.axis = end.axis;
    if (end.kind == BuiltEnd::Kind::port) {
        made.straight = end.inserted + std::min(end.leadIn, kLeadInDiameters * diameter);
    }
    return made;
}

double rounded(double value) {
    constexpr double kGrid = 1e9;
    const double whole = std::round(value * kGrid) / kGrid;
    return whole == 0.0 ? 0.0 : whole;
}

Vec3 rounded(const Vec3& p) {
    return {rounded(p.x), rounded(p.y), rounded(p.z)};
}

bool isNothing(const Vec3& v) {
    return std::max({std::abs(v.x), std::abs(v.y), std::abs(v.z)}) < kNothing;
}

std::vector<CornerInput> cornersOf(const Way& way) {
    std::vector<CornerInput> corners;
    for (std::size_t i = 0; i < way.radii.size(); ++i) {
        corners.push_back({way.points[i + 1], way.radii[i]});
    }
    return corners;
}

double turnAt(const Way& way, std::size_t corner) {
    const Vec3 before = way.leg(corner);
    const Vec3 after = way.leg(corner + 1);
    if (norm(before) < kSamePoint || norm(after) < kSamePoint) {
        return 0.0;
    }
    return angleBetween(unit(before), unit(after));
}

/// Tangent length of the corner, 0 where it does not turn or turns back.
double tangentAt(const Way& way, std::size_t corner) {
    const double turn = turnAt(way, corner);
    return turn > kSameDirection && turn < kLargestTurn
               ? geometry::tangentLength(way.radii[corner], turn)
               : 0.0;
}

double missing(const PathFault& fault) {
    return fault.kind == PathFault::Kind::legTooShort ? (fault.needed - fault.available).in()
                                                      : kImpossible;
}

/// Straight that is missing at the first end, and whether it leaves along its axis.
double missingAtFirst(const Way& way) {
    if (!way.first.held) {
        return 0.0;
    }
    const Vec3 out = way.leg(0);
    if (norm(out) < kSamePoint || angleBetween(unit(out), way.first.axis) > kLargestKink) {
        return kImpossible;
    }
    const double tangent = way.radii.empty() ? 0.0 : tangentAt(way, 0);
    return std::max(0.0, way.first.straight + tangent - norm(out));
}

}  // namespace

// ---- to and fro -----------------------------------------------------------------------------

Way wayOf(const geometry::BuiltLayout& built, std::size_t index) {
    const BuiltConductor& conductor = built.conductors[index];
    const auto& laid = built.layout.conductors[index];
    const double diameter = conductor.diameter.in();
    Way way;
    way.points.push_back(conductor.built.path.start());
    for (const auto& corner : laid.corners) {
        way.points.push_back(corner.at);
        way.radii.push_back(corner.radius.in());
    }
    way.points.push_back(conductor.built.path.end());
    way.first = endOf(conductor.from, diameter);
    way.last = endOf(conductor.to, diameter);
    way.radius = legalRadius(built.layout, laid);
    return way;
}

Way reversed(Way way) {
    std::reverse(way.points.begin(), way.points.end());
    std::reverse(way.radii.begin(), way.radii.end());
    std::swap(way.first, way.last);
    return way;
}

void lay(layout::Conductor& conductor, const Way& way) {
    conductor.corners.clear();
    for (std::size_t i = 0; i < way.radii.size(); ++i) {
        conductor.corners.push_back({way.points[i + 1], units::Inches::of(way.radii[i])});
    }
    if (auto* spare = std::get_if<layout::Spare>(&conductor.from)) {
        spare->tip = way.points.front();
    }
    if (auto* spare = std::get_if<layout::Spare>(&conductor.to)) {
        spare->tip = way.points.back();
    }
}

double shortfall(const Way& way) {
    const auto built = geometry::buildPath(way.points.front(), cornersOf(way), way.points.back());
    double total = missingAtFirst(way) + missingAtFirst(reversed(way));
    for (const auto& fault : built.faults) {
        total += missing(fault);
    }
    return total;
}

bool isSound(const Way& way) {
    return shortfall(way) <= kLimitSlack;
}

Way withoutIdleCorners(const Way& way) {
    Way kept = way;
    for (std::size_t corner = kept.radii.size(); corner-- > 0;) {
        if (turnAt(kept, corner) < 1e-7) {
            const auto at = static_cast<std::ptrdiff_t>(corner);
            kept.points.erase(kept.points.begin() + at + 1);
            kept.radii.erase(kept.radii.begin() + at);
        }
    }
    return kept;
}

Way shifted(Way way, const Vec3& by) {
    for (Vec3& point : way.points) {
        point = rounded(point + by);
    }
    return way;
}

// ---- offsets --------------------------------------------------------------------------------

Offset offsetFor(double aside, double radius, double steepest) {
    // Two bends of turn t and no straight between them carry it 2 r (1 - cos t) aside.
    const double cosine = radius > 0.0 ? 1.0 - aside / (2.0 * radius) : -1.0;
    const double turn = std::min(steepest, std::acos(std::clamp(cosine, -1.0, 1.0)));
    const double run = aside / std::tan(turn);
    return {turn, run, run + 2.0 * geometry::tangentLength(radius, turn)};
}

Stretch freeStretch(const Way& way, std::size_t leg) {
    Stretch stretch{0.0, norm(way.leg(leg))};
    if (leg > 0) {
        stretch.from += tangentAt(way, leg - 1);
    } else {
        stretch.from += way.first.straight;
    }
    if (leg + 1 < way.legs()) {
        stretch.to -= tangentAt(way, leg);
    } else {
        stretch.to -= way.last.straight;
    }
    return stretch;
}

namespace {

/// Steeper where the leg is too short for the usual.
Offset offsetWithin(double aside, double radius, double room) {
    for (const double steepest :
         {kUsualOffset, std::numbers::pi / 4.0, std::numbers::pi / 3.0, std::numbers::pi / 2.5}) {
        const Offset offset = offsetFor(aside, radius, steepest);
        if (offset.room <= room) {
            return offset;
        }
    }
    return offsetFor(aside, radius, std::numbers::pi / 4.0);
}

/// Two corners on leg i of `way`, the first on the line of its start, the second on that of its
/// end; the leg's own direction is `along`.
void insertOffset(Way& way, std::size_t leg, double at, const Vec3& along, const Offset& offset) {
    const Vec3 start = way.points[leg];
    const Vec3 end = way.points[leg + 1];
    const Vec3 first = start + along * (at - offset.run / 2.0);
    const Vec3 second = end + along * (dot(first - end, along) + offset.run);
    const auto place = static_cast<std::ptrdiff_t>(leg);
    way.points.insert(way.points.begin() + place + 1, {rounded(first), rounded(second)});
    way.radii.insert(way.radii.begin() + place, {way.radius, way.radius});
}

/// As near to `at` as the stretch has room for the offset.
double withinStretch(double at, const Stretch& stretch, const Offset& offset) {
    const double least = stretch.from + offset.room / 2.0;
    const double greatest = stretch.to - offset.room / 2.0;
    return least <= greatest ? std::clamp(at, least, greatest) : (least + greatest) / 2.0;
}

}  // namespace

Way withOffset(const Way& way, std::size_t leg, double at, const Vec3& by) {
    CONTRACT(leg < way.legs());
    if (isNothing(by) || norm(way.leg(leg)) < kSamePoint) {
        return way;
    }
    const Stretch stretch = freeStretch(way, leg);
    const Offset offset = offsetWithin(norm(by), way.radius, stretch.length());
    const Vec3 along = unit(way.leg(leg));
    Way made = way;
    for (std::size_t i = leg + 1; i < made.points.size(); ++i) {
        made.points[i] = rounded(made.points[i] + by);
    }
    insertOffset(made, leg, withinStretch(at, stretch, offset), along, offset);
    return made;
}

// ---- pulling --------------------------------------------------------------------------------

namespace {

/// How a way gives way.
struct Manner {
    bool slantsTake = true;  ///< a slanted leg takes up by turning; else it keeps its direction
    bool clip = false;       ///< a leg shortens no further than its bends allow
    bool offset = false;     ///< a leg with room takes the rest by an offset
};
constexpr std::array<Manner, 8> kManners{{{true, false, false},
                                          {false, false, false},
                                          {true, true, false},
                                          {false, true, false},
                                          {true, false, true},
                                          {false, false, true},
                                          {true, true, true},
                                          {false, true, true}}};

/// What follows on one side of what is moved.
struct Following {
    std::vector<Vec3> shifts;           ///< as the points
    std::optional<std::size_t> offset;  ///< the leg that gets one
    Vec3 remainder;                     ///< what arrived at a held end
};

bool isSlanted(const Vec3& direction) {
    const int axes = int(std::abs(direction.x) > kRuns) + int(std::abs(direction.y) > kRuns) +
                     int(std::abs(direction.z) > kRuns);
    return axes > 1;
}

/// The part of `rest` along the axes in which the direction runs.
Vec3 alongAxes(const Vec3& direction, const Vec3& rest) {
    return {std::abs(direction.x) > kRuns ? rest.x : 0.0,
            std::abs(direction.y) > kRuns ? rest.y : 0.0,
            std::abs(direction.z) > kRuns ? rest.z : 0.0};
}

/// What leg i takes up of a shift of its first point.
Vec3 takenUp(const Way& way, std::size_t leg, const Vec3& rest, const Manner& manner) {
    const Vec3 span = way.leg(leg);
    if (norm(span) < kSamePoint) {
        return {};
    }
    const Vec3 along = unit(span);
    const bool atHeldEnd = (leg == 0 && way.first.held) || (leg + 1 == way.legs() && way.last.held);
    if (isSlanted(along) && !atHeldEnd) {
        return manner.slantsTake ? alongAxes(along, rest) : Vec3{};
    }
    const double wanted = dot(rest, along);
    const double spare = std::max(0.0, freeStretch(way, leg).length());
    return along * (manner.clip ? std::min(wanted, spare) : wanted);
}

bool hasRoom(const Way& way, std::size_t leg, const Vec3& rest) {
    if (norm(way.leg(leg)) < kSamePoint) {
        return false;
    }
    const Vec3 along = unit(way.leg(leg));
    if (std::abs(dot(along, rest)) > kNothing) {
        return false;
    }
    const double room = freeStretch(way, leg).length();
    return offsetWithin(norm(rest), way.radius, room).room <= room;
}

/// Point k has moved by `by`: what the points behind it do.
Following follow(const Way& way, std::size_t k, const Vec3& by, const Manner& manner) {
    Following following{std::vector<Vec3>(way.points.size()), std::nullopt, {}};
    Vec3 rest = by;
    for (std::size_t leg = k; leg < way.legs(); ++leg) {
        rest = rest - takenUp(way, leg, rest, manner);
        if (isNothing(rest)) {
            return following;
        }
        if (manner.offset && hasRoom(way, leg, rest)) {
            following.offset = leg;
            return following;
        }
        if (leg + 1 == way.legs() && way.last.held) {
            following.remainder = rest;
            return following;
        }
        following.shifts[leg + 1] = rest;
    }
    return following;
}

/// Follow on the other side, in the way's own order.
Following followBack(const Way& way, std::size_t k, const Vec3& by, const Manner& manner) {
    Following following = follow(reversed(way), way.points.size() - 1 - k, by, manner);
    std::reverse(following.shifts.begin(), following.shifts.end());
    if (following.offset) {
        following.offset = way.legs() - 1 - *following.offset;
    }
    return following;
}

struct Sides {
    Following before;
    Following behind;
};

void addOffsetTo(Way& made, const Way& original, std::size_t leg) {
    const Vec3 along = unit(original.leg(leg));
    const Vec3 span = made.leg(leg);
    const double aside = norm(span - along * dot(span, along));
    if (aside < kNothing) {
        return;
    }
    const Stretch stretch = freeStretch(original, leg);
    // Both ends of the leg may have moved along it.
    const double longer = dot(span, along) - norm(original.leg(leg));
    const Stretch now{stretch.from, stretch.to + longer};
    const Offset offset = offsetWithin(aside, made.radius, now.length());
    insertOffset(made, leg, withinStretch((now.from + now.to) / 2.0, now, offset), along, offset);
}

Way assembled(const Way& way, const Pull& pull, const Sides& sides) {
    Way made = way;
    for (std::size_t i = 0; i < made.points.size(); ++i) {
        const Vec3 by = i < pull.first  ? sides.before.shifts[i]
                        : i > pull.last ? sides.behind.shifts[i]
                                        : pull.by;
        if (!isNothing(by)) {
            made.points[i] = rounded(made.points[i] + by);
        }
    }
    if (sides.behind.offset) {
        addOffsetTo(made, way, *sides.behind.offset);
    }
    if (sides.before.offset) {
        addOffsetTo(made, way, *sides.before.offset);
    }
    return made;
}

/// Of the move, what neither side lets through to a held end.
Vec3 withoutRemainders(const Vec3& by, const Sides& sides) {
    const auto dropped = [](double value, double before, double behind) {
        return std::abs(before) > kNothing || std::abs(behind) > kNothing ? 0.0 : value;
    };
    const Vec3 a = sides.before.remainder;
    const Vec3 b = sides.behind.remainder;
    return {dropped(by.x, a.x, b.x), dropped(by.y, a.y, b.y), dropped(by.z, a.z, b.z)};
}

Sides sidesOf(const Way& way, const Pull& pull, const Manner& before, const Manner& behind) {
    return {followBack(way, pull.first, pull.by, before), follow(way, pull.last, pull.by, behind)};
}

Way tidied(const Way& before, const Way& made) {
    // A corner that did not turn before was put there by somebody; one that stopped turning was
    // not.
    for (std::size_t i = 0; i < before.radii.size(); ++i) {
        if (turnAt(before, i) < kSameDirection) {
            return made;
        }
    }
    return withoutIdleCorners(made);
}

/// The best of a few ways: the first that is sound, else the one nearest to it.
class Best {
public:
    /// True when it is as good as can be.
    bool offer(Way way, double extra = 0.0) {
        const double missing = shortfall(way) + extra;
        if (!way_ || missing < missing_) {
            way_ = std::move(way);
            missing_ = missing;
        }
        return missing_ <= kLimitSlack;
    }
    const std::optional<Way>& way() const { return way_; }

private:
    std::optional<Way> way_;
    double missing_ = 0.0;
};

Way pulledOrDropped(const Way& way, Pull pull) {
    const Sides first = sidesOf(way, pull, kManners[0], kManners[0]);
    pull.by = withoutRemainders(pull.by, first);
    return tidied(way, assembled(way, pull, sidesOf(way, pull, kManners[0], kManners[0])));
}

}  // namespace

Way pulled(const Way& way, const Pull& pull) {
    CONTRACT(pull.first <= pull.last && pull.last < way.points.size());
    if (isNothing(pull.by)) {
        return way;
    }
    if (!pull.mayOffset) {
        return pulledOrDropped(way, pull);
    }
    Best best;
    for (const Manner& before : kManners) {
        for (const Manner& behind : kManners) {
            const Sides sides = sidesOf(way, pull, before, behind);
            const double arrived = norm(sides.before.remainder) + norm(sides.behind.remainder);
            const double kinked = arrived > kNothing ? kImpossible : 0.0;
            if (best.offer(tidied(way, assembled(way, pull, sides)), kinked)) {
                return *best.way();
            }
        }
    }
    return *best.way();
}

Way withFirstMoved(const Way& way, const Vec3& by) {
    return pulled(way, {0, 0, by});
}

Way withLastMoved(const Way& way, const Vec3& by) {
    return pulled(way, {way.points.size() - 1, way.points.size() - 1, by});
}

}  // namespace gw::editing
