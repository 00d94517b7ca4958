#include "geometry/path.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/contract.h"
#include "base/tolerance.h"

namespace gw::geometry {

Vec3 Piece::pointAt(double s) const {
    if (!isArc()) {
        return origin + u * s;
    }
    const double turned = s / radius;
    return origin + (u * std::cos(turned) + v * std::sin(turned)) * radius;
}

Vec3 Piece::tangentAt(double s) const {
    if (!isArc()) {
        return u;
    }
    const double turned = s / radius;
    return v * std::cos(turned) - u * std::sin(turned);
}

Path::Path(std::vector<Piece> pieces) : pieces_(std::move(pieces)) {
    starts_.reserve(pieces_.size());
    for (const Piece& piece : pieces_) {
        starts_.push_back(length_);
        length_ += piece.length;
    }
}

std::size_t Path::pieceAt(double s) const {
    CONTRACT(!empty());
    const auto after = std::upper_bound(starts_.begin(), starts_.end(), s);
    return after == starts_.begin() ? 0 : static_cast<std::size_t>(after - starts_.begin()) - 1;
}

namespace {

// A comparison with NaN is false, so NaN becomes 0.
double clamped(double s, double length) {
    return s > 0.0 ? std::min(s, length) : 0.0;
}

}  // namespace

Vec3 Path::pointAt(double s) const {
    const double within = clamped(s, length_);
    const std::size_t i = pieceAt(within);
    return pieces_[i].pointAt(clamped(within - starts_[i], pieces_[i].length));
}

Vec3 Path::tangentAt(double s) const {
    const double within = clamped(s, length_);
    const std::size_t i = pieceAt(within);
    return pieces_[i].tangentAt(clamped(within - starts_[i], pieces_[i].length));
}

namespace {

// A chord over the angle a strays 2 r sin²(a/4) from its arc.
std::size_t chordsOf(const Piece& piece, double deviation) {
    if (!piece.isArc()) {
        return 1;
    }
    constexpr double kFinest = 1e-6;
    const double ratio = std::max(deviation, kFinest) / (2.0 * piece.radius);
    const double widest = 4.0 * std::asin(std::sqrt(std::min(ratio, 1.0)));
    return static_cast<std::size_t>(std::max(1.0, std::ceil(piece.angle() / widest)));
}

}  // namespace

std::vector<Vec3> Path::flattened(double deviation) const {
    std::vector<Vec3> points;
    for (const Piece& piece : pieces_) {
        const std::size_t chords = chordsOf(piece, deviation);
        for (std::size_t i = 0; i < chords; ++i) {
            const double part = static_cast<double>(i) / static_cast<double>(chords);
            points.push_back(piece.pointAt(piece.length * part));
        }
    }
    if (!empty()) {
        points.push_back(end());
    }
    return points;
}

double tangentLength(double radius, double turn) {
    return radius * std::tan(turn * 0.5);
}

// ---- from corners to pieces -----------------------------------------------------------------

namespace {

// A point of the polyline that is kept; index counts from the start (0) to the end (corners + 1).
struct Knot {
    Vec3 at;
    std::size_t index = 0;
    double radius = 0.0;
    double turn = 0.0;
    double tangent = 0.0;  // tangent length
};

struct Leg {
    Vec3 direction;
    double length = 0.0;
};

std::vector<Knot> allKnots(const Vec3& start,
                           std::span<const CornerInput> corners,
                           const Vec3& end) {
    std::vector<Knot> knots;
    knots.reserve(corners.size() + 2);
    knots.push_back({.at = start});
    for (const CornerInput& corner : corners) {
        knots.push_back({.at = corner.at, .index = knots.size(), .radius = corner.radius});
    }
    knots.push_back({.at = end, .index = knots.size()});
    return knots;
}

// Leaves out every point that coincides with the one kept before it. The start and the end stay,
// unless all is one point: then only the start does.
std::vector<Knot> withoutEmptyLegs(const std::vector<Knot>& knots, std::vector<PathFault>& faults) {
    std::vector<Knot> kept{knots.front()};
    for (std::size_t i = 1; i < knots.size(); ++i) {
        if (distance(kept.back().at, knots[i].at) >= kSamePoint) {
            kept.push_back(knots[i]);
            continue;
        }
        faults.push_back({.kind = PathFault::Kind::emptyLeg, .index = i - 1, .at = knots[i].at});
    }
    if (kept.back().index == knots.back().index) {
        return kept;
    }
    while (kept.size() > 1 && distance(kept.back().at, knots.back().at) < kSamePoint) {
        kept.pop_back();
    }
    if (distance(kept.back().at, knots.back().at) >= kSamePoint) {
        kept.push_back(knots.back());
    }
    return kept;
}

double turnBetween(const Vec3& before, const Vec3& at, const Vec3& after) {
    return angleBetween(unit(at - before), unit(after - at));
}

// Leaves out corners on a straight: they bind no bend beside them.
std::vector<Knot> withoutStraightCorners(const std::vector<Knot>& knots) {
    std::vector<Knot> kept{knots.front()};
    for (std::size_t i = 1; i + 1 < knots.size(); ++i) {
        const double turn = turnBetween(kept.back().at, knots[i].at, knots[i + 1].at);
        if (turn >= kSameDirection) {
            kept.push_back(knots[i]);
        }
    }
    if (knots.size() > 1) {
        kept.push_back(knots.back());
    }
    return kept;
}

std::vector<Leg> legsOf(const std::vector<Knot>& knots) {
    std::vector<Leg> legs;
    for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
        const Vec3 along = knots[i + 1].at - knots[i].at;
        legs.push_back({.direction = unit(along), .length = norm(along)});
    }
    return legs;
}

// Turns and tangent lengths as asked; a reversal becomes a kink, and so does a turn that was only
// made by a corner since left out.
void measureTurns(std::vector<Knot>& knots,
                  const std::vector<Leg>& legs,
                  std::vector<PathFault>& faults) {
    for (std::size_t i = 1; i + 1 < knots.size(); ++i) {
        Knot& knot = knots[i];
        knot.turn = angleBetween(legs[i - 1].direction, legs[i].direction);
        if (knot.turn > kLargestTurn) {
            faults.push_back(
                {.kind = PathFault::Kind::turnTooSharp, .index = knot.index - 1, .at = knot.at});
        }
        const bool bends = knot.turn >= kSameDirection && knot.turn <= kLargestTurn;
        knot.radius = bends ? std::max(knot.radius, 0.0) : 0.0;
        knot.tangent = tangentLength(knot.radius, std::min(knot.turn, kLargestTurn));
    }
}

PathFault shortLeg(const Knot& from, const Knot& to, double available) {
    return {.kind = PathFault::Kind::legTooShort,
            .index = from.index,
            .needed = units::Inches::of(from.tangent + to.tangent),
            .available = units::Inches::of(available),
            .at = (from.at + to.at) * 0.5};
}

// What every radius has to be multiplied by. A corner takes the smaller factor of its two legs, so
// each leg ends up with at most its length, whatever happens on the next one.
std::vector<double> shrinkFactors(const std::vector<Knot>& knots,
                                  const std::vector<Leg>& legs,
                                  std::vector<PathFault>& faults) {
    std::vector<double> factors(knots.size(), 1.0);
    for (std::size_t i = 0; i < legs.size(); ++i) {
        const double needed = knots[i].tangent + knots[i + 1].tangent;
        if (atMost(needed, legs[i].length)) {
            continue;
        }
        faults.push_back(shortLeg(knots[i], knots[i + 1], legs[i].length));
        const double factor = legs[i].length / needed;
        factors[i] = std::min(factors[i], factor);
        factors[i + 1] = std::min(factors[i + 1], factor);
    }
    return factors;
}

void shrink(std::vector<Knot>& knots, const std::vector<double>& factors) {
    for (std::size_t i = 0; i < knots.size(); ++i) {
        const double radius = knots[i].radius * factors[i];
        const bool vanishes = radius < kSamePoint;
        knots[i].radius = vanishes ? 0.0 : radius;
        knots[i].tangent = vanishes ? 0.0 : knots[i].tangent * factors[i];
    }
}

Piece arcAt(const Knot& knot, const Vec3& in, const Vec3& out) {
    const Vec3 toCentre = unit(cross(cross(in, out), in));
    return {.origin = knot.at - in * knot.tangent + toCentre * knot.radius,
            .u = -toCentre,
            .v = in,
            .radius = knot.radius,
            .length = knot.radius * knot.turn};
}

// Pieces of the whole, and where on it every kept corner's bend begins.
struct Assembly {
    std::vector<Piece> pieces;
    std::vector<double> starts;  // by knot
    double length = 0.0;
};

void append(Assembly& assembly, const Piece& piece) {
    assembly.length += piece.length;
    assembly.pieces.push_back(piece);
}

Assembly assemble(const std::vector<Knot>& knots, const std::vector<Leg>& legs) {
    Assembly assembly;
    assembly.starts.push_back(0.0);
    for (std::size_t i = 0; i < legs.size(); ++i) {
        const Vec3& direction = legs[i].direction;
        const double straight = legs[i].length - knots[i].tangent - knots[i + 1].tangent;
        // Shorter than rounding: the two bends meet.
        constexpr double kNothing = 1e-12;
        if (straight > kNothing) {
            append(assembly,
                   {.origin = knots[i].at + direction * knots[i].tangent,
                    .u = direction,
                    .length = straight});
        }
        assembly.starts.push_back(assembly.length);
        if (knots[i + 1].radius > 0.0) {
            append(assembly, arcAt(knots[i + 1], direction, legs[i + 1].direction));
        }
    }
    return assembly;
}

// Arc length at a corner that was left out: beside it on the leg from knot i, as far as that leg
// is straight.
double besideLeg(const Vec3& corner,
                 const std::vector<Knot>& knots,
                 const std::vector<Leg>& legs,
                 const Assembly& assembly,
                 std::size_t i) {
    const double begins = assembly.starts[i] + knots[i].radius * knots[i].turn;
    if (i >= legs.size()) {
        return begins;
    }
    const double along = dot(corner - knots[i].at, legs[i].direction) - knots[i].tangent;
    return std::clamp(begins + along, begins, std::max(begins, assembly.starts[i + 1]));
}

std::vector<BuiltPath::Bend> bendsOf(std::span<const CornerInput> corners,
                                     const std::vector<Knot>& knots,
                                     const std::vector<Leg>& legs,
                                     const Assembly& assembly) {
    std::vector<BuiltPath::Bend> bends;
    bends.reserve(corners.size());
    std::size_t at = 0;  // the last knot at or before the corner
    for (std::size_t c = 0; c < corners.size(); ++c) {
        while (at + 1 < knots.size() && knots[at + 1].index <= c + 1) {
            ++at;
        }
        const bool kept = knots[at].index == c + 1;
        bends.push_back({.start = kept ? assembly.starts[at]
                                       : besideLeg(corners[c].at, knots, legs, assembly, at),
                         .radius = kept ? knots[at].radius : 0.0,
                         .turn = kept ? knots[at].turn : 0.0,
                         .corner = corners[c].at});
    }
    return bends;
}

}  // namespace

BuiltPath buildPath(const Vec3& start, std::span<const CornerInput> corners, const Vec3& end) {
    BuiltPath built;
    std::vector<Knot> knots =
        withoutStraightCorners(withoutEmptyLegs(allKnots(start, corners, end), built.faults));
    const std::vector<Leg> legs = legsOf(knots);
    measureTurns(knots, legs, built.faults);
    shrink(knots, shrinkFactors(knots, legs, built.faults));
    Assembly assembly = assemble(knots, legs);
    built.bends = bendsOf(corners, knots, legs, assembly);
    if (assembly.pieces.empty()) {
        assembly.pieces.push_back({.origin = start, .u = Vec3{1.0, 0.0, 0.0}});
    }
    built.path = Path(std::move(assembly.pieces));
    return built;
}

}  // namespace gw::geometry
