#include "geometry/arc_turns.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace gw::geometry {

namespace {
/// radians. A turning point nearer than this to the span's end changes n·P by less than 1e-16 in
/// beyond that end; splitting there would only make slivers.
constexpr double kAtEnd = 1e-9;
}  // namespace

Wave waveOf(const Piece& arc, const Vec3& direction) {
    const double a = dot(direction, arc.u) * arc.radius;
    const double b = dot(direction, arc.v) * arc.radius;
    return {dot(direction, arc.origin), std::hypot(a, b), std::atan2(b, a)};
}

Turns::Turns(const Wave& wave, double first, double last) {
    const double least = first + kAtEnd;
    const double greatest = last - kAtEnd;
    double turn =
        wave.phase + std::ceil((least - wave.phase) / std::numbers::pi) * std::numbers::pi;
    while (turn < greatest && count_ < angles_.size()) {
        angles_[count_++] = turn;
        turn += std::numbers::pi;
    }
}

namespace {

void include(Extent& extent, const Piece& piece, double s, double radius, const Vec3& direction) {
    const double centre = dot(direction, piece.pointAt(s));
    const double half = discReach(radius, direction, piece.tangentAt(s));
    if (centre - half < extent.least) {
        extent.least = centre - half;
        extent.leastAt = s;
    }
    if (centre + half > extent.greatest) {
        extent.greatest = centre + half;
        extent.greatestAt = s;
    }
}

/// With c = cos(angle - phase), a = swing / arc radius and k = arc radius / tube radius, the reach
/// is proportional to a c +- sqrt(1 - a^2 (1 - c^2)) / k. It turns where the sine is 0 and, only
/// for k < 1, also where c^2 = k^2 (1 - a^2) / (a^2 (1 - k^2)).
void includeTightTurns(Extent& extent,
                       const Piece& arc,
                       const std::pair<double, double>& span,
                       double radius,
                       const Vec3& direction) {
    const Wave wave = waveOf(arc, direction);
    const double a = wave.swing / arc.radius;
    const double k = arc.radius / radius;
    const double square = k * k * (1.0 - a * a) / (a * a * (1.0 - k * k));
    if (!(square >= 0.0 && square <= 1.0)) {  // also NaN, when there is no such turn
        return;
    }
    const double angle = std::acos(std::sqrt(square));
    for (const double off : {angle, -angle, std::numbers::pi - angle, angle - std::numbers::pi}) {
        const double whole = 2.0 * std::numbers::pi;
        double at = wave.phase + off;
        at += std::ceil((span.first / arc.radius - at) / whole) * whole;
        if (at * arc.radius < span.second) {
            include(extent, arc, at * arc.radius, radius, direction);
        }
    }
}

}  // namespace

Extent extentAlong(
    const Piece& piece, double first, double last, double radius, const Vec3& direction) {
    constexpr double kFar = std::numeric_limits<double>::infinity();
    Extent extent{kFar, first, -kFar, first};
    include(extent, piece, first, radius, direction);
    include(extent, piece, last, radius, direction);
    if (!piece.isArc()) {
        return extent;
    }
    const Wave wave = waveOf(piece, direction);
    for (const double turn : Turns(wave, first / piece.radius, last / piece.radius)) {
        include(extent, piece, turn * piece.radius, radius, direction);
    }
    if (piece.radius <= radius) {
        includeTightTurns(extent, piece, {first, last}, radius, direction);
    }
    return extent;
}

double discReach(double radius, const Vec3& direction, const Vec3& tangent) {
    const double along = dot(direction, tangent);
    return radius * std::sqrt(std::max(0.0, 1.0 - along * along));
}

}  // namespace gw::geometry
