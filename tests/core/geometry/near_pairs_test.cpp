#include "geometry/near_pairs.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <numbers>

#include "base/tolerance.h"
#include "peer/fcl_scene.h"
#include "support/paths.h"
#include "support/scene.h"

namespace gw::geometry {
namespace {

using test_support::FclScene;
using test_support::gutterScene;
using test_support::ItemPairs;
using test_support::leg;
using test_support::looseScene;
using test_support::pathOf;
using test_support::Scene;

constexpr double kPi = std::numbers::pi;

SceneItem tubeItem(const Path& path, double radius, std::uint32_t group = 0) {
    return {&path, radius, 0.0, path.length().in(), {}, group};
}

SceneItem boxItem(const Box& box, std::uint32_t group = 0) {
    SceneItem item;
    item.box = box;
    item.group = group;
    return item;
}

ItemPairs indicesOf(const std::vector<NearPair>& pairs) {
    ItemPairs indices;
    for (const NearPair& pair : pairs) {
        indices.emplace_back(pair.a, pair.b);
    }
    return indices;
}

const Path kRun = pathOf({leg({0, 0, 0}, {20, 0, 0})});
const Path kBeside = pathOf({leg({0, 1.25, 0}, {20, 1.25, 0})});
const Path kFar = pathOf({leg({0, 9, 0}, {20, 9, 0})});

TEST(NearPairs, NothingHasNoPairs) {
    EXPECT_TRUE(nearPairs({}, 1.0).empty());
    const SceneItem alone[] = {tubeItem(kRun, 0.5)};
    EXPECT_TRUE(nearPairs(alone, 1.0).empty());
}

TEST(NearPairs, GivesThePairsWithinReachAndTheirGap) {
    const SceneItem items[] = {tubeItem(kFar, 0.5), tubeItem(kRun, 0.5), tubeItem(kBeside, 0.5)};
    const auto pairs = nearPairs(items, 0.3);
    ASSERT_EQ(indicesOf(pairs), (ItemPairs{{1, 2}}));
    EXPECT_NEAR(pairs[0].closest.gap.in(), 0.25, 1e-12);
    EXPECT_NEAR(pairs[0].closest.onB.y, 1.25, 1e-12);
}

TEST(NearPairs, ReachItselfStillCounts) {
    const SceneItem items[] = {tubeItem(kRun, 0.5), tubeItem(kBeside, 0.5)};
    EXPECT_EQ(nearPairs(items, 0.25).size(), 1U);
    EXPECT_EQ(nearPairs(items, 0.2499).size(), 0U);
}

TEST(NearPairs, ItemsOfOneGroupAreNeverCompared) {
    const SceneItem items[] = {
        tubeItem(kRun, 0.5, 7), tubeItem(kBeside, 0.5, 7), tubeItem(kBeside, 0.5, 8)};
    EXPECT_EQ(indicesOf(nearPairs(items, 0.3)), (ItemPairs{{0, 2}, {1, 2}}));
}

TEST(NearPairs, ItemsWithoutAGroupAreComparedWithAll) {
    const SceneItem items[] = {tubeItem(kRun, 0.5), tubeItem(kBeside, 0.5)};
    EXPECT_EQ(nearPairs(items, 0.3).size(), 1U);
}

TEST(NearPairs, OnlyThePartThatCountsCounts) {
    const Path post = pathOf({leg({15, 2, -5}, {15, 2, 5})});
    SceneItem start = tubeItem(kRun, 0.5);
    start.to = 8.0;
    const SceneItem items[] = {start, tubeItem(post, 0.5)};
    EXPECT_TRUE(nearPairs(items, 1.0).empty());
}

TEST(NearPairs, BoxesMeetTubesAndBoxes) {
    const Box near{{2, 0.75, -1}, {5, 3, 1}};
    const Box on{{5.5, 1, -1}, {7, 3, 1}};
    const SceneItem items[] = {boxItem(near), tubeItem(kRun, 0.5), boxItem(on)};
    const auto pairs = nearPairs(items, 0.5);
    ASSERT_EQ(indicesOf(pairs), (ItemPairs{{0, 1}, {0, 2}, {1, 2}}));
    EXPECT_NEAR(pairs[0].closest.gap.in(), 0.25, 1e-12);  // 0.75 - 0.5
    EXPECT_NEAR(pairs[0].closest.onA.y, 0.75, 1e-12);     // on the box
    EXPECT_NEAR(pairs[0].closest.onB.y, 0.0, 1e-12);      // on the centreline
    EXPECT_NEAR(pairs[0].closest.sB, pairs[0].closest.onB.x, 1e-12);
    EXPECT_NEAR(pairs[1].closest.gap.in(), 0.5, 1e-12);  // 5.5 - 5
    EXPECT_NEAR(pairs[2].closest.gap.in(), 0.5, 1e-12);  // 1 - 0.5
}

TEST(NearPairs, ThingsVeryFarApartCostNoMemory) {
    const Path lost = pathOf({leg({1e7, 1e7, 1e7}, {1e7 + 5, 1e7, 1e7})});
    const SceneItem items[] = {tubeItem(kRun, 0.5), tubeItem(kBeside, 0.5), tubeItem(lost, 0.5)};
    EXPECT_EQ(nearPairs(items, 0.3).size(), 1U);
}

/// Every pair by the two-tube function, which has its own tests.
std::map<std::pair<std::uint32_t, std::uint32_t>, double> gapsOneByOne(const Scene& scene) {
    std::map<std::pair<std::uint32_t, std::uint32_t>, double> gaps;
    const auto items = scene.items();
    const auto tubeOf = [](const SceneItem& item) {
        return Tube{item.path, item.radius, item.from, item.to};
    };
    for (std::uint32_t a = 0; a < items.size(); ++a) {
        for (std::uint32_t b = a + 1; b < items.size(); ++b) {
            if (items[b].path != nullptr) {
                gaps[{a, b}] = clearance(tubeOf(items[a]), tubeOf(items[b])).gap.in();
            } else if (items[a].path != nullptr) {
                gaps[{a, b}] = clearance(tubeOf(items[a]), toOriented(items[b].box)).gap.in();
            } else {
                gaps[{a, b}] = clearance(items[a].box, items[b].box).in();
            }
        }
    }
    return gaps;
}

TEST(NearPairs, AreThoseFoundOneByOne) {
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Scene scene = seed % 2 == 0 ? looseScene(8, 3, seed) : gutterScene(16, seed);
        constexpr double kWithin = 0.5;
        auto expected = gapsOneByOne(scene);
        using Key = std::pair<std::uint32_t, std::uint32_t>;
        for (const NearPair& pair : nearPairs(scene.items(), kWithin)) {
            const Key key{pair.a, pair.b};
            ASSERT_EQ(expected.count(key), 1U);
            EXPECT_NEAR(pair.closest.gap.in(), expected[key], kClearanceError);
            expected.erase(key);
        }
        for (const auto& [pair, gap] : expected) {
            EXPECT_GT(gap, kWithin - kClearanceError) << pair.first << " and " << pair.second;
        }
    }
}

TEST(NearPairs, SameItemsGiveTheSameBits) {
    const Scene scene = gutterScene(60, 11);
    const auto once = nearPairs(scene.items(), 0.25);
    const auto again = nearPairs(scene.items(), 0.25);
    ASSERT_EQ(once.size(), again.size());
    for (std::size_t i = 0; i < once.size(); ++i) {
        EXPECT_EQ(once[i].closest.gap.in(), again[i].closest.gap.in());
        EXPECT_EQ(once[i].closest.onA, again[i].closest.onA);
        EXPECT_EQ(once[i].closest.onB, again[i].closest.onB);
    }
}

/// Sub-scenes too: that of two things and all that is left when some of the others are gone.
TEST(NearPairs, OfAFewItemsAreThoseOfAll) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Scene scene = seed % 2 == 0 ? looseScene(8, 3, seed) : gutterScene(24, seed);
        const auto items = scene.items();
        const auto asked = std::make_unique<bool[]>(items.size());  // vector<bool> has no bools
        asked[seed % items.size()] = true;
        asked[(seed * 7) % items.size()] = true;
        std::vector<NearPair> expected;
        for (const NearPair& pair : nearPairs(items, 0.5)) {
            if (asked[pair.a] || asked[pair.b]) {
                expected.push_back(pair);
            }
        }
        const auto found = nearPairsOf(items, {asked.get(), items.size()}, 0.5);
        ASSERT_EQ(indicesOf(found), indicesOf(expected));
        for (std::size_t i = 0; i < found.size(); ++i) {
            EXPECT_EQ(found[i].closest.gap.in(), expected[i].closest.gap.in());
            EXPECT_EQ(found[i].closest.onA, expected[i].closest.onA);
            EXPECT_EQ(found[i].closest.onB, expected[i].closest.onB);
        }
    }
}

