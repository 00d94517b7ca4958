#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "checks/circuit_ampacity.h"
#include "checks/facts.h"
#include "checks/support.h"
#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::spare;
using layout::Phase;
using layout::Role;
using standards::Insulation;
using testing::HasSubstr;
using units::Inches;

const std::vector<Phase> kPhases = {Phase::a, Phase::b, Phase::c};

/// A feeder "F" of `sets` times `phases`, all from entry "E1", or each set from an entry of its
/// own; raceways of 10 ft beyond. Capped in the gutter, so that no connector limits it. 30 °C.
GutterBuilder feeder(const std::string& size,
                     Insulation insulation,
                     int sets,
                     bool together,
                     const std::vector<Phase>& phases = kPhases) {
    GutterBuilder builder;
    builder.layout().surroundings.ambientCelsius = 30.0;
    builder.circuit("F", phases, sets);
    builder.circuitNamed("F").deviceAmperes = 200.0;
    builder.circuitNamed("F").loadAmperes = 10.0;
    for (int set = 1; set <= sets; ++set) {
        const std::string entry = "E" + std::to_string(together ? 1 : set);
        if (!together || set == 1) {
            builder.entry(entry, layout::Wall::left, 4.0, 1.0 + set);
            builder.layout().entries.back().racewayLength = Inches::of(120.0);
        }
        for (std::size_t i = 0; i < phases.size(); ++i) {
            const auto slot = static_cast<int>(i) + 1 + (together ? (set - 1) * 4 : 0);
            auto& conductor = builder.conductor("F" + std::to_string(set) + std::to_string(i),
                                                atEntry(entry, slot),
                                                spare({20.0, 4.0, 1.0 + set}));
            conductor.circuit = layout::CircuitId("F");
            conductor.set = set;
            conductor.phase = phases[i];
            conductor.size = units::WireSize::of(size);
            conductor.insulation = insulation;
        }
    }
    return builder;
}

CircuitAmpacity of(const GutterBuilder& builder, const std::string& circuit = "F") {
    const auto built = builder.build();
    return circuitAmpacity(
        built, factsOf(built), given(built.circuitIndex(layout::CircuitId(circuit))));
}

struct Two {
    Finding device;
    Finding load;
};
Two check(const GutterBuilder& builder) {
    const auto findings = check_test::about(checkAmpacity(builder.build()), layout::CircuitId("F"));
    EXPECT_EQ(findings.size(), 2U);
    return {findings.at(0), findings.at(1)};
}

Verdict deviceOf(GutterBuilder builder, double amperes) {
    builder.circuitNamed("F").deviceAmperes = amperes;
    return check(builder).device.verdict;
}

// ---- published examples -----------------------------------------------------------------------

/// A published example: two sets of 1/0 AWG copper carry 2 x 150 = 300 A in two raceways, and six
/// in one carry 80 %, 240 A, from the 75 °C column; from the 90 °C column 2 x 170 x 0.8 = 272 A.
TEST(Ampacity, OfTwoSetsIsLessInOneRaceway) {
    EXPECT_NEAR(of(feeder("1/0", Insulation::thwn, 2, false)).least, 300.0, 1e-9);
    EXPECT_NEAR(of(feeder("1/0", Insulation::thwn, 2, true)).least, 240.0, 1e-9);
    EXPECT_NEAR(of(feeder("1/0", Insulation::thwn2, 2, true)).least, 272.0, 1e-9);
    EXPECT_NEAR(of(feeder("1/0", Insulation::thwn2, 2, false)).least, 300.0, 1e-9) << "terminals";
}

/// A published example: two sets of 500 kcmil copper in separate raceways carry 760 A and may be
/// protected at 800 A, but not where they are a tap.
TEST(Ampacity, OfAFeederIsRoundedUpToTheNextDeviceNotOfATap) {
    auto builder = feeder("500", Insulation::thwn, 2, false);
    EXPECT_NEAR(of(builder).least, 760.0, 1e-9);
    EXPECT_EQ(deviceOf(builder, 760.0), Verdict::meets);
    EXPECT_EQ(deviceOf(builder, 800.0), Verdict::meets);
    EXPECT_EQ(deviceOf(builder, 801.0), Verdict::breach);
    builder.circuitNamed("F").role = Role::tap;
    EXPECT_EQ(deviceOf(builder, 760.0), Verdict::meets);
    EXPECT_EQ(deviceOf(builder, 760.1), Verdict::breach);
    EXPECT_EQ(deviceOf(builder, 800.0), Verdict::breach);
}

