#include "drawing/bench_cards.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace gw::drawing {
namespace {

using testing::ElementsAre;

TEST(Spread, LeavesAloneWhatDoesNotOverlap) {
    EXPECT_THAT(spread({10.0, 30.0}, {8.0, 8.0}, 0.0, 100.0), ElementsAre(10.0, 30.0));
}

TEST(Spread, PushesApartByTheirWidths) {
    EXPECT_THAT(spread({10.0, 12.0}, {8.0, 8.0}, 0.0, 100.0), ElementsAre(10.0, 18.0));
}

TEST(Spread, StaysWithinItsEnds) {
    EXPECT_THAT(spread({0.0, 99.0}, {8.0, 8.0}, 0.0, 100.0), ElementsAre(4.0, 96.0));
    EXPECT_THAT(spread({98.0, 99.0}, {8.0, 8.0}, 0.0, 100.0), ElementsAre(88.0, 96.0));
}

TEST(Spread, SharesWhatIsTooNarrow) {
    EXPECT_THAT(spread({1.0, 2.0}, {20.0, 20.0}, 0.0, 20.0), ElementsAre(5.0, 15.0));
}

TEST(Spread, OfNothingIsNothing) {
    EXPECT_TRUE(spread({}, {}, 0.0, 1.0).empty());
}

}  // namespace
}  // namespace gw::drawing
