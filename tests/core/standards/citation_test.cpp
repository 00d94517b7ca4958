#include "standards/citation.h"

#include <gtest/gtest.h>

namespace gw::standards {
namespace {

TEST(EditionText, ReadsBackExactly) {
    for (const Edition edition :
         {Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026}) {
        EXPECT_EQ(editionFromText(editionText(edition)), edition);
    }
    for (const char* text : {"", "2014", "23", "2023 ", "NEC 2023", "2029"}) {
        EXPECT_EQ(editionFromText(text), std::nullopt) << text;
    }
}

struct Row {
    const char* name;
    Citation citation;
    const char* text;
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.text;
}

std::string caseName(const testing::TestParamInfo<Row>& row) {
    return row.param.name;
}

class CitationText : public testing::TestWithParam<Row> {};

TEST_P(CitationText, SaysWhatStandsBehindIt) {
    EXPECT_EQ(toText(GetParam().citation), GetParam().text);
}

// clang-format off
const Row kRows[] = {
    {"Seen",           {"NFPA 70-2023", "376.22(A)", Basis::seen, ""},      "NFPA 70-2023 376.22(A)"},
    {"SeenTwice",      {"NFPA 70-2023", "376.22(A)", Basis::seenTwice, ""}, "NFPA 70-2023 376.22(A)"},
    {"Memory",         {"NFPA 70-2023", "366.56(C)", Basis::memory, ""},    "NFPA 70-2023 366.56(C), from memory"},
    {"Noted",          {"NFPA 70-2026", "366.30", Basis::seen, "2026 number inferred"}, "NFPA 70-2026 366.30 (2026 number inferred)"},
    {"NoSection",      {"ASTM B801", "", Basis::seen, ""},                  "ASTM B801"},
    {"CommonPractice", {"", "", Basis::commonPractice, "no section"},       "common practice, no source (no section)"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Table, CitationText, testing::ValuesIn(kRows), caseName);

TEST(NecCitation, NamesTheEdition) {
    const Citation citation = necCitation(Edition::nec2020, "Table 310.16", Basis::seen);
    EXPECT_EQ(citation.standard, "NFPA 70-2020");
    EXPECT_EQ(citation.section, "Table 310.16");
}

}  // namespace
}  // namespace gw::standards
