#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::about;
using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using test_support::Random;
using units::Inches;

const Subject kUpper = layout::ConductorId("S-A");

/// The upper conductor of the straight splice, stripped and inserted so far. The bore is 1.5 in
/// deep and 1 in wide, its screw half-way: as wide as the bore, from 0.25 to 1.25 in.
GutterBuilder seated(double strip, double inserted, double tolerance) {
    auto builder = check_test::straightSplice();
    builder.part("splice").ports[0].stripTolerance = Inches::of(tolerance);
    auto& end = std::get<layout::InPort>(builder.conductorNamed("S-A").to);
    end.strip = Inches::of(strip);
    end.inserted = Inches::of(inserted);
    return builder;
}

Finding upper(const GutterBuilder& builder) {
    const auto findings = about(checkExposedCopper(builder.build()), kUpper);
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct SeatRow {
    std::string name;
    double strip;
    double inserted;
    double tolerance;
    Verdict verdict;
    double measured;
    double limit;
};

void PrintTo(const SeatRow& row, std::ostream* out) {
    *out << row.name;
}

class SeatOfAnEnd : public testing::TestWithParam<SeatRow> {};

TEST_P(SeatOfAnEnd, IsJudgedOnBothSidesOfEachLimit) {
    const SeatRow& row = GetParam();
    const auto finding = upper(seated(row.strip, row.inserted, row.tolerance));
    EXPECT_EQ(finding.verdict, row.verdict) << finding.working;
    if (row.verdict == Verdict::cannotTell) {
        EXPECT_THAT(finding.missing,
                    testing::ElementsAre("width of the screws of port 1 of block A"));
        return;
    }
    EXPECT_NEAR(finding.measured->value, row.measured, 1e-9);
    EXPECT_NEAR(finding.limit->value, row.limit, 1e-9);
}

// Arithmetic from the bore: no copper outside (110.14(B)); by the part's data (110.3(B)) strip
// 1.375 in within the tolerance, and its screw, at 0.75 in, on bare copper: clear of it at its
// widest, 0.25 to 1.25 in, it bears; not even past its middle it does not; the width is not stated.
// Stripped as the part asks and pushed to the stop, 1.5 in, is what the part asks.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Limits, SeatOfAnEnd, testing::Values(
    SeatRow{"no copper shows",                     1.4,    1.41, 1.0,    Verdict::meets,      0.0,    0.0},
    SeatRow{"stripped as far as inserted",         1.4,    1.4,  1.0,    Verdict::meets,      0.0,    0.0},
    SeatRow{"copper shows",                        1.41,   1.4,  1.0,    Verdict::breach,     0.01,   0.0},
    SeatRow{"insulation short of the screw",       1.21,   1.45, 1.0,    Verdict::meets,      0.0,    0.0},
    SeatRow{"insulation to the screw's widest",    1.20,   1.45, 1.0,    Verdict::meets,      0.0,    0.0},
    SeatRow{"insulation into the screw's widest",  1.19,   1.45, 1.0,    Verdict::cannotTell, 0.0,    0.0},
    SeatRow{"insulation short of the middle",      0.71,   1.45, 1.0,    Verdict::cannotTell, 0.0,    0.0},
    SeatRow{"insulation to the middle",            0.70,   1.45, 1.0,    Verdict::breach,     0.75,   0.25},
    SeatRow{"insulation there as the part asks",   1.20,   1.5,  1.0,    Verdict::meets,      0.0,    0.0},
    SeatRow{"tip past the screw",                  1.26,   1.26, 1.0,    Verdict::meets,      0.0,    0.0},
    SeatRow{"tip at the screw's widest",           1.25,   1.25, 1.0,    Verdict::meets,      0.0,    0.0},
    SeatRow{"tip short of the screw's widest",     1.24,   1.24, 1.0,    Verdict::cannotTell, 0.0,    0.0},
    SeatRow{"tip past the middle",                 0.76,   0.76, 1.0,    Verdict::cannotTell, 0.0,    0.0},
    SeatRow{"tip at the middle",                   0.75,   0.75, 1.0,    Verdict::breach,     0.75,   1.25},
    SeatRow{"strip at its shortest",               1.3125, 1.5,  0.0625, Verdict::meets,      0.0,    0.0},
    SeatRow{"strip too short",                     1.3025, 1.5,  0.0625, Verdict::breach,     1.3025, 1.3125},
    SeatRow{"strip at its longest",                1.4375, 1.5,  0.0625, Verdict::meets,      0.0,    0.0},
    SeatRow{"strip too long",                      1.4475, 1.5,  0.0625, Verdict::breach,     1.4475, 1.4375}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(ExposedCopper, OneFindingAnEndWithTheWorstFirst) {
    // 0.5 in of copper shows, the strip is 0.325 in off; the tip is on the screw, nobody says by
    // how much.
    const auto finding = upper(seated(1.7, 1.2, 0.0625));
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_NEAR(finding.margin->value, -0.5, 1e-9);
    EXPECT_EQ(finding.citation.section, "110.14(B)");
    const auto copper = finding.working.find("0.5 in of copper shows");
    const auto strip = finding.working.find("strip 1.7 in");
    const auto tip = finding.working.find("tip at 1.2 in");
    EXPECT_LT(copper, strip);
    EXPECT_LT(strip, tip);
    EXPECT_NE(tip, std::string::npos);
}

TEST(ExposedCopper, CannotTellWithoutTheStrip) {
    auto builder = check_test::straightSplice();
    std::get<layout::InPort>(builder.conductorNamed("S-A").to).strip.reset();
    const auto finding = upper(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing,
                testing::ElementsAre("strip of conductor S-A in port 1 of block A"));
}

TEST(ExposedCopper, CannotTellWithoutThePortsStripLength) {
    auto builder = check_test::straightSplice();
    builder.part("splice").ports[0].stripLength.reset();
    const auto finding = upper(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("strip length of port 1 of block A"));
}

TEST(ExposedCopper, NeedsTheToleranceOnlyWhereTheStripIsOff) {
    auto builder = seated(1.375, 1.5, 0.0625);
    builder.part("splice").ports[0].stripTolerance.reset();
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
    std::get<layout::InPort>(builder.conductorNamed("S-A").to).strip = Inches::of(1.38);
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing,
                testing::ElementsAre("strip tolerance of port 1 of block A"));
}

