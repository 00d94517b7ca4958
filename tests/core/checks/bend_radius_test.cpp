#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/tolerance.h"
#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::spare;
using layout::Wall;
using standards::Insulation;
using test_support::Random;

/// One conductor with a right-angled bend of this centreline radius and room for it.
GutterBuilder bent(double radius) {
    GutterBuilder builder({100.0, 60.0, 20.0});
    builder.conductor("S-A", spare({5, 5, 5}), spare({60, 40, 5}), {corner({60, 5, 5}, radius)});
    return builder;
}

struct RadiusRow {
    std::string size;
    Insulation insulation;
    double diameter;
    double inner;  ///< least, inches
};

void PrintTo(const RadiusRow& row, std::ostream* out) {
    *out << row.size << ": " << row.inner;
}

class LeastRadius : public testing::TestWithParam<RadiusRow> {};

TEST_P(LeastRadius, IsFourOrFiveTimesTheDiameterAtTheInnerSurface) {
    const RadiusRow& row = GetParam();
    const auto findingAt = [&](double centreline) {
        auto builder = bent(centreline);
        builder.conductorNamed("S-A").size = units::WireSize::of(row.size);
        builder.conductorNamed("S-A").insulation = row.insulation;
        return checkBendRadius(builder.build()).at(0);
    };
    const double centreline = row.inner + row.diameter / 2.0;
    EXPECT_NEAR(findingAt(centreline).limit->value, row.inner, 1e-9);
    EXPECT_NEAR(findingAt(centreline).measured->value, row.inner, 1e-9);
    EXPECT_EQ(findingAt(centreline + 0.01).verdict, Verdict::meets);
    EXPECT_EQ(findingAt(centreline).verdict, Verdict::meets);
    EXPECT_EQ(findingAt(centreline - 0.01).verdict, Verdict::breach);
    EXPECT_NEAR(findingAt(centreline - 0.01).margin->value, -0.01, 1e-9);
    EXPECT_EQ(findingAt(centreline).citation.standard, "ICEA S-95-658/NEMA WC 70");
}

// Multiples: ICEA S-95-658/NEMA WC 70 training radius, 4 times up to 1 in, 5 times above.
// Diameters: NFPA 70 Chapter 9 Table 5. 500 kcmil THW, 1.003 in, is just over the step.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Training, LeastRadius, testing::Values(
    RadiusRow{"1/0", Insulation::thwn2, 0.486, 1.944},
    RadiusRow{"4/0", Insulation::thwn2, 0.642, 2.568},
    RadiusRow{"500", Insulation::thwn2, 0.949, 3.796},
    RadiusRow{"600", Insulation::thwn2, 1.051, 5.255},
    RadiusRow{"750", Insulation::thwn2, 1.156, 5.780},
    RadiusRow{"500", Insulation::thw,   1.003, 5.015}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(BendRadius, StepsByTheStatedDiameter) {
    // ICEA: up to 1.000 in four times, above five.
    auto builder = bent(4.5);
    builder.conductorNamed("S-A").outsideDiameter = units::Inches::of(1.0);
    EXPECT_EQ(checkBendRadius(builder.build()).at(0).limit->value, 4.0);
    EXPECT_EQ(checkBendRadius(builder.build()).at(0).verdict, Verdict::meets);
    builder.conductorNamed("S-A").outsideDiameter = units::Inches::of(1.001);
    EXPECT_NEAR(checkBendRadius(builder.build()).at(0).limit->value, 5.005, 1e-9);
    EXPECT_EQ(checkBendRadius(builder.build()).at(0).verdict, Verdict::breach);
}

TEST(BendRadius, WarnsNearTheStep) {
    const auto workingAt = [](double diameter) {
        auto builder = bent(8.0);
        builder.conductorNamed("S-A").outsideDiameter = units::Inches::of(diameter);
        return checkBendRadius(builder.build()).at(0).working;
    };
    EXPECT_THAT(workingAt(0.969), testing::Not(testing::HasSubstr("measure the conductor")));
    EXPECT_THAT(workingAt(0.971), testing::HasSubstr("measure the conductor"));
    EXPECT_THAT(workingAt(1.029), testing::HasSubstr("measure the conductor"));
    EXPECT_THAT(workingAt(1.031), testing::Not(testing::HasSubstr("measure the conductor")));
}

TEST(BendRadius, TheTightestBendDecides) {
    auto builder = bent(12.0);
    builder.layout().conductors.front().corners.push_back(corner({60, 25, 5}, 2.0));
    std::get<layout::Spare>(builder.layout().conductors.front().to).tip = {80, 25, 5};
    const auto findings = checkBendRadius(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::breach);
    EXPECT_NEAR(findings[0].measured->value, 2.0 - 0.949 / 2.0, 1e-9);
    // The middle of that bend lies off its corner by r (sqrt 2 - 1).
    EXPECT_NEAR(distance(*findings[0].place, {60, 25, 5}), 2.0 * (std::sqrt(2.0) - 1.0), 1e-9);
}

