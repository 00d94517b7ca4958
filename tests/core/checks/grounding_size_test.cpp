#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::spare;
using layout::CircuitId;
using layout::Phase;
using layout::Role;
using standards::Metal;

/// A circuit with `sets` raceways, in each a conductor of phase A and a grounding conductor.
GutterBuilder grounded(Role role,
                       const std::string& size,
                       const std::string& ground,
                       int sets = 1) {
    GutterBuilder builder;
    builder.circuitNamed("S").role = role;
    builder.circuitNamed("S").sets = sets;
    builder.circuitNamed("S").deviceAmperes = 400.0;
    for (int set = 1; set <= sets; ++set) {
        const std::string number = std::to_string(set);
        const double y = 2.0 * set;
        builder.entry("in" + number, layout::Wall::left, y, 6.0);
        auto& phase =
            builder.conductor("A" + number, atEntry("in" + number, 1), spare({30.0, y, 6.0}));
        phase.size = units::WireSize::of(size);
        phase.set = set;
        auto& bond =
            builder.conductor("G" + number, atEntry("in" + number, 2), spare({30.0, y, 8.0}));
        bond.size = units::WireSize::of(ground);
        bond.phase = Phase::g;
        bond.set = set;
    }
    return builder;
}

std::vector<Finding> of(const GutterBuilder& builder) {
    return checkGroundingSize(builder.build());
}

Verdict verdictOf(const GutterBuilder& builder) {
    const auto findings = of(builder);
    EXPECT_FALSE(findings.empty());
    return findings.empty() ? Verdict::cannotTell : findings.front().verdict;
}

// Source: "Grounding Parallel Feeders" (steeltubeinstitute.org): 400 A in parallel raceways, 3 AWG
// copper or 1 AWG aluminium in each; NFPA 70 Table 250.122 and 250.122(F).
TEST(GroundingOfFourHundredAmperes, IsOfFullSizeInEachRaceway) {
    EXPECT_EQ(verdictOf(grounded(Role::feeder, "3/0", "3", 2)), Verdict::meets);
    EXPECT_EQ(verdictOf(grounded(Role::feeder, "3/0", "4", 2)), Verdict::breach);
    auto aluminium = grounded(Role::feeder, "3/0", "1", 2);
    EXPECT_EQ(of(aluminium).size(), 2U);
    aluminium.conductorNamed("G1").metal = Metal::aluminium;
    EXPECT_EQ(verdictOf(aluminium), Verdict::meets);
    aluminium.conductorNamed("G1").size = units::WireSize::of("2");
    EXPECT_EQ(verdictOf(aluminium), Verdict::breach);
    EXPECT_THAT(of(aluminium).at(0).citation.section, testing::HasSubstr("250.122(F)"));
}

// Source: NFPA 70 250.122(A): not larger than the circuit's conductors.
TEST(GroundingConductor, NeedNotBeLargerThanItsCircuit) {
    EXPECT_EQ(verdictOf(grounded(Role::feeder, "6", "6")), Verdict::meets);
    EXPECT_EQ(verdictOf(grounded(Role::feeder, "6", "8")), Verdict::breach);
}

// Source: NFPA 70 250.122(G): by the device ahead of the feeder. 400 A: 3 AWG; the tap's own 100 A
// would ask 8 AWG.
TEST(GroundingConductor, OfATapGoesByTheDeviceAheadOfItsFeeder) {
    auto builder = grounded(Role::tap, "1/0", "8");
    builder.circuitNamed("S").deviceAmperes = 100.0;
    builder.circuit("feeder", {Phase::a});
    builder.circuitNamed("feeder").role = Role::feeder;
    builder.circuitNamed("feeder").deviceAmperes = 400.0;
    builder.circuitNamed("S").joins = CircuitId("feeder");
    EXPECT_EQ(verdictOf(builder), Verdict::breach);
    EXPECT_THAT(of(builder).at(0).citation.section, testing::HasSubstr("250.122(G)"));
    builder.conductorNamed("G1").size = units::WireSize::of("3");
    EXPECT_EQ(verdictOf(builder), Verdict::meets);
}

/// A feeder spliced on to another goes on under the same device only where it is a tap; its own
/// device is the one ahead.
TEST(GroundingConductor, OfAFeederGoesByItsOwnDevice) {
    auto builder = grounded(Role::feeder, "1/0", "8");
    builder.circuitNamed("S").deviceAmperes = 100.0;
    builder.circuit("main", {Phase::a});
    builder.circuitNamed("main").role = Role::feeder;
    builder.circuitNamed("main").deviceAmperes = 400.0;
    builder.circuitNamed("S").joins = CircuitId("main");
    EXPECT_EQ(verdictOf(builder), Verdict::meets);
}

