#include "units/wire_size.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace gw::units {
namespace {

struct Typed {
    const char* name;
    const char* text;
    const char* label;
    const char* onSheets;
};

void PrintTo(const Typed& row, std::ostream* out) {
    *out << row.text;
}

std::string caseName(const testing::TestParamInfo<Typed>& row) {
    return row.param.name;
}

class ParseWireSize : public testing::TestWithParam<Typed> {};

TEST_P(ParseWireSize, GivesTheSize) {
    const auto size = WireSize::parse(GetParam().text);
    ASSERT_TRUE(size.has_value()) << toLine(size.error());
    EXPECT_EQ(size->label(), GetParam().label);
    EXPECT_EQ(size->text(), GetParam().onSheets);
}

// clang-format off
const Typed kTyped[] = {
    {"Awg",             "6",           "6",    "6 AWG"},
    {"NumberSign",      "#6",          "6",    "6 AWG"},
    {"AwgSaid",         "6 AWG",       "6",    "6 AWG"},
    {"NumberSignAwg",   "# 6 awg",     "6",    "6 AWG"},
    {"Aught",           "1/0",         "1/0",  "1/0 AWG"},
    {"AughtSpaced",     "1 / 0",       "1/0",  "1/0 AWG"},
    {"AughtAwg",        "1/0 AWG",     "1/0",  "1/0 AWG"},
    {"FourAught",       "4/0",         "4/0",  "4/0 AWG"},
    {"Kcmil",           "250",         "250",  "250 kcmil"},
    {"KcmilSaid",       "250 kcmil",   "250",  "250 kcmil"},
    {"KcmilUpper",      "500 KCMIL",   "500",  "500 kcmil"},
    {"OldMcm",          "500MCM",      "500",  "500 kcmil"},
    {"SpaceAround",     "  500 kcmil ","500",  "500 kcmil"},
    {"Smallest",        "14",          "14",   "14 AWG"},
    {"Largest",         "2000",        "2000", "2000 kcmil"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(AsPeopleType, ParseWireSize, testing::ValuesIn(kTyped), caseName);

TEST(ParseWireSize, RefusesWhatNoTableHas) {
    for (const char* text :
         {"",   " ",   "7",     "5",       "0",       "16",   "18",   "5/0", "450",         "2001",
          "-6", "6.0", "06",    "6 kcmil", "250 AWG", "#500", "2 50", "1 0", "6 AWG kcmil", "AWG",
          "#",  "six", "6 mm2", "500 500", "1/0 MCM", "\xFF"}) {
        const auto size = WireSize::parse(text);
        ASSERT_FALSE(size.has_value()) << text;
        EXPECT_EQ(size.error().code, ErrorCode::unknown) << text;
        EXPECT_FALSE(size.error().found.empty()) << text;
        EXPECT_FALSE(size.error().expected.empty()) << text;
    }
}

TEST(WireSize, EveryLabelReadsBack) {
    for (const WireSize size : WireSize::all()) {
        EXPECT_EQ(WireSize::of(size.label()), size);
        EXPECT_EQ(WireSize::parse(size.label()).value(), size);
        EXPECT_EQ(WireSize::parse(size.text()).value(), size);
    }
}

TEST(WireSize, AreInOrderOfAreaAndRank) {
    const auto all = WireSize::all();
    ASSERT_EQ(all.size(),
              28U);  // 13 AWG and 15 kcmil sizes of NFPA 70 Chapter 9 Table 8 from 14 AWG
    EXPECT_EQ(all.front().label(), "14");
    EXPECT_EQ(all.back().label(), "2000");
    for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_EQ(all[i].rank(), static_cast<int>(i));
        if (i > 0) {
            EXPECT_LT(all[i - 1], all[i]);
            EXPECT_LT(all[i - 1].circularMils(), all[i].circularMils());
        }
    }
}

TEST(WireSize, AreaOfMetalIsThatOfChapter9Table8) {
    // NFPA 70 Chapter 9 Table 8, column circular mils.
    EXPECT_EQ(WireSize::of("14").circularMils(), 4110);
    EXPECT_EQ(WireSize::of("3").circularMils(), 52620);
    EXPECT_EQ(WireSize::of("1/0").circularMils(), 105600);
    EXPECT_EQ(WireSize::of("4/0").circularMils(), 211600);
    EXPECT_EQ(WireSize::of("500").circularMils(), 500000);
    EXPECT_FALSE(WireSize::of("4/0").isKcmil());
    EXPECT_TRUE(WireSize::of("250").isKcmil());
}

TEST(WireSizeDeathTest, ALabelOfOurOwnSourceMustExist) {
    EXPECT_EXIT(WireSize::of("7"), testing::ExitedWithCode(3), "a fault of the program");
}

}  // namespace
}  // namespace gw::units
