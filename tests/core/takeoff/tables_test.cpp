#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "core/support/sample_layouts.h"
#include "core/takeoff/one_conductor.h"
#include "support/drawn_layout.h"
#include "takeoff/strip_and_torque.h"
#include "takeoff/takeoff.h"
#include "takeoff/weights.h"

namespace gw::takeoff {
namespace {

geometry::BuiltLayout built(const test::Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

bool says(const Table& table, const std::string& text) {
    return toText(table, units::LengthUnit::inch).find(text) != std::string::npos;
}

// ---- what every table keeps -------------------------------------------------------------------

TEST(EveryTable, IsWholeAndTheSameEachTime) {
    const auto layout = test::drawnLayout();
    for (const auto name : tableNames()) {
        SCOPED_TRACE(name);
        const auto table = tableNamed(name, layout);
        EXPECT_EQ(table.name, name);
        EXPECT_FALSE(table.basis.empty());
        EXPECT_FALSE(table.rows.empty());
        std::set<std::string> heads;
        for (const auto& column : table.columns) {
            EXPECT_TRUE(heads.insert(column.name).second) << column.name;
        }
        for (const auto& row : table.rows) {
            ASSERT_EQ(row.size(), table.columns.size());
            for (std::size_t i = 0; i < row.size(); ++i) {
                const bool words = table.columns[i].kind == Kind::text;
                EXPECT_FALSE(!words && std::holds_alternative<std::string>(row[i]));
                EXPECT_FALSE(words && std::holds_alternative<double>(row[i]));
            }
        }
        const auto again = tableNamed(name, test::drawnLayout());
        EXPECT_EQ(toCsv(table), toCsv(again));
        EXPECT_EQ(toJson(table).text(), toJson(again).text());
        EXPECT_EQ(toText(table, units::LengthUnit::inch), toText(again, units::LengthUnit::inch));
    }
}

TEST(EveryTable, OfAnEmptyGutterIsFineToo) {
    for (const auto name : tableNames()) {
        EXPECT_NO_FATAL_FAILURE(toCsv(tableNamed(name, built(test::emptyGutter()))));
    }
}

/// A reader of RFC 4180 by the letter of its grammar.
std::vector<std::vector<std::string>> readCsv(const std::string& csv) {
    std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        if (quoted) {
            if (csv[i] == '"' && i + 1 < csv.size() && csv[i + 1] == '"') {
                rows.back().back() += csv[i++];
            } else if (csv[i] == '"') {
                quoted = false;
            } else {
                rows.back().back() += csv[i];
            }
        } else if (csv[i] == '"') {
            quoted = true;
        } else if (csv[i] == ',') {
            rows.back().emplace_back();
        } else if (csv[i] == '\r' && csv[i + 1] == '\n') {
            ++i;
            rows.emplace_back(1);
        } else {
            rows.back().back() += csv[i];
        }
    }
    rows.pop_back();  // what follows the last line's end
    return rows;
}

TEST(Csv, ReadsBackToTheSameCells) {
    const Table table{"t",
                      "T",
                      "B",
                      {{"Plain"}, {"With, comma"}, {"In", Kind::length}},
                      {{std::string("a"), std::string("say \"so\""), 0.1},
                       {std::string("line\r\nbreak"), std::string("7\" x 8\""), Cell()},
                       {Cell(), std::string(",,"), 1.0 / 3.0}}};
    const auto rows = readCsv(toCsv(table));
    ASSERT_EQ(rows.size(), 4U);
    EXPECT_EQ(rows[0], (std::vector<std::string>{"Plain", "With, comma", "In (in)"}));
    EXPECT_EQ(rows[1], (std::vector<std::string>{"a", "say \"so\"", "0.1"}));
    EXPECT_EQ(rows[2], (std::vector<std::string>{"line\r\nbreak", "7\" x 8\"", ""}));
    EXPECT_EQ(std::stod(rows[3][2]), 1.0 / 3.0);
}

TEST(Csv, EveryTableReadsBackWithItsColumns) {
    const auto layout = test::drawnLayout();
    for (const auto name : tableNames()) {
        const auto table = tableNamed(name, layout);
        const auto rows = readCsv(toCsv(table));
        ASSERT_EQ(rows.size(), table.rows.size() + 1) << name;
        for (const auto& row : rows) {
            EXPECT_EQ(row.size(), table.columns.size()) << name;
        }
    }
}

TEST(Json, IsJsonWithEveryTable) {
    const auto layout = test::drawnLayout();
    std::vector<Table> tables;
    for (const auto name : tableNames()) {
        tables.push_back(tableNamed(name, layout));
    }
    const auto json = nlohmann::json::parse(jsonTakeoff(tables, layout.layout));
    ASSERT_EQ(json.at("tables").size(), tables.size());
    for (std::size_t i = 0; i < tables.size(); ++i) {
        EXPECT_EQ(json.at("tables")[i].at("rows").size(), tables[i].rows.size());
    }
}

TEST(Text, LeavesOutWhatNobodyKnowsButKeepsBoxes) {
    const Table table{"t",
                      "T",
                      "B",
                      {{"Known"}, {"Unknown", Kind::length}, {"Date", Kind::box}},
                      {{std::string("a"), Cell(), Cell()}}};
    const auto text = toText(table, units::LengthUnit::inch);
    EXPECT_EQ(text.find("Unknown"), std::string::npos);
    EXPECT_NE(text.find("Date"), std::string::npos);
    EXPECT_NE(text.find("____"), std::string::npos);
}

// ---- strip and torque -------------------------------------------------------------------------

TEST(StripAndTorque, IsThePartsForTheSize) {
    auto sample = test::oneTap();
    auto& screw = sample.part("row").screws.front();
    screw.drive = "hex 3/16 in";
    screw.torque = {{units::WireSize::of("14"), units::WireSize::of("8"), 40.0},
                    {units::WireSize::of("6"), units::WireSize::of("2/0"), 120.0}};
    const auto rows = stripAndTorque(built(sample));
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].poundInches, 120.0);
    EXPECT_EQ(rows[0].drive, "hex 3/16 in");
    const auto table = stripAndTorqueTable(built(sample));
    EXPECT_TRUE(says(table, "Torque (lbf-in)"));
    EXPECT_TRUE(says(table, "120"));
    EXPECT_FALSE(says(table, "Missing"));
}

