#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::spare;
using layout::Wall;
using test_support::Random;

/// One conductor of this size in by the top wall at x = 10, turning to run right along the gutter.
GutterBuilder turningFromTop(const std::string& size, double height) {
    GutterBuilder builder({60.0, height, 20.0});
    builder.entry("in", Wall::top, 10.0, 5.0);
    builder
        .conductor("S-A",
                   atEntry("in"),
                   spare({40.0, height / 2.0, 5.0}),
                   {corner({10.0, height / 2.0, 5.0}, 0.5)})
        .size = units::WireSize::of(size);
    return builder;
}

struct SpaceRow {
    std::string size;
    double needed;
};

void PrintTo(const SpaceRow& row, std::ostream* out) {
    *out << row.size << ": " << row.needed;
}

class WidthWhereItBends : public testing::TestWithParam<SpaceRow> {};

TEST_P(WidthWhereItBends, IsTheOneWireColumnOfTableA) {
    const auto [size, needed] = GetParam();
    const auto verdictAt = [&](double height) {
        const auto findings = checkEntryBendingSpace(turningFromTop(size, height).build());
        EXPECT_EQ(findings.size(), 1U);
        EXPECT_EQ(findings.at(0).limit->value, needed);
        EXPECT_EQ(findings.at(0).measured->value, height);
        EXPECT_NEAR(findings.at(0).margin->value, height - needed, 1e-9);
        return findings.at(0).verdict;
    };
    EXPECT_EQ(verdictAt(needed + 0.0625), Verdict::meets);
    EXPECT_EQ(verdictAt(needed), Verdict::meets);
    EXPECT_EQ(verdictAt(needed - 0.0625), Verdict::breach);
}

// Source: NFPA 70 Table 312.6(A), one wire per terminal, inches.
INSTANTIATE_TEST_SUITE_P(TableA,
                         WidthWhereItBends,
                         testing::Values(SpaceRow{"8", 1.5},
                                         SpaceRow{"2", 2.5},
                                         SpaceRow{"1/0", 3.5},
                                         SpaceRow{"3/0", 4.0},
                                         SpaceRow{"250", 4.5},
                                         SpaceRow{"350", 5.0},
                                         SpaceRow{"500", 6.0},
                                         SpaceRow{"600", 8.0},
                                         SpaceRow{"1000", 10.0}),
                         [](const auto& row) {
                             auto name = row.param.size;
                             std::replace(name.begin(), name.end(), '/', '_');
                             return "Size" + name;
                         });

TEST(EntryBendingSpace, PublishedExample) {
    // electricalcodeconnection.com, gutter fill 366.22: 3/0 in a 6 x 6 in gutter needs 4 in.
    const auto findings = checkEntryBendingSpace(turningFromTop("3/0", 6.0).build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::meets);
    EXPECT_EQ(findings[0].limit->value, 4.0);
    EXPECT_EQ(findings[0].margin->value, 2.0);
    EXPECT_EQ(findings[0].citation.section, "366.58(A)");
}

TEST(EntryBendingSpace, NothingIsAskedOfStraightConductors) {
    const auto findings = checkEntryBendingSpace(check_test::straightSplice().build());
    ASSERT_EQ(findings.size(), 2U);
    for (const auto& finding : findings) {
        EXPECT_EQ(finding.verdict, Verdict::meets);
        EXPECT_FALSE(finding.limit.has_value());
        EXPECT_THAT(finding.working, testing::HasSubstr("straight"));
    }
}

TEST(EntryBendingSpace, SaysNothingOfAnEntryWithoutConductors) {
    auto builder = turningFromTop("500", 12.0);
    builder.entry("empty", Wall::bottom, 30.0, 5.0);
    EXPECT_EQ(checkEntryBendingSpace(builder.build()).size(), 1U);
}

TEST(EntryBendingSpace, SaysWhereTheTableSpecifiesNothing) {
    const auto findings = checkEntryBendingSpace(turningFromTop("10", 1.5).build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::meets);
    EXPECT_FALSE(findings[0].limit.has_value());
    EXPECT_THAT(findings[0].working, testing::HasSubstr("no space is specified"));
}

TEST(EntryBendingSpace, TheConductorThatAsksMostDecides) {
    auto builder = turningFromTop("3/0", 5.0);
    builder.conductor(
        "S-B", atEntry("in", 2), spare({40.0, 2.5, 6.0}), {corner({10.0, 2.5, 6.0}, 0.5)});
    const auto findings = checkEntryBendingSpace(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::breach);
    EXPECT_EQ(findings[0].limit->value, 6.0);
    EXPECT_THAT(
        findings[0].subjects,
        testing::ElementsAre(Subject(layout::EntryId("in")), Subject(layout::ConductorId("S-B"))));
}

struct WallRow {
    std::string name;
    Wall wall;
    Vec3 first;   ///< first corner
    Vec3 second;  ///< where it turns to
    double dimension;
};

class DimensionInThePlaneOfTheBend : public testing::TestWithParam<WallRow> {};

