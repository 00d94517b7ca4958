// Published worked examples that need only the tables and arithmetic, each with the title of the
// page it was read on. What a page says is compared with what the tables and the rule give.

#include <gtest/gtest.h>

#include <cmath>

#include "standards/sections.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using units::WireSize;

constexpr Edition kEdition = Edition::nec2023;

double thhnArea(const char* size) {
    return insulatedConductor(WireSize::of(size), Insulation::thhn, Stranding::classB, kEdition)
        ->value.area.in2();
}

double racewayArea(RacewayType type, const char* size) {
    return racewayDimensions(type, TradeSize::of(size), kEdition)->value.area.in2();
}

double copper(const char* size, int celsius) {
    return ampacity(WireSize::of(size), Metal::copper, celsius, kEdition)->value;
}

// --- fill ------------------------------------------------------------------------------------

struct CountRow {
    const char* name;
    double width;  // inches, interior
    double depth;
    const char* size;
    int conductors;  // published
    const char* source;
};

void PrintTo(const CountRow& row, std::ostream* out) {
    *out << row.source;
}

std::string countName(const testing::TestParamInfo<CountRow>& row) {
    return row.param.name;
}

class GutterCount : public testing::TestWithParam<CountRow> {};

TEST_P(GutterCount, IsTwentyPercentOverTheAreaOfOne) {
    const CountRow& row = GetParam();
    const double share = gutterFillPercent(GutterArticle::auxiliaryGutter, kEdition)->value / 100.0;
    const double fit = share * row.width * row.depth / thhnArea(row.size);
    EXPECT_EQ(std::floor(fit), row.conductors) << fit;
}

