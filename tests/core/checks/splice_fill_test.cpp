#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using check_test::spare;
using test_support::Random;

/// 10 x 10 in with a block of this face from x = 20 to 22.
GutterBuilder withFace(double height, double depth) {
    GutterBuilder builder({60.0, 10.0, 10.0});
    auto part = check_test::splicePart();
    part.body = {2.0, height, depth};
    builder.add(part).block("A", "splice", {20.0, 0.0, 0.0});
    return builder;
}

struct FaceRow {
    std::string name;
    double depth;
    double percent;
    Verdict verdict;
};

class SpliceFillAtTheLimit : public testing::TestWithParam<FaceRow> {};

TEST_P(SpliceFillAtTheLimit, SeventyFivePercentOfTheWholeInsideIsAllowed) {
    const auto findings = checkSpliceFill(withFace(10.0, GetParam().depth).build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, GetParam().verdict);
    EXPECT_NEAR(findings[0].measured->value, GetParam().percent, 1e-9);
    EXPECT_EQ(findings[0].limit->value, 75.0);
    EXPECT_NEAR(findings[0].margin->value, 75.0 - GetParam().percent, 1e-9);
    EXPECT_EQ(findings[0].citation.section, "366.56(A)");
}

// Source: NFPA 70 366.56(A), 75 % of the interior; a face 10 in high in 10 x 10 in.
INSTANTIATE_TEST_SUITE_P(Sides,
                         SpliceFillAtTheLimit,
                         testing::Values(FaceRow{"below", 7.375, 73.75, Verdict::meets},
                                         FaceRow{"at", 7.5, 75.0, Verdict::meets},
                                         FaceRow{"above", 7.5625, 75.625, Verdict::breach}));

TEST(SpliceFill, AddsTheConductorsBesideTheBlock) {
    // Face 74 sq in; one 500 kcmil THWN-2 is 0.7073 sq in (Chapter 9 Table 5), two are 1.4146.
    auto builder = withFace(10.0, 7.4);
    builder.conductor("S-A", spare({10, 5, 9}), spare({40, 5, 9}));
    EXPECT_NEAR(checkSpliceFill(builder.build()).at(0).measured->value, 74.7073, 1e-6);
    EXPECT_EQ(checkSpliceFill(builder.build()).at(0).verdict, Verdict::meets);
    builder.conductor("S-B", spare({10, 6, 9}), spare({40, 6, 9}));
    const auto findings = checkSpliceFill(builder.build());
    EXPECT_NEAR(findings.at(0).measured->value, 75.4146, 1e-6);
    EXPECT_EQ(findings.at(0).verdict, Verdict::breach);
    EXPECT_NEAR(findings.at(0).interval->first, 20.0, 1e-6);
    EXPECT_NEAR(findings.at(0).interval->second, 22.0, 1e-6);
}

TEST(SpliceFill, SaysNothingWhereThereIsNoBlock) {
    GutterBuilder builder;
    builder.conductor("S-A", spare({10, 5, 9}), spare({40, 5, 9}));
    EXPECT_TRUE(checkSpliceFill(builder.build()).empty());
}

TEST(SpliceFill, CannotTellABreachByAnUnknownInsulation) {
    auto builder = withFace(10.0, 7.4);
    builder.conductor("S-A", spare({10, 5, 9}), spare({40, 5, 9})).insulation.reset();
    const auto findings = checkSpliceFill(builder.build());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, Verdict::cannotTell);
    EXPECT_THAT(findings[0].missing, testing::ElementsAre("insulation of conductor S-A"));
}

TEST(SpliceFillLaws, OrderDoesNotMatterAndABlockMoreNeverTakesLess) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        Random random(seed);
        auto builder = withFace(random.between(2.0, 8.0), random.between(2.0, 8.0));
        for (int i = 0; i < 6; ++i) {
            builder.block("B" + std::to_string(i), "splice", {random.between(0.0, 58.0), 0, 0});
            builder.conductor("C" + std::to_string(i),
                              spare({random.between(0.0, 20.0), 9.0, 9.0}),
                              spare({random.between(22.0, 60.0), 9.0, 9.0}));
        }
        const auto before = checkSpliceFill(builder.build());
        std::reverse(builder.layout().blocks.begin(), builder.layout().blocks.end());
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        EXPECT_EQ(check_test::sortedTexts(checkSpliceFill(builder.build())),
                  check_test::sortedTexts(before))
            << "seed " << seed;
        builder.block("more", "splice", {random.between(0.0, 58.0), 0, 0});
        EXPECT_GE(checkSpliceFill(builder.build()).at(0).measured->value,
                  before.at(0).measured->value)
            << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
