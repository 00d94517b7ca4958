#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

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
using layout::Readings;
using layout::Wall;
using parts::ConnectorKind;
using test_support::Random;

/// A power distribution block in a metal wireway, `free` inches below the top wall; one conductor
/// from its upper port, either straight out of the top or aside to the left wall.
GutterBuilder distribution(const std::string& size, double free, bool throughTop) {
    GutterBuilder builder({60.0, 30.0, 12.0});
    builder.layout().gutter.article = standards::GutterArticle::metalWireway;
    auto part = check_test::splicePart();
    part.listing.kind = ConnectorKind::distributionBlock;
    builder.add(part).block("A", "splice", {29.0, 26.0 - free, 2.0});
    builder.entry("top", Wall::top, 30.0, 3.0);
    builder.entry("left", Wall::left, 30.0 - free / 2.0, 3.0);
    if (throughTop) {
        builder.conductor("S-A", inPort("A", "1"), atEntry("top"));
    } else {
        builder.conductor("S-A",
                          inPort("A", "1"),
                          atEntry("left"),
                          {corner({30.0, 30.0 - free / 2.0, 3.0}, 0.5)});
    }
    builder.conductorNamed("S-A").size = units::WireSize::of(size);
    return builder;
}

Finding only(const std::vector<Finding>& findings) {
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct SpaceRow {
    std::string size;
    bool opposite;
    double needed;
};

void PrintTo(const SpaceRow& row, std::ostream* out) {
    *out << row.size << (row.opposite ? " by Table (B): " : " by Table (A): ") << row.needed;
}

class SpaceAtAPort : public testing::TestWithParam<SpaceRow> {};

TEST_P(SpaceAtAPort, IsThatOfTheTable) {
    const auto [size, opposite, needed] = GetParam();
    const auto verdictAt = [&](double free) {
        const auto finding =
            only(checkTerminalBendingSpace(distribution(size, free, opposite).build()));
        EXPECT_EQ(finding.limit->value, needed);
        EXPECT_NEAR(finding.measured->value, free, 1e-9);
        EXPECT_NEAR(finding.margin->value, free - needed, 1e-9);
        EXPECT_EQ(finding.citation.section, "376.56(B)(3)");
        EXPECT_TRUE(finding.readings.empty());
        return finding.verdict;
    };
    EXPECT_EQ(verdictAt(needed + 0.0625), Verdict::meets);
    EXPECT_EQ(verdictAt(needed), Verdict::meets);
    EXPECT_EQ(verdictAt(needed - 0.0625), Verdict::breach);
}

// Source: NFPA 70 Tables 312.6(A) and (B), one wire per terminal, inches.
// 3/0 by (A), 4 in, is also NCCER Level 2 practice: one 3/0 not through the opposite wall.
INSTANTIATE_TEST_SUITE_P(Tables,
                         SpaceAtAPort,
                         testing::Values(SpaceRow{"3/0", false, 4.0},
                                         SpaceRow{"250", false, 4.5},
                                         SpaceRow{"500", false, 6.0},
                                         SpaceRow{"2", true, 3.5},
                                         SpaceRow{"3/0", true, 6.5},
                                         SpaceRow{"4/0", true, 7.0},
                                         SpaceRow{"500", true, 14.0}),
                         [](const auto& row) { return "Row" + std::to_string(row.index); });

TEST(TwoWiresAtATerminal, PublishedExample) {
    // EC&M code quiz, 312.6: two paralleled 4/0 per lug, entering through the wall the lugs face:
    // 7.5 in.
    auto builder = distribution("4/0", 7.5, true);
    builder.conductor("S-B", inPort("A", "1"), atEntry("top", 2)).size = units::WireSize::of("4/0");
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_EQ(finding.limit->value, 7.5);
    EXPECT_EQ(finding.verdict, Verdict::meets);
    builder.blockNamed("A").corner.y += 0.0625;
    EXPECT_EQ(only(checkTerminalBendingSpace(builder.build())).verdict, Verdict::breach);
}

TEST(TwoWiresAtATerminal, ColumnForTwoByTableA) {
    // Table 312.6(A): 4/0, two wires, 6 in.
    auto builder = distribution("4/0", 6.0, false);
    builder.conductor("S-B", inPort("A", "1"), atEntry("left", 2), {corner({30.0, 27.0, 3.0}, 0.5)})
        .size = units::WireSize::of("4/0");
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_EQ(finding.limit->value, 6.0);
    EXPECT_EQ(finding.verdict, Verdict::meets);
}

TEST(SpaceAtAPort, CannotTellWhereTheTableHasNoValue) {
    // Table 312.6(A) prints no value for three wires of 2 AWG.
    auto builder = distribution("2", 10.0, false);
    for (const std::string id : {"S-B", "S-C"}) {
        builder
            .conductor(id,
                       inPort("A", "1"),
                       atEntry("left", id == "S-B" ? 2 : 3),
                       {corner({30.0, 25.0, 3.0}, 0.5)})
            .size = units::WireSize::of("2");
    }
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre(testing::HasSubstr("3 wires of 2 AWG")));
}

