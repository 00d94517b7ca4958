#include "checks/help.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>
#include <sstream>

#include "base/read_file.h"
#include "support/help_pages.h"

namespace gw::checks {
namespace {

using standards::Edition;
using ::testing::HasSubstr;

const std::string kPage =
    "# Slack\n"
    "\n"
    "## What it asks\n"
    "\n"
    "Every conductor has some\n"
    "slack. How much is for you to say.\n"
    "\n"
    "## Why\n"
    "\n"
    "- It is re-terminated one day.\n"
    "\n"
    "## How it is measured here\n"
    "\n"
    "By tape.\n"
    "\n"
    "By eye.\n"
    "\n"
    "## What it does not judge\n"
    "\n"
    "Taste.\n";

std::string with(const std::string& text, const std::string& other) {
    std::string page = kPage;
    return page.replace(page.find(text), text.size(), other);
}

// ---- one page -------------------------------------------------------------------------------

TEST(HelpPage, HasItsPartsWithoutTheHeadings) {
    const auto page = parseHelpPage(kPage, "slack.md");
    ASSERT_TRUE(page) << toLine(page.error());
    EXPECT_EQ(page->title, "Slack");
    EXPECT_EQ(page->asks, "Every conductor has some\nslack. How much is for you to say.");
    EXPECT_EQ(page->why, "- It is re-terminated one day.");
    EXPECT_EQ(page->measured, "By tape.\n\nBy eye.");
    EXPECT_EQ(page->notJudged, "Taste.");
    EXPECT_EQ(firstSentence(*page), "Every conductor has some slack");
    EXPECT_EQ(toText(*page), kPage);
}

TEST(HelpPage, MayLackBlankLinesAtItsHeadingsAndTheLastLineEnd) {
    std::string close = kPage;
    for (auto at = close.find("\n\n## "); at != std::string::npos; at = close.find("\n\n## ")) {
        close.erase(at, 1);
    }
    close.pop_back();
    const auto page = parseHelpPage(close, "slack.md");
    ASSERT_TRUE(page) << toLine(page.error());
    EXPECT_EQ(toText(*page), kPage);
}

struct Wrong {
    std::string name;
    std::string text;
    std::string place;
    std::string expected;
};

/// 110 characters, and one more.
const std::string kLongest = std::string(108, 'a') + "\xC2\xB0" + "C";
const std::string kTooLong = "b" + kLongest;

const std::vector<Wrong> kWrongPages = {
    {"Empty", "", "line 1", "# Title"},
    {"NoTitle", kPage.substr(kPage.find("## What it asks")), "line 1", "# Title"},
    {"EmptyTitle", with("# Slack", "# "), "line 1", "# Title"},
    {"TextAboveTheTitle", "Hello.\n" + kPage, "line 1", "# Title"},
    {"TextUnderTheTitle", with("# Slack\n", "# Slack\nHello.\n"), "line 1", "## What it asks"},
    {"UnknownHeading", with("## Why", "## Wherefore"), "line 8", "## Why"},
    {"HeadingOfAnotherLevel", with("## Why", "### Why"), "line 8", "## Why"},
    {"HeadingLeftOut",
     with("## Why\n\n- It is re-terminated one day.\n\n", ""),
     "line 8",
     "## Why"},
    {"LastHeadingLeftOut",
     with("## What it does not judge\n\nTaste.\n", ""),
     "line 12",
     "## What it does not judge"},
    {"SectionWithoutText", with("Taste.\n", ""), "line 18", ""},
    {"HeadingTooMany", kPage + "\n## Sections\n\nNone.\n", "line 22", ""},
    {"FullStopInside", with("some\n", "1.5 in\n"), "line 3", "no full stop"},
    {"BarInside", with("some\n", "some|\n"), "line 3", "no bar"},
    {"FirstParagraphTooLong",
     with("Every conductor has some\nslack. How much is for you to say.", kTooLong),
     "line 3",
     "110 characters"},
    {"FirstSentenceTooLong",
     with("Every conductor has some\nslack", kTooLong),
     "line 3",
     "110 characters"},
};

class WrongHelpPage : public ::testing::TestWithParam<Wrong> {};

TEST_P(WrongHelpPage, IsAnErrorWithItsLine) {
    const auto page = parseHelpPage(GetParam().text, "slack.md");
    ASSERT_FALSE(page);
    EXPECT_EQ(page.error().file, "slack.md");
    EXPECT_EQ(page.error().place, GetParam().place) << toLine(page.error());
    EXPECT_THAT(page.error().expected, HasSubstr(GetParam().expected));
}

std::string wrongName(const ::testing::TestParamInfo<Wrong>& info) {
    return info.param.name;
}

void PrintTo(const Wrong& wrong, std::ostream* out) {
    *out << wrong.text;
}

INSTANTIATE_TEST_SUITE_P(Page, WrongHelpPage, ::testing::ValuesIn(kWrongPages), wrongName);

TEST(HelpPage, FirstSentenceMayHaveOneHundredAndTenCharacters) {
    const auto page = parseHelpPage(with("Every conductor has some\nslack", kLongest), "slack.md");
    ASSERT_TRUE(page) << toLine(page.error());
    EXPECT_EQ(firstSentence(*page), kLongest);
}

TEST(HelpPage, FirstSentenceMayEndWithItsParagraph) {
    const std::string asks = "Every conductor has some\nslack. How much is for you to say.";
    const auto alone = parseHelpPage(with(asks, "Some slack"), "slack.md");
    ASSERT_TRUE(alone) << toLine(alone.error());
    EXPECT_EQ(firstSentence(*alone), "Some slack");
    const auto followed = parseHelpPage(with(asks, "Some\nslack\n\nNot much."), "slack.md");
    ASSERT_TRUE(followed) << toLine(followed.error());
    EXPECT_EQ(firstSentence(*followed), "Some slack");
}

TEST(HelpPage, TellsItsSectionsInTheEditionsAskedFor) {
    const auto page = parseHelpPage(kPage, "slack.md").value();
    const std::string both =
        helpText(page, Check::insulatingBushing, {Edition::nec2023, Edition::nec2026});
    // Source: NFPA 70 300.4(G), 300.6(G) in 2026, inferred.
    EXPECT_EQ(
        both,
        kPage + "\n## Sections\n\n- 2023: 300.4(G)\n- 2026: 300.6(G) (2026 number inferred)\n");
    EXPECT_THAT(helpText(page, Check::bendRadius, {Edition::nec2023}),
                HasSubstr("- 2023: ICEA S-95-658/NEMA WC 70 training radius\n"));
    EXPECT_THAT(helpText(page, Check::clearance, {Edition::nec2017}),
                HasSubstr("- 2017: none; it follows from the shapes alone\n"));
    EXPECT_THAT(helpText(page, Check::tapLabels, {Edition::nec2023}),
                HasSubstr("366.56(C), from memory\n"));
}

// ---- the pages that are shipped -------------------------------------------------------------

class ShippedHelp : public ::testing::TestWithParam<Check> {};

TEST_P(ShippedHelp, HasThePageOfTheCheck) {
    const auto text = test::helpSource(GetParam());
    ASSERT_TRUE(text) << toLine(text.error());
    const auto page = parseHelpPage(*text, std::string(checkName(GetParam())));
    ASSERT_TRUE(page) << toLine(page.error());
    EXPECT_EQ(page->title, checkTitle(GetParam()));
    EXPECT_EQ(parseHelpPage(toText(*page), "")->asks, page->asks);
    EXPECT_EQ(parseHelpPage(toText(*page), "")->notJudged, page->notJudged);
}

TEST_P(ShippedHelp, IsShortAndLeavesSectionsToTheEditions) {
    const std::regex kSection(R"(\b[1-8]\d\d\.\d|Chapter \d|Article \d|Table \d)");
    std::istringstream lines(test::helpSource(GetParam()).value());
    std::size_t count = 0;
    for (std::string line; std::getline(lines, line); ++count) {
        EXPECT_LE(line.size(), 104U) << line;  // 100 characters, some of two bytes
        EXPECT_FALSE(std::regex_search(line, kSection)) << line;
    }
    EXPECT_LE(count, 45U);
}

std::string checkCase(const ::testing::TestParamInfo<Check>& info) {
    std::string name(checkName(info.param));
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Check, ShippedHelp, ::testing::ValuesIn(allChecks()), checkCase);

TEST(ShippedHelpFolder, HasNoPageWithoutACheck) {
    std::set<std::string> names;
    for (const Check check : allChecks()) {
        names.insert(std::string(checkName(check)) + ".md");
    }
    for (const auto& entry : std::filesystem::directory_iterator(
             std::filesystem::path(GW_SOURCE_DIR) / "resources/help/checks")) {
        EXPECT_EQ(names.count(entry.path().filename().string()), 1U) << entry.path();
    }
}

// ---- the table ------------------------------------------------------------------------------

std::map<Check, HelpPage> sameForAll() {
    std::map<Check, HelpPage> pages;
    for (const Check check : allChecks()) {
        pages[check] = parseHelpPage(kPage, "slack.md").value();
    }
    return pages;
}

TEST(CheckTable, HasARowForEveryGroupAndEveryCheckInOrder) {
    std::istringstream lines(checkTable(sameForAll(), Edition::nec2023));
    std::vector<std::string> first;
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind("| ", 0) == 0) {
            first.push_back(line.substr(2, line.find(" |", 2) - 2));
        }
    }
    std::vector<std::string> expected = {"check"};
    std::string group;
    for (const Check check : allChecks()) {
        if (groupTitle(groupOf(check)) != group) {
            group = groupTitle(groupOf(check));
            expected.push_back("**" + group + "**");
        }
        expected.push_back("`" + std::string(checkName(check)) + "`");
    }
    EXPECT_EQ(first, expected);
}

