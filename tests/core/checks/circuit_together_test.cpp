#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::spare;
using layout::GutterMaterial;
using layout::Phase;
using standards::Edition;

/// Circuit "F" in a gutter of that material, with entries "1" to "3".
GutterBuilder withCircuit(const std::vector<Phase>& phases,
                          int sets = 1,
                          GutterMaterial material = GutterMaterial::aluminium) {
    GutterBuilder builder;
    builder.layout().gutter.material = material;
    builder.circuit("F", phases, sets);
    for (int i = 1; i <= 3; ++i) {
        builder.entry(std::to_string(i), layout::Wall::left, 3.0 * i, 6.0);
    }
    return builder;
}

/// Through that entry, in the next free slot.
void come(GutterBuilder& builder, Phase phase, const std::string& entry, int set = 1) {
    const auto slot = static_cast<int>(builder.layout().conductors.size()) + 1;
    auto& conductor = builder.conductor(
        "w" + std::to_string(slot), atEntry(entry, slot), spare({30.0, 6.0, 6.0}));
    conductor.circuit = layout::CircuitId("F");
    conductor.phase = phase;
    conductor.set = set;
}

void comeAll(GutterBuilder& builder,
             const std::vector<Phase>& phases,
             const std::string& entry,
             int set = 1) {
    for (const Phase phase : phases) {
        come(builder, phase, entry, set);
    }
}

const std::vector<Phase> kFour = {Phase::a, Phase::b, Phase::c, Phase::n};
const std::vector<Phase> kThree = {Phase::a, Phase::b, Phase::c};

std::vector<Finding> of(const GutterBuilder& builder) {
    return checkCircuitTogether(builder.build());
}

