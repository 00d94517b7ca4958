#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::about;
using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using check_test::withVerdict;
using layout::Wall;
using test_support::Random;
using units::Inches;

const Subject kA = layout::ConductorId("S-A");
const Subject kB = layout::ConductorId("S-B");

/// A conductor 1 in thick lying along x from 10 to 30 in.
layout::Conductor& along(GutterBuilder& builder, const std::string& id, double y, double z) {
    auto& conductor = builder.conductor(id, spare({10, y, z}), spare({30, y, z}));
    conductor.outsideDiameter = Inches::of(1.0);
    return conductor;
}

Finding cover(const std::vector<Finding>& findings) {
    EXPECT_THAT(findings.back().working, testing::StartsWith("The cover"));
    return findings.back();
}

Finding own(const std::vector<Finding>& findings, const Subject& subject) {
    for (const Finding& finding : findings) {
        if (finding.subjects == std::vector<Subject>{subject}) {
            return finding;
        }
    }
    ADD_FAILURE() << "no finding of its own";
    return {};
}

TEST(Clearance, MeetsInTheStraightSplice) {
    const auto findings = checkClearance(check_test::straightSplice().build());
    EXPECT_EQ(withVerdict(findings, Verdict::meets).size(), findings.size());
    EXPECT_EQ(findings.size(), 4U) << "two conductors, one block, the cover";
}

struct GapRow {
    std::string name;
    double gap;
    Verdict verdict;
};

void PrintTo(const GapRow& row, std::ostream* out) {
    *out << row.name;
}

class Gap : public testing::TestWithParam<GapRow> {};

TEST_P(Gap, BetweenTwoConductors) {
    GutterBuilder builder;
    along(builder, "S-A", 5.0, 3.0);
    along(builder, "S-B", 6.0 + GetParam().gap, 3.0);
    const auto findings = checkClearance(builder.build());
    const auto pairs = about(about(findings, kA), kB);
    if (GetParam().verdict == Verdict::breach) {
        ASSERT_EQ(pairs.size(), 1U);
        EXPECT_NEAR(pairs[0].measured->value, GetParam().gap, 1e-3);
        EXPECT_EQ(about(findings, kA).size(), 1U) << "one overlap is told once";
    } else {
        EXPECT_TRUE(pairs.empty());
        EXPECT_NEAR(own(findings, kA).measured->value, GetParam().gap, 1e-3);
        EXPECT_NEAR(own(findings, kB).measured->value, GetParam().gap, 1e-3);
    }
}

TEST_P(Gap, BetweenConductorAndBlock) {
    GutterBuilder builder;
    builder.add(check_test::splicePart()).block("A", "splice", {20.0, 5.5 + GetParam().gap, 2.5});
    along(builder, "S-A", 5.0, 3.0);
    const auto findings = checkClearance(builder.build());
    const auto pairs = about(about(findings, kA), layout::BlockId("A"));
    EXPECT_EQ(pairs.size(), GetParam().verdict == Verdict::breach ? 1U : 0U);
    if (!pairs.empty()) {
        EXPECT_NEAR(pairs[0].measured->value, GetParam().gap, 1e-3);
    }
}

TEST_P(Gap, BetweenTwoBlocks) {
    GutterBuilder builder;
    builder.add(check_test::splicePart());
    builder.block("A", "splice", {20.0, 1.0, 2.0});
    builder.block("B", "splice", {22.0 + GetParam().gap, 1.0, 2.0});
    const auto findings = checkClearance(builder.build());
    const auto pairs = about(about(findings, layout::BlockId("A")), layout::BlockId("B"));
    ASSERT_EQ(pairs.size(), GetParam().verdict == Verdict::breach ? 1U : 0U);
    if (!pairs.empty()) {
        EXPECT_NEAR(pairs[0].margin->value, GetParam().gap, 1e-9);
    }
}

TEST_P(Gap, BetweenConductorAndBackWall) {
    GutterBuilder builder;
    along(builder, "S-A", 5.0, 0.5 + GetParam().gap);
    const auto finding = own(checkClearance(builder.build()), kA);
    EXPECT_EQ(finding.verdict, GetParam().verdict);
    EXPECT_NEAR(finding.measured->value, GetParam().gap, 1e-9);
}

