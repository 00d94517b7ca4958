#include "takeoff/cut_list.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/support/sample_layouts.h"
#include "core/takeoff/one_conductor.h"
#include "support/drawn_layout.h"
#include "support/random.h"
#include "takeoff/bend_marks.h"

namespace gw::takeoff {
namespace {

using units::Inches;

constexpr double kSixtyFourth = 1.0 / 64.0;

geometry::BuiltLayout built(const test::Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

/// Legs between the corners less, at each corner, what the arc cuts off: 2 r tan(t/2) - r t.
double closedForm(const Vec3& start, const std::vector<layout::Corner>& corners, const Vec3& end) {
    std::vector<Vec3> points = {start};
    for (const auto& corner : corners) {
        points.push_back(corner.at);
    }
    points.push_back(end);
    double length = 0.0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        length += norm(points[i] - points[i - 1]);
    }
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec3 in = (points[i + 1] - points[i]) / norm(points[i + 1] - points[i]);
        const Vec3 out = (points[i + 2] - points[i + 1]) / norm(points[i + 2] - points[i + 1]);
        const double turn = std::acos(std::clamp(dot(in, out), -1.0, 1.0));
        const double radius = corners[i].radius.in();
        length -= 2.0 * radius * std::tan(turn / 2.0) - radius * turn;
    }
    return length;
}

/// The rounded corner again, from its definition: the point of a circle of that radius that touches
/// both legs, walked by small angles and summed as chords; nothing of core/geometry in it.
double walked(const Vec3& start, const std::vector<layout::Corner>& corners, const Vec3& end) {
    constexpr int kSteps = 4000;
    Vec3 here = start;
    double length = 0.0;
    const auto walkTo = [&](const Vec3& there) {
        length += norm(there - here);
        here = there;
    };
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec3 before = i == 0 ? start : corners[i - 1].at;
        const Vec3 after = i + 1 == corners.size() ? end : corners[i + 1].at;
        const Vec3 in = (corners[i].at - before) / norm(corners[i].at - before);
        const Vec3 out = (after - corners[i].at) / norm(after - corners[i].at);
        const double half = std::acos(std::clamp(dot(in, out), -1.0, 1.0)) / 2.0;
        const double radius = corners[i].radius.in();
        const Vec3 toCentre = (out - in) / norm(out - in);
        const Vec3 centre = corners[i].at + toCentre * (radius / std::cos(half));
        const Vec3 across = (in + out) / norm(in + out);
        for (int step = 0; step <= kSteps; ++step) {
            const double angle = half * (2.0 * step / kSteps - 1.0);
            walkTo(centre + across * (radius * std::sin(angle)) -
                   toCentre * (radius * std::cos(angle)));
        }
    }
    walkTo(end);
    return length;
}

TEST(CutList, LengthsAgreeWithTheClosedFormAndWithTheCurveWalked) {
    const auto all = test::drawnLayout();
    std::vector<test::OneConductor> cases(3);
    cases[1].corners = {{{20, 2, 2}, Inches::of(4)}, {{20, 18, 2}, Inches::of(5)}};
    cases[1].to = {20 + 9.0, 18, 11};
    cases[2].corners = {{{12, 2, 2}, Inches::of(3)}, {{20, 6, 5}, Inches::of(3.5)}};
    for (const auto& one : cases) {
        const auto lines = cutLines(test::oneConductor(one));
        ASSERT_EQ(lines.size(), 1U);
        const double length = lines[0].inGutter.in();
        EXPECT_NEAR(length, closedForm(one.from, one.corners, one.to), 1e-9);
        EXPECT_NEAR(length, walked(one.from, one.corners, one.to), kSixtyFourth);
    }
}

TEST(CutList, RandomPathsAgreeToo) {
    test_support::Random random(11);
    for (int i = 0; i < 200; ++i) {
        SCOPED_TRACE("seed 11, path " + std::to_string(i));
        test::OneConductor one;
        one.from = {2, random.between(2, 20), random.between(2, 20)};
        one.to = {58, random.between(2, 20), random.between(2, 20)};
        for (int corner = 1; corner <= 3; ++corner) {
            one.corners.push_back({{14.0 * corner, random.between(2, 20), random.between(2, 20)},
                                   Inches::of(random.between(1.0, 3.0))});
        }
        const auto built = test::oneConductor(one);
        ASSERT_TRUE(built.conductors[0].built.faults.empty());
        const double length = cutLines(built)[0].inGutter.in();
        EXPECT_NEAR(length, closedForm(one.from, one.corners, one.to), 1e-9);
        EXPECT_NEAR(length, walked(one.from, one.corners, one.to), kSixtyFourth);
    }
}

