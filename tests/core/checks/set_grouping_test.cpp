#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::corner;
using check_test::GutterBuilder;
using check_test::spare;
using layout::Phase;
using testing::HasSubstr;

struct Seat {
    const char* name;  ///< "A2": phase A, set 2
    double y;
    double z = 1.0;
};

layout::Phase phaseOf(char letter) {
    return *layout::phaseFromText(std::string(1, letter));
}

/// Circuit S in two sets, straight along the gutter from x = 5 to 55, each conductor at its y and
/// z.
GutterBuilder running(const std::vector<Seat>& seats) {
    GutterBuilder builder;
    builder.circuitNamed("S").sets = 2;
    for (const Seat& seat : seats) {
        auto& conductor = builder.conductor(
            seat.name, spare({5.0, seat.y, seat.z}), spare({55.0, seat.y, seat.z}));
        conductor.phase = phaseOf(seat.name[0]);
        conductor.set = seat.name[1] - '0';
    }
    return builder;
}

std::vector<Finding> grouping(const GutterBuilder& builder) {
    auto findings = checkParallelSets(builder.build());
    std::erase_if(findings,
                  [](const Finding& finding) { return finding.citation.section != "366.20"; });
    return findings;
}

/// How many stray, of the only finding; -1 where there is none.
int strays(const GutterBuilder& builder) {
    const auto findings = grouping(builder);
    EXPECT_LE(findings.size(), 1U);
    return findings.empty() ? -1 : static_cast<int>(findings[0].measured->value);
}

// Source: NFPA 70 366.20: groups of not more than one conductor per phase or neutral. Which layouts
// are groups follows from the pictures beside the rows.
TEST(SetGrouping, SetAfterSetIsGrouped) {
    // A1 B1 C1 | A2 B2 C2, all at one distance
    const auto builder =
        running({{"A1", 1}, {"B1", 2}, {"C1", 3}, {"A2", 4}, {"B2", 5}, {"C2", 6}});
    EXPECT_EQ(strays(builder), 0);
    EXPECT_EQ(grouping(builder)[0].verdict, Verdict::meets);
    EXPECT_THAT(grouping(builder)[0].working, HasSubstr("30 in from the left"));
    EXPECT_EQ(grouping(builder)[0].interval, std::make_pair(5.0, 55.0));
}

TEST(SetGrouping, PhaseBesidePhaseIsNot) {
    // A1 A2 B1 B2, one inch apart: nearest to each is one of the other set, the next of the own two
    // inches away
    const auto builder = running({{"A1", 1}, {"A2", 2}, {"B1", 3}, {"B2", 4}});
    EXPECT_EQ(strays(builder), 4);
    EXPECT_EQ(grouping(builder)[0].verdict, Verdict::caution);
    EXPECT_EQ(grouping(builder)[0].subjects.size(), 5U);
    EXPECT_EQ(grouping(builder)[0].limit->value, 0.0);
}

TEST(SetGrouping, OneThatLiesApartStraysAlone) {
    // A1 B1 .. A2 B2 C1 C2: C1 lies one inch from B2, and four from B1
    EXPECT_EQ(strays(running({{"A1", 1}, {"B1", 2}, {"A2", 4}, {"B2", 5}, {"C1", 6}, {"C2", 7.5}})),
              2)
        << "C1, and C2 that is nearer to C1 than to B2";
    EXPECT_EQ(strays(running({{"A1", 1}, {"B1", 2}, {"A2", 4}, {"B2", 5}, {"C1", 6.5}})), 1);
}

TEST(SetGrouping, IsMeasuredFromSurfaceToSurface) {
    // 500 kcmil THWN-2 is 0.949 in thick, 1/0 0.486 in (NFPA 70 Chapter 9 Table 5). B1 between: the
    // thin A1 is as near by its surface when its centre is nearer by (0.949 - 0.486) / 2 = 0.2315.
    const double ownCentre = 3.0;
    const auto at = [&](double gain) {
        auto builder = running(
            {{"A1", 5.0 - ownCentre + 0.2315 + gain}, {"B1", 5.0}, {"A2", 8.0}, {"B2", 10.0}});
        builder.conductorNamed("A1").size = units::WireSize::of("1/0");
        return strays(builder);
    };
    EXPECT_EQ(at(0.0), 0);
    EXPECT_EQ(at(0.0009), 0);
    EXPECT_EQ(at(-0.0009), 0) << "within what geometry may err";
    EXPECT_EQ(at(-0.002), 1) << "B1 is nearer to A2";
}