TEST_P(Gap, BetweenBlockAndTopWall) {
    GutterBuilder builder;
    builder.add(check_test::splicePart()).block("A", "splice", {20.0, 8.0 - GetParam().gap, 2.0});
    const auto finding = own(checkClearance(builder.build()), layout::BlockId("A"));
    EXPECT_EQ(finding.verdict, GetParam().verdict);
    EXPECT_NEAR(finding.measured->value, GetParam().gap, 1e-9);
}

TEST_P(Gap, BetweenConductorAndCover) {
    GutterBuilder builder;
    along(builder, "S-A", 5.0, 11.5 - GetParam().gap);
    const auto findings = checkClearance(builder.build());
    EXPECT_EQ(cover(findings).verdict, GetParam().verdict);
    EXPECT_NEAR(cover(findings).measured->value, GetParam().gap, 1e-9);
    EXPECT_EQ(withVerdict(findings, Verdict::breach).size(),
              GetParam().verdict == Verdict::breach ? 1U : 0U);
}

TEST_P(Gap, BetweenBlockAndCover) {
    GutterBuilder builder;
    builder.add(check_test::splicePart()).block("A", "splice", {20.0, 1.0, 10.0 - GetParam().gap});
    EXPECT_EQ(cover(checkClearance(builder.build())).verdict, GetParam().verdict);
}

// Things may touch, not overlap. Arithmetic from the shapes.
INSTANTIATE_TEST_SUITE_P(Sides,
                         Gap,
                         testing::Values(GapRow{"apart", 0.25, Verdict::meets},
                                         GapRow{"touching", 0.0, Verdict::meets},
                                         GapRow{"overlapping", -0.01, Verdict::breach}),
                         [](const auto& row) { return row.param.name; });

TEST(Clearance, CrossingConductorsOverlapByTheirDepth) {
    // Two conductors 1 in thick crossing square, axes 0.6 in apart: they overlap by 0.4 in.
    GutterBuilder builder;
    along(builder, "S-A", 5.0, 3.0);
    builder.conductor("S-B", spare({20, 1, 3.6}), spare({20, 9, 3.6})).outsideDiameter =
        Inches::of(1.0);
    const auto breaches = withVerdict(checkClearance(builder.build()), Verdict::breach);
    ASSERT_EQ(breaches.size(), 1U);
    EXPECT_NEAR(breaches[0].measured->value, -0.4, 1e-3);
    EXPECT_NEAR(distance(*breaches[0].place, {20, 5, 3.3}), 0.0, 1e-3);
}

TEST(Clearance, SaysTheNearestOfEachKind) {
    GutterBuilder builder;
    builder.add(check_test::splicePart()).block("A", "splice", {40.0, 1.0, 2.0});
    along(builder, "S-A", 5.0, 3.0);
    along(builder, "S-B", 6.5, 3.0);
    const auto finding = own(checkClearance(builder.build()), kA);
    EXPECT_THAT(finding.working, testing::HasSubstr("conductor S-B 0.5 in"));
    EXPECT_THAT(finding.working, testing::HasSubstr("any other block over 1 in"));
    EXPECT_THAT(finding.working, testing::HasSubstr("the back wall 2.5 in"));
    EXPECT_THAT(finding.working, testing::HasSubstr("the cover 8.5 in"));
}

// ---- diameters that are not known -----------------------------------------------------------

struct DoubtRow {
    std::string name;
    double apart;  ///< inches between the axes, or from the wall or the cover
    Verdict pair;
    Verdict wall;  ///< and cover
};

void PrintTo(const DoubtRow& row, std::ostream* out) {
    *out << row.name;
}

class ClearanceOfUnknown : public testing::TestWithParam<DoubtRow> {};

GutterBuilder unknownAt(double y, double z) {
    GutterBuilder builder;
    builder.conductor("S-A", spare({10, y, z}), spare({30, y, z})).insulation.reset();
    return builder;
}

