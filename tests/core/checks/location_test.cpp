#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::about;
using check_test::GutterBuilder;
using layout::Readings;
using standards::GutterArticle;
using standards::Insulation;
using standards::Location;
using test_support::Random;

Finding of(const GutterBuilder& builder, const Subject& subject) {
    const auto findings = about(checkLocation(builder.build()), subject);
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

Finding block(const GutterBuilder& builder) {
    return of(builder, layout::BlockId("A"));
}
Finding conductor(const GutterBuilder& builder) {
    return of(builder, layout::ConductorId("S-A"));
}

/// The straight splice in a metal wireway at this location, its part listed so.
GutterBuilder at(std::optional<Location> location, const std::vector<Location>& listed) {
    auto builder = check_test::straightSplice();
    builder.layout().gutter.article = GutterArticle::metalWireway;
    builder.layout().surroundings.location = location;
    builder.part("splice").listing.locations = listed;
    return builder;
}

struct ListingRow {
    std::string name;
    Location location;
    std::vector<Location> listed;
    Verdict verdict;
};

void PrintTo(const ListingRow& row, std::ostream* out) {
    *out << row.name;
}

class ListedLocations : public testing::TestWithParam<ListingRow> {};

TEST_P(ListedLocations, CoverTheGutters) {
    const ListingRow& row = GetParam();
    EXPECT_EQ(block(at(row.location, row.listed)).verdict, row.verdict);
}

// NFPA 70 110.3(B); buried: 300.5(E), direct burial is a listing of its own.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, ListedLocations, testing::Values(
    ListingRow{"dry for dry",     Location::dry,    {Location::dry},                                Verdict::meets},
    ListingRow{"dry for damp",    Location::damp,   {Location::dry},                                Verdict::breach},
    ListingRow{"damp for damp",   Location::damp,   {Location::dry, Location::damp},                Verdict::meets},
    ListingRow{"wet for dry",     Location::dry,    {Location::wet},                                Verdict::meets},
    ListingRow{"damp for wet",    Location::wet,    {Location::dry, Location::damp},                Verdict::breach},
    ListingRow{"wet for wet",     Location::wet,    {Location::wet},                                Verdict::meets},
    ListingRow{"wet for buried",  Location::buried, {Location::dry, Location::damp, Location::wet}, Verdict::breach},
    ListingRow{"buried",          Location::buried, {Location::buried},                             Verdict::meets},
    ListingRow{"buried for wet",  Location::wet,    {Location::buried},                             Verdict::breach}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(BlockLocation, CannotTellWithoutTheLocation) {
    const auto finding = block(at(std::nullopt, {Location::dry, Location::wet}));
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("location of the gutter"));
}

TEST(BlockLocation, CannotTellWithoutTheListing) {
    const auto finding = block(at(Location::dry, {}));
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("listed locations of part splice"));
}

TEST(BlockLocation, CitesDirectBurial) {
    EXPECT_EQ(block(at(Location::buried, {Location::buried})).citation.section, "300.5(E)");
    auto builder = at(Location::buried, {Location::buried});
    builder.layout().edition = standards::Edition::nec2026;
    EXPECT_EQ(block(builder).citation.section, "300.7(E)");
}

// ---- water that may stand -------------------------------------------------------------------

struct WaterRow {
    std::string name;
    Location location;
    std::optional<bool> floods;
    std::optional<bool> submersion;
    Verdict verdict;
    std::vector<std::string> missing;
};

void PrintTo(const WaterRow& row, std::ostream* out) {
    *out << row.name;
}

class StandingWater : public testing::TestWithParam<WaterRow> {};

