#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "checks/screw_corridors.h"
#include "checks/support.h"
#include "core/checks/gutter_builder.h"
#include "support/random.h"

/// The straight splice's screws stand at (10, 7.25, 4) and (10, 4.75, 4) and look at the cover.
namespace gw::checks {
namespace {

using check_test::about;
using check_test::GutterBuilder;
using check_test::spare;
using parts::ConnectorKind;

// ---- the driver -----------------------------------------------------------------------------

struct DriveRow {
    std::string name;
    std::string drive;
    std::optional<double> diameter;
};

void PrintTo(const DriveRow& row, std::ostream* out) {
    *out << row.drive;
}

class DriverOf : public testing::TestWithParam<DriveRow> {};

TEST_P(DriverOf, NeedsItsCornersAndAnEighthAllRound) {
    const auto diameter = driverDiameter(GetParam().drive);
    ASSERT_EQ(diameter.has_value(), GetParam().diameter.has_value());
    if (diameter) {
        EXPECT_NEAR(*diameter, *GetParam().diameter, 1e-4);
    }
}

// Source: arithmetic. Across the corners of a hex 3/8 in: 0.375 * 2 / 1.7320508 = 0.43301; of a
// square 3/8 in: 0.375 * 1.4142136 = 0.53033; each and 0.25.
INSTANTIATE_TEST_SUITE_P(Rows,
                         DriverOf,
                         testing::Values(DriveRow{"Hex", "hex 3/8 in", 0.68301},
                                         DriveRow{"Square", "square 3/8 in", 0.78033},
                                         DriveRow{"Slot", "slot 1/4 in", 0.5},
                                         DriveRow{"NotStated", "", std::nullopt},
                                         DriveRow{"NoWidth", "hex", std::nullopt},
                                         DriveRow{"NoLength", "hex wide", std::nullopt},
                                         DriveRow{"Zero", "hex 0 in", std::nullopt},
                                         DriveRow{"OtherKind", "star 1/4 in", std::nullopt}),
                         [](const auto& row) { return row.param.name; });

// ---- what stands in the way -----------------------------------------------------------------

const Subject kBlock = layout::BlockId("A");

constexpr double kHexCorners = 0.375 * 2.0 / std::numbers::sqrt3;
constexpr double kCorridorRadius = kHexCorners / 2.0 + 0.125;

/// A conductor 0.5 in thick along x in front of the splice's lower half, y above the lower screw.
GutterBuilder crossedAt(double y, double z = 6.0) {
    auto builder = check_test::straightSplice();
    builder.conductor("X", spare({3, 4.75 + y, z}), spare({17, 4.75 + y, z})).outsideDiameter =
        units::Inches::of(0.5);
    return builder;
}

Finding lower(const GutterBuilder& builder) {
    const auto findings = checkScrewReach(builder.build());
    EXPECT_EQ(findings.size(), 2U);
    return findings.at(1);
}

TEST(ScrewReach, FreeScrewsMeet) {
    const auto findings = checkScrewReach(check_test::straightSplice().build());
    ASSERT_EQ(findings.size(), 2U);
    for (const auto& finding : findings) {
        EXPECT_EQ(finding.verdict, Verdict::meets) << finding.working;
        EXPECT_EQ(finding.subjects.front(), kBlock);
        EXPECT_THAT(finding.working, testing::HasSubstr("hex 3/8 in driver, 0.683 in wide"));
    }
}

TEST(ScrewReach, PortsThatHoldNothingAreNotAsked) {
    auto builder = check_test::straightSplice();
    builder.layout().conductors.pop_back();
    EXPECT_EQ(checkScrewReach(builder.build()).size(), 1U);
}

struct AsideRow {
    std::string name;
    double gap;
    Verdict verdict;
};

void PrintTo(const AsideRow& row, std::ostream* out) {
    *out << row.name;
}

class ConductorBesideADriver : public testing::TestWithParam<AsideRow> {};

// Source: arithmetic. The conductor's surface is its distance less its radius 0.25 and the
// corridor's radius away.
TEST_P(ConductorBesideADriver, MayTouchButNotReachIn) {
    const auto finding = lower(crossedAt(-(0.25 + kCorridorRadius + GetParam().gap)));
    EXPECT_EQ(finding.verdict, GetParam().verdict) << finding.working;
    EXPECT_NEAR(finding.measured->value, GetParam().gap, 1e-3);
    EXPECT_EQ(finding.limit->value, 0.0);
}

INSTANTIATE_TEST_SUITE_P(Gaps,
                         ConductorBesideADriver,
                         testing::Values(AsideRow{"Apart", 0.01, Verdict::meets},
                                         AsideRow{"Touching", 0.0, Verdict::meets},
                                         AsideRow{"In", -0.01, Verdict::caution},
                                         AsideRow{"HalfIn", -0.3, Verdict::caution}),
                         [](const auto& row) { return row.param.name; });

TEST(ScrewReach, WhatPassesBehindTheHeadIsNotInTheWay) {
    // Beside the body, its surface 0.05 in behind the head's face at z = 4.
    auto builder = check_test::straightSplice();
    builder.layout().blocks.at(0).corner.x = 9.0;
    builder.part("splice").screws.at(1).head.x = 1.9;
    auto& conductor = builder.conductor("X", spare({11.3, 2, 3.7}), spare({11.3, 10, 3.7}));
    conductor.outsideDiameter = units::Inches::of(0.5);
    EXPECT_EQ(lower(builder).verdict, Verdict::meets) << lower(builder).working;
    for (auto* end : {&conductor.from, &conductor.to}) {
        std::get<layout::Spare>(*end).tip.z = 3.8;
    }
    EXPECT_EQ(lower(builder).verdict, Verdict::caution) << "0.05 in in front of the face";
}

struct KindRow {
    std::string name;
    std::optional<ConnectorKind> kind;
    std::optional<bool> mounted;
    Verdict byConductor;
    Verdict turnedAway;
};

void PrintTo(const KindRow& row, std::ostream* out) {
    *out << row.name;
}

class ConnectorOfAKind : public testing::TestWithParam<KindRow> {
protected:
    static GutterBuilder with(GutterBuilder builder) {
        builder.part("splice").listing.kind = GetParam().kind;
        builder.blockNamed("A").mounted = GetParam().mounted;
        return builder;
    }
};

TEST_P(ConnectorOfAKind, DecidesHowMuchAConductorOverItsScrewMatters) {
    EXPECT_EQ(lower(with(crossedAt(0.0))).verdict, GetParam().byConductor);
}

TEST_P(ConnectorOfAKind, DecidesHowMuchAScrewThatLooksAwayMatters) {
    auto builder = with(check_test::straightSplice());
    builder.part("splice").screws.at(1).outward = {1, 0, 0};
    EXPECT_EQ(lower(builder).verdict, GetParam().turnedAway);
}

TEST_P(ConnectorOfAKind, DecidesHowMuchABlockOverItsScrewMatters) {
    auto builder = with(check_test::straightSplice());
    builder.block("B", "splice", {9.0, 1.0, 5.0});
    const auto finding = lower(builder);
    EXPECT_EQ(finding.verdict, GetParam().turnedAway) << finding.working;
    EXPECT_EQ(finding.subjects.at(1), Subject(layout::BlockId("B")));
    // Source: arithmetic. B reaches up to y = 5 over the whole corridor: 0.25 beyond its axis.
    EXPECT_NEAR(finding.measured->value, -kCorridorRadius - 0.25, 1e-3);
}

const std::optional<ConnectorKind> kWire = ConnectorKind::wireConnector;
const std::optional<ConnectorKind> kDistribution = ConnectorKind::distributionBlock;

// clang-format off
INSTANTIATE_TEST_SUITE_P(
    Kinds, ConnectorOfAKind,
    testing::Values(
        KindRow{"DistributionBlock", kDistribution, std::nullopt, Verdict::breach,     Verdict::breach},
        KindRow{"WireMounted",       kWire,         true,         Verdict::caution,    Verdict::breach},
        KindRow{"WireFloating",      kWire,         false,        Verdict::caution,    Verdict::caution},
        KindRow{"WireNotSaid",       kWire,         std::nullopt, Verdict::caution,    Verdict::cannotTell},
        KindRow{"KindNotSaid",       std::nullopt,  true,         Verdict::cannotTell, Verdict::breach},
        KindRow{"NothingSaid",       std::nullopt,  std::nullopt, Verdict::cannotTell, Verdict::cannotTell}),
    [](const auto& row) { return row.param.name; });
// clang-format on

TEST(ScrewReach, WallBesideTheScrewIsInTheWay) {
    auto builder = check_test::straightSplice();
    builder.blockNamed("A").mounted = true;
    builder.part("splice").screws.at(0).head = {1.0, 3.99, 2.0};
    builder.layout().gutter.inside.y = 8.0;
    const auto finding = checkScrewReach(builder.build()).at(0);
    EXPECT_EQ(finding.verdict, Verdict::breach) << finding.working;
    EXPECT_THAT(finding.working, testing::HasSubstr("the top wall"));
    EXPECT_NEAR(finding.measured->value, 0.01 - kCorridorRadius, 1e-6);
}

TEST(ScrewReach, DriveNotStatedCannotTell) {
    auto builder = check_test::straightSplice();
    builder.part("splice").screws.at(1).drive.clear();
    const auto finding = lower(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("drive of screw 2 of part splice"));
}

TEST(ScrewReach, ScrewsNotStatedCannotTell) {
    auto builder = check_test::straightSplice();
    builder.part("splice").screws.pop_back();
    const auto finding = lower(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("screws of port 2 of block A"));
}

TEST(ScrewReach, ConductorOfUnknownThicknessCannotTell) {
    auto builder = crossedAt(0.0);
    auto& conductor = builder.conductorNamed("X");
    conductor.outsideDiameter.reset();
    conductor.insulation.reset();
    // Source: NFPA 70 Chapter 9 Table 8, 500 kcmil bare 0.813 in or more; with any insulation of
    // Table 5 it is thicker than the 0.9 in that just touches.
    EXPECT_EQ(lower(builder).verdict, Verdict::caution) << "straight over the screw in any case";
    for (auto* end : {&conductor.from, &conductor.to}) {
        std::get<layout::Spare>(*end).tip.y = 4.75 - (0.45 + kCorridorRadius);
    }
    EXPECT_EQ(lower(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(lower(builder).missing, testing::ElementsAre("insulation of conductor X"));
}

TEST(ScrewReach, OwnConductorThatRisesOverItsScrewIsNamed) {
    auto builder = check_test::straightSplice();
    builder.layout().conductors.at(1).to = spare({10, 5.5, 9});
    builder.layout().conductors.at(1).corners = {check_test::corner({10, 1.5, 3}, 1.5),
                                                 check_test::corner({10, 1.5, 8}, 1.5),
                                                 check_test::corner({10, 5.5, 8}, 0.5)};
    const auto finding = lower(builder);
    EXPECT_EQ(finding.verdict, Verdict::caution) << finding.working;
    EXPECT_THAT(finding.working, testing::HasSubstr("conductor T-A"));
}

struct SectionRow {
    std::string name;
    standards::Edition edition;
    standards::GutterArticle article;
    std::string section;
};

void PrintTo(const SectionRow& row, std::ostream* out) {
    *out << row.name;
}

class SectionForBlocks : public testing::TestWithParam<SectionRow> {};

// Source: NFPA 70 376.56(B)(5) for power distribution blocks in metal wireways, 314.28(E)(5) its
// twin for boxes; numbers alike from 2017 to 2026.
TEST_P(SectionForBlocks, IsTheArticlesOwn) {
    auto builder = crossedAt(0.0);
    builder.part("splice").listing.kind = ConnectorKind::distributionBlock;
    builder.layout().edition = GetParam().edition;
    builder.layout().gutter.article = GetParam().article;
    EXPECT_EQ(lower(builder).citation.section, GetParam().section);
}

INSTANTIATE_TEST_SUITE_P(Editions,
                         SectionForBlocks,
                         testing::Values(SectionRow{"Wireway2017",
                                                    standards::Edition::nec2017,
                                                    standards::GutterArticle::metalWireway,
                                                    "376.56(B)(5)"},
                                         SectionRow{"Wireway2026",
                                                    standards::Edition::nec2026,
                                                    standards::GutterArticle::metalWireway,
                                                    "376.56(B)(5)"},
                                         SectionRow{"Gutter2023",
                                                    standards::Edition::nec2023,
                                                    standards::GutterArticle::auxiliaryGutter,
                                                    "314.28(E)(5)"}),
                         [](const auto& row) { return row.param.name; });

class MovedAway : public testing::TestWithParam<std::uint64_t> {};

TEST_P(MovedAway, AConductorNeverMakesTheVerdictWorse) {
    test_support::Random random(GetParam());
    int worst = 3;
    double y = 0.0;
    for (int i = 0; i < 12; ++i) {
        y -= 0.06 + 0.01 * static_cast<double>(random.below(15));
        const int now = gravity(lower(crossedAt(y)).verdict);
        EXPECT_LE(now, worst) << "seed " << GetParam() << ", y " << y;
        worst = now;
    }
    EXPECT_EQ(worst, 0) << "seed " << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Seeds, MovedAway, testing::Range<std::uint64_t>(1, 9));

}  // namespace
}  // namespace gw::checks