TEST(SetGrouping, CountsDepthAsMuchAsHeight) {
    // set 1 at the back, set 2 in front of it: a square of one inch is a tie
    EXPECT_EQ(strays(running({{"A1", 2, 1}, {"B1", 3, 1}, {"A2", 2, 2}, {"B2", 3, 2}})), 0);
    EXPECT_EQ(strays(running({{"A1", 2, 1}, {"B1", 3.5, 1}, {"A2", 2, 2}, {"B2", 3.5, 2}})), 4);
}

TEST(SetGrouping, GroundsBelongToNoGroup) {
    EXPECT_EQ(strays(running({{"A1", 1}, {"B1", 3}, {"G2", 2}, {"A2", 5}, {"B2", 7}})), 0);
}

TEST(SetGrouping, IsJudgedOnlyWhereTwoWholeSetsRunTogether) {
    EXPECT_EQ(strays(running({{"A1", 1}, {"B1", 2}})), -1) << "one set";
    EXPECT_EQ(strays(running({{"A1", 1}, {"A2", 2}})), -1) << "one conductor a set";
    auto builder = running({{"A1", 1}, {"A2", 2}, {"B1", 3}, {"B2", 4}});
    builder.conductorNamed("A2").to = spare({20.0, 2.0, 1.0});
    builder.conductorNamed("B1").from = spare({20.0, 3.0, 1.0});
    EXPECT_EQ(strays(builder), -1) << "they only meet end to end";
    builder.conductorNamed("B1").from = spare({19.0, 3.0, 1.0});
    EXPECT_EQ(strays(builder), 4);
    EXPECT_EQ(grouping(builder)[0].interval, std::make_pair(19.0, 20.0));
    builder.circuitNamed("S").role = layout::Role::bonding;
    EXPECT_EQ(strays(builder), -1) << "bonding jumpers are no parallel sets";
}

TEST(SetGrouping, LegsAcrossTheGutterAreNotRunning) {
    auto builder = running({{"A1", 1}, {"A2", 2}, {"B1", 3}, {"B2", 4}});
    builder.conductorNamed("A1").from = spare({8.0, 1.0, 1.0});
    builder.conductorNamed("A1").to = spare({8.0, 11.0, 1.0});
    EXPECT_EQ(strays(builder), -1);
}

/// The longest leg counts, whichever way round it is drawn.
TEST(SetGrouping, FollowsTheLongestLegInEitherDirection) {
    auto builder = running({{"A1", 1}, {"B1", 2}, {"A2", 4}, {"B2", 5}});
    auto& conductor = builder.conductorNamed("A2");
    std::swap(conductor.from, conductor.to);
    EXPECT_EQ(strays(builder), 0);
    conductor.corners = {corner({50.0, 4.0, 1.0}, 0.0), corner({50.0, 9.0, 1.0}, 0.0)};
    conductor.to = spare({5.0, 9.0, 1.0});
    EXPECT_EQ(strays(builder), 1) << "A2 runs at 9 in, four from B2; B1 is three from B2";
}

/// Law: moving a whole set away never makes more of its conductors stray.
TEST(SetGrouping, SetsFurtherApartNeverStrayMore) {
    int before = 4;
    for (double away = 0.0; away < 6.0; away += 0.25) {
        const int now = strays(running({{"A1", 1}, {"B1", 3}, {"A2", 2 + away}, {"B2", 4 + away}}));
        EXPECT_LE(now, before) << away;
        before = now;
    }
    EXPECT_EQ(before, 0);
}

}  // namespace
}  // namespace gw::checks
