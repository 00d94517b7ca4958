#include <gtest/gtest.h>

#include "core/editing/samples.h"
#include "core/support/sample_layouts.h"
#include "editing/edits.h"
#include "support/shipped_shelf.h"

namespace gw::editing {
namespace {

using gw::test::oneTap;
using gw::test::Sample;
using layout::BlockId;
using layout::ConductorId;
using layout::EntryId;

geometry::BuiltLayout builtOf(const Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

/// oneTap(): from (12, 8, 2) down to y = 2, along to x = 31, up into the port at (31, 4, 2).
TEST(Moving, ABlockTakesItsConductorAlongAndKeepsItStraight) {
    const auto after = moveItems(builtOf(oneTap()), {BlockId("A")}, {3, 1, 0.5});
    ASSERT_TRUE(after);
    EXPECT_EQ(after->blocks.front().corner, (Vec3{33, 5, 1.5}));
    const auto built = geometry::build(*after, oneTap().shelf);
    EXPECT_LT(built.conductors.front().to.kink, 1e-6);
    EXPECT_LT(built.conductors.front().from.kink, 1e-6);
    EXPECT_TRUE(built.conductors.front().built.faults.empty());
}

TEST(Moving, ABlockStopsAtTheWalls) {
    const auto after = moveItems(builtOf(oneTap()), {BlockId("A")}, {100, 0, 0});
    ASSERT_TRUE(after);
    EXPECT_EQ(after->blocks.front().corner.x, 42.0);  // 48 less a body of 6
}

TEST(Moving, AnEntryKeepsToItsWall) {
    const auto after = moveItems(builtOf(oneTap()), {EntryId("in")}, {2, 5, 1});
    ASSERT_TRUE(after);
    EXPECT_EQ(after->entries.front().u, 14.0);
    EXPECT_EQ(after->entries.front().v, 3.0);
    EXPECT_LT(geometry::build(*after, oneTap().shelf).conductors.front().from.kink, 1e-6);
}

TEST(Moving, WhatIsNotThereIsRefused) {
    EXPECT_FALSE(moveItems(builtOf(oneTap()), {BlockId("none")}, {1, 0, 0}));
}

TEST(Moving, ThereAndBackIsNothingForEveryBlockOfTheSamples) {
    const parts::Shelf shelf = gw::test::shippedShelf();
    for (const std::string& name : test::goodSamples()) {
        const auto built = geometry::build(test::sampleLayout(name, shelf), shelf);
        for (const auto& block : built.layout.blocks) {
            const auto there = moveItems(built, {block.id}, {0.0625, 0, 0});
            ASSERT_TRUE(there);
            if (there->blocks[*indexOf(*there, block.id)].corner == block.corner) {
                continue;  // at a wall
            }
            const auto back =
                moveItems(geometry::build(*there, shelf), {block.id}, {-0.0625, 0, 0});
            ASSERT_TRUE(back);
            EXPECT_LT(test::apart(*back, built.layout), 1e-6) << name << " " << block.name;
        }
    }
}

TEST(Shaping, ALegMovesSidewaysOnlyAndItsNeighboursFollow) {
    const auto after = moveLeg(builtOf(oneTap()), ConductorId("c1"), 1, {5, 1, 0});
    ASSERT_TRUE(after);
    const auto& corners = after->conductors.front().corners;
    ASSERT_EQ(corners.size(), 2U);
    EXPECT_EQ(corners[0].at, (Vec3{12, 3, 2}));
    EXPECT_EQ(corners[1].at, (Vec3{31, 3, 2}));
}

TEST(Shaping, ALegThatIsNotThereIsRefused) {
    const auto refused = moveLeg(builtOf(oneTap()), ConductorId("c1"), 3, {0, 1, 0});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::outOfRange);
}

TEST(Shaping, TheFirstCornerStaysOnTheRacewaysAxis) {
    const auto after = moveCorner(builtOf(oneTap()), ConductorId("c1"), 0, {4, -0.5, 1});
    ASSERT_TRUE(after);
    const Vec3 at = after->conductors.front().corners.front().at;
    EXPECT_EQ(at.x, 12.0);
    EXPECT_EQ(at.y, 1.5);
    EXPECT_EQ(at.z, 2.0);
}

TEST(Shaping, ABendTakesTheRadiusAskedFor) {
    const auto one = setBendRadius(builtOf(oneTap()), ConductorId("c1"), 1, units::Inches::of(2));
    ASSERT_TRUE(one);
    EXPECT_EQ(one->conductors.front().corners[0].radius.in(), 1.25);
    EXPECT_EQ(one->conductors.front().corners[1].radius.in(), 2.0);
    const auto all =
        setBendRadius(builtOf(oneTap()), ConductorId("c1"), std::nullopt, units::Inches::of(1.5));
    ASSERT_TRUE(all);
    EXPECT_EQ(all->conductors.front().corners[0].radius.in(), 1.5);
    EXPECT_FALSE(setBendRadius(builtOf(oneTap()), ConductorId("c1"), 0, units::Inches::of(601)));
}

TEST(Shaping, ACornerAddedAndRemovedIsNone) {
    const Sample sample = oneTap();
    const auto added = addCorner(builtOf(sample), ConductorId("c1"), 1, {20, 7, 7});
    ASSERT_TRUE(added);
    ASSERT_EQ(added->conductors.front().corners.size(), 3U);
    EXPECT_EQ(added->conductors.front().corners[1].at, (Vec3{20, 2, 2}));
    const auto removed = removeCorner(geometry::build(*added, sample.shelf), ConductorId("c1"), 1);
    ASSERT_TRUE(removed);
    EXPECT_LT(test::apart(*removed, sample.layout), 1e-9);
}

TEST(Shaping, AnOffsetCarriesTheRestAsideAndStaysWithoutFaults) {
    const Sample sample = oneTap();
    const auto after = addOffset(builtOf(sample), ConductorId("c1"), 1, 9.0, {0, 1, 0});
    ASSERT_TRUE(after);
    const auto built = geometry::build(*after, sample.shelf);
    EXPECT_EQ(built.conductors.front().built.bends.size(), 4U);
    EXPECT_TRUE(built.conductors.front().built.faults.empty());
    EXPECT_LT(built.conductors.front().to.kink, 1e-6);
    EXPECT_NEAR(after->conductors.front().corners.back().at.y, 3.0, 1e-9);
}

TEST(Removing, AnythingOfTheSamplesLeavesAValidLayoutWithWhatWasForetold) {
    const parts::Shelf shelf = gw::test::shippedShelf();
    for (const std::string& name : test::goodSamples()) {
        const auto built = geometry::build(test::sampleLayout(name, shelf), shelf);
        const auto& layout = built.layout;
        Items all;
        for (const auto& one : layout.circuits) {
            all.emplace_back(one.id);
        }
        for (const auto& one : layout.entries) {
            all.emplace_back(one.id);
        }
        for (const auto& one : layout.blocks) {
            all.emplace_back(one.id);
        }
        for (const auto& one : layout.conductors) {
            all.emplace_back(one.id);
        }
        for (const Item& item : all) {
            const auto foretold = dependants(layout, {item});
            const auto after = removeItems(built, {item});
            ASSERT_TRUE(after) << name << " " << idText(item) << " " << toLine(after.error());
            EXPECT_FALSE(isThere(*after, item));
            for (const Item& gone : foretold.removed) {
                EXPECT_FALSE(isThere(*after, gone)) << idText(gone);
            }
            const std::size_t own = std::holds_alternative<ConductorId>(item) ? 1 : 0;
            EXPECT_EQ(after->conductors.size() + foretold.removed.size() + own,
                      layout.conductors.size())
                << name << " " << idText(item);
        }
    }
}

TEST(Removing, ABlockCapsWhatEndedInIt) {
    const auto after = removeItems(builtOf(oneTap()), {BlockId("A")});
    ASSERT_TRUE(after);
    ASSERT_EQ(after->conductors.size(), 1U);
    EXPECT_TRUE(std::holds_alternative<layout::Spare>(after->conductors.front().to));
    EXPECT_EQ(dependantsText(oneTap().layout, {BlockId("A")}), "1 conductor is freed");
}

TEST(Removing, AnEntryTakesItsConductorsAlong) {
    const auto after = removeItems(builtOf(oneTap()), {EntryId("in")});
    ASSERT_TRUE(after);
    EXPECT_TRUE(after->conductors.empty());
}

}  // namespace
}  // namespace gw::editing