TEST(StripAndTorque, WhatThePartDoesNotStateIsOfTheInstructions) {
    auto sample = test::oneTap();
    sample.part("row").screws.front().torque.clear();
    EXPECT_FALSE(stripAndTorque(built(sample))[0].poundInches);
    EXPECT_TRUE(
        says(stripAndTorqueTable(built(sample)), "torque: from the connector's instructions"));
    sample.part("row").screws.clear();
    const auto rows = stripAndTorque(built(sample));
    ASSERT_EQ(rows.size(), 1U);  // the conductor is still told
    EXPECT_TRUE(rows[0].screw.empty());
    std::get<layout::InPort>(sample.conductor("c1").to).strip.reset();
    for (auto& port : sample.part("row").ports) {
        port.stripLength.reset();
    }
    EXPECT_TRUE(says(stripAndTorqueTable(built(sample)), "torque and strip: from the connector's"));
}

TEST(StripAndTorque, EveryScrewOfEveryConductorInAPortHasARow) {
    const auto layout = test::drawnLayout();
    std::size_t landed = 0;
    for (const auto& conductor : layout.conductors) {
        for (const auto* end : {&conductor.from, &conductor.to}) {
            if (end->port) {
                const auto& part = *layout.blocks[*end->block].part;
                landed += static_cast<std::size_t>(std::count_if(
                    part.screws.begin(), part.screws.end(), [&](const parts::Screw& screw) {
                        return screw.port == part.ports[*end->port].name;
                    }));
            }
        }
    }
    EXPECT_GT(landed, 0U);
    EXPECT_EQ(stripAndTorque(layout).size(), landed);
}

