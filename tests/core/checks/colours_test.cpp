#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "checks/support.h"
#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using check_test::spare;
using layout::Phase;
using standards::Edition;
using testing::ElementsAre;
using testing::HasSubstr;

layout::Conductor& add(GutterBuilder& builder,
                       const std::string& id,
                       Phase phase,
                       const std::optional<std::string>& colour) {
    const double y = 2.0 + static_cast<double>(builder.layout().conductors.size());
    auto& made = builder.conductor(id, spare({5.0, y, 6.0}), spare({30.0, y, 6.0}));
    made.phase = phase;
    made.colour = colour;
    return made;
}

/// One conductor of circuit S, 208Y/120 V.
GutterBuilder one(Phase phase, const std::optional<std::string>& colour, const char* size = "1/0") {
    GutterBuilder builder;
    add(builder, "w", phase, colour).size = units::WireSize::of(size);
    return builder;
}

Finding of(const GutterBuilder& builder) {
    const auto findings = checkColours(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct ColourRow {
    const char* name;
    Phase phase;
    const char* size;
    const char* colour;
    Verdict verdict;
};

void PrintTo(const ColourRow& row, std::ostream* out) {
    *out << row.name;
}

class ColoursByCode : public testing::TestWithParam<ColourRow> {};

TEST_P(ColoursByCode, TellConductorsApart) {
    const auto finding = of(one(GetParam().phase, GetParam().colour, GetParam().size));
    EXPECT_EQ(finding.verdict, GetParam().verdict) << finding.working;
    EXPECT_EQ(finding.missing.empty(), finding.verdict != Verdict::cannotTell);
}

// Source: NFPA 70-2023 200.6(A), (B): 6 AWG and smaller white or gray or three such stripes along
// the length, 4 AWG and larger also marked at its ends.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Grounded, ColoursByCode, testing::Values(
    ColourRow{"SmallWhite",         Phase::n, "6", "white",                          Verdict::meets},
    ColourRow{"SmallGray",          Phase::n, "6", "gray",                           Verdict::meets},
    ColourRow{"SmallTaped",         Phase::n, "6", "black with white tape",          Verdict::breach},
    ColourRow{"SmallThreeStripes",  Phase::n, "6", "black with three white stripes", Verdict::meets},
    ColourRow{"SmallOneStripe",     Phase::n, "6", "black with one white stripe",    Verdict::breach},
    ColourRow{"SmallStripes",       Phase::n, "6", "black with white stripes",       Verdict::cannotTell},
    ColourRow{"SmallRed",           Phase::n, "6", "red",                            Verdict::breach},
    ColourRow{"LargeTaped",         Phase::n, "4", "black with white tape",          Verdict::meets},
    ColourRow{"LargeTapedGray",     Phase::n, "4", "black with gray tape",           Verdict::meets},
    ColourRow{"LargeBlack",         Phase::n, "4", "black",                          Verdict::breach},
    ColourRow{"LargeTapedBlue",     Phase::n, "4", "black with blue tape",           Verdict::breach},
    ColourRow{"LargeGreenTaped",    Phase::n, "4", "green with white tape",          Verdict::breach},
    ColourRow{"WhiteWithRedStripe", Phase::n, "4", "white with red stripe",          Verdict::meets}),
    [](const auto& row) { return std::string(row.param.name); });

// Source: NFPA 70-2023 250.119: green, green with yellow stripes, or bare; 4 AWG and larger may be
// marked green.
INSTANTIATE_TEST_SUITE_P(Grounding, ColoursByCode, testing::Values(
    ColourRow{"SmallGreen",       Phase::g, "6", "green",                 Verdict::meets},
    ColourRow{"SmallGreenYellow", Phase::g, "6", "green/yellow",          Verdict::meets},
    ColourRow{"SmallYellowGreen", Phase::g, "6", "yellow/green",          Verdict::meets},
    ColourRow{"SmallBare",        Phase::g, "6", "bare",                  Verdict::meets},
    ColourRow{"SmallTaped",       Phase::g, "6", "black with green tape", Verdict::breach},
    ColourRow{"SmallBlack",       Phase::g, "6", "black",                 Verdict::breach},
    ColourRow{"GreenWithRed",     Phase::g, "6", "green with red stripe", Verdict::breach},
    ColourRow{"LargeTaped",       Phase::g, "4", "black with green tape", Verdict::meets},
    ColourRow{"LargeWhite",       Phase::g, "4", "white",                 Verdict::breach}),
    [](const auto& row) { return std::string(row.param.name); });