TEST(ExposedCopper, CannotTellWithoutTheScrewsPlace) {
    auto builder = check_test::straightSplice();
    builder.part("splice").screws.clear();
    const auto finding = upper(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("screws of port 1 of block A"));
}

TEST(ExposedCopper, ABreachStandsWhateverElseIsMissing) {
    auto builder = seated(1.5, 1.4, 0.0625);
    builder.part("splice").ports[0].stripLength.reset();
    EXPECT_EQ(upper(builder).verdict, Verdict::breach);
}

TEST(ExposedCopper, CannotTellWhichMouthIsOpen) {
    auto builder = check_test::straightSplice();
    builder.part("splice").ports[0].opening = parts::PortOpening::either;
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing, testing::ElementsAre("open mouth of port 1 of block A"));
    builder.blockNamed("A").openMouths = {{parts::PortName("1"), true}};
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
}

TEST(ExposedCopper, AsksNoStripOfABareConductor) {
    auto builder = seated(0.0, 1.5, 0.0625);
    builder.conductorNamed("S-A").insulation = standards::Insulation::bare;
    std::get<layout::InPort>(builder.conductorNamed("S-A").to).strip.reset();
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
    std::get<layout::InPort>(builder.conductorNamed("S-A").to).inserted = Inches::of(0.7);
    EXPECT_EQ(upper(builder).verdict, Verdict::breach);
}

// ---- passing through ------------------------------------------------------------------------

/// A conductor straight through a bore 3 in deep with screws at 0.75 and 2.25 in: 0.25 to 2.75 in.
GutterBuilder passing() {
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.entry("above", layout::Wall::top, 10.0, 3.0);
    builder.entry("below", layout::Wall::bottom, 10.0, 3.0);
    builder.conductor("S-A", atEntry("below"), atEntry("above")).passes = {
        {layout::BlockId("A"), parts::PortName("1"), Inches::of(0.0), Inches::of(3.0)}};
    return builder;
}

