#include <gmock/gmock.h>
#include <gtest/gtest.h>

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

std::map<std::string, TsvRow> bySize(const std::string& file) {
    std::map<std::string, TsvRow> rows;
    for (const TsvRow& row : readTsv(file).rows) {
        rows[row.at("size")] = row;
    }
    return rows;
}

struct FamilyRow {
    Insulation insulation;
    const char* family;   // as printed in Table 5
    const char* compact;  // its columns of Table 5A, or none
};

// clang-format off
constexpr FamilyRow kFamilies[] = {
    {Insulation::thhn,        "THHN/THWN/THWN-2",                      "thhn"},
    {Insulation::thwn,        "THHN/THWN/THWN-2",                      "thhn"},
    {Insulation::thwn2,       "THHN/THWN/THWN-2",                      "thhn"},
    {Insulation::xhhw,        "XHHW/XHHW-2/XHH",                       "xhhw"},
    {Insulation::xhhw2,       "XHHW/XHHW-2/XHH",                       "xhhw"},
    {Insulation::xhh,         "XHHW/XHHW-2/XHH",                       "xhhw"},
    {Insulation::tw,          "TW/THW/THHW/THW-2",                     nullptr},
    {Insulation::thw,         "TW/THW/THHW/THW-2",                     "thw"},
    {Insulation::thhw,        "TW/THW/THHW/THW-2",                     "thw"},
    {Insulation::thw2,        "TW/THW/THHW/THW-2",                     "thw"},
    {Insulation::rhh,         "RHH/RHW/RHW-2 with outer covering",     nullptr},
    {Insulation::rhw,         "RHH/RHW/RHW-2 with outer covering",     nullptr},
    {Insulation::rhw2,        "RHH/RHW/RHW-2 with outer covering",     nullptr},
    {Insulation::rhhNoCover,  "RHH/RHW/RHW-2 without outer covering",  nullptr},
    {Insulation::rhwNoCover,  "RHH/RHW/RHW-2 without outer covering",  nullptr},
    {Insulation::rhw2NoCover, "RHH/RHW/RHW-2 without outer covering",  nullptr},
};
// clang-format on

TEST(InsulatedConductor, IsTheRowOfTable5OrNone) {
    std::map<std::string, TsvRow> printed;
    for (const TsvRow& row : readTsv("conductor_insulated").rows) {
        printed[row.at("family") + "|" + row.at("size")] = row;
    }
    for (const FamilyRow& family : kFamilies) {
        for (const WireSize size : WireSize::all()) {
            SCOPED_TRACE(size.text() + " " + std::string(insulationText(family.insulation)));
            const auto found =
                insulatedConductor(size, family.insulation, Stranding::classB, kEdition);
            const auto row =
                printed.find(std::string(family.family) + "|" + std::string(size.label()));
            ASSERT_EQ(found.has_value(), row != printed.end());
            if (found) {
                EXPECT_EQ(found->value.diameter.in(), number(row->second, "diameter_in"));
                EXPECT_EQ(found->value.area.in2(), number(row->second, "area_in2"));
                EXPECT_EQ(found->source.section, "Chapter 9 Table 5");
                EXPECT_EQ(found->source.standard, "NFPA 70-2023");
            } else {
                EXPECT_THAT(found.error().why, HasSubstr(size.text()));
            }
        }
    }
}

TEST(InsulatedConductor, OfCompactStrandingIsTheRowOfTable5AOrNone) {
    const auto printed = bySize("conductor_compact_al");
    for (const FamilyRow& family : kFamilies) {
        for (const WireSize size : WireSize::all()) {
            SCOPED_TRACE(size.text() + " " + std::string(insulationText(family.insulation)));
            const auto found =
                insulatedConductor(size, family.insulation, Stranding::compact, kEdition);
            const auto row = printed.find(std::string(size.label()));
            const std::string column = family.compact != nullptr ? family.compact : "";
            const bool prints = !column.empty() && row != printed.end() &&
                                !isBlank(row->second, column + "_diam_in");
            ASSERT_EQ(found.has_value(), prints);
            if (found) {
                EXPECT_EQ(found->value.diameter.in(), number(row->second, column + "_diam_in"));
                EXPECT_EQ(found->value.area.in2(), number(row->second, column + "_area_in2"));
                EXPECT_EQ(found->source.section, "Chapter 9 Table 5A");
                EXPECT_EQ(found->source.basis, Basis::memory);
            }
        }
    }
}

