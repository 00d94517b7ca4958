#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string_view>
#include <vector>

#include "base/vec3.h"
#include "geometry/path.h"

/// Shortest paths with a least radius, by published closed forms that share nothing with the
/// program's own bending: an outside check on it.
namespace gw::test {

/// A place and the direction faced there, in the plane z = 0. Radians from +x, left turns positive.
struct Pose {
    double x = 0.0;
    double y = 0.0;
    double heading = 0.0;
};

/// Three parts in radii: turn (or straight when its letter is S).
struct Word {
    std::string_view letters;  ///< "LSL", "RSR", "LSR", "RSL", "LRL", "RLR"
    double t = 0.0;
    double p = 0.0;
    double q = 0.0;
    double length(double radius) const { return radius * (t + p + q); }
};

inline double mod2pi(double angle) {
    constexpr double kTurn = 2.0 * std::numbers::pi;
    const double left = std::fmod(angle, kTurn);
    return left < 0.0 ? left + kTurn : left;
}

/// L. E. Dubins, "On curves of minimal length with a constraint on average curvature", American
/// Journal of Mathematics 79 (1957): the six words, in the usual scaled form. Empty when the word
/// does not exist for the pair.
inline std::optional<Word> shortestWord(std::string_view letters,
                                        const Pose& from,
                                        const Pose& to,
                                        double radius) {
    const double d = std::hypot(to.x - from.x, to.y - from.y) / radius;
    const double bearing = std::atan2(to.y - from.y, to.x - from.x);
    const double a = mod2pi(from.heading - bearing);
    const double b = mod2pi(to.heading - bearing);
    const double sa = std::sin(a);
    const double sb = std::sin(b);
    const double ca = std::cos(a);
    const double cb = std::cos(b);
    const double cab = std::cos(a - b);
    if (letters[1] == 'S') {
        const double sign = letters[0] == 'L' ? 1.0 : -1.0;
        const bool same = letters[0] == letters[2];
        const double squared = same ? 2.0 + d * d - 2.0 * cab + sign * 2.0 * d * (sa - sb)
                                    : d * d - 2.0 + 2.0 * cab + sign * 2.0 * d * (sa + sb);
        if (squared < 0.0) {
            return std::nullopt;
        }
        const double p = std::sqrt(squared);
        const double k =
            same ? std::atan2(sign * (cb - ca), d + sign * (sa - sb))
                 : std::atan2(sign * (-ca - cb), d + sign * (sa + sb)) - std::atan2(sign * -2.0, p);
        const double t = mod2pi(sign * (k - a));
        const double q = mod2pi(same ? sign * (b - k) : sign * (k - b));
        return Word{letters, t, p, q};
    }
    const double sign = letters[0] == 'R' ? 1.0 : -1.0;
    const double c = (6.0 - d * d + 2.0 * cab + sign * 2.0 * d * (sa - sb)) / 8.0;
    if (std::abs(c) > 1.0) {
        return std::nullopt;
    }
    const double p = 2.0 * std::numbers::pi - std::acos(c);
    const double k = letters[0] == 'R' ? a - std::atan2(ca - cb, d - sa + sb)
                                       : -a - std::atan2(ca - cb, d + sa - sb);
    const double t = mod2pi(k + p * 0.5);
    const double q = mod2pi(letters[0] == 'R' ? a - b - t + p : b - a - t + p);
    return Word{letters, t, p, q};
}

/// The word as corners to be filleted: every arc cut into equal parts of at most 90 degrees, one
/// corner each, straights between them of no length. The end is where the word leads.
struct Polyline {
    Vec3 start;
    std::vector<geometry::CornerInput> corners;
    Vec3 end;
    double heading = 0.0;
};

inline Polyline asPolyline(const Word& word, const Pose& from, double radius) {
    Polyline line{{from.x, from.y, 0.0}, {}, {from.x, from.y, 0.0}, from.heading};
    const auto go = [&line](double inches) {
        line.end = line.end + Vec3{std::cos(line.heading), std::sin(line.heading), 0.0} * inches;
    };
    const double parts[] = {word.t, word.p, word.q};
    for (std::size_t i = 0; i < 3; ++i) {
        if (word.letters[i] == 'S') {
            go(parts[i] * radius);
            continue;
        }
        const double cuts = std::max(1.0, std::ceil(parts[i] / (0.5 * std::numbers::pi)));
        const double turn = parts[i] / cuts;
        const double tangent = radius * std::tan(turn * 0.5);
        for (int cut = 0; cut < static_cast<int>(cuts); ++cut) {
            go(tangent);
            line.corners.push_back({line.end, radius});
            line.heading += word.letters[i] == 'L' ? turn : -turn;
            go(tangent);
        }
    }
    return line;
}

/// Arc, straight, arc between two poses in space, by the fixed-point search on the straight's
/// direction (H. J. Sussmann, "Shortest 3-dimensional paths with a prescribed curvature bound",
/// IEEE CDC 1995, shows the kind of path). Gives the two corners. Empty when it does not settle.
struct TwoCorners {
    Vec3 first;
    Vec3 second;
};

inline std::optional<TwoCorners> arcStraightArc(
    const Vec3& p0, const Vec3& d0, const Vec3& p1, const Vec3& d1, double radius) {
    Vec3 s = unit(p1 - p0);
    for (int round = 0; round < 500; ++round) {
        const Vec3 first = p0 + d0 * (radius * std::tan(0.5 * angleBetween(d0, s)));
        const Vec3 second = p1 - d1 * (radius * std::tan(0.5 * angleBetween(s, d1)));
        if (norm(second - first) < 1e-9) {
            return std::nullopt;
        }
        const Vec3 next = unit(second - first);
        if (norm(next - s) < 1e-14) {
            return TwoCorners{first, second};
        }
        s = unit(next + s);
    }
    return std::nullopt;
}

}  // namespace gw::test
