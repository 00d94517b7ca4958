#include "geometry/rebuild.h"

#include <gtest/gtest.h>

#include "support/drawn_layout.h"
#include "support/long_gutter.h"
#include "support/random_moves.h"
#include "support/same_built.h"
#include "support/shipped_shelf.h"

namespace gw::geometry {
namespace {

using test_support::Random;

void expectKeptCurrent(const layout::Layout& start, std::uint64_t seed, int moves) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const parts::Shelf shelf = test::shippedShelf();
    const Rebuilder rebuilder(start);
    BuiltLayout kept = build(start, shelf);
    Random random(seed);
    for (int i = 0; i < moves; ++i) {
        const auto move = random.chance(0.3)
                              ? test_support::moveOfABlock(kept.layout, random, 2.0)
                              : test_support::moveOfAConductor(kept.layout, random, 2.0);
        kept.layout = move.after;
        rebuilder.rebuild(kept, move.moved);
        ASSERT_EQ(test_support::firstDifference(kept, build(move.after, shelf)), "")
            << "move " << i;
    }
}

TEST(Rebuild, MovesLeaveWhatAFreshBuildGives) {
    expectKeptCurrent(test::drawnLayout().layout, 1, 300);
}

TEST(Rebuild, InALongGutterToo) {
    expectKeptCurrent(test_support::longGutter(24, test::shippedShelf()), 2, 300);
}

TEST(Rebuild, WithoutAMoveNothingChanges) {
    const auto start = test::drawnLayout().layout;
    BuiltLayout kept = build(start, test::shippedShelf());
    Rebuilder(start).rebuild(kept, {});
    EXPECT_EQ(test_support::firstDifference(kept, build(start, test::shippedShelf())), "");
}

}  // namespace
}  // namespace gw::geometry
