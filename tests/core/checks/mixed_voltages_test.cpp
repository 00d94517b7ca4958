#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using check_test::spare;
using layout::Phase;
using standards::Edition;
using standards::Insulation;
using testing::ElementsAre;
using testing::IsEmpty;

/// "S-A" of 208Y/120 V beside "H-A" of a system of these volts.
GutterBuilder beside(std::optional<int> volts) {
    GutterBuilder builder;
    builder.layout().systems.push_back({layout::SystemId("high"), "", volts, {}, {}});
    builder.circuit("H", {Phase::a, Phase::g});
    builder.circuitNamed("H").system = layout::SystemId("high");
    builder.conductor("S-A", spare({1, 2, 1}), spare({50, 2, 1}));
    builder.conductor("H-A", spare({1, 6, 1}), spare({50, 6, 1})).circuit = layout::CircuitId("H");
    return builder;
}

Finding only(const GutterBuilder& builder) {
    const auto findings = checkMixedVoltages(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct Row {
    const char* name;
    std::optional<int> volts;
    Verdict verdict;
    std::size_t missing;
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

class MixedVoltages : public testing::TestWithParam<Row> {};

TEST_P(MixedVoltages, AreAtMostWhatTheInsulationIsRatedFor) {
    const Finding finding = only(beside(GetParam().volts));
    EXPECT_EQ(finding.verdict, GetParam().verdict);
    EXPECT_EQ(finding.missing.size(), GetParam().missing);
}

// Source: NFPA 70 300.3(C)(1): insulation rated for the highest circuit voltage of any conductor in
// the enclosure; 600 V for every type and 2000 V at most by its Table 310.4, from memory.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, MixedVoltages, testing::Values(
    Row{"Usual",             480,          Verdict::meets,      0},
    Row{"JustBelow",         599,          Verdict::meets,      0},
    Row{"AtTheLimit",        600,          Verdict::meets,      0},
    Row{"JustAbove",         601,          Verdict::cannotTell, 2},
    Row{"AtTheGreatest",     2000,         Verdict::cannotTell, 2},
    Row{"AboveTheGreatest",  2001,         Verdict::breach,     0},
    Row{"Medium",            4160,         Verdict::breach,     0},
    Row{"NotStated",         std::nullopt, Verdict::cannotTell, 1}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(MixedVoltagesMissing, NamesWhatThePrintHasToSay) {
    EXPECT_THAT(only(beside(1000)).missing,
                ElementsAre("volts that conductor H-A is marked for",
                            "volts that conductor S-A is marked for"));
    EXPECT_THAT(only(beside(std::nullopt)).missing,
                ElementsAre("volts between phases of system high"));
    auto builder = beside(480);
    builder.conductorNamed("S-A").insulation.reset();
    EXPECT_EQ(only(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(only(builder).missing, ElementsAre("insulation of conductor S-A"));
}

TEST(MixedVoltagesMissing, IsNoExcuseForWhatIsTooMuchAlready) {
    auto builder = beside(4160);
    builder.layout().systems.front().voltsToGround.reset();
    builder.layout().systems.front().voltsBetweenPhases.reset();
    builder.conductorNamed("S-A").insulation.reset();
    EXPECT_EQ(only(builder).verdict, Verdict::breach);
    EXPECT_THAT(only(builder).missing, IsEmpty());
    EXPECT_THAT(only(builder).subjects, ElementsAre(Subject(layout::ConductorId("H-A"))));
}

TEST(MixedVoltagesBare, BringNoInsulationAndGroundsNoVoltage) {
    auto builder = beside(4160);
    builder.conductorNamed("H-A").phase = Phase::g;
    EXPECT_EQ(only(builder).measured->value, 208.0);
    for (auto& conductor : builder.layout().conductors) {
        conductor.insulation = Insulation::bare;
    }
    EXPECT_THAT(checkMixedVoltages(builder.build()), IsEmpty());
}

TEST(MixedVoltagesEditions, MovedIn2026) {
    auto builder = beside(480);
    EXPECT_EQ(only(builder).citation.section, "300.3(C)(1)");
    builder.layout().edition = Edition::nec2026;
    EXPECT_EQ(only(builder).citation.section, "300.5(C)(1)");
}

/// Property: a lower voltage is never worse.
TEST(MixedVoltagesLaw, LowerIsNeverWorse) {
    bool met = false;
    bool breached = true;
    for (int volts = 5000; volts > 100; volts -= 100) {
        const Verdict verdict = only(beside(volts)).verdict;
        EXPECT_TRUE(verdict == Verdict::meets || !met) << volts;
        EXPECT_TRUE(verdict != Verdict::breach || breached) << volts;
        met = verdict == Verdict::meets;
        breached = verdict == Verdict::breach;
    }
    EXPECT_TRUE(met);
}

}  // namespace
}  // namespace gw::checks