/// So many circuits of one phase conductor each, all in entry "E1".
GutterBuilder crowd(const std::string& size, int count, bool neutrals) {
    auto builder = feeder(size, Insulation::thhn, 1, true, {Phase::a});
    const auto first = builder.layout().conductors.front();
    int slot = 1;
    const auto add = [&](const std::string& circuit, Phase phase) {
        auto& more = builder.conductor("more" + std::to_string(++slot), first.from, first.to);
        std::get<layout::AtEntry>(more.from).slot = slot;
        more.circuit = layout::CircuitId(circuit);
        more.phase = phase;
        more.size = first.size;
        more.insulation = first.insulation;
    };
    for (int i = 2; i <= count; ++i) {
        const std::string name = "F" + std::to_string(i);
        builder.circuit(name, {Phase::a, Phase::n});
        add(name, Phase::a);
        if (neutrals) {
            add(name, Phase::n);
        }
    }
    if (neutrals) {
        builder.circuitNamed("F").phases = {Phase::a, Phase::n, Phase::g};
        add("F", Phase::n);
        add("F", Phase::g);
    }
    return builder;
}

/// Published examples: nine 12 AWG THHN carry 30 x 0.70 = 21 A; four 10 AWG THHN 40 x 0.80 = 32 A.
/// Whether the terminals let them depends on their marking.
TEST(Ampacity, OfManyInOneRacewayIsThatOfTheirInsulationReduced) {
    EXPECT_NEAR(of(crowd("12", 9, false)).most, 21.0, 1e-9);
    EXPECT_NEAR(of(crowd("10", 4, false)).most, 32.0, 1e-9);
    EXPECT_NEAR(of(crowd("10", 4, false)).least, 30.0, 1e-9) << "60 °C column";
}

/// A published example: four two-wire circuits with one ground in one pipe are eight, factor 0.70.
TEST(Ampacity, CountsNeutralsAndNoGrounds) {
    const auto builder = crowd("12", 4, true);
    const auto built = builder.build();
    const auto count = CurrentCarrying(built).inRaceway(0);
    EXPECT_EQ(count.withNeutrals, 8);
    EXPECT_EQ(count.without, 4);
    EXPECT_THAT(of(builder).working, HasSubstr("x 0.7 (8 carrying)"));
}

// ---- many conductors in the gutter ------------------------------------------------------------

struct GutterRow {
    std::string name;
    int conductors;
    standards::GutterArticle article;
    layout::GutterMaterial material;
    double factor;
};

void PrintTo(const GutterRow& row, std::ostream* out) {
    *out << row.name;
}

/// So many alike between two points of the gutter, of circuits of three phases.
GutterBuilder inTheGutter(int conductors, double secondHalfFrom = 5.0) {
    GutterBuilder builder;
    builder.layout().surroundings.ambientCelsius = 30.0;
    for (int i = 0; i < conductors; ++i) {
        const std::string name = i < 3 ? "F" : "M" + std::to_string(i / 3);
        if (i % 3 == 0) {
            builder.circuit(name, kPhases);
        }
        const double from = 2 * i < conductors ? 5.0 : secondHalfFrom;
        auto& one = builder.conductor(
            "c" + std::to_string(i), spare({from, 4.0, 4.0}), spare({from + 10.0, 4.0, 4.0}));
        one.circuit = layout::CircuitId(name);
        one.phase = kPhases[static_cast<std::size_t>(i % 3)];
    }
    return builder;
}

class ManyInTheGutter : public testing::TestWithParam<GutterRow> {};

TEST_P(ManyInTheGutter, AreReducedFromTheArticlesNumberOn) {
    const GutterRow& row = GetParam();
    auto builder = inTheGutter(row.conductors);
    builder.layout().gutter.article = row.article;
    builder.layout().gutter.material = row.material;
    EXPECT_NEAR(of(builder).least, 430.0 * row.factor, 1e-9);
}

