#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "base/read_file.h"
#include "core/support/json_schema.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"
#include "takeoff/takeoff.h"

/// The published schema against the takeoffs that are printed.
namespace gw::takeoff {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

const test::JsonSchema& schema() {
    static const test::JsonSchema kSchema("takeoff");
    return kSchema;
}

json takeoffOf(const fs::path& layoutFile) {
    static const parts::Shelf kShelf = test::shippedShelf();
    const auto layout =
        files::readLayout(readFile(layoutFile.string()).value(), layoutFile.string(), kShelf);
    const auto built = geometry::build(layout.value(), kShelf);
    std::vector<Table> tables;
    for (const auto name : tableNames()) {
        tables.push_back(tableNamed(name, built));
    }
    return json::parse(jsonTakeoff(tables, built.layout));
}

TEST(TakeoffSchema, AllowsTheTakeoffOfEverySample) {
    std::size_t samples = 0;
    for (const auto& folder : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "samples")) {
        if (fs::exists(folder.path() / "layout.json")) {
            EXPECT_EQ(schema().complaint(takeoffOf(folder.path() / "layout.json")), "")
                << folder.path();
            ++samples;
        }
    }
    EXPECT_GE(samples, 5U);
}

TEST(TakeoffSchema, KnowsTheNamesOfEveryTableInOrder) {
    const json::json_pointer place("/definitions/table/properties/name/enum");
    const auto names = tableNames();
    EXPECT_EQ(schema().text().at(place).get<std::vector<std::string>>(),
              std::vector<std::string>(names.begin(), names.end()));
}

/// Every member of every row is a column, and a column with a unit has numbers.
TEST(TakeoffSchema, RowsHaveTheColumnsThatAreNamed) {
    const auto takeoff = takeoffOf(fs::path(GW_SOURCE_DIR) / "samples/five-tenants/layout.json");
    for (const auto& table : takeoff.at("tables")) {
        std::map<std::string, bool> hasUnit;
        for (const auto& column : table.at("columns")) {
            hasUnit[column.at("name").get<std::string>()] = column.contains("unit");
        }
        for (const auto& row : table.at("rows")) {
            for (const auto& [name, value] : row.items()) {
                ASSERT_EQ(hasUnit.count(name), 1U) << name;
                EXPECT_TRUE(!hasUnit[name] || value.is_number()) << name;
            }
        }
    }
}

struct BadTakeoff {
    const char* name;
    const char* place;  ///< JSON pointer of what is replaced in a good takeoff …
    const char* value;  ///< … by this JSON; empty: it is taken out
};

void PrintTo(const BadTakeoff& row, std::ostream* out) {
    *out << row.place << " = " << row.value;
}

std::string badTakeoffName(const testing::TestParamInfo<BadTakeoff>& row) {
    return row.param.name;
}

class TakeoffOfBadShape : public testing::TestWithParam<BadTakeoff> {};

TEST_P(TakeoffOfBadShape, IsRefused) {
    json takeoff = takeoffOf(fs::path(GW_SOURCE_DIR) / "samples/five-tenants/layout.json");
    ASSERT_EQ(schema().complaint(takeoff), "");
    const json::json_pointer place(GetParam().place);
    if (*GetParam().value == '\0') {
        ASSERT_EQ(takeoff.at(place.parent_pointer()).erase(place.back()), 1U);
    } else {
        takeoff[place] = json::parse(GetParam().value);
    }
    EXPECT_FALSE(schema().accepts(takeoff));
}

// clang-format off
const BadTakeoff kBadTakeoffs[] = {
    {"OtherFormat",    "/format",                  R"("gutterwright-report")"},
    {"LaterVersion",   "/version",                 "2"},
    {"NoTitle",        "/title",                   ""},
    {"UnknownMember",  "/reels",                   "[]"},
    {"UnknownTable",   "/tables/0/name",           R"("nails")"},
    {"NoBasis",        "/tables/0/basis",          ""},
    {"ColumnUnnamed",  "/tables/0/columns/0/name", ""},
    {"UnknownUnit",    "/tables/0/columns/7/unit", R"("furlong")"},
    {"RowIsAList",     "/tables/0/rows/0",         "[1]"},
    {"CellIsNull",     "/tables/0/rows/0/Cut",     "null"},
    {"NoteEmpty",      "/tables/0/notes/0",        R"("")"},
    {"NoCautions",     "/cautions",                "[]"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Rows, TakeoffOfBadShape, testing::ValuesIn(kBadTakeoffs), badTakeoffName);

}  // namespace
}  // namespace gw::takeoff
