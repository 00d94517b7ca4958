#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "reference/tsv.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using test::number;
using test::readTsv;
using test::TsvRow;
using testing::HasSubstr;
using units::Inches;
using units::WireSize;

constexpr Edition kEdition = Edition::nec2023;

// The row of a table that a printed range ("300-350", "8", "-") puts a size in.
bool inRange(const std::string& range, WireSize size) {
    if (range == "-") {
        return false;
    }
    const auto dash = range.find('-');
    const WireSize first = WireSize::of(range.substr(0, dash));
    const WireSize last = dash == std::string::npos ? first : WireSize::of(range.substr(dash + 1));
    return first <= size && size <= last;
}

const TsvRow* rowFor(const std::vector<TsvRow>& rows, WireSize size, bool compact) {
    for (const char* column : {"compact_aa8000", "size_all_other"}) {
        if (!compact && std::string(column) == "compact_aa8000") {
            continue;
        }
        for (const TsvRow& row : rows) {
            if (inRange(row.at(column), size)) {
                return &row;
            }
        }
    }
    return nullptr;
}

using SpaceTable =
    std::function<Lookup<BendingSpace>(WireSize size, bool compact, int wires, Edition edition)>;

// What a cell says against what the look-up answers.
void expectCell(const Lookup<BendingSpace>& found, const std::string& cell, double reduction) {
    if (cell == "-") {
        EXPECT_FALSE(found.has_value());
        return;
    }
    ASSERT_TRUE(found.has_value()) << found.error().why;
    if (cell == "NS") {
        EXPECT_FALSE(found->value.least.has_value());
        return;
    }
    ASSERT_TRUE(found->value.least.has_value());
    EXPECT_EQ(found->value.least->in(), std::stod(cell));
    EXPECT_EQ(found->value.reduction.in(), reduction);
}

// Every size, every number of wires and both kinds of stranding against the table's file.
void expectTable(const SpaceTable& table,
                 const std::string& file,
                 int mostWires,
                 const std::string& ending) {
    const auto rows = readTsv(file).rows;
    for (const bool compact : {false, true}) {
        for (const WireSize size : WireSize::all()) {
            const TsvRow* row = rowFor(rows, size, compact);
            ASSERT_NE(row, nullptr) << size.text();
            // "Not specified" is printed for one wire and holds for any number of that size.
            const bool notSpecified = row->at("w1" + ending) == "NS";
            for (int wires = 1; wires <= mostWires; ++wires) {
                SCOPED_TRACE(size.text() + (compact ? " compact, " : ", ") + std::to_string(wires));
                const std::string column = "w" + std::to_string(wires);
                const auto less = row->find(column + "_reduction_in");
                const double reduction =
                    less == row->end() || less->second == "-" ? 0.0 : std::stod(less->second);
                expectCell(table(size, compact, wires, kEdition),
                           notSpecified ? "NS" : row->at(column + ending),
                           reduction);
            }
        }
    }
}

TEST(BendingSpaceAtTerminalA, SaysFromMemoryOfTheOneCellThatIs) {
    const auto basis = [](int wires) {
        return bendingSpaceAtTerminalA(WireSize::of("2/0"), false, wires, kEdition)->source.basis;
    };
    EXPECT_EQ(basis(1), Basis::seen);
    EXPECT_EQ(basis(2), Basis::seen);
    EXPECT_EQ(basis(3), Basis::memory);
}

TEST(BendingSpaceAtTerminalA, IsTheCellOfTheTable) {
    expectTable(bendingSpaceAtTerminalA, "bending_space_at_terminals_A", 5, "");
}

TEST(BendingSpaceOppositeWallB, IsTheCellOfTheTable) {
    expectTable(bendingSpaceOppositeWallB, "bending_space_opposite_wall_B", 4, "_in");
}

TEST(BendingSpace, TellsNotSpecifiedFromNotPrinted) {
    const auto notSpecified = bendingSpaceAtTerminalA(WireSize::of("12"), false, 1, kEdition);
    ASSERT_TRUE(notSpecified.has_value());
    EXPECT_FALSE(notSpecified->value.least.has_value());
    const auto notPrinted = bendingSpaceAtTerminalA(WireSize::of("6"), false, 2, kEdition);
    ASSERT_FALSE(notPrinted.has_value());
    EXPECT_THAT(notPrinted.error().why, HasSubstr("2 wires of 6 AWG"));
    EXPECT_EQ(notPrinted.error().asked.section, "Table 312.6(A)");
}

TEST(BendingSpace, RefusesCountsThatTheTableDoesNotKnow) {
    for (const int wires : {-1, 0, 6}) {
        EXPECT_FALSE(
            bendingSpaceAtTerminalA(WireSize::of("500"), false, wires, kEdition).has_value())
            << wires;
    }
    for (const int wires : {-1, 0}) {
        EXPECT_FALSE(
            bendingSpaceOppositeWallB(WireSize::of("500"), false, wires, kEdition).has_value())
            << wires;
    }
}

