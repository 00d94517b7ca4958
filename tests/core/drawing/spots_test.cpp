#include "drawing/spots.h"

#include <gtest/gtest.h>

#include <cmath>

namespace gw::drawing {
namespace {

const Rect kSize{0, 0, 8, 3};
const Rect kThing{50, 50, 4, 4};

Rect boxAt(Point middle) {
    return {middle.x - 0.5 * kSize.width, middle.y - 0.5 * kSize.height, kSize.width, kSize.height};
}

TEST(BestSpot, TouchesTheThingWhereAllIsFree) {
    const Placer placer({0, 0, 100, 100});
    const auto spot = bestSpot(placer, {}, kSize, kThing);
    ASSERT_TRUE(spot);
    EXPECT_FALSE(spot->leader);
    EXPECT_FALSE(overlap(boxAt(spot->at), kThing));
    EXPECT_TRUE(overlap(grown(boxAt(spot->at), 0.6), kThing));
}

/// Conductors beside the thing on all sides: the label goes beyond them, on a leader.
TEST(BestSpot, HidesNoConductorWhereItNeedNot) {
    const std::vector<Leg> legs{legOf(0, {0, 47}, {100, 47}, 0, 4),
                                legOf(1, {0, 57}, {100, 57}, 0, 4),
                                legOf(2, {46, 0}, {46, 100}, 0, 4),
                                legOf(3, {58, 0}, {58, 100}, 0, 4)};
    const Placer placer({0, 0, 100, 100});
    const auto spot = bestSpot(placer, legs, kSize, kThing);
    ASSERT_TRUE(spot);
    EXPECT_EQ(conductorsUnder(legs, boxAt(spot->at)), 0U);
    ASSERT_TRUE(spot->leader);
    EXPECT_TRUE(holds(kThing, {spot->leader->foot.x, spot->leader->foot.y, 0, 0}));
}

TEST(BestSpot, KeepsOffWhatIsTaken) {
    Placer placer({0, 0, 100, 100});
    placer.take(grown(kThing, 3.0));
    const auto spot = bestSpot(placer, {}, kSize, kThing);
    EXPECT_FALSE(spot) << "every leader would cross the label around the thing";
    Placer open({0, 0, 100, 100});
    open.keepOff(grown(kThing, 3.0));
    const auto beyond = bestSpot(open, {}, kSize, kThing);
    ASSERT_TRUE(beyond);
    EXPECT_FALSE(overlap(boxAt(beyond->at), grown(kThing, 3.0)));
}

TEST(Legs, CountEachConductorOnce) {
    const std::vector<Leg> legs{legOf(7, {0, 0}, {10, 0}, 0, 1), legOf(7, {10, 0}, {20, 0}, 0, 1)};
    EXPECT_EQ(conductorsUnder(legs, {8, -1, 4, 2}), 1U);
    EXPECT_EQ(conductorsCrossed(legs, {5, -5}, {15, 5}), 0U) << "through the joint of two legs";
    EXPECT_EQ(conductorsCrossed(legs, {5, -5}, {6, 5}), 1U);
}

}  // namespace
}  // namespace gw::drawing
