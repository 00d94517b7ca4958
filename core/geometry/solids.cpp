#include "geometry/solids.h"

#include <algorithm>
#include <limits>

#include "base/contract.h"
#include "geometry/arc_turns.h"
#include "geometry/bow.h"

namespace gw::geometry {

namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();

std::vector<Bow> bowsOf(const Tube& tube) {
    CONTRACT(tube.path != nullptr && !tube.path->empty());
    std::vector<Bow> bows;
    bows.reserve(2 * tube.path->pieces().size());
    forEachBow(*tube.path, tube.from, tube.to, {}, [&](const Bow& bow) { bows.push_back(bow); });
    return bows;
}

/// A ball around each bow, to pass over those too far away.
struct Ball {
    Vec3 centre;
    double radius = 0.0;
};

std::vector<Ball> ballsAround(const std::vector<Bow>& bows) {
    std::vector<Ball> balls;
    balls.reserve(bows.size());
    for (const Bow& bow : bows) {
        balls.push_back(
            {(bow.start + bow.end) * 0.5, distance(bow.start, bow.end) * 0.5 + bow.stray});
    }
    return balls;
}

/// The nearest so far, and on which bows.
struct Nearest {
    Feet feet{kFar, {}, {}};
    const Bow* a = nullptr;
    const Bow* b = nullptr;

    /// Takes what the finder finds below the best so far.
    template <class Other>
    void lower(NearestFinder& finder, const Bow& bow, const Other& other, const Bow* bowB) {
        const auto found = finder.find(bow, other, feet.distance);
        if (found && found->distance < feet.distance) {
            *this = {*found, &bow, bowB};
        }
    }

    Closest closest(double radii) const {
        CONTRACT(a != nullptr);  // a tube has at least one piece
        return {units::Inches::of(feet.distance - radii),
                feet.onA,
                feet.onB,
                lengthAt(*a, feet.onA),
                b == nullptr ? 0.0 : lengthAt(*b, feet.onB)};
    }
};

}  // namespace

OrientedBox toOriented(const Box& box) {
    OrientedBox oriented;
    oriented.centre = box.centre();
    oriented.half = box.extents() * 0.5;
    return oriented;
}

Closest clearance(const Tube& a, const Tube& b) {
    const std::vector<Bow> bowsA = bowsOf(a);
    const std::vector<Bow> bowsB = bowsOf(b);
    const std::vector<Ball> ballsA = ballsAround(bowsA);
    const std::vector<Ball> ballsB = ballsAround(bowsB);
    NearestFinder finder;
    Nearest best;
    for (std::size_t i = 0; i < bowsA.size(); ++i) {
        for (std::size_t j = 0; j < bowsB.size(); ++j) {
            const double apart =
                distance(ballsA[i].centre, ballsB[j].centre) - ballsA[i].radius - ballsB[j].radius;
            if (apart < best.feet.distance) {
                best.lower(finder, bowsA[i], bowsB[j], &bowsB[j]);
            }
        }
    }
    return best.closest(a.radius + b.radius);
}

Closest clearance(const Tube& a, const OrientedBox& b) {
    const std::vector<Bow> bows = bowsOf(a);
    NearestFinder finder;
    Nearest best;
    for (const Bow& bow : bows) {
        best.lower(finder, bow, b, nullptr);
    }
    return best.closest(a.radius);
}

units::Inches clearance(const Box& a, const Box& b) {
    const Vec3 after = b.least - a.greatest;
    const Vec3 before = a.least - b.greatest;
    return units::Inches::of(std::max({after.x, after.y, after.z, before.x, before.y, before.z}));
}

Reach reach(const Tube& tube, const Vec3& direction) {
    CONTRACT(tube.path != nullptr);
    Reach best{-kFar, 0.0, {}};
    for (const Bow& bow : bowsOf(tube)) {
        const Extent extent = extentAlong(*bow.piece, bow.first, bow.last, tube.radius, direction);
        if (extent.greatest > best.value) {
            best = {extent.greatest,
                    bow.offset + extent.greatestAt,
                    bow.piece->pointAt(extent.greatestAt)};
        }
    }
    return best;
}

namespace {

constexpr Vec3 kX{1, 0, 0};
constexpr Vec3 kY{0, 1, 0};
constexpr Vec3 kZ{0, 0, 1};

/// A disc of the tube, for one axis.
void include(double& least, double& greatest, double centre, double half) {
    least = std::min(least, centre - half);
    greatest = std::max(greatest, centre + half);
}

/// A disc of the tube; gives the tangent there.
Vec3 includeDisc(Box& box, const Piece& piece, double at, double radius) {
    const Vec3 centre = piece.pointAt(at);
    const Vec3 tangent = piece.tangentAt(at);
    include(box.least.x, box.greatest.x, centre.x, discReach(radius, kX, tangent));
    include(box.least.y, box.greatest.y, centre.y, discReach(radius, kY, tangent));
    include(box.least.z, box.greatest.z, centre.z, discReach(radius, kZ, tangent));
    return tangent;
}

/// A bow with its turns, for one axis.
void includeTurns(
    double& least, double& greatest, const Bow& bow, double radius, const Vec3& axis) {
    const Extent extent = extentAlong(*bow.piece, bow.first, bow.last, radius, axis);
    least = std::min(least, extent.least);
    greatest = std::max(greatest, extent.greatest);
}

/// Along one axis: what the arc's plane has of it, and the tangent at the two ends of a bow.
struct AlongAxis {
    double u;
    double v;
    double from;
    double to;
};

/// Whether the bow turns between its ends. It turns at most a quarter, so not where the tangent
/// keeps its sign; nor where it does so at an end.
bool mayTurn(const AlongAxis& arc) {
    constexpr double kSurelyOneSign = 1e-9;
    constexpr double kAtEnd = 0.25e-18;  // square of a sine; Turns leaves out four times as much
    const double swing = arc.u * arc.u + arc.v * arc.v;
    const double nearest = std::min(arc.from * arc.from, arc.to * arc.to);
    return swing > 0.0 && arc.from * arc.to <= kSurelyOneSign && nearest > kAtEnd * swing;
}

}  // namespace

Box bounds(const Tube& tube) {
    CONTRACT(tube.path != nullptr && !tube.path->empty());
    Box box{{kFar, kFar, kFar}, {-kFar, -kFar, -kFar}};
    forEachBow(*tube.path, tube.from, tube.to, {}, [&](const Bow& bow) {
        const Vec3 from = includeDisc(box, *bow.piece, bow.first, tube.radius);
        const Vec3 to = includeDisc(box, *bow.piece, bow.last, tube.radius);
        const Piece& arc = *bow.piece;
        if (!arc.isArc()) {
            return;
        }
        const bool tight = arc.radius <= tube.radius;
        if (tight || mayTurn({arc.u.x, arc.v.x, from.x, to.x})) {
            includeTurns(box.least.x, box.greatest.x, bow, tube.radius, kX);
        }
        if (tight || mayTurn({arc.u.y, arc.v.y, from.y, to.y})) {
            includeTurns(box.least.y, box.greatest.y, bow, tube.radius, kY);
        }
        if (tight || mayTurn({arc.u.z, arc.v.z, from.z, to.z})) {
            includeTurns(box.least.z, box.greatest.z, bow, tube.radius, kZ);
        }
    });
    return box;
}

}  // namespace gw::geometry