TEST(BendingSpaceOppositeWallB, ReadsMoreThanFourWiresAsFour) {
    const auto four = bendingSpaceOppositeWallB(WireSize::of("500"), false, 4, kEdition);
    const auto seven = bendingSpaceOppositeWallB(WireSize::of("500"), false, 7, kEdition);
    ASSERT_TRUE(four.has_value() && seven.has_value());
    EXPECT_EQ(four->value.least, seven->value.least);
}

TEST(BendingSpace, SaysWhichColumnCompactAluminiumWasReadFrom) {
    const auto compact = bendingSpaceAtTerminalA(WireSize::of("500"), true, 1, kEdition);
    ASSERT_TRUE(compact.has_value());
    EXPECT_THAT(compact->source.note, HasSubstr("compact"));
    EXPECT_EQ(compact->source.basis, Basis::memory);
    const auto other = bendingSpaceAtTerminalA(WireSize::of("500"), false, 1, kEdition);
    EXPECT_EQ(other->source.note, "");
    EXPECT_EQ(other->source.basis, Basis::seen);
}

TEST(BendingSpace, CompactNeverAsksForMore) {
    for (const WireSize size : WireSize::all()) {
        for (int wires = 1; wires <= 4; ++wires) {
            for (const SpaceTable& table :
                 {SpaceTable(bendingSpaceAtTerminalA), SpaceTable(bendingSpaceOppositeWallB)}) {
                const auto compact = table(size, true, wires, kEdition);
                const auto other = table(size, false, wires, kEdition);
                if (compact && other && compact->value.least && other->value.least) {
                    EXPECT_LE(*compact->value.least, *other->value.least) << size.text();
                }
            }
        }
    }
}

// --- bend radius -----------------------------------------------------------------------------

struct RadiusRow {
    const char* name;
    double diameter;
    double insulation;
    BendRule rule;
    double multiple;  // 0: not published
};

void PrintTo(const RadiusRow& row, std::ostream* out) {
    *out << row.name;
}

std::string caseName(const testing::TestParamInfo<RadiusRow>& row) {
    return row.param.name;
}

class BendRadiusMultiple : public testing::TestWithParam<RadiusRow> {};

TEST_P(BendRadiusMultiple, StepsWhereTheTableSteps) {
    const RadiusRow& row = GetParam();
    const auto found = bendRadiusMultiple(
        Inches::of(row.diameter), Inches::of(row.insulation), row.rule, kEdition);
    ASSERT_EQ(found.has_value(), row.multiple != 0.0);
    if (found) {
        EXPECT_EQ(found->value, row.multiple);
    }
}

// training: ICEA S-95-658/NEMA WC 70 as in tests/reference/tables/bend_radius_multiples.tsv. at
// rest and installing: a trade table that steps at 25 mm (0.98425 in). over 1000 V: NFPA 70 300.34,
// 305.5.
// clang-format off
const RadiusRow kRadiusRows[] = {
    {"Thin",               0.486,  0.080, BendRule::training,   4},
    {"AtOneInch",          1.000,  0.080, BendRule::training,   4},
    {"JustOverOneInch",    1.001,  0.080, BendRule::training,   5},
    {"AtTwoInch",          2.000,  0.080, BendRule::training,   5},
    {"JustOverTwoInch",    2.001,  0.080, BendRule::training,   6},
    {"AtThin",             0.900,  0.156, BendRule::training,   4},
    {"JustOverThin",       0.900,  0.157, BendRule::training,   5},
    {"MiddleLarger",       1.500,  0.200, BendRule::training,   6},
    {"MiddleLargest",      2.500,  0.200, BendRule::training,   7},
    {"AtThick",            1.500,  0.315, BendRule::training,   6},
    {"JustOverThick",      1.500,  0.316, BendRule::training,   7},
    {"ThickLargest",       2.500,  0.400, BendRule::training,   8},
    {"ThickButThinCable",  0.900,  0.316, BendRule::training,   0},
    {"RestUnderStep",      0.984,  0.080, BendRule::atRest,     4},
    {"RestOverStep",       0.985,  0.080, BendRule::atRest,     6},
    {"InstallUnderStep",   0.984,  0.080, BendRule::installing, 6},
    {"InstallOverStep",    0.985,  0.080, BendRule::installing, 9},
    {"HighVoltage",        0.486,  0.080, BendRule::over1000V,  8},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Table, BendRadiusMultiple, testing::ValuesIn(kRadiusRows), caseName);

TEST(BendRadiusMultiple, CitesTheSectionOfTheEditionForHighVoltage) {
    const auto cited = [](Edition edition) {
        return bendRadiusMultiple(Inches::of(1.0), Inches::of(0.1), BendRule::over1000V, edition)
            ->source.section;
    };
    EXPECT_EQ(cited(Edition::nec2017), "300.34");
    EXPECT_EQ(cited(Edition::nec2020), "300.34");
    EXPECT_EQ(cited(Edition::nec2023), "305.5");
}

}  // namespace
}  // namespace gw::standards