TEST(GroundingConductor, OfATapFromNobodyKnowsWhereCannotBeTold) {
    auto builder = grounded(Role::tap, "1/0", "3");
    builder.circuitNamed("S").tapRule = layout::TapRule::tenFoot;
    EXPECT_EQ(verdictOf(builder), Verdict::cannotTell);
    EXPECT_THAT(of(builder).at(0).missing, testing::SizeIs(1));
}

// Source: NFPA 70 Table 250.102(C)(1): over 3/0 to 350 kcmil of copper 2 AWG, over 600 to 1100
// kcmil 2/0.
TEST(GroundingOnTheLineSide, GoesByTheConductorsOfItsRaceway) {
    EXPECT_EQ(verdictOf(grounded(Role::service, "250", "2", 3)), Verdict::meets);
    EXPECT_EQ(verdictOf(grounded(Role::service, "250", "3", 3)), Verdict::breach);
    auto together = grounded(Role::service, "250", "2", 3);
    for (const char* id : {"A1", "A2", "A3"}) {
        together.conductorNamed(id).from = atEntry("in1", id[1] - '0' + 2);
    }
    EXPECT_EQ(verdictOf(together), Verdict::breach);
    together.conductorNamed("G1").size = units::WireSize::of("2/0");
    EXPECT_EQ(verdictOf(together), Verdict::meets);
}

/// Neutral and ground are joined in the gutter, the service has `sets` of 500 kcmil.
GutterBuilder bonded(int sets, const std::string& jumper) {
    auto builder = grounded(Role::service, "500", "1/0", sets);
    builder.circuit("bond", {Phase::g});
    builder.circuitNamed("bond").role = Role::bonding;
    auto& conductor = builder.conductor("J", spare({10.0, 1.0, 1.0}), spare({20.0, 1.0, 1.0}));
    conductor.circuit = CircuitId("bond");
    conductor.phase = Phase::g;
    conductor.size = units::WireSize::of(jumper);
    return builder;
}

Verdict verdictOfJumper(const GutterBuilder& builder) {
    const auto found = check_test::about(of(builder), layout::ConductorId("J"));
    EXPECT_EQ(found.size(), 1U);
    return found.empty() ? Verdict::cannotTell : found.front().verdict;
}

// Source: main bonding jumper of four sets of 500 kcmil copper (forums.mikeholt.com/threads/
// electrician.27781): 2 000 000 x 0.125 = 250 kcmil.
TEST(MainBondingJumper, OfFourSetsIsAnEighthOfTheirArea) {
    EXPECT_EQ(verdictOfJumper(bonded(4, "250")), Verdict::meets);
    EXPECT_EQ(verdictOfJumper(bonded(4, "4/0")), Verdict::breach);
}

TEST(MainBondingJumper, WithoutAServiceIsNotAsked) {
    auto builder = bonded(1, "14");
    builder.circuitNamed("S").role = Role::feeder;
    EXPECT_THAT(check_test::about(of(builder), layout::ConductorId("J")), testing::IsEmpty());
}

TEST(GroundingNotStated, IsNamed) {
    auto builder = grounded(Role::feeder, "3/0", "3");
    builder.circuitNamed("S").deviceAmperes.reset();
    builder.conductorNamed("G1").metal.reset();
    const auto finding = of(builder).at(0);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::SizeIs(2));
    auto service = grounded(Role::service, "3/0", "3");
    service.conductorNamed("A1").metal.reset();
    EXPECT_EQ(verdictOf(service), Verdict::cannotTell);
}

TEST(GroundingBeyondTheTable, CannotBeTold) {
    auto builder = grounded(Role::feeder, "2000", "2000");
    builder.circuitNamed("S").deviceAmperes = 6001.0;  // Table 250.122 ends at 6000 A
    EXPECT_EQ(verdictOf(builder), Verdict::cannotTell);
}

/// Property: a larger grounding conductor is never worse, whatever it is sized by.
TEST(GroundingConductor, LargerIsNeverWorse) {
    for (const auto role : {Role::service, Role::feeder}) {
        bool met = false;
        for (const auto size : units::WireSize::all()) {
            const bool meets =
                verdictOf(grounded(role, "350", std::string(size.label()))) == Verdict::meets;
            EXPECT_TRUE(meets || !met) << size.text();
            met = meets;
        }
        EXPECT_TRUE(met);
    }
}

}  // namespace
}  // namespace gw::checks