// 500 kcmil copper carries 430 A at 90 °C (Table 310.16). Factors of Table 310.15(C)(1); above 30
// in sheet metal (366.23(A), 376.22(B)), from four in nonmetallic (366.23(B), 378.22).
using layout::GutterMaterial;
using standards::GutterArticle;
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, ManyInTheGutter, testing::Values(
    GutterRow{"30 in a steel gutter",     30, GutterArticle::auxiliaryGutter,    GutterMaterial::steel,       1.0},
    GutterRow{"31 in a steel gutter",     31, GutterArticle::auxiliaryGutter,    GutterMaterial::steel,       0.4},
    GutterRow{"30 in a metal wireway",    30, GutterArticle::metalWireway,       GutterMaterial::steel,       1.0},
    GutterRow{"41 in a metal wireway",    41, GutterArticle::metalWireway,       GutterMaterial::steel,       0.35},
    GutterRow{"3 in nonmetallic wireway", 3,  GutterArticle::nonmetallicWireway, GutterMaterial::nonmetallic, 1.0},
    GutterRow{"4 in nonmetallic wireway", 4,  GutterArticle::nonmetallicWireway, GutterMaterial::nonmetallic, 0.8},
    GutterRow{"4 in nonmetallic gutter",  4,  GutterArticle::auxiliaryGutter,    GutterMaterial::nonmetallic, 0.8}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(ManyInTheGutter, CountOnlyWhereTheyLieSideBySide) {
    EXPECT_NEAR(of(inTheGutter(40, 30.0)).least, 430.0, 1e-9) << "20 here and 20 there";
    EXPECT_NEAR(of(inTheGutter(40, 12.0)).least, 430.0 * 0.4, 1e-9) << "40 at 12 to 15 in";
}

// ---- raceways, ambient, insulation ------------------------------------------------------------

TEST(Raceway, OfTwentyFourInchesOrLessIsANipple) {
    auto builder = feeder("1/0", Insulation::thwn, 2, true);
    const auto at = [&](std::optional<Inches> length) {
        builder.layout().entries[0].racewayLength = length;
        return of(builder);
    };
    EXPECT_NEAR(at(Inches::of(24.0)).least, 300.0, 1e-9);
    EXPECT_NEAR(at(Inches::of(24.01)).least, 240.0, 1e-9);
    EXPECT_NEAR(at(std::nullopt).least, 240.0, 1e-9);
    EXPECT_NEAR(at(std::nullopt).most, 300.0, 1e-9);
    EXPECT_EQ(deviceOf(builder, 300.0), Verdict::cannotTell);
    builder.circuitNamed("F").deviceAmperes = 300.0;
    EXPECT_THAT(check(builder).device.missing,
                testing::ElementsAre("length of the raceway at entry E1"));
    EXPECT_EQ(deviceOf(builder, 250.0), Verdict::meets) << "either way";
    EXPECT_EQ(deviceOf(builder, 350.0), Verdict::breach) << "either way";
}

TEST(Neutral, IsCountedAndWhatHangsOnItCannotBeTold) {
    // 350 kcmil at 90 °C: 350 A, of four 280 A; the terminals at 75 °C let 310 A.
    const auto builder =
        feeder("350", Insulation::thwn2, 1, true, {Phase::a, Phase::b, Phase::c, Phase::n});
    EXPECT_NEAR(of(builder).least, 280.0, 1e-9);
    EXPECT_NEAR(of(builder).most, 310.0, 1e-9);
    EXPECT_EQ(deviceOf(builder, 300.0), Verdict::meets) << "next size up from 280 A";
    EXPECT_EQ(deviceOf(builder, 350.0), Verdict::cannotTell) << "next size up from 310 A";
    EXPECT_EQ(deviceOf(builder, 400.0), Verdict::breach);
}

TEST(Ambient, ReducesAndIsAskedFor) {
    auto builder = inTheGutter(3);
    builder.layout().surroundings.ambientCelsius = 40.0;
    EXPECT_NEAR(of(builder).least, 430.0 * 0.91, 1e-9) << "Table 310.15(B)(1): 36 to 40 °C";
    builder = feeder("500", Insulation::thwn2, 1, true);
    builder.layout().surroundings.ambientCelsius.reset();
    EXPECT_EQ(check(builder).device.verdict, Verdict::cannotTell);
    EXPECT_EQ(check(builder).load.verdict, Verdict::cannotTell);
    EXPECT_THAT(check(builder).load.missing, testing::ElementsAre("ambient temperature"));
}

TEST(Ambient, TooHotForTheInsulationCarriesNothing) {
    auto builder = feeder("500", Insulation::tw, 1, true);
    builder.layout().surroundings.ambientCelsius = 60.0;
    EXPECT_EQ(check(builder).load.verdict, Verdict::breach);
}

TEST(InsulationTemperature, OfXhhwDependsOnThePlace) {
    auto builder = inTheGutter(3);
    for (auto& conductor : builder.layout().conductors) {
        conductor.insulation = Insulation::xhhw;
    }
    EXPECT_NEAR(of(builder).least, 430.0, 1e-9);
    builder.layout().surroundings.location = standards::Location::wet;
    EXPECT_NEAR(of(builder).least, 380.0, 1e-9);
    builder.layout().surroundings.location.reset();
    EXPECT_NEAR(of(builder).least, 380.0, 1e-9);
    EXPECT_NEAR(of(builder).most, 430.0, 1e-9);
    EXPECT_THAT(of(builder).doubts, testing::ElementsAre("location of the gutter"));
}

TEST(Ampacity, CannotBeToldWithoutMetalOrInsulation) {
    auto builder = feeder("500", Insulation::thwn2, 1, true);
    builder.conductorNamed("F10").metal.reset();
    builder.conductorNamed("F11").insulation.reset();
    EXPECT_THAT(check(builder).device.missing,
                testing::ElementsAre("metal of conductor F10", "insulation of conductor F11"));
    EXPECT_EQ(check(builder).load.verdict, Verdict::cannotTell);
}

// ---- terminals --------------------------------------------------------------------------------

/// 500 kcmil from the raceway into a connector, listed for so much.
GutterBuilder connector(std::optional<int> celsius) {
    auto builder = check_test::straightSplice();
    builder.circuit("F", {Phase::a}, 1, "S");
    builder.circuitNamed("F").deviceAmperes = 380.0;
    builder.circuitNamed("F").loadAmperes = 100.0;
    builder.conductorNamed("T-A").circuit = layout::CircuitId("F");
    builder.layout().surroundings.ambientCelsius = 30.0;
    builder.part("splice").listing.celsius = celsius;
    return builder;
}

TEST(Terminals, LimitToTheCoolest) {
    // 500 kcmil copper: 320, 380 and 430 A at 60, 75 and 90 °C.
    EXPECT_NEAR(of(connector(60)).least, 320.0, 1e-9);
    EXPECT_NEAR(of(connector(75)).least, 380.0, 1e-9);
    EXPECT_NEAR(of(connector(90)).least, 380.0, 1e-9) << "the equipment beyond: 75 °C";
    EXPECT_NEAR(of(connector(std::nullopt)).least, 320.0, 1e-9);
    EXPECT_EQ(deviceOf(connector(90), 380.0), Verdict::meets);
    EXPECT_EQ(deviceOf(connector(60), 380.0), Verdict::breach);
    EXPECT_EQ(deviceOf(connector(std::nullopt), 380.0), Verdict::cannotTell);
    EXPECT_THAT(check(connector(std::nullopt)).device.missing,
                testing::ElementsAre("listed temperature of part splice"));
}

TEST(Terminals, OfEquipmentUpToAHundredAmperesAreTakenForSixtyDegrees) {
    // 3 AWG copper: 85 A at 60 °C, 100 A at 75 °C.
    const auto builder = feeder("3", Insulation::thwn2, 1, true);
    EXPECT_EQ(deviceOf(builder, 90.0), Verdict::meets) << "next size up from 85 A";
    EXPECT_EQ(deviceOf(builder, 100.0), Verdict::cannotTell);
    EXPECT_EQ(deviceOf(builder, 110.0), Verdict::breach);
}

// ---- device and load --------------------------------------------------------------------------

TEST(Device, OfMoreThanEightHundredAmperesIsNotRoundedUp) {
    const auto builder = feeder("500", Insulation::thwn2, 3, false);  // 3 x 380 = 1140 A
    EXPECT_EQ(deviceOf(builder, 1140.0), Verdict::meets);
    EXPECT_EQ(deviceOf(builder, 1200.0), Verdict::breach);
}

TEST(Device, OfABranchIsRoundedUpOnlyWhereItFeedsNoReceptacles) {
    auto builder = feeder("500", Insulation::thwn2, 1, true);
    builder.circuitNamed("F").role = Role::branch;
    EXPECT_EQ(deviceOf(builder, 380.0), Verdict::meets);
    EXPECT_EQ(deviceOf(builder, 400.0), Verdict::cannotTell);
    EXPECT_EQ(deviceOf(builder, 450.0), Verdict::breach);
}

TEST(Device, OfSmallConductorsIsLimited) {
    // NFPA 70 240.4(D): 12 AWG copper 20 A, though it carries 25 A at 75 °C.
    const auto builder = feeder("12", Insulation::thwn2, 1, true);
    EXPECT_EQ(deviceOf(builder, 20.0), Verdict::meets);
    EXPECT_EQ(deviceOf(builder, 25.0), Verdict::breach);
}

TEST(Device, OfAServiceMayBeItsDisconnectsTogether) {
    auto builder = feeder("500", Insulation::thwn2, 1, true);  // 320 A at 60 °C, 380 A at 75 °C
    auto& service = builder.circuitNamed("F");
    service.role = Role::service;
    service.deviceAmperes.reset();
    service.loadAmperes = 320.0;
    EXPECT_EQ(check(builder).device.verdict, Verdict::cannotTell);
    EXPECT_THAT(check(builder).device.missing, testing::ElementsAre("device of circuit F"));
    builder.circuit("T1", {Phase::a}, 1, "F").circuit("T2", {Phase::a}, 1, "F");
    EXPECT_EQ(check(builder).device.verdict, Verdict::meets);
    builder.circuitNamed("F").loadAmperes = 381.0;
    EXPECT_EQ(check(builder).device.verdict, Verdict::cannotTell);
    EXPECT_EQ(check(builder).load.verdict, Verdict::breach);
}

TEST(Load, IsWithinTheAmpacity) {
    auto builder = feeder("500", Insulation::thwn2, 1, true);  // 380 A
    const auto at = [&](std::optional<double> load) {
        builder.circuitNamed("F").loadAmperes = load;
        return check(builder).load;
    };
    EXPECT_EQ(at(379.9).verdict, Verdict::meets);
    EXPECT_EQ(at(380.0).verdict, Verdict::meets);
    EXPECT_EQ(at(380.1).verdict, Verdict::breach);
    EXPECT_EQ(at(std::nullopt).verdict, Verdict::cannotTell);
    EXPECT_THAT(at(std::nullopt).missing, testing::ElementsAre("load of circuit F"));
}

TEST(Ampacity, IsInAnotherTableFrom2020) {
    auto builder = feeder("500", Insulation::thwn2, 1, true);
    builder.layout().edition = standards::Edition::nec2017;
    EXPECT_EQ(check(builder).load.citation.section, "Table 310.15(B)(16)");
    builder.layout().edition = standards::Edition::nec2020;
    EXPECT_EQ(check(builder).load.citation.section, "Table 310.16");
}

TEST(AmpacityLaws, AThickerConductorACoolerPlaceAndASmallerDeviceAreNeverWorse) {
    int before = gravity(Verdict::breach);
    for (const char* size : {"1/0", "3/0", "250", "350", "500", "750"}) {
        const int now = gravity(deviceOf(feeder(size, Insulation::thwn2, 1, true), 300.0));
        EXPECT_LE(now, before) << size;
        before = now;
    }
    double last = 0.0;
    for (double ambient = 80.0; ambient >= 5.0; ambient -= 5.0) {
        auto builder = feeder("500", Insulation::thwn2, 1, true);
        builder.layout().surroundings.ambientCelsius = ambient;
        EXPECT_GE(of(builder).least, last) << ambient;
        last = of(builder).least;
    }
    EXPECT_NEAR(last, 380.0, 1e-9) << "the terminals";
}

}  // namespace
}  // namespace gw::checks