TEST(InsulatedConductor, OfFineStrandsSaysThatTheTableIsForClassB) {
    const auto fine =
        insulatedConductor(WireSize::of("4/0"), Insulation::rhw2, Stranding::classI, kEdition);
    ASSERT_TRUE(fine.has_value());
    EXPECT_THAT(fine->source.note, HasSubstr("finer strands are a little larger"));
}

TEST(InsulatedConductor, BareIsTheBareConductor) {
    for (const Stranding stranding : {Stranding::solid, Stranding::classB, Stranding::compact}) {
        for (const WireSize size : WireSize::all()) {
            const auto insulated = insulatedConductor(size, Insulation::bare, stranding, kEdition);
            const auto bare = bareConductor(size, stranding, kEdition);
            ASSERT_EQ(insulated.has_value(), bare.has_value()) << size.text();
            if (bare) {
                EXPECT_EQ(insulated->value.diameter, bare->value.diameter) << size.text();
                EXPECT_EQ(insulated->value.area, bare->value.area) << size.text();
                EXPECT_EQ(insulated->source, bare->source) << size.text();
            }
        }
    }
}

TEST(LargestInsulatedConductor, IsAsThickAsAnyOfItsSize) {
    for (const WireSize size : WireSize::all()) {
        const auto largest = largestInsulatedConductor(size, kEdition);
        ASSERT_TRUE(largest.has_value()) << size.text();
        bool isOneOfThem = false;
        for (const FamilyRow& family : kFamilies) {
            const auto one =
                insulatedConductor(size, family.insulation, Stranding::classB, kEdition);
            if (one) {
                EXPECT_LE(one->value.diameter, largest->value.diameter) << size.text();
                isOneOfThem = isOneOfThem || one->value.diameter == largest->value.diameter;
            }
        }
        EXPECT_TRUE(isOneOfThem) << size.text();
    }
}

TEST(BareConductor, IsTheRowOfTable8OfItsStranding) {
    std::map<std::string, TsvRow> solid;
    std::map<std::string, TsvRow> stranded;
    for (const TsvRow& row : readTsv("conductor_bare").rows) {
        (row.at("strands") == "1" ? solid : stranded)[row.at("size")] = row;
    }
    for (const bool isSolid : {true, false}) {
        const auto& printed = isSolid ? solid : stranded;
        for (const WireSize size : WireSize::all()) {
            SCOPED_TRACE(size.text());
            const auto found =
                bareConductor(size, isSolid ? Stranding::solid : Stranding::classB, kEdition);
            const auto row = printed.find(std::string(size.label()));
            ASSERT_EQ(found.has_value(), row != printed.end());
            if (found) {
                EXPECT_EQ(found->value.strands, number(row->second, "strands"));
                EXPECT_EQ(found->value.diameter.in(), number(row->second, "overall_diam_in"));
                EXPECT_EQ(found->value.area.in2(), number(row->second, "area_in2"));
                EXPECT_EQ(found->value.copperOhmsPerKft, number(row->second, "dc_ohm_kft_cu"));
                EXPECT_EQ(found->value.aluminiumOhmsPerKft, number(row->second, "dc_ohm_kft_al"));
                EXPECT_EQ(found->source.section, "Chapter 9 Table 8");
            }
        }
    }
}

// Was answered with the class B diameter of Table 8, which no compact conductor has.
TEST(BareConductor, OfCompactStrandingHasTheDiameterOfTable5A) {
    for (const auto& [label, row] : bySize("conductor_compact_al")) {
        const auto found = bareConductor(WireSize::of(label), Stranding::compact, kEdition);
        ASSERT_TRUE(found.has_value()) << label;
        EXPECT_EQ(found->value.diameter.in(), number(row, "bare_diam_in")) << label;
        EXPECT_EQ(found->source.section, "Chapter 9 Table 5A") << label;
        const auto classB = bareConductor(WireSize::of(label), Stranding::classB, kEdition);
        EXPECT_LT(found->value.diameter, classB->value.diameter) << label;
        EXPECT_EQ(found->value.aluminiumOhmsPerKft, classB->value.aluminiumOhmsPerKft) << label;
    }
    EXPECT_FALSE(bareConductor(WireSize::of("3"), Stranding::compact, kEdition).has_value());
}