TEST(BendRadius, MeetsWhereNothingBends) {
    GutterBuilder builder;
    builder.conductor("S-A", spare({5, 5, 5}), spare({40, 5, 5}));
    const auto findings = checkBendRadius(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::meets);
    EXPECT_THAT(findings[0].working, testing::HasSubstr("runs straight"));
}

TEST(BendRadius, ACornerWithoutRadiusIsABreachOfNoRadiusAtAll) {
    const auto finding = checkBendRadius(bent(0.0).build()).at(0);
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_EQ(finding.measured->value, 0.0);
}

TEST(BendRadius, SaysThatTheCodeHasNoNumber) {
    EXPECT_THAT(checkBendRadius(bent(8.0).build()).at(0).citation.note,
                testing::HasSubstr("the code has none to 1000 V"));
}

TEST(BendRadiusOfUnknownInsulation, CannotTellABreachAndMeetsByTheLargest) {
    auto builder = bent(4.5);
    builder.conductorNamed("S-A").insulation.reset();
    const auto tight = checkBendRadius(builder.build()).at(0);
    EXPECT_EQ(tight.verdict, Verdict::cannotTell);
    EXPECT_THAT(tight.missing, testing::ElementsAre("insulation of conductor S-A"));
    builder.conductorNamed("S-A").corners.front().radius = units::Inches::of(12.0);
    const auto wide = checkBendRadius(builder.build()).at(0);
    EXPECT_EQ(wide.verdict, Verdict::meets);
    EXPECT_THAT(wide.working, testing::HasSubstr("largest published"));
}

struct UnknownRow {
    std::string name;
    std::optional<Insulation> insulation;
    double centreline;
    Verdict verdict;
    std::string missing;
};

void PrintTo(const UnknownRow& row, std::ostream* out) {
    *out << row.name << " at " << row.centreline;
}

class RadiusOfUnknown : public testing::TestWithParam<UnknownRow> {};

TEST_P(RadiusOfUnknown, HoldsOnlyWhatHoldsForAll) {
    const UnknownRow& row = GetParam();
    auto builder = bent(row.centreline);
    builder.conductorNamed("S-A").insulation = row.insulation;
    const auto findings = checkBendRadius(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, row.verdict) << findings[0].working;
    if (row.missing.empty()) {
        EXPECT_TRUE(findings[0].missing.empty());
    } else {
        EXPECT_THAT(findings[0].missing, testing::ElementsAre(testing::StartsWith(row.missing)));
    }
}

// 500 kcmil class B. Bare, Chapter 9 Table 8: 0.813 in, so 4 x 0.813 + 0.4065 = 3.6585 in at the
// centreline is the least that any conductor of that size may have. The largest of Table 5 is RHH
// with covering, 1.133 in, covered by (1.133 - 0.813) / 2 = 0.160 in: 6 times if all of that is
// insulation, 6 x 1.133 + 0.5665 = 7.3645 in, and 5 times if no more than 0.156 in of it is,
// 5 x 1.133 + 0.5665 = 6.2315 in. Multiples: ICEA S-95-658/NEMA WC 70.
// clang-format off
INSTANTIATE_TEST_SUITE_P(BendRadius, RadiusOfUnknown, testing::Values(
    UnknownRow{"not stated, tighter than bare metal may be",   {},              3.6485, Verdict::breach,     ""},
    UnknownRow{"not stated, as tight as bare metal may be",    {},              3.6585, Verdict::cannotTell, "insulation of conductor S-A"},
    UnknownRow{"not stated, a little tight for the largest",   {},              7.3545, Verdict::cannotTell, "insulation of conductor S-A"},
    UnknownRow{"not stated, wide enough for the largest",      {},              7.3645, Verdict::meets,      ""},
    UnknownRow{"covered, too tight for thin insulation",       Insulation::rhh, 6.2215, Verdict::breach,     ""},
    UnknownRow{"covered, wide enough for thin insulation",     Insulation::rhh, 6.2315, Verdict::cannotTell, "insulation thickness of conductor S-A"},
    UnknownRow{"covered, a little tight for thick insulation", Insulation::rhh, 7.3545, Verdict::cannotTell, "insulation thickness of conductor S-A"},
    UnknownRow{"covered, wide enough for thick insulation",    Insulation::rhh, 7.3645, Verdict::meets,      ""}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(BendsThatDoNotFit, BreachWithNeededAndAvailable) {
    // Two right-angled bends of 5 in on a leg of 8 in: they need 5 + 5 in.
    GutterBuilder builder({100.0, 60.0, 20.0});
    builder.conductor("S-A",
                      spare({5, 5, 5}),
                      spare({60, 13, 5}),
                      {corner({30, 5, 5}, 5.0), corner({30, 13, 5}, 5.0)});
    const auto findings = checkBendRadius(builder.build());
    ASSERT_EQ(findings.size(), 1U) << "the radius asked for would do: one mistake, told once";
    EXPECT_EQ(findings[0].verdict, Verdict::breach);
    EXPECT_EQ(findings[0].citation.basis, standards::Basis::geometry);
    EXPECT_NEAR(findings[0].limit->value, 10.0, 1e-9);
    EXPECT_NEAR(findings[0].measured->value, 8.0, 1e-9);
    EXPECT_NEAR(findings[0].margin->value, -2.0, 1e-9);
}

TEST(BendsThatDoNotFit, AreToldOnceOnLegsThatShareABend) {
    // One bend of 12 in between two of 5 in, on legs of 14 in: 17 in are needed on both.
    GutterBuilder builder({100.0, 60.0, 20.0});
    builder.conductor(
        "S-A",
        spare({5, 5, 5}),
        spare({44, 50, 5}),
        {corner({30, 5, 5}, 5.0), corner({30, 19, 5}, 12.0), corner({44, 19, 5}, 5.0)});
    const auto findings = checkBendRadius(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_NEAR(findings[0].limit->value, 17.0, 1e-9);
    EXPECT_NEAR(findings[0].measured->value, 14.0, 1e-9);
}

TEST(BendsThatDoNotFit, AndAreTooTightAreTwoMistakes) {
    // 1 in asked for 500 kcmil, and a leg of 1 in where 1 + 1 in are needed.
    GutterBuilder builder({100.0, 60.0, 20.0});
    builder.conductor("S-A",
                      spare({5, 5, 5}),
                      spare({60, 6, 5}),
                      {corner({30, 5, 5}, 1.0), corner({30, 6, 5}, 1.0)});
    EXPECT_EQ(check_test::withVerdict(checkBendRadius(builder.build()), Verdict::breach).size(),
              2U);
}

TEST(BendsThatDoNotFit, AReversalIsABreach) {
    GutterBuilder builder;
    builder.conductor("S-A", spare({5, 5, 5}), spare({10, 5, 5}), {corner({40, 5, 5}, 3.0)});
    const auto findings = checkBendRadius(builder.build());
    EXPECT_THAT(check_test::sortedTexts(findings), testing::Contains(testing::HasSubstr("breach")));
    EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const Finding& one) {
        return one.working.find("turns back on itself") != std::string::npos;
    }));
}

