#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::about;
using check_test::GutterBuilder;
using check_test::spare;
using layout::Readings;
using test_support::Random;

/// So many conductors of a size lying along the gutter.
void addAlong(GutterBuilder& builder, int count, const std::string& size) {
    for (int i = 0; i < count; ++i) {
        const double y = 1.0 + 0.1 * i;
        auto& conductor = builder.conductor(
            size + "-" + std::to_string(i), spare({10.0, y, 1.0}), spare({40.0, y, 1.0}));
        conductor.size = units::WireSize::of(size);
    }
}

struct FillRow {
    std::string name;
    Vec3 inside;
    int count;
    std::string size;
    double percent;
    Verdict verdict;
    std::string source;
};

void PrintTo(const FillRow& row, std::ostream* out) {
    *out << row.name << " (" << row.source << ")";
}

class PublishedFill : public testing::TestWithParam<FillRow> {};

TEST_P(PublishedFill, IsJudgedAsPublished) {
    const FillRow& row = GetParam();
    GutterBuilder builder(row.inside);
    addAlong(builder, row.count, row.size);
    const auto findings = checkConductorFill(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, row.verdict);
    EXPECT_NEAR(findings[0].measured->value, row.percent, 0.005);
    EXPECT_EQ(findings[0].limit->value, 20.0);
    EXPECT_NEAR(findings[0].margin->value, 20.0 - row.percent, 0.005);
    ASSERT_TRUE(findings[0].interval.has_value());
    EXPECT_NEAR(findings[0].interval->first, 10.0, 1e-6);
    EXPECT_NEAR(findings[0].interval->second, 40.0, 1e-6);
}

