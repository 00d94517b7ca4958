#include "drawing/finding_tables.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/support/sample_layouts.h"

namespace gw::drawing {
namespace {

using checks::Check;
using checks::Finding;
using checks::Quantity;
using checks::Verdict;

Finding finding(Check check, Verdict verdict, double measured, double limit) {
    Finding made;
    made.check = check;
    made.verdict = verdict;
    made.measured = Quantity{measured, Quantity::Unit::inches};
    made.limit = Quantity{limit, Quantity::Unit::inches};
    made.margin = Quantity{measured - limit, Quantity::Unit::inches};
    made.citation = {"NFPA 70-2023", "312.6(A)", standards::Basis::seenTwice};
    return made;
}

class FindingTables : public ::testing::Test {
protected:
    geometry::BuiltLayout built_ = [] {
        const auto sample = test::oneTap();
        return geometry::build(sample.layout, sample.shelf);
    }();
};

std::vector<std::string> titlesOf(const Table& table) {
    std::vector<std::string> titles;
    for (const auto& column : table.columns) {
        titles.push_back(column.title);
    }
    return titles;
}

std::string cell(const Table& table, std::size_t row, const std::string& title) {
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].title == title) {
            return table.rows.at(row).cells.at(i);
        }
    }
    return "no such column";
}

/// 6 of 5 is nearer than 40 of 30: a fifth to spare against a third.
TEST_F(FindingTables, WhatMeetsTakesOneRowACheckAndShowsTheNearest) {
    std::vector<Finding> findings{finding(Check::bendRadius, Verdict::meets, 40, 30),
                                  finding(Check::bendRadius, Verdict::meets, 6, 5),
                                  finding(Check::bendRadius, Verdict::meets, 12, 5),
                                  finding(Check::joints, Verdict::meets, 3, 1)};
    findings[1].subjects = {layout::ConductorId("c1")};
    const auto table = metTable(built_, findings);
    ASSERT_EQ(table.rows.size(), 2U);
    EXPECT_EQ(cell(table, 0, "Met"), "3");
    EXPECT_EQ(cell(table, 0, "Nearest to its limit"), "c1");
    EXPECT_EQ(cell(table, 0, "Measured"), "6 in");
    EXPECT_EQ(cell(table, 0, "Limit"), "5 in");
    EXPECT_EQ(cell(table, 0, "Margin"), "1 in");
    EXPECT_EQ(cell(table, 1, "Met"), "1");
}

TEST_F(FindingTables, WhereNothingElseWasFoundWhatMeetsStandsForAll) {
    std::vector<Finding> findings{finding(Check::bendRadius, Verdict::meets, 6, 5)};
    EXPECT_EQ(metTable(built_, findings).title, "Findings");
    EXPECT_NE(
        metTable(built_, findings).subtitle.find("0 breaches, 0 cautions, 0 cannot tell, 1 met"),
        std::string::npos);
    findings.push_back(finding(Check::clearance, Verdict::cannotTell, 1, 1));
    EXPECT_EQ(metTable(built_, findings).title, "Checks that meet");
}

TEST_F(FindingTables, TheWorkingIsShownWhereThereIsOne) {
    std::vector<Finding> findings{finding(Check::bendRadius, Verdict::meets, 6, 5)};
    const auto without = titlesOf(metTable(built_, findings));
    EXPECT_EQ(std::count(without.begin(), without.end(), "Working"), 0);
    findings[0].working = "The bend has 6 in.";
    EXPECT_EQ(cell(metTable(built_, findings), 0, "Working"), "The bend has 6 in.");
}

TEST_F(FindingTables, BreachCautionAndCannotTellAreListedInFull) {
    std::vector<Finding> findings{finding(Check::clearance, Verdict::cannotTell, 1, 1),
                                  finding(Check::bendRadius, Verdict::meets, 6, 5),
                                  finding(Check::bendRadius, Verdict::caution, 5, 5),
                                  finding(Check::bendRadius, Verdict::breach, 4, 5),
                                  finding(Check::bendRadius, Verdict::breach, 3, 5)};
    findings[0].working = "Not known.";
    findings[0].missing = {"surroundings.location", "block A: listing"};
    findings[3].citation.note = "the older wording";
    const auto table = openFindingTable(built_, findings);
    ASSERT_EQ(table.rows.size(), 4U);
    EXPECT_EQ(cell(table, 0, "Verdict"), "BREACH");
    EXPECT_EQ(cell(table, 0, "Measured"), "4 in");
    EXPECT_EQ(cell(table, 0, "Working"), "(Source: the older wording.)");
    EXPECT_EQ(cell(table, 1, "Measured"), "3 in");
    EXPECT_EQ(cell(table, 2, "Verdict"), "caution");
    EXPECT_EQ(cell(table, 3, "Verdict"), "cannot tell");
    EXPECT_EQ(cell(table, 3, "Working"),
              "Not known. Missing: surroundings.location, block A: listing.");
}

TEST_F(FindingTables, ANumberOnTheViewsIsTheRowsNumber) {
    std::vector<Finding> findings{finding(Check::clearance, Verdict::meets, 2, 1),
                                  finding(Check::bendRadius, Verdict::caution, 5, 5),
                                  finding(Check::bendRadius, Verdict::breach, 4, 5)};
    const auto ordered = inOrder(findings);
    EXPECT_EQ(ordered[0], &findings[2]);
    EXPECT_EQ(ordered[1], &findings[1]);
    EXPECT_EQ(cell(openFindingTable(built_, findings), 1, "No."), "2");
}

TEST_F(FindingTables, ASectionKnownFromMemoryIsStarredAndExplained) {
    std::vector<Finding> findings{finding(Check::bendRadius, Verdict::breach, 4, 5)};
    findings[0].citation.basis = standards::Basis::memory;
    const auto table = openFindingTable(built_, findings);
    EXPECT_EQ(cell(table, 0, "Section"), "312.6(A) *");
    EXPECT_NE(table.subtitle.find("* from memory"), std::string::npos);
}

TEST_F(FindingTables, AnotherStandardIsNamedInFull) {
    std::vector<Finding> findings{finding(Check::bendRadius, Verdict::breach, 4, 5)};
    findings[0].citation = {"ICEA S-95-658", "7.1", standards::Basis::seen};
    EXPECT_EQ(cell(openFindingTable(built_, findings), 0, "Section"), "ICEA S-95-658 7.1");
}

}  // namespace
}  // namespace gw::drawing
