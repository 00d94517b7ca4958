#include "geometry/solids.h"

#include <gmock/gmock.h>

#include <cmath>
#include <functional>
#include <limits>
#include <numbers>

#include "base/tolerance.h"
#include "peer/fcl_scene.h"
#include "support/paths.h"
#include "support/scene.h"

namespace gw::geometry {
namespace {

using test_support::arc;
using test_support::leg;
using test_support::pathOf;
using test_support::Random;
using test_support::Scene;
using test_support::wandering;

constexpr double kPi = std::numbers::pi;

Tube tubeOf(const Path& path, double radius) {
    return {&path, radius, 0.0, path.length().in()};
}

// ---- tube to tube, closed forms -----------------------------------------------------------------

struct PairRow {
    const char* name;
    Path a;
    Path b;
    double centrelines;  ///< inches between the centrelines
    const char* source;
};

void PrintTo(const PairRow& row, std::ostream* out) {
    *out << row.name << ": " << row.source;
}
std::string caseName(const testing::TestParamInfo<PairRow>& info) {
    return info.param.name;
}

Path straight(const Vec3& from, const Vec3& to) {
    return pathOf({leg(from, to)});
}

/// Part of the circle around `centre` in the plane of u and v, from u on.
Path bend(const Vec3& centre, const Vec3& u, const Vec3& v, double radius, double angle) {
    return pathOf({arc(centre + u * radius, v, -u, radius, angle)});
}

constexpr Vec3 kX{1, 0, 0};
constexpr Vec3 kY{0, 1, 0};
constexpr Vec3 kZ{0, 0, 1};
constexpr Vec3 kO{0, 0, 0};
const Vec3 kDiagonal = unit(Vec3{1, 1, 0});

// clang-format off
const PairRow kPairs[] = {
    {"SkewLegs", straight({-5, 0, 0}, {5, 0, 0}), straight({0, -5, 2}, {0, 5, 2}), 2.0, "apart along z"},
    {"CrossingLegs", straight({-5, 0, 0}, {5, 0, 0}), straight({0, -5, 0}, {0, 5, 0}), 0.0, "they meet at the origin"},
    {"ParallelLegs", straight({0, 0, 0}, {9, 0, 0}), straight({3, 1.5, 0}, {7, 1.5, 0}), 1.5, "apart along y"},
    {"ParallelLegsOneBehindTheOther", straight({0, 0, 0}, {4, 0, 0}), straight({7, 4, 0}, {9, 4, 0}), 5.0, "3-4-5"},
    {"LegsInOneLine", straight({0, 0, 0}, {4, 0, 0}), straight({9, 0, 0}, {6.5, 0, 0}), 2.5, "6.5 - 4"},
    {"OverlappingLegsInOneLine", straight({0, 0, 0}, {4, 0, 0}), straight({9, 0, 0}, {2, 0, 0}), 0.0, "they share 2 to 4"},
    {"AlmostParallelLegs", straight({0, 0, 0}, {100, 0, 0}), straight({0, 2, 0}, {100, 1, 1e-6}), 1.0, "the far ends, 1e-12 aside"},
    {"LegOfNoLength", straight({1, 2, 2}, {1, 2, 2}), straight({-2, 0, 0}, {5, 0, 0}), std::sqrt(8.0), "point to line"},
    {"TwoLegsOfNoLength", straight({1, 2, 2}, {1, 2, 2}), straight({0, 0, 0}, {0, 0, 0}), 3.0, "1-2-2-3"},
    {"CornerToCorner", straight({0, 0, 0}, {1, 1, 0}), straight({3, 2, 2}, {9, 2, 2}), 3.0, "from (1,1,0): 2-1-2"},
    {"LegOnAnArcsAxis", straight({0, 0, -5}, {0, 0, 5}), bend(kO, kX, kY, 3, kPi / 2), 3.0, "the bend's radius, everywhere"},
    {"LegThroughAnArcsCentreInItsPlane", straight({-1, -1, 0}, {1, 1, 0}), bend(kO, kX, kY, 3, kPi / 2), 3 - std::sqrt(2.0), "radius less the leg's end"},
    {"LegTouchingAnArcFromOutside", straight({-9, 3, 0}, {9, 3, 0}), bend(kO, kX, kY, 3, kPi / 2), 0.0, "tangent at the arc's end"},
    {"LegBesideAnArc", straight(kDiagonal * 5.0 - Vec3{-2, 2, 0}, kDiagonal * 5.0 + Vec3{-2, 2, 0}), bend(kO, kX, kY, 3, kPi / 2), 2.0, "5 from the centre less 3"},
    {"LegThroughAnArcsPlane", straight(kDiagonal * 3.5 - kZ * 4.0, kDiagonal * 3.5 + kZ * 4.0), bend(kO, kX, kY, 3, kPi / 2), 0.5, "3.5 from the axis less 3"},
    {"LegAboveAnArcsChord", straight({3, 0, 1}, {0, 3, 1}), bend(kO, kX, kY, 3, kPi / 2), 1.0, "above the arc's ends, 1 in"},
    {"LegOfNoLengthAtAnArcsCentre", straight(kO, kO), bend(kO, kX, kY, 3, kPi / 2), 3.0, "the radius"},
    {"ConcentricArcs", bend(kO, kX, kY, 3, kPi / 2), bend(kO, kX, kY, 4.25, kPi / 2), 1.25, "difference of radii, everywhere"},
    {"ConcentricArcsTurnedApart", bend(kO, kX, kY, 3, kPi / 4), bend(kO, kY, -kX, 3, kPi / 4), 6 * std::sin(kPi / 8), "chord of 45 deg"},
    {"ArcsOnOneAxis", bend(kO, kX, kY, 3, kPi / 2), bend(kZ * 4.0, kX, kY, 6, kPi / 2), 5.0, "3-4-5, everywhere"},
    {"EqualArcsOneAboveTheOther", bend(kO, kX, kY, 3, kPi / 2), bend(kZ * 0.8, kX, kY, 3, kPi / 2), 0.8, "apart along z, everywhere"},
    {"SameArcTwice", bend(kO, kX, kY, 3, kPi / 2), bend(kO, kX, kY, 3, kPi / 2), 0.0, "they are one"},
    {"ArcsBackToBack", bend(kO, kX, kY, 3, kPi / 2), bend({8, 8, 0}, -kX, -kY, 3, kPi / 2), 8 * std::sqrt(2.0) - 6, "between centres less both radii"},
    {"NestedEqualArcsShiftedAlongTheirMiddle", bend(kO, kX, kY, 4, kPi / 2), bend({0.5, 0.5, 0}, kX, kY, 4, kPi / 2), std::hypot(4.5, 0.5) - 4, "start of the second (4.5, 0.5) to the first's circle"},
    {"ArcsThroughEachOther", bend(kO, kX, kY, 3, kPi / 2), bend(kDiagonal * 3.0 + kZ * 2.0, -kZ, kDiagonal, 2, kPi / 2), 0.0, "the second starts on the first"},
    {"ArcsSquareToEachOther", bend(kO, kX, kY, 3, kPi / 2), bend(kDiagonal * 6.0, -unit(kDiagonal + kZ), unit(kZ - kDiagonal), 2, kPi / 2), 1.0, "6 - 2 - 3, half way along the second"},
    {"HalfTurnAroundALeg", straight({0, 0, -5}, {0, 0, 5}), bend({0.5, 0, 0}, kY, -kX, 2, kPi), 1.5, "2 - 0.5, at the middle of the half turn"},
    {"TinyArc", bend(kO, kX, kY, 1e-3, kPi / 2), straight({0, 0, 2}, {1, 0, 2}), 2.0, "a thousandth of an inch wide"},
    {"VeryWideArc", bend({0, -1e4, 0}, kY, kX, 1e4, 1e-3), straight({5, 3, -1}, {5, 3, 1}), 3 + 25.0 / 2e4, "sagitta 5^2 / (2 R)"},
};
// clang-format on

class CentrelineDistance : public testing::TestWithParam<PairRow> {};

TEST_P(CentrelineDistance, IsTheClosedForm) {
    const auto& [name, a, b, centrelines, source] = GetParam();
    const Closest there = clearance(tubeOf(a, 0.25), tubeOf(b, 0.5));
    EXPECT_NEAR(there.gap.in(), centrelines - 0.75, kClearanceError);
    const Closest back = clearance(tubeOf(b, 0.5), tubeOf(a, 0.25));
    EXPECT_NEAR(back.gap.in(), there.gap.in(), kClearanceError);
}

TEST_P(CentrelineDistance, PointsAreOnTheCentrelinesAndThatFarApart) {
    const auto& [name, a, b, centrelines, source] = GetParam();
    const Closest closest = clearance(tubeOf(a, 0.25), tubeOf(b, 0.5));
    EXPECT_NEAR(distance(closest.onA, closest.onB) - 0.75, closest.gap.in(), 1e-9);
    EXPECT_NEAR(distance(closest.onA, a.pointAt(closest.sA)), 0.0, 1e-9);
    EXPECT_NEAR(distance(closest.onB, b.pointAt(closest.sB)), 0.0, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Pairs, CentrelineDistance, testing::ValuesIn(kPairs), caseName);

TEST(Clearance, OnlyThePartThatCountsCounts) {
    const Path run = straight({0, 0, 0}, {20, 0, 0});
    const Path post = straight({15, 3, -5}, {15, 3, 5});
    EXPECT_NEAR(clearance(Tube{&run, 0.5, 0, 20}, tubeOf(post, 0.5)).gap.in(), 2.0, 1e-9);
    EXPECT_NEAR(clearance(Tube{&run, 0.5, 0, 11}, tubeOf(post, 0.5)).gap.in(), 4.0, 1e-9);
    EXPECT_NEAR(clearance(Tube{&run, 0.5, 11, 11}, tubeOf(post, 0.5)).gap.in(), 4.0, 1e-9);
    EXPECT_NEAR(clearance(Tube{&run, 0.5, 11, 11}, tubeOf(post, 0.5)).sA, 11.0, 1e-9);
}

TEST(Clearance, PartOfABendCountsFromItsOwnStart) {
    const Path quarter = bend(kO, kX, kY, 4, kPi / 2);
    const Path post = straight({4, 0, 1}, {4, 0, 9});
    // From 45 degrees on: from (4,0,1) to (4 cos 45, 4 sin 45, 0).
    const double far = std::hypot(8 * std::sin(kPi / 8), 1.0);
    EXPECT_NEAR(clearance(Tube{&quarter, 0.5, kPi, 2 * kPi}, tubeOf(post, 0.25)).gap.in(),
                far - 0.75,
                kClearanceError);
}

// ---- tube to box, closed forms ------------------------------------------------------------------

struct BoxRow {
    const char* name;
    Path path;
    double signedDistance;  ///< inches from the centreline to the box; negative inside
    const char* source;
};
void PrintTo(const BoxRow& row, std::ostream* out) {
    *out << row.name << ": " << row.source;
}
std::string boxCaseName(const testing::TestParamInfo<BoxRow>& info) {
    return info.param.name;
}

const Box kBox{{-4, -3, -2}, {4, 3, 2}};

// clang-format off
const BoxRow kBoxes[] = {
    {"LegAboveAFace", straight({-9, 0, 5}, {9, 1, 5}), 3.0, "5 - 2"},
    {"LegEndsBeforeAFace", straight({9, 0, 0}, {6, 0, 0}), 2.0, "6 - 4"},
    {"LegPastAnEdge", straight({7, 7, -9}, {7, 7, 9}), 5.0, "3-4-5 from the edge (4, 3)"},
    {"LegPastAnEdgeSlanting", straight({5, 4, -9} , {5, 4, 9}), std::sqrt(2.0), "1-1 from the edge"},
    {"LegPointsAtACorner", straight({9, 8, 7}, {6, 5, 4}), std::sqrt(12.0), "2-2-2 from the corner"},
    {"LegThroughTheMiddle", straight({-9, 0, 0}, {9, 0, 0}), -2.0, "nearest face is z = 2"},
    {"LegThroughNearAFace", straight({-9, 0, 1.5}, {9, 0, 1.5}), -0.5, "2 - 1.5"},
    {"LegThroughSlanting", straight({-9, 0, -9}, {9, 0, 9}), -2.0, "at the centre"},
    {"LegWithinEndsInside", straight({9, 0, 0}, {3, 0, 0}), -1.0, "4 - 3"},
    {"LegWithinWholly", straight({-1, 1, 1}, {1, 2, 1.5}), -1.0, "its start: 2 - 1"},
    {"LegTouchesAFace", straight({-9, 0, 2}, {9, 0, 2}), 0.0, "in the face"},
    {"LegOfNoLengthOutside", straight({4, 3, 5}, {4, 3, 5}), 3.0, "above the corner"},
    {"LegOfNoLengthInside", straight({0, 0, 1}, {0, 0, 1}), -1.0, "below the face"},
    {"ArcBulgesTowardAFace", bend({0, 0, 8}, unit(Vec3{1, 0, -1}), unit(Vec3{-1, 0, -1}), 5, kPi / 2), 1.0, "8 - 5 - 2, at its middle"},
    {"ArcParallelToAFace", bend({0, 0, 3}, kX, kY, 2, kPi / 2), 1.0, "3 - 2, everywhere"},
    {"ArcDipsIntoAFace", bend({0, 0, 6}, unit(Vec3{1, 0, -1}), unit(Vec3{-1, 0, -1}), 5, kPi / 2), -1.0, "6 - 5 = 1 lies 1 below z = 2"},
    {"ArcAroundAnEdge", bend({4, 3, 0}, kX, kY, 2.5, kPi / 2), 2.5, "the radius, everywhere"},
    {"ArcHollowOverAnEdge", bend({9, 8, 0}, -kX, -kY, 4, kPi / 2), 5 * std::sqrt(2.0) - 4, "centre to edge less the radius"},
};
// clang-format on

class DistanceToBox : public testing::TestWithParam<BoxRow> {};

TEST_P(DistanceToBox, IsTheClosedForm) {
    const Closest closest = clearance(tubeOf(GetParam().path, 0.25), toOriented(kBox));
    EXPECT_NEAR(closest.gap.in(), GetParam().signedDistance - 0.25, kClearanceError);
    EXPECT_NEAR(
        distance(closest.onA, closest.onB), std::abs(GetParam().signedDistance), kClearanceError);
    EXPECT_NEAR(distance(closest.onA, GetParam().path.pointAt(closest.sA)), 0.0, 1e-9);
}

/// Turning and shifting everything changes nothing.
TEST_P(DistanceToBox, IsTheSameInAnyAttitude) {
    constexpr std::uint64_t kSeed = 7;
    Random random(kSeed);
    for (int i = 0; i < 20; ++i) {
        const Vec3 ex = random.direction();
        const Vec3 ey = unit(cross(ex, random.direction()));
        const Vec3 ez = cross(ex, ey);
        const Vec3 shift = random.in({-9, -9, -9}, {9, 9, 9});
        const auto turned = [&](const Vec3& v) { return ex * v.x + ey * v.y + ez * v.z; };
        std::vector<Piece> pieces(GetParam().path.pieces().begin(), GetParam().path.pieces().end());
        for (Piece& piece : pieces) {
            piece = {turned(piece.origin) + shift,
                     turned(piece.u),
                     turned(piece.v),
                     piece.radius,
                     piece.length};
        }
        const Path moved = pathOf(std::move(pieces));
        const OrientedBox box{turned(kBox.centre()) + shift, {ex, ey, ez}, kBox.extents() * 0.5};
        EXPECT_NEAR(clearance(tubeOf(moved, 0.25), box).gap.in(),
                    GetParam().signedDistance - 0.25,
                    kClearanceError)
            << "seed " << kSeed;
    }
}

INSTANTIATE_TEST_SUITE_P(Boxes, DistanceToBox, testing::ValuesIn(kBoxes), boxCaseName);

TEST(Clearance, OfBoxesIsTheLargestGapAlongAnAxis) {
    const auto shifted = [](const Vec3& by) { return Box{kBox.least + by, kBox.greatest + by}; };
    EXPECT_DOUBLE_EQ(clearance(kBox, shifted({9, 0, 0})).in(), 1.0);   // 9 - 8
    EXPECT_DOUBLE_EQ(clearance(kBox, shifted({0, -8, 0})).in(), 2.0);  // 8 - 6
    EXPECT_DOUBLE_EQ(clearance(kBox, shifted({10, 7, 5})).in(), 2.0);  // 2, 1, 1
    EXPECT_DOUBLE_EQ(clearance(kBox, shifted({7, 0, 0})).in(), -1.0);  // 7 - 8
    EXPECT_DOUBLE_EQ(clearance(kBox, shifted({-8, 0, 0})).in(), 0.0);  // face to face
    EXPECT_DOUBLE_EQ(clearance(kBox, kBox).in(), -4.0);                // depth 4 is least
}

// ---- reach --------------------------------------------------------------------------------------

TEST(Reach, OfARunAlongTheDirectionIsItsFlatEnd) {
    const Path run = straight({2, 5, 5}, {17, 5, 5});
    const Reach far = reach(tubeOf(run, 0.5), kX);
    EXPECT_NEAR(far.value, 17.0, 1e-12);
    EXPECT_NEAR(far.s, 15.0, 1e-12);
    EXPECT_NEAR(reach(tubeOf(run, 0.5), kY).value, 5.5, 1e-12);
    EXPECT_NEAR(reach(tubeOf(run, 0.5), -kX).value, -2.0, 1e-12);
}

TEST(Reach, OfABendIsItsOuterSide) {
    const Path hairpin = bend({10, 5, 5}, -kY, kX, 3, kPi);
    const Reach far = reach(tubeOf(hairpin, 0.5), kX);
    EXPECT_NEAR(far.value, 13.5, 1e-12);  // 10 + 3 + r
    EXPECT_NEAR(far.s, 3 * kPi / 2, 1e-9);
    EXPECT_NEAR(distance(far.at, {13, 5, 5}), 0.0, 1e-9);
    // To the inside nothing reaches beyond the inner side at the ends: x = 10.
    EXPECT_NEAR(reach(tubeOf(hairpin, 0.5), -kX).value, -10.0, 1e-12);
}

TEST(Reach, CountsOnlyThePartAskedFor) {
    const Path hairpin = bend({10, 5, 5}, -kY, kX, 3, kPi);
    // First eighth turn: the end disc at 45 degrees, tilted: x = 10 + (3 + r) sin 45.
    const Tube part{&hairpin, 0.5, 0.0, 3 * kPi / 4};
    EXPECT_NEAR(reach(part, kX).value, 10 + 3.5 * std::sqrt(0.5), 1e-9);
}

TEST(Reach, AgreesWithDenseSamplesAlsoForBendsTighterThanTheTube) {
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Random random(seed);
        const Path path = wandering(random, random.in({0, 0, 0}, {9, 9, 9}), 3);
        const double radius = seed % 4 == 0 ? random.between(1.0, 6.0) : random.between(0.2, 0.6);
        const Vec3 n = random.direction();
        double sampled = -1e9;
        for (int i = 0; i <= 2000; ++i) {
            const double s = path.length().in() * i / 2000.0;
            const double along = dot(n, path.tangentAt(s));
            sampled = std::max(
                sampled,
                dot(n, path.pointAt(s)) + radius * std::sqrt(std::max(0.0, 1.0 - along * along)));
        }
        const double exact = reach(tubeOf(path, radius), n).value;
        EXPECT_GE(exact, sampled - 1e-12);
        EXPECT_LE(exact, sampled + 0.02 * radius);  // a step of up to 0.03 in
    }
}

TEST(Bounds, AreTheReachInSixDirections) {
    const Box box = bounds(tubeOf(bend({10, 5, 5}, -kY, kX, 3, kPi), 0.5));
    EXPECT_NEAR(distance(box.least, {10, 1.5, 4.5}), 0.0, 1e-9);
    EXPECT_NEAR(distance(box.greatest, {13.5, 8.5, 5.5}), 0.0, 1e-9);
}

/// Of slanting tubes, and of such whose arcs lie in the planes of the axes and begin and end along
/// them, also tighter than the tube is thick.
TEST(Bounds, AreTheReachInSixDirectionsOfAnyTube) {
    for (unsigned seed = 0; seed < 300; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Random random(seed);
        const double radius = random.between(0.1, 1.5);
        const double turn = seed % 3 == 0 ? kPi / 2 : random.between(0.1, 2.0 * kPi);
        const Path path =
            seed % 2 == 0
                ? wandering(random, random.in({0, 0, 0}, {9, 9, 9}), 3)
                : bend({10, 5, 5}, seed % 5 == 0 ? kX : -kY, kZ, random.between(0.5, 4.0), turn);
        const auto tube = tubeOf(path, radius);
        const Box box = bounds(tube);
        EXPECT_NEAR(box.greatest.x, reach(tube, kX).value, 1e-12);
        EXPECT_NEAR(box.greatest.y, reach(tube, kY).value, 1e-12);
        EXPECT_NEAR(box.greatest.z, reach(tube, kZ).value, 1e-12);
        EXPECT_NEAR(box.least.x, -reach(tube, -kX).value, 1e-12);
        EXPECT_NEAR(box.least.y, -reach(tube, -kY).value, 1e-12);
        EXPECT_NEAR(box.least.z, -reach(tube, -kZ).value, 1e-12);
    }
}

// ---- random pairs against samples and another library ----------------------------------------

/// Nearest of a coarse grid of points, then a grid ever finer around it. Never below the true
/// least.
double sampledLeast(const std::function<double(double, double)>& f, double a, double b) {
    constexpr int kCoarse = 160;
    constexpr int kFine = 8;
    double s = 0.0;
    double t = 0.0;
    double least = std::numeric_limits<double>::infinity();
    const auto look = [&](double fromS, double stepS, double fromT, double stepT, int count) {
        for (int i = 0; i <= count; ++i) {
            for (int j = 0; j <= count; ++j) {
                const double here = std::clamp(fromS + stepS * i, 0.0, a);
                const double there = std::clamp(fromT + stepT * j, 0.0, b);
                const double value = f(here, there);
                if (value < least) {
                    least = value;
                    s = here;
                    t = there;
                }
            }
        }
    };
    look(0.0, a / kCoarse, 0.0, b / kCoarse, kCoarse);
    double stepS = a / kCoarse;
    double stepT = b / kCoarse;
    for (int round = 0; round < 12; ++round) {
        look(s - stepS, stepS * 2 / kFine, t - stepT, stepT * 2 / kFine, kFine);
        stepS *= 0.5;
        stepT *= 0.5;
    }
    return least;
}

TEST(Clearance, OfRandomTubesIsNeverAboveTheSampledOneAndAlwaysReal) {
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Random random(seed);
        const Path a = wandering(random, random.in({0, 0, 0}, {12, 12, 12}), 2);
        const Path b = wandering(random, random.in({0, 0, 0}, {12, 12, 12}), 2);
        const Closest closest = clearance(tubeOf(a, 0.3), tubeOf(b, 0.4));
        const double sampled =
            sampledLeast([&](double s, double t) { return distance(a.pointAt(s), b.pointAt(t)); },
                         a.length().in(),
                         b.length().in());
        EXPECT_LE(closest.gap.in(), sampled - 0.7 + kClearanceError);
        EXPECT_NEAR(closest.gap.in(), distance(closest.onA, closest.onB) - 0.7, 1e-9);
        EXPECT_NEAR(distance(closest.onA, a.pointAt(closest.sA)), 0.0, 1e-6);
        EXPECT_NEAR(distance(closest.onB, b.pointAt(closest.sB)), 0.0, 1e-6);
    }
}

/// Signed distance to a box, straight from its meaning.
double toBox(const Box& box, const Vec3& p) {
    const Vec3 q = p - box.centre();
    const Vec3 h = box.extents() * 0.5;
    const Vec3 d{std::abs(q.x) - h.x, std::abs(q.y) - h.y, std::abs(q.z) - h.z};
    const Vec3 out{std::max(d.x, 0.0), std::max(d.y, 0.0), std::max(d.z, 0.0)};
    return norm(out) + std::min(0.0, std::max({d.x, d.y, d.z}));
}

TEST(Clearance, ToRandomBoxesIsNeverAboveTheSampledOneAndAlwaysReal) {
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Random random(seed);
        const Path path = wandering(random, random.in({0, 0, 0}, {12, 12, 12}), 3);
        const Vec3 corner = random.in({0, 0, 0}, {10, 10, 10});
        const Box box{corner, corner + random.in({1, 1, 1}, {6, 6, 6})};
        const Closest closest = clearance(tubeOf(path, 0.3), toOriented(box));
        double sampled = std::numeric_limits<double>::infinity();
        for (int i = 0; i <= 4000; ++i) {
            sampled = std::min(sampled, toBox(box, path.pointAt(path.length().in() * i / 4000.0)));
        }
        EXPECT_LE(closest.gap.in(), sampled - 0.3 + kClearanceError);
        EXPECT_NEAR(closest.gap.in(), toBox(box, path.pointAt(closest.sA)) - 0.3, 1e-9);
        EXPECT_NEAR(toBox(box, closest.onB), 0.0, 1e-9);
    }
}