class KinkAtAnEntry : public testing::TestWithParam<std::pair<double, bool>> {};

TEST_P(KinkAtAnEntry, IsABendWithoutRadius) {
    const auto [degreesAskew, breaches] = GetParam();
    GutterBuilder builder;
    builder.entry("in", Wall::left, 5.0, 5.0);
    const double rise = 40.0 * std::tan(degreesAskew * 3.14159265358979323846 / 180.0);
    builder.conductor("S-A", atEntry("in"), spare({40.0, 5.0 + rise, 5.0}));
    const auto findings =
        check_test::withVerdict(checkBendRadius(builder.build()), Verdict::breach);
    EXPECT_EQ(findings.size(), breaches ? 1U : 0U);
    if (breaches) {
        EXPECT_NEAR(findings.front().measured->value, degreesAskew, 1e-6);
        EXPECT_EQ(findings.front().citation.basis, standards::Basis::commonPractice);
        EXPECT_THAT(findings.front().working, testing::HasSubstr("entry in"));
    }
}

// Half a degree counts as straight: common practice, no source.
INSTANTIATE_TEST_SUITE_P(Angles,
                         KinkAtAnEntry,
                         testing::Values(std::pair{0.0, false},
                                         std::pair{0.4999, false},
                                         std::pair{0.5001, true},
                                         std::pair{30.0, true}));

TEST(KinkAtAPort, IsNamedByItsPort) {
    auto builder = check_test::straightSplice();
    builder.layout().entries.front().u = 12.0;
    const auto findings = checkBendRadius(builder.build());
    EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const Finding& one) {
        return one.verdict == Verdict::breach &&
               one.working.find("port 1 of block A") != std::string::npos;
    }));
}

TEST(BendRadiusLaws, AWiderBendNeverBreachesAndOrderDoesNotMatter) {
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
        Random random(seed);
        GutterBuilder builder({200.0, 200.0, 200.0});
        for (int i = 0; i < 5; ++i) {
            const Vec3 at = random.in({80, 80, 80}, {120, 120, 120});
            builder.conductor("C" + std::to_string(i),
                              spare(at + 60.0 * random.direction()),
                              spare(at + 60.0 * random.direction()),
                              {corner(at, random.between(0.5, 8.0))});
        }
        const auto tight = checkBendRadius(builder.build());
        for (auto& conductor : builder.layout().conductors) {
            auto& radius = conductor.corners.front().radius;
            radius = radius * random.between(1.0, 1.5);
        }
        const auto wide = checkBendRadius(builder.build());
        if (wide.size() == tight.size()) {  // none stopped fitting
            for (std::size_t i = 0; i < wide.size(); ++i) {
                EXPECT_FALSE(tight[i].verdict == Verdict::meets &&
                             wide[i].verdict != Verdict::meets)
                    << "seed " << seed;
            }
        }
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        EXPECT_EQ(check_test::sortedTexts(checkBendRadius(builder.build())),
                  check_test::sortedTexts(wide))
            << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