// Areas: NFPA 70 Chapter 9 Table 5, THWN-2: 3/0 0.2679, 4/0 0.3237 sq in. 20 %: 366.22(A).
// clang-format off
INSTANTIATE_TEST_SUITE_P(Counts, PublishedFill, testing::Values(
    FillRow{"26 of 3/0 in 6 x 6",  {60, 6, 6}, 26, "3/0", 19.348, Verdict::meets,  "electricalcodeconnection.com, gutter fill 366.22: 26 conductors; 26 x 0.2679 / 36"},
    FillRow{"27 of 3/0 in 6 x 6",  {60, 6, 6}, 27, "3/0", 20.093, Verdict::breach, "one more than published; 27 x 0.2679 / 36"},
    FillRow{"39 of 4/0 in 8 x 8",  {60, 8, 8}, 39, "4/0", 19.725, Verdict::meets,  "IEC Year 4 practice: 39 conductors; 39 x 0.3237 / 64"},
    FillRow{"40 of 4/0 in 8 x 8",  {60, 8, 8}, 40, "4/0", 20.231, Verdict::breach, "one more than published; 40 x 0.3237 / 64"}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

struct LimitRow {
    std::string name;
    double area;  ///< sq in of one conductor in 10 x 10 in
    Verdict verdict;
};

class FillAtTheLimit : public testing::TestWithParam<LimitRow> {};

TEST_P(FillAtTheLimit, TwentyPercentIsAllowedAndNoMore) {
    GutterBuilder builder({60.0, 10.0, 10.0});
    auto& conductor = builder.conductor("S-A", spare({10, 5, 5}), spare({20, 5, 5}));
    conductor.outsideDiameter =
        units::Inches::of(std::sqrt(GetParam().area * 4.0 / 3.14159265358979));
    const auto findings = checkConductorFill(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, GetParam().verdict);
}

// Arithmetic: 20 % of 10 x 10 in is 20 sq in.
INSTANTIATE_TEST_SUITE_P(Sides,
                         FillAtTheLimit,
                         testing::Values(LimitRow{"below", 19.999, Verdict::meets},
                                         LimitRow{"at", 20.0, Verdict::meets},
                                         LimitRow{"above", 20.001, Verdict::breach}));

/// 30 of 3/0 (8.037 sq in, 22.3 %) in 6 x 6 in beside a block of this face.
GutterBuilder overfullBesideBlock(double height, double depth) {
    GutterBuilder builder({60.0, 6.0, 6.0});
    auto part = check_test::splicePart();
    part.body = {2.0, height, depth};
    builder.add(part).block("A", "splice", {20.0, 0.0, 0.0});
    addAlong(builder, 30, "3/0");
    for (auto& conductor : builder.layout().conductors) {
        std::get<layout::Spare>(conductor.from).tip.x = 20.5;
        std::get<layout::Spare>(conductor.to).tip.x = 21.5;
    }
    return builder;
}

const Finding& besideBlock(const std::vector<Finding>& findings) {
    EXPECT_EQ(findings.size(), 2U);
    return findings.at(1);
}

TEST(FillBesideABlock, IsDisputedWhereOnlyTheSpliceLimitHolds) {
    // 8 + 8.037 sq in of 36 is 44.5 %, within 75 %.
    const auto findings = checkConductorFill(overfullBesideBlock(4.0, 2.0).build());
    const Finding& finding = besideBlock(findings);
    EXPECT_EQ(finding.verdict, Verdict::caution);
    ASSERT_EQ(finding.readings.size(), 2U);
    EXPECT_EQ(finding.readings[0].verdict, Verdict::breach);
    EXPECT_NEAR(finding.readings[0].measured->value, 22.325, 0.001);
    EXPECT_EQ(finding.readings[1].verdict, Verdict::meets);
    EXPECT_NEAR(finding.readings[1].measured->value, 44.547, 0.001);
    EXPECT_EQ(finding.readings[1].limit->value, 75.0);
    EXPECT_EQ(findings[0].verdict, Verdict::meets) << "no conductor where there is no block";
}

TEST(FillBesideABlock, FollowsTheRecordedReading) {
    auto builder = overfullBesideBlock(4.0, 2.0);
    builder.layout().readings.fillAtSplice = Readings::FillAtSplice::twentyStillBinds;
    EXPECT_EQ(besideBlock(checkConductorFill(builder.build())).verdict, Verdict::breach);
    builder.layout().readings.fillAtSplice = Readings::FillAtSplice::seventyFiveReplaces;
    const auto findings = checkConductorFill(builder.build());
    EXPECT_EQ(besideBlock(findings).verdict, Verdict::meets);
    EXPECT_TRUE(besideBlock(findings).readings[1].chosen);
    EXPECT_FALSE(besideBlock(findings).readings[0].chosen);
}

TEST(FillBesideABlock, BreachesWhereBothReadingsDo) {
    // 25 + 8.037 sq in of 36 is 91.8 %.
    auto builder = overfullBesideBlock(5.0, 5.0);
    EXPECT_EQ(besideBlock(checkConductorFill(builder.build())).verdict, Verdict::breach);
    builder.layout().readings.fillAtSplice = Readings::FillAtSplice::seventyFiveReplaces;
    EXPECT_EQ(besideBlock(checkConductorFill(builder.build())).verdict, Verdict::breach);
}

TEST(FillOfUnknownInsulation, CannotTellABreachAndNamesTheConductors) {
    GutterBuilder builder({60.0, 6.0, 6.0});
    addAlong(builder, 26, "3/0");
    builder.conductorNamed("3-0-7").insulation.reset();
    builder.conductorNamed("3-0-9").insulation.reset();
    builder.layout().conductors.push_back(builder.conductorNamed("3-0-7"));
    builder.layout().conductors.back().id = layout::ConductorId("last");
    builder.layout().conductors.back().tag = "last";
    const auto findings = checkConductorFill(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::cannotTell);
    EXPECT_THAT(findings[0].missing,
                testing::ElementsAre("insulation of conductor 3/0-7",
                                     "insulation of conductor 3/0-9",
                                     "insulation of conductor last"));
}

TEST(FillOfUnknownInsulation, MeetsByTheLargestPublishedAndSaysSo) {
    GutterBuilder builder({60.0, 12.0, 12.0});
    addAlong(builder, 3, "3/0");
    builder.conductorNamed("3-0-1").insulation.reset();
    const auto findings = checkConductorFill(builder.build());
    EXPECT_EQ(findings.at(0).verdict, Verdict::meets);
    EXPECT_TRUE(findings.at(0).missing.empty());
    EXPECT_THAT(findings.at(0).working, testing::HasSubstr("largest published diameter"));
    EXPECT_THAT(findings.at(0).working, testing::HasSubstr("of conductor 3/0-1"));
}

TEST(FillOfUnknownInsulation, IsABreachWhereTheKnownConductorsAloneAre) {
    GutterBuilder builder({60.0, 6.0, 6.0});
    addAlong(builder, 28, "3/0");
    builder.conductorNamed("3-0-27").insulation.reset();
    const auto findings = checkConductorFill(builder.build());
    EXPECT_EQ(findings.at(0).verdict, Verdict::breach);
    EXPECT_TRUE(findings.at(0).missing.empty());
}

TEST(FillOfUnknownInsulation, IsABreachWhereTheMetalAloneIs) {
    // 3/0 class B is 0.470 in over the metal (Chapter 9 Table 8), 0.1735 sq in: 42 of them take
    // 7.287 sq in and 41 take 7.113, where 20 % of 36 sq in is 7.2.
    const auto verdictOf = [](int count) {
        GutterBuilder builder({60.0, 6.0, 6.0});
        addAlong(builder, count, "3/0");
        for (auto& conductor : builder.layout().conductors) {
            conductor.insulation.reset();
        }
        return checkConductorFill(builder.build()).at(0).verdict;
    };
    EXPECT_EQ(verdictOf(41), Verdict::cannotTell);
    EXPECT_EQ(verdictOf(42), Verdict::breach);
}

TEST(ConductorFill, CitesTheArticleOfTheGutter) {
    GutterBuilder builder;
    addAlong(builder, 1, "3/0");
    EXPECT_EQ(checkConductorFill(builder.build()).at(0).citation.section, "366.22(A)");
    builder.layout().gutter.article = standards::GutterArticle::metalWireway;
    EXPECT_EQ(checkConductorFill(builder.build()).at(0).citation.section, "376.22(A)");
}

GutterBuilder randomGutter(Random& random) {
    GutterBuilder builder({60.0, random.between(4.0, 8.0), random.between(4.0, 8.0)});
    builder.add(check_test::splicePart())
        .block("A", "splice", {random.between(0.0, 58.0), 0.0, 0.0});
    addAlong(builder, 5 + static_cast<int>(random.below(40)), "3/0");
    for (auto& conductor : builder.layout().conductors) {
        std::get<layout::Spare>(conductor.from).tip.x = random.between(0.0, 25.0);
        std::get<layout::Spare>(conductor.to).tip.x = random.between(30.0, 60.0);
    }
    return builder;
}

TEST(ConductorFillLaws, OrderOfConductorsAndBlocksDoesNotMatter) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        Random random(seed);
        auto builder = randomGutter(random);
        const auto before = check_test::sortedTexts(checkConductorFill(builder.build()));
        auto& conductors = builder.layout().conductors;
        std::reverse(conductors.begin(), conductors.end());
        std::swap(conductors.front(), conductors[conductors.size() / 2]);
        EXPECT_EQ(check_test::sortedTexts(checkConductorFill(builder.build())), before)
            << "seed " << seed;
    }
}

TEST(ConductorFillLaws, AWiderGutterNeverTurnsMeetsIntoBreach) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        Random random(seed);
        auto builder = randomGutter(random);
        const auto narrow = checkConductorFill(builder.build());
        builder.layout().gutter.inside.z += random.between(0.1, 4.0);
        const auto wide = checkConductorFill(builder.build());
        ASSERT_EQ(narrow.size(), wide.size());
        for (std::size_t i = 0; i < narrow.size(); ++i) {
            EXPECT_LE(wide[i].measured->value, narrow[i].measured->value) << "seed " << seed;
            EXPECT_FALSE(narrow[i].verdict == Verdict::meets && wide[i].verdict != Verdict::meets)
                << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace gw::checks
