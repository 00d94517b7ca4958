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
using layout::TapRule;
using testing::HasSubstr;
using units::Inches;

/// A feeder "S" of 100 A, and the tap "T" of it: one conductor of 8 AWG copper THWN-2, 40 A at
/// 60 °C (NFPA 70 Table 310.16), 6 in in the gutter and 54 in beyond, with a device of 40 A.
GutterBuilder tap(TapRule rule = TapRule::tenFoot) {
    auto builder = check_test::straightSplice();
    builder.part("splice").listing.celsius = 90;
    builder.layout().surroundings.ambientCelsius = 30.0;
    builder.circuitNamed("S").role = Role::feeder;
    builder.circuitNamed("S").deviceAmperes = 100.0;
    auto& circuit = builder.circuitNamed("T");
    circuit.role = Role::tap;
    circuit.tapRule = rule;
    circuit.deviceAmperes = 40.0;
    builder.conductorNamed("T-A").size = units::WireSize::of("8");
    builder.layout().entries[1].racewayLength = Inches::of(54.0);
    return builder;
}

GutterBuilder with(const std::string& size, double ahead, double device, TapRule rule) {
    auto builder = tap(rule);
    builder.conductorNamed("T-A").size = units::WireSize::of(size);
    builder.circuitNamed("S").deviceAmperes = ahead;
    builder.circuitNamed("T").deviceAmperes = device;
    return builder;
}

/// The finding whose working says this.
Finding saying(const GutterBuilder& builder, const std::string& words) {
    for (const Finding& finding : checkTapRule(builder.build())) {
        if (finding.working.find(words) != std::string::npos) {
            return finding;
        }
    }
    ADD_FAILURE() << "no finding says " << words;
    return {};
}

Finding fraction(const GutterBuilder& builder) {
    return saying(builder, " ahead.");
}
Finding length(const GutterBuilder& builder) {
    return saying(builder, "in raceways");
}
Finding device(const GutterBuilder& builder) {
    return saying(builder, "without the next size up");
}
Finding source(const GutterBuilder& builder) {
    return saying(builder, "is tapped from circuit S");
}

TEST(TapRules, AreMetByAShortTapThickEnough) {
    const auto findings = checkTapRule(tap().build());
    EXPECT_EQ(findings.size(), 4U);
    EXPECT_EQ(check_test::withVerdict(findings, Verdict::meets).size(), 4U);
}

TEST(TapRules, BindTapsOnly) {
    auto builder = tap();
    builder.circuitNamed("T").role = Role::feeder;
    builder.circuitNamed("T").tapRule.reset();
    EXPECT_TRUE(checkTapRule(builder.build()).empty());
}

// ---- fraction -------------------------------------------------------------------------------

struct FractionRow {
    std::string name;
    std::string size;
    double ahead;
    TapRule rule;
    double needed;
    Verdict verdict;
};

void PrintTo(const FractionRow& row, std::ostream* out) {
    *out << row.name;
}

class FractionAhead : public testing::TestWithParam<FractionRow> {};

TEST_P(FractionAhead, IsATenthOrAThirdOfTheDevice) {
    const FractionRow& row = GetParam();
    // A device above 100 A at its end takes the 75 °C column for sizes above 1 AWG.
    const auto builder = with(row.size, row.ahead, row.ahead > 1000.0 ? 150.0 : 30.0, row.rule);
    EXPECT_EQ(fraction(builder).verdict, row.verdict);
    EXPECT_NEAR(fraction(builder).limit->value, row.needed, 1e-9);
}

