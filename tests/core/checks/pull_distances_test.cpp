#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "checks/support.h"
#include "core/checks/gutter_builder.h"
#include "standards/tables.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::withVerdict;
using layout::Wall;
using standards::Edition;
using standards::GutterArticle;
using standards::RacewayType;
using standards::TradeSize;
using testing::ElementsAre;
using testing::HasSubstr;

/// Of rigid metal conduit, which is made in all sizes from 1/2 to 6.
void setRaceway(GutterBuilder& builder, const std::string& entry, const std::string& size) {
    for (auto& one : builder.layout().entries) {
        if (one.id == layout::EntryId(entry)) {
            one.raceway = RacewayType::rmc;
            one.tradeSize = TradeSize::of(size);
        }
    }
}

double outsideOf(const std::string& size) {
    const auto found =
        standards::racewayDimensions(RacewayType::rmc, TradeSize::of(size), Edition::nec2023);
    return found.value().value.outsideDiameter.value().in();
}

void addEntry(GutterBuilder& builder,
              const std::string& id,
              Wall wall,
              const std::pair<double, double>& at,
              const std::string& size) {
    builder.entry(id, wall, at.first, at.second);
    setRaceway(builder, id, size);
}

/// One conductor straight through from end wall to end wall of a gutter of that length.
GutterBuilder straightThrough(double length, const std::string& size) {
    GutterBuilder builder({length, 24.0, 20.0});
    addEntry(builder, "in", Wall::left, {6.0, 10.0}, size);
    addEntry(builder, "out", Wall::right, {6.0, 10.0}, size);
    builder.conductor("S-A", atEntry("in"), atEntry("out"));
    return builder;
}

/// One conductor in and out by the top wall, the raceways that far apart edge to edge.
GutterBuilder turningBack(double apart,
                          const std::string& in,
                          const std::string& out,
                          double height = 60.0) {
    GutterBuilder builder({150.0, height, 20.0});
    const double centres = apart + (outsideOf(in) + outsideOf(out)) / 2.0;
    addEntry(builder, "in", Wall::top, {20.0, 10.0}, in);
    addEntry(builder, "out", Wall::top, {20.0 + centres, 10.0}, out);
    builder.conductor("S-A",
                      atEntry("in"),
                      atEntry("out"),
                      {check_test::corner({20.0, height / 2.0, 10.0}, 0.5),
                       check_test::corner({20.0 + centres, height / 2.0, 10.0}, 0.5)});
    return builder;
}