// 500 kcmil class B of unknown insulation: at most 1.133 in (Chapter 9 Table 5, RHH with covering),
// at least the metal's 0.813 in (Table 8). The other conductor is 1 in thick.
TEST_P(ClearanceOfUnknown, IsABreachOnlyWhereTheMetalAloneOverlaps) {
    const DoubtRow& row = GetParam();
    auto builder = unknownAt(5.0, 3.0);
    along(builder, "S-B", 5.0 + row.apart, 3.0);
    const auto pairs = about(about(checkClearance(builder.build()), kA), kB);
    if (row.pair == Verdict::meets) {
        EXPECT_TRUE(pairs.empty());
    } else {
        ASSERT_EQ(pairs.size(), 1U);
        EXPECT_EQ(pairs[0].verdict, row.pair) << pairs[0].working;
        EXPECT_EQ(pairs[0].missing.empty(), row.pair == Verdict::breach);
    }
    const double away = row.apart - 0.5;
    EXPECT_EQ(own(checkClearance(unknownAt(5.0, away).build()), kA).verdict, row.wall);
    const auto under = cover(checkClearance(unknownAt(5.0, 12.0 - away).build()));
    EXPECT_EQ(under.verdict, row.wall) << under.working;
    EXPECT_EQ(under.missing.empty(), row.wall != Verdict::cannotTell);
}

// 0.5665 + 0.5 = 1.0665 in at the most, 0.4065 + 0.5 = 0.9065 in at the least.
INSTANTIATE_TEST_SUITE_P(
    Limits,
    ClearanceOfUnknown,
    testing::Values(
        DoubtRow{"clear of the largest", 1.0765, Verdict::meets, Verdict::meets},
        DoubtRow{"not of the largest", 1.0565, Verdict::cannotTell, Verdict::cannotTell},
        DoubtRow{"of the metal alone", 0.9165, Verdict::cannotTell, Verdict::cannotTell},
        DoubtRow{"not of the metal", 0.8965, Verdict::breach, Verdict::breach}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });

// ---- what belongs together ------------------------------------------------------------------

TEST(ClearanceAtAnEntry, AConductorSquareToItsWallIsClean) {
    GutterBuilder builder;
    builder.entry("in", Wall::left, 5.0, 5.0);
    builder.conductor("S-A", atEntry("in"), spare({40, 5, 5}));
    EXPECT_TRUE(withVerdict(checkClearance(builder.build()), Verdict::breach).empty());
}

TEST(ClearanceAtAnEntry, AConductorTurningBackIntoItsWallIsNot) {
    GutterBuilder builder;
    builder.entry("in", Wall::left, 5.0, 2.0);
    builder.conductor("S-A",
                      atEntry("in"),
                      spare({-1.0, 5.0, 10.0}),
                      {corner({20, 5, 2}, 3.0), corner({20, 5, 10}, 3.0)});
    EXPECT_EQ(own(checkClearance(builder.build()), kA).verdict, Verdict::breach);
}

TEST(ClearanceAtAPort, ABlockMayHoldItsOwnConductorAndNoOther) {
    auto builder = check_test::straightSplice();
    builder.block("B", "splice", {9.0, 7.5, 2.0});
    // Block B stands in the way of S-A, which block A holds.
    const auto findings = checkClearance(builder.build());
    EXPECT_EQ(about(about(findings, kA), layout::BlockId("B")).size(), 1U);
    EXPECT_TRUE(about(about(findings, kA), layout::BlockId("A")).empty());
}

TEST(ClearanceAtAPort, AConductorThatComesBackToItsOwnBlockOverlapsIt) {
    GutterBuilder builder({60.0, 20.0, 12.0});
    builder.add(check_test::splicePart()).block("A", "splice", {9.0, 4.0, 2.0});
    // Out of the top, round and back through the side of the body.
    builder.conductor(
        "S-A",
        inPort("A", "1"),
        spare({5.0, 6.0, 3.0}),
        {corner({10, 14, 3}, 2.0), corner({20, 14, 3}, 2.0), corner({20, 6, 3}, 2.0)});
    EXPECT_EQ(about(withVerdict(checkClearance(builder.build()), Verdict::breach), kA).size(), 1U);
}

