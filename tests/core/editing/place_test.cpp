#include "editing/place.h"

#include <gtest/gtest.h>

#include "core/editing/samples.h"
#include "core/support/sample_layouts.h"

namespace gw::editing {
namespace {

using gw::test::emptyGutter;
using gw::test::oneTap;
using gw::test::Sample;
using layout::BlockId;
using layout::EntryId;
using layout::Wall;

geometry::BuiltLayout builtOf(const Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

TEST(Placing, ABlockBeyondTheWallsIsMovedInside) {
    const Sample sample = emptyGutter();  // 48 x 8 x 8 in; the row's body is 6 x 2 x 2 in
    const auto made = placeBlock(
        builtOf(sample), sample.shelf, parts::PartId("row"), {47.0, -3.0, 7.0}, {}, std::nullopt);
    ASSERT_TRUE(made) << toLine(made.error());
    ASSERT_EQ(made->layout.blocks.size(), 1U);
    EXPECT_EQ(made->layout.blocks.front().corner, (Vec3{42.0, 0.0, 6.0}));
    EXPECT_EQ(made->items, Items{made->layout.blocks.front().id});
}

TEST(Placing, APartThatIsNotThereIsRefused) {
    const Sample sample = emptyGutter();
    const auto made =
        placeBlock(builtOf(sample), sample.shelf, parts::PartId("none"), {}, {}, std::nullopt);
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().code, ErrorCode::unknown);
    EXPECT_EQ(made.error().found, "none");
}

TEST(Placing, BlocksGetTheFirstLetterThatIsFree) {
    Sample sample = emptyGutter();
    for (const char* name : {"Block A", "Block B"}) {
        const auto made =
            placeBlock(builtOf(sample), sample.shelf, parts::PartId("row"), {}, {}, std::nullopt);
        ASSERT_TRUE(made);
        EXPECT_EQ(made->layout.blocks.back().name, name);
        sample.layout = made->layout;
    }
}

TEST(Placing, FourQuarterTurnsAreNone) {
    Sample sample = emptyGutter();
    sample.addBlock("A", "row", {20, 3, 3});  // room for it any way round
    for (const int axis : {0, 1, 2}) {
        layout::Layout turned = sample.layout;
        for (int i = 0; i < 4; ++i) {
            const auto next = turnBlock(geometry::build(turned, sample.shelf), BlockId("A"), axis);
            ASSERT_TRUE(next);
            turned = *next;
        }
        EXPECT_EQ(turned.blocks.front().attitude, sample.layout.blocks.front().attitude);
        EXPECT_LT(test::apart(turned, sample.layout), 1e-9) << "axis " << axis;
    }
}

TEST(Placing, TurningLeadsTheConductorToWhereThePortIs) {
    const Sample sample = oneTap();
    const auto turned = turnBlock(builtOf(sample), BlockId("A"), 2, 2);
    ASSERT_TRUE(turned);
    const auto built = geometry::build(*turned, sample.shelf);
    const auto& end = built.conductors.front().to;
    EXPECT_LT(end.kink, 1e-6);  // straight into the port, which now opens upward
    EXPECT_NEAR(end.axis.y, 1.0, 1e-12);
    EXPECT_TRUE(built.conductors.front().built.faults.empty());
}

struct WallRow {
    const char* name;
    Vec3 point;
    Wall wall;
    double u;
    double v;
};
void PrintTo(const WallRow& row, std::ostream* out) {
    *out << row.name;
}
class NearestWall : public testing::TestWithParam<WallRow> {};

TEST_P(NearestWall, IsTheOneAtHand) {
    const Sample sample = emptyGutter();
    const auto facts = entryNear(sample.layout.gutter, GetParam().point);
    EXPECT_EQ(facts.wall, GetParam().wall);
    EXPECT_EQ(facts.u, GetParam().u);
    EXPECT_EQ(facts.v, GetParam().v);
}

// u and v by hand from the gutter, 48 x 8 x 8 in.
const std::vector<WallRow> kWalls = {
    {"Above", {10, 8.4, 4}, Wall::top, 10, 4},
    {"Below", {10, -0.2, 4}, Wall::bottom, 10, 4},
    {"LeftEnd", {-0.5, 3, 4}, Wall::left, 3, 4},
    {"RightEndTooHigh", {48.1, 7.95, 4}, Wall::top, 48, 4},
    {"RightEnd", {48.01, 5, 4}, Wall::right, 5, 4},
    {"Back", {20, 4, 0.1}, Wall::back, 20, 4},
};
std::string wallName(const testing::TestParamInfo<WallRow>& row) {
    return row.param.name;
}
INSTANTIATE_TEST_SUITE_P(All, NearestWall, testing::ValuesIn(kWalls), wallName);

TEST(HoleRooms, AreThoseOfTheKnockoutTable) {
    Sample sample = emptyGutter();
    sample.addEntry("in", Wall::top, 24, 4).tradeSize = standards::TradeSize::of("2");
    const auto room = holeRoom(builtOf(sample), EntryId("in"));
    // Knockouts for conduit, trade size 2: 2.469 in nominal; the locknut's 2.94 in is from memory.
    ASSERT_TRUE(room.knockout && room.locknut);
    EXPECT_DOUBLE_EQ(room.knockout->in(), 2.469);
    EXPECT_DOUBLE_EQ(room.locknut->in(), 2.94);
    EXPECT_TRUE(room.collides.empty());
}

TEST(HoleRooms, CollideWithTheNextLocknutTheEdgeAndABlock) {
    Sample sample = emptyGutter();
    const auto size = standards::TradeSize::of("2");
    sample.addEntry("a", Wall::top, 1.46, 4).tradeSize = size;         // 1.47 in is half a locknut
    sample.addEntry("b", Wall::top, 1.46 + 2.93, 4).tradeSize = size;  // 2.94 in asked
    sample.addBlock("A", "row", {6.0, 6.0, 3.0});  // its top is against the wall, from x = 6
    auto collides = holeRoom(builtOf(sample), EntryId("a")).collides;
    EXPECT_EQ(collides,
              (std::vector<std::string>{"the edge of the wall", "the locknut of entry b"}));
    sample.entry("a").u = 1.47;
    sample.entry("b").u = 1.47 + 2.94;  // just touching is no collision
    EXPECT_TRUE(holeRoom(builtOf(sample), EntryId("a")).collides.empty());
    sample.entry("b").u = 5.0;  // reaches to 6.47
    collides = holeRoom(builtOf(sample), EntryId("b")).collides;
    EXPECT_EQ(collides, (std::vector<std::string>{"block A"}));
}

TEST(Circuits, GetASystemWhereThereIsNone) {
    Sample sample = emptyGutter();
    sample.layout.systems.clear();
    sample.layout.circuits.clear();
    layout::Circuit circuit;
    circuit.phases = {layout::Phase::a};
    const auto made = addCircuit(builtOf(sample), circuit);
    ASSERT_TRUE(made) << toLine(made.error());
    ASSERT_EQ(made->layout.systems.size(), 1U);
    EXPECT_EQ(made->layout.circuits.front().system, made->layout.systems.front().id);
    EXPECT_FALSE(made->layout.systems.front().voltsBetweenPhases);  // nothing is assumed
}

TEST(GutterSize, KeepsEntriesOnTheirWallsAndBlocksInside) {
    Sample sample = emptyGutter();
    sample.addEntry("end", Wall::right, 7.5, 4);
    sample.addEntry("up", Wall::top, 40, 7);
    sample.addBlock("A", "row", {40, 5, 5});
    const auto after = setGutterSize(builtOf(sample), {36, 6, 5});
    ASSERT_TRUE(after) << toLine(after.error());
    EXPECT_EQ(after->entries[0].u, 6.0);
    EXPECT_EQ(after->entries[1].u, 36.0);
    EXPECT_EQ(after->entries[1].v, 5.0);
    EXPECT_EQ(after->blocks.front().corner, (Vec3{30, 4, 3}));
}

TEST(GutterSize, OfLessThanAnInchIsRefused) {
    EXPECT_FALSE(setGutterSize(builtOf(oneTap()), {48, 0.5, 8}));
}

}  // namespace
}  // namespace gw::editing
