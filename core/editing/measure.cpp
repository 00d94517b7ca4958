#include "editing/measure.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/tolerance.h"
#include "editing/bounds.h"
#include "editing/places.h"

namespace gw::editing {
namespace {

using geometry::BuiltLayout;
using geometry::Point2;
using geometry::View;

double& part(Vec3& v, std::size_t axis) {
    return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}
double part(const Vec3& v, std::size_t axis) {
    return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}

std::string whatIsHit(const BuiltLayout& built, const Hit& hit) {
    std::string name = itemName(built.layout, hit.item);
    switch (hit.place) {
        case Hit::Place::port: {
            const auto block = indexOf(built.layout, std::get<layout::BlockId>(hit.item));
            return "port " + built.blocks[*block].part->ports[hit.index].name.text() + " of " +
                   name;
        }
        case Hit::Place::fromEnd:
        case Hit::Place::toEnd:
            return "the end of " + name;
        case Hit::Place::bend:
            return "a bend of " + name;
        case Hit::Place::leg:
        case Hit::Place::body:
        case Hit::Place::hole:
            break;
    }
    return name;
}

/// Its nearest face toward the eye.
double faceOf(const geometry::Box& body, View view) {
    switch (view) {
        case View::front:
            return body.greatest.z;
        case View::top:
            return body.greatest.y;
        case View::end:
            return body.least.x;
    }
    return 0.0;
}

/// With the coordinates a view shows, the one along its line of sight as given.
Picked seen(View view, Point2 at, double alongSight, bool known) {
    Picked picked{inGutter(view, at.x, at.y), {true, true, true}, {}};
    const auto sight = static_cast<std::size_t>(lookedAlong(view));
    part(picked.at, sight) = alongSight;
    picked.known.at(sight) = known;
    return picked;
}

}  // namespace

Picked pick(
    const BuiltLayout& built, View view, Point2 at, double cut, const SnapOptions& options) {
    const bool section = view == View::end;
    const auto hits = section ? hitsInSection(built, cut, at, options.reach)
                              : hitsAt(built, view, at, options.reach);
    const Hit* hit = hits.empty() ? nullptr : &hits.front();
    if (hit != nullptr && hit->place != Hit::Place::body) {
        return {hit->at, {true, true, true}, whatIsHit(built, *hit)};
    }
    if (section) {
        return seen(view, at, cut, true);
    }
    const Snapped snapped = snap(built, view, at, options);
    Picked picked = seen(view, snapped.at, 0.0, false);
    if (hit != nullptr) {
        const auto block = indexOf(built.layout, std::get<layout::BlockId>(hit->item));
        picked = seen(view, snapped.at, faceOf(built.blocks[*block].body, view), true);
        picked.what = whatIsHit(built, *hit);
    }
    return picked;
}

Measured measured(const Picked& from, const Picked& to) {
    Measured result;
    for (std::size_t axis = 0; axis < result.known.size(); ++axis) {
        result.known.at(axis) = from.known.at(axis) && to.known.at(axis);
        if (result.known.at(axis)) {
            part(result.by, axis) = part(to.at, axis) - part(from.at, axis);
        }
    }
    result.distance = units::Inches::of(norm(result.by));
    return result;
}

std::string measuredText(const Measured& measured, units::LengthUnit unit) {
    constexpr int kFinest = 64;
    const auto length = [&](double inches) {
        const auto exact = units::Inches::of(std::abs(inches));
        return unit == units::LengthUnit::inch
                   ? units::formatInches(exact, units::Rounding::nearest, kFinest)
                   : units::formatMillimetres(exact);
    };
    struct Words {
        const char* plus;
        const char* minus;
        const char* unknown;
    };
    constexpr std::array<Words, 3> kWords{{{"right", "left", "place along not known"},
                                           {"up", "down", "height not known"},
                                           {"forward", "back", "depth not known"}}};
    std::string text;
    for (std::size_t axis = 0; axis < kWords.size(); ++axis) {
        const double by = part(measured.by, axis);
        const Words& words = kWords.at(axis);
        std::string more;
        if (!measured.known.at(axis)) {
            more = words.unknown;
        } else if (std::abs(by) > kSamePoint) {
            more = length(by) + " " + (by > 0.0 ? words.plus : words.minus);
        }
        if (!more.empty()) {
            text += (text.empty() ? "" : ", ") + more;
        }
    }
    return length(measured.distance.in()) + (text.empty() ? "" : ": ") + text;
}

}  // namespace gw::editing