// 25 ft: 100 A / 3 = 33.3 A, a published exercise: 8 AWG at 60 °C carries 40 A; 10 AWG 30 A there
// and 35 A at 75 °C, so it hangs on the terminals. 10 ft: 1600 A / 10 = 160 A, a published
// exercise: 1/0 AWG carries 150 A, 2/0 AWG 175 A. At the limit: 1500 A / 10 = 150 A = 1/0 AWG.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, FractionAhead, testing::Values(
    FractionRow{"8 AWG for 33.3 A",    "8",   100.0,  TapRule::twentyFiveFoot, 100.0 / 3.0, Verdict::meets},
    FractionRow{"10 AWG for 33.3 A",   "10",  100.0,  TapRule::twentyFiveFoot, 100.0 / 3.0, Verdict::cannotTell},
    FractionRow{"12 AWG for 33.3 A",   "12",  100.0,  TapRule::twentyFiveFoot, 100.0 / 3.0, Verdict::breach},
    FractionRow{"1/0 AWG for 160 A",   "1/0", 1600.0, TapRule::tenFoot,        160.0,       Verdict::breach},
    FractionRow{"2/0 AWG for 160 A",   "2/0", 1600.0, TapRule::tenFoot,        160.0,       Verdict::meets},
    FractionRow{"1/0 AWG for 150 A",   "1/0", 1500.0, TapRule::tenFoot,        150.0,       Verdict::meets},
    FractionRow{"1/0 AWG for 150.1 A", "1/0", 1501.0, TapRule::tenFoot,        150.1,       Verdict::breach}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(FractionAhead, CannotBeToldWithoutTheDeviceAhead) {
    auto builder = tap();
    builder.circuitNamed("S").deviceAmperes.reset();
    const Finding finding = saying(builder, "device of circuit S is not stated");
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::ElementsAre("device of circuit S"));
}

// ---- length ---------------------------------------------------------------------------------

struct LengthRow {
    std::string name;
    TapRule rule;
    double over;  ///< inches more than the rule allows
    Verdict verdict;
};

void PrintTo(const LengthRow& row, std::ostream* out) {
    *out << row.name;
}

class TapLength : public testing::TestWithParam<LengthRow> {};

TEST_P(TapLength, IsLugToLug) {
    const LengthRow& row = GetParam();
    auto builder = tap(row.rule);
    const double drawn = length(builder).measured->value - 54.0;
    const double allowed = row.rule == TapRule::tenFoot ? 120.0 : 300.0;
    builder.layout().entries[1].racewayLength = Inches::of(allowed + row.over - drawn);
    EXPECT_EQ(length(builder).verdict, row.verdict);
    EXPECT_EQ(length(builder).limit->value, allowed);
}