TEST(ClearanceAtAPort, NeighboursInPortsTooCloseOverlapOutside) {
    GutterBuilder builder;
    builder.add(check_test::rowPart(2)).block("A", "row", {9.0, 4.0, 2.0});
    for (const std::string port : {"1", "2"}) {
        const double x = port == "1" ? 10.0 : 11.5;
        builder.conductor("S-" + port, spare({x, 11, 3}), inPort("A", port)).outsideDiameter =
            Inches::of(1.5);
    }
    EXPECT_TRUE(withVerdict(checkClearance(builder.build()), Verdict::breach).empty());
    for (auto& conductor : builder.layout().conductors) {
        conductor.outsideDiameter = Inches::of(1.52);
    }
    const auto breaches = withVerdict(checkClearance(builder.build()), Verdict::breach);
    ASSERT_EQ(breaches.size(), 1U);
    EXPECT_NEAR(breaches[0].measured->value, -0.02, 1e-3);
}

TEST(ClearanceInABlock, TipsOnBothSidesOfAStopAreClean) {
    // The stop between the bores is thinner than the insulation would be round.
    auto builder = check_test::straightSplice();
    builder.part("splice").body.y = 3.25;
    builder.part("splice").ports[0].mouth.y = 3.25;
    builder.part("splice").screws[0].head.y = 2.5;
    EXPECT_TRUE(withVerdict(checkClearance(builder.build()), Verdict::breach).empty());
}

TEST(ClearanceInABore, TipsFromBothMouthsMayTouchAndNotMeet) {
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.conductor("S-A", spare({10, 11, 3}), inPort("A", "1"));
    builder.conductor("S-B", spare({10, 1, 3}), inPort("A", "1"));
    const auto breachesAt = [&](double each) {
        for (auto& conductor : builder.layout().conductors) {
            std::get<layout::InPort>(conductor.to).inserted = Inches::of(each);
        }
        return withVerdict(checkClearance(builder.build()), Verdict::breach);
    };
    EXPECT_TRUE(breachesAt(1.4).empty());
    EXPECT_TRUE(breachesAt(1.5).empty());
    ASSERT_EQ(breachesAt(1.51).size(), 1U);
    EXPECT_NEAR(breachesAt(1.51)[0].margin->value, -0.02, 1e-9);
}

TEST(ClearanceInABore, CannotTellWhereInsertionsAreNotStated) {
    // A bore open at both mouths has no stop to be pushed to.
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.conductor("S-A", spare({10, 11, 3}), inPort("A", "1"));
    builder.conductor("S-B", spare({10, 1, 3}), inPort("A", "1"));
    std::get<layout::InPort>(builder.conductorNamed("S-A").to).inserted = Inches::of(1.4);
    const auto findings = withVerdict(checkClearance(builder.build()), Verdict::cannotTell);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_THAT(findings[0].missing,
                testing::ElementsAre("insertion of conductor S-B in port 1 of block A"));
}

// ---- two conductors in one port -------------------------------------------------------------

/// Two conductors of 0.5 in in one port of a row listed for two, both up out of it. "S-A" bends
/// aside after `first` inches of lead-in, "S-B" the same way or the other after `second`.
GutterBuilder twoInOnePort(double first, double second, bool sameWay, double radius) {
    GutterBuilder builder({60.0, 24.0, 12.0});
    builder.add(check_test::rowPart(2)).block("A", "row", {20.0, 2.0, 2.0});
    for (auto& port : builder.part("row").ports) {
        port.accepts.front().conductors = 2;
    }
    const Vec3 mouth{21.0, 4.0, 3.0};
    const auto lay = [&](const std::string& id, double leadIn, double way) {
        const Vec3 turn = mouth + Vec3{0, leadIn + radius, 0};
        builder
            .conductor(
                id, inPort("A", "1"), spare(turn + Vec3{way * 15.0, 0, 0}), {corner(turn, radius)})
            .outsideDiameter = Inches::of(0.5);
    };
    lay("S-A", first, 1.0);
    lay("S-B", second, sameWay ? 1.0 : -1.0);
    return builder;
}

