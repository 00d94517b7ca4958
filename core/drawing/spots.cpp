#include "drawing/spots.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "drawing/style.h"

namespace gw::drawing {
namespace {

constexpr int kDirections = 24;
constexpr double kTouching = 0.5;  // mm between a thing and a label that needs no leader
constexpr std::array<double, 18> kGaps = {kTouching,
                                          1.6,
                                          2.0,
                                          2.5,
                                          3.2,
                                          4.0,
                                          4.5,
                                          5.0,
                                          5.5,
                                          6.0,
                                          6.5,
                                          7.2,
                                          8.0,
                                          9.0,
                                          10.5,
                                          14.0,
                                          18.0,
                                          24.0};
constexpr double kInside = 0.6;  // mm of leader inside the thing

// What a place spoils: a conductor hidden, a leader, its length, a conductor it crosses.
constexpr double kHides = 6.0;
constexpr double kLeader = 1.5;
constexpr double kLeaderMm = 0.12;
constexpr double kOver = 1.2;
constexpr double kOffMiddle = 0.02;  // each millimetre aside from the thing's middle

Point middleOf(const Rect& rect) {
    return {rect.x + 0.5 * rect.width, rect.y + 0.5 * rect.height};
}

/// Middle of a box that stands `gap` off the thing in that direction.
Point placeAt(const Rect& size, const Rect& thing, Point direction, double gap) {
    const double far = 1e9;
    const double byX = std::abs(direction.x) < 1e-9
                           ? far
                           : (0.5 * (size.width + thing.width) + gap) / std::abs(direction.x);
    const double byY = std::abs(direction.y) < 1e-9
                           ? far
                           : (0.5 * (size.height + thing.height) + gap) / std::abs(direction.y);
    const double t = std::min(byX, byY);
    const auto from = middleOf(thing);
    return {from.x + t * direction.x, from.y + t * direction.y};
}

Point nearestOn(const Rect& rect, Point to) {
    return {std::clamp(to.x, rect.x, rect.right()), std::clamp(to.y, rect.y, rect.bottom())};
}

Spot::Leader leaderOf(const Rect& box, const Rect& thing) {
    const double inset = std::min({kInside, 0.5 * thing.width, 0.5 * thing.height});
    const auto foot = nearestOn(grown(thing, -inset), middleOf(box));
    return {nearestOn(box, foot), foot};
}

}  // namespace

std::optional<Spot> bestSpot(const Placer& placer,
                             const std::vector<Leg>& legs,
                             const Rect& size,
                             const Rect& thing) {
    std::optional<Spot> best;
    double least = 1e9;
    for (const double gap : kGaps) {
        for (int i = 0; i < kDirections; ++i) {
            const double angle = 2.0 * std::numbers::pi * i / kDirections;
            const auto at = placeAt(size, thing, {std::cos(angle), -std::sin(angle)}, gap);
            const Rect box{
                at.x - 0.5 * size.width, at.y - 0.5 * size.height, size.width, size.height};
            const auto leader = leaderOf(box, thing);
            const bool led = gap > kTouching;
            if (!placer.isFree(box) ||
                (led && !placer.isFree(leader.start, leader.foot, kLeaderDot))) {
                continue;
            }
            double cost = kHides * static_cast<double>(conductorsUnder(legs, box)) +
                          kOffMiddle * std::abs(at.x - middleOf(thing).x);
            if (led) {
                cost +=
                    kLeader + kLeaderMm * gap +
                    kOver * static_cast<double>(conductorsCrossed(legs, leader.start, leader.foot));
            }
            if (cost < least - 1e-9) {
                least = cost;
                best = Spot{at, led ? std::optional(leader) : std::nullopt, cost};
            }
        }
    }
    return best;
}

}  // namespace gw::drawing