// Source: NFPA 70-2023 310.6(C): not white, gray or green. Customary: see ColoursByCustom.
INSTANTIATE_TEST_SUITE_P(Ungrounded, ColoursByCode, testing::Values(
    ColourRow{"Black",      Phase::a, "1/0", "black",                   Verdict::meets},
    ColourRow{"White",      Phase::a, "1/0", "white",                   Verdict::breach},
    ColourRow{"Gray",       Phase::a, "6",   "gray",                    Verdict::breach},
    ColourRow{"Green",      Phase::a, "6",   "green",                   Verdict::breach},
    ColourRow{"GreenYellow", Phase::a, "6",  "green/yellow",            Verdict::breach},
    ColourRow{"TapedWhite", Phase::a, "1/0", "black with white tape",   Verdict::breach},
    ColourRow{"WhiteTaped", Phase::a, "1/0", "white with black tape",   Verdict::breach},
    ColourRow{"Striped",    Phase::a, "1/0", "black with white stripe", Verdict::caution},
    ColourRow{"Unknown",    Phase::a, "1/0", "natural",                 Verdict::cannotTell}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

struct CustomRow {
    const char* name;
    std::optional<int> between;
    std::optional<int> toGround;
    Phase phase;
    const char* colour;
    Verdict verdict;
};

void PrintTo(const CustomRow& row, std::ostream* out) {
    *out << row.name;
}

class ColoursByCustom : public testing::TestWithParam<CustomRow> {};

TEST_P(ColoursByCustom, AreNoMoreThanACaution) {
    auto builder = one(GetParam().phase, GetParam().colour);
    builder.layout().systems.front().voltsBetweenPhases = GetParam().between;
    builder.layout().systems.front().voltsToGround = GetParam().toGround;
    const auto finding = of(builder);
    EXPECT_EQ(finding.verdict, GetParam().verdict) << finding.working;
}

// Source: trade custom: 208Y/120 V black, red, blue; 480Y/277 V brown, orange, yellow; 120/240 V
// black, red; four-wire delta black, orange (110.15), blue or red.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, ColoursByCustom, testing::Values(
    CustomRow{"Low A",         208, 120, Phase::a, "black",                  Verdict::meets},
    CustomRow{"Low B",         208, 120, Phase::b, "red",                    Verdict::meets},
    CustomRow{"Low C",         208, 120, Phase::c, "blue",                   Verdict::meets},
    CustomRow{"Low B as C",    208, 120, Phase::b, "blue",                   Verdict::caution},
    CustomRow{"Low B taped",   208, 120, Phase::b, "black with red tape",    Verdict::meets},
    CustomRow{"Low brown",     208, 120, Phase::a, "brown",                  Verdict::caution},
    CustomRow{"High A",        480, 277, Phase::a, "brown",                  Verdict::meets},
    CustomRow{"High B",        480, 277, Phase::b, "orange",                 Verdict::meets},
    CustomRow{"High C",        480, 277, Phase::c, "yellow",                 Verdict::meets},
    CustomRow{"High black",    480, 277, Phase::a, "black",                  Verdict::caution},
    CustomRow{"Delta C blue",  240, 120, Phase::c, "blue",                   Verdict::meets},
    CustomRow{"Delta C red",   240, 120, Phase::c, "red",                    Verdict::meets},
    CustomRow{"No custom",     600, 347, Phase::a, "pink",                   Verdict::meets},
    CustomRow{"Plain delta",   240, 139, Phase::a, "pink",                   Verdict::meets},
    CustomRow{"Volts unsaid",  {},  120, Phase::a, "black",                  Verdict::cannotTell},
    CustomRow{"Ground unsaid", 240, {},  Phase::a, "black",                  Verdict::cannotTell},
    CustomRow{"Corner",        480, 480, Phase::b, "black",                  Verdict::meets},
    CustomRow{"Corner white",  480, 480, Phase::b, "white",                  Verdict::cannotTell},
    CustomRow{"Corner green",  480, 480, Phase::b, "green",                  Verdict::breach}));