TEST(CutList, RoundingNeverMakesAConductorShort) {
    test_support::Random random(5);
    for (int i = 0; i < 10000; ++i) {
        const double length = random.between(0.0, 1200.0);
        const double cut = roundedUpToCut(Inches::of(length)).in();
        ASSERT_GE(cut, length);
        ASSERT_LT(cut - length, 0.125);
        ASSERT_EQ(cut * 8.0, std::floor(cut * 8.0));
    }
    EXPECT_EQ(roundedUpToCut(Inches::of(3.125)).in(), 3.125);
    EXPECT_EQ(roundedUpToCut(Inches::of(3.1250001)).in(), 3.25);
}

/// Down 6 from (12, 8) to (12, 2), 19 along, up 2 to the port and 1.5 in: two bends of 1.25 in,
/// each 2 - pi/2 radii shorter than its corner. One inch allowed for two bends.
TEST(CutList, EachLineIsWhatItsPartsComeTo) {
    auto sample = test::oneTap();
    const double inGutter = 6.0 + 19.0 + 2.0 + 1.5 - 2.0 * 1.25 * (2.0 - std::acos(-1.0) / 2.0);
    auto lines = cutLines(built(sample));
    EXPECT_NEAR(lines[0].inGutter.in(), inGutter, 1e-9);
    EXPECT_FALSE(lines[0].beyond);
    EXPECT_EQ(lines[0].allowance.in(), 1.0);
    EXPECT_EQ(lines[0].cut, roundedUpToCut(Inches::of(inGutter + 1.0)));
    sample.entry("in").racewayLength = Inches::of(30.0);
    lines = cutLines(built(sample), {Inches::of(2.0)});
    EXPECT_EQ(lines[0].beyond, Inches::of(30.0));
    EXPECT_EQ(lines[0].cut, roundedUpToCut(Inches::of(inGutter + 32.0)));
}

TEST(CutList, ARacewayOfUnknownLengthIsNamed) {
    const auto table = cutListTable(built(test::oneTap()));
    ASSERT_FALSE(table.notes.empty());
    EXPECT_NE(table.notes[0].find("c1"), std::string::npos);
}

TEST(CutList, StripIsTheLayoutsElseThePartsElseNotStated) {
    auto sample = test::oneTap();
    std::get<layout::InPort>(sample.conductor("c1").to).strip = Inches::of(1.25);
    EXPECT_EQ(cutLines(built(sample))[0].stripTo, Inches::of(1.25));
    std::get<layout::InPort>(sample.conductor("c1").to).strip.reset();
    EXPECT_EQ(cutLines(built(sample))[0].stripTo, Inches::of(1.5));
    for (auto& port : sample.part("row").ports) {
        port.stripLength.reset();
    }
    EXPECT_FALSE(cutLines(built(sample))[0].stripTo);
    EXPECT_FALSE(cutLines(built(sample))[0].stripFrom);
}

test::Sample twoSets() {
    auto sample = test::oneTap();
    sample.circuit("feed").sets = 2;
    sample.entry("in").racewayLength = Inches::of(12.0);
    auto& second = sample.addConductor("c2", test::atEntry("in", 2), test::spare({40, 2, 2}));
    second.set = 2;
    return sample;
}

TEST(CutList, ConductorsInParallelAreCutAlike) {
    const auto lines = cutLines(built(twoSets()));
    const auto longest = std::max(lines[0].cut, lines[1].cut);
    EXPECT_NE(lines[0].cut, lines[1].cut);
    EXPECT_EQ(lines[0].cutAlike, longest);
    EXPECT_EQ(lines[1].cutAlike, longest);
}

TEST(CutList, NothingIsSaidOfParallelsWhoseLengthIsNotKnown) {
    auto sample = twoSets();
    sample.entry("in").racewayLength.reset();
    EXPECT_FALSE(cutLines(built(sample))[0].cutAlike);
}

/// A conductor that is cut at a block goes on as a second piece of the same set.
TEST(CutList, PiecesThatFollowOneAnotherAreNotParallel) {
    auto sample = twoSets();
    sample.conductor("c2").set = 1;
    for (const auto& line : cutLines(built(sample))) {
        EXPECT_FALSE(line.cutAlike);
    }
}