/// The same colliding pairs as a general collision library on chords of five degrees, except where
/// the gap is within 0.005 in of none.
TEST(NearPairs, CollideAsInAGeneralCollisionLibrary) {
    constexpr double kBand = 0.005;
    std::size_t collisions = 0;
    std::size_t inBand = 0;
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Scene scene = seed % 2 == 0 ? looseScene(6, 2, seed) : gutterScene(14, seed);
        std::map<std::pair<std::uint32_t, std::uint32_t>, double> ours;
        for (const NearPair& pair : nearPairs(scene.items(), kBand)) {
            ours[{pair.a, pair.b}] = pair.closest.gap.in();
        }
        const FclScene peer(scene, kPi / 36, 0.0);
        for (const auto& pair : peer.nearPairs(FclScene::Way::overlaps)) {
            EXPECT_EQ(ours.count(pair), 1U) << pair.first << " and " << pair.second;
            collisions += 1;
            inBand += ours.count(pair) == 1 && ours[pair] > -kBand ? 1U : 0U;
            ours.erase(pair);
        }
        for (const auto& [pair, gap] : ours) {
            EXPECT_GT(gap, -kBand) << pair.first << " and " << pair.second;
            inBand += 1;
        }
    }
    EXPECT_GT(collisions, 5000U);        // else the scenes show nothing
    EXPECT_LT(inBand * 20, collisions);  // nor if most were left undecided
}

}  // namespace
}  // namespace gw::geometry