// clang-format on

TEST(ColoursOfSinglePhase, AreBlackAndRed) {
    auto builder = one(Phase::b, "red");
    builder.layout().systems.front().voltsBetweenPhases = 240;
    builder.circuitNamed("S").phases = {Phase::a, Phase::b, Phase::n};
    EXPECT_EQ(of(builder).verdict, Verdict::meets);
    builder.conductorNamed("w").colour = "blue";
    EXPECT_EQ(of(builder).verdict, Verdict::caution);
}

// Source: NFPA 70-2023 110.15: orange or other effective means where the grounded conductor is
// present too.
TEST(ColoursOfTheHighLeg, AreOrangeWhereANeutralIs) {
    auto builder = one(Phase::b, "red");
    builder.layout().systems.front().voltsBetweenPhases = 240;
    EXPECT_EQ(of(builder).verdict, Verdict::meets) << "no neutral here";
    add(builder, "n", Phase::n, "white");
    EXPECT_EQ(of(builder).verdict, Verdict::caution);
    EXPECT_EQ(of(builder).citation.section, "110.15");
    builder.conductorNamed("w").colour = "red with orange tape";
    EXPECT_EQ(of(builder).verdict, Verdict::meets);
}

TEST(ColoursNotStated, AreNamed) {
    auto builder = one(Phase::a, std::nullopt);
    EXPECT_EQ(of(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(of(builder).missing, ElementsAre("colour of conductor w"));
    builder.conductorNamed("w").colour = "zebra";
    EXPECT_THAT(of(builder).missing, ElementsAre("colour of conductor w in plain words"));
    builder.conductorNamed("w").insulation = standards::Insulation::bare;
    EXPECT_EQ(of(builder).verdict, Verdict::meets) << "a bare conductor has no colour";
}

TEST(ColoursNotStatedOfMany, AreCounted) {
    GutterBuilder builder;
    for (int i = 0; i < 5; ++i) {
        add(builder, "w" + std::to_string(i), Phase::a, std::nullopt);
    }
    EXPECT_THAT(of(builder).missing, ElementsAre("colours of 5 conductors of circuit S"));
}

TEST(ColoursOfACircuit, AreOneFindingThatNamesTheWorst) {
    GutterBuilder builder;
    add(builder, "A", Phase::a, "black");
    add(builder, "B", Phase::b, "white");
    add(builder, "C", Phase::c, std::nullopt);
    add(builder, "N", Phase::n, "blue");
    const auto finding = of(builder);
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_THAT(finding.subjects,
                ElementsAre(Subject(layout::CircuitId("S")),
                            Subject(layout::ConductorId("B")),
                            Subject(layout::ConductorId("N"))));
    EXPECT_THAT(finding.working, HasSubstr("1 more"));
}

TEST(ColoursOfCircuits, AreOneFindingEach) {
    GutterBuilder builder;
    EXPECT_TRUE(checkColours(builder.build()).empty()) << "no conductor";
    add(builder, "S-A", Phase::a, "black");
    builder.circuit("F", {Phase::a});
    add(builder, "F-A", Phase::a, "green").circuit = layout::CircuitId("F");
    const auto findings = checkColours(builder.build());
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].verdict, Verdict::meets);
    EXPECT_EQ(findings[1].verdict, Verdict::breach);
}

// ---- two systems ----------------------------------------------------------------------------