TEST(CheckTable, SaysWhatACheckAsksAndWhereItStands) {
    const std::string of2017 = checkTable(sameForAll(), Edition::nec2017);
    const std::string of2023 = checkTable(sameForAll(), Edition::nec2023);
    // Source: NFPA 70 310.10(H) in 2017, 310.10(G) from 2020 on; 366.56(C) from memory.
    EXPECT_THAT(of2017,
                HasSubstr("| `parallel-sets` | Every conductor has some slack | 310.10(H)(1), "
                          "310.10(H)(2), 366.20, 376.20, 378.20 |\n"));
    EXPECT_THAT(of2023,
                HasSubstr("| `parallel-sets` | Every conductor has some slack | 310.10(G)(1), "
                          "310.10(G)(2), 366.20, 376.20, 378.20 |\n"));
    EXPECT_THAT(of2023, HasSubstr("| *366.56(C)* |\n"));
    EXPECT_THAT(of2023, HasSubstr("| the shapes alone |\n"));
    EXPECT_THAT(of2023, HasSubstr("| ICEA S-95-658/NEMA WC 70 |\n"));
}

TEST(Readme, HoldsTheTableOfChecksAsItIsMade) {
    const auto pages = test::shippedHelp();
    ASSERT_TRUE(pages) << toLine(pages.error());
    const auto readme = readFile(test::readmePath());
    ASSERT_TRUE(readme) << toLine(readme.error());
    const auto made = test::withTable(*readme, test::readmeTable(*pages));
    ASSERT_TRUE(made) << toLine(made.error());
    EXPECT_EQ(*readme, *made) << "make_check_table writes it again";
}

}  // namespace
}  // namespace gw::checks