Finding onlyOf(const GutterBuilder& builder) {
    const auto findings = checkPullDistances(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

// ---- published examples ---------------------------------------------------------------------

struct StraightRow {
    std::string name;
    std::string size;
    std::vector<std::string> beside;  ///< other entries of the wall
    double needed;
    std::string source;
};

void PrintTo(const StraightRow& row, std::ostream* out) {
    *out << row.size << ": " << row.source;
}

class StraightPull : public testing::TestWithParam<StraightRow> {};

TEST_P(StraightPull, AsksEightTimesTheLargestAlone) {
    const auto verdictAt = [&](double length) {
        auto builder = straightThrough(length, GetParam().size);
        double at = 6.0;
        for (const auto& size : GetParam().beside) {
            at += 5.0;
            addEntry(builder, "also" + std::to_string(int(at)), Wall::left, {at, 10.0}, size);
        }
        const auto finding = onlyOf(builder);
        EXPECT_EQ(finding.limit->value, GetParam().needed);
        EXPECT_NEAR(finding.measured->value, length, 1e-9);
        return finding.verdict;
    };
    EXPECT_EQ(verdictAt(GetParam().needed + 0.0625), Verdict::meets);
    EXPECT_EQ(verdictAt(GetParam().needed), Verdict::meets);
    EXPECT_EQ(verdictAt(GetParam().needed - 0.0625), Verdict::breach);
}

INSTANTIATE_TEST_SUITE_P(
    Published,
    StraightPull,
    testing::Values(
        StraightRow{"Two", "2", {}, 16.0, "EC&M, Quizzes on the Code 15"},
        StraightRow{"TwoAndAHalf", "2-1/2", {"2", "1-1/2"}, 20.0, "EC&M, Quizzes on the Code 15"},
        StraightRow{"Three", "3", {}, 24.0, "findanyanswer.com, How do you size a NEC pull box"}),
    [](const auto& row) { return row.param.name; });

struct AngleRow {
    std::string name;
    std::string in;
    std::string out;
    double needed;
    std::string source;
};

void PrintTo(const AngleRow& row, std::ostream* out) {
    *out << row.in << " and " << row.out << ": " << row.source;
}

class AnglePull : public testing::TestWithParam<AngleRow> {};

TEST_P(AnglePull, AsksSixTimesTheLargerBetweenTheRaceways) {
    const auto verdictAt = [&](double apart) {
        const auto finding = onlyOf(turningBack(apart, GetParam().in, GetParam().out));
        EXPECT_EQ(finding.limit->value, GetParam().needed);
        EXPECT_NEAR(finding.measured->value, apart, 1e-6);
        EXPECT_NEAR(finding.margin->value, apart - GetParam().needed, 1e-6);
        return finding.verdict;
    };
    EXPECT_EQ(verdictAt(GetParam().needed + 0.0625), Verdict::meets);
    EXPECT_EQ(verdictAt(GetParam().needed), Verdict::meets);
    EXPECT_EQ(verdictAt(GetParam().needed - 0.0625), Verdict::breach);
}

INSTANTIATE_TEST_SUITE_P(
    Published,
    AnglePull,
    testing::Values(
        AngleRow{"Three", "3", "3", 18.0, "ehow.com, How to Size Pull Boxes"},
        AngleRow{
            "FourAndSix", "4", "6", 36.0, "jeopardylabs.com, Honors End of Year Final Part 1"}),
    [](const auto& row) { return row.param.name; });

struct RowRow {
    std::string name;
    std::string pulled;               ///< in and out, far apart
    std::vector<std::string> others;  ///< of the row by which it comes in
    double needed;
    std::string source;
};

void PrintTo(const RowRow& row, std::ostream* out) {
    *out << row.name << ": " << row.source;
}

/// In by the top wall, out by the end wall far away; others beside it in the top wall.
GutterBuilder inByARow(const RowRow& row, double height) {
    GutterBuilder builder({150.0, height, 20.0});
    addEntry(builder, "in", Wall::top, {20.0, 10.0}, row.pulled);
    addEntry(builder, "out", Wall::right, {6.0, 10.0}, row.pulled);
    double at = 20.0;
    for (const auto& size : row.others) {
        at += 8.0;
        addEntry(builder, "also" + std::to_string(int(at)), Wall::top, {at, 10.0}, size);
    }
    builder.conductor(
        "S-A", atEntry("in"), atEntry("out"), {check_test::corner({20.0, 6.0, 10.0}, 4.0)});
    return builder;
}

class RowOfEntries : public testing::TestWithParam<RowRow> {};

TEST_P(RowOfEntries, AsksABoxForSixTimesTheLargestAndTheOthers) {
    EXPECT_EQ(onlyOf(inByARow(GetParam(), GetParam().needed)).verdict, Verdict::meets);
    const auto finding = onlyOf(inByARow(GetParam(), GetParam().needed - 0.0625));
    EXPECT_EQ(finding.verdict, Verdict::caution) << "the entries themselves are far apart";
    ASSERT_EQ(finding.readings.size(), 2U);
    EXPECT_EQ(finding.readings[0].name, "only the distance between the entries");
    EXPECT_EQ(finding.readings[0].verdict, Verdict::meets);
    EXPECT_EQ(finding.readings[1].name, "the full dimensions of a pull box");
    EXPECT_EQ(finding.readings[1].verdict, Verdict::breach);
    EXPECT_EQ(finding.readings[1].limit->value, GetParam().needed);
    EXPECT_EQ(finding.readings[1].measured->value, GetParam().needed - 0.0625);
}

INSTANTIATE_TEST_SUITE_P(
    Published,
    RowOfEntries,
    testing::Values(
        RowRow{"Four", "4", {"2", "2"}, 28.0, "findanyanswer.com, How do you size a NEC pull box"},
        RowRow{"Three", "3", {"2"}, 20.0, "ehow.com, How to Size Pull Boxes"},
        RowRow{"Small", "2", {"3"}, 20.0, "as before: the largest of the row need not be its own"}),
    [](const auto& row) { return row.param.name; });

// ---- readings -------------------------------------------------------------------------------

TEST(PullDistances, EntriesTooNearBreachUnderBothReadings) {
    const auto finding = onlyOf(turningBack(11.0, "2", "2"));
    EXPECT_EQ(finding.verdict, Verdict::breach);
    ASSERT_EQ(finding.readings.size(), 2U);
    EXPECT_EQ(finding.readings[0].verdict, Verdict::breach);
    EXPECT_EQ(finding.readings[1].verdict, Verdict::breach);
}

TEST(PullDistances, ShortBoxForAStraightPullAside) {
    // Source: arithmetic. 12 in long; 18 in aside less the outside diameter of 2 in conduit, so
    // the edges are sqrt(144 + (18 - 2.375)^2) = 19.70 in apart: 16 in and more.
    GutterBuilder builder({12.0, 24.0, 20.0});
    addEntry(builder, "in", Wall::left, {3.0, 10.0}, "2");
    addEntry(builder, "out", Wall::right, {21.0, 10.0}, "2");
    builder.conductor("S-A", atEntry("in"), atEntry("out"));
    const auto finding = onlyOf(builder);
    EXPECT_EQ(finding.verdict, Verdict::caution);
    EXPECT_NEAR(finding.readings.at(0).measured->value, std::hypot(12.0, 18.0 - 2.375), 1e-6);
    EXPECT_EQ(finding.readings.at(1).measured->value, 12.0);
    EXPECT_EQ(finding.measured->value, 12.0) << "what the caution is about";
    EXPECT_EQ(finding.limit->value, 16.0);
}

/// In by the back, out by the bottom far away, in a gutter of that depth.
GutterBuilder fromTheBack(double depth) {
    GutterBuilder builder({60.0, 40.0, depth});
    addEntry(builder, "in", Wall::back, {10.0, 30.0}, "2");
    addEntry(builder, "out", Wall::bottom, {40.0, 2.0}, "2");
    builder.conductor(
        "S-A",
        atEntry("in"),
        atEntry("out"),
        {check_test::corner({10.0, 30.0, 2.0}, 0.5), check_test::corner({40.0, 30.0, 2.0}, 0.5)});
    return builder;
}

TEST(PullDistances, OppositeTheCoverTheTableForTerminalsIsEnough) {
    // Source: NFPA 70 Table 312.6(A), one wire of 500 kcmil: 6 in; by six times the trade size it
    // would be 12.
    EXPECT_EQ(onlyOf(fromTheBack(6.0)).verdict, Verdict::meets);
    const auto finding = onlyOf(fromTheBack(5.9375));
    EXPECT_EQ(finding.verdict, Verdict::caution);
    EXPECT_EQ(finding.limit->value, 6.0);
    EXPECT_THAT(finding.working, HasSubstr("from the back wall to the cover"));
}

TEST(PullDistances, OpeningsAtAnotherDepthAreNoRow) {
    const RowRow row{"", "2", {"3"}, 0.0, ""};
    auto builder = inByARow(row, 12.0);
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::caution);
    builder.layout().entries.back().v = 15.0;
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::meets) << "6 x 2 in of its own row";
}

