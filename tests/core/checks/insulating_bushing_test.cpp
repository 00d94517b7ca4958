#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::spare;
using standards::Edition;
using standards::Insulation;

GutterBuilder entering(const std::string& size, std::optional<bool> bushing) {
    GutterBuilder builder;
    builder.entry("in", layout::Wall::left, 6.0, 6.0);
    builder.layout().entries.front().insulatingBushing = bushing;
    builder.conductor("w", atEntry("in"), spare({30.0, 6.0, 6.0})).size = units::WireSize::of(size);
    return builder;
}

std::vector<Finding> of(const GutterBuilder& builder) {
    return checkInsulatingBushing(builder.build());
}

struct BushingRow {
    const char* name;
    const char* size;
    std::optional<bool> bushing;
    std::optional<Verdict> verdict;  ///< empty: the rule does not concern it
};

void PrintTo(const BushingRow& row, std::ostream* out) {
    *out << row.name;
}

class Bushing : public testing::TestWithParam<BushingRow> {};

TEST_P(Bushing, IsAskedFromFourGaugeOn) {
    const auto findings = of(entering(GetParam().size, GetParam().bushing));
    ASSERT_EQ(findings.size(), GetParam().verdict ? 1U : 0U);
    if (GetParam().verdict) {
        EXPECT_EQ(findings[0].verdict, *GetParam().verdict);
        EXPECT_THAT(findings[0].subjects, testing::ElementsAre(Subject(layout::EntryId("in"))));
    }
}

// Source: NFPA 70-2023 300.4(G): insulated conductors of 4 AWG or larger.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Sizes, Bushing, testing::Values(
    BushingRow{"SixWithout",     "6",   false,        std::nullopt},
    BushingRow{"SixNotStated",   "6",   std::nullopt, std::nullopt},
    BushingRow{"FourWithout",    "4",   false,        Verdict::breach},
    BushingRow{"FourWith",       "4",   true,         Verdict::meets},
    BushingRow{"FourNotStated",  "4",   std::nullopt, Verdict::cannotTell},
    BushingRow{"ThreeWithout",   "3",   false,        Verdict::breach},
    BushingRow{"LargeWithout",   "500", false,        Verdict::breach},
    BushingRow{"LargeWith",      "500", true,         Verdict::meets},
    BushingRow{"LargeNotStated", "500", std::nullopt, Verdict::cannotTell}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(BushingNotStated, IsNamed) {
    EXPECT_THAT(of(entering("4", std::nullopt)).at(0).missing,
                testing::ElementsAre("insulating bushing at entry in"));
}

TEST(BushingForBare, IsNotAsked) {
    auto builder = entering("1/0", false);
    builder.conductorNamed("w").insulation = Insulation::bare;
    EXPECT_TRUE(of(builder).empty());
}

TEST(BushingWithoutInsulationStated, CannotTellWhereAllMayBeBare) {
    auto builder = entering("1/0", false);
    builder.conductorNamed("w").insulation.reset();
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::cannotTell);
    EXPECT_THAT(of(builder).at(0).missing, testing::ElementsAre("insulation of conductor w"));
    builder.conductor("w2", atEntry("in", 2), spare({30.0, 6.0, 8.0}));
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::breach) << "one is insulated";
    builder.layout().entries.front().insulatingBushing = true;
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::meets);
}

struct EditionRow {
    Edition edition;
    const char* section;
    bool before;  ///< the fitting has to be in place before conductors are pulled
};

void PrintTo(const EditionRow& row, std::ostream* out) {
    *out << standards::editionText(row.edition);
}

class BushingByEdition : public testing::TestWithParam<EditionRow> {};

TEST_P(BushingByEdition, NamesItsSectionAndFrom2023TheOrderOfWork) {
    auto builder = entering("1/0", true);
    builder.layout().edition = GetParam().edition;
    const auto finding = of(builder).at(0);
    EXPECT_EQ(finding.citation.section, GetParam().section);
    EXPECT_EQ(finding.working.find("before they are pulled") != std::string::npos,
              GetParam().before);
}

// Source: a code-change page on 2023 300.4(G): in place before the conductors are pulled; 2026
// renumbers Article 300.
INSTANTIATE_TEST_SUITE_P(Editions,
                         BushingByEdition,
                         testing::Values(EditionRow{Edition::nec2017, "300.4(G)", false},
                                         EditionRow{Edition::nec2020, "300.4(G)", false},
                                         EditionRow{Edition::nec2023, "300.4(G)", true},
                                         EditionRow{Edition::nec2026, "300.6(G)", true}),
                         [](const auto& row) {
                             return "In" + std::string(standards::editionText(row.param.edition));
                         });

TEST(BushingLaws, AThickerConductorNeverEndsTheNeed) {
    bool asked = false;
    for (const auto size : units::WireSize::all()) {
        const bool now = !of(entering(std::string(size.label()), false)).empty();
        EXPECT_TRUE(now || !asked) << size.text();
        asked = now;
    }
    EXPECT_TRUE(asked);
}

}  // namespace
}  // namespace gw::checks