TEST(BareConductor, OfOtherClassesSaysThatTheTableIsForClassB) {
    for (const Stranding stranding : {Stranding::classC, Stranding::classK}) {
        const auto found = bareConductor(WireSize::of("1/0"), stranding, kEdition);
        ASSERT_TRUE(found.has_value());
        EXPECT_THAT(found->source.note, HasSubstr("for class B"));
    }
}

struct StrandRow {
    const char* name;
    const char* size;
    Stranding stranding;
    int strands;  // 0: none published
    const char* source;
};

void PrintTo(const StrandRow& row, std::ostream* out) {
    *out << row.name;
}

std::string caseName(const testing::TestParamInfo<StrandRow>& row) {
    return row.param.name;
}

class StrandCount : public testing::TestWithParam<StrandRow> {};

TEST_P(StrandCount, IsThatOfTheClass) {
    const StrandRow& row = GetParam();
    const auto found = strandCount(WireSize::of(row.size), row.stranding, kEdition);
    ASSERT_EQ(found.has_value(), row.strands != 0);
    if (found) {
        EXPECT_EQ(found->value, row.strands);
        EXPECT_THAT(toText(found->source), HasSubstr(row.source));
    }
}

// NFPA 70 Chapter 9 Table 10, and ASTM B172, B173, B174, B801 as in tests/reference/tables.
// clang-format off
const StrandRow kStrandRows[] = {
    {"Solid",             "8",    Stranding::solid,   1,    "Chapter 9 Table 10"},
    {"BSmall",            "2",    Stranding::classB,  7,    "Chapter 9 Table 10"},
    {"BMiddle",           "1",    Stranding::classB,  19,   "Chapter 9 Table 10"},
    {"BLarge",            "500",  Stranding::classB,  37,   "Chapter 9 Table 10"},
    {"BLarger",           "600",  Stranding::classB,  61,   "Chapter 9 Table 10"},
    {"BLargest",          "2000", Stranding::classB,  127,  "Chapter 9 Table 10"},
    {"C",                 "500",  Stranding::classC,  61,   "Chapter 9 Table 10"},
    {"G",                 "4/0",  Stranding::classG,  133,  "ASTM B173"},
    {"H",                 "4/0",  Stranding::classH,  259,  "ASTM B173"},
    {"HTooSmall",         "12",   Stranding::classH,  0,    ""},
    {"I",                 "250",  Stranding::classI,  637,  "ASTM B172"},
    {"INotPublished",     "3",    Stranding::classI,  0,    ""},
    {"K",                 "1/0",  Stranding::classK,  1064, "ASTM B172"},
    {"KBetween",          "300",  Stranding::classK,  0,    ""},
    {"M",                 "6",    Stranding::classM,  665,  "ASTM B172"},
    {"CompactNineteen",   "4/0",  Stranding::compact, 18,   "ASTM B801"},
    {"CompactThirtySeven","500",  Stranding::compact, 35,   "ASTM B801"},
    {"CompactSixtyOne",   "750",  Stranding::compact, 58,   "ASTM B801"},
    {"CompactSeven",      "6",    Stranding::compact, 0,    ""},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Table, StrandCount, testing::ValuesIn(kStrandRows), caseName);

TEST(Conductors, SayWhatWasNotCheckedFor2026) {
    const auto one = [](Edition edition) {
        return insulatedConductor(
                   WireSize::of("500"), Insulation::xhhw2, Stranding::classB, edition)
            ->source;
    };
    EXPECT_THAT(one(Edition::nec2026).note, HasSubstr("not checked for 2026"));
    EXPECT_EQ(one(Edition::nec2023).note, "");
    EXPECT_NE(one(Edition::nec2017), one(Edition::nec2020));
}

}  // namespace
}  // namespace gw::standards
