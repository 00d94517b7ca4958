#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "checks/support.h"
#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using layout::Phase;
using layout::Role;
using standards::Edition;
using testing::HasSubstr;

/// The service "S" with so many taps T1, T2, ….
GutterBuilder taps(int count) {
    GutterBuilder builder;
    for (int i = 1; i <= count; ++i) {
        const std::string name = "T" + std::to_string(i);
        builder.circuit(name, {Phase::a}, 1, "S").circuitNamed(name).role = Role::tap;
    }
    return builder;
}

Finding of(const GutterBuilder& builder) {
    const auto findings = checkServiceDisconnects(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct Row {
    int disconnects;
    Verdict verdict;
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.disconnects << " disconnects";
}

class NumberOfDisconnects : public testing::TestWithParam<Row> {};

TEST_P(NumberOfDisconnects, IsAtMostSixInEveryEdition) {
    for (const Edition edition :
         {Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026}) {
        auto builder = taps(GetParam().disconnects);
        builder.layout().edition = edition;
        const Finding finding = of(builder);
        EXPECT_EQ(finding.verdict, GetParam().verdict);
        EXPECT_EQ(finding.measured->value, GetParam().disconnects);
        EXPECT_EQ(finding.limit->value, 6.0);
        EXPECT_EQ(finding.citation.section, "230.71");
    }
}

// NFPA 70 230.71: not more than six.
INSTANTIATE_TEST_SUITE_P(Rows,
                         NumberOfDisconnects,
                         testing::Values(Row{1, Verdict::meets},
                                         Row{5, Verdict::meets},
                                         Row{6, Verdict::meets},
                                         Row{7, Verdict::breach}),
                         [](const auto& row) { return "Row" + std::to_string(row.index); });

TEST(Disconnects, MayShareAnEnclosureIn2017Only) {
    auto builder = taps(2);
    builder.layout().edition = Edition::nec2017;
    EXPECT_THAT(of(builder).working, HasSubstr("may share one enclosure"));
    builder.layout().edition = Edition::nec2020;
    EXPECT_THAT(of(builder).working, HasSubstr("compartment of its own"));
    EXPECT_THAT(of(taps(1)).working, testing::Not(HasSubstr("enclosure")));
}

TEST(Disconnects, AreThoseAtTheEndsOfTaps) {
    auto builder = taps(6);
    // T6 goes on to two: seven in all.
    builder.circuit("T6a", {Phase::a}, 1, "T6").circuit("T6b", {Phase::a}, 1, "T6");
    EXPECT_EQ(of(builder).measured->value, 7.0);
    EXPECT_EQ(of(builder).verdict, Verdict::breach);
}

TEST(Disconnects, OfTheServiceAreNotThoseBeyondAFeeder) {
    auto builder = taps(6);
    builder.circuitNamed("T6").role = Role::feeder;
    builder.circuit("T6a", {Phase::a}, 1, "T6").circuit("T6b", {Phase::a}, 1, "T6");
    EXPECT_EQ(of(builder).measured->value, 6.0);
}

TEST(Disconnects, AreNotAtBondingJumpers) {
    auto builder = taps(6);
    builder.circuit("bond", {Phase::g}, 1, "S").circuitNamed("bond").role = Role::bonding;
    EXPECT_EQ(of(builder).measured->value, 6.0);
}

TEST(Disconnects, AreCountedForEachServiceByItself) {
    auto builder = taps(6);
    builder.circuit("S2", {Phase::a}).circuitNamed("S2").role = Role::service;
    builder.circuit("U1", {Phase::a}, 1, "S2");
    const auto findings = checkServiceDisconnects(builder.build());
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].measured->value, 6.0);
    EXPECT_EQ(findings[1].measured->value, 1.0);
}

TEST(Disconnects, AreNotJudgedWhereThereIsNoServiceOrNoneInTheGutter) {
    EXPECT_TRUE(checkServiceDisconnects(taps(0).build()).empty());
    auto builder = taps(7);
    builder.circuitNamed("S").role = Role::feeder;
    EXPECT_TRUE(checkServiceDisconnects(builder.build()).empty());
}

TEST(DisconnectsLaws, OneMoreNeverBettersAndOrderDoesNotMatter) {
    for (int number = 1; number < 12; ++number) {
        const Finding fewer = of(taps(number));
        auto builder = taps(number + 1);
        const Finding more = of(builder);
        EXPECT_GE(gravity(more.verdict), gravity(fewer.verdict));
        EXPECT_LT(more.margin->value, fewer.margin->value);
        std::reverse(builder.layout().circuits.begin(), builder.layout().circuits.end());
        EXPECT_EQ(of(builder).subjects, more.subjects);
    }
}

}  // namespace
}  // namespace gw::checks