/// Near mouth at (20, 5, 3), bored 4 in along x; the conductor comes straight from x = 10.
TEST(CutList, AWindowIsMeasuredFromTheFirstEndWhicheverWayItRuns) {
    for (const bool along : {true, false}) {
        auto sample = test::emptyGutter();
        sample.addBlock("T", "through", {20, 4, 2});
        auto& one = sample.addConductor("c1",
                                        test::spare({along ? 10.0 : 40.0, 5, 3}),
                                        test::spare({along ? 40.0 : 10.0, 5, 3}));
        one.passes.push_back(
            {layout::BlockId("T"), parts::PortName("run"), Inches::of(-0.25), Inches::of(3.0)});
        const auto windows = cutLines(built(sample))[0].windows;
        ASSERT_EQ(windows.size(), 1U);
        EXPECT_NEAR(windows[0].length.in(), 3.0, 1e-9);
        // From x = 19.75 to 22.75.
        EXPECT_NEAR(windows[0].from.in(), along ? 9.75 : 40.0 - 22.75, 1e-9);
    }
}

TEST(Reels, SumWhatTheCutListSays) {
    const auto built = test::drawnLayout();
    double inches = 0.0;
    double pieces = 0.0;
    for (const auto& line : cutLines(built)) {
        inches += line.cutAlike.value_or(line.cut).in();
        pieces += 1.0;
    }
    double feet = 0.0;
    double counted = 0.0;
    const auto table = reelTable(built);
    for (const auto& row : table.rows) {
        counted += std::get<double>(row[5]);
        feet += std::get<double>(row[7]);
    }
    EXPECT_EQ(counted, pieces);
    EXPECT_GE(feet * 12.0, inches);
    EXPECT_LT(feet * 12.0, inches + 12.0 * static_cast<double>(table.rows.size()));
}

// ---- bend marks -------------------------------------------------------------------------------

TEST(BendMarks, ABendBeginsATangentLengthBeforeItsCorner) {
    test::OneConductor one;
    one.corners = {{{20, 2, 2}, Inches::of(4)}};
    one.to = {20, 18, 2};
    const auto marks = bendMarks(test::oneConductor(one));
    ASSERT_EQ(marks.size(), 1U);
    EXPECT_NEAR(marks[0].start.in(), 18.0 - 4.0, 1e-9);
    EXPECT_NEAR((marks[0].end - marks[0].start).in(), 4.0 * std::acos(-1.0) / 2.0, 1e-9);
    EXPECT_NEAR(marks[0].angle.degrees(), 90.0, 1e-9);
    EXPECT_EQ(marks[0].radius.in(), 4.0);
    EXPECT_EQ(marks[0].plane, "from right to up");
    // The other end is 16 - 4 beyond the bend.
    EXPECT_NEAR(marks[0].fromSecondEnd.in(), 12.0 + 4.0 * std::acos(-1.0) / 2.0, 1e-9);
}

TEST(BendMarks, DirectionsAreSaidAsSeenFromTheCover) {
    EXPECT_EQ(directionText({-1, 0, 0}), "left");
    EXPECT_EQ(directionText({0, 0, 1}), "front");
    EXPECT_EQ(directionText({0, -0.6, -0.8}), "slanting down and back");
}

struct Spring {
    const char* name;
    const char* size;
    standards::Metal metal;
    double radius;
    double lostDegrees;  ///< of 90°, exact theory
    double tolerance;    ///< of the rule that the loss is the same for each inch of arc
};

class Springback : public testing::TestWithParam<Spring> {};

/// Elastic - perfectly plastic round wire, by the closed form of its moment (worked by hand):
/// s = 2 f r / (E d), K = 1 - (4/pi) s [(4/3) cos³φ + (φ/2 - sin 4φ / 8) / sin φ], φ = asin s.
TEST_P(Springback, AgreesWithTheClosedFormOfThePlasticWire) {
    const auto& given = GetParam();
    test::OneConductor one;
    one.size = given.size;
    one.metal = given.metal;
    one.corners = {{{20, 2, 2}, Inches::of(given.radius)}};
    one.to = {20, 18, 2};
    const auto marks = bendMarks(test::oneConductor(one));
    ASSERT_EQ(marks.size(), 1U);
    EXPECT_NEAR(marks[0].springsOpen.degrees(), given.lostDegrees, given.tolerance);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Worked, Springback, testing::Values(
    // 37 wires of 0.1162 in: copper at 100 MPa, K = 0.89360.
    Spring{"copper500",    "500", standards::Metal::copper,    4.2705,  9.576, 0.05},
    // 61 wires: 2.6189 degrees for each inch of 9.987 in of arc, at 103 MPa.
    Spring{"aluminium750", "750", standards::Metal::aluminium, 6.3580, 26.155, 0.05}),
    [](const auto& tested) { return std::string(tested.param.name); });
// clang-format on

}  // namespace
}  // namespace gw::takeoff