struct WindowRow {
    std::string name;
    double start;
    double end;
    Verdict verdict;
    double measured;
};

void PrintTo(const WindowRow& row, std::ostream* out) {
    *out << row.name;
}

class WindowOfAPass : public testing::TestWithParam<WindowRow> {};

TEST_P(WindowOfAPass, LiesInTheBoreAndUnderEveryScrew) {
    const WindowRow& row = GetParam();
    auto builder = passing();
    auto& pass = builder.conductorNamed("S-A").passes.front();
    pass.windowStart = Inches::of(row.start);
    pass.windowLength = Inches::of(row.end - row.start);
    const auto finding = upper(builder);
    EXPECT_EQ(finding.verdict, row.verdict) << finding.working;
    if (row.verdict != Verdict::cannotTell) {
        EXPECT_NEAR(finding.measured->value, row.measured, 1e-9);
        EXPECT_EQ(finding.limit->value, 0.0);
    }
    // Run the other way the window is the same.
    std::swap(builder.conductorNamed("S-A").from, builder.conductorNamed("S-A").to);
    EXPECT_EQ(upper(builder).verdict, row.verdict);
}

// Arithmetic from the bore above; the middles of the screws are at 0.75 and 2.25 in.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Limits, WindowOfAPass, testing::Values(
    WindowRow{"the whole bore",              0.0,   3.0,  Verdict::meets,      0.0},
    WindowRow{"just under the screws",       0.25,  2.75, Verdict::meets,      0.0},
    WindowRow{"short at the near side",      0.26,  2.75, Verdict::cannotTell, 0.0},
    WindowRow{"short at the far side",       0.25,  2.74, Verdict::cannotTell, 0.0},
    WindowRow{"to the middle of the near",   0.75,  2.75, Verdict::breach,     0.5},
    WindowRow{"to the middle of the far",    0.25,  2.25, Verdict::breach,     0.5},
    WindowRow{"copper at the near mouth",   -0.01,  2.9,  Verdict::breach,     0.01},
    WindowRow{"copper at the far mouth",     0.1,   3.02, Verdict::breach,     0.02}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(WindowOfAPass, CannotTellWithoutTheWindow) {
    auto builder = passing();
    builder.conductorNamed("S-A").passes.front().windowLength.reset();
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing,
                testing::ElementsAre("strip window of conductor S-A through port 1 of block A"));
}

TEST(EndsFromBothMouths, NeedOnlyTheScrewsOfTheirOwnHalf) {
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.conductor("S-A", spare({10, 11, 3}), inPort("A", "1"));
    builder.conductor("S-B", spare({10, 1, 3}), inPort("A", "1"));
    for (auto& conductor : builder.layout().conductors) {
        std::get<layout::InPort>(conductor.to).inserted = Inches::of(1.45);
    }
    for (const auto& finding : checkExposedCopper(builder.build())) {
        EXPECT_EQ(finding.verdict, Verdict::meets) << finding.working;
    }
    builder.layout().conductors.pop_back();
    const auto alone = upper(builder);
    EXPECT_EQ(alone.verdict, Verdict::breach) << "alone it has to be under both screws";
    EXPECT_NEAR(alone.limit->value, 2.75, 1e-9);
}

// ---- ends in bores open at both mouths ------------------------------------------------------

/// One end in a bore 4 in deep and 1 in wide, open at both mouths, screws at 1 and 3 in (0.5 to
/// 3.5 in at their widest); the part asks for 3.5 in of strip, within 1/16 in.
GutterBuilder runThrough(double strip, std::optional<double> inserted) {
    GutterBuilder builder;
    auto part = check_test::throughPart();
    part.body.y = 4.0;
    for (auto& port : part.ports) {
        port.boreDepth = Inches::of(4.0);
        port.stripLength = Inches::of(3.5);
    }
    for (auto& screw : part.screws) {
        screw.head.y = screw.head.y < 1.5 ? 1.0 : 3.0;
    }
    builder.add(part).block("A", "through", {9.0, 4.0, 2.0});
    auto& conductor = builder.conductor("S-A", spare({10, 11, 3}), inPort("A", "1", strip));
    if (inserted) {
        std::get<layout::InPort>(conductor.to).inserted = Inches::of(*inserted);
    }
    return builder;
}

