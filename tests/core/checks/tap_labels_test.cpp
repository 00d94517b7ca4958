#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using layout::Role;
using layout::TapRule;
using standards::Edition;
using standards::GutterArticle;

/// The straight splice, where circuit T joins S.
GutterBuilder tapped(Role role, const std::optional<std::string>& supplies) {
    auto builder = check_test::straightSplice();
    builder.circuitNamed("T").role = role;
    builder.circuitNamed("T").supplies = supplies;
    return builder;
}

struct LabelRow {
    std::string name;
    GutterArticle article;
    std::optional<std::string> supplies;
    Verdict verdict;
};

void PrintTo(const LabelRow& row, std::ostream* out) {
    *out << row.name;
}

class LabelOfATap : public testing::TestWithParam<LabelRow> {};

// Source: NFPA 70 366.56(C) asks for it in auxiliary gutters; articles 376 and 378 do not.
TEST_P(LabelOfATap, IsAskedForInAnAuxiliaryGutter) {
    auto builder = tapped(Role::tap, GetParam().supplies);
    builder.layout().gutter.article = GetParam().article;
    const auto findings = checkTapLabels(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, GetParam().verdict) << findings[0].working;
    EXPECT_EQ(findings[0].subjects, std::vector<Subject>{layout::CircuitId("T")});
    EXPECT_EQ(findings[0].missing.empty(), findings[0].verdict != Verdict::cannotTell);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(
    Rows, LabelOfATap,
    testing::Values(
        LabelRow{"GutterStated",         GutterArticle::auxiliaryGutter,    "Disconnect 3",  Verdict::meets},
        LabelRow{"GutterNotStated",      GutterArticle::auxiliaryGutter,    std::nullopt,    Verdict::cannotTell},
        LabelRow{"GutterEmpty",          GutterArticle::auxiliaryGutter,    "",              Verdict::cannotTell},
        LabelRow{"GutterBlank",          GutterArticle::auxiliaryGutter,    "  ",            Verdict::cannotTell},
        LabelRow{"WirewayStated",        GutterArticle::metalWireway,       "Disconnect 3",  Verdict::meets},
        LabelRow{"WirewayNotStated",     GutterArticle::metalWireway,       std::nullopt,    Verdict::caution},
        LabelRow{"NonmetallicNotStated", GutterArticle::nonmetallicWireway, std::nullopt,    Verdict::caution}),
    [](const auto& row) { return row.param.name; });
// clang-format on

struct RoleRow {
    std::string name;
    Role role;
    bool joins;
    std::optional<TapRule> rule;
    std::size_t findings;
};

void PrintTo(const RoleRow& row, std::ostream* out) {
    *out << row.name;
}

class CircuitOfARole : public testing::TestWithParam<RoleRow> {};

TEST_P(CircuitOfARole, IsATapOrIsNot) {
    auto builder = tapped(GetParam().role, std::nullopt);
    if (!GetParam().joins) {
        builder.circuitNamed("T").joins.reset();
    }
    builder.circuitNamed("T").tapRule = GetParam().rule;
    EXPECT_EQ(checkTapLabels(builder.build()).size(), GetParam().findings);
}

INSTANTIATE_TEST_SUITE_P(
    Rows,
    CircuitOfARole,
    testing::Values(RoleRow{"Tap", Role::tap, true, {}, 1},
                    RoleRow{"TapOfNothing", Role::tap, false, {}, 1},
                    RoleRow{"BranchTapped", Role::branch, true, {}, 1},
                    RoleRow{"Branch", Role::branch, false, {}, 0},
                    RoleRow{"FeederSplicedOn", Role::feeder, true, {}, 0},
                    RoleRow{"FeederSaidToBeNoTap", Role::feeder, true, TapRule::none, 0},
                    RoleRow{"FeederByATapRule", Role::feeder, true, TapRule::tenFoot, 1},
                    RoleRow{"Bonding", Role::bonding, true, {}, 0}),
    [](const auto& row) { return row.param.name; });

TEST(TapLabels, SectionIsThatOfAuxiliaryGuttersInEveryEdition) {
    // Source: NFPA 70 366.56(C), 2017 to 2026 (2026 inferred).
    for (const Edition edition :
         {Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026}) {
        auto builder = tapped(Role::tap, "Disconnect 3");
        builder.layout().edition = edition;
        EXPECT_EQ(checkTapLabels(builder.build()).at(0).citation.section, "366.56(C)");
        builder.layout().gutter.article = GutterArticle::metalWireway;
        const auto citation = checkTapLabels(builder.build()).at(0).citation;
        EXPECT_EQ(citation.section, "");
        EXPECT_EQ(citation.basis, standards::Basis::commonPractice);
    }
}

TEST(TapLabels, AStatedNameNeverMakesAVerdictWorse) {
    for (const auto article : standards::allArticles()) {
        auto without = tapped(Role::tap, std::nullopt);
        auto with = tapped(Role::tap, std::string(300, 'x'));
        without.layout().gutter.article = article;
        with.layout().gutter.article = article;
        EXPECT_EQ(checkTapLabels(with.build()).at(0).verdict, Verdict::meets);
        EXPECT_LT(checkTapLabels(with.build()).at(0).working.size(), 225U);
        EXPECT_NE(checkTapLabels(without.build()).at(0).verdict, Verdict::meets);
    }
}

}  // namespace
}  // namespace gw::checks