TEST_P(DimensionInThePlaneOfTheBend, IsMeasured) {
    const WallRow& row = GetParam();
    GutterBuilder builder({60.0, 7.0, 9.0});
    const bool endWall = row.wall == Wall::left || row.wall == Wall::right;
    const bool back = row.wall == Wall::back;
    builder.entry("in", row.wall, endWall ? 3.5 : 20.0, back ? 3.5 : 4.5);
    builder.conductor("S-A", atEntry("in"), spare(row.second), {corner(row.first, 0.5)});
    const auto findings = checkEntryBendingSpace(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].measured->value, row.dimension);
    // The same conductor told from its other end.
    auto& conductor = builder.layout().conductors.front();
    std::swap(conductor.from, conductor.to);
    EXPECT_EQ(checkEntryBendingSpace(builder.build()).at(0).measured->value, row.dimension);
}

// The gutter is 7 in high and 9 in deep.
INSTANTIATE_TEST_SUITE_P(
    Walls,
    DimensionInThePlaneOfTheBend,
    testing::Values(WallRow{"top", Wall::top, {20, 3, 4.5}, {40, 3, 4.5}, 7.0},
                    WallRow{"topToCover", Wall::top, {20, 3, 4.5}, {20, 3, 8}, 7.0},
                    WallRow{"bottom", Wall::bottom, {20, 3, 4.5}, {40, 3, 4.5}, 7.0},
                    WallRow{"back", Wall::back, {20, 3.5, 4}, {40, 3.5, 4}, 9.0},
                    WallRow{"leftUp", Wall::left, {10, 3.5, 4.5}, {10, 6, 4.5}, 7.0},
                    WallRow{"leftForward", Wall::left, {10, 3.5, 4.5}, {10, 3.5, 8}, 9.0},
                    WallRow{"leftMoreForwardThanUp", Wall::left, {10, 3.5, 4.5}, {14, 4, 6}, 9.0},
                    WallRow{"rightDown", Wall::right, {50, 3.5, 4.5}, {50, 1, 4.5}, 7.0}),
    [](const auto& row) { return row.param.name; });

TEST(EntryBendingSpace, AKinkAtTheEntryIsADeflection) {
    GutterBuilder builder({60.0, 5.0, 20.0});
    builder.entry("in", Wall::top, 10.0, 5.0);
    builder.conductor("S-A", atEntry("in"), spare({14.0, 1.0, 5.0}));
    EXPECT_EQ(checkEntryBendingSpace(builder.build()).at(0).verdict, Verdict::breach);
}

TEST(EntryBendingSpace, CompactAluminiumHasItsOwnColumn) {
    // Table 312.6(A): compact AA-8000 400 to 500 kcmil 5 in, all other 400 to 500 kcmil 6 in.
    auto builder = turningFromTop("500", 5.0);
    auto& conductor = builder.conductorNamed("S-A");
    conductor.metal = standards::Metal::aluminium;
    conductor.insulation = standards::Insulation::xhhw2;
    EXPECT_EQ(checkEntryBendingSpace(builder.build()).at(0).verdict, Verdict::breach);
    conductor.stranding = standards::Stranding::compact;
    EXPECT_EQ(checkEntryBendingSpace(builder.build()).at(0).verdict, Verdict::meets);
}

TEST(EntryBendingSpace, CannotTellWhereMetalOrStrandingDecides) {
    auto builder = turningFromTop("500", 5.5);
    auto& conductor = builder.conductorNamed("S-A");
    conductor.insulation = standards::Insulation::xhhw2;
    conductor.stranding = standards::Stranding::compact;
    conductor.metal.reset();
    const auto findings = checkEntryBendingSpace(builder.build());
    EXPECT_EQ(findings.at(0).verdict, Verdict::cannotTell);
    EXPECT_THAT(findings.at(0).missing, testing::ElementsAre("metal of conductor S-A"));
    builder.layout().gutter.inside.y = 6.0;
    EXPECT_EQ(checkEntryBendingSpace(builder.build()).at(0).verdict, Verdict::meets)
        << "6 in suffices whatever it is made of";
    builder.layout().gutter.inside.y = 4.5;
    EXPECT_EQ(checkEntryBendingSpace(builder.build()).at(0).verdict, Verdict::breach)
        << "4.5 in is too little whatever it is made of";
}

TEST(EntryBendingSpaceLaws, OrderDoesNotMatterAndMoreHeightNeverBreaches) {
    const std::vector<std::string> sizes = {"8", "2", "1/0", "4/0", "350", "500", "750"};
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        Random random(seed);
        auto builder = turningFromTop(sizes[random.below(sizes.size())], random.between(3.0, 9.0));
        for (int i = 0; i < 4; ++i) {
            const double z = random.between(4.0, 15.0);
            const Vec3 at{random.between(8.0, 12.0), 1.5, z};
            builder
                .conductor("C" + std::to_string(i),
                           atEntry("in", i + 2),
                           spare({40.0, 1.5, z}),
                           {corner(at, 0.25)})
                .size = units::WireSize::of(sizes[random.below(sizes.size())]);
        }
        const auto before = checkEntryBendingSpace(builder.build());
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        const auto after = checkEntryBendingSpace(builder.build());
        EXPECT_EQ(after.at(0).limit->value, before.at(0).limit->value) << "seed " << seed;
        EXPECT_EQ(after.at(0).verdict, before.at(0).verdict) << "seed " << seed;
        builder.layout().gutter.inside.y += random.between(0.0, 3.0);
        const auto higher = checkEntryBendingSpace(builder.build());
        EXPECT_FALSE(before.at(0).verdict == Verdict::meets &&
                     higher.at(0).verdict != Verdict::meets)
            << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
