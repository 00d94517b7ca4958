#include "editing/shape.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "editing/settle.h"
#include "editing/way.h"

namespace gw::editing {

using geometry::BuiltLayout;

namespace {

Edit noConductor(const layout::ConductorId& id) {
    return fail(notThere("conductor", id.text()));
}

Edit noSuch(const std::string& what) {
    return fail({ErrorCode::outOfRange, "no such " + what});
}

/// The layout with conductor `index` laid along another way.
Edit withWay(const BuiltLayout& built, std::size_t index, const Way& way) {
    layout::Layout after = built.layout;
    lay(after.conductors[index], way);
    return accepted(std::move(after), built.shelf);
}

Vec3 square(const Vec3& by, const Vec3& leg) {
    if (norm(leg) < kSamePoint) {
        return by;
    }
    const Vec3 along = unit(leg);
    return by - along * dot(by, along);
}

/// What is behind the offset moves along, but an end that is held stays: the legs take it up.
Way offsetAdded(const Way& way, std::size_t leg, double at, const Vec3& by) {
    Way carried = withOffset(way, leg, at, by);
    if (!way.last.held || carried.points.size() == way.points.size()) {
        return carried;
    }
    const std::size_t moved = leg + 3;  // the leg's end, behind the two new corners
    if (moved + 1 >= carried.points.size()) {
        // It is the last leg: back again at its end.
        return withOffset(carried, leg + 2, norm(carried.leg(leg + 2)), -by);
    }
    Way original = carried;
    for (std::size_t i = 0; i < original.points.size(); ++i) {
        original.points[i] = i <= moved ? carried.points[i] - by : way.points[i - 2];
    }
    Way rest = pulled(original, {0, moved, by});
    for (std::size_t i = 0; i <= std::min(moved, rest.points.size() - 1); ++i) {
        rest.points[i] = carried.points[i];
    }
    return rest;
}

}  // namespace

Edit moveLeg(const BuiltLayout& built,
             const layout::ConductorId& conductor,
             std::size_t leg,
             const Vec3& by) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    const Way way = wayOf(built, *index);
    if (leg >= way.legs()) {
        return noSuch("leg");
    }
    const Vec3 aside = square(by, way.leg(leg));
    if (norm(aside) < kSamePoint) {
        return built.layout;
    }
    const bool first = leg == 0 && way.first.held;
    const bool last = leg + 1 == way.legs() && way.last.held;
    if (first) {
        return withWay(built, *index, offsetAdded(way, leg, 0.0, aside));
    }
    if (last) {
        return withWay(built, *index, reversed(offsetAdded(reversed(way), 0, 0.0, aside)));
    }
    return withWay(built, *index, pulled(way, {leg, leg + 1, aside}));
}

Edit moveCorner(const BuiltLayout& built,
                const layout::ConductorId& conductor,
                std::size_t corner,
                const Vec3& by) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    const Way way = wayOf(built, *index);
    if (corner >= way.radii.size()) {
        return noSuch("corner");
    }
    Vec3 allowed = by;
    if (corner == 0 && way.first.held) {
        allowed = way.first.axis * dot(allowed, way.first.axis);
    }
    if (corner + 1 == way.radii.size() && way.last.held) {
        allowed = way.last.axis * dot(allowed, way.last.axis);
    }
    return withWay(built, *index, pulled(way, {corner + 1, corner + 1, allowed, false}));
}

Edit setBendRadius(const BuiltLayout& built,
                   const layout::ConductorId& conductor,
                   std::optional<std::size_t> corner,
                   units::Inches radius) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    layout::Layout after = built.layout;
    auto& corners = after.conductors[*index].corners;
    if (corner && *corner >= corners.size()) {
        return noSuch("corner");
    }
    for (std::size_t i = 0; i < corners.size(); ++i) {
        if (!corner || *corner == i) {
            corners[i].radius = radius;
        }
    }
    return accepted(std::move(after), built.shelf);
}

namespace {

bool runsAlongX(const Vec3& leg) {
    return std::abs(leg.x) > std::max(std::abs(leg.y), std::abs(leg.z));
}

}  // namespace

Edit moveLane(const BuiltLayout& built, const layout::ConductorId& conductor, const Vec3& by) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    const Way way = wayOf(built, *index);
    std::optional<std::size_t> first;
    std::size_t last = 0;
    for (std::size_t leg = 0; leg < way.legs(); ++leg) {
        const bool atEnd = (leg == 0 && way.first.held) || (leg + 1 == way.legs() && way.last.held);
        if (!atEnd && runsAlongX(way.leg(leg))) {
            first = first.value_or(leg);
            last = leg + 1;
        }
    }
    if (!first) {
        std::size_t longest = 0;
        for (std::size_t leg = 0; leg < way.legs(); ++leg) {
            longest = norm(way.leg(leg)) > norm(way.leg(longest)) ? leg : longest;
        }
        return moveLeg(built, conductor, longest, {0.0, by.y, by.z});
    }
    return withWay(built, *index, pulled(way, {*first, last, {0.0, by.y, by.z}}));
}

Edit addCorner(const BuiltLayout& built,
               const layout::ConductorId& conductor,
               std::size_t leg,
               const Vec3& at) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    Way way = wayOf(built, *index);
    if (leg >= way.legs()) {
        return noSuch("leg");
    }
    const Vec3 span = way.leg(leg);
    const double along =
        norm(span) < kSamePoint
            ? 0.0
            : std::clamp(dot(at - way.points[leg], span) / dot(span, span), 0.05, 0.95);
    const auto place = static_cast<std::ptrdiff_t>(leg);
    way.points.insert(way.points.begin() + place + 1, way.points[leg] + span * along);
    way.radii.insert(way.radii.begin() + place, way.radius);
    return withWay(built, *index, way);
}

Edit removeCorner(const BuiltLayout& built,
                  const layout::ConductorId& conductor,
                  std::size_t corner) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    layout::Layout after = built.layout;
    auto& corners = after.conductors[*index].corners;
    if (corner >= corners.size()) {
        return noSuch("corner");
    }
    corners.erase(corners.begin() + static_cast<std::ptrdiff_t>(corner));
    return accepted(std::move(after), built.shelf);
}

Edit addOffset(const BuiltLayout& built,
               const layout::ConductorId& conductor,
               std::size_t leg,
               double at,
               const Vec3& by) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    const Way way = wayOf(built, *index);
    if (leg >= way.legs()) {
        return noSuch("leg");
    }
    return withWay(built, *index, offsetAdded(way, leg, at, square(by, way.leg(leg))));
}

}  // namespace gw::editing