// ---- landing order ----------------------------------------------------------------------------

TEST(LandingTable, HasEveryConductorOnceInSteps) {
    const auto layout = test::drawnLayout();
    const auto table = tableNamed("landing-order", layout);
    std::set<std::string> tags;
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        EXPECT_EQ(std::get<double>(table.rows[i][0]), static_cast<double>(i + 1));
        tags.insert(std::get<std::string>(table.rows[i][2]));
    }
    EXPECT_EQ(table.rows.size(), layout.conductors.size());
    EXPECT_EQ(tags.size(), layout.conductors.size());
}

// ---- materials --------------------------------------------------------------------------------

TEST(Materials, CountsBlocksAndTheScrewsOfThoseThatAreBoltedDown) {
    auto sample = test::oneTap();
    sample.part("row").priceDollars = 12.5;
    sample.addBlock("B", "row", {10, 4, 0});
    sample.block("A").mounted = true;
    const auto table = tableNamed("materials", built(sample));
    EXPECT_TRUE(says(table, "The prices that are known come to $25.00;"));
    const auto screws = std::find_if(table.rows.begin(), table.rows.end(), [](const auto& row) {
        return std::get<std::string>(row[0]).find("mounting screw") == 0;
    });
    ASSERT_NE(screws, table.rows.end());
    EXPECT_EQ(std::get<double>((*screws)[1]), 2.0);  // of block A alone
}

TEST(Materials, NamesWhatIsNotStatedAndSoNotCounted) {
    auto sample = test::oneTap();
    sample.block("A").mounted.reset();
    sample.entry("in").racewayLength.reset();
    sample.entry("in").bondedBy.reset();
    const std::string what[] = {"may be bolted down or not: A.",
                                "conductor in the raceways beyond the entries: in.",
                                "what bonds the raceways at the entries: in."};
    for (const auto& text : what) {
        EXPECT_TRUE(says(tableNamed("materials", built(sample)), text)) << text;
    }
    sample.block("A").mounted = false;
    sample.entry("in").racewayLength = units::Inches::of(24.0);
    sample.entry("in").bondedBy = layout::BondedBy::threadedHub;
    EXPECT_FALSE(says(tableNamed("materials", built(sample)), "Not counted"));
}

/// 3 at $25.875 were once $77.63 beside a price of $25.88.
TEST(Materials, LinesAreThePrintedPriceTimesTheQuantity) {
    auto sample = test::oneTap();
    sample.part("row").priceDollars = 25.875;
    sample.addBlock("B", "row", {10, 4, 0});
    sample.addBlock("C", "row", {20, 4, 0});
    const auto table = tableNamed("materials", built(sample));
    EXPECT_TRUE(says(table, "25.88"));
    EXPECT_TRUE(says(table, "come to $77.64;"));
}

// ---- labels -----------------------------------------------------------------------------------

TEST(Labels, AreAsManyAsAreBought) {
    const auto layout = test::drawnLayout();
    double labels = 0.0;
    for (const auto& row : tableNamed("labels", layout).rows) {
        labels += std::get<double>(row.back());
    }
    double bought = 0.0;
    for (const auto& row : tableNamed("materials", layout).rows) {
        bought += std::get<std::string>(row[0]).find("label, ") == 0 ? std::get<double>(row[1]) : 0;
    }
    EXPECT_GT(labels, 0.0);
    EXPECT_EQ(labels, bought);
}

TEST(Labels, SayWhatATapSuppliesOrThatItIsNotStated) {
    auto sample = test::oneTap();
    sample.circuit("feed").joins = layout::CircuitId("service");
    sample.circuit("feed").supplies.reset();
    EXPECT_TRUE(says(tableNamed("labels", built(sample)), "supplies is not stated"));
    sample.circuit("feed").supplies = "Boat hall";
    EXPECT_TRUE(says(tableNamed("labels", built(sample)), "Boat hall"));
    EXPECT_FALSE(says(tableNamed("labels", built(sample)), "not stated: its labels"));
}