struct NeutralsRow {
    const char* name;
    std::optional<std::string> one;
    std::optional<std::string> other;
    Verdict verdict;  ///< of the first
};

void PrintTo(const NeutralsRow& row, std::ostream* out) {
    *out << row.name;
}

std::vector<Finding> ofTwoNeutrals(const std::optional<std::string>& one,
                                   const std::optional<std::string>& other,
                                   const char* otherSystem = "480") {
    GutterBuilder builder;
    add(builder, "N1", Phase::n, one);
    auto second = builder.layout().systems.front();
    second.id = layout::SystemId("480");
    builder.layout().systems.push_back(second);
    builder.circuit("F", {Phase::n});
    builder.circuitNamed("F").system =
        otherSystem == std::string("480") ? second.id : builder.layout().systems.front().id;
    add(builder, "N2", Phase::n, other).circuit = layout::CircuitId("F");
    return checkColours(builder.build());
}

class NeutralsOfTwoSystems : public testing::TestWithParam<NeutralsRow> {};

TEST_P(NeutralsOfTwoSystems, LookDifferent) {
    const auto findings = ofTwoNeutrals(GetParam().one, GetParam().other);
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].verdict, GetParam().verdict) << findings[0].working;
    if (GetParam().verdict == Verdict::breach) {
        EXPECT_EQ(findings[0].citation.section, "200.6(D)");
        EXPECT_EQ(findings[1].verdict, Verdict::breach) << "both ways round";
        EXPECT_THAT(findings[0].working, HasSubstr("N2"));
    }
}

// Source: NFPA 70 200.6(D), from memory.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Colours, NeutralsOfTwoSystems, testing::Values(
    NeutralsRow{"Both white",          "white",                 "white",                 Verdict::breach},
    NeutralsRow{"White and gray",      "white",                 "gray",                  Verdict::meets},
    NeutralsRow{"White by marking",    "white",                 "black with white tape", Verdict::breach},
    NeutralsRow{"One with stripes",    "white",                 "white with blue stripe", Verdict::meets},
    NeutralsRow{"Both with stripes",   "white with blue stripe", "white, blue stripe",    Verdict::breach},
    NeutralsRow{"The other not said",  "white",                 std::nullopt,            Verdict::meets}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(NeutralsOfOneSystem, MayLookAlike) {
    const auto findings = ofTwoNeutrals("white", "white", "the first");
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].verdict, Verdict::meets);
    EXPECT_EQ(findings[1].verdict, Verdict::meets);
}

struct EditionRow {
    Edition edition;
    const char* section;
};

void PrintTo(const EditionRow& row, std::ostream* out) {
    *out << standards::editionText(row.edition);
}

class ColoursByEdition : public testing::TestWithParam<EditionRow> {};

TEST_P(ColoursByEdition, NameTheirSection) {
    auto builder = one(Phase::a, "white");
    builder.layout().edition = GetParam().edition;
    EXPECT_EQ(of(builder).citation.section, GetParam().section);
}

// Source: the reorganisation of NFPA 70 Article 310 in 2020: 310.110 became 310.6.
INSTANTIATE_TEST_SUITE_P(Editions,
                         ColoursByEdition,
                         testing::Values(EditionRow{Edition::nec2017, "310.110"},
                                         EditionRow{Edition::nec2020, "310.6"},
                                         EditionRow{Edition::nec2023, "310.6"},
                                         EditionRow{Edition::nec2026, "310.6"}));

TEST(ColoursLaws, AThickerNeutralIsNeverWorseOff) {
    for (const char* colour : {"white", "black with white tape", "black", "green"}) {
        int before = gravity(Verdict::breach);
        for (const auto size : units::WireSize::all()) {
            const int now =
                gravity(of(one(Phase::n, colour, std::string(size.label()).c_str())).verdict);
            EXPECT_LE(now, before) << colour << ", " << size.text();
            before = now;
        }
    }
}

}  // namespace
}  // namespace gw::checks