TEST(SpaceAtAPort, AnotherBlockInTheWayEndsTheFreeDistance) {
    auto builder = distribution("500", 10.0, false);
    builder.block("B", "splice", {29.0, 23.0, 2.0});
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_NEAR(finding.measured->value, 3.0, 1e-9);
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_THAT(finding.working, testing::HasSubstr("block B"));
}

TEST(SpaceAtAPort, ABlockBesideTheWayDoesNotCount) {
    auto builder = distribution("500", 10.0, false);
    // 500 kcmil THWN-2 is 0.949 in: its surface is at x = 30.4745.
    builder.block("B", "splice", {30.4745, 23.0, 2.0});
    EXPECT_NEAR(only(checkTerminalBendingSpace(builder.build())).measured->value, 10.0, 1e-9);
    builder.blockNamed("B").corner.x = 30.47;
    EXPECT_NEAR(only(checkTerminalBendingSpace(builder.build())).measured->value, 3.0, 1e-9);
}

TEST(SpaceAtAPort, BothMouthsOfAPassAreJudged) {
    GutterBuilder builder({60.0, 20.0, 12.0});
    builder.layout().gutter.article = standards::GutterArticle::metalWireway;
    auto part = check_test::throughPart();
    part.listing.kind = ConnectorKind::distributionBlock;
    builder.add(part).block("A", "through", {9.0, 3.0, 2.0});
    builder.entry("above", Wall::top, 10.0, 3.0);
    auto& conductor = builder.conductor(
        "S-A", atEntry("above"), spare({40.0, 1.5, 3.0}), {corner({10.0, 1.5, 3.0}, 0.5)});
    conductor.passes = {{layout::BlockId("A"), parts::PortName("1"), {}, {}}};
    auto findings = checkTerminalBendingSpace(builder.build());
    ASSERT_EQ(findings.size(), 2U);
    // Below: 3 in to the bottom wall, turning aside: Table (A) 6 in.
    EXPECT_NEAR(findings[0].measured->value, 3.0, 1e-9);
    EXPECT_EQ(findings[0].limit->value, 6.0);
    // Above: 14 in to the top wall, through which it leaves: Table (B) 14 in.
    EXPECT_NEAR(findings[1].measured->value, 14.0, 1e-9);
    EXPECT_EQ(findings[1].limit->value, 14.0);
    // The same told from the other end.
    std::swap(conductor.from, conductor.to);
    findings = checkTerminalBendingSpace(builder.build());
    EXPECT_EQ(findings.at(0).limit->value, 6.0);
    EXPECT_EQ(findings.at(1).limit->value, 14.0);
}

// ---- which rule binds -----------------------------------------------------------------------

GutterBuilder tooNear(std::optional<ConnectorKind> kind) {
    auto builder = distribution("500", 5.0, false);
    builder.part("splice").listing.kind = kind;
    return builder;
}

