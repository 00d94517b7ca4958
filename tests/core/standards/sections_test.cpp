#include "standards/sections.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <set>

namespace gw::standards {
namespace {

using testing::HasSubstr;
using testing::Not;

constexpr std::array kEditions = {
    Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026};
constexpr auto kGutter = GutterArticle::auxiliaryGutter;
constexpr auto kMetal = GutterArticle::metalWireway;
constexpr auto kPlastic = GutterArticle::nonmetallicWireway;

// The numbers of NFPA 70 that moved between 2017 and 2026, and some that did not. "" is no section.
// Whether the 2026 number was read on a public page, or follows from one that was.
struct Row {
    const char* name;
    Rule rule;
    GutterArticle article;
    std::array<const char*, 4> sections;  // 2017, 2020, 2023, 2026
    bool inferred2026;
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

std::string caseName(const testing::TestParamInfo<Row>& row) {
    return row.param.name;
}

class SectionByEdition : public testing::TestWithParam<Row> {};

TEST_P(SectionByEdition, HasTheNumberOfTheEditionAsked) {
    const Row& row = GetParam();
    for (std::size_t i = 0; i < kEditions.size(); ++i) {
        const Citation citation = section(row.rule, kEditions.at(i), row.article);
        EXPECT_EQ(citation.section, row.sections.at(i)) << editionText(kEditions.at(i));
        if (citation.section.empty()) {
            EXPECT_EQ(citation.basis, Basis::commonPractice);
            EXPECT_THAT(citation.note, HasSubstr(std::string(editionText(kEditions.at(i)))));
        } else {
            EXPECT_EQ(citation.standard, "NFPA 70-" + std::string(editionText(kEditions.at(i))));
        }
    }
    const std::string note = section(row.rule, Edition::nec2026, row.article).note;
    EXPECT_EQ(note.find("2026 number inferred") != std::string::npos, row.inferred2026) << note;
}

// clang-format off
const Row kRows[] = {
    // moved
    {"Ampacity",         Rule::ampacity,              kMetal,   {"Table 310.15(B)(16)", "Table 310.16", "Table 310.16", "Table 310.16"}, true},
    {"Adjustment",       Rule::adjustmentFactors,     kMetal,   {"310.15(B)(3)(a)", "310.15(C)(1)", "310.15(C)(1)", "310.15(C)(1)"}, true},
    {"Ambient",          Rule::ambientFactors,        kMetal,   {"310.15(B)(2)", "310.15(B)(1)", "310.15(B)(1)", "310.15(B)(1)"}, true},
    {"NeutralCounting",  Rule::neutralCounting,       kMetal,   {"310.15(B)(5)", "310.15(E)", "310.15(E)", "310.15(E)"}, true},
    {"ParallelSize",     Rule::parallelSize,          kMetal,   {"310.10(H)(1)", "310.10(G)(1)", "310.10(G)(1)", "310.10(G)(1)"}, true},
    {"Colours",          Rule::ungroundedIdentification, kMetal, {"310.110", "310.6", "310.6", "310.6"}, true},
    {"Definition",       Rule::articleDefinition,     kGutter,  {"366.2", "366.2", "Article 100", "Article 100"}, false},
    {"DefinitionMetal",  Rule::articleDefinition,     kMetal,   {"376.2", "376.2", "Article 100", "Article 100"}, false},
    {"HighVoltageBend",  Rule::bendRadiusOver1000V,   kMetal,   {"300.34", "300.34", "305.5", "305.5"}, true},
    {"Bushing",          Rule::insulatingBushing,     kMetal,   {"300.4(G)", "300.4(G)", "300.4(G)", "300.6(G)"}, true},
    {"DirectBurial",     Rule::directBurial,          kMetal,   {"300.5(E)", "300.5(E)", "300.5(E)", "300.7(E)"}, false},
    {"NoSplice",         Rule::noSpliceInRaceway,     kMetal,   {"300.13(A), 300.15", "300.13(A), 300.15", "300.13(A), 300.15", "300.15, 300.17"}, false},
    {"Together",         Rule::circuitTogether,       kMetal,   {"300.3(B)", "300.3(B)", "300.3(B)", "300.5(B)"}, true},
    {"WholeSet",         Rule::tapsJoinWholeSet,      kMetal,   {"", "300.3(B)(1)", "300.3(B)(1)", "300.5(B)(1)"}, true},
    {"LineSideMetal",    Rule::lineSideMarking,       kMetal,   {"376.56(B)(1)", "230.46", "230.46", "230.46"}, false},
    {"LineSideGutter",   Rule::lineSideMarking,       kGutter,  {"314.28(E)(1)", "230.46", "230.46", "230.46"}, false},
    {"LineSideListing",  Rule::lineSideListing,       kGutter,  {"110.3(B)", "230.46", "230.46", "230.2"}, false},
    {"GroundedSize",     Rule::groundedConductor,     kGutter,  {"250.24(C)", "250.24(C)", "250.24(D)", "250.24(D)"}, true},
    {"Barriers",         Rule::serviceBarriers,       kGutter,  {"408.3(A)(2)", "230.62(C)", "230.62(C)", "230.62(C)"}, true},
    {"TapDefinition",    Rule::tapDefinition,         kGutter,  {"240.2", "240.2", "Article 100", "Article 100"}, true},
    {"ShortZone",        Rule::shortZoneRelief,       kMetal,   {"310.15(A)(2) Exception", "310.14(A)(2) Exception", "310.14(A)(2) Exception", "310.14(A)(2) Exception"}, true},
    {"ParallelSameness", Rule::parallelSameness,      kMetal,   {"310.10(H)(2)", "310.10(G)(2)", "310.10(G)(2)", "310.10(G)(2)"}, true},
    {"DefinitionPlastic", Rule::articleDefinition,    kPlastic, {"378.2", "378.2", "Article 100", "Article 100"}, false},
    {"Induction",        Rule::induction,             kMetal,   {"300.20", "300.20", "300.20", "300.22"}, true},
    {"InductionHoles",   Rule::inductionOpenings,     kMetal,   {"300.20(B)", "300.20(B)", "300.20(B)", "300.22(B)"}, true},
    {"MixedVoltages",    Rule::mixedVoltages,         kMetal,   {"300.3(C)(1)", "300.3(C)(1)", "300.3(C)(1)", "300.5(C)(1)"}, true},
    {"WetRaceway",       Rule::wetRaceway,            kMetal,   {"300.9", "300.9", "300.9", "300.11"}, true},
    {"RacewaySeal",      Rule::racewaySeal,           kMetal,   {"300.7(A)", "300.7(A)", "300.7(A)", "300.9(A)"}, true},
    {"VerticalSupport",  Rule::verticalSupport,       kMetal,   {"300.19", "300.19", "300.19", "300.21"}, true},
    // stayed, by article
    {"FillGutter",       Rule::conductorFill,         kGutter,  {"366.22(A)", "366.22(A)", "366.22(A)", "366.22(A)"}, true},
    {"FillMetal",        Rule::conductorFill,         kMetal,   {"376.22(A)", "376.22(A)", "376.22(A)", "376.22(A)"}, true},
    {"FillNonmetallic",  Rule::conductorFill,         kPlastic, {"378.22", "378.22", "378.22", "378.22"}, true},
    {"SpliceGutter",     Rule::spliceFill,            kGutter,  {"366.56(A)", "366.56(A)", "366.56(A)", "366.56(A)"}, true},
    {"SpliceNonmetal",   Rule::spliceFill,            kPlastic, {"378.56", "378.56", "378.56", "378.56"}, true},
    {"WidthGutter",      Rule::deflectionSpace,       kGutter,  {"366.58(A)", "366.58(A)", "366.58(A)", "366.58(A)"}, true},
    {"WidthMetal",       Rule::deflectionSpace,       kMetal,   {"376.23(A)", "376.23(A)", "376.23(A)", "376.23(A)"}, true},
    {"Insulated",        Rule::splicesInsulated,      kGutter,  {"110.14(B)", "110.14(B)", "110.14(B)", "110.14(B)"}, false},
    // written for one kind of trough only
    {"LabelsGutter",     Rule::tapsLabelled,          kGutter,  {"366.56(C)", "366.56(C)", "366.56(C)", "366.56(C)"}, true},
    {"LabelsMetal",      Rule::tapsLabelled,          kMetal,   {"", "", "", ""}, false},
    {"LengthGutter",     Rule::gutterLength,          kGutter,  {"366.12(2)", "366.12(2)", "366.12(2)", "366.12(2)"}, true},
    {"LengthMetal",      Rule::gutterLength,          kMetal,   {"", "", "", ""}, false},
    {"SwitchesMetal",    Rule::noSwitchesInside,      kMetal,   {"", "", "", ""}, false},
    {"LargestGutter",    Rule::largestConductor,      kGutter,  {"", "", "", ""}, false},
    {"LargestMetal",     Rule::largestConductor,      kMetal,   {"376.21", "376.21", "376.21", "376.21"}, true},
    {"BlockSpaceMetal",  Rule::blocksBendingSpace,    kMetal,   {"376.56(B)(3)", "376.56(B)(3)", "376.56(B)(3)", "376.56(B)(3)"}, true},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Table, SectionByEdition, testing::ValuesIn(kRows), caseName);

TEST(Section, AnswersEveryRuleForEveryEditionAndTrough) {
    std::set<Rule> rules;
    for (const Rule rule : allRules()) {
        rules.insert(rule);
        for (const Edition edition : kEditions) {
            for (const GutterArticle article : allArticles()) {
                const Citation citation = section(rule, edition, article);
                EXPECT_EQ(citation.section.empty(), citation.basis == Basis::commonPractice);
                EXPECT_FALSE(toText(citation).empty());
            }
        }
        // No rule is without a section everywhere: then it would be forgotten, not unwritten.
        EXPECT_FALSE(section(rule, Edition::nec2023, kGutter).section.empty() &&
                     section(rule, Edition::nec2023, kMetal).section.empty() &&
                     section(rule, Edition::nec2023, kPlastic).section.empty())
            << static_cast<int>(rule);
    }
    EXPECT_EQ(rules.size(), allRules().size());
}

TEST(Section, NeverCitesAnArticleOfAnotherTrough) {
    const auto begins = [](const Citation& citation, const char* article) {
        return citation.section.rfind(article, 0) == 0;
    };
    for (const Rule rule : allRules()) {
        for (const Edition edition : kEditions) {
            EXPECT_FALSE(begins(section(rule, edition, kGutter), "376."));
            EXPECT_FALSE(begins(section(rule, edition, kGutter), "378."));
            EXPECT_FALSE(begins(section(rule, edition, kMetal), "366."));
            EXPECT_FALSE(begins(section(rule, edition, kMetal), "378."));
            EXPECT_FALSE(begins(section(rule, edition, kPlastic), "366."));
            EXPECT_FALSE(begins(section(rule, edition, kPlastic), "376."));
        }
    }
}

TEST(Section, OnlyThe2026NumbersAreInferred) {
    for (const Rule rule : allRules()) {
        for (const Edition edition : {Edition::nec2017, Edition::nec2020, Edition::nec2023}) {
            EXPECT_THAT(section(rule, edition, kGutter).note, Not(HasSubstr("inferred")));
        }
    }
}

TEST(Section, SaysWhereABoxRuleIsUsedByAnalogy) {
    EXPECT_THAT(section(Rule::blocksUnobstructed, Edition::nec2023, kGutter).note,
                HasSubstr("by analogy"));
    EXPECT_THAT(section(Rule::blocksUnobstructed, Edition::nec2023, kMetal).note, "");
}

}  // namespace
}  // namespace gw::standards
