#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "checks/support.h"
#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::spare;
using testing::IsEmpty;

/// 4.5 times 0.949 in, 500 kcmil THWN-2.
constexpr double kRadius = 4.2705;

/// Out of the back wall toward the cover to height z, then 10 in to the right: a gutter 12 in deep.
void addBent(GutterBuilder& builder, const std::string& id, double x, double z) {
    builder.entry("in" + id, layout::Wall::back, x, 6.0);
    builder.conductor(
        id, atEntry("in" + id), spare({x + 10.0, 6.0, z}), {corner({x, 6.0, z}, kRadius)});
}

GutterBuilder bent(double z) {
    GutterBuilder builder;
    addBent(builder, "w", 10.0, z);
    return builder;
}

Finding of(const GutterBuilder& builder) {
    const auto findings = checkCoverPush(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct PushRow {
    const char* name;
    double z;
    double push;  ///< lbf, at most
    Verdict verdict;
};

void PrintTo(const PushRow& row, std::ostream* out) {
    *out << row.name;
}

class CoverPush : public testing::TestWithParam<PushRow> {};

TEST_P(CoverPush, IsEstimatedFromWhatSpringsOut) {
    const auto finding = of(bent(GetParam().z));
    EXPECT_EQ(finding.verdict, GetParam().verdict) << finding.working;
    EXPECT_NEAR(finding.measured->value, GetParam().push, 0.01 * GetParam().push);
    EXPECT_EQ(finding.limit->value, 24.0);
    EXPECT_EQ(finding.place.has_value(), GetParam().push > 0.0);
    EXPECT_THAT(finding.subjects, IsEmpty()) << "it is about the cover";
}

// Source: arithmetic. The bend, 6.708 in of arc, opens by 1.4303 degrees an inch (3.3953 x 100 MPa
// over 117 GPa x 0.11625 in): 0.16745 rad. The leg of 10 - 4.2705 = 5.7295 in swings 0.9594 in;
// with half of 0.949 in it reaches z + 1.4339. From the entry to its end are z - 4.2705 + 6.708
// + 5.7295 = z + 8.167 in. E I is 268 490 lbf-in² at most, the yielding moment 967.2 lbf-in.
// z 10.60: 0.0339 in proud, 18.767 in: 3 x 268 490 x 0.0339/18.767³ = 4.13 lbf.
// z 11.00: 0.4339 in proud, 19.167 in: 49.6 lbf, less than 967.2/19.167 = 50.5.
// z 11.40: 0.8339 in proud, 19.567 in: 89.7 lbf, but it yields at 967.2/19.567 = 49.43.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, CoverPush, testing::Values(
    PushRow{"FarBelow",    8.00,  0.0,   Verdict::meets},
    PushRow{"JustBelow",  10.56,  0.0,   Verdict::meets},
    PushRow{"Lightly",    10.60,  4.13,  Verdict::meets},
    PushRow{"ElasticPush", 11.00, 49.6,  Verdict::caution},
    PushRow{"Yielding",   11.40,  49.43, Verdict::caution}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(CoverPushLimit, IsCrossedOnce) {
    int changes = 0;
    Verdict before = Verdict::meets;
    double push = 0.0;
    for (double z = 10.0; z <= 11.5; z += 0.01) {
        const auto finding = of(bent(z));
        EXPECT_EQ(finding.verdict == Verdict::meets, finding.measured->value <= 24.0) << z;
        EXPECT_GE(finding.measured->value, push * 0.99) << z;
        changes += finding.verdict == before ? 0 : 1;
        before = finding.verdict;
        push = finding.measured->value;
    }
    EXPECT_EQ(changes, 1);
}

TEST(CoverPushOfSeveral, AddsUpWithinAFoot) {
    auto builder = bent(10.7);
    const double one = of(builder).measured->value;
    EXPECT_EQ(of(builder).verdict, Verdict::meets);
    addBent(builder, "far", 30.0, 10.7);
    EXPECT_NEAR(of(builder).measured->value, one, 1e-6) << "20 in away";
    addBent(builder, "near", 14.0, 10.7);
    EXPECT_NEAR(of(builder).measured->value, 2.0 * one, 1e-6) << "4 in away";
    EXPECT_EQ(of(builder).verdict, Verdict::caution);
    EXPECT_EQ(of(builder).interval, std::pair(20.0, 24.0));
}

TEST(CoverPushOfAnEndThatIsHeld, IsNone) {
    auto builder = bent(11.0);
    builder.layout().gutter.inside.x = 20.0;
    EXPECT_EQ(of(builder).verdict, Verdict::caution) << "loose before the right wall";
    builder.entry("out", layout::Wall::right, 6.0, 11.0);
    builder.conductorNamed("w").to = atEntry("out");
    EXPECT_EQ(of(builder).verdict, Verdict::meets) << "the entry holds it";
    EXPECT_EQ(of(builder).measured->value, 0.0);
}

TEST(CoverPushOfStraightConductors, IsNoQuestion) {
    GutterBuilder builder;
    builder.entry("in", layout::Wall::left, 6.0, 11.5);
    builder.conductor("w", atEntry("in"), spare({40.0, 6.0, 11.5}));
    EXPECT_THAT(checkCoverPush(builder.build()), IsEmpty());
}

TEST(CoverPushOfABendAlongTheCover, IsNone) {
    GutterBuilder builder;
    builder.entry("in", layout::Wall::left, 2.0, 11.4);
    builder.conductor(
        "w", atEntry("in"), spare({40.0, 10.0, 11.4}), {corner({40.0, 2.0, 11.4}, kRadius)});
    EXPECT_EQ(of(builder).verdict, Verdict::meets);
    EXPECT_EQ(of(builder).measured->value, 0.0);
}

TEST(CoverPushOfABendAwayFromTheCover, IsNone) {
    GutterBuilder builder;
    builder.entry("in", layout::Wall::left, 6.0, 11.4);
    builder.conductor(
        "w", atEntry("in"), spare({40.0, 6.0, 1.0}), {corner({40.0, 6.0, 11.4}, kRadius)});
    EXPECT_EQ(of(builder).verdict, Verdict::meets);
}

TEST(CoverPushOfALooseConductor, IsNone) {
    GutterBuilder builder;
    builder.conductor("w",
                      spare({10.0, 6.0, 1.0}),
                      spare({20.0, 6.0, 11.4}),
                      {corner({10.0, 6.0, 11.4}, kRadius)});
    EXPECT_EQ(of(builder).verdict, Verdict::meets);
}

TEST(CoverPushWithoutAMetal, IsTakenForTheHarder) {
    auto builder = bent(11.0);
    const double copper = of(builder).measured->value;
    builder.conductorNamed("w").metal.reset();
    EXPECT_EQ(of(builder).verdict, Verdict::caution);
    EXPECT_GE(of(builder).measured->value, copper);
}

TEST(CoverPushLaws, ADeeperGutterNeverWorsensIt) {
    int before = gravity(Verdict::breach);
    for (double depth = 12.0; depth <= 14.0; depth += 0.1) {
        auto builder = bent(11.2);
        builder.layout().gutter.inside.z = depth;
        const auto finding = of(builder);
        EXPECT_LE(gravity(finding.verdict), before) << depth;
        EXPECT_NE(finding.verdict, Verdict::breach);
        before = gravity(finding.verdict);
    }
    EXPECT_EQ(before, gravity(Verdict::meets));
}

}  // namespace
}  // namespace gw::checks
