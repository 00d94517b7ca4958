#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using layout::Phase;
using standards::Edition;
using testing::HasSubstr;
using units::Inches;

/// Two or more sets of phase A, each straight down from an entry of its own into a port: 6 in to
/// the stop. Raceways of steel beyond, 714 in long, so that a set is 720 in or 60 ft.
GutterBuilder sets(int count, const std::string& size = "500") {
    GutterBuilder builder;
    builder.add(check_test::rowPart(count)).block("A", "row", {10.0, 5.5, 2.0});
    builder.circuitNamed("S").phases = {Phase::a};
    builder.circuitNamed("S").sets = count;
    for (int i = 1; i <= count; ++i) {
        const std::string name = std::to_string(i);
        builder.entry("E" + name, layout::Wall::top, 9.5 + 1.5 * i, 3.0);
        auto& entry = builder.layout().entries.back();
        entry.raceway = standards::RacewayType::rmc;
        entry.racewayLength = Inches::of(714.0);
        auto& conductor = builder.conductor("S" + name, atEntry("E" + name), inPort("A", name));
        conductor.set = i;
        conductor.size = units::WireSize::of(size);
    }
    return builder;
}

/// What the beyond of set 1 has to be for it to be this long in all.
void lengthOfSet(GutterBuilder& builder, std::size_t set, double inches) {
    builder.layout().entries[set - 1].racewayLength = Inches::of(inches - 6.0);
}

struct Three {
    Finding size;
    Finding sameness;
    Finding length;
};

Three of(const GutterBuilder& builder) {
    const auto findings = checkParallelSets(builder.build());
    EXPECT_EQ(findings.size(), 3U);
    return {findings.at(0), findings.at(1), findings.at(2)};
}

TEST(ParallelSets, AlikeAndOfOneLengthMeet) {
    const Three found = of(sets(2));
    EXPECT_EQ(found.size.verdict, Verdict::meets);
    EXPECT_EQ(found.sameness.verdict, Verdict::meets);
    EXPECT_EQ(found.length.verdict, Verdict::meets);
    EXPECT_NEAR(found.length.measured->value, 0.0, 1e-6);
    EXPECT_THAT(found.length.working, HasSubstr("720 in to 720 in"));
    EXPECT_THAT(found.length.working, HasSubstr("50 % and 50 %"));
}

TEST(ParallelSets, AreOnlyJudgedWhereThereAreTwo) {
    EXPECT_TRUE(checkParallelSets(check_test::straightSplice().build()).empty());
}

TEST(ParallelSets, OfBondingAndGroundingConductorsFollowRulesOfTheirOwn) {
    auto builder = sets(2);
    builder.circuitNamed("S").phases = {Phase::g};
    for (auto& conductor : builder.layout().conductors) {
        conductor.phase = Phase::g;
    }
    EXPECT_TRUE(checkParallelSets(builder.build()).empty());
    builder = sets(2);
    builder.circuitNamed("S").role = layout::Role::bonding;
    EXPECT_TRUE(checkParallelSets(builder.build()).empty());
}

// ---- size: NFPA 70 310.10(G)(1), 1/0 AWG or larger -------------------------------------------

struct SizeRow {
    std::string size;
    Verdict verdict;
};

void PrintTo(const SizeRow& row, std::ostream* out) {
    *out << row.size;
}

class SizeInParallel : public testing::TestWithParam<SizeRow> {};

TEST_P(SizeInParallel, IsOneOughtOrLarger) {
    EXPECT_EQ(of(sets(2, GetParam().size)).size.verdict, GetParam().verdict);
}

INSTANTIATE_TEST_SUITE_P(Sizes,
                         SizeInParallel,
                         testing::Values(SizeRow{"1", Verdict::breach},
                                         SizeRow{"1/0", Verdict::meets},
                                         SizeRow{"2/0", Verdict::meets}),
                         [](const auto& row) { return "Row" + std::to_string(row.index); });

TEST(SizeInParallel, IsThatOfTheSmallest) {
    auto builder = sets(3);
    builder.conductorNamed("S2").size = units::WireSize::of("1");
    const Finding size = of(builder).size;
    EXPECT_EQ(size.verdict, Verdict::breach);
    EXPECT_THAT(size.working, HasSubstr("the smallest in parallel is 1 AWG"));
}