// 10 ft = 120 in, 25 ft = 300 in: NFPA 70 240.21(B)(1), (2).
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, TapLength, testing::Values(
    LengthRow{"just under 10 ft", TapRule::tenFoot,        -0.01, Verdict::meets},
    LengthRow{"10 ft",            TapRule::tenFoot,        0.0,   Verdict::meets},
    LengthRow{"just over 10 ft",  TapRule::tenFoot,        0.01,  Verdict::breach},
    LengthRow{"just under 25 ft", TapRule::twentyFiveFoot, -0.01, Verdict::meets},
    LengthRow{"25 ft",            TapRule::twentyFiveFoot, 0.0,   Verdict::meets},
    LengthRow{"just over 25 ft",  TapRule::twentyFiveFoot, 0.01,  Verdict::breach}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(TapLength, CountsTheGutter) {
    // The block's lower mouth is 4 in above the wall, the tip 1.5 in further in.
    EXPECT_NEAR(length(tap()).measured->value, 5.5 + 54.0, 1e-9);
}

TEST(TapLength, CannotBeToldWithoutTheRaceway) {
    auto builder = tap();
    builder.layout().entries[1].racewayLength.reset();
    EXPECT_EQ(length(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(length(builder).missing,
                testing::ElementsAre("length of the raceway at entry below"));
}

// ---- device, source, claim ------------------------------------------------------------------

TEST(TapDevice, IsNotRoundedUp) {
    // 8 AWG carries 40 A at 60 °C, 50 A at 75 °C and 55 A at 90 °C.
    const auto verdictFor = [](double amperes) {
        return device(with("8", 100.0, amperes, TapRule::tenFoot)).verdict;
    };
    EXPECT_EQ(verdictFor(40.0), Verdict::meets);
    EXPECT_EQ(verdictFor(45.0), Verdict::cannotTell) << "if the terminals are marked 75 °C";
    EXPECT_EQ(verdictFor(50.0), Verdict::cannotTell);
    EXPECT_EQ(verdictFor(51.0), Verdict::breach);
    EXPECT_EQ(verdictFor(60.0), Verdict::breach);
}

TEST(TapDevice, CannotBeToldWhereItIsNotStated) {
    auto builder = tap();
    builder.circuitNamed("T").deviceAmperes.reset();
    EXPECT_EQ(saying(builder, "device of circuit T is not stated").verdict, Verdict::cannotTell);
}

TEST(TapSource, IsNoTap) {
    EXPECT_EQ(source(tap()).verdict, Verdict::meets);
    auto builder = tap();
    builder.circuitNamed("S").tapRule = TapRule::twentyFiveFoot;
    EXPECT_EQ(source(builder).verdict, Verdict::breach);
}

TEST(TapClaim, CannotBeJudgedWhereItIsNotStated) {
    auto builder = tap();
    builder.circuitNamed("T").tapRule.reset();
    const auto findings = checkTapRule(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::cannotTell);
    EXPECT_THAT(findings[0].missing, testing::ElementsAre("tap rule of circuit T"));
}

TEST(TapClaim, OfServiceConductorsHoldsAtAServiceOnly) {
    auto builder = tap(TapRule::serviceConductors);
    EXPECT_EQ(checkTapRule(builder.build()).at(0).verdict, Verdict::breach);
    builder.circuitNamed("S").role = Role::service;
    EXPECT_EQ(checkTapRule(builder.build()).at(0).verdict, Verdict::meets);
}

TEST(TapClaim, OfATapRuleAtAServiceIsACaution) {
    auto builder = tap();
    builder.circuitNamed("S").role = Role::service;
    EXPECT_EQ(source(builder).verdict, Verdict::caution);
}

TEST(TapClaim, OfNoRuleNeedsTheFullDeviceAhead) {
    EXPECT_EQ(saying(with("2", 90.0, 90.0, TapRule::none), "claims no tap rule").verdict,
              Verdict::meets)
        << "2 AWG carries 95 A at 60 °C";
    EXPECT_EQ(saying(tap(TapRule::none), "claims no tap rule").verdict, Verdict::breach);
}

TEST(TapClaim, OfOutsideOrHighBayCannotBeToldFromALayout) {
    for (const TapRule rule : {TapRule::outside, TapRule::highBay}) {
        const Finding finding = saying(tap(rule), "more than a layout can state");
        EXPECT_EQ(finding.verdict, Verdict::cannotTell);
        EXPECT_FALSE(finding.missing.empty());
    }
    EXPECT_EQ(check_test::withVerdict(checkTapRule(tap(TapRule::outside).build()), Verdict::breach)
                  .size(),
              0U)
        << "no length and no fraction";
}

TEST(TapRules, FollowTheDefinitionToArticle100) {
    auto builder = tap(TapRule::none);
    builder.layout().edition = standards::Edition::nec2020;
    EXPECT_EQ(checkTapRule(builder.build()).at(0).citation.section, "240.2");
    builder.layout().edition = standards::Edition::nec2023;
    EXPECT_EQ(checkTapRule(builder.build()).at(0).citation.section, "Article 100");
}

/// What is wrong between a tap and its device is told once: the rule asks the same of it.
TEST(DeviceOfATap, IsJudgedByItsRuleAlone) {
    const auto builder = with("8", 200.0, 200.0, TapRule::tenFoot);
    const auto all = runChecks(builder.build(), {Check::ampacity, Check::tapRule});
    const auto cites = [&](Check check) {
        return std::count_if(all.begin(), all.end(), [&](const Finding& finding) {
            return finding.check == check && finding.verdict == Verdict::breach &&
                   finding.citation.section == "240.21(B)" && finding.limit &&
                   finding.measured->unit == Quantity::Unit::amperes;
        });
    };
    EXPECT_EQ(cites(Check::ampacity), 0);
    EXPECT_GE(cites(Check::tapRule), 1);
}

TEST(TapLaws, AThickerOrShorterTapIsNeverWorse) {
    const std::vector<std::string> sizes = {"14", "10", "8", "4", "1", "1/0", "4/0", "500"};
    for (const TapRule rule : {TapRule::tenFoot, TapRule::twentyFiveFoot}) {
        int before = gravity(Verdict::breach);
        for (const std::string& size : sizes) {
            const int now = gravity(fraction(with(size, 600.0, 200.0, rule)).verdict);
            EXPECT_LE(now, before) << size;
            before = now;
        }
        before = gravity(Verdict::meets);
        for (double raceway = 60.0; raceway < 400.0; raceway += 20.0) {
            auto builder = tap(rule);
            builder.layout().entries[1].racewayLength = Inches::of(raceway);
            EXPECT_GE(gravity(length(builder).verdict), before) << raceway;
            before = gravity(length(builder).verdict);
        }
    }
}

}  // namespace
}  // namespace gw::checks