// ---- how it is measured ---------------------------------------------------------------------

TEST(PullDistances, BetweenTheEdgesOfOpeningsInTwoWalls) {
    // Source: arithmetic. The discs lie in the planes z = 0 and y = 0, both at x = 12: their
    // nearest points are (12, 9 - r, 0) and (12, 0, 5 - r).
    GutterBuilder builder({24.0, 14.0, 8.0});
    addEntry(builder, "in", Wall::back, {12.0, 9.0}, "1-1/4");
    addEntry(builder, "out", Wall::bottom, {12.0, 5.0}, "1-1/4");
    builder.conductor(
        "S-A", atEntry("in"), atEntry("out"), {check_test::corner({12.0, 9.0, 5.0}, 3.0)});
    const double r = outsideOf("1-1/4") / 2.0;
    EXPECT_NEAR(onlyOf(builder).measured->value, std::hypot(9.0 - r, 5.0 - r), 1e-6);
}

/// Least distance between many points of two circles in walls left (x = 0) and bottom (y = 0). The
/// nearest points of such openings are on their edges.
double sampledDistance(const layout::Entry& left, const layout::Entry& bottom, double radius) {
    constexpr int kPoints = 720;
    double least = 1e9;
    for (int i = 0; i < kPoints; ++i) {
        const double a = 2.0 * std::numbers::pi * i / kPoints;
        const Vec3 p{0.0, left.u + radius * std::cos(a), left.v + radius * std::sin(a)};
        for (int k = 0; k < kPoints; ++k) {
            const double b = 2.0 * std::numbers::pi * k / kPoints;
            const Vec3 q{bottom.u + radius * std::cos(b), 0.0, bottom.v + radius * std::sin(b)};
            least = std::min(least, distance(p, q));
        }
    }
    return least;
}