struct ShareRow {
    std::string name;
    double first;
    double second;
    bool sameWay;
    double radius;
    std::size_t breaches;
    std::string reason;
};

void PrintTo(const ShareRow& row, std::ostream* out) {
    *out << row.name << ": " << row.reason;
}

class TwoInOnePort : public testing::TestWithParam<ShareRow> {};

TEST_P(TwoInOnePort, LieSideBySideUntilTheyPart) {
    const ShareRow& row = GetParam();
    const auto builder = twoInOnePort(row.first, row.second, row.sameWay, row.radius);
    const auto findings = checkClearance(builder.build());
    EXPECT_EQ(about(about(withVerdict(findings, Verdict::breach), kA), kB).size(), row.breaches);
    EXPECT_EQ(withVerdict(findings, Verdict::breach).size(), row.breaches);
}

// The centrelines are drawn on the port's one axis. 0.5 in conductors clear each other 0.5 in
// apart.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Clearance, TwoInOnePort, testing::Values(
    ShareRow{"parting at once",             0.5, 0.5, false, 2.25, 0U, "they bend apart"},
    ShareRow{"one goes on straight",        0.5, 6.0, true,  2.25, 0U, "the first bends out of the shared lead-in"},
    ShareRow{"a long shared lead-in",       5.0, 5.0, false, 2.25, 0U, "5 in side by side, then apart"},
    ShareRow{"parting in a wide bend",      0.5, 6.0, true,  8.00, 0U, "a wide bend takes longer to part"},
    ShareRow{"lanes well apart",            1.0, 2.0, true,  2.25, 0U, "lanes 1 in apart"},
    ShareRow{"lanes too near",              1.0, 1.4, true,  2.25, 1U, "lanes 0.4 in apart overlap by 0.1 in beyond the bend"},
    ShareRow{"the same way all along",      1.0, 1.0, true,  2.25, 1U, "one in the other's place"}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(TwoInOnePort, AreComparedWhereTheyMeetAgain) {
    // S-A leaves, comes round, and runs through S-B's lead-in a foot up.
    auto builder = twoInOnePort(0.5, 16.0, false, 2.25);
    auto& conductor = builder.conductorNamed("S-A");
    conductor.corners.push_back(corner({31, 6.75, 3}, 2.25));
    conductor.corners.push_back(corner({31, 14, 3}, 2.25));
    conductor.to = spare({12, 14, 3});
    EXPECT_EQ(withVerdict(checkClearance(builder.build()), Verdict::breach).size(), 1U);
}

TEST(ClearanceOfAPass, SharesItsPortWithATap) {
    // The tap goes into the far mouth's bore beside what passes, and bends away.
    GutterBuilder builder({60.0, 24.0, 12.0});
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.entry("above", Wall::top, 10.0, 3.0).entry("below", Wall::bottom, 10.0, 3.0);
    builder.conductor("S-A", atEntry("below"), atEntry("above")).passes = {
        {layout::BlockId("A"), parts::PortName("1"), {}, {}}};
    builder.conductor("S-B", spare({30, 14, 3}), inPort("A", "1"), {corner({10, 14, 3}, 4.5)});
    EXPECT_TRUE(withVerdict(checkClearance(builder.build()), Verdict::breach).empty());
}

TEST(ClearanceOfAPass, ThatMissesItsBoreIsToldOnce) {
    // Half an inch beside the bore's axis, through the wall of the body.
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.entry("above", Wall::top, 10.5, 3.0).entry("below", Wall::bottom, 10.5, 3.0);
    builder.conductor("S-A", atEntry("below"), atEntry("above")).passes = {
        {layout::BlockId("A"), parts::PortName("1"), {}, {}}};
    const auto breaches = withVerdict(checkClearance(builder.build()), Verdict::breach);
    ASSERT_EQ(breaches.size(), 1U);
    EXPECT_NEAR(breaches[0].measured->value, 0.5, 1e-6);
}

