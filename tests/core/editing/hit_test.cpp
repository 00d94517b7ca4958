#include "editing/hit.h"

#include <gtest/gtest.h>

#include "core/editing/samples.h"
#include "support/drawn_layout.h"
#include "support/shipped_shelf.h"

namespace gw::editing {
namespace {

using geometry::Point2;
using geometry::View;
using layout::BlockId;
using layout::ConductorId;
using layout::EntryId;

const geometry::BuiltLayout& fiveTenants() {
    static const parts::Shelf kShelf = gw::test::shippedShelf();
    static const geometry::BuiltLayout kBuilt =
        geometry::build(test::sampleLayout("five-tenants", kShelf), kShelf);
    return kBuilt;
}

/// Coordinates read from samples/five-tenants/layout.json: conductor S1-A runs along y = 1.8,
/// z = 1.7 from x = 3.4 to 16.55; S1-N along y = 0.9, z = 0.79 and S2-C in front of it at z = 3.52;
/// T1-C along y = 5.4, z = 7.42 from x = 19.8 to 44.85, where it turns a right angle in space: the
/// middle of that bend is 1.625 (√2 - 1) = 0.673 in from the corner, at x = 44.37, z = 6.99. Block
/// A's body has its corner at 15.5, 10.1, 0; its port 1 opens downward at x = 16.55, z = 0.79;
/// entry E1 comes through the top (y = 12) at x = 3, z = 2.4.
struct Row {
    std::string name;
    View view;
    Point2 at;
    Item item;
    Hit::Place place;
    std::size_t index;
};
void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

class HitsAt : public ::testing::TestWithParam<Row> {};

TEST_P(HitsAt, FirstIsTheOneThere) {
    const Row& row = GetParam();
    const auto hits = hitsAt(fiveTenants(), row.view, row.at, 0.1);
    ASSERT_FALSE(hits.empty());
    EXPECT_EQ(itemName(fiveTenants().layout, hits.front().item),
              itemName(fiveTenants().layout, row.item));
    EXPECT_EQ(hits.front().place, row.place);
    EXPECT_EQ(hits.front().index, row.index);
}

// clang-format off
const std::vector<Row> kRows = {
    {"OfLanesBehindEachOtherTheOneNearestToTheCover", View::front, {24.0, 0.9}, ConductorId("S2-C"), Hit::Place::leg, 2},
    {"LaneInTopViewIsTheOneThatLiesHigher", View::top, {12.0, -1.7}, ConductorId("S1-A"), Hit::Place::leg, 2},
    {"CornerWhereALegWouldMeet", View::top, {44.37, -6.99}, ConductorId("T1-C"), Hit::Place::bend, 1},
    {"BodyOfABlock", View::front, {18.2, 11.2}, BlockId("BA"), Hit::Place::body, 0},
    {"MouthOfAPort", View::front, {16.55, 10.15}, BlockId("BA"), Hit::Place::port, 0},
    {"RacewayOutsideTheTop", View::front, {3.0, 12.9}, EntryId("E1"), Hit::Place::hole, 5},
    {"HoleInTheBottomBetweenConductors", View::top, {68.5, -5.8}, EntryId("ET5"), Hit::Place::hole, 5},
};
// clang-format on
std::string rowName(const ::testing::TestParamInfo<Row>& info) {
    return info.param.name;
}
INSTANTIATE_TEST_SUITE_P(FiveTenants, HitsAt, ::testing::ValuesIn(kRows), rowName);

TEST(HitsAt, NothingWhereNothingIs) {
    EXPECT_TRUE(hitsAt(fiveTenants(), View::front, {0.5, 6.0}, 0.1).empty());
}

TEST(HitsAt, TakenSlotUnderThePointerIsNamed) {
    // Slot 1 of E1 is where S1-A comes in: x = 3.4095, z = 2.8095.
    const auto hits = hitsAt(fiveTenants(), View::top, {3.4095, -2.8095}, 0.1);
    const auto hole = landingAt(hits);
    ASSERT_TRUE(hole);
    EXPECT_EQ(hole->item, Item(EntryId("E1")));
    EXPECT_EQ(hole->index, 1U);
    EXPECT_TRUE(hole->taken);
}

TEST(HitsAt, BlockSaysThatAPortIsTakenAndWhichIsFree) {
    for (const auto& conductor : fiveTenants().layout.conductors) {
        const auto* in = std::get_if<layout::InPort>(&conductor.to);
        if (in == nullptr) {
            continue;
        }
        const auto& built = fiveTenants().conductors[*indexOf(fiveTenants().layout, conductor.id)];
        const auto hits =
            hitsAt(fiveTenants(), View::front, geometry::project(View::front, built.to.mouth), 0.1);
        const auto port = landingAt(hits);
        ASSERT_TRUE(port) << conductor.tag;
        EXPECT_TRUE(port->taken) << conductor.tag;
    }
}

TEST(HitsAt, EndsOfAConductorAreItsHandles) {
    const auto& built = fiveTenants();
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        for (const View view : {View::front, View::top}) {
            const Point2 at = geometry::project(view, built.conductors[i].from.mouth);
            const auto hits = hitsAt(built, view, at, 0.05);
            const Item item = built.layout.conductors[i].id;
            const auto found = std::find_if(
                hits.begin(), hits.end(), [&](const Hit& hit) { return hit.item == item; });
            ASSERT_NE(found, hits.end());
            // In the top view another stretch of it may lie over its end.
            if (view == View::front || distance(found->at, built.conductors[i].from.mouth) < 1.0) {
                EXPECT_EQ(found->place, Hit::Place::fromEnd) << itemName(built.layout, item);
            }
        }
    }
}

/// Wherever a conductor is, a pointer there finds it, and what it finds lies under the pointer.
TEST(HitsAt, EveryPlaceOfEveryConductorIsFoundInEveryView) {
    for (const auto& name : test::goodSamples()) {
        const auto shelf = gw::test::shippedShelf();
        const auto built = geometry::build(test::sampleLayout(name, shelf), shelf);
        for (std::size_t i = 0; i < built.conductors.size(); ++i) {
            const auto& path = built.conductors[i].built.path;
            const double radius = built.conductors[i].radius();
            for (int k = 0; k <= 12; ++k) {
                const Vec3 at = path.pointAt(path.length().in() * k / 12.0);
                for (const View view : {View::front, View::top, View::end}) {
                    const Point2 pointer = geometry::project(view, at);
                    const auto hits = hitsAt(built, view, pointer, 0.0);
                    const Item item = built.layout.conductors[i].id;
                    const auto found = std::find_if(
                        hits.begin(), hits.end(), [&](const Hit& hit) { return hit.item == item; });
                    ASSERT_NE(found, hits.end()) << name << ", " << itemName(built.layout, item);
                    EXPECT_LE(distance(path.pointAt(found->along), found->at), 0.02);
                    const Point2 there = geometry::project(view, found->at);
                    EXPECT_LE(std::hypot(there.x - pointer.x, there.y - pointer.y), radius + 1e-6);
                }
            }
        }
    }
}

TEST(HitsInSection, CutConductorsAreFoundWhereTheyAreCut) {
    const auto& built = fiveTenants();
    // At x = 12 S1-A and S1-N are cut square at their lanes, (z, y) = (1.7, 1.8) and (0.79, 0.9).
    const auto lane = hitsInSection(built, 12.0, {1.7, 1.8}, 0.05);
    ASSERT_FALSE(lane.empty());
    EXPECT_EQ(lane.front().item, Item(ConductorId("S1-A")));
    EXPECT_EQ(lane.front().place, Hit::Place::leg);
    EXPECT_EQ(lane.front().index, 2U);
    const auto other = hitsInSection(built, 12.0, {0.79, 0.9}, 0.05);
    ASSERT_FALSE(other.empty());
    EXPECT_EQ(other.front().item, Item(ConductorId("S1-N")));
    // Block A starts at x = 15.5.
    EXPECT_TRUE(hitsInSection(built, 15.0, {0.8, 11.5}, 0.05).empty());
    const auto block = hitsInSection(built, 22.6, {0.8, 11.5}, 0.05);
    ASSERT_FALSE(block.empty());
    EXPECT_EQ(block.front().item, Item(BlockId("BA")));
}

TEST(ItemsInside, WholeGutterHoldsEverythingAndABandOnlyWhatIsWhollyInIt) {
    const auto& built = fiveTenants();
    const auto all = itemsInside(built, View::front, {{-1, -1}, {73, 13}});
    EXPECT_EQ(all.size(), built.blocks.size() + built.entries.size() + built.conductors.size());
    const auto block = itemsInside(built, View::front, {{26, 12.5}, {15, 10}});
    EXPECT_EQ(block, Items{BlockId("BA")});
    EXPECT_TRUE(itemsInside(built, View::front, {{15.6, 10}, {26, 12.5}}).empty());
}

TEST(Items, AreNamedByTagOrNameAndTogetherByKind) {
    const auto& layout = fiveTenants().layout;
    EXPECT_EQ(itemName(layout, ConductorId("S1-A")), "conductor S1-A");
    EXPECT_EQ(itemName(layout, BlockId("BA")), "block A");
    EXPECT_EQ(itemName(layout, EntryId("E1")), "entry Service set 1");
    EXPECT_EQ(itemName(layout, layout::CircuitId("T3")), "circuit Bakery");
    EXPECT_EQ(itemsName(layout, {BlockId("BA"), BlockId("BB"), EntryId("E1")}),
              "2 blocks and 1 entry");
    EXPECT_FALSE(isThere(layout, BlockId("S1-A")));
    EXPECT_TRUE(isThere(layout, ConductorId("S1-A")));
}

}  // namespace
}  // namespace gw::editing
