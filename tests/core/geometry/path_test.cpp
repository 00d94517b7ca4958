#include "geometry/path.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "base/tolerance.h"
#include "core/support/shortest_paths.h"

namespace gw::geometry {
namespace {

using Fault = PathFault::Kind;
constexpr double kPi = std::numbers::pi;
// 500 kcmil THHN: outside diameter 0.949 in (NFPA 70 Chapter 9 Table 5), 4 diameters inside the
// bend, so 4.5 on the centreline.
constexpr double kRadius500 = 4.5 * 0.949;

std::vector<CornerInput> cornersAt(std::initializer_list<Vec3> points, double radius) {
    std::vector<CornerInput> corners;
    for (const Vec3& point : points) {
        corners.push_back({point, radius});
    }
    return corners;
}

void expectNear(const Vec3& a, const Vec3& b, double within) {
    EXPECT_LE(distance(a, b), within) << "(" << a.x << ", " << a.y << ", " << a.z << ") and ("
                                      << b.x << ", " << b.y << ", " << b.z << ")";
}

// ---- worked numbers -------------------------------------------------------------------------

// L - sum of r (2 tan(t/2) - t); 90 degrees: 0.4292 r, 45 degrees: 0.0430 r.
TEST(BuildPath, TwoRightAnglesInSpaceHaveTheWorkedMarks) {
    const auto corners = cornersAt({{12, 0, 0}, {12, 10, 0}}, kRadius500);
    const BuiltPath built = buildPath({0, 0, 0}, corners, {12, 10, 8});
    EXPECT_TRUE(built.faults.empty());
    EXPECT_NEAR(built.path.length().in(), 26.3342, 5e-5);
    ASSERT_EQ(built.bends.size(), 2U);
    EXPECT_NEAR(built.bends[0].start, 7.7295, 5e-5);
    EXPECT_NEAR(built.bends[0].start + built.bends[0].radius * built.bends[0].turn, 14.4376, 5e-5);
    EXPECT_NEAR(built.bends[1].start, 15.8966, 5e-5);
    EXPECT_NEAR(built.bends[1].start + built.bends[1].radius * built.bends[1].turn, 22.6047, 5e-5);
}

TEST(BuildPath, FortyFiveThenNinetyInSpaceHasTheWorkedMarks) {
    const auto corners = cornersAt({{10, 0, 0}, {16, 6, 0}}, kRadius500);
    const BuiltPath built = buildPath({0, 0, 0}, corners, {16, 6, 9});
    EXPECT_TRUE(built.faults.empty());
    EXPECT_NEAR(built.path.length().in(), 25.4686, 5e-5);
    ASSERT_EQ(built.bends.size(), 2U);
    EXPECT_NEAR(built.bends[0].turn, kPi / 4, 1e-12);
    EXPECT_NEAR(built.bends[1].turn, kPi / 2, 1e-12);
    EXPECT_NEAR(built.bends[0].start, 8.2311, 5e-5);
    EXPECT_NEAR(built.bends[1].start, 14.0310, 5e-5);
    EXPECT_NEAR(built.path.length().in() - 20.7391, 4.7295, 5e-5);
}

// S-bend of two equal arcs without a straight: h = 2r(1 - cos t), L = 2r sin t.
TEST(BuildPath, OffsetWithoutStraightIsTwoArcsOfTheWorkedLength) {
    const double turn = 40.0186 * kPi / 180.0;
    const double run = 5.4922;
    const double tangent = tangentLength(kRadius500, turn);
    const auto corners = cornersAt({{tangent, 0, 0}, {run - tangent, 2.0, 0}}, kRadius500);
    const BuiltPath built = buildPath({0, 0, 0}, corners, {run, 2.0, 0});
    // The worked numbers are rounded to 1e-4, so the legs may be short by as much.
    for (const PathFault& fault : built.faults) {
        EXPECT_NEAR(fault.needed.in(), fault.available.in(), 2e-4);
    }
    EXPECT_NEAR(built.path.length().in(), 5.9655, 2e-4);
}

// g = sqrt(L² + h² - 4rh); t = atan2(L, 2r - h) - atan2(g, 2r); length 2rt + g.
TEST(BuildPath, OffsetWithStraightHasTheWorkedLengthAndStraight) {
    const double turn = 15.4697 * kPi / 180.0;
    const double tangent = tangentLength(kRadius500, turn);
    const auto corners = cornersAt({{tangent, 0, 0}, {12.0 - tangent, 3.0, 0}}, kRadius500);
    const BuiltPath built = buildPath({0, 0, 0}, corners, {12.0, 3.0, 0});
    EXPECT_TRUE(built.faults.empty());
    EXPECT_NEAR(built.path.length().in(), 12.3934, 1e-4);
    EXPECT_NEAR(built.bends[1].start - built.bends[0].radius * built.bends[0].turn, 10.0873, 1e-4);
}

// h = 3, L = 9, radius free: r = (L² + h²)/(4h) = 7.5, t = 36.8699 degrees = atan(3/4).
TEST(BuildPath, OffsetOfFreeRadiusIsExactlyTwoArcs) {
    const double tangent = tangentLength(7.5, std::atan(0.75));
    const auto corners = cornersAt({{tangent, 0, 0}, {9.0 - tangent, 3.0, 0}}, 7.5);
    const BuiltPath built = buildPath({0, 0, 0}, corners, {9.0, 3.0, 0});
    EXPECT_TRUE(built.faults.empty());
    EXPECT_NEAR(built.path.length().in(), 15.0 * std::atan(0.75), 1e-9);
    EXPECT_NEAR(built.path.length().in(), 9.6525, 5e-5);
}

struct PlaneRow {
    const char* name;
    test::Pose from;
    test::Pose to;
    const char* letters;
    double length;  // inches, radius kRadius500; by the closed forms of Dubins (1957)
};

void PrintTo(const PlaneRow& row, std::ostream* out) {
    *out << row.letters << " by the closed forms of Dubins (1957), " << row.length << " in";
}

std::string planeName(const testing::TestParamInfo<PlaneRow>& row) {
    return row.param.name;
}

class ShortestInPlane : public testing::TestWithParam<PlaneRow> {};

TEST_P(ShortestInPlane, IsAFilletedPolylineOfThatLength) {
    const PlaneRow& row = GetParam();
    const auto word = test::shortestWord(row.letters, row.from, row.to, kRadius500);
    ASSERT_TRUE(word.has_value());
    const test::Polyline line = test::asPolyline(*word, row.from, kRadius500);
    const BuiltPath built = buildPath(line.start, line.corners, line.end);
    EXPECT_TRUE(built.faults.empty());
    EXPECT_NEAR(built.path.length().in(), row.length, 1e-4);
    expectNear(built.path.end(), {row.to.x, row.to.y, 0.0}, 1e-9);
    expectNear(built.path.tangentAt(built.path.length().in()),
               {std::cos(row.to.heading), std::sin(row.to.heading), 0.0},
               1e-9);
}

// clang-format off
const PlaneRow kPlaneRows[] = {
    {"TurnLeftLsl",       {0, 0, 0},       {14, 8, kPi / 2},  "LSL", 17.1279},
    {"TurnLeftRsr",       {0, 0, 0},       {14, 8, kPi / 2},  "RSR", 68.9652},
    {"TurnLeftLsr",       {0, 0, 0},       {14, 8, kPi / 2},  "LSR", 42.4839},
    {"TurnLeftRsl",       {0, 0, 0},       {14, 8, kPi / 2},  "RSL", 43.9029},
    {"UpThenAlongRsl",    {0, 0, kPi / 2}, {20, 3, 0},        "RSL", 22.4896},
    {"UpThenAlongLsr",    {0, 0, kPi / 2}, {20, 3, 0},        "LSR", 45.4981},
    {"UpThenAlongRsr",    {0, 0, kPi / 2}, {20, 3, 0},        "RSR", 49.3212},
    {"OffsetLsr",         {0, 0, 0},       {12, 3, 0},        "LSR", 12.3934},
    {"TooCloseLrl",       {0, 0, kPi / 2}, {4, 0, -kPi / 2},  "LRL", 26.1655},
    {"TooCloseRsr",       {0, 0, kPi / 2}, {4, 0, -kPi / 2},  "RSR", 44.7895},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Worked, ShortestInPlane, testing::ValuesIn(kPlaneRows), planeName);

struct SpaceRow {
    const char* name;
    Vec3 from;
    Vec3 fromDirection;
    Vec3 to;
    Vec3 toDirection;
    double firstTurn;   // degrees
    double secondTurn;  // degrees
    double straight;
    double length;
};

void PrintTo(const SpaceRow& row, std::ostream* out) {
    *out << "arc, straight, arc by fixed point, " << row.length << " in";
}

std::string spaceName(const testing::TestParamInfo<SpaceRow>& row) {
    return row.param.name;
}

class ShortestInSpace : public testing::TestWithParam<SpaceRow> {};

TEST_P(ShortestInSpace, IsAFilletedPolylineOfTwoCorners) {
    const SpaceRow& row = GetParam();
    const auto found =
        test::arcStraightArc(row.from, row.fromDirection, row.to, row.toDirection, kRadius500);
    ASSERT_TRUE(found.has_value());
    const BuiltPath built =
        buildPath(row.from, cornersAt({found->first, found->second}, kRadius500), row.to);
    EXPECT_TRUE(built.faults.empty());
    EXPECT_NEAR(built.path.length().in(), row.length, 5e-5);
    EXPECT_NEAR(built.bends[0].turn * 180.0 / kPi, row.firstTurn, 5e-5);
    EXPECT_NEAR(built.bends[1].turn * 180.0 / kPi, row.secondTurn, 5e-5);
    EXPECT_NEAR(built.bends[0].start, 0.0, 1e-9);
    EXPECT_NEAR(built.bends[1].start - kRadius500 * built.bends[0].turn, row.straight, 5e-5);
}

// Turns of the plane row: the parts 1.5632 + 10.4198 + 5.1449 in of its worked LSL, over the
// radius.
// clang-format off
const SpaceRow kSpaceRows[] = {
    {"UpThenAlong", {0, 0, 0}, {0, 0, 1}, {10, 12, 14}, {1, 0, 0}, 49.2513, 67.1449, 13.6572, 22.3327},
    {"Offset",      {0, 0, 0}, {1, 0, 0}, {16, 6, 5},   {1, 0, 0}, 29.6108, 29.6108, 13.5494, 17.9634},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Worked, ShortestInSpace, testing::ValuesIn(kSpaceRows), spaceName);

TEST(BuildPath, PlaneCaseThroughTheSpaceSolverAgrees) {
    const auto found =
        test::arcStraightArc({0, 0, 0}, {1, 0, 0}, {14, 8, 0}, {0, 1, 0}, kRadius500);
    ASSERT_TRUE(found.has_value());
    const BuiltPath built =
        buildPath({0, 0, 0}, cornersAt({found->first, found->second}, kRadius500), {14, 8, 0});
    EXPECT_NEAR(built.path.length().in(), 17.1279, 5e-5);
}

// ---- what cannot be bent --------------------------------------------------------------------

TEST(BuildPath, NoCornersIsOneStraightLeg) {
    const BuiltPath built = buildPath({1, 2, 3}, {}, {4, 6, 3});
    ASSERT_EQ(built.path.pieces().size(), 1U);
    EXPECT_DOUBLE_EQ(built.path.length().in(), 5.0);  // 3-4-5 triangle
    EXPECT_EQ(built.path.start(), (Vec3{1, 2, 3}));
    expectNear(built.path.end(), {4, 6, 3}, 1e-14);
    expectNear(built.path.tangentAt(2.0), {0.6, 0.8, 0}, 1e-15);
}

TEST(BuildPath, MiddleLegTooShortSaysByHowMuchAndShrinksBothBends) {
    // Two right angles of radius 3 need 6 in between them; there are 4, so both become 2.
    const BuiltPath built =
        buildPath({0, 0, 0}, cornersAt({{10, 0, 0}, {10, 4, 0}}, 3.0), {20, 4, 0});
    ASSERT_EQ(built.faults.size(), 1U);
    EXPECT_EQ(built.faults[0].kind, Fault::legTooShort);
    EXPECT_EQ(built.faults[0].index, 1U);
    EXPECT_NEAR(built.faults[0].needed.in(), 6.0, 1e-12);
    EXPECT_NEAR(built.faults[0].available.in(), 4.0, 1e-12);
    EXPECT_EQ(built.faults[0].at, (Vec3{10, 2, 0}));
    EXPECT_NEAR(built.bends[0].radius, 2.0, 1e-12);
    EXPECT_NEAR(built.bends[1].radius, 2.0, 1e-12);
    // 8 straight + quarter circle + quarter circle + 8 straight.
    EXPECT_NEAR(built.path.length().in(), 16.0 + 2.0 * kPi, 1e-12);
}

TEST(BuildPath, UnequalRadiiShrinkInProportion) {
    // Right angles of radius 4 and 2 on 3 in: factor 3/6, radii 2 and 1.
    const std::vector<CornerInput> corners{{{10, 0, 0}, 4.0}, {{10, 3, 0}, 2.0}};
    const BuiltPath built = buildPath({0, 0, 0}, corners, {20, 3, 0});
    EXPECT_NEAR(built.bends[0].radius, 2.0, 1e-12);
    EXPECT_NEAR(built.bends[1].radius, 1.0, 1e-12);
}

TEST(BuildPath, CornerBetweenTwoShortLegsTakesTheSmallerFactor) {
    // Legs of 10, 4, 2, 10 in; right angles of radius 3 at three corners. Middle legs need 6:
    // factors 4/6 and 2/6, so the radii are 2, 1, 1.
    const BuiltPath built =
        buildPath({0, 0, 0}, cornersAt({{10, 0, 0}, {10, 4, 0}, {12, 4, 0}}, 3.0), {12, 14, 0});
    ASSERT_EQ(built.faults.size(), 2U);
    EXPECT_EQ(built.faults[0].index, 1U);
    EXPECT_EQ(built.faults[1].index, 2U);
    EXPECT_NEAR(built.bends[0].radius, 2.0, 1e-12);
    EXPECT_NEAR(built.bends[1].radius, 1.0, 1e-12);
    EXPECT_NEAR(built.bends[2].radius, 1.0, 1e-12);
}

struct LegRow {
    const char* name;
    double leg;  // inches between two right angles of radius 3, which need 6
    bool fault;
};

void PrintTo(const LegRow& row, std::ostream* out) {
    *out << row.leg << " in where 2 x 3 tan 45 = 6 are needed";
}

std::string legName(const testing::TestParamInfo<LegRow>& row) {
    return row.param.name;
}

class LegAtTheLimit : public testing::TestWithParam<LegRow> {};

TEST_P(LegAtTheLimit, IsComparedWithTheOneSlack) {
    const LegRow& row = GetParam();
    const BuiltPath built =
        buildPath({0, 0, 0}, cornersAt({{10, 0, 0}, {10, row.leg, 0}}, 3.0), {20, row.leg, 0});
    EXPECT_EQ(!built.faults.empty(), row.fault);
    EXPECT_EQ(built.bends[0].radius < 3.0, row.fault);
}

const LegRow kLegRows[] = {
    {"Exact", 6.0, false},
    {"ASixteenthMore", 6.0625, false},
    {"ASixteenthLess", 5.9375, true},
    {"WithinTheSlack", 6.0 - 0.5 * kLimitSlack, false},
    {"BeyondTheSlack", 6.0 - 2.0 * kLimitSlack, true},
};
INSTANTIATE_TEST_SUITE_P(Limit, LegAtTheLimit, testing::ValuesIn(kLegRows), legName);

TEST(BuildPath, EndLegMayBeUsedUpWholly) {
    // A right angle of radius 3 in takes the last 3 in; one more needed and the first leg is short.
    const BuiltPath fits = buildPath({0, 0, 0}, cornersAt({{3, 0, 0}}, 3.0), {3, 3, 0});
    EXPECT_TRUE(fits.faults.empty());
    EXPECT_EQ(fits.path.pieces().size(), 1U);
    EXPECT_NEAR(fits.path.length().in(), 1.5 * kPi, 1e-12);
    const BuiltPath shortFirst = buildPath({0, 0, 0}, cornersAt({{2, 0, 0}}, 3.0), {2, 3, 0});
    ASSERT_EQ(shortFirst.faults.size(), 1U);
    EXPECT_EQ(shortFirst.faults[0].index, 0U);
}

TEST(BuildPath, CornerOnAStraightMakesNoArcAndBindsNoBend) {
    // The corner 1 in before a bend of tangent length 3 is no obstacle to it.
    const std::vector<CornerInput> corners{{{9, 0, 0}, 3.0}, {{10, 0, 0}, 3.0}};
    const BuiltPath built = buildPath({0, 0, 0}, corners, {10, 10, 0});
    EXPECT_TRUE(built.faults.empty());
    ASSERT_EQ(built.bends.size(), 2U);
    EXPECT_EQ(built.bends[0].turn, 0.0);
    EXPECT_EQ(built.bends[0].radius, 0.0);
    EXPECT_NEAR(built.bends[0].start, 7.0, 1e-12);  // clamped to where the leg stops being straight
    EXPECT_NEAR(built.bends[1].start, 7.0, 1e-12);
    EXPECT_NEAR(built.path.length().in(), 14.0 + 1.5 * kPi, 1e-12);
}

TEST(BuildPath, CornerOnAStraightIsMarkedWhereItLies) {
    const BuiltPath built = buildPath({0, 0, 0}, cornersAt({{4, 0, 0}}, 3.0), {10, 0, 0});
    EXPECT_EQ(built.path.pieces().size(), 1U);
    EXPECT_NEAR(built.bends[0].start, 4.0, 1e-12);
}

TEST(BuildPath, ZeroRadiusIsAKinkWithoutFault) {
    const BuiltPath built = buildPath({0, 0, 0}, cornersAt({{3, 0, 0}}, 0.0), {3, 4, 0});
    EXPECT_TRUE(built.faults.empty());
    EXPECT_NEAR(built.path.length().in(), 7.0, 1e-12);
    EXPECT_NEAR(built.bends[0].start, 3.0, 1e-12);
    EXPECT_NEAR(built.bends[0].turn, kPi / 2, 1e-12);
}

struct TurnRow {
    const char* name;
    double degrees;
    bool fault;
};

void PrintTo(const TurnRow& row, std::ostream* out) {
    *out << row.degrees << " degrees; the limit is 175";
}

std::string turnName(const testing::TestParamInfo<TurnRow>& row) {
    return row.param.name;
}

class TurnAtTheLimit : public testing::TestWithParam<TurnRow> {};

TEST_P(TurnAtTheLimit, IsAFaultBeyond175Degrees) {
    const TurnRow& row = GetParam();
    const double turn = row.degrees * kPi / 180.0;
    const Vec3 end{100.0 + 100.0 * std::cos(turn), 100.0 * std::sin(turn), 0.0};
    const BuiltPath built = buildPath({0, 0, 0}, cornersAt({{100, 0, 0}}, 1.0), end);
    ASSERT_EQ(built.faults.size(), row.fault ? 1U : 0U);
    if (row.fault) {
        EXPECT_EQ(built.faults[0].kind, Fault::turnTooSharp);
        EXPECT_EQ(built.faults[0].index, 0U);
        EXPECT_EQ(built.faults[0].at, (Vec3{100, 0, 0}));
        EXPECT_NEAR(built.path.length().in(), 200.0, 1e-9);
    }
    EXPECT_EQ(built.bends[0].radius, row.fault ? 0.0 : 1.0);
}

const TurnRow kTurnRows[] = {
    {"Below", 174.9, false}, {"Above", 175.1, true}, {"Reversal", 180.0, true}};
INSTANTIATE_TEST_SUITE_P(Limit, TurnAtTheLimit, testing::ValuesIn(kTurnRows), turnName);

TEST(BuildPath, CoincidentCornersAreOneAndSaySo) {
    const auto corners = cornersAt({{10, 0, 0}, {10, 0, 0}}, 3.0);
    const BuiltPath built = buildPath({0, 0, 0}, corners, {10, 10, 0});
    ASSERT_EQ(built.faults.size(), 1U);
    EXPECT_EQ(built.faults[0].kind, Fault::emptyLeg);
    EXPECT_EQ(built.faults[0].index, 1U);
    ASSERT_EQ(built.bends.size(), 2U);
    EXPECT_NEAR(built.bends[0].radius, 3.0, 1e-12);
    EXPECT_EQ(built.bends[1].radius, 0.0);
    EXPECT_NEAR(built.path.length().in(), 14.0 + 1.5 * kPi, 1e-12);
}

TEST(BuildPath, CornersOnTheEndsLeaveBothEndsWhereTheyAre) {
    const auto corners = cornersAt({{0, 0, 0}, {5, 0, 0}}, 1.0);
    const BuiltPath built = buildPath({0, 0, 0}, corners, {5, 0, 0});
    ASSERT_EQ(built.faults.size(), 2U);
    EXPECT_EQ(built.faults[0].index, 0U);
    EXPECT_EQ(built.faults[1].index, 2U);
    EXPECT_EQ(built.path.start(), (Vec3{0, 0, 0}));
    expectNear(built.path.end(), {5, 0, 0}, 1e-14);
}

TEST(BuildPath, EverythingInOnePointIsALegOfNoLength) {
    const BuiltPath built = buildPath({1, 1, 1}, cornersAt({{1, 1, 1}}, 2.0), {1, 1, 1});
    EXPECT_EQ(built.faults.size(), 2U);
    EXPECT_FALSE(built.path.empty());
    EXPECT_EQ(built.path.length().in(), 0.0);
    EXPECT_EQ(built.path.pointAt(0.5), (Vec3{1, 1, 1}));
    EXPECT_EQ(built.path.tangentAt(0.5), (Vec3{1, 0, 0}));
    ASSERT_EQ(built.bends.size(), 1U);
    EXPECT_EQ(built.bends[0].start, 0.0);
}

TEST(Path, BeyondItsEndsIsItsEnds) {
    const BuiltPath built = buildPath({0, 0, 0}, cornersAt({{5, 0, 0}}, 2.0), {5, 5, 0});
    const Path& path = built.path;
    EXPECT_EQ(path.pointAt(-3.0), path.start());
    EXPECT_EQ(path.pointAt(1e9), path.end());
    EXPECT_EQ(path.pointAt(std::numeric_limits<double>::quiet_NaN()), path.start());
    EXPECT_EQ(path.pointAt(std::numeric_limits<double>::infinity()), path.end());
}

TEST(TangentLength, IsRadiusTimesTangentOfHalfTheTurn) {
    EXPECT_NEAR(tangentLength(2.0, kPi / 2), 2.0, 1e-15);                 // tan 45 = 1
    EXPECT_NEAR(tangentLength(1.0, kPi / 3), 1.0 / std::sqrt(3), 1e-15);  // tan 30 = 1/sqrt 3
    EXPECT_NEAR(tangentLength(1.0, 2 * kPi / 3), std::sqrt(3), 1e-14);    // tan 60 = sqrt 3
    EXPECT_EQ(tangentLength(5.0, 0.0), 0.0);
}

// ---- laws, on random polylines --------------------------------------------------------------

struct RandomLine {
    Vec3 start;
    std::vector<CornerInput> corners;
    Vec3 end;
};

class Random {
public:
    explicit Random(unsigned seed) : engine_(seed) {}
    double between(double low, double high) {
        // Not std::uniform_real_distribution: its numbers differ between libraries.
        return low + (high - low) * static_cast<double>(engine_()) / 4294967295.0;
    }
    Vec3 point(double reach) {
        const double x = between(-reach, reach);
        const double y = between(-reach, reach);
        return {x, y, between(-reach, reach)};
    }
    RandomLine line(double largestRadius) {
        RandomLine line{point(40), {}, point(40)};
        const int corners = static_cast<int>(between(1.0, 6.0));
        for (int i = 0; i < corners; ++i) {
            const Vec3 at = point(40);
            line.corners.push_back({at, between(0.1, largestRadius)});
        }
        return line;
    }

private:
    std::mt19937 engine_;
};

class RandomPaths : public testing::TestWithParam<unsigned> {
protected:
    static BuiltPath built(const RandomLine& line) {
        return buildPath(line.start, line.corners, line.end);
    }
};

// Every piece starts where the one before ends and as it ends, shrunk radii included.
TEST_P(RandomPaths, PiecesJoinInPlaceAndDirection) {
    SCOPED_TRACE(testing::Message() << "seed " << GetParam());
    Random random(GetParam());
    for (int round = 0; round < 100; ++round) {
        const BuiltPath path = built(random.line(12.0));
        const auto pieces = path.path.pieces();
        const bool kinks = std::any_of(path.faults.begin(), path.faults.end(), [](const auto& f) {
            return f.kind == Fault::turnTooSharp;
        });
        for (std::size_t i = 0; i + 1 < pieces.size(); ++i) {
            expectNear(pieces[i].pointAt(pieces[i].length), pieces[i + 1].pointAt(0.0), 1e-6);
            if (!kinks) {
                expectNear(
                    pieces[i].tangentAt(pieces[i].length), pieces[i + 1].tangentAt(0.0), 1e-9);
            }
        }
    }
}

// The curve is the integral of its tangent: Simpson's rule over each piece, from the start on.
TEST_P(RandomPaths, PositionIsTheIntegralOfTheTangent) {
    SCOPED_TRACE(testing::Message() << "seed " << GetParam());
    Random random(GetParam());
    for (int round = 0; round < 20; ++round) {
        const RandomLine line = random.line(12.0);
        const BuiltPath path = built(line);
        Vec3 at = line.start;
        for (const Piece& piece : path.path.pieces()) {
            constexpr int kSteps = 100;
            const double h = piece.length / kSteps;
            for (int i = 0; i < kSteps; ++i) {
                const double s = h * i;
                at = at + (piece.tangentAt(s) + 4.0 * piece.tangentAt(s + 0.5 * h) +
                           piece.tangentAt(s + h)) *
                              (h / 6.0);
            }
        }
        expectNear(at, line.end, 1e-5);
        expectNear(path.path.end(), line.end, 1e-6);
    }
}

// Chords over steps h of an arc of radius r are short by less than h³/(24 r²) each, never long.
TEST_P(RandomPaths, LengthIsTheLimitOfTheSumOfChords) {
    SCOPED_TRACE(testing::Message() << "seed " << GetParam());
    Random random(GetParam());
    for (int round = 0; round < 20; ++round) {
        const BuiltPath path = built(random.line(12.0));
        const double length = path.path.length().in();
        double bound = 1e-9;
        double sum = 0.0;
        for (const Piece& piece : path.path.pieces()) {
            constexpr int kSteps = 500;
            const double h = piece.length / kSteps;
            for (int i = 0; i < kSteps; ++i) {
                sum += distance(piece.pointAt(h * i), piece.pointAt(h * (i + 1)));
            }
            bound +=
                piece.isArc() ? kSteps * h * h * h / (24.0 * piece.radius * piece.radius) : 0.0;
        }
        EXPECT_LE(sum, length + 1e-9);
        EXPECT_GE(sum, length - bound);
    }
}

// L = sum of legs - sum of r (2 tan(t/2) - t), with the radii as built.
TEST_P(RandomPaths, LengthIsThePolylineLessTheSavings) {
    SCOPED_TRACE(testing::Message() << "seed " << GetParam());
    Random random(GetParam());
    for (int round = 0; round < 100; ++round) {
        const RandomLine line = random.line(12.0);
        const BuiltPath path = built(line);
        double expected = 0.0;
        Vec3 last = line.start;
        for (std::size_t i = 0; i < line.corners.size(); ++i) {
            const auto& bend = path.bends[i];
            expected += distance(last, line.corners[i].at);
            expected -= bend.radius * (2.0 * std::tan(bend.turn * 0.5) - bend.turn);
            last = line.corners[i].at;
        }
        expected += distance(last, line.end);
        EXPECT_NEAR(path.path.length().in(), expected, 1e-5);
    }
}

TEST_P(RandomPaths, RadiiAreAsAskedUnlessAFaultSaysOtherwise) {
    SCOPED_TRACE(testing::Message() << "seed " << GetParam());
    Random random(GetParam());
    int withFaults = 0;
    for (int round = 0; round < 100; ++round) {
        const RandomLine line = random.line(8.0);
        const BuiltPath path = built(line);
        withFaults += path.faults.empty() ? 0 : 1;
        for (std::size_t i = 0; i < line.corners.size(); ++i) {
            EXPECT_LE(path.bends[i].radius, line.corners[i].radius);
            if (path.faults.empty()) {
                EXPECT_EQ(path.bends[i].radius, line.corners[i].radius);
            }
        }
    }
    EXPECT_GT(withFaults, 0);
    EXPECT_LT(withFaults, 100);
}

TEST_P(RandomPaths, RunBackwardsIsTheSameCurve) {
    SCOPED_TRACE(testing::Message() << "seed " << GetParam());
    Random random(GetParam());
    for (int round = 0; round < 50; ++round) {
        RandomLine line = random.line(8.0);
        const BuiltPath forward = built(line);
        std::reverse(line.corners.begin(), line.corners.end());
        std::swap(line.start, line.end);
        const BuiltPath backward = built(line);
        const double length = forward.path.length().in();
        EXPECT_NEAR(length, backward.path.length().in(), 1e-6);
        for (int i = 0; i <= 20; ++i) {
            const double s = length * i / 20.0;
            expectNear(forward.path.pointAt(s), backward.path.pointAt(length - s), 1e-5);
        }
    }
}

// No chord strays more than asked: the middle of the arc over a chord is the furthest.
TEST_P(RandomPaths, FlattenedKeepsItsDeviation) {
    SCOPED_TRACE(testing::Message() << "seed " << GetParam());
    Random random(GetParam());
    for (const double deviation : {0.5, 0.05, 0.001}) {
        const BuiltPath path = built(random.line(12.0));
        const std::vector<Vec3> points = path.path.flattened(deviation);
        expectNear(points.front(), path.path.start(), 1e-12);
        expectNear(points.back(), path.path.end(), 1e-12);
        std::size_t at = 0;
        double worst = 0.0;
        for (double s = 0.0; s <= path.path.length().in(); s += 0.01) {
            const Vec3 p = path.path.pointAt(s);
            const auto toChord = [&](std::size_t i) {
                const Vec3 along = points[i + 1] - points[i];
                const double t =
                    std::clamp(dot(p - points[i], along) / squaredNorm(along), 0.0, 1.0);
                return distance(p, points[i] + along * t);
            };
            while (at + 2 < points.size() && toChord(at + 1) < toChord(at)) {
                ++at;
            }
            worst = std::max(worst, toChord(at));
        }
        EXPECT_LE(worst, deviation + 1e-6);
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomPaths, testing::Values(1U, 2U, 3U, 20250U));

}  // namespace
}  // namespace gw::geometry
