#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using check_test::spare;
using layout::Phase;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// NFPA 70 Chapter 9 Table 5: 500 kcmil THWN-2.
constexpr double kDiameter = 0.949;

void add(GutterBuilder& builder, const std::string& id, Phase phase, double y) {
    builder.conductor(id, spare({5.0, y, 6.0}), spare({50.0, y, 6.0})).phase = phase;
}

/// Conductors of circuit S side by side, 500 kcmil.
GutterBuilder sideBySide(const std::vector<Phase>& phases,
                         double kiloamperes,
                         double apart = kDiameter) {
    GutterBuilder builder;
    builder.layout().systems.front().faultKiloamperes = kiloamperes;
    builder.circuitNamed("S").phases = phases;
    double y = 2.0;
    for (const Phase phase : phases) {
        add(builder, "S-" + std::string(layout::phaseText(phase)), phase, y);
        y += apart;
    }
    return builder;
}

const std::vector<Phase> kThree = {Phase::a, Phase::b, Phase::c};
const std::vector<Phase> kTwo = {Phase::a, Phase::b};

Finding of(const GutterBuilder& builder) {
    const auto findings = checkFaultForces(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct ForceRow {
    const char* name;
    double kiloamperes;
    int sets;
    double three;  ///< lbf/ft, three phases
    double two;    ///< lbf/ft, two conductors
};

void PrintTo(const ForceRow& row, std::ostream* out) {
    *out << row.name;
}

class FaultForces : public testing::TestWithParam<ForceRow> {};

TEST_P(FaultForces, AreThoseOfLongParallelConductors) {
    const auto force = [](const std::vector<Phase>& phases) {
        auto builder = sideBySide(phases, GetParam().kiloamperes);
        builder.circuitNamed("S").sets = GetParam().sets;
        const auto finding = of(builder);
        EXPECT_EQ(finding.verdict, Verdict::meets);
        EXPECT_EQ(finding.measured->unit, Quantity::Unit::poundsForcePerFoot);
        return finding.measured->value;
    };
    EXPECT_NEAR(force(kThree), GetParam().three, 2e-3 * GetParam().three);
    EXPECT_NEAR(force(kTwo), GetParam().two, 2e-3 * GetParam().two);
}

// Source: arithmetic. kappa = 1.02 + 0.98 exp(-3 R/X) (IEC 60909) is 1.1930 at X/R 1.73, 1.4015 at
// 3.18 and 1.5513 at 4.90. 22 kA: peak 1.5513 x 1.41421 x 22 = 48.265 kA; 0.173205 x 48.265² /
// 0.0241046 m = 16 739 N/m = 1146.97 lbf/ft; between two 0.2 instead, 1324.4. Half the current in
// each of two sets is a quarter of the force: 42 kA 4180.26/4 = 1045.07.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, FaultForces, testing::Values(
    ForceRow{"TenKiloamperes",      10.0, 1,   140.16,   161.84},
    ForceRow{"TwentyTwo",           22.0, 1,  1146.97,  1324.40},
    ForceRow{"FortyTwo",            42.0, 1,  4180.26,  4826.95},
    ForceRow{"SixtyFive",           65.0, 1, 10012.25, 11561.15},
    ForceRow{"FortyTwoInTwoSets",   42.0, 2,  1045.07,  1206.74},
    ForceRow{"JustOverTen",         10.001, 1, 193.46,  223.39},
    ForceRow{"Twenty",              20.0, 1,   773.69,   893.38}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

// Source: arithmetic: root of 3 x 5 x 500 lbf / 4180.26 lbf/ft x 12 in/ft = 12.43 in; of two
// conductors 2 x 2500/4826.95 x 12 = 12.43 in as well.
TEST(FaultForcesTies, AreToldWithTheirAssumption) {
    EXPECT_THAT(of(sideBySide(kThree, 42.0)).working, HasSubstr("(500 lbf each) every 12.4 in"));
    EXPECT_THAT(of(sideBySide(kTwo, 42.0)).working, HasSubstr("every 12.4 in"));
    EXPECT_THAT(of(sideBySide(kTwo, 10.0)).working, HasSubstr("one tie"))
        << "371 in, in a 60 in gutter";
}

TEST(FaultForces, AreNoQuestionWithoutAFaultCurrent) {
    auto builder = sideBySide(kThree, 22.0);
    builder.layout().systems.front().faultKiloamperes.reset();
    EXPECT_THAT(checkFaultForces(builder.build()), IsEmpty());
}

TEST(FaultForces, AreNoQuestionOfOneConductorOrOnePhase) {
    EXPECT_THAT(checkFaultForces(sideBySide({Phase::a}, 22.0).build()), IsEmpty());
    auto builder = sideBySide({Phase::a}, 22.0);
    builder.circuitNamed("S").sets = 2;
    add(builder, "S2-A", Phase::a, 6.0);
    EXPECT_THAT(checkFaultForces(builder.build()), IsEmpty());
    builder.circuit("F", kTwo);
    add(builder, "F-B", Phase::b, 8.0);
    builder.conductorNamed("F-B").circuit = layout::CircuitId("F");
    EXPECT_THAT(checkFaultForces(builder.build()), IsEmpty()) << "another circuit";
}

TEST(FaultForcesOfTheNeutral, CountWhereThereAreFewerThanThreePhases) {
    EXPECT_EQ(checkFaultForces(sideBySide({Phase::a, Phase::n}, 22.0).build()).size(), 1U);
    EXPECT_THAT(checkFaultForces(sideBySide({Phase::a, Phase::g}, 22.0).build()), IsEmpty());
    auto builder = sideBySide(kThree, 22.0, 2.0);
    const double without = of(builder).measured->value;
    builder.circuitNamed("S").phases.push_back(Phase::n);
    add(builder, "S-N", Phase::n, 3.0);
    EXPECT_EQ(of(builder).measured->value, without);
}

TEST(FaultForces, NameTheTwoThatLieNearest) {
    auto builder = sideBySide(kThree, 22.0, 2.0);
    builder.conductorNamed("S-C").from = spare({5.0, 5.0, 6.0});
    builder.conductorNamed("S-C").to = spare({50.0, 5.0, 6.0});
    EXPECT_THAT(of(builder).subjects,
                ElementsAre(Subject(layout::CircuitId("S")),
                            Subject(layout::ConductorId("S-B")),
                            Subject(layout::ConductorId("S-C"))));
}

TEST(FaultForces, DoNotHangOnTheOrderOfTheLayout) {
    auto builder = sideBySide(kThree, 22.0);
    const auto before = check_test::sortedTexts(checkFaultForces(builder.build()));
    std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
    EXPECT_EQ(check_test::sortedTexts(checkFaultForces(builder.build())), before);
}

TEST(FaultForcesLaws, FurtherApartIsNeverHarderAndOverlapIsTouching) {
    const double touching = of(sideBySide(kThree, 22.0)).measured->value;
    EXPECT_NEAR(of(sideBySide(kThree, 22.0, 0.3)).measured->value, touching, 1e-9);
    double before = touching;
    for (double apart = kDiameter; apart < 4.0; apart += 0.25) {
        const double now = of(sideBySide(kThree, 22.0, apart)).measured->value;
        EXPECT_LE(now, before * (1.0 + 1e-9)) << apart;
        EXPECT_NEAR(now, touching * kDiameter / apart, 2e-3 * now) << apart;
        before = now;
    }
}

}  // namespace
}  // namespace gw::checks