/// In aluminium there is one finding a circuit.
Finding only(const GutterBuilder& builder) {
    const auto findings = of(builder);
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

TEST(OneSet, MeetsByOneRaceway) {
    auto builder = withCircuit(kFour);
    comeAll(builder, kFour, "1");
    EXPECT_EQ(only(builder).verdict, Verdict::meets);
    EXPECT_EQ(only(builder).measured->value, 0.0);
    EXPECT_EQ(only(builder).limit->value, 0.0);
}

// Source: NFPA 70 300.3(B): all conductors of a circuit in the same raceway, also the neutral and
// the grounding conductor.
TEST(OneSet, BreachesWithAnyOfItByAnother) {
    for (const Phase stray : {Phase::a, Phase::b, Phase::c, Phase::n, Phase::g}) {
        const std::vector<Phase> all = {Phase::a, Phase::b, Phase::c, Phase::n, Phase::g};
        auto builder = withCircuit(all);
        for (const Phase phase : all) {
            come(builder, phase, phase == stray ? "2" : "1");
        }
        EXPECT_EQ(only(builder).verdict, Verdict::breach) << layout::phaseText(stray);
        EXPECT_EQ(only(builder).measured->value, 2.0);
        EXPECT_THAT(only(builder).subjects,
                    testing::ElementsAre(Subject(layout::CircuitId("F")),
                                         Subject(layout::EntryId("1")),
                                         Subject(layout::EntryId("2"))));
        EXPECT_THAT(only(builder).working,
                    testing::HasSubstr("entry 1 lacks " + std::string(layout::phaseText(stray))));
    }
}

TEST(OneSet, CannotTellWhileAConductorIsNotDrawn) {
    auto builder = withCircuit(kFour);
    comeAll(builder, kThree, "1");
    EXPECT_EQ(only(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(only(builder).missing, testing::ElementsAre("conductors of phase N of circuit F"));
    come(builder, Phase::n, "1");
    EXPECT_EQ(only(builder).verdict, Verdict::meets);
}

TEST(OneSet, IsNothingWithoutAnEntry) {
    auto builder = withCircuit(kFour);
    builder.conductor("w", spare({5, 5, 5}), spare({30, 5, 5})).circuit = layout::CircuitId("F");
    EXPECT_TRUE(of(builder).empty());
}

TEST(BondingJumper, IsNoCircuit) {
    auto builder = withCircuit({Phase::n, Phase::g});
    builder.circuitNamed("F").role = layout::Role::bonding;
    come(builder, Phase::n, "1");
    come(builder, Phase::g, "2");
    EXPECT_TRUE(of(builder).empty());
}

// ---- sets in parallel -----------------------------------------------------------------------

TEST(TwoSets, MeetByTwoRacewaysOrByOne) {
    for (const char* second : {"1", "2"}) {
        auto builder = withCircuit(kFour, 2);
        comeAll(builder, kFour, "1", 1);
        comeAll(builder, kFour, second, 2);
        EXPECT_EQ(only(builder).verdict, Verdict::meets) << second;
    }
}

// Source: NFPA 70 300.3(B)(1): the rule holds for each raceway of a parallel run by itself.
TEST(TwoSets, BreachWithPhasesApart) {
    auto builder = withCircuit(kThree, 2);
    for (const int set : {1, 2}) {
        come(builder, Phase::a, "1", set);
        come(builder, Phase::b, "2", set);
        come(builder, Phase::c, "3", set);
    }
    EXPECT_EQ(only(builder).verdict, Verdict::breach);
    EXPECT_EQ(only(builder).measured->value, 3.0);
}

TEST(TwoSets, BreachWithOneConductorInTheOthersRaceway) {
    auto builder = withCircuit(kThree, 2);
    comeAll(builder, kThree, "1", 1);
    come(builder, Phase::a, "1", 2);
    come(builder, Phase::b, "2", 2);
    come(builder, Phase::c, "2", 2);
    EXPECT_EQ(only(builder).verdict, Verdict::breach);
    EXPECT_THAT(only(builder).working, testing::HasSubstr("entry 1 lacks B and C"));
}

TEST(TwoSets, BreachWithBothNeutralsInOneRaceway) {
    auto builder = withCircuit(kFour, 2);
    comeAll(builder, kThree, "1", 1);
    comeAll(builder, kThree, "2", 2);
    come(builder, Phase::n, "1", 1);
    come(builder, Phase::n, "1", 2);
    EXPECT_EQ(only(builder).verdict, Verdict::breach);
}

// ---- steel ----------------------------------------------------------------------------------

struct SteelRow {
    GutterMaterial material;
    bool ferrous;
};

void PrintTo(const SteelRow& row, std::ostream* out) {
    *out << layout::materialText(row.material);
}

class Induction : public testing::TestWithParam<SteelRow> {};

// Source: NFPA 70 300.20: ferrous metal.
TEST_P(Induction, IsAskedOfSteelOnly) {
    auto builder = withCircuit(kThree, 1, GetParam().material);
    comeAll(builder, {Phase::a, Phase::b}, "1");
    come(builder, Phase::c, "2");
    const auto findings = of(builder);
    ASSERT_EQ(findings.size(), GetParam().ferrous ? 2U : 1U);
    if (GetParam().ferrous) {
        EXPECT_EQ(findings[0].verdict, Verdict::breach);
        EXPECT_EQ(findings[1].verdict, Verdict::cannotTell) << "slots may be cut";
        EXPECT_EQ(findings[1].citation.section, "300.20(B)");
        EXPECT_THAT(findings[1].missing,
                    testing::ElementsAre("slots between the holes of entry 1 and entry 2"));
    }
}

INSTANTIATE_TEST_SUITE_P(Materials,
                         Induction,
                         testing::Values(SteelRow{GutterMaterial::steel, true},
                                         SteelRow{GutterMaterial::stainlessSteel, false},
                                         SteelRow{GutterMaterial::aluminium, false},
                                         SteelRow{GutterMaterial::nonmetallic, false}),
                         [](const auto& row) { return "Row" + std::to_string(row.index); });

// Source: NFPA 70 300.20(B): slots in the metal between the holes. Two walls are not one metal.
TEST(InductionInSteel, BreachesThroughHolesOfTwoWalls) {
    auto builder = withCircuit(kThree, 1, GutterMaterial::steel);
    comeAll(builder, {Phase::a, Phase::b}, "1");
    come(builder, Phase::c, "2");
    for (auto& entry : builder.layout().entries) {
        entry.wall = entry.id == layout::EntryId("2") ? layout::Wall::top : layout::Wall::bottom;
    }
    for (const auto& [edition, section] : {std::pair(Edition::nec2017, "300.20(B)"),
                                           std::pair(Edition::nec2023, "300.20(B)"),
                                           std::pair(Edition::nec2026, "300.22(B)")}) {
        builder.layout().edition = edition;
        const auto findings = of(builder);
        ASSERT_EQ(findings.size(), 2U);
        EXPECT_EQ(findings[1].verdict, Verdict::breach);
        EXPECT_EQ(findings[1].citation.section, section);
    }
}

TEST(InductionInSteel, BreachesWhereTheRestComesByNoHole) {
    auto builder = withCircuit(kThree, 1, GutterMaterial::steel);
    comeAll(builder, {Phase::a, Phase::b}, "1");
    auto& one = builder.conductor("w", spare({5, 5, 5}), spare({30, 5, 5}));
    one.circuit = layout::CircuitId("F");
    one.phase = Phase::c;
    EXPECT_EQ(of(builder).at(1).verdict, Verdict::breach);
}

TEST(InductionInSteel, DoesNotMindTheGroundingConductor) {
    auto builder = withCircuit({Phase::a, Phase::b, Phase::g}, 1, GutterMaterial::steel);
    comeAll(builder, {Phase::a, Phase::b}, "1");
    come(builder, Phase::g, "2");
    const auto findings = of(builder);
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].verdict, Verdict::breach);
    EXPECT_EQ(findings[1].verdict, Verdict::meets) << "no current through entry 2";
}

TEST(InductionInSteel, CannotTellOfACurrentWithoutReturn) {
    auto builder = withCircuit({Phase::a, Phase::g}, 1, GutterMaterial::steel);
    comeAll(builder, {Phase::a, Phase::g}, "1");
    const auto findings = of(builder);
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].verdict, Verdict::meets);
    EXPECT_EQ(findings[1].verdict, Verdict::cannotTell);
    EXPECT_THAT(findings[1].missing, testing::ElementsAre("return conductor of circuit F"));
}