/// Chords of one degree stray half of R (1 - cos 0.5 deg) from their arc: 1e-4 in at 5 in.
TEST(Clearance, AgreesWithAGeneralCollisionLibrary) {
    constexpr double kChordError = 1e-4;
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Scene scene = test_support::looseScene(2, 1, seed);
        const Tube a = tubeOf(scene.tubes[0].path, scene.tubes[0].radius);
        const Tube b = tubeOf(scene.tubes[1].path, scene.tubes[1].radius);
        const double tubes = test_support::fclGap(scene, 0, 1, kPi / 180);
        const double ours = clearance(a, b).gap.in();
        if (ours > kClearanceError) {
            EXPECT_NEAR(ours, tubes, kClearanceError + 2 * kChordError);
        } else {
            EXPECT_LE(tubes, 2 * kClearanceError);
        }
        const double block = test_support::fclGapToBlock(scene, 0, 0, kPi / 180);
        const double oursToBlock = clearance(a, toOriented(scene.blocks[0])).gap.in();
        if (oursToBlock > kClearanceError) {
            EXPECT_NEAR(oursToBlock, block, kClearanceError + 2 * kChordError);
        } else {
            EXPECT_LE(block, 2 * kClearanceError);
        }
    }
}

}  // namespace
}  // namespace gw::geometry
