#include "drawing/placer.h"

#include <gtest/gtest.h>

namespace gw::drawing {
namespace {

struct CrossRow {
    const char* name;
    Point a, b, c, d;
    bool crossing;
};

// clang-format off
const CrossRow kCrossRows[] = {
    {"AnX",            {0, 0}, {2, 2}, {0, 2}, {2, 0}, true},
    {"Parallel",       {0, 0}, {2, 0}, {0, 1}, {2, 1}, false},
    {"OneEndTouches",  {0, 0}, {2, 0}, {1, 0}, {1, 2}, false},  // a leader may start on another's foot
    {"TooShort",       {0, 0}, {2, 0}, {1, 1}, {1, 2}, false},
};
// clang-format on

TEST(Placer, LinesCrossOnlyInside) {
    for (const auto& row : kCrossRows) {
        EXPECT_EQ(cross(row.a, row.b, row.c, row.d), row.crossing) << row.name;
        EXPECT_EQ(cross(row.c, row.d, row.a, row.b), row.crossing) << row.name << ", swapped";
    }
}

TEST(Placer, NothingCoversALabelAndNoLeaderCrossesIt) {
    Placer placer({0, 0, 100, 100});
    placer.take({40, 40, 20, 20});
    EXPECT_FALSE(placer.isFree(Rect{55, 55, 10, 10}));
    EXPECT_FALSE(placer.isFree(Point{0, 50}, Point{100, 50}));
    EXPECT_TRUE(placer.isFree(Rect{60, 60, 10, 10})) << "edges may touch";
}

TEST(Placer, ALeaderMayEndInAThingThatLabelsKeepOff) {
    Placer placer({0, 0, 100, 100});
    placer.keepOff({40, 40, 20, 20});
    EXPECT_FALSE(placer.isFree(Rect{55, 55, 10, 10}));
    EXPECT_TRUE(placer.isUnlabelled(Rect{55, 55, 10, 10})) << "a name may stand on the thing";
    EXPECT_TRUE(placer.isFree(Point{0, 50}, Point{50, 50}));
}

TEST(Placer, LeadersDoNotCross) {
    Placer placer({0, 0, 100, 100});
    placer.takeLeader({0, 0}, {100, 100}, 0.0);
    EXPECT_FALSE(placer.isFree(Point{0, 100}, Point{100, 0}));
    EXPECT_FALSE(placer.isFree(Rect{45, 45, 10, 10}));
    EXPECT_TRUE(placer.isFree(Point{0, 10}, Point{90, 100}));
}

TEST(Placer, ALeadersDotTouchesNoLabelNorALabelTheDot) {
    Placer placer({0, 0, 100, 100});
    placer.take({40, 40, 20, 20});
    EXPECT_TRUE(placer.isFree(Point{0, 30}, Point{50, 39.5}, 0.4));
    EXPECT_FALSE(placer.isFree(Point{0, 30}, Point{50, 39.7}, 0.4));
    placer.takeLeader({0, 80}, {50, 80}, 0.4);
    EXPECT_FALSE(placer.isFree(Rect{50.3, 79, 5, 2}));
    EXPECT_TRUE(placer.isFree(Rect{50.5, 79, 5, 2}));
}

TEST(Placer, NothingLeavesTheBounds) {
    const Placer placer({0, 0, 100, 100});
    EXPECT_TRUE(placer.isFree(Rect{0, 0, 100, 100}));
    EXPECT_FALSE(placer.isFree(Rect{0, 0, 100.1, 100}));
}

/// Three intervals 10 wide that all wish for 50, 2 apart: the middle one stays, the others step
/// aside by 12. Less room than 3 * 10 + 2 * 2 is none.
TEST(SpreadOut, StepsAsideEvenly) {
    const std::vector<double> wishes{50, 50, 50};
    const std::vector<double> widths{10, 10, 10};
    const auto places = spreadOut(wishes, widths, 2.0, 0.0, 100.0);
    ASSERT_TRUE(places);
    EXPECT_NEAR((*places)[0], 38.0, 1e-9);
    EXPECT_NEAR((*places)[1], 50.0, 1e-9);
    EXPECT_NEAR((*places)[2], 62.0, 1e-9);
    EXPECT_TRUE(spreadOut(wishes, widths, 2.0, 0.0, 34.0));
    EXPECT_FALSE(spreadOut(wishes, widths, 2.0, 0.0, 33.9));
}

}  // namespace
}  // namespace gw::drawing
