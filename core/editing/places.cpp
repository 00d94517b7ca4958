#include "editing/places.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace gw::editing {
namespace {

using geometry::Piece;
using geometry::Point2;

/// Middle of a corner's bend, and half its length.
struct Reach {
    double middle;
    double half;
};
Reach reachOf(const geometry::BuiltPath::Bend& bend) {
    const double half = 0.5 * bend.radius * bend.turn;
    return {bend.start + half, half};
}

/// Calls found(s0, p0, s1, p1) for straight stretches that follow the path to 1/100 in or so.
template <class Found>
void forEachChord(const geometry::Path& path, Found found) {
    constexpr double kChordTurn = 0.1;  // radians: strays r/800
    for (std::size_t i = 0; i < path.pieces().size(); ++i) {
        const Piece& piece = path.pieces()[i];
        const int chords =
            piece.isArc() ? 1 + static_cast<int>(std::ceil(piece.angle() / kChordTurn)) : 1;
        double s = 0.0;
        Vec3 point = piece.pointAt(0.0);
        for (int chord = 1; chord <= chords; ++chord) {
            const double next = piece.length * chord / chords;
            const Vec3 nextPoint = piece.pointAt(next);
            found(path.startOf(i) + s, point, path.startOf(i) + next, nextPoint);
            s = next;
            point = nextPoint;
        }
    }
}

/// How far along a-b (0 to 1) the foot of `point` is. No length: 0.
double fraction(const Vec3& point, const Vec3& a, const Vec3& b) {
    const double length = squaredNorm(b - a);
    return length > 0.0 ? std::clamp(dot(point - a, b - a) / length, 0.0, 1.0) : 0.0;
}

/// Of two places over which the pointer is the one well in front of the other, else the one it is
/// nearer to.
bool seenBefore(const Nearest& a, const Nearest& b, geometry::View view, double alike) {
    const bool overA = a.distance <= alike;
    const bool overB = b.distance <= alike;
    if (overA != overB) {
        return overA;
    }
    const double inFront = geometry::nearness(view, a.at) - geometry::nearness(view, b.at);
    if (overA && std::abs(inFront) > 2.0 * alike) {
        return inFront > 0.0;
    }
    return a.distance < b.distance;
}

Vec3 flat(Point2 p) {
    return {p.x, p.y, 0.0};
}

}  // namespace

PathPlace placeAt(const geometry::BuiltPath& path, double s, double around) {
    std::size_t leg = 0;
    for (std::size_t i = 0; i < path.bends.size(); ++i) {
        const Reach reach = reachOf(path.bends[i]);
        if (std::abs(s - reach.middle) <= std::max(reach.half, around)) {
            return {true, i};
        }
        if (s > reach.middle) {
            leg = i + 1;
        }
    }
    return {false, leg};
}

Nearest nearestInSpace(const geometry::Path& path, const Vec3& point) {
    Nearest best{0.0, norm(path.start() - point), path.start()};
    forEachChord(path, [&](double s0, const Vec3& p0, double s1, const Vec3& p1) {
        const double t = fraction(point, p0, p1);
        const Vec3 at = p0 + (p1 - p0) * t;
        const double away = norm(at - point);
        if (away < best.distance) {
            best = {s0 + (s1 - s0) * t, away, at};
        }
    });
    return best;
}

Nearest nearestInView(const geometry::Path& path, geometry::View view, Point2 point, double alike) {
    const Vec3 start = path.start();
    Nearest best{0.0, distance(point, geometry::project(view, start)), start};
    forEachChord(path, [&](double s0, const Vec3& p0, double s1, const Vec3& p1) {
        const Vec3 a = flat(geometry::project(view, p0));
        const Vec3 b = flat(geometry::project(view, p1));
        const double t = fraction(flat(point), a, b);
        const double away = norm(a + (b - a) * t - flat(point));
        const Vec3 at = p0 + (p1 - p0) * t;
        const Nearest other{s0 + (s1 - s0) * t, away, at};
        if (seenBefore(other, best, view, alike)) {
            best = other;
        }
    });
    return best;
}

double ViewBox::distanceTo(Point2 point) const {
    const double dx = std::max({least.x - point.x, 0.0, point.x - greatest.x});
    const double dy = std::max({least.y - point.y, 0.0, point.y - greatest.y});
    return std::hypot(dx, dy);
}

bool ViewBox::holds(const ViewBox& other) const {
    return atMost(least.x, other.least.x) && atMost(least.y, other.least.y) &&
           atMost(other.greatest.x, greatest.x) && atMost(other.greatest.y, greatest.y);
}

ViewBox viewBox(Point2 a, Point2 b) {
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

ViewBox viewBox(geometry::View view, const geometry::Box& box) {
    return viewBox(geometry::project(view, box.least), geometry::project(view, box.greatest));
}

double distance(Point2 a, Point2 b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

double distance(Point2 point, Point2 a, Point2 b) {
    const double t = fraction(flat(point), flat(a), flat(b));
    return norm(flat(a) + (flat(b) - flat(a)) * t - flat(point));
}

int lookedAlong(geometry::View view) {
    switch (view) {
        case geometry::View::front:
            return 2;
        case geometry::View::top:
            return 1;
        case geometry::View::end:
            return 0;
    }
    return 2;
}

}  // namespace gw::editing