TEST(ParallelSets, AreInAnotherSubsectionFrom2020) {
    auto builder = sets(2);
    builder.layout().edition = Edition::nec2017;
    EXPECT_EQ(of(builder).size.citation.section, "310.10(H)(1)");
    EXPECT_EQ(of(builder).sameness.citation.section, "310.10(H)(2)");
    for (const Edition edition : {Edition::nec2020, Edition::nec2023, Edition::nec2026}) {
        builder.layout().edition = edition;
        EXPECT_EQ(of(builder).size.citation.section, "310.10(G)(1)");
        EXPECT_EQ(of(builder).sameness.citation.section, "310.10(G)(2)");
    }
}

// ---- alike: NFPA 70 310.10(G)(2) -------------------------------------------------------------

TEST(ParallelSets, OfTwoMetalsSizesOrInsulationsBreach) {
    auto metal = sets(2);
    metal.conductorNamed("S2").metal = standards::Metal::aluminium;
    EXPECT_EQ(of(metal).sameness.verdict, Verdict::breach);
    EXPECT_THAT(of(metal).sameness.working, HasSubstr("metal differs"));
    auto size = sets(2);
    size.conductorNamed("S2").size = units::WireSize::of("600");
    EXPECT_EQ(of(size).sameness.verdict, Verdict::breach);
    auto insulation = sets(2);
    insulation.conductorNamed("S2").insulation = standards::Insulation::xhhw2;
    EXPECT_EQ(of(insulation).sameness.verdict, Verdict::breach);
}

/// The rule names length, material, size, insulation and termination, not the strands.
TEST(ParallelSets, OfTwoStrandingsAreACaution) {
    auto builder = sets(2);
    builder.conductorNamed("S2").stranding = standards::Stranding::compact;
    EXPECT_EQ(of(builder).sameness.verdict, Verdict::caution);
}

TEST(ParallelSets, CannotBeToldAlikeWhereAFactIsMissing) {
    auto builder = sets(2);
    builder.conductorNamed("S2").metal.reset();
    builder.conductorNamed("S1").insulation.reset();
    builder.conductorNamed("S2").stranding.reset();
    const Finding sameness = of(builder).sameness;
    EXPECT_EQ(sameness.verdict, Verdict::cannotTell);
    EXPECT_THAT(
        sameness.missing,
        testing::UnorderedElementsAre(
            "metal of conductor S2", "insulation of conductor S1", "stranding of conductor S2"));
}

TEST(ParallelSets, ThatEndInDifferentWaysBreach) {
    auto builder = sets(2);
    builder.conductorNamed("S2").to = spare({12.5, 6.0, 3.0});
    EXPECT_EQ(of(builder).sameness.verdict, Verdict::breach);
    EXPECT_THAT(of(builder).sameness.working, HasSubstr("different ways"));
}

/// Set 2 moved from the row into a block of another part.
GutterBuilder inTwoParts() {
    auto builder = sets(2);
    builder.add(check_test::splicePart()).block("B", "splice", {30.0, 3.5, 2.0});
    builder.layout().entries[1].u = 31.0;
    builder.conductorNamed("S2").to = inPort("B", "1");
    return builder;
}

TEST(ParallelSets, InConnectorsOfTwoPartsAreACautionOfTwoKindsABreach) {
    auto builder = inTwoParts();
    EXPECT_EQ(of(builder).sameness.verdict, Verdict::caution);
    builder.part("splice").listing.kind = parts::ConnectorKind::distributionBlock;
    EXPECT_EQ(of(builder).sameness.verdict, Verdict::breach);
    builder.part("splice").listing.kind.reset();
    EXPECT_EQ(of(builder).sameness.verdict, Verdict::cannotTell);
    EXPECT_THAT(of(builder).sameness.missing, testing::ElementsAre("kind of part splice"));
}

TEST(ParallelSets, CannotBeToldAlikeWhereOneIsNotDrawn) {
    auto builder = sets(2);
    builder.layout().conductors.pop_back();
    const Three found = of(builder);
    EXPECT_EQ(found.sameness.verdict, Verdict::cannotTell);
    EXPECT_EQ(found.length.verdict, Verdict::cannotTell);
    EXPECT_THAT(found.length.missing, testing::ElementsAre("set 2 of phase A of circuit S"));
}

// ---- length: shares by reciprocal impedance ---------------------------------------------------

