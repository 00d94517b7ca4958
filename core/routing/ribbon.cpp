#include "routing/ribbon.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "base/tolerance.h"

namespace gw::routing {
namespace {

using geometry::Box;

double clamped(double value) {
    return std::clamp(value, 0.0, 1.0);
}

struct Nearest {
    double distance = std::numeric_limits<double>::infinity();
    Vec3 place;
};

/// Closest points of two segments, the usual clamped solution.
Nearest between(const Vec3& a0, const Vec3& a1, const Vec3& b0, const Vec3& b1) {
    const Vec3 u = a1 - a0;
    const Vec3 v = b1 - b0;
    const Vec3 w = a0 - b0;
    const double uu = squaredNorm(u);
    const double vv = squaredNorm(v);
    const double uv = dot(u, v);
    const double uw = dot(u, w);
    const double vw = dot(v, w);
    const double det = uu * vv - uv * uv;
    double s = det > 1e-12 * uu * vv ? clamped((uv * vw - vv * uw) / det) : 0.0;
    double t = vv > 0.0 ? (uv * s + vw) / vv : 0.0;
    if (t < 0.0 || t > 1.0) {
        t = clamped(t);
        s = uu > 0.0 ? clamped((uv * t - uw) / uu) : 0.0;
    }
    const Vec3 onA = a0 + u * s;
    const Vec3 onB = b0 + v * t;
    return {norm(onA - onB), (onA + onB) * 0.5};
}

bool apart(const Vec3& a0, const Vec3& a1, const Vec3& b0, const Vec3& b1, double within) {
    const auto axis = [within](double p, double q, double r, double s) {
        return std::max(p, q) + within < std::min(r, s) || std::max(r, s) + within < std::min(p, q);
    };
    return axis(a0.x, a1.x, b0.x, b1.x) || axis(a0.y, a1.y, b0.y, b1.y) ||
           axis(a0.z, a1.z, b0.z, b1.z);
}

bool apart(const Box& a, const Box& b, double within) {
    return a.greatest.x + within < b.least.x || b.greatest.x + within < a.least.x ||
           a.greatest.y + within < b.least.y || b.greatest.y + within < a.least.y ||
           a.greatest.z + within < b.least.z || b.greatest.z + within < a.least.z;
}

Nearest nearestOf(const Part& a, const Part& b, double within) {
    Nearest nearest;
    const auto inside = [](const Part& part, std::size_t i) {
        return part.ribbon->at[i + 1] > part.from + kSamePoint &&
               part.ribbon->at[i] < part.to - kSamePoint;
    };
    const auto& p = a.ribbon->points;
    const auto& q = b.ribbon->points;
    for (std::size_t i = 0; i + 1 < p.size(); ++i) {
        if (!inside(a, i)) {
            continue;
        }
        for (std::size_t j = 0; j + 1 < q.size(); ++j) {
            if (!inside(b, j) || apart(p[i], p[i + 1], q[j], q[j + 1], within)) {
                continue;
            }
            const Nearest here = between(p[i], p[i + 1], q[j], q[j + 1]);
            if (here.distance < nearest.distance) {
                nearest = here;
            }
        }
    }
    return nearest;
}

bool isWhole(const Part& part) {
    return part.from <= part.ribbon->from && part.to >= part.ribbon->to;
}

geometry::Tube tubeOf(const Part& part) {
    return {part.ribbon->path, part.ribbon->radius, part.from, part.to};
}

void include(Box& box, const Vec3& point, double radius) {
    box.least = {std::min(box.least.x, point.x - radius),
                 std::min(box.least.y, point.y - radius),
                 std::min(box.least.z, point.z - radius)};
    box.greatest = {std::max(box.greatest.x, point.x + radius),
                    std::max(box.greatest.y, point.y + radius),
                    std::max(box.greatest.z, point.z + radius)};
}

/// A leg longer than this is a poor box.
constexpr double kLongestChord = 6.0;

int chordsOf(const geometry::Piece& piece, double length) {
    if (!piece.isArc()) {
        return std::max(1, static_cast<int>(std::ceil(length / kLongestChord)));
    }
    const double step = 2.0 * std::acos(std::max(-1.0, 1.0 - kChordError / piece.radius));
    return std::max(1, static_cast<int>(std::ceil(length / piece.radius / step)));
}

}  // namespace

Ribbon ribbonOf(const geometry::Path& path, double from, double to, double radius) {
    Ribbon ribbon{&path, radius, from, to, {}, {}, {}};
    ribbon.points.push_back(path.pointAt(from));
    ribbon.at.push_back(from);
    for (std::size_t i = 0; i < path.pieces().size(); ++i) {
        const auto& piece = path.pieces()[i];
        const double start = std::max(from, path.startOf(i));
        const double end = std::min(to, path.startOf(i) + piece.length);
        if (end <= start + kSamePoint) {
            continue;
        }
        const int chords = chordsOf(piece, end - start);
        for (int k = 1; k <= chords; ++k) {
            const double s = start + (end - start) * k / chords;
            ribbon.points.push_back(piece.pointAt(s - path.startOf(i)));
            ribbon.at.push_back(s);
        }
    }
    ribbon.bounds = {ribbon.points.front(), ribbon.points.front()};
    for (const Vec3& point : ribbon.points) {
        include(ribbon.bounds, point, radius);
    }
    return ribbon;
}

std::optional<Overlap> overlapOf(const Part& a, const Part& b) {
    constexpr double kBand = 2.0 * kChordError;
    const double limit = a.ribbon->radius + b.ribbon->radius;
    if (a.to <= a.from || b.to <= b.from || apart(a.ribbon->bounds, b.ribbon->bounds, kBand)) {
        return std::nullopt;
    }
    const Nearest nearest = nearestOf(a, b, limit + kBand);
    if (nearest.distance > limit + kBand) {
        return std::nullopt;
    }
    if (nearest.distance < limit - kBand && isWhole(a) && isWhole(b)) {
        return Overlap{limit - nearest.distance, nearest.place};
    }
    const auto exact = geometry::clearance(tubeOf(a), tubeOf(b));
    if (atLeast(exact.gap.in(), 0.0)) {
        return std::nullopt;
    }
    return Overlap{-exact.gap.in(), (exact.onA + exact.onB) * 0.5};
}

std::optional<Overlap> overlapOf(const Ribbon& a, const Ribbon& b) {
    return overlapOf(Part{&a, a.from, a.to}, Part{&b, b.from, b.to});
}

std::optional<Overlap> overlapOf(const Part& a, const Box& body) {
    if (a.to <= a.from || apart(a.ribbon->bounds, body, kChordError)) {
        return std::nullopt;
    }
    const double within = a.ribbon->radius + kChordError;
    const auto& p = a.ribbon->points;
    bool near = false;
    for (std::size_t i = 0; i + 1 < p.size() && !near; ++i) {
        const bool inside = a.ribbon->at[i + 1] > a.from && a.ribbon->at[i] < a.to;
        near = inside && !apart(p[i], p[i + 1], body.least, body.greatest, within);
    }
    if (!near) {
        return std::nullopt;
    }
    const auto exact = geometry::clearance(tubeOf(a), geometry::toOriented(body));
    if (atLeast(exact.gap.in(), 0.0)) {
        return std::nullopt;
    }
    return Overlap{-exact.gap.in(), exact.onA};
}

}  // namespace gw::routing
