#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::about;
using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::spare;
using layout::Phase;
using layout::Role;
using layout::TapRule;
using standards::GutterArticle;

/// Service "S" by entry "1"; circuit "F" of that role by entry "2", or by "1" too.
GutterBuilder with(GutterArticle article, Role role, const std::string& entryOfOther = "2") {
    GutterBuilder builder;
    builder.layout().gutter.article = article;
    builder.circuit("F", {Phase::a, Phase::g});
    builder.circuitNamed("F").role = role;
    builder.entry("1", layout::Wall::left, 3.0, 6.0);
    builder.entry("2", layout::Wall::left, 8.0, 6.0);
    builder.conductor("s", atEntry("1", 1), spare({30.0, 3.0, 6.0}));
    builder.conductor("f", atEntry(entryOfOther, 2), spare({30.0, 8.0, 6.0})).circuit =
        layout::CircuitId("F");
    return builder;
}

std::vector<Finding> of(const GutterBuilder& builder) {
    return checkServiceApart(builder.build());
}

Finding atOne(const GutterBuilder& builder) {
    const auto findings = about(of(builder), layout::EntryId("1"));
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

/// Of the gutter itself: it names no subject.
std::vector<Finding> ofGutter(const GutterBuilder& builder) {
    std::vector<Finding> found;
    for (const auto& finding : of(builder)) {
        if (finding.subjects.empty()) {
            found.push_back(finding);
        }
    }
    return found;
}

struct ArticleRow {
    GutterArticle article;
    bool raceway;
};

void PrintTo(const ArticleRow& row, std::ostream* out) {
    *out << standards::articleText(row.article);
}

class InsideOf : public testing::TestWithParam<ArticleRow> {};

// Source: NFPA 70 230.7 binds raceways; a wireway is one (Article 100), an auxiliary gutter is not.
TEST_P(InsideOf, ARacewayServiceAndOthersMayNotMeet) {
    const auto found = ofGutter(with(GetParam().article, Role::feeder));
    ASSERT_EQ(found.size(), GetParam().raceway ? 1U : 0U);
    if (GetParam().raceway) {
        EXPECT_EQ(found[0].verdict, Verdict::breach);
        EXPECT_EQ(found[0].measured->value, 1.0);
        EXPECT_EQ(found[0].limit->value, 0.0);
        EXPECT_EQ(found[0].citation.section, "230.7");
    }
    EXPECT_EQ(atOne(with(GetParam().article, Role::feeder)).verdict, Verdict::meets);
}

TEST_P(InsideOf, ARacewayAtAnEntryTheyMayNotMeetEither) {
    EXPECT_EQ(atOne(with(GetParam().article, Role::feeder, "1")).verdict, Verdict::breach);
    EXPECT_EQ(atOne(with(GetParam().article, Role::branch, "1")).verdict, Verdict::breach);
    EXPECT_EQ(atOne(with(GetParam().article, Role::service, "1")).verdict, Verdict::meets);
}

INSTANTIATE_TEST_SUITE_P(Articles,
                         InsideOf,
                         testing::Values(ArticleRow{GutterArticle::auxiliaryGutter, false},
                                         ArticleRow{GutterArticle::metalWireway, true},
                                         ArticleRow{GutterArticle::nonmetallicWireway, true}),
                         [](const auto& row) { return "Row" + std::to_string(row.index); });

// The exceptions of 230.7: grounding and bonding conductors.
TEST(GroundingConductor, MayLieWithServiceConductors) {
    auto builder = with(GutterArticle::metalWireway, Role::feeder, "1");
    builder.conductorNamed("f").phase = Phase::g;
    EXPECT_EQ(atOne(builder).verdict, Verdict::meets);
    auto bonding = with(GutterArticle::metalWireway, Role::bonding, "1");
    EXPECT_EQ(atOne(bonding).verdict, Verdict::meets);
}

TEST(TapOfTheService, IsServiceToo) {
    auto builder = with(GutterArticle::metalWireway, Role::tap, "1");
    builder.circuitNamed("F").joins = layout::CircuitId("S");
    EXPECT_EQ(atOne(builder).verdict, Verdict::meets);
    EXPECT_EQ(ofGutter(builder).at(0).verdict, Verdict::meets);
}

struct TapRow {
    const char* name;
    std::optional<TapRule> rule;
    Verdict verdict;
};

void PrintTo(const TapRow& row, std::ostream* out) {
    *out << row.name;
}

class TapThatJoinsNothing : public testing::TestWithParam<TapRow> {};

TEST_P(TapThatJoinsNothing, IsJudgedByItsRule) {
    auto builder = with(GutterArticle::metalWireway, Role::tap, "1");
    builder.circuitNamed("F").tapRule = GetParam().rule;
    EXPECT_EQ(atOne(builder).verdict, GetParam().verdict);
    if (GetParam().verdict == Verdict::cannotTell) {
        EXPECT_THAT(atOne(builder).missing, testing::ElementsAre("what circuit F joins"));
    }
}

// Source: NFPA 70 240.21(B) names feeder taps; service conductors have rules of their own.
INSTANTIATE_TEST_SUITE_P(Rules,
                         TapThatJoinsNothing,
                         testing::Values(TapRow{"TenFoot", TapRule::tenFoot, Verdict::breach},
                                         TapRow{
                                             "Service", TapRule::serviceConductors, Verdict::meets},
                                         TapRow{"None", TapRule::none, Verdict::cannotTell},
                                         TapRow{"NotStated", std::nullopt, Verdict::cannotTell}),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(ServiceApart, IsNothingWithoutServiceConductors) {
    auto builder = with(GutterArticle::metalWireway, Role::feeder, "1");
    builder.circuitNamed("S").role = Role::branch;
    EXPECT_TRUE(of(builder).empty());
}

TEST(ServiceApartLaws, MovingOthersToARacewayOfTheirOwnNeverWorsensAnEntry) {
    for (const Role role : {Role::service, Role::feeder, Role::tap, Role::branch, Role::bonding}) {
        for (const auto article : standards::allArticles()) {
            const auto together = atOne(with(article, role, "1")).verdict;
            const auto apart = atOne(with(article, role, "2")).verdict;
            EXPECT_EQ(apart, Verdict::meets);
            EXPECT_EQ(together == Verdict::meets, role == Role::service || role == Role::bonding);
        }
    }
}

}  // namespace
}  // namespace gw::checks
