#include "live/live_layout.h"

#include <gtest/gtest.h>

#include "checks/report.h"
#include "support/drawn_layout.h"
#include "support/shipped_shelf.h"

namespace gw::live {
namespace {

using layout::Layout;

LiveLayout drawn() {
    auto live = LiveLayout::create(test::drawnLayout().layout, test::shippedShelf());
    EXPECT_TRUE(live) << toLine(live.error());
    return std::move(*live);
}

TEST(LiveLayout, FollowsAChangeAndTheWayBack) {
    LiveLayout live = drawn();
    const Layout before = live.layout();
    Layout after = before;
    after.blocks.front().corner.z = before.gutter.inside.z;  // beyond the cover
    const auto patch = live.change(after);
    ASSERT_TRUE(patch);
    EXPECT_EQ(live.layout(), after);
    EXPECT_GT(checks::tally(live.findings()).breach, 0);
    live.apply(patch->reversed());
    EXPECT_EQ(live.layout(), before);
    EXPECT_EQ(checks::tally(live.findings()).breach,
              checks::tally(checks::checkAll(live.built())).breach);
}

TEST(LiveLayout, RefusesWhatIsNoLayoutAndStaysAsItWas) {
    LiveLayout live = drawn();
    const Layout before = live.layout();
    Layout after = before;
    after.conductors.front().circuit = layout::CircuitId("nowhere");
    const auto refused = live.change(after);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().place, "/conductors/0/circuit");
    EXPECT_EQ(live.layout(), before);
}

}  // namespace
}  // namespace gw::live