struct ThroughRow {
    std::string name;
    double strip;
    std::optional<double> inserted;
    Verdict verdict;
    std::string says;
    std::string reason;
};

void PrintTo(const ThroughRow& row, std::ostream* out) {
    *out << row.name << ": " << row.reason;
}

class EndInAThroughPort : public testing::TestWithParam<ThroughRow> {};

TEST_P(EndInAThroughPort, IsJudgedByWhatIsStated) {
    const ThroughRow& row = GetParam();
    const auto finding = upper(runThrough(row.strip, row.inserted));
    EXPECT_EQ(finding.verdict, row.verdict) << finding.working;
    EXPECT_THAT(finding.working, testing::HasSubstr(row.says));
    const bool asked =
        std::any_of(finding.missing.begin(), finding.missing.end(), [](const std::string& missing) {
            return missing == "insertion of conductor S-A in port 1 of block A";
        });
    EXPECT_EQ(asked, !row.inserted.has_value());
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, EndInAThroughPort, testing::Values(
    ThroughRow{"short of the far mouth",        3.5,    3.5,  Verdict::meets,      "no copper shows",     "no copper out, none of the insulation under a screw, the tip past both: it need not reach the far mouth"},
    ThroughRow{"copper out at the near mouth",  3.5,    3.4,  Verdict::breach,     "0.1 in of copper",    "3.5 - 3.4 in are bare outside"},
    ThroughRow{"to the far mouth",              3.5,    4.0,  Verdict::meets,      "insulation to 0.5 in", "insulation 4.0 - 3.5 in in, just where the screw begins"},
    ThroughRow{"stripped too short",            3.4,    3.5,  Verdict::breach,     "asked 3.5 in",        "the part asks for 3.5 in within 1/16 in"},
    ThroughRow{"only past the middle",          3.4375, 3.45, Verdict::cannotTell, "screw to 3.5 in",     "3.45 in is past the middle of the screw at 3 in and not past its widest"},
    ThroughRow{"insertion not stated",          3.5,    {},   Verdict::cannotTell, "no stop",             "a bore open at both mouths has no stop, so the format's \"to the stop\" says nothing"},
    ThroughRow{"not stated and never right",    4.1,    {},   Verdict::breach,     "0.1 in of copper",    "4.1 in of strip show in a bore of 4 in however far it is pushed in"}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(EndInABlindPort, SaysThatItIsTakenToTheStop) {
    // The layout's format: without an insertion, to the stop.
    auto builder = check_test::straightSplice();
    EXPECT_THAT(upper(builder).working, testing::HasSubstr("to the stop"));
    std::get<layout::InPort>(builder.conductorNamed("S-A").to).inserted = Inches::of(1.5);
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
    EXPECT_THAT(upper(builder).working, testing::Not(testing::HasSubstr("to the stop")));
}

TEST(ExposedCopperLaws, OrderDoesNotMatterAndMoreStripNeverHidesCopper) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        Random random(seed);
        auto builder =
            seated(random.between(1.0, 1.8), random.between(1.0, 1.5), random.between(0.0, 0.2));
        const auto before = check_test::sortedTexts(checkExposedCopper(builder.build()));
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        EXPECT_EQ(check_test::sortedTexts(checkExposedCopper(builder.build())), before)
            << "seed " << seed;
        auto& end = std::get<layout::InPort>(builder.conductorNamed("S-A").to);
        if (*end.strip > *end.inserted) {
            end.strip = *end.strip + Inches::of(random.between(0.0, 0.5));
            EXPECT_EQ(upper(builder).verdict, Verdict::breach) << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace gw::checks