class EdgesInTwoWalls : public testing::TestWithParam<std::uint64_t> {};

TEST_P(EdgesInTwoWalls, AreAsFarApartAsTheirNearestPoints) {
    test_support::Random random(GetParam());
    GutterBuilder builder({60.0, 40.0, 20.0});
    addEntry(builder, "in", Wall::left, {random.between(3, 30), random.between(3, 17)}, "3");
    addEntry(builder, "out", Wall::bottom, {random.between(3, 30), random.between(3, 17)}, "3");
    builder.conductor("S-A", atEntry("in"), atEntry("out"));
    const auto& entries = builder.layout().entries;
    EXPECT_NEAR(onlyOf(builder).measured->value,
                sampledDistance(entries[0], entries[1], outsideOf("3") / 2.0),
                1e-3)
        << "seed " << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Seeds, EdgesInTwoWalls, testing::Range<std::uint64_t>(1, 9));

TEST(PullDistances, SaysWhereOnlyTheBoreIsPublished) {
    auto builder = turningBack(30.0, "2", "2");
    builder.layout().entries.at(0).raceway = RacewayType::fmc;
    const auto bore =
        standards::racewayDimensions(RacewayType::fmc, TradeSize::of("2"), Edition::nec2023)
            .value()
            .value.insideDiameter.in();
    const auto finding = onlyOf(builder);
    EXPECT_NEAR(finding.measured->value, 30.0 + (outsideOf("2") - bore) / 2.0, 1e-6);
    EXPECT_THAT(finding.working, HasSubstr("the bore at entry in"));
}

// ---- whom it concerns -----------------------------------------------------------------------

TEST(PullDistances, OneFindingAPairOfEntries) {
    auto builder = straightThrough(60.0, "3");
    addEntry(builder, "down", Wall::bottom, {30.0, 10.0}, "3");
    builder.conductor("S-B", atEntry("out", 2), atEntry("in", 2));
    builder.conductor("S-C", atEntry("in", 3), atEntry("down"));
    const auto findings = checkPullDistances(builder.build());
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_THAT(findings[0].subjects,
                ElementsAre(Subject(layout::EntryId("in")),
                            Subject(layout::EntryId("out")),
                            Subject(layout::ConductorId("S-A")),
                            Subject(layout::ConductorId("S-B"))));
    EXPECT_EQ(findings[0].limit->value, 24.0);
    EXPECT_THAT(findings[1].working, HasSubstr("angle"));
}

TEST(PullDistances, SmallAndBareConductorsAreNotAsked) {
    auto builder = straightThrough(10.0, "3");
    auto& conductor = builder.conductorNamed("S-A");
    conductor.size = units::WireSize::of("4");
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::breach);
    conductor.size = units::WireSize::of("6");
    EXPECT_TRUE(checkPullDistances(builder.build()).empty());
    conductor.size = units::WireSize::of("4");
    conductor.insulation = standards::Insulation::bare;
    EXPECT_TRUE(checkPullDistances(builder.build()).empty());
}

TEST(PullDistances, ConductorsThatEndInPortsAreNotPulledThrough) {
    EXPECT_TRUE(checkPullDistances(check_test::straightSplice().build()).empty());
}

TEST(PullDistances, ThroughAPortUncutIsPulledThrough) {
    GutterBuilder builder({60.0, 12.0, 12.0});
    builder.add(check_test::throughPart()).block("A", "through", {29.0, 4.5, 2.0});
    addEntry(builder, "in", Wall::top, {30.0, 3.0}, "2");
    addEntry(builder, "out", Wall::bottom, {30.0, 3.0}, "2");
    builder.conductor("S-A", atEntry("in"), atEntry("out")).passes = {
        {layout::BlockId("A"), parts::PortName("1"), {}, {}}};
    const auto finding = onlyOf(builder);
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_EQ(finding.measured->value, 12.0);
    EXPECT_EQ(finding.limit->value, 16.0);
}

