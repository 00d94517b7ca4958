#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reference/tsv.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using test::isBlank;
using test::number;
using test::readTsv;
using testing::HasSubstr;
using units::WireSize;

constexpr Edition kEdition = Edition::nec2023;

TEST(Ampacity, IsTheCellOfTheTable) {
    const auto rows = readTsv("ampacity_30C").rows;
    ASSERT_EQ(rows.size(), WireSize::all().size());
    for (const auto& row : rows) {
        const WireSize size = WireSize::of(row.at("size"));
        for (const int celsius : {60, 75, 90}) {
            for (const Metal metal : allMetals()) {
                const std::string column =
                    (metal == Metal::copper ? "cu" : "al") + std::to_string(celsius);
                const auto found = ampacity(size, metal, celsius, kEdition);
                ASSERT_EQ(found.has_value(), !isBlank(row, column)) << size.text() << column;
                if (found) {
                    EXPECT_EQ(found->value, number(row, column)) << size.text() << column;
                }
            }
        }
        EXPECT_FALSE(ampacity(size, Metal::copper, 80, kEdition).has_value());
    }
}

TEST(AdjustmentFactor, IsThatOfItsRangeAtBothEnds) {
    for (const auto& row : readTsv("adjustment_more_than_three").rows) {
        const int from = static_cast<int>(number(row, "n_from"));
        const int to = isBlank(row, "n_to") ? 1000 : static_cast<int>(number(row, "n_to"));
        for (const int count : {from, to}) {
            EXPECT_EQ(adjustmentFactor(count, kEdition)->value, number(row, "factor")) << count;
        }
    }
    EXPECT_FALSE(adjustmentFactor(0, kEdition).has_value());
    EXPECT_FALSE(adjustmentFactor(-3, kEdition).has_value());
}

TEST(AmbientFactor, IsThatOfItsRangeAtBothEnds) {
    for (const auto& row : readTsv("ambient_correction").rows) {
        for (const int celsius : {60, 75, 90}) {
            const std::string column = "factor_" + std::to_string(celsius);
            const double to = number(row, "c_to");
            const double from = isBlank(row, "c_from") ? -40.0 : number(row, "c_from");
            for (const double ambient : {from, to}) {
                const auto found = ambientFactor(ambient, celsius, kEdition);
                ASSERT_EQ(found.has_value(), !isBlank(row, column)) << ambient << column;
                if (found) {
                    EXPECT_EQ(found->value, number(row, column)) << ambient << column;
                }
            }
        }
    }
}

TEST(AmbientFactor, BetweenTwoRangesIsThatOfTheHotter) {
    EXPECT_EQ(ambientFactor(30.0, 75, kEdition)->value, 1.00);
    EXPECT_EQ(ambientFactor(30.4, 75, kEdition)->value, 0.94);
    EXPECT_EQ(ambientFactor(31.0, 75, kEdition)->value, 0.94);
    EXPECT_FALSE(ambientFactor(85.5, 90, kEdition).has_value());
    EXPECT_FALSE(ambientFactor(25.0, 80, kEdition).has_value());
}

struct EditionRow {
    Edition edition;
    const char* ampacity;
    const char* adjustment;
    const char* ambient;
};

// NFPA 70: the tables' numbers in each edition (2026 carried over).
constexpr EditionRow kEditionRows[] = {
    {Edition::nec2017, "Table 310.15(B)(16)", "Table 310.15(B)(3)(a)", "Table 310.15(B)(2)(a)"},
    {Edition::nec2020, "Table 310.16", "Table 310.15(C)(1)", "Table 310.15(B)(1)"},
    {Edition::nec2023, "Table 310.16", "Table 310.15(C)(1)", "Table 310.15(B)(1)(1)"},
    {Edition::nec2026, "Table 310.16", "Table 310.15(C)(1)", "Table 310.15(B)(1)(1)"},
};

TEST(AmpacityTables, AreCitedByTheNumberOfTheEdition) {
    for (const EditionRow& row : kEditionRows) {
        const auto copper = ampacity(WireSize::of("1/0"), Metal::copper, 75, row.edition);
        const auto adjustment = adjustmentFactor(7, row.edition);
        const auto ambient = ambientFactor(40.0, 90, row.edition);
        EXPECT_EQ(copper->source.section, row.ampacity);
        EXPECT_EQ(adjustment->source.section, row.adjustment);
        EXPECT_EQ(ambient->source.section, row.ambient);
        EXPECT_EQ(copper->source.standard, "NFPA 70-" + std::string(editionText(row.edition)));
        EXPECT_EQ(copper->value, 150.0);  // the values are alike in every edition
        const bool noted = copper->source.note.find("not checked for 2026") != std::string::npos;
        EXPECT_EQ(noted, row.edition == Edition::nec2026);
    }
}

TEST(Impedance, IsTheCellOfTheTable) {
    struct Conduit {
        ConduitMaterial material;
        const char* ending;
        const char* reactance;
    };
    constexpr Conduit kConduits[] = {{ConduitMaterial::pvc, "_pvc", "x_pvc_al"},
                                     {ConduitMaterial::aluminium, "_al", "x_pvc_al"},
                                     {ConduitMaterial::steel, "_steel", "x_steel"}};
    for (const auto& row : readTsv("impedance_table_9").rows) {
        const WireSize size = WireSize::of(row.at("size"));
        for (const Conduit& conduit : kConduits) {
            for (const Metal metal : {Metal::copper, Metal::aluminium}) {
                const std::string column =
                    std::string(metal == Metal::copper ? "r_cu" : "r_al") + conduit.ending;
                const auto found = impedance(size, metal, conduit.material, kEdition);
                ASSERT_EQ(found.has_value(), !isBlank(row, column)) << size.text() << column;
                if (found) {
                    EXPECT_EQ(found->value.ohmsPerKft, number(row, column)) << size.text();
                    EXPECT_EQ(found->value.reactancePerKft, number(row, conduit.reactance))
                        << size.text();
                }
            }
        }
    }
    EXPECT_FALSE(
        impedance(WireSize::of("700"), Metal::copper, ConduitMaterial::pvc, kEdition).has_value());
}

}  // namespace
}  // namespace gw::standards
