#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "reference/tsv.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using test::isBlank;
using test::number;
using test::readTsv;
using test::TsvRow;
using testing::HasSubstr;
using units::WireSize;

constexpr Edition kEdition = Edition::nec2023;

struct Ends {
    double least;
    double most;
};

// The smallest and largest area of a row: over (exclusive) and through (inclusive), circular mils.
Ends endsOf(const TsvRow& row, const std::string& metal) {
    const double over = number(row, metal + "_over_cmil");
    const bool open = isBlank(row, metal + "_through_cmil");
    return {over + 1.0, open ? over + 1.0 : number(row, metal + "_through_cmil")};
}

TEST(BondingJumper, IsTheRowAtBothItsEnds) {
    for (const TsvRow& row : readTsv("bonding_jumper").rows) {
        for (const Metal metal : {Metal::copper, Metal::aluminium}) {
            const std::string name = metal == Metal::copper ? "cu" : "al";
            if (row.at(name + "_jumper") == "12.5%") {
                continue;
            }
            const Ends ends = endsOf(row, name);
            for (const double area : {ends.least, ends.most}) {
                const auto found = bondingJumper(area, metal, metal, kEdition);
                ASSERT_TRUE(found.has_value()) << area;
                EXPECT_EQ(found->value.size->label(), row.at(name + "_jumper")) << area;
                EXPECT_EQ(found->source.section, "Table 250.102(C)(1)");
            }
        }
    }
}

struct ShareRow {
    const char* name;
    double ungrounded;  // circular mils
    Metal metal;
    const char* size;  // empty: larger than any
    double circularMils;
};

void PrintTo(const ShareRow& row, std::ostream* out) {
    *out << row.name;
}

std::string caseName(const testing::TestParamInfo<ShareRow>& row) {
    return row.param.name;
}

class BondingJumperShare : public testing::TestWithParam<ShareRow> {};

TEST_P(BondingJumperShare, IsTwelveAndAHalfPercentThenTheNextSize) {
    const ShareRow& row = GetParam();
    const auto found = bondingJumper(row.ungrounded, row.metal, row.metal, kEdition);
    ASSERT_TRUE(found.has_value());
    EXPECT_DOUBLE_EQ(found->value.circularMils, row.circularMils);
    ASSERT_EQ(found->value.size.has_value(), std::string(row.size) != "");
    if (found->value.size) {
        EXPECT_EQ(found->value.size->label(), row.size);
    }
}

// NFPA 70 Table 250.102(C)(1), last row: 0.125 x the ungrounded area.
// clang-format off
const ShareRow kShareRows[] = {
    {"AtTheTablesEnd",  1100e3,  Metal::copper,    "2/0",  133100},    // the row before: 2/0
    {"JustBeyondIt",    1100001, Metal::copper,    "3/0",  137500.125}, // over 2/0 (133100)
    {"FourOf500",       2000e3,  Metal::copper,    "250",  250e3},     // 0.125 x 2000 kcmil, exact
    {"FiveOf600",       3000e3,  Metal::copper,    "400",  375e3},     // next size above 375 kcmil
    {"AluminiumEnd",    1750e3,  Metal::aluminium, "4/0",  211600},    // the row before: 4/0
    {"AluminiumBeyond", 2000e3,  Metal::aluminium, "250",  250e3},
    {"LargestSize",     16000e3, Metal::copper,    "2000", 2000e3},
    {"BeyondAllSizes",  16001e3, Metal::copper,    "",     2000125},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Table, BondingJumperShare, testing::ValuesIn(kShareRows), caseName);

TEST(BondingJumper, NeedsAnUngroundedConductor) {
    for (const double area : {0.0, -1.0, std::nan("")}) {
        EXPECT_FALSE(bondingJumper(area, Metal::copper, Metal::copper, kEdition).has_value())
            << area;
    }
}

TEST(BondingJumper, NeverShrinksWithTheUngroundedArea) {
    for (const Metal metal : {Metal::copper, Metal::aluminium}) {
        double before = 0.0;
        for (double area = 1000.0; area < 5e6; area += 1000.0) {
            const auto found = bondingJumper(area, metal, metal, kEdition);
            ASSERT_TRUE(found.has_value());
            ASSERT_GE(found->value.size->circularMils(), before) << area;
            before = found->value.size->circularMils();
        }
    }
}

TEST(GroundingElectrodeConductor, IsTheRowAtBothItsEnds) {
    for (const TsvRow& row : readTsv("grounding_electrode").rows) {
        for (const Metal metal : {Metal::copper, Metal::aluminium}) {
            const std::string name = metal == Metal::copper ? "cu" : "al";
            const Ends ends = endsOf(row, name);
            for (const double area : {ends.least, ends.most}) {
                const auto found = groundingElectrodeConductor(area, metal, kEdition);
                ASSERT_TRUE(found.has_value()) << area;
                EXPECT_EQ(found->value.label(), row.at(name + "_gec")) << area;
                EXPECT_EQ(found->source.section, "Table 250.66");
            }
        }
    }
    EXPECT_FALSE(groundingElectrodeConductor(0.0, Metal::copper, kEdition).has_value());
}

TEST(EquipmentGroundingConductor, IsTheFirstRowNotBelowTheDevice) {
    double below = 0.0;
    for (const TsvRow& row : readTsv("equipment_grounding").rows) {
        const double rating = number(row, "ocpd_a");
        for (const double device : {below + 1.0, rating}) {
            EXPECT_EQ(equipmentGroundingConductor(device, Metal::copper, kEdition)->value.label(),
                      row.at("cu"))
                << device;
            EXPECT_EQ(
                equipmentGroundingConductor(device, Metal::aluminium, kEdition)->value.label(),
                row.at("al"))
                << device;
        }
        below = rating;
    }
}

// Was answered "the table ends at 6000 A" for a device of no rating too.
TEST(EquipmentGroundingConductor, SaysWhyItHasNone) {
    const auto beyond = equipmentGroundingConductor(6001.0, Metal::copper, kEdition);
    ASSERT_FALSE(beyond.has_value());
    EXPECT_THAT(beyond.error().why, HasSubstr("6000 A"));
    for (const double device : {0.0, -20.0, std::nan("")}) {
        const auto none = equipmentGroundingConductor(device, Metal::copper, kEdition);
        ASSERT_FALSE(none.has_value());
        EXPECT_THAT(none.error().why, HasSubstr("no device"));
    }
}

}  // namespace
}  // namespace gw::standards