TEST(CircuitTogether, CitesTheEditionsSection) {
    auto builder = withCircuit(kFour, 1, GutterMaterial::steel);
    comeAll(builder, kFour, "1");
    for (const auto edition : {Edition::nec2017, Edition::nec2020, Edition::nec2023}) {
        builder.layout().edition = edition;
        EXPECT_EQ(of(builder).at(0).citation.section, "300.3(B)");
        EXPECT_EQ(of(builder).at(1).citation.section, "300.20");
    }
    builder.layout().edition = Edition::nec2026;
    EXPECT_EQ(of(builder).at(0).citation.section, "300.5(B)");
    EXPECT_EQ(of(builder).at(1).citation.section, "300.22");
}

// ---- law ------------------------------------------------------------------------------------

TEST(CircuitTogetherLaws, WhatIsAllByOneEntryMeetsWhicheverItIs) {
    for (const char* entry : {"1", "2", "3"}) {
        for (int sets = 1; sets <= 4; ++sets) {
            auto builder = withCircuit(kFour, sets);
            for (int set = 1; set <= sets; ++set) {
                comeAll(builder, kFour, entry, set);
            }
            EXPECT_EQ(only(builder).verdict, Verdict::meets) << entry << ", " << sets << " sets";
        }
    }
}

}  // namespace
}  // namespace gw::checks