// clang-format off
const CountRow kCountRows[] = {
    // 36 x 20 % = 7.2; 7.2 / 0.2679 = 26.88
    {"SixBySix",     6, 6, "3/0", 26, "How to calculate Auxiliary Gutter fill 366.22(A),(B)"},
    // 64 x 20 % = 12.8; 12.8 / 0.3237 = 39.54. The page explains the right number with a wrong rule.
    {"EightByEight", 8, 8, "4/0", 39, "Year 4 practice: an 8 in by 8 in gutter"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Published, GutterCount, testing::ValuesIn(kCountRows), countName);

// Trade magazine, "Code Calculations": three 500, one 250 and one 3 AWG THHN in PVC schedule 40
// make 2.6162 sq in and take trade size 3, which allows 2.907.
TEST(WorkedExamples, MixedConductorsTakeThreeInchConduit) {
    const double total = 3.0 * thhnArea("500") + thhnArea("250") + thhnArea("3");
    EXPECT_NEAR(total, 2.6162, 5e-5);
    const double share = racewayFillPercent(5, false, kEdition)->value / 100.0;
    const double allowed = share * racewayArea(RacewayType::pvc40, "3");
    EXPECT_NEAR(allowed, 2.907, 5e-4);
    EXPECT_LE(total, allowed);
    EXPECT_GT(total, share * racewayArea(RacewayType::pvc40, "2-1/2"));
}

// Year 4 practice, "A 1-1/2 RMC nipple with three conductors": 1.243 sq in may be filled.
TEST(WorkedExamples, NippleMayBeFilledToSixtyPercent) {
    const double share = racewayFillPercent(3, true, kEdition)->value / 100.0;
    EXPECT_NEAR(share * racewayArea(RacewayType::rmc, "1-1/2"), 1.243, 5e-4);
}

// Forum, "Nipple fill 60%": a 3 in EMT nipple holds 399 of 12 AWG THHN: 5.307 / 0.0133.
TEST(WorkedExamples, NippleHoldsThreeHundredNinetyNine) {
    const double share = racewayFillPercent(399, true, kEdition)->value / 100.0;
    const double fit = share * racewayArea(RacewayType::emt, "3") / thhnArea("12");
    EXPECT_EQ(std::floor(fit), 399.0) << fit;
}

// Trade magazine, "Code Quiz: Auxiliary Gutters": only elevators may have them longer than 30 ft.
TEST(WorkedExamples, OnlyElevatorsExcuseALongGutter) {
    const Citation citation = section(Rule::gutterLength, kEdition, GutterArticle::auxiliaryGutter);
    EXPECT_EQ(citation.section, "366.12(2)");
    EXPECT_NE(citation.note.find("620.35"), std::string::npos);
}

// --- bending space ---------------------------------------------------------------------------

// Level 2 practice, "What is the minimum wire bending space": one 3/0 not through the opposite
// wall, 4 in. The gutter-fill page above gives the same as the least width for it.
TEST(WorkedExamples, OneThreeOughtNeedsFourInches) {
    const auto space = bendingSpaceAtTerminalA(WireSize::of("3/0"), false, 1, kEdition);
    ASSERT_TRUE(space && space->value.least);
    EXPECT_EQ(space->value.least->in(), 4.0);
}

// Trade magazine, "Code Quiz 16": two 4/0 a lug through the wall the lugs face, 7.5 in.
TEST(WorkedExamples, TwoFourOughtThroughTheOppositeWallNeedSevenAndAHalfInches) {
    const auto space = bendingSpaceOppositeWallB(WireSize::of("4/0"), false, 2, kEdition);
    ASSERT_TRUE(space && space->value.least);
    EXPECT_EQ(space->value.least->in(), 7.5);
}

// --- taps ------------------------------------------------------------------------------------

// Practice page, "What is the minimum ampacity": a 25 ft tap of a 100 A feeder carries 33.3 A or
// more: 8 AWG at 60 degrees (10 AWG has 30 A), 10 AWG at 75.
TEST(WorkedExamples, TwentyFiveFootTapOfOneHundredAmperes) {
    const double least = 100.0 / 3.0;
    EXPECT_LT(copper("10", 60), least);
    EXPECT_GE(copper("8", 60), least);
    EXPECT_LT(copper("12", 75), least);
    EXPECT_GE(copper("10", 75), least);
}

// Forum, "Feeder tap": a 10 ft tap of a 1600 A breaker carries a tenth, 160 A: about 2/0 copper.
TEST(WorkedExamples, TenFootTapOfSixteenHundredAmperes) {
    const double least = 1600.0 / 10.0;
    EXPECT_LT(copper("1/0", 75), least);
    EXPECT_GE(copper("2/0", 75), least);
}

// --- ampacity --------------------------------------------------------------------------------

// Forum, "parallel service conductors": two sets of 1/0 copper, 300 A in two conduits, 240 A in one
// (six phase conductors, 0.80). With 90 degree insulation 2 x 170 x 0.80 = 272 A.
TEST(WorkedExamples, TwoSetsInTwoConduitsOrInOne) {
    EXPECT_EQ(2.0 * copper("1/0", 75), 300.0);
    const double factor = adjustmentFactor(6, kEdition)->value;
    EXPECT_DOUBLE_EQ(2.0 * copper("1/0", 75) * factor, 240.0);
    EXPECT_DOUBLE_EQ(2.0 * copper("1/0", 90) * factor, 272.0);
}

// Forum, "Parallel conductor sizing": two sets of 500 kcmil copper carry 760 A.
TEST(WorkedExamples, TwoSetsOfFiveHundred) {
    EXPECT_EQ(2.0 * copper("500", 75), 760.0);
}

// Trade magazine, "Quizzes on the Code 23": nine 12 AWG THHN in one conduit, 30 x 0.70 = 21 A.
TEST(WorkedExamples, NineConductorsOfTwelve) {
    EXPECT_DOUBLE_EQ(copper("12", 90) * adjustmentFactor(9, kEdition)->value, 21.0);
}

// Trade magazine, "Code Q&A 112": four 10 AWG THHN, 40 x 0.80 = 32 A.
TEST(WorkedExamples, FourConductorsOfTen) {
    EXPECT_DOUBLE_EQ(copper("10", 90) * adjustmentFactor(4, kEdition)->value, 32.0);
}

// Forum, "310 15 (B)": four 2-wire circuits count eight conductors: 0.70.
TEST(WorkedExamples, FourTwoWireCircuitsCountEight) {
    EXPECT_EQ(adjustmentFactor(4 * 2, kEdition)->value, 0.70);
}

// All 39 conductors of the second gutter carrying current are more than 30: 0.40.
TEST(WorkedExamples, ThirtyNineInAGutterAreAdjusted) {
    EXPECT_EQ(adjustmentFactor(39, kEdition)->value, 0.40);
}

// --- bonding ---------------------------------------------------------------------------------

std::string_view jumperFor(double kcmil) {
    return bondingJumper(kcmil * 1000.0, Metal::copper, Metal::copper, kEdition)
        ->value.size->label();
}

// Code forum, "Sizing a supply side or main bond with parallel conductors": 250 kcmil takes 2 AWG
// copper, three of 250 take 2/0.
TEST(WorkedExamples, SupplySideJumperOfOneAndOfThree) {
    EXPECT_EQ(jumperFor(250), "2");
    EXPECT_EQ(jumperFor(3 * 250), "2/0");
}

// Forum, "electrician": four sets of 500 copper, 2,000,000 x 0.125 = 250 kcmil.
TEST(WorkedExamples, MainJumperOfFourSets) {
    EXPECT_EQ(jumperFor(4 * 500), "250");
}

// Trade institute, "Grounding Parallel Feeders": 400 A takes 3 AWG copper or 1 AWG aluminium in
// each.
TEST(WorkedExamples, GroundingConductorOfFourHundredAmperes) {
    EXPECT_EQ(equipmentGroundingConductor(400, Metal::copper, kEdition)->value.label(), "3");
    EXPECT_EQ(equipmentGroundingConductor(400, Metal::aluminium, kEdition)->value.label(), "1");
}

}  // namespace
}  // namespace gw::standards
