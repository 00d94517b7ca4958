#include "editing/copy.h"

#include <gtest/gtest.h>

#include "core/editing/samples.h"
#include "core/support/sample_layouts.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

namespace gw::editing {
namespace {

using gw::test::oneTap;
using gw::test::Sample;
using layout::BlockId;
using layout::CircuitId;
using layout::ConductorId;
using layout::EntryId;

geometry::BuiltLayout builtOf(const Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

const Items kAll{EntryId("in"), BlockId("A"), ConductorId("c1")};

TEST(Copying, APieceHasTheThingsAloneWithTheirCircuitAndSystem) {
    Sample sample = oneTap();
    sample.addCircuit("other");
    sample.addEntry("out", layout::Wall::left, 4, 4);
    const auto piece = pieceOf(builtOf(sample), kAll);
    ASSERT_TRUE(piece) << toLine(piece.error());
    EXPECT_EQ(piece->entries.size(), 1U);
    EXPECT_EQ(piece->blocks, sample.layout.blocks);
    EXPECT_EQ(piece->conductors, sample.layout.conductors);
    ASSERT_EQ(piece->circuits.size(), 1U);
    EXPECT_EQ(piece->circuits.front().id, CircuitId("feed"));
    EXPECT_EQ(piece->systems.size(), 1U);
}

TEST(Copying, AConductorWithoutItsBlockIsCappedWhereItComesOutOfIt) {
    const auto piece = pieceOf(builtOf(oneTap()), {ConductorId("c1")});
    ASSERT_TRUE(piece);
    const auto& conductor = piece->conductors.front();
    // Half an inch out of the hole in the top wall at (12, 8, 2), and below the mouth (31, 4, 2).
    ASSERT_TRUE(std::holds_alternative<layout::Spare>(conductor.from));
    EXPECT_EQ(std::get<layout::Spare>(conductor.from).tip, (Vec3{12, 7.5, 2}));
    ASSERT_TRUE(std::holds_alternative<layout::Spare>(conductor.to));
    const Vec3 tip = std::get<layout::Spare>(conductor.to).tip;
    EXPECT_EQ(tip.x, 31.0);
    EXPECT_LT(tip.y, 4.0);
    EXPECT_EQ(conductor.corners, oneTap().layout.conductors.front().corners);
}

TEST(Copying, NothingSelectedIsRefused) {
    const auto piece = pieceOf(builtOf(oneTap()), {});
    ASSERT_FALSE(piece);
    EXPECT_EQ(piece.error().code, ErrorCode::missing);
}

TEST(Copying, ACircuitStandsForItsConductors) {
    const auto piece = pieceOf(builtOf(oneTap()), {CircuitId("feed")});
    ASSERT_TRUE(piece);
    EXPECT_EQ(piece->conductors.size(), 1U);
    EXPECT_TRUE(piece->blocks.empty());
}

TEST(Copying, WhatIsPutDownIsTheSameElsewhereUnderNamesOfItsOwn) {
    const Sample sample = oneTap();
    const auto built = builtOf(sample);
    const auto piece = pieceOf(built, kAll);
    ASSERT_TRUE(piece);
    const auto made = putPiece(built, sample.shelf, *piece, {8, 0, 1});
    ASSERT_TRUE(made) << toLine(made.error());
    ASSERT_EQ(made->items.size(), 3U);
    ASSERT_EQ(made->layout.conductors.size(), 2U);
    EXPECT_EQ(made->layout.circuits.size(), 1U);
    const auto& copy = made->layout.conductors.back();
    EXPECT_NE(copy.id, ConductorId("c1"));
    EXPECT_EQ(copy.circuit, CircuitId("feed"));
    EXPECT_EQ(std::get<layout::AtEntry>(copy.from).entry, made->layout.entries.back().id);
    EXPECT_EQ(std::get<layout::InPort>(copy.to).block, made->layout.blocks.back().id);
    EXPECT_EQ(made->layout.blocks.back().corner, (Vec3{38, 4, 2}));
    ASSERT_EQ(copy.corners.size(), 2U);
    EXPECT_EQ(copy.corners[0].at, (Vec3{20, 2, 3}));
    EXPECT_EQ(copy.corners[1].at, (Vec3{39, 2, 3}));
    // The first ones lie as they lay.
    EXPECT_EQ(made->layout.conductors.front(), sample.layout.conductors.front());
    const auto again = geometry::build(made->layout, sample.shelf);
    EXPECT_TRUE(again.conductors.back().built.faults.empty());
}

TEST(Copying, WhatWasCutKeepsItsNames) {
    const Sample sample = oneTap();
    const auto piece = pieceOf(builtOf(sample), kAll);
    ASSERT_TRUE(piece);
    Sample empty = gw::test::emptyGutter();
    const auto made = putPiece(builtOf(empty), sample.shelf, *piece, {});
    ASSERT_TRUE(made) << toLine(made.error());
    EXPECT_EQ(made->layout.blocks, sample.layout.blocks);
    EXPECT_EQ(made->layout.entries, sample.layout.entries);
    EXPECT_EQ(made->layout.conductors, sample.layout.conductors);
}

TEST(Copying, ACircuitThatCannotTakeTheConductorsComesAlong) {
    const Sample sample = oneTap();
    const auto piece = pieceOf(builtOf(sample), kAll);
    ASSERT_TRUE(piece);
    Sample other = gw::test::emptyGutter();
    other.circuit("feed").phases = {layout::Phase::n};
    const auto made = putPiece(builtOf(other), sample.shelf, *piece, {});
    ASSERT_TRUE(made) << toLine(made.error());
    ASSERT_EQ(made->layout.circuits.size(), 2U);
    EXPECT_EQ(made->layout.conductors.front().circuit, made->layout.circuits.back().id);
}

TEST(Copying, APieceOfALargerGutterIsFittedIntoASmallerOne) {
    const Sample sample = oneTap();
    const auto piece = pieceOf(builtOf(sample), kAll);
    ASSERT_TRUE(piece);
    Sample small = gw::test::emptyGutter();
    small.layout.gutter.inside = {24, 6, 6};
    const auto made = putPiece(builtOf(small), sample.shelf, *piece, {});
    ASSERT_TRUE(made) << toLine(made.error());
    const auto built = geometry::build(made->layout, sample.shelf);
    EXPECT_LE(built.blocks.front().body.greatest.x, 24.0);
    EXPECT_LE(built.blocks.front().body.greatest.y, 6.0);
    EXPECT_EQ(made->layout.entries.front().u, 12.0);
}

TEST(Copying, ADuplicateLiesBesideAndOnNothing) {
    const Sample sample = oneTap();
    const auto made = duplicated(builtOf(sample), sample.shelf, {BlockId("A")});
    ASSERT_TRUE(made) << toLine(made.error());
    // The row is 6 in long, with 1/2 in between: one step to the right of 30.
    EXPECT_EQ(made->layout.blocks.back().corner, (Vec3{36.5, 4, 1}));
    EXPECT_EQ(made->layout.blocks.back().name, "Block B");
    const auto twice =
        duplicated(geometry::build(made->layout, sample.shelf), sample.shelf, {BlockId("A")});
    ASSERT_TRUE(twice);
    // No room further right in 48 in: to the left.
    EXPECT_EQ(twice->layout.blocks.back().corner, (Vec3{23.5, 4, 1}));
    EXPECT_EQ(twice->layout.blocks.back().name, "Block C");
}

TEST(Copying, ADuplicateOfAConductorLiesALaneNearerToTheCover) {
    const Sample sample = oneTap();
    const auto made = duplicated(builtOf(sample), sample.shelf, {ConductorId("c1")});
    ASSERT_TRUE(made) << toLine(made.error());
    const auto& copy = made->layout.conductors.back();
    // 6 AWG THHN is 0.254 in over the insulation (NFPA 70 ch. 9 Table 5): lanes of 1/2 in.
    EXPECT_EQ(copy.corners[0].at, (Vec3{12, 2, 2.5}));
    EXPECT_EQ(copy.corners[1].at, (Vec3{31, 2, 2.5}));
}

TEST(Copying, AnArrayIsSoManyCopiesEachAPitchFurther) {
    const Sample sample = oneTap();
    const auto made = arrayed(builtOf(sample), sample.shelf, {BlockId("A")}, 3, {-7, 0, 0});
    ASSERT_TRUE(made) << toLine(made.error());
    ASSERT_EQ(made->layout.blocks.size(), 4U);
    ASSERT_EQ(made->items.size(), 3U);
    EXPECT_EQ(made->layout.blocks[1].corner, (Vec3{23, 4, 1}));
    EXPECT_EQ(made->layout.blocks[2].corner, (Vec3{16, 4, 1}));
    EXPECT_EQ(made->layout.blocks[3].corner, (Vec3{9, 4, 1}));
}

TEST(Copying, AnArrayWithoutRoomSaysHowManyHaveIt) {
    const Sample sample = oneTap();
    // 30 + 6 + 2 * 6 = 48 fits to the inch.
    EXPECT_TRUE(arrayed(builtOf(sample), sample.shelf, {BlockId("A")}, 2, {6, 0, 0}));
    const auto refused = arrayed(builtOf(sample), sample.shelf, {BlockId("A")}, 3, {6, 0, 0});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::outOfRange);
    EXPECT_EQ(refused.error().sentence, "there is room for 2 copies at this pitch, not for 3");
    EXPECT_FALSE(arrayed(builtOf(sample), sample.shelf, {BlockId("A")}, 0, {6, 0, 0}));
}

/// All of a sample, as a file, put into an empty gutter of the same size is the sample's things.
TEST(Copying, EverySampleGoesThroughAFileAndBackWhole) {
    const parts::Shelf shelf = gw::test::shippedShelf();
    for (const std::string& name : test::goodSamples()) {
        const auto sample = test::sampleLayout(name, shelf);
        const auto built = geometry::build(sample, shelf);
        Items all;
        for (const auto& one : sample.entries) {
            all.emplace_back(one.id);
        }
        for (const auto& one : sample.blocks) {
            all.emplace_back(one.id);
        }
        for (const auto& one : sample.conductors) {
            all.emplace_back(one.id);
        }
        const auto piece = pieceOf(built, all);
        ASSERT_TRUE(piece) << name << " " << toLine(piece.error());
        const auto read = files::readLayout(files::writeLayout(*piece), name, shelf);
        ASSERT_TRUE(read) << name << " " << toLine(read.error());
        layout::Layout empty;
        empty.gutter = sample.gutter;
        const auto made = putPiece(geometry::build(empty, shelf), shelf, *read, {});
        ASSERT_TRUE(made) << name << " " << toLine(made.error());
        EXPECT_EQ(made->layout.blocks, sample.blocks) << name;
        EXPECT_EQ(made->layout.entries, sample.entries) << name;
        EXPECT_LT(test::apart(made->layout, sample), 1e-9) << name;
    }
}

}  // namespace
}  // namespace gw::editing
