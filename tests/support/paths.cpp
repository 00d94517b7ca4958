#include "support/paths.h"

#include <cmath>
#include <numbers>

namespace gw::test_support {

using geometry::Path;
using geometry::Piece;

Piece leg(const Vec3& from, const Vec3& to) {
    const double length = distance(from, to);
    return {from, length > 0.0 ? (to - from) / length : Vec3{1, 0, 0}, {}, 0.0, length};
}

Piece arc(const Vec3& start, const Vec3& tangent, const Vec3& inward, double radius, double angle) {
    return {start + inward * radius, -inward, tangent, radius, radius * angle};
}

Path pathOf(std::vector<Piece> pieces) {
    return Path(std::move(pieces));
}

Path rounded(const std::vector<Vec3>& points, double radius) {
    std::vector<Piece> pieces;
    Vec3 from = points.front();
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        const Vec3 in = unit(points[i] - points[i - 1]);
        const Vec3 out = unit(points[i + 1] - points[i]);
        const double turn = angleBetween(in, out);
        const Vec3 bendStart = points[i] - in * (radius * std::tan(turn / 2.0));
        pieces.push_back(leg(from, bendStart));
        pieces.push_back(arc(bendStart, in, unit(out - in * dot(in, out)), radius, turn));
        from = pieces.back().pointAt(pieces.back().length);
    }
    pieces.push_back(leg(from, points.back()));
    return pathOf(std::move(pieces));
}

namespace {

Vec3 squareTo(const Vec3& direction, const Vec3& hint) {
    const Vec3 aside = hint - direction * dot(direction, hint);
    return squaredNorm(aside) > 1e-6 ? unit(aside) : unit(cross(direction, Vec3{0.3, 0.5, 0.8}));
}

}  // namespace

Path wandering(Random& random, const Vec3& start, int bends) {
    const bool alongAxes = random.chance(0.3);
    constexpr std::array<Vec3, 3> kAxes{Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}};
    Vec3 direction = alongAxes ? kAxes[random.below(3)] : random.direction();
    std::vector<Piece> pieces{leg(start, start + direction * random.between(0.5, 6.0))};
    for (int i = 0; i < bends; ++i) {
        const Vec3 at = pieces.back().pointAt(pieces.back().length);
        const Vec3 hint = alongAxes ? kAxes[random.below(3)] : random.direction();
        const double angle =
            alongAxes ? std::numbers::pi / 2.0 : random.between(0.1, std::numbers::pi / 2.0);
        pieces.push_back(
            arc(at, direction, squareTo(direction, hint), random.between(1.5, 5.0), angle));
        direction = pieces.back().tangentAt(pieces.back().length);
        const Vec3 next = pieces.back().pointAt(pieces.back().length);
        pieces.push_back(leg(next, next + direction * random.between(0.0, 8.0)));
    }
    return pathOf(std::move(pieces));
}

}  // namespace gw::test_support