// ---- weights ----------------------------------------------------------------------------------

struct Weight {
    const char* name;
    const char* size;
    standards::Metal metal;
    standards::Insulation insulation;
    double poundsPerThousandFeet;
    double percent;  ///< tolerance
};

class ConductorWeight : public testing::TestWithParam<Weight> {};

TEST_P(ConductorWeight, AgreesWithThePublishedOne) {
    const auto& given = GetParam();
    test::OneConductor one;
    one.size = given.size;
    one.metal = given.metal;
    one.insulation = given.insulation;
    const auto layout = test::oneConductor(one);
    const double pounds = poundsPerThousandFeet(
        layout.layout.conductors[0], layout.conductors[0].diameter, standards::Edition::nec2023);
    EXPECT_NEAR(
        pounds, given.poundsPerThousandFeet, given.poundsPerThousandFeet * given.percent / 100.0);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Published, ConductorWeight, testing::Values(
    // Copper THHN as a cable maker's data sheet prints it, lb for 1,000 ft.
    Weight{"thhn1_0", "1/0", standards::Metal::copper, standards::Insulation::thhn, 372, 0.5},
    Weight{"thhn2_0", "2/0", standards::Metal::copper, standards::Insulation::thhn, 462, 0.5},
    Weight{"thhn3_0", "3/0", standards::Metal::copper, standards::Insulation::thhn, 575, 0.5},
    Weight{"thhn4_0", "4/0", standards::Metal::copper, standards::Insulation::thhn, 716, 0.5},
    Weight{"thhn250", "250", standards::Metal::copper, standards::Insulation::thhn, 846, 1.5},
    // By hand, 500 kcmil aluminium XHHW: 469.4 of metal and 72.3 of insulation.
    Weight{"xhhw500", "500", standards::Metal::aluminium, standards::Insulation::xhhw, 541.7, 0.5}),
    [](const auto& tested) { return std::string(tested.param.name); });
// clang-format on

/// 16 ga is 2.500 lb/ft² by the manufacturers' standard gage. 8 x 8 x 48: 11.5556 ft² with cover
/// and ends, 28.8889 lb; 12 x 12 x 96: 34 ft², 85 lb.
TEST(SheetWeightOf, StandardSectionsAgreesWithTheGageTable) {
    layout::Gutter gutter;
    gutter.sheet = units::Inches::of(0.0598);
    gutter.inside = {48, 8, 8};
    EXPECT_NEAR(sheetWeight(gutter)->trough + sheetWeight(gutter)->cover, 28.8889, 0.03);
    gutter.inside = {96, 12, 12};
    EXPECT_NEAR(sheetWeight(gutter)->trough + sheetWeight(gutter)->cover, 85.0, 0.1);
    EXPECT_NEAR(sheetWeight(gutter)->cover, 8.0 * 2.5, 0.05);
    gutter.sheet.reset();
    EXPECT_FALSE(sheetWeight(gutter));
    gutter.sheet = units::Inches::of(0.1);
    gutter.material = layout::GutterMaterial::nonmetallic;
    EXPECT_FALSE(sheetWeight(gutter));
}

TEST(WeightTable, SaysWhatIsNotStated) {
    const auto table = tableNamed("weights", built(test::oneTap()));
    EXPECT_TRUE(says(table, "The weight of part row is not stated."));
    EXPECT_TRUE(says(table, "The gutter's own weight is not known"));
    EXPECT_TRUE(says(table, "Lift caution"));
    auto sample = test::oneTap();
    EXPECT_FALSE(says(tableNamed("weights", built(sample)), "counted as copper"));
    sample.conductor("c1").metal.reset();
    EXPECT_TRUE(says(tableNamed("weights", built(sample)), "not stated of c1: counted as copper"));
}

}  // namespace
}  // namespace gw::takeoff