// ---- what is missing ------------------------------------------------------------------------

TEST(PullDistances, TradeSizeNotStatedCannotTell) {
    auto builder = straightThrough(60.0, "2");
    builder.layout().entries.at(1).tradeSize.reset();
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(onlyOf(builder).missing, ElementsAre("trade size of the raceway at entry out"));
}

TEST(PullDistances, RacewayNotStatedCannotTell) {
    auto builder = straightThrough(60.0, "2");
    builder.layout().entries.at(0).raceway.reset();
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(onlyOf(builder).missing, ElementsAre("type of the raceway at entry in"));
}

TEST(PullDistances, RacewayThatIsNotMadeCannotTell) {
    auto builder = straightThrough(60.0, "2");
    builder.layout().entries.at(0).tradeSize = TradeSize::of("3/8");
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(onlyOf(builder).missing, ElementsAre("diameter of the raceway at entry in"));
}

TEST(PullDistances, InsulationNotStatedCannotTellUnlessAnotherIsInsulated) {
    auto builder = straightThrough(10.0, "2");
    builder.conductorNamed("S-A").insulation.reset();
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(onlyOf(builder).missing, ElementsAre("insulation of conductor S-A"));
    builder.conductor("S-B", atEntry("in", 2), atEntry("out", 2));
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::breach);
}

TEST(PullDistances, UnknownNeighbourInTheRowCannotTellWhetherABoxWouldDo) {
    const RowRow row{"", "2", {"3"}, 0.0, ""};
    auto builder = inByARow(row, 15.0);
    builder.layout().entries.back().tradeSize.reset();
    const auto finding = onlyOf(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, ElementsAre("trade size of the raceway at entry also28"));
    EXPECT_EQ(onlyOf(inByARow(row, 15.0)).verdict, Verdict::caution);
    builder.layout().gutter.inside.y = 11.0;
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::caution) << "too low without it already";
}

// ---- sections and laws ----------------------------------------------------------------------

struct SectionRow {
    std::string name;
    Edition edition;
    GutterArticle article;
    std::string section;
};

void PrintTo(const SectionRow& row, std::ostream* out) {
    *out << row.name;
}

class SectionOfPulls : public testing::TestWithParam<SectionRow> {};

// Source: NFPA 70, section (B) of "insulated conductors" of each article, alike in all editions.
TEST_P(SectionOfPulls, IsTheArticlesOwn) {
    auto builder = straightThrough(60.0, "2");
    builder.layout().edition = GetParam().edition;
    builder.layout().gutter.article = GetParam().article;
    EXPECT_EQ(onlyOf(builder).citation.section, GetParam().section);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(
    Articles, SectionOfPulls,
    testing::Values(
        SectionRow{"Gutter2017",      Edition::nec2017, GutterArticle::auxiliaryGutter,    "366.58(B)"},
        SectionRow{"Gutter2026",      Edition::nec2026, GutterArticle::auxiliaryGutter,    "366.58(B)"},
        SectionRow{"Wireway2020",     Edition::nec2020, GutterArticle::metalWireway,       "376.23(B)"},
        SectionRow{"Nonmetallic2023", Edition::nec2023, GutterArticle::nonmetallicWireway, "378.23(B)"}),
    [](const auto& row) { return row.param.name; });
// clang-format on

class EntriesMovedApart : public testing::TestWithParam<std::uint64_t> {};

TEST_P(EntriesMovedApart, NeverMakeTheVerdictWorse) {
    test_support::Random random(GetParam());
    const std::vector<std::string> sizes = {"1-1/4", "2", "3", "4"};
    const auto& in = sizes[random.below(sizes.size())];
    const auto& out = sizes[random.below(sizes.size())];
    const double height = random.between(10.0, 40.0);
    int worst = 3;
    for (double apart = random.between(0.0, 2.0); apart < 30.0; apart += random.between(0.5, 4.0)) {
        const int now = gravity(onlyOf(turningBack(apart, in, out, height)).verdict);
        EXPECT_LE(now, worst) << "seed " << GetParam() << ", " << apart << " in";
        worst = now;
    }
    EXPECT_LT(worst, 3) << "24 in and more are enough for any";
}

INSTANTIATE_TEST_SUITE_P(Seeds, EntriesMovedApart, testing::Range<std::uint64_t>(1, 13));

}  // namespace
}  // namespace gw::checks