TEST_P(StandingWater, NeedsAListingForTemporarySubmersion) {
    const WaterRow& row = GetParam();
    auto builder = at(row.location, {Location::dry, Location::damp, Location::wet});
    builder.layout().surroundings.floods = row.floods;
    builder.part("splice").listing.temporarySubmersion = row.submersion;
    EXPECT_EQ(block(builder).verdict, row.verdict);
    EXPECT_EQ(block(builder).missing, row.missing);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, StandingWater, testing::Values(
    WaterRow{"listed",                     Location::wet, true,         true,         Verdict::meets,      {}},
    WaterRow{"not listed",                 Location::wet, true,         false,        Verdict::breach,     {}},
    WaterRow{"listing not stated",         Location::wet, true,         std::nullopt, Verdict::cannotTell, {"temporary submersion of part splice"}},
    WaterRow{"does not flood",             Location::wet, false,        false,        Verdict::meets,      {}},
    WaterRow{"flooding not stated",        Location::wet, std::nullopt, false,        Verdict::cannotTell, {"whether the gutter floods"}},
    WaterRow{"not stated, listed anyway",  Location::wet, std::nullopt, true,         Verdict::meets,      {}},
    WaterRow{"not stated in a dry place",  Location::dry, std::nullopt, false,        Verdict::cannotTell, {"whether the gutter floods"}}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(StandingWater, MakesADampPlaceWetForConductors) {
    auto builder = at(Location::damp, {Location::wet});
    builder.conductorNamed("S-A").insulation = Insulation::thhn;
    EXPECT_EQ(conductor(builder).verdict, Verdict::meets);
    builder.layout().surroundings.floods = true;
    EXPECT_EQ(conductor(builder).verdict, Verdict::breach);
}

/// Forgetting to say whether water may stand in it must not turn a breach into a pass.
TEST(StandingWater, NotStatedIsNotTakenForNo) {
    for (const Location location : {Location::dry, Location::damp}) {
        auto builder = at(location, {Location::damp});
        builder.conductorNamed("S-A").insulation = Insulation::thhn;
        builder.part("splice").listing.temporarySubmersion = true;
        builder.layout().surroundings.floods = true;
        EXPECT_EQ(conductor(builder).verdict, Verdict::breach);
        EXPECT_EQ(block(builder).verdict, Verdict::breach);
        builder.layout().surroundings.floods.reset();
        EXPECT_EQ(conductor(builder).verdict, Verdict::cannotTell);
        EXPECT_THAT(conductor(builder).missing, testing::ElementsAre("whether the gutter floods"));
        EXPECT_EQ(block(builder).verdict, Verdict::cannotTell);
        builder.conductorNamed("S-A").insulation = Insulation::thwn2;
        EXPECT_EQ(conductor(builder).verdict, Verdict::meets);
    }
}

// ---- insulation -----------------------------------------------------------------------------

struct InsulationRow {
    Insulation insulation;
    bool wet;
};

void PrintTo(const InsulationRow& row, std::ostream* out) {
    *out << standards::insulationText(row.insulation);
}

class InsulationInAWireway : public testing::TestWithParam<InsulationRow> {};

TEST_P(InsulationInAWireway, HasToBeForWetLocationsWhereTheWirewayIsWet) {
    auto builder = at(Location::wet, {Location::wet});
    builder.conductorNamed("S-A").insulation = GetParam().insulation;
    builder.conductorNamed("S-A").outsideDiameter = units::Inches::of(0.9);
    EXPECT_EQ(conductor(builder).verdict, GetParam().wet ? Verdict::meets : Verdict::breach);
    EXPECT_EQ(conductor(builder).citation.section, "310.10(C)");
    builder.layout().surroundings.location = Location::damp;
    EXPECT_EQ(conductor(builder).verdict, Verdict::meets);
    builder.layout().surroundings.location = Location::dry;
    EXPECT_EQ(conductor(builder).verdict, Verdict::meets);
}

// Source: NFPA 70 310.10(C); THHN, XHH and RHH are not in its list.
INSTANTIATE_TEST_SUITE_P(Types,
                         InsulationInAWireway,
                         testing::Values(InsulationRow{Insulation::thwn2, true},
                                         InsulationRow{Insulation::thwn, true},
                                         InsulationRow{Insulation::xhhw, true},
                                         InsulationRow{Insulation::xhhw2, true},
                                         InsulationRow{Insulation::thw, true},
                                         InsulationRow{Insulation::rhw2, true},
                                         InsulationRow{Insulation::bare, true},
                                         InsulationRow{Insulation::thhn, false},
                                         InsulationRow{Insulation::xhh, false},
                                         InsulationRow{Insulation::rhh, false},
                                         InsulationRow{Insulation::rhhNoCover, false}));

// Not every insulation that is made may be used in every dry or damp place either.
TEST(InsulationNotStated, CannotTellAnywhere) {
    auto builder = at(Location::wet, {Location::wet});
    builder.conductorNamed("S-A").insulation.reset();
    EXPECT_EQ(conductor(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(conductor(builder).missing, testing::ElementsAre("insulation of conductor S-A"));
    for (const auto place : {Location::dry, Location::damp}) {
        builder.layout().surroundings.location = place;
        EXPECT_EQ(conductor(builder).verdict, Verdict::cannotTell);
        EXPECT_THAT(conductor(builder).missing, testing::Contains("insulation of conductor S-A"));
    }
}

// ---- inside a weatherproof auxiliary gutter --------------------------------------------------

GutterBuilder weatherproof(std::optional<std::string> type) {
    auto builder = at(Location::wet, {Location::dry, Location::damp});
    builder.layout().gutter.article = GutterArticle::auxiliaryGutter;
    builder.layout().gutter.enclosureType = std::move(type);
    builder.conductorNamed("S-A").insulation = Insulation::thhn;
    return builder;
}

TEST(InsideAWeatherproofGutter, IsDisputed) {
    for (const auto& finding : {conductor(weatherproof("3R")), block(weatherproof("3R"))}) {
        EXPECT_EQ(finding.verdict, Verdict::caution);
        ASSERT_EQ(finding.readings.size(), 2U);
        EXPECT_EQ(finding.readings[0].verdict, Verdict::breach);
        EXPECT_EQ(finding.readings[1].verdict, Verdict::meets);
    }
}

TEST(InsideAWeatherproofGutter, FollowsTheRecordedReading) {
    auto builder = weatherproof("4X");
    builder.layout().readings.insideWeatherproof = Readings::InsideWeatherproof::wet;
    EXPECT_EQ(conductor(builder).verdict, Verdict::breach);
    EXPECT_EQ(block(builder).verdict, Verdict::breach);
    builder.layout().readings.insideWeatherproof = Readings::InsideWeatherproof::notWet;
    EXPECT_EQ(conductor(builder).verdict, Verdict::meets);
    EXPECT_EQ(block(builder).verdict, Verdict::meets);
}

TEST(InsideAWeatherproofGutter, IsNotDisputedWhereBothReadingsMeet) {
    auto builder = weatherproof("3R");
    builder.conductorNamed("S-A").insulation = Insulation::thwn2;
    EXPECT_EQ(conductor(builder).verdict, Verdict::meets);
}

TEST(InsideAWeatherproofGutter, IsWetWhereTheEnclosureIsNotWeatherproof) {
    auto builder = weatherproof("12");
    builder.layout().readings.insideWeatherproof = Readings::InsideWeatherproof::notWet;
    EXPECT_EQ(conductor(builder).verdict, Verdict::breach);
}

TEST(InsideAWeatherproofGutter, CannotTellWithoutTheEnclosureType) {
    auto builder = weatherproof(std::nullopt);
    EXPECT_EQ(conductor(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(conductor(builder).missing, testing::ElementsAre("enclosure type of the gutter"));
    builder.layout().readings.insideWeatherproof = Readings::InsideWeatherproof::wet;
    EXPECT_EQ(conductor(builder).verdict, Verdict::breach) << "wet whichever type it is";
}

TEST(InsideAWeatherproofGutter, IsWetWhereWaterMayStandInIt) {
    // The dispute is about rain kept out; water that stands inside makes it wet whatever is
    // recorded.
    auto builder = weatherproof("4X");
    builder.layout().readings.insideWeatherproof = Readings::InsideWeatherproof::notWet;
    builder.layout().surroundings.floods = true;
    EXPECT_EQ(conductor(builder).verdict, Verdict::breach);
    EXPECT_TRUE(conductor(builder).readings.empty());
    EXPECT_EQ(block(builder).verdict, Verdict::breach);
}

TEST(InsideAWeatherproofGutter, CannotTellWithoutKnowingWhetherItFloods) {
    // By the recorded reading THHN would do, unless water stands in the gutter.
    auto builder = weatherproof("4X");
    builder.layout().readings.insideWeatherproof = Readings::InsideWeatherproof::notWet;
    builder.layout().surroundings.floods.reset();
    EXPECT_EQ(conductor(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(conductor(builder).missing, testing::ElementsAre("whether the gutter floods"));
    EXPECT_EQ(block(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(block(builder).missing, testing::ElementsAre("whether the gutter floods"));
    builder.conductorNamed("S-A").insulation = Insulation::thwn2;
    EXPECT_EQ(conductor(builder).verdict, Verdict::meets) << "would do in water too";
}

// ---- buried ---------------------------------------------------------------------------------

class InsulationInABuriedGutter : public testing::TestWithParam<InsulationRow> {};

TEST_P(InsulationInABuriedGutter, HasToBeForWetLocations) {
    auto builder = at(Location::buried, {Location::buried});
    builder.conductorNamed("S-A").insulation = GetParam().insulation;
    builder.conductorNamed("S-A").outsideDiameter = units::Inches::of(0.9);
    for (const std::optional<bool> floods : {std::optional(true), std::optional(false), {}}) {
        builder.layout().surroundings.floods = floods;
        EXPECT_EQ(conductor(builder).verdict, GetParam().wet ? Verdict::meets : Verdict::breach);
        EXPECT_EQ(conductor(builder).citation.section, "310.10(C)");
    }
}

// Underground is a wet location (Article 100); in the gutter the conductors are not in contact with
// the earth, so insulation for wet locations does: NFPA 70 310.10(C) lists THWN beside THWN-2.
// Plain THHN is not in its list.
INSTANTIATE_TEST_SUITE_P(Types,
                         InsulationInABuriedGutter,
                         testing::Values(InsulationRow{Insulation::thwn, true},
                                         InsulationRow{Insulation::thwn2, true},
                                         InsulationRow{Insulation::xhhw, true},
                                         InsulationRow{Insulation::bare, true},
                                         InsulationRow{Insulation::thhn, false},
                                         InsulationRow{Insulation::rhh, false}));

TEST(InsulationNotStated, CannotTellWhereItIsBuriedOrMayFlood) {
    auto builder = at(Location::buried, {Location::buried});
    builder.conductorNamed("S-A").insulation.reset();
    EXPECT_EQ(conductor(builder).verdict, Verdict::cannotTell);
    builder.layout().surroundings = {Location::dry, {}, {}};
    EXPECT_EQ(conductor(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(conductor(builder).missing, testing::ElementsAre("insulation of conductor S-A"));
}

TEST(InsideAWireway, IsWetWhateverReadingIsRecorded) {
    // NFPA 70 300.9: the inside of a raceway in a wet location is wet.
    auto builder = weatherproof("3R");
    builder.layout().gutter.article = GutterArticle::metalWireway;
    builder.layout().readings.insideWeatherproof = Readings::InsideWeatherproof::notWet;
    EXPECT_EQ(conductor(builder).verdict, Verdict::breach);
    EXPECT_THAT(conductor(builder).working, testing::HasSubstr("300.9"));
}

TEST(LocationLaws, AMoreCompleteListingNeverBreachesAndOrderDoesNotMatter) {
    const std::vector<Location> all = {
        Location::dry, Location::damp, Location::wet, Location::buried};
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        Random random(seed);
        std::vector<Location> listed;
        for (const Location one : all) {
            if (random.chance(0.4)) {
                listed.push_back(one);
            }
        }
        auto builder = at(all[random.below(4)], listed);
        const auto few = checkLocation(builder.build());
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        EXPECT_EQ(check_test::sortedTexts(checkLocation(builder.build())),
                  check_test::sortedTexts(few))
            << "seed " << seed;
        builder.part("splice").listing.locations = all;
        EXPECT_EQ(block(builder).verdict, Verdict::meets) << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
