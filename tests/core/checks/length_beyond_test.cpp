#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;

std::vector<Finding> of(double length, std::optional<double> beyond) {
    GutterBuilder builder({length, 8.0, 8.0});
    if (beyond) {
        builder.layout().gutter.beyondEquipment = units::Inches::of(*beyond);
    }
    return checkLengthBeyond(builder.build());
}

// Source: NFPA 70 366.12(2): 30 ft, 360 in.
TEST(LengthBeyond, IsAtMostThirtyFeet) {
    EXPECT_EQ(of(600.0, 359.9).at(0).verdict, Verdict::meets);
    EXPECT_EQ(of(600.0, 360.0).at(0).verdict, Verdict::meets);
    EXPECT_EQ(of(600.0, 360.1).at(0).verdict, Verdict::breach);
    EXPECT_EQ(of(600.0, 372.0).at(0).measured->value, 372.0);
    EXPECT_EQ(of(600.0, 372.0).at(0).margin->value, -12.0);
    EXPECT_THAT(of(600.0, 372.0).at(0).citation.section, testing::HasSubstr("366.12"));
}

TEST(LengthBeyond, NotStatedIsAtMostTheGutterItself) {
    EXPECT_EQ(of(360.0, std::nullopt).at(0).verdict, Verdict::meets);
    const auto longer = of(361.0, std::nullopt).at(0);
    EXPECT_EQ(longer.verdict, Verdict::cannotTell);
    EXPECT_THAT(longer.missing, testing::SizeIs(1));
}

TEST(LengthBeyond, DoesNotConcernWireways) {
    for (const auto article :
         {standards::GutterArticle::metalWireway, standards::GutterArticle::nonmetallicWireway}) {
        GutterBuilder builder({600.0, 8.0, 8.0});
        builder.layout().gutter.article = article;
        EXPECT_THAT(checkLengthBeyond(builder.build()), testing::IsEmpty());
    }
}

/// Property: a shorter gutter is never worse.
TEST(LengthBeyond, ShorterIsNeverWorse) {
    bool met = false;
    for (double length = 700.0; length > 100.0; length -= 20.0) {
        const bool meets = of(length, std::nullopt).at(0).verdict == Verdict::meets;
        EXPECT_TRUE(meets || !met) << length;
        met = meets;
    }
    EXPECT_TRUE(met);
}

}  // namespace
}  // namespace gw::checks