TEST(SpaceAtAWireConnector, IsDisputed) {
    const auto finding =
        only(checkTerminalBendingSpace(tooNear(ConnectorKind::wireConnector).build()));
    EXPECT_EQ(finding.verdict, Verdict::caution);
    ASSERT_EQ(finding.readings.size(), 2U);
    EXPECT_EQ(finding.readings[0].verdict, Verdict::breach);
    EXPECT_EQ(finding.readings[1].verdict, Verdict::meets);
    EXPECT_EQ(finding.citation.section, "312.6(B)(1)");
}

TEST(SpaceAtAWireConnector, FollowsTheRecordedReading) {
    auto builder = tooNear(ConnectorKind::wireConnector);
    builder.layout().readings.terminalSpace = Readings::TerminalSpace::asForBlocks;
    EXPECT_EQ(only(checkTerminalBendingSpace(builder.build())).verdict, Verdict::breach);
    builder.layout().readings.terminalSpace = Readings::TerminalSpace::gutterWidthOnly;
    EXPECT_EQ(only(checkTerminalBendingSpace(builder.build())).verdict, Verdict::meets);
}

TEST(SpaceAtAWireConnector, MeetsWithoutDisputeWhereThereIsRoom) {
    auto builder = distribution("500", 6.0, false);
    builder.part("splice").listing.kind = ConnectorKind::wireConnector;
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_EQ(finding.verdict, Verdict::meets);
    EXPECT_TRUE(finding.readings.empty());
}

TEST(SpaceAtADistributionBlock, BindsWhateverReadingIsRecorded) {
    auto builder = tooNear(ConnectorKind::distributionBlock);
    builder.layout().readings.terminalSpace = Readings::TerminalSpace::gutterWidthOnly;
    EXPECT_EQ(only(checkTerminalBendingSpace(builder.build())).verdict, Verdict::breach);
}

TEST(SpaceAtADistributionBlock, IsDisputedInAnAuxiliaryGutter) {
    auto builder = tooNear(ConnectorKind::distributionBlock);
    builder.layout().gutter.article = standards::GutterArticle::auxiliaryGutter;
    EXPECT_EQ(only(checkTerminalBendingSpace(builder.build())).verdict, Verdict::caution);
}

TEST(SpaceAtAConnectorOfUnknownKind, CannotTellAndNamesIt) {
    auto builder = tooNear(std::nullopt);
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing,
                testing::ElementsAre(testing::HasSubstr("kind of the connector of block A")));
}

TEST(SpaceAtAConnectorOfUnknownKind, BreachesWhereTheRecordedReadingSaysSoForEither) {
    auto builder = tooNear(std::nullopt);
    builder.layout().readings.terminalSpace = Readings::TerminalSpace::asForBlocks;
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_TRUE(finding.missing.empty());
}

TEST(SpaceAtAPort, CannotTellWhichMouthIsOpen) {
    auto builder = tooNear(ConnectorKind::wireConnector);
    builder.part("splice").ports[0].opening = parts::PortOpening::either;
    const auto finding = only(checkTerminalBendingSpace(builder.build()));
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("open mouth of port 1 of block A"));
}

TEST(TerminalBendingSpaceLaws, OrderDoesNotMatterAndMoreRoomNeverBreaches) {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        Random random(seed);
        auto builder = distribution("500", random.between(2.0, 20.0), random.chance(0.5));
        for (int i = 0; i < 4; ++i) {
            const std::string id = "B" + std::to_string(i);
            builder.block(
                id,
                "splice",
                {random.between(0.0, 58.0), random.between(0.0, 26.0), random.between(0.0, 10.0)});
            builder.conductor("C" + std::to_string(i), inPort(id, "1"), spare({1, 29, 11}));
        }
        const auto before = checkTerminalBendingSpace(builder.build());
        std::reverse(builder.layout().blocks.begin(), builder.layout().blocks.end());
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        EXPECT_EQ(check_test::sortedTexts(checkTerminalBendingSpace(builder.build())),
                  check_test::sortedTexts(before))
            << "seed " << seed;
        builder.layout().gutter.inside.y += 5.0;
        const auto roomier = checkTerminalBendingSpace(builder.build());
        const auto breachesIn = [](const auto& findings) {
            return check_test::withVerdict(findings, Verdict::breach).size();
        };
        EXPECT_LE(breachesIn(roomier), breachesIn(before)) << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