TEST(ClearanceOfAPass, HasToRunOnTheBoresAxis) {
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.entry("above", Wall::top, 10.0, 3.0).entry("below", Wall::bottom, 10.0, 3.0);
    builder.conductor("S-A", atEntry("below"), atEntry("above")).passes = {
        {layout::BlockId("A"), parts::PortName("1"), {}, {}}};
    EXPECT_TRUE(withVerdict(checkClearance(builder.build()), Verdict::breach).empty());
    for (auto& entry : builder.layout().entries) {
        entry.u = 10.05;
    }
    const auto breaches = withVerdict(checkClearance(builder.build()), Verdict::breach);
    ASSERT_EQ(breaches.size(), 1U);
    EXPECT_NEAR(breaches[0].measured->value, 0.05, 1e-6);
    EXPECT_THAT(breaches[0].working, testing::HasSubstr("port 1 of block A"));
}

TEST(Cover, NamesAllThatStandOut) {
    GutterBuilder builder;
    along(builder, "S-A", 5.0, 11.6);
    along(builder, "S-B", 8.0, 11.9);
    along(builder, "S-C", 2.0, 3.0);
    const auto finding = cover(checkClearance(builder.build()));
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_THAT(finding.subjects, testing::ElementsAre(kA, kB));
    EXPECT_NEAR(finding.margin->value, -0.4, 1e-9);
    EXPECT_THAT(finding.working, testing::HasSubstr("conductor S-B stands out by 0.4 in"));
}

TEST(Cover, GoesOnAnEmptyGutter) {
    const auto findings = checkClearance(GutterBuilder().build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::meets);
}

GutterBuilder randomScene(Random& random) {
    GutterBuilder builder({60.0, 12.0, 12.0});
    builder.add(check_test::splicePart());
    for (int i = 0; i < 8; ++i) {
        builder.conductor("C" + std::to_string(i),
                          spare(random.in({1, 1, 1}, {59, 11, 11})),
                          spare(random.in({1, 1, 1}, {59, 11, 11})),
                          {corner(random.in({5, 1, 1}, {55, 11, 11}), 1.0)});
        builder.block("B" + std::to_string(i), "splice", random.in({0, 0, 0}, {58, 8, 10}));
    }
    return builder;
}

TEST(ClearanceLaws, OrderDoesNotMatter) {
    for (std::uint64_t seed = 1; seed <= 25; ++seed) {
        Random random(seed);
        auto builder = randomScene(random);
        const auto before = check_test::sortedTexts(checkClearance(builder.build()));
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        std::reverse(builder.layout().blocks.begin(), builder.layout().blocks.end());
        EXPECT_EQ(check_test::sortedTexts(checkClearance(builder.build())), before)
            << "seed " << seed;
    }
}

TEST(ClearanceLaws, MovingAllInALargerGutterLeavesThePairsAlone) {
    for (std::uint64_t seed = 1; seed <= 25; ++seed) {
        Random random(seed);
        auto builder = randomScene(random);
        const auto pairsIn = [](const std::vector<Finding>& findings) {
            std::vector<double> gaps;
            for (const Finding& finding : findings) {
                if (finding.subjects.size() == 2 && finding.verdict == Verdict::breach) {
                    gaps.push_back(finding.measured->value);
                }
            }
            return gaps;
        };
        auto findings = checkClearance(builder.build());
        findings.pop_back();  // the cover
        const auto before = pairsIn(findings);
        const Vec3 by{0.5, 0.25, 0.75};
        builder.layout().gutter.inside = builder.layout().gutter.inside + by * 2.0;
        for (auto& block : builder.layout().blocks) {
            block.corner = block.corner + by;
        }
        for (auto& conductor : builder.layout().conductors) {
            auto& from = std::get<layout::Spare>(conductor.from).tip;
            auto& to = std::get<layout::Spare>(conductor.to).tip;
            from = from + by;
            to = to + by;
            conductor.corners.front().at = conductor.corners.front().at + by;
        }
        findings = checkClearance(builder.build());
        findings.pop_back();
        EXPECT_THAT(pairsIn(findings), testing::Pointwise(testing::DoubleNear(1e-3), before))
            << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
