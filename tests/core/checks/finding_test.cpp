#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "checks/units.h"

namespace gw::checks {
namespace {

using Unit = Quantity::Unit;

struct QuantityRow {
    Quantity quantity;
    std::string text;
};

class QuantityText : public testing::TestWithParam<QuantityRow> {};

TEST_P(QuantityText, IsAsPeopleReadIt) {
    EXPECT_EQ(toText(GetParam().quantity), GetParam().text);
}

// Source: the promise of finding.h: inches to three decimals, trailing zeros cut.
INSTANTIATE_TEST_SUITE_P(Units,
                         QuantityText,
                         testing::Values(QuantityRow{{3.8, Unit::inches}, "3.8 in"},
                                         QuantityRow{{3.7961, Unit::inches}, "3.796 in"},
                                         QuantityRow{{6.0, Unit::inches}, "6 in"},
                                         QuantityRow{{-0.25, Unit::inches}, "-0.25 in"},
                                         QuantityRow{{7.2, Unit::squareInches}, "7.2 sq in"},
                                         QuantityRow{{21.3, Unit::percent}, "21.3 %"},
                                         QuantityRow{{20.0, Unit::percent}, "20 %"},
                                         QuantityRow{{2.0, Unit::count}, "2"},
                                         QuantityRow{{0.5, Unit::degrees}, "0.5°"},
                                         QuantityRow{{272.0, Unit::amperes}, "272 A"},
                                         QuantityRow{{480.0, Unit::volts}, "480 V"},
                                         QuantityRow{{6.3226, Unit::poundsForce}, "6.3 lbf"},
                                         QuantityRow{{1146.97, Unit::poundsForcePerFoot},
                                                     "1147 lbf/ft"}));

TEST(Checks, HaveNamesTitlesAndSectionsOfTheirOwn) {
    std::set<std::string_view> names;
    std::set<std::string_view> titles;
    std::set<const Section*> sections;
    for (const Check check : allChecks()) {
        names.insert(checkName(check));
        titles.insert(checkTitle(check));
        sections.insert(sectionsOf(check).data());
    }
    EXPECT_EQ(names.size(), allChecks().size());
    EXPECT_EQ(titles.size(), allChecks().size());
    EXPECT_EQ(sections.size(), allChecks().size());
}

TEST(Checks, ComeGroupByGroup) {
    std::vector<Group> groups;
    for (const Check check : allChecks()) {
        groups.push_back(groupOf(check));
    }
    EXPECT_TRUE(std::is_sorted(groups.begin(), groups.end()));
}

TEST(Checks, OfAnEmptyGutterSayWhyTheyHaveNothingToSay) {
    layout::Layout layout;
    layout.gutter.inside = {24.0, 6.0, 6.0};
    const auto findings = checkAll(geometry::build(layout, {}));
    const auto silent = notConcerned(allChecks(), findings);
    // Its fill is nothing, the cover goes on; it is short, so it is supported and ends soon.
    EXPECT_EQ(silent.size() + 4, allChecks().size());
    for (const Check check : silent) {
        EXPECT_NE(whyNotConcerned(check), "") << checkName(check);
    }
}

TEST(Checks, NamesAreFitForACommandLine) {
    for (const Check check : allChecks()) {
        EXPECT_THAT(std::string(checkName(check)), testing::MatchesRegex("[a-z]+(-[a-z]+)*"));
    }
}

TEST(Subjects, SayWhatTheyAreAndTheirId) {
    EXPECT_EQ(subjectText(layout::ConductorId("S1-A")), "conductor S1-A");
    EXPECT_EQ(subjectText(layout::BlockId("A")), "block A");
    EXPECT_EQ(subjectText(layout::EntryId("in")), "entry in");
    EXPECT_EQ(subjectText(layout::CircuitId("T1")), "circuit T1");
}

TEST(Verdicts, AreTheFourWords) {
    EXPECT_EQ(verdictText(Verdict::meets), "meets");
    EXPECT_EQ(verdictText(Verdict::breach), "breach");
    EXPECT_EQ(verdictText(Verdict::caution), "caution");
    EXPECT_EQ(verdictText(Verdict::cannotTell), "cannot tell");
}

TEST(TallyOfFindings, CountsEachVerdict) {
    std::vector<Finding> findings(6);
    findings[1].verdict = Verdict::breach;
    findings[2].verdict = Verdict::breach;
    findings[3].verdict = Verdict::caution;
    findings[4].verdict = Verdict::cannotTell;
    const Tally counts = tally(findings);
    EXPECT_EQ(counts.meets, 2);
    EXPECT_EQ(counts.breach, 2);
    EXPECT_EQ(counts.caution, 1);
    EXPECT_EQ(counts.cannotTell, 1);
}

}  // namespace
}  // namespace gw::checks
