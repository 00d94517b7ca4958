#include "editing/port_room.h"

#include <gtest/gtest.h>

#include "core/support/sample_layouts.h"
#include "editing/bounds.h"
#include "editing/next_conductor.h"

namespace gw::editing {
namespace {

using gw::test::emptyGutter;
using gw::test::oneTap;
using gw::test::Sample;

/// The row's ports take up to 2/0 AWG: NFPA 70 Table 312.6(A) asks 3 1/2 in for one wire. The bores
/// are 0.75 in wide; port "1" of a block at (30, 4, 1) opens downward at (31, 4, 2).
TEST(PortRoom, IsAsLongAsTheTableAsksAndAsWideAsTheBore) {
    const Sample sample = oneTap();
    const auto rooms = portRooms(geometry::build(sample.layout, sample.shelf), 0);
    ASSERT_EQ(rooms.size(), 3U);
    EXPECT_EQ(rooms.front().box.least, (Vec3{30.625, 0.5, 1.625}));
    EXPECT_EQ(rooms.front().box.greatest, (Vec3{31.375, 4.0, 2.375}));
    EXPECT_TRUE(rooms.front().inside);
}

TEST(PortRoom, ThatReachesOutOfTheGutterSaysSo) {
    Sample sample = emptyGutter();
    sample.addBlock("A", "row", {30, 3.5, 1});  // 3.5 in below it: just enough
    EXPECT_TRUE(portRooms(geometry::build(sample.layout, sample.shelf), 0).front().inside);
    sample.block("A").corner.y = 3.25;
    EXPECT_FALSE(portRooms(geometry::build(sample.layout, sample.shelf), 0).front().inside);
}

TEST(PortRoom, IsNotShownWhereThePartDoesNotSayWhatItTakes) {
    Sample sample = oneTap();
    for (auto& port : sample.part("row").ports) {
        port.accepts.clear();
    }
    EXPECT_TRUE(portRooms(geometry::build(sample.layout, sample.shelf), 0).empty());
}

TEST(PortRoom, OfAThroughPortIsAtBothMouths) {
    Sample sample = emptyGutter();
    sample.addBlock("R", "through", {20, 3, 1});  // "run" both ways along x, "tap" downward
    EXPECT_EQ(portRooms(geometry::build(sample.layout, sample.shelf), 0).size(), 3U);
}

TEST(Bounds, HoldWhatTheyAreOf) {
    const Sample sample = oneTap();
    const auto built = geometry::build(sample.layout, sample.shelf);
    const auto ofBlock = boundsOf(built, {layout::BlockId("A")});
    EXPECT_EQ(ofBlock.least, (Vec3{30, 4, 1}));
    EXPECT_EQ(ofBlock.greatest, (Vec3{36, 6, 3}));
    const auto both = boundsOf(built, {layout::BlockId("A"), layout::ConductorId("c1")});
    EXPECT_NEAR(both.least.y, 2.0 - 0.254 / 2.0, 1e-9);  // 6 AWG THHN along y = 2, Table 5
    EXPECT_EQ(both.greatest.x, 36.0);
    EXPECT_EQ(boundsOf(built, {}).greatest, built.gutter().inside);
}

TEST(NextConductor, IsTheFirstThatIsMissingAndOfTheSameKind) {
    Sample sample = oneTap();  // c1 is phase A of set 1, 6 AWG copper
    sample.circuit("feed").sets = 2;
    const layout::CircuitId feed("feed");
    auto next = nextConductor(sample.layout, feed, {});
    ASSERT_TRUE(next);
    EXPECT_EQ(next->set, 1);
    EXPECT_EQ(next->phase, layout::Phase::b);
    EXPECT_EQ(next->kind.size.label(), "6");
    EXPECT_EQ(next->kind.metal, standards::Metal::copper);
    EXPECT_FALSE(nextConductor(sample.layout, layout::CircuitId("none"), {}));
}

TEST(NextConductor, IsNoneWhereAllAreThere) {
    Sample sample = oneTap();
    sample.circuit("feed").phases = {layout::Phase::a};
    EXPECT_FALSE(nextConductor(sample.layout, layout::CircuitId("feed"), {}));
}

}  // namespace
}  // namespace gw::editing