struct LengthRow {
    double inches;  ///< of the second set; the first is 720 in
    Verdict verdict;
    std::string shares;
};

void PrintTo(const LengthRow& row, std::ostream* out) {
    *out << row.inches << " in beside 720 in";
}

class LengthInParallel : public testing::TestWithParam<LengthRow> {};

TEST_P(LengthInParallel, TellsSpreadAndShares) {
    const LengthRow& row = GetParam();
    auto builder = sets(2);
    lengthOfSet(builder, 2, row.inches);
    const Finding length = of(builder).length;
    EXPECT_EQ(length.verdict, row.verdict);
    EXPECT_NEAR(length.measured->value, (row.inches - 720.0) / 720.0 * 100.0, 1e-9);
    EXPECT_THAT(length.working, HasSubstr(row.shares));
}

// The first of two carries l2 / (l1 + l2): 756 / 1476 = 51.2195 %, 792 / 1512 = 52.3810 %,
// 864 / 1584 = 54.5455 %, 721 / 1441 = 50.0347 %. 5 % of 720 in is 36 in: 756 in is the limit.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, LengthInParallel, testing::Values(
    LengthRow{721.0,  Verdict::meets,   "50.03 % and 49.97 %"},
    LengthRow{755.99, Verdict::meets,   "51.22 % and 48.78 %"},
    LengthRow{756.0,  Verdict::meets,   "51.22 % and 48.78 %"},
    LengthRow{756.01, Verdict::caution, "51.22 % and 48.78 %"},
    LengthRow{792.0,  Verdict::caution, "52.38 % and 47.62 %"},
    LengthRow{864.0,  Verdict::caution, "54.55 % and 45.45 %"}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

/// 1 / 10, 1 / 10.5, 1 / 11 and 1 / 11.5 of their sum 0.3731: 26.80 %, 25.53 %, 24.37 %, 23.31 %.
TEST(LengthInParallel, OfFourSetsTellsEachShare) {
    auto builder = sets(4);
    for (std::size_t set = 1; set <= 4; ++set) {
        lengthOfSet(builder, set, 120.0 + 6.0 * static_cast<double>(set - 1));
    }
    EXPECT_THAT(of(builder).length.working, HasSubstr("26.8 %, 25.53 %, 24.37 % and 23.31 %"));
}

/// NFPA 70 Chapter 9 Table 9, steel, copper: 500 kcmil 0.029 + j0.048, 600 kcmil 0.025 + j0.048
/// ohm/kft. 500 carries |Z600 / (Z500 + Z600)| = 0.054120 / 0.110145 = 49.14 %, 600 carries
/// 0.056080 / 0.110145 = 50.91 %.
TEST(LengthInParallel, OfTwoSizesSharesByImpedance) {
    auto builder = sets(2);
    builder.conductorNamed("S2").size = units::WireSize::of("600");
    EXPECT_THAT(of(builder).length.working, HasSubstr("49.14 % and 50.91 %"));
}

TEST(LengthInParallel, CannotBeToldWithoutTheRaceways) {
    auto builder = sets(2);
    builder.layout().entries[1].racewayLength.reset();
    const Finding length = of(builder).length;
    EXPECT_EQ(length.verdict, Verdict::cannotTell);
    EXPECT_THAT(length.missing, testing::ElementsAre("length of the raceway at entry E2"));
}

TEST(ParallelSetsLaws, LengtheningTheLongestNeverBettersAndOrderDoesNotMatter) {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        test_support::Random random(seed);
        auto builder = sets(3);
        double longest = 0.0;
        for (std::size_t set = 1; set <= 3; ++set) {
            const double inches = 300.0 + 10.0 * static_cast<double>(random.below(5));
            longest = std::max(longest, inches);
            lengthOfSet(builder, set, inches);
        }
        const Finding before = of(builder).length;
        const auto texts = check_test::sortedTexts(checkParallelSets(builder.build()));
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        EXPECT_EQ(check_test::sortedTexts(checkParallelSets(builder.build())), texts) << seed;
        lengthOfSet(builder, 1 + random.below(3), longest + 1.0);
        const Finding after = of(builder).length;
        EXPECT_TRUE(before.verdict == Verdict::meets || after.verdict != Verdict::meets ||
                    after.measured->value < before.measured->value + 1e-9)
            << seed;
    }
}

}  // namespace
}  // namespace gw::checks
