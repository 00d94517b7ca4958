#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::spare;
using standards::Edition;
using standards::Insulation;
using standards::RacewayType;
using standards::TradeSize;
using units::Inches;

/// A gutter with one raceway of that length, still empty.
GutterBuilder withRaceway(RacewayType type, const std::string& size, double length = 120.0) {
    GutterBuilder builder;
    builder.entry("in", layout::Wall::left, 6.0, 6.0);
    auto& entry = builder.layout().entries.front();
    entry.raceway = type;
    entry.tradeSize = TradeSize::of(size);
    entry.racewayLength = Inches::of(length);
    return builder;
}

layout::Conductor& addThrough(GutterBuilder& builder, const std::string& size) {
    const auto slot = static_cast<int>(builder.layout().conductors.size()) + 1;
    auto& conductor =
        builder.conductor("w" + std::to_string(slot), atEntry("in", slot), spare({30.0, 6.0, 6.0}));
    conductor.size = units::WireSize::of(size);
    conductor.insulation = Insulation::thhn;
    return conductor;
}

void addMany(GutterBuilder& builder, int many, const std::string& size) {
    for (int i = 0; i < many; ++i) {
        addThrough(builder, size);
    }
}

Finding only(const GutterBuilder& builder) {
    const auto findings = checkRacewayFill(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

// ---- published examples ---------------------------------------------------------------------

GutterBuilder mixedIn(const std::string& pvc) {
    auto builder = withRaceway(RacewayType::pvc40, pvc);
    addMany(builder, 3, "500");
    addThrough(builder, "250");
    addThrough(builder, "3");
    return builder;
}

// Trade magazine, "Code Calculations": three 500, one 250 and one 3 AWG THHN are 2.6162 sq in and
// take PVC schedule 40 of trade size 3, which allows 2.907.
TEST(PublishedRacewayFill, MixedConductorsTakeThreeInchConduit) {
    const auto three = only(mixedIn("3"));
    EXPECT_EQ(three.verdict, Verdict::meets);
    EXPECT_EQ(three.limit->value, 40.0);
    EXPECT_NEAR(three.measured->value / 40.0, 2.6162 / 2.907, 1e-3);
    EXPECT_THAT(three.working, testing::HasSubstr("2.616 sq in"));
    EXPECT_EQ(three.citation.section, "Chapter 9 Table 1");
    EXPECT_EQ(only(mixedIn("2-1/2")).verdict, Verdict::breach);
}

/// Three alike of this area together in a 1-1/2 RMC nipple.
Finding nippleWith(double together) {
    auto builder = withRaceway(RacewayType::rmc, "1-1/2", 24.0);
    for (int i = 0; i < 3; ++i) {
        addThrough(builder, "3/0").outsideDiameter =
            Inches::of(std::sqrt(together / 3.0 * 4.0 / 3.14159265358979323846));
    }
    return only(builder);
}

// Year 4 practice, "A 1-1/2 RMC nipple with three conductors": 1.243 sq in may be filled, which is
// 60 % of 2.071 = 1.2426.
TEST(PublishedRacewayFill, NippleMayBeFilledToSixtyPercent) {
    EXPECT_EQ(nippleWith(1.2425).verdict, Verdict::meets);
    EXPECT_EQ(nippleWith(0.6 * 2.071).verdict, Verdict::meets) << "the limit itself";
    EXPECT_EQ(nippleWith(1.2435).verdict, Verdict::breach);
    EXPECT_EQ(nippleWith(1.2425).citation.section, "Chapter 9 Table 1 note 4");
}

// Forum, "Nipple fill 60%": a 3 in EMT nipple holds 399 of 12 AWG THHN: 5.307 / 0.0133 = 399.02.
TEST(PublishedRacewayFill, NippleHoldsThreeHundredNinetyNine) {
    auto builder = withRaceway(RacewayType::emt, "3", 20.0);
    addMany(builder, 399, "12");
    EXPECT_EQ(only(builder).verdict, Verdict::meets);
    addThrough(builder, "12");
    EXPECT_EQ(only(builder).verdict, Verdict::breach);
}

// ---- how many share it ----------------------------------------------------------------------

struct CountRow {
    const char* name;
    int count;
    double limit;
};

void PrintTo(const CountRow& row, std::ostream* out) {
    *out << row.name;
}

class LimitByCount : public testing::TestWithParam<CountRow> {};

TEST_P(LimitByCount, IsThatOfTheTable) {
    auto builder = withRaceway(RacewayType::emt, "2");
    addMany(builder, GetParam().count, "6");
    EXPECT_EQ(only(builder).limit->value, GetParam().limit);
    builder.layout().entries.front().racewayLength = Inches::of(24.0);
    EXPECT_EQ(only(builder).limit->value, 60.0);
    builder.layout().entries.front().racewayLength = Inches::of(24.01);
    EXPECT_EQ(only(builder).limit->value, GetParam().limit);
}

// Source: NFPA 70 Chapter 9 Table 1 and note 4.
INSTANTIATE_TEST_SUITE_P(Table1,
                         LimitByCount,
                         testing::Values(CountRow{"One", 1, 53.0},
                                         CountRow{"Two", 2, 31.0},
                                         CountRow{"Three", 3, 40.0},
                                         CountRow{"Eight", 8, 40.0}),
                         [](const auto& row) { return std::string(row.param.name); });

struct AnnexRow {
    const char* name;
    const char* emt;
    int most;
};

void PrintTo(const AnnexRow& row, std::ostream* out) {
    *out << row.name;
}

class OfOneSize : public testing::TestWithParam<AnnexRow> {};

TEST_P(OfOneSize, CountsUpFromEightTenths) {
    auto builder = withRaceway(RacewayType::emt, GetParam().emt);
    addMany(builder, GetParam().most, "8");
    EXPECT_EQ(only(builder).verdict, Verdict::meets) << only(builder).working;
    addThrough(builder, "8");
    EXPECT_EQ(only(builder).verdict, Verdict::breach);
}

// Source: NFPA 70 Informative Annex C Table C.1, 8 AWG THHN in EMT, from memory; by areas: 0.304 x
// 0.4 / 0.0366 = 3.32, 0.533 x 0.4 / 0.0366 = 5.83 and 0.864 x 0.4 / 0.0366 = 9.44.
INSTANTIATE_TEST_SUITE_P(AnnexC,
                         OfOneSize,
                         testing::Values(AnnexRow{"Half", "1/2", 3},
                                         AnnexRow{"ThreeQuarters", "3/4", 6},
                                         AnnexRow{"One", "1", 9}),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(RoundedCount, IsToldAsACountAndNotOfMixedSizes) {
    auto builder = withRaceway(RacewayType::emt, "3/4");
    addMany(builder, 6, "8");
    const auto finding = only(builder);
    EXPECT_EQ(finding.measured->unit, Quantity::Unit::count);
    EXPECT_EQ(finding.limit->value, 6.0);
    EXPECT_EQ(finding.citation.section, "Chapter 9 Table 1 note 7");
    EXPECT_EQ(finding.citation.basis, standards::Basis::memory);
    builder.layout().conductors.front().size = units::WireSize::of("6");
    EXPECT_EQ(only(builder).verdict, Verdict::breach) << "5 x 0.0366 + 0.0507 is 43.9 %";
}

// ---- what is not stated ---------------------------------------------------------------------

TEST(RacewayNotStated, CannotTell) {
    auto builder = withRaceway(RacewayType::emt, "2");
    addMany(builder, 3, "6");
    auto& entry = builder.layout().entries.front();
    entry.raceway.reset();
    EXPECT_EQ(only(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(only(builder).missing, testing::ElementsAre("raceway type of entry in"));
    entry.tradeSize.reset();
    EXPECT_THAT(only(builder).missing,
                testing::ElementsAre("raceway type of entry in", "trade size of entry in"));
}

TEST(RacewayNotStated, CannotTellOfOneThatIsNotMade) {
    auto builder = withRaceway(RacewayType::emt, "3/8");
    addThrough(builder, "14");
    EXPECT_EQ(only(builder).verdict, Verdict::cannotTell);
}

/// EMT of trade size 1 holds 0.864 sq in: 40 % are 0.346, 60 % are 0.518. 6 AWG THHN has 0.0507.
TEST(LengthNotStated, MattersBetweenTheTwoLimitsOnly) {
    const auto verdictOf = [](int many) {
        auto builder = withRaceway(RacewayType::emt, "1");
        addMany(builder, many, "6");
        builder.layout().entries.front().racewayLength.reset();
        return only(builder);
    };
    EXPECT_EQ(verdictOf(6).verdict, Verdict::meets);
    EXPECT_EQ(verdictOf(8).verdict, Verdict::cannotTell);
    EXPECT_THAT(verdictOf(8).missing, testing::ElementsAre("length of the raceway at entry in"));
    EXPECT_EQ(verdictOf(11).verdict, Verdict::breach);
}

// 6 AWG is 0.0507 sq in as THHN and 0.0726 at the most (Table 5, RHH with covering).
TEST(InsulationNotStated, IsTakenForTheThickestAndSaid) {
    auto builder = withRaceway(RacewayType::emt, "1");
    addMany(builder, 3, "6");
    builder.layout().conductors.front().insulation.reset();
    EXPECT_EQ(only(builder).verdict, Verdict::meets);
    EXPECT_THAT(only(builder).working, testing::HasSubstr("largest published diameter"));
    addMany(builder, 3, "6");
    EXPECT_EQ(only(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(only(builder).missing, testing::ElementsAre("insulation of conductor w1"));
    addMany(builder, 3, "6");
    EXPECT_EQ(only(builder).verdict, Verdict::breach) << "too many, however thin the one";
}

// ---- laws -----------------------------------------------------------------------------------

TEST(RacewayFillLaws, AWiderRacewayNeverBreachesWhereANarrowerMeets) {
    for (int many = 1; many <= 12; ++many) {
        bool met = false;
        for (const char* size : {"1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4"}) {
            auto builder = withRaceway(RacewayType::emt, size);
            addMany(builder, many, "1/0");
            const bool meets = only(builder).verdict == Verdict::meets;
            EXPECT_TRUE(meets || !met) << many << " in " << size;
            met = meets;
        }
        EXPECT_TRUE(met) << many << " 1/0 fit 4 in: 12 x 0.1855 is 2.2 of 14.8 sq in";
    }
}

TEST(RacewayFill, IsNothingForARacewayWithoutConductors) {
    EXPECT_TRUE(checkRacewayFill(withRaceway(RacewayType::emt, "1").build()).empty());
}

TEST(RacewayFill, CountsTwiceWhatComesAndGoesByOneRaceway) {
    auto builder = withRaceway(RacewayType::emt, "2");
    builder.conductor("loop",
                      atEntry("in", 1),
                      atEntry("in", 2),
                      {check_test::corner({20, 6, 6}, 3.0), check_test::corner({20, 9, 6}, 3.0)});
    EXPECT_EQ(only(builder).limit->value, 31.0);
}

}  // namespace
}  // namespace gw::checks
