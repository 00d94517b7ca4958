#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "base/vec3.h"
#include "geometry/path.h"
#include "geometry/solids.h"

/// Distances between parts of centrelines, and from them to boxes: what clearances are built on.
namespace gw::geometry {

/// A part of one piece, and a segment that follows it: a leg itself, or an arc's chord moved
/// outward by half its sagitta, so that arc and segment stray from each other by at most that half.
/// An arc's bow turns at most a quarter.
struct Bow {
    const Piece* piece = nullptr;  ///< a loan: outlives the bow
    double offset = 0.0;           ///< arc length on the path at which the piece starts
    double first = 0.0;            ///< arc length on the piece
    double last = 0.0;
    Vec3 start;  ///< of the segment, as moved
    Vec3 end;
    double stray = 0.0;  ///< inches: how far it was moved; 0 for a leg

    Vec3 lift() const;  ///< what it was moved by
};

inline constexpr double kQuarterTurn = 1.57079632679489661923;

/// How large a bow may be.
struct Cuts {
    double turn = kQuarterTurn;  ///< radians, > 0, at most a quarter turn
    /// inches, > 0. The second longest side of the box around a leg: what slants is cut, what runs
    /// along an axis stays whole.
    double breadth = std::numeric_limits<double>::infinity();
};

/// Calls found(const Bow&) for the part of the path from..to (arc lengths, clamped to the path) in
/// order, every piece in equal bows. At least once, for a bow of no length when from >= to.
/// REQUIRES path not empty.
template <class Found>
void forEachBow(const Path& path, double from, double to, const Cuts& cuts, Found found);

/// Where two segments come nearest. a, b: fractions of the way along them, 0 to 1. Segments of no
/// length and parallel ones are fine. Closed form.
struct SegmentFeet {
    double squaredDistance = 0.0;
    double a = 0.0;
    double b = 0.0;
};
SegmentFeet nearestOnSegments(const Vec3& a0, const Vec3& a1, const Vec3& b0, const Vec3& b1);

/// Where two bows, or a bow and a box, come nearest.
struct Feet {
    double distance = 0.0;  ///< negative: as deep in the box
    Vec3 onA;
    Vec3 onB;
};

/// Arc length on the path of a point on the bow.
double lengthAt(const Bow& bow, const Vec3& point);

/// inches. How far a lies beyond b along a direction (unit): no point of one is nearer to any of
/// the other. May be negative.
double apartAlong(const Vec3& direction, const Bow& a, const Bow& b);

/// Finds nearest points of bows. Keeps its workspace from one search to the next.
///
/// Branch and bound. From above: two points that are really there, brought together by Newton's
/// steps from where the segments come nearest. From below, for a pair of bows: the segments'
/// distance less what both stray, or how far apart they lie along the direction between those two
/// points. A pair that cannot beat the best by kClearanceError is dropped, any other is halved. So
/// the answer is never too small, and too large by at most kClearanceError (in practice by 1e-9).
/// Sines and the like are left out of the search: a point of an arc is kept as its place.
class NearestFinder {
public:
    /// Empty when the distance is greater than `ceiling`.
    std::optional<Feet> find(const Bow& a, const Bow& b, double ceiling);
    std::optional<Feet> find(const Bow& a, const OrientedBox& box, double ceiling);

private:
    /// A bow, or what it is halved into: its ends, and what its chord is moved by.
    struct Half {
        Vec3 start, end, lift;
        double stray;
        std::uint32_t halves;  ///< index of the first of its two; 0 until it is halved
    };
    struct Node {
        std::uint32_t a, b;  ///< indices of halves
        double lower;
        double alongA, alongB;
    };
    friend class HalfStore;
    friend class PairSearch;
    friend class BoxSearch;
    std::vector<Half> halves_;
    std::vector<Node> nodes_;
};

// ---- details ------------------------------------------------------------------------------------

namespace segments {

inline double fraction(double numerator, double denominator) {
    return denominator > 0.0 ? std::clamp(numerator / denominator, 0.0, 1.0) : 0.0;
}

/// Directions, and the products the normal equations are made of.
struct SegmentPair {
    Vec3 u, v, w;  ///< along a, along b, from b's start to a's
    double uu, vv, uv, uw, vw;

