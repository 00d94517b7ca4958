// Published worked examples, judged by the checks: each is built as a small layout, and the numbers
// of the page are read out of the finding. Each names the title of the page it was read on.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "checks/finding.h"
#include "checks/support.h"
#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using layout::Phase;
using layout::Role;
using layout::TapRule;
using layout::Wall;
using standards::Insulation;
using standards::RacewayType;
using testing::HasSubstr;
using units::Inches;

Finding only(const std::vector<Finding>& findings) {
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

double measured(const Finding& finding) {
    return given(finding.measured).value;
}
double limit(const Finding& finding) {
    return given(finding.limit).value;
}

/// The finding whose working says this.
Finding saying(const std::vector<Finding>& findings, const std::string& words) {
    for (const Finding& finding : findings) {
        if (finding.working.find(words) != std::string::npos) {
            return finding;
        }
    }
    ADD_FAILURE() << "no finding says " << words;
    return {};
}

// --- conductor fill --------------------------------------------------------------------------

struct CountRow {
    const char* name;
    double side;  ///< inches, of the square gutter
    const char* size;
    int conductors;  ///< published
    double area;     ///< square inches of one
    const char* source;
};

void PrintTo(const CountRow& row, std::ostream* out) {
    *out << row.source;
}

/// So many of a size lie along a square gutter, a phase of a circuit of three each.
GutterBuilder alongGutter(const CountRow& row, int conductors) {
    constexpr Phase kThree[] = {Phase::a, Phase::b, Phase::c};
    GutterBuilder builder({60.0, row.side, row.side});
    builder.layout().surroundings.ambientCelsius = 30.0;
    for (int i = 0; i < conductors; ++i) {
        const std::string circuit = "F" + std::to_string(i / 3);
        if (i % 3 == 0) {
            builder.circuit(circuit, {kThree[0], kThree[1], kThree[2]});
            builder.circuitNamed(circuit).loadAmperes = 100.0;
        }
        const double y = 1.0 + 0.1 * i;
        auto& one = builder.conductor(
            "w" + std::to_string(i), spare({10.0, y, 1.0}), spare({40.0, y, 1.0}));
        one.circuit = layout::CircuitId(circuit);
        one.phase = kThree[i % 3];
        one.size = units::WireSize::of(row.size);
    }
    return builder;
}

class PublishedCount : public testing::TestWithParam<CountRow> {};

TEST_P(PublishedCount, IsTheMostThatMeets) {
    const CountRow& row = GetParam();
    const double inside = row.side * row.side;
    const Finding most = only(checkConductorFill(alongGutter(row, row.conductors).build()));
    EXPECT_EQ(most.verdict, Verdict::meets);
    EXPECT_EQ(limit(most), 20.0);
    EXPECT_NEAR(measured(most) / 100.0 * inside, row.conductors * row.area, 1e-6);
    const Finding more = only(checkConductorFill(alongGutter(row, row.conductors + 1).build()));
    EXPECT_EQ(more.verdict, Verdict::breach);
    EXPECT_NEAR(measured(more) / 100.0 * inside, (row.conductors + 1) * row.area, 1e-6);
}

std::string countName(const testing::TestParamInfo<CountRow>& row) {
    return row.param.name;
}

// clang-format off
const CountRow kSixBySix =
    // 36 x 20 % = 7.2; 7.2 / 0.2679 = 26.88
    {"SixBySix",     6.0, "3/0", 26, 0.2679, "How to calculate Auxiliary Gutter fill 366.22(A),(B)"};
const CountRow kEightByEight =
    // 64 x 20 % = 12.8; 12.8 / 0.3237 = 39.54
    {"EightByEight", 8.0, "4/0", 39, 0.3237, "Year 4 practice: an 8 in by 8 in gutter"};
// clang-format on
INSTANTIATE_TEST_SUITE_P(WorkedExamples,
                         PublishedCount,
                         testing::Values(kSixBySix, kEightByEight),
                         countName);

// Of those gutters: 26 are not more than 30, so nothing is adjusted: 3/0 copper at 90 degrees, 225
// A. All 39 carrying current are adjusted by 0.40: 4/0 at 90 degrees, 260 x 0.40 = 104 A.
TEST(WorkedExamplesByChecks, ManyInAGutterAreAdjustedAboveThirty) {
    const auto ampacityIn = [](const CountRow& row) {
        return limit(saying(checkAmpacity(alongGutter(row, row.conductors).build()), "for a load"));
    };
    EXPECT_NEAR(ampacityIn(kSixBySix), 225.0, 1e-9);
    EXPECT_NEAR(ampacityIn(kEightByEight), 104.0, 1e-9);
}

// --- raceway fill ----------------------------------------------------------------------------

/// A gutter with one raceway of that length, still empty.
GutterBuilder withRaceway(RacewayType type, const std::string& size, double length) {
    GutterBuilder builder;
    builder.entry("in", Wall::left, 6.0, 6.0);
    auto& entry = builder.layout().entries.front();
    entry.raceway = type;
    entry.tradeSize = standards::TradeSize::of(size);
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

GutterBuilder mixedIn(const std::string& pvc) {
    auto builder = withRaceway(RacewayType::pvc40, pvc, 120.0);
    for (const std::string size : {"500", "500", "500", "250", "3"}) {
        addThrough(builder, size);
    }
    return builder;
}

// Trade magazine, "Code Calculations": three 500, one 250 and one 3 AWG THHN make 2.6162 sq in and
// take PVC schedule 40 of trade size 3, which allows 2.907, that is 40 % of 7.268.
TEST(WorkedExamplesByChecks, MixedConductorsTakeThreeInchConduit) {
    const Finding three = only(checkRacewayFill(mixedIn("3").build()));
    EXPECT_EQ(three.verdict, Verdict::meets);
    EXPECT_NEAR(measured(three) / 100.0 * 7.268, 2.6162, 5e-5);
    EXPECT_NEAR(limit(three) / 100.0 * 7.268, 2.907, 5e-4);
    EXPECT_EQ(only(checkRacewayFill(mixedIn("2-1/2").build())).verdict, Verdict::breach);
}

/// Three alike that together take this area, in a nipple of 1-1/2 RMC.
Finding nippleWith(double squareInches) {
    constexpr double kPi = 3.14159265358979323846;
    auto builder = withRaceway(RacewayType::rmc, "1-1/2", 24.0);
    for (int i = 0; i < 3; ++i) {
        addThrough(builder, "3/0").outsideDiameter =
            Inches::of(std::sqrt(squareInches / 3.0 * 4.0 / kPi));
    }
    return only(checkRacewayFill(builder.build()));
}

// Year 4 practice, "A 1-1/2 RMC nipple with three conductors": 1.243 sq in may be filled, 60 % of
// 2.071.
TEST(WorkedExamplesByChecks, NippleMayBeFilledToSixtyPercent) {
    const Finding just = nippleWith(1.242);
    EXPECT_EQ(just.verdict, Verdict::meets);
    EXPECT_NEAR(measured(just) / 100.0 * 2.071, 1.242, 1e-6);
    EXPECT_NEAR(limit(just) / 100.0 * 2.071, 1.243, 5e-4);
    EXPECT_EQ(nippleWith(1.244).verdict, Verdict::breach);
}

// Forum, "Nipple fill 60%": a 3 in EMT nipple under 24 in holds 399 of 12 AWG THHN, 5.307 / 0.0133;
// 5.307 is 60 % of 8.846.
TEST(WorkedExamplesByChecks, NippleHoldsThreeHundredNinetyNine) {
    auto builder = withRaceway(RacewayType::emt, "3", 23.0);
    for (int i = 0; i < 399; ++i) {
        addThrough(builder, "12");
    }
    const Finding most = only(checkRacewayFill(builder.build()));
    EXPECT_EQ(most.verdict, Verdict::meets);
    EXPECT_NEAR(measured(most) / 100.0 * 8.846, 399.0 * 0.0133, 1e-6);
    EXPECT_NEAR(limit(most) / 100.0 * 8.846, 5.307, 1e-3);
    addThrough(builder, "12");
    EXPECT_EQ(only(checkRacewayFill(builder.build())).verdict, Verdict::breach);
}

// --- bending space ---------------------------------------------------------------------------

/// Conductors from the upper port of a distribution block in a metal wireway, `free` inches below
/// the top wall; out by the top, or aside to the left wall.
Finding atPort(const std::string& size, int wires, double free, bool throughTop) {
    GutterBuilder builder({60.0, 30.0, 12.0});
    builder.layout().gutter.article = standards::GutterArticle::metalWireway;
    auto part = check_test::splicePart();
    part.listing.kind = parts::ConnectorKind::distributionBlock;
    builder.add(part).block("A", "splice", {29.0, 26.0 - free, 2.0});
    const double middle = 30.0 - free / 2.0;
    builder.entry("top", Wall::top, 30.0, 3.0).entry("left", Wall::left, middle, 3.0);
    const std::vector<layout::Corner> turn = {corner({30.0, middle, 3.0}, 0.5)};
    for (int i = 1; i <= wires; ++i) {
        builder
            .conductor("w" + std::to_string(i),
                       inPort("A", "1"),
                       atEntry(throughTop ? "top" : "left", i),
                       throughTop ? std::vector<layout::Corner>{} : turn)
            .size = units::WireSize::of(size);
    }
    return only(checkTerminalBendingSpace(builder.build()));
}

// Level 2 practice, "What is the minimum wire bending space": one 3/0 not through the wall opposite
// its terminal, 4 in.
TEST(WorkedExamplesByChecks, OneThreeOughtNeedsFourInchesAtItsTerminal) {
    const Finding enough = atPort("3/0", 1, 4.0, false);
    EXPECT_EQ(enough.verdict, Verdict::meets);
    EXPECT_EQ(limit(enough), 4.0);
    EXPECT_NEAR(measured(enough), 4.0, 1e-9);
    EXPECT_EQ(atPort("3/0", 1, 3.99, false).verdict, Verdict::breach);
}

// "How to calculate Auxiliary Gutter fill 366.22(A),(B)": where 3/0 bends, the gutter is at least 4
// in wide; it is 6.
TEST(WorkedExamplesByChecks, ThreeOughtBendsInAGutterOfFourInches) {
    const auto turning = [](double height) {
        GutterBuilder builder({60.0, height, 6.0});
        builder.entry("in", Wall::top, 10.0, 3.0);
        builder
            .conductor("w",
                       atEntry("in"),
                       spare({40.0, height / 2.0, 3.0}),
                       {corner({10.0, height / 2.0, 3.0}, 0.5)})
            .size = units::WireSize::of("3/0");
        return only(checkEntryBendingSpace(builder.build()));
    };
    EXPECT_EQ(turning(6.0).verdict, Verdict::meets);
    EXPECT_EQ(measured(turning(6.0)), 6.0);
    EXPECT_EQ(limit(turning(6.0)), 4.0);
    EXPECT_EQ(turning(3.99).verdict, Verdict::breach);
}

// Trade magazine, "Code Quiz 16": two paralleled 4/0 a lug through the wall the lugs face, 7.5 in.
TEST(WorkedExamplesByChecks, TwoFourOughtThroughTheFacedWallNeedSevenAndAHalfInches) {
    const Finding enough = atPort("4/0", 2, 7.5, true);
    EXPECT_EQ(enough.verdict, Verdict::meets);
    EXPECT_EQ(limit(enough), 7.5);
    EXPECT_NEAR(measured(enough), 7.5, 1e-9);
    EXPECT_EQ(atPort("4/0", 2, 7.49, true).verdict, Verdict::breach);
}

// --- taps ------------------------------------------------------------------------------------

/// The ampacity of a tap against the device ahead: measured and least.
Finding tapOf(const std::string& size, TapRule rule, double ahead, double device) {
    auto builder = check_test::straightSplice();
    builder.part("splice").listing.celsius = 90;
    builder.layout().surroundings.ambientCelsius = 30.0;
    builder.layout().entries[1].racewayLength = Inches::of(54.0);
    builder.circuitNamed("S").role = Role::feeder;
    builder.circuitNamed("S").deviceAmperes = ahead;
    auto& circuit = builder.circuitNamed("T");
    circuit.role = Role::tap;
    circuit.tapRule = rule;
    circuit.deviceAmperes = device;
    builder.conductorNamed("T-A").size = units::WireSize::of(size);
    return saying(checkTapRule(builder.build()), " ahead.");
}

// Practice page, "What is the minimum ampacity": a 25 ft tap of a 100 A feeder carries 33.3 A or
// more: 8 AWG at 60 degrees has 40 A; 10 AWG has 30 A there and 35 A at 75, so that it hangs on how
// the terminals are marked; 12 AWG has 25 A at the most.
TEST(WorkedExamplesByChecks, TwentyFiveFootTapOfOneHundredAmperes) {
    const auto tap = [](const char* size) {
        return tapOf(size, TapRule::twentyFiveFoot, 100.0, 20.0);
    };
    EXPECT_EQ(tap("8").verdict, Verdict::meets);
    EXPECT_NEAR(limit(tap("8")), 33.3, 0.05);
    EXPECT_NEAR(measured(tap("8")), 40.0, 1e-9);
    EXPECT_EQ(tap("10").verdict, Verdict::cannotTell);
    EXPECT_NEAR(measured(tap("10")), 30.0, 1e-9);
    EXPECT_EQ(tap("12").verdict, Verdict::breach);
}

// Forum, "Feeder tap": a 10 ft tap of a 1600 A breaker carries a tenth, 160 A: 2/0 copper with 175
// A does, 1/0 with 150 A does not. Its terminals are of 75 degrees, as for a device above 100 A.
TEST(WorkedExamplesByChecks, TenFootTapOfSixteenHundredAmperes) {
    const auto tap = [](const char* size) { return tapOf(size, TapRule::tenFoot, 1600.0, 110.0); };
    EXPECT_EQ(tap("2/0").verdict, Verdict::meets);
    EXPECT_NEAR(limit(tap("2/0")), 160.0, 1e-9);
    EXPECT_NEAR(measured(tap("2/0")), 175.0, 1e-9);
    EXPECT_EQ(tap("1/0").verdict, Verdict::breach);
    EXPECT_NEAR(measured(tap("1/0")), 150.0, 1e-9);
}

// --- ampacity --------------------------------------------------------------------------------

/// Circuits that come in by raceways and are capped in the gutter, so that no connector limits
/// them; at 30 degrees.
class Pipes {
public:
    Pipes() { builder_.layout().surroundings.ambientCelsius = 30.0; }

    /// An entry with a raceway of 10 ft beyond.
    void pipe(const std::string& id) {
        builder_.entry(id, Wall::left, 6.0, 2.0 + 2.0 * pipes_++);
        builder_.layout().entries.back().racewayLength = Inches::of(120.0);
    }

    layout::Circuit& circuit(const std::string& id, const std::vector<Phase>& phases, int sets) {
        builder_.circuit(id, phases, sets);
        builder_.circuitNamed(id).deviceAmperes = 200.0;
        builder_.circuitNamed(id).loadAmperes = 10.0;
        return builder_.circuitNamed(id);
    }

    void wire(const std::string& pipe,
              const std::string& circuit,
              int set,
              Phase phase,
              const std::string& size,
              Insulation insulation = Insulation::thhn) {
        const int slot = ++slots_[pipe];
        auto& one = builder_.conductor(pipe + "-" + std::to_string(slot),
                                       atEntry(pipe, slot),
                                       spare({20.0, 6.0, 2.0 + 0.1 * slot}));
        one.circuit = layout::CircuitId(circuit);
        one.set = set;
        one.phase = phase;
        one.size = units::WireSize::of(size);
        one.insulation = insulation;
    }

    layout::Circuit& named(const std::string& circuit) { return builder_.circuitNamed(circuit); }

    /// What the check says of a circuit's load; its limit is the ampacity.
    Finding load(const std::string& circuit) const { return of(circuit, "for a load of"); }
    /// What it says of a circuit's device.
    Finding device(const std::string& circuit) const { return of(circuit, "for a device of"); }

    Finding load(const std::string& circuit, double amperes) {
        named(circuit).loadAmperes = amperes;
        return load(circuit);
    }

private:
    Finding of(const std::string& circuit, const std::string& words) const {
        const auto all = checkAmpacity(builder_.build());
        return saying(check_test::about(all, layout::CircuitId(circuit)), words);
    }

    GutterBuilder builder_;
    std::map<std::string, int> slots_;
    int pipes_ = 0;
};

/// Two sets of three phases of a size, in two raceways or in one.
Pipes twoSets(const std::string& size, Insulation insulation, bool inOne) {
    Pipes pipes;
    pipes.pipe("P1");
    pipes.pipe("P2");
    pipes.circuit("F", {Phase::a, Phase::b, Phase::c}, 2);
    for (const int set : {1, 2}) {
        for (const Phase phase : {Phase::a, Phase::b, Phase::c}) {
            pipes.wire(inOne || set == 1 ? "P1" : "P2", "F", set, phase, size, insulation);
        }
    }
    return pipes;
}

// Forum, "parallel service conductors": two sets of 1/0 copper carry 300 A in two conduits, 240 A
// in one (six phase conductors, 0.80). With 90 degree insulation 2 x 170 x 0.80 = 272 A.
TEST(WorkedExamplesByChecks, TwoSetsInTwoConduitsOrInOne) {
    EXPECT_NEAR(limit(twoSets("1/0", Insulation::thwn, false).load("F")), 300.0, 1e-9);
    EXPECT_NEAR(limit(twoSets("1/0", Insulation::thwn, true).load("F")), 240.0, 1e-9);
    EXPECT_NEAR(limit(twoSets("1/0", Insulation::thwn2, true).load("F")), 272.0, 1e-9);
}

// Forum, "Parallel conductor sizing": two sets of 500 kcmil copper in separate raceways carry 760 A
// and may be protected at 800 A, the next size up; as taps they may not.
TEST(WorkedExamplesByChecks, TwoSetsOfFiveHundredAreProtectedAtEightHundred) {
    auto pipes = twoSets("500", Insulation::thwn, false);
    pipes.named("F").deviceAmperes = 800.0;
    EXPECT_NEAR(limit(pipes.load("F")), 760.0, 1e-9);
    EXPECT_NEAR(limit(pipes.device("F")), 800.0, 1e-9);
    EXPECT_EQ(pipes.device("F").verdict, Verdict::meets);
    pipes.named("F").role = Role::tap;
    EXPECT_NEAR(limit(pipes.device("F")), 760.0, 1e-9);
    EXPECT_EQ(pipes.device("F").verdict, Verdict::breach);
}

/// So many circuits of one phase conductor each in one raceway: "F1", "F2", …
Pipes crowd(const std::string& size, int count) {
    Pipes pipes;
    pipes.pipe("P1");
    for (int i = 1; i <= count; ++i) {
        const std::string circuit = "F" + std::to_string(i);
        pipes.circuit(circuit, {Phase::a}, 1);
        pipes.wire("P1", circuit, 1, Phase::a, size);
    }
    return pipes;
}

// Trade magazine, "Quizzes on the Code 23": nine current-carrying 12 AWG THHN in one conduit, 30 x
// 0.70 = 21 A. So much their insulation allows; terminals not marked for more than 60 degrees allow
// 20 A, so that between the two it cannot be told.
TEST(WorkedExamplesByChecks, NineConductorsOfTwelve) {
    auto pipes = crowd("12", 9);
    EXPECT_EQ(pipes.load("F1", 20.0).verdict, Verdict::meets);
    EXPECT_EQ(pipes.load("F1", 21.0).verdict, Verdict::cannotTell);
    EXPECT_EQ(pipes.load("F1", 21.01).verdict, Verdict::breach);
    EXPECT_THAT(pipes.load("F1").working,
                HasSubstr("30 A at 90 °C x 1 (30 °C) x 0.7 (9 carrying)"));
}

// Trade magazine, "Code Q&A 112": four current-carrying 10 AWG THHN, 40 x 0.80 = 32 A; by terminals
// of 60 degrees 30 A.
TEST(WorkedExamplesByChecks, FourConductorsOfTen) {
    auto pipes = crowd("10", 4);
    EXPECT_EQ(pipes.load("F1", 30.0).verdict, Verdict::meets);
    EXPECT_EQ(pipes.load("F1", 32.0).verdict, Verdict::cannotTell);
    EXPECT_EQ(pipes.load("F1", 32.01).verdict, Verdict::breach);
    EXPECT_THAT(pipes.load("F1").working,
                HasSubstr("40 A at 90 °C x 1 (30 °C) x 0.8 (4 carrying)"));
}

// Forum, "310 15 (B)": four 2-wire circuits of 120 V and one ground in a pipe are eight that carry
// current: 0.70. For 10 AWG THHN, 40 A at 90 degrees, that is 28 A.
TEST(WorkedExamplesByChecks, FourTwoWireCircuitsCountEight) {
    Pipes pipes;
    pipes.pipe("P1");
    for (const std::string circuit : {"F1", "F2", "F3", "F4"}) {
        pipes.circuit(circuit, {Phase::a, Phase::n, Phase::g}, 1).role = Role::branch;
        pipes.wire("P1", circuit, 1, Phase::a, "10");
        pipes.wire("P1", circuit, 1, Phase::n, "10");
    }
    pipes.wire("P1", "F1", 1, Phase::g, "10");
    const Finding finding = pipes.load("F1");
    EXPECT_NEAR(limit(finding), 28.0, 1e-9);
    EXPECT_THAT(finding.working, HasSubstr("x 0.7 (8 carrying)"));
}

}  // namespace
}  // namespace gw::checks
