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

Box bounds(const Tube& tube) {
    Box box{{kFar, kFar, kFar}, {-kFar, -kFar, -kFar}};
    for (const Bow& bow : bowsOf(tube)) {
        const auto include = [&](const Vec3& axis, double& least, double& greatest) {
            const Extent extent = extentAlong(*bow.piece, bow.first, bow.last, tube.radius, axis);
            least = std::min(least, extent.least);
            greatest = std::max(greatest, extent.greatest);
        };
        include({1, 0, 0}, box.least.x, box.greatest.x);
        include({0, 1, 0}, box.least.y, box.greatest.y);
        include({0, 0, 1}, box.least.z, box.greatest.z);
    }
    return box;
}

}  // namespace gw::geometry