    double bFor(double a) const { return fraction(vw + uv * a, vv); }
    double aFor(double b) const { return fraction(uv * b - uw, uu); }
    SegmentFeet feet(double a, double b) const { return {squaredNorm(w + u * a - v * b), a, b}; }
};

/// Halfway along the stretch that lies beside both, or where their nearest ends are.
inline SegmentFeet nearestParallel(const SegmentPair& p) {
    const double rise = p.uu > 0.0 ? p.uv / p.uu : 0.0;
    const double at = p.uu > 0.0 ? -p.uw / p.uu : 0.0;  // b's start, seen from a
    const double low = std::clamp(std::min(at, at + rise), 0.0, 1.0);
    const double high = std::clamp(std::max(at, at + rise), 0.0, 1.0);
    const double b = p.bFor((low + high) * 0.5);
    return p.feet(p.aFor(b), b);
}

}  // namespace segments

inline SegmentFeet nearestOnSegments(const Vec3& a0,
                                     const Vec3& a1,
                                     const Vec3& b0,
                                     const Vec3& b1) {
    const Vec3 u = a1 - a0;
    const Vec3 v = b1 - b0;
    const Vec3 w = a0 - b0;
    const segments::SegmentPair p{u, v, w, dot(u, u), dot(v, v), dot(u, v), dot(u, w), dot(v, w)};
    const double determinant = p.uu * p.vv - p.uv * p.uv;
    constexpr double kParallel = 1e-14;  // sine below 1e-7: 1e-5 in aside at 100 in
    if (determinant <= kParallel * p.uu * p.vv) {
        return segments::nearestParallel(p);
    }
    const double b = p.bFor(std::clamp((p.uv * p.vw - p.uw * p.vv) / determinant, 0.0, 1.0));
    const double a = p.aFor(b);
    return p.feet(a, b);
}

inline Vec3 Bow::lift() const {
    if (stray == 0.0) {
        return {};
    }
    const Vec3 outward = (start + end) * 0.5 - piece->origin;
    return outward * (stray / norm(outward));
}

/// Into how many equal bows the piece's part first..last goes.
int bowCount(const Piece& piece, double first, double last, const Cuts& cuts);

/// The bow first..last of the piece, whose ends are these points.
Bow bowBetween(const Piece& piece,
               double offset,
               double first,
               double last,
               const Vec3& start,
               const Vec3& end);

/// A bow of no length at arc length `at` of the path.
Bow bowAt(const Path& path, double at);

template <class Found>
void forEachBow(const Path& path, double from, double to, const Cuts& cuts, Found found) {
    const double begin = std::clamp(from, 0.0, path.length().in());
    const double end = std::clamp(to, begin, path.length().in());
    bool any = false;
    for (std::size_t i = 0; i < path.pieces().size(); ++i) {
        const Piece& piece = path.pieces()[i];
        const double offset = path.startOf(i);
        const double first = std::max(0.0, begin - offset);
        const double length = std::min(piece.length, end - offset) - first;
        if (!(length > 0.0)) {
            continue;
        }
        any = true;
        const int count = bowCount(piece, first, first + length, cuts);
        double s = first;
        Vec3 point = piece.pointAt(s);
        for (int bow = 1; bow <= count; ++bow) {
            const double next = first + length * bow / count;
            const Vec3 nextPoint = piece.pointAt(next);
            found(bowBetween(piece, offset, s, next, point, nextPoint));
            s = next;
            point = nextPoint;
        }
    }
    if (!any) {
        found(bowAt(path, begin));
    }
}

}  // namespace gw::geometry
