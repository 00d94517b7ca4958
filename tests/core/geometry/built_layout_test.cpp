#include "geometry/built_layout.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "core/support/sample_layouts.h"
#include "support/random.h"

namespace gw::geometry {
namespace {

using layout::Wall;
using test::Sample;
using testing::ElementsAre;
using units::Inches;
using Kind = BuiltEnd::Kind;

constexpr double kPi = std::numbers::pi;
// 6 AWG THHN: NFPA 70 Chapter 9 Table 5.
constexpr double kThhn6 = 0.254;
constexpr double kThhn6Area = 0.0507;
// A right angle of radius 1.25 saves r (2 - pi/2).
constexpr double kSaved = 1.25 * (2.0 - kPi / 2.0);

BuiltLayout built(const Sample& sample) {
    const auto valid = layout::validate(sample.layout, sample.shelf);
    EXPECT_TRUE(valid.has_value()) << toLine(valid.error());
    return build(sample.layout, sample.shelf);
}

BuiltConductor firstConductor(const Sample& sample) {
    return std::move(built(sample).conductors.at(0));
}

void expectAt(const Vec3& a, const Vec3& b, double within = 1e-12) {
    EXPECT_LE(distance(a, b), within) << "(" << a.x << ", " << a.y << ", " << a.z << ") and ("
                                      << b.x << ", " << b.y << ", " << b.z << ")";
}

using Stretch = std::pair<double, double>;

void expectStretches(const std::vector<Stretch>& found, const std::vector<Stretch>& expected) {
    ASSERT_EQ(found.size(), expected.size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        EXPECT_NEAR(found[i].first, expected[i].first, 1e-9);
        EXPECT_NEAR(found[i].second, expected[i].second, 1e-9);
    }
}

layout::InPort& toPort(Sample& sample) {
    return std::get<layout::InPort>(sample.layout.conductors[0].to);
}

// ---- blocks ---------------------------------------------------------------------------------

// Block "row" at (10, 1, 0); port 1 at body (1, 0, 1) along y, screw s1 at (1, 0.75, 2) facing z,
// first hole at (0.5, 1.75, 0). A body edge turned backward starts from the far side.
struct TurnedBlock {
    const char* attitude;
    Vec3 greatest;  // of the body
    Vec3 mouth;
    Vec3 direction;
    Vec3 head;
    Vec3 outward;
    Vec3 hole;
};

void PrintTo(const TurnedBlock& row, std::ostream* out) {
    *out << row.attitude;
}

class TurnedBlocks : public testing::TestWithParam<TurnedBlock> {};

TEST_P(TurnedBlocks, StandOnTheirCornerWithEverythingTurned) {
    const TurnedBlock& row = GetParam();
    Sample sample = test::emptyGutter();
    sample.addBlock("A", "row", {10, 1, 0}, row.attitude);
    const BuiltLayout layout = built(sample);
    const BuiltBlock& block = layout.blocks.at(0);
    EXPECT_EQ(block.body.least, (Vec3{10, 1, 0}));
    EXPECT_EQ(block.body.greatest, row.greatest);
    ASSERT_EQ(block.ports.size(), 3U);
    EXPECT_EQ(block.ports[0].mouth, row.mouth);
    EXPECT_EQ(block.ports[0].direction, row.direction);
    EXPECT_EQ(block.ports[0].farMouth, row.mouth + row.direction * 1.5);
    ASSERT_EQ(block.screws.size(), 3U);
    EXPECT_EQ(block.screws[0].head, row.head);
    EXPECT_EQ(block.screws[0].outward, row.outward);
    ASSERT_EQ(block.mountingHoles.size(), 2U);
    EXPECT_EQ(block.mountingHoles[0], row.hole);
}

// clang-format off
const TurnedBlock kTurnedBlocks[] = {
    {"+x+y", {16, 3, 2}, {11, 1, 1},  {0, 1, 0},  {11, 1.75, 2},  {0, 0, 1},  {10.5, 2.75, 0}},
    // length along y, height along -x: (x, y, z) -> (12 - y, 1 + x, z)
    {"+y-x", {12, 7, 2}, {12, 2, 1},  {-1, 0, 0}, {11.25, 2, 2},  {0, 0, 1},  {10.25, 1.5, 0}},
    // half a turn about z: (16 - x, 3 - y, z)
    {"-x-y", {16, 3, 2}, {15, 3, 1},  {0, -1, 0}, {15, 2.25, 2},  {0, 0, 1},  {15.5, 1.25, 0}},
    // height along z, depth = x cross z = -y: (10 + x, 3 - z, y)
    {"+x+z", {16, 3, 2}, {11, 2, 0},  {0, 0, 1},  {11, 1, 0.75},  {0, -1, 0}, {10.5, 3, 1.75}},
    // length along -z, height along y, depth = -z cross y = x: (10 + z, 1 + y, 6 - x)
    {"-z+y", {12, 3, 6}, {11, 1, 5},  {0, 1, 0},  {12, 1.75, 5},  {1, 0, 0},  {10, 2.75, 5.5}},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(ByHand, TurnedBlocks, testing::ValuesIn(kTurnedBlocks));

TEST(BuiltBlocks, EveryAttitudeKeepsPartsOfTheBodyInTheBody) {
    for (const parts::Attitude& attitude : parts::Attitude::all()) {
        SCOPED_TRACE(attitude.text());
        Sample sample = test::emptyGutter();
        sample.addBlock("A", "row", {10, 1, 0.5}, attitude.text());
        const BuiltLayout layout = built(sample);
        const Box& body = layout.blocks[0].body;
        std::vector<Vec3> points = layout.blocks[0].mountingHoles;
        for (const BuiltPort& port : layout.blocks[0].ports) {
            points.push_back(port.mouth);
            points.push_back(port.farMouth);
        }
        for (const Vec3& p : points) {
            EXPECT_TRUE(p.x >= body.least.x && p.x <= body.greatest.x);
            EXPECT_TRUE(p.y >= body.least.y && p.y <= body.greatest.y);
            EXPECT_TRUE(p.z >= body.least.z && p.z <= body.greatest.z);
        }
    }
}

TEST(BuiltLayout, KeepsOnlyThePartsInUseAndPointsAtItsOwn) {
    Sample sample = test::oneTap();
    parts::Part own = test::rowPart();
    own.name = "the layout's own";
    sample.layout.parts.push_back(own);
    BuiltLayout first = built(sample);
    const BuiltLayout moved = std::move(first);
    ASSERT_EQ(moved.shelf.size(), 1U);
    EXPECT_EQ(moved.blocks[0].part, &moved.shelf.at(parts::PartId("row")));
    EXPECT_EQ(moved.blocks[0].part->name, "the layout's own");
}

TEST(BuiltLayout, FindsCircuitsById) {
    Sample sample = test::emptyGutter();
    sample.addCircuit("second");
    const BuiltLayout layout = built(sample);
    EXPECT_EQ(layout.circuitIndex(layout::CircuitId("second")), 1U);
    EXPECT_EQ(layout.circuitIndex(layout::CircuitId("third")), std::nullopt);
}

// ---- entries --------------------------------------------------------------------------------

TEST(BuiltEntries, OneConductorComesThroughTheMiddle) {
    const BuiltLayout layout = built(test::oneTap());
    const BuiltEntry& entry = layout.entries.at(0);
    EXPECT_EQ(entry.centre, (Vec3{12, 8, 2}));
    EXPECT_EQ(entry.axis, (Vec3{0, -1, 0}));
    EXPECT_FALSE(entry.boreStated);
    EXPECT_NEAR(entry.bore, kThhn6, 1e-3);
    EXPECT_TRUE(entry.packed);
    ASSERT_EQ(entry.slots.size(), 1U);
    expectAt(entry.slots.at(1), {12, 8, 2});
}

struct TwoSlots {
    Wall wall;
    Vec3 centre;  // of u = 3, v = 2
    Vec3 along;   // the wall's u
};

void PrintTo(const TwoSlots& row, std::ostream* out) {
    *out << layout::wallText(row.wall);
}

class TwoSlotsOnWalls : public testing::TestWithParam<TwoSlots> {};

// Two equal circles lie side by side along u, each its radius from the centre and up to a hair of
// 1e-3 in more.
TEST_P(TwoSlotsOnWalls, LieSideBySideAlongU) {
    const TwoSlots& row = GetParam();
    Sample sample = test::emptyGutter();
    sample.addEntry("e", row.wall, 3, 2);
    sample.addConductor("c1", test::atEntry("e", 3), test::spare({20, 4, 4}));
    sample.addConductor("c2", test::atEntry("e", 7), test::spare({21, 4, 4}));
    const BuiltLayout layout = built(sample);
    const auto& slots = layout.entries[0].slots;
    ASSERT_EQ(slots.size(), 2U);
    expectAt(slots.at(3), row.centre - row.along * (kThhn6 / 2), 2e-3);
    expectAt(slots.at(7), row.centre + row.along * (kThhn6 / 2), 2e-3);
    EXPECT_GE(distance(slots.at(3), slots.at(7)), kThhn6);
    expectAt(layout.entries[0].axis, layout::inwardNormal(row.wall));
    EXPECT_EQ(layout.conductors[0].from.mouth, slots.at(3));
    EXPECT_EQ(layout.conductors[1].from.mouth, slots.at(7));
}

const TwoSlots kTwoSlots[] = {
    {Wall::left, {0, 3, 2}, {0, 1, 0}},
    {Wall::right, {48, 3, 2}, {0, 1, 0}},
    {Wall::top, {3, 8, 2}, {1, 0, 0}},
    {Wall::bottom, {3, 0, 2}, {1, 0, 0}},
    {Wall::back, {3, 2, 0}, {1, 0, 0}},
};
INSTANTIATE_TEST_SUITE_P(ByHand, TwoSlotsOnWalls, testing::ValuesIn(kTwoSlots));

// EMT: inside diameters of NFPA 70 Chapter 9 Table 4.
TEST(BuiltEntries, AStatedRacewayGivesTheBore) {
    Sample sample = test::oneTap();
    sample.entry("in").raceway = standards::RacewayType::emt;
    sample.entry("in").tradeSize = standards::TradeSize::of("2");
    const BuiltLayout layout = built(sample);
    EXPECT_TRUE(layout.entries[0].boreStated);
    EXPECT_EQ(layout.entries[0].bore, 2.067);
    EXPECT_TRUE(layout.entries[0].packed);
}

TEST(BuiltEntries, ARacewayWithoutATradeSizeStatesNoBore) {
    Sample sample = test::oneTap();
    sample.entry("in").raceway = standards::RacewayType::emt;
    EXPECT_FALSE(built(sample).entries[0].boreStated);
}

TEST(BuiltEntries, ConductorsThatDoNotFitSpillOverButKeepApart) {
    // Four of 0.254 in need 0.254 (1 + sqrt 2) = 0.613 in; trade size 1/2 has 0.622. Five need
    // 0.254 x 2.7013 = 0.686.
    for (const int count : {4, 5}) {
        Sample sample = test::emptyGutter();
        layout::Entry& entry = sample.addEntry("e", Wall::top, 12, 4);
        entry.raceway = standards::RacewayType::emt;
        entry.tradeSize = standards::TradeSize::of("1/2");
        for (int i = 1; i <= count; ++i) {
            sample.addConductor(
                "c" + std::to_string(i), test::atEntry("e", i), test::spare({12.0 + i, 2, 4}));
        }
        const BuiltLayout layout = built(sample);
        EXPECT_EQ(layout.entries[0].packed, count == 4);
        EXPECT_EQ(layout.entries[0].bore, 0.622);
        const auto& slots = layout.entries[0].slots;
        ASSERT_EQ(slots.size(), static_cast<std::size_t>(count));
        for (int i = 1; i <= count; ++i) {
            for (int j = 1; j < i; ++j) {
                EXPECT_GE(distance(slots.at(i), slots.at(j)), kThhn6);
            }
        }
    }
}

TEST(BuiltEntries, AnEmptyEntryHasNoSlots) {
    Sample sample = test::emptyGutter();
    sample.addEntry("e", Wall::top, 12, 4);
    const BuiltLayout layout = built(sample);
    EXPECT_TRUE(layout.entries[0].slots.empty());
    EXPECT_TRUE(layout.entries[0].packed);
    EXPECT_EQ(layout.entries[0].bore, 0.0);
}

// ---- how thick ------------------------------------------------------------------------------

TEST(BuiltConductors, TheTableGivesTheDiameter) {
    const BuiltConductor conductor = firstConductor(test::oneTap());
    EXPECT_EQ(conductor.diameter.in(), kThhn6);
    EXPECT_EQ(conductor.area.in2(), kThhn6Area);
    EXPECT_EQ(conductor.radius(), kThhn6 / 2);
    EXPECT_THAT(conductor.diameterSource.section, testing::HasSubstr("Table 5"));
    EXPECT_EQ(conductor.assumed, "");
}

TEST(BuiltConductors, AMeasuredDiameterComesFirst) {
    Sample sample = test::oneTap();
    sample.conductor("c1").outsideDiameter = Inches::of(0.3);
    sample.conductor("c1").insulation.reset();
    const BuiltConductor conductor = firstConductor(sample);
    EXPECT_EQ(conductor.diameter.in(), 0.3);
    EXPECT_NEAR(conductor.area.in2(), kPi * 0.0225, 1e-12);
    EXPECT_EQ(conductor.diameterSource.basis, standards::Basis::layoutData);
    EXPECT_EQ(conductor.assumed, "");
}

// The largest 6 AWG of Table 5: RHH, RHW with outer covering, 0.364 in, 0.1041 in2.
TEST(BuiltConductors, WhatIsMissingIsTakenAsTheLargest) {
    Sample sample = test::oneTap();
    sample.conductor("c1").insulation.reset();
    BuiltConductor conductor = firstConductor(sample);
    EXPECT_EQ(conductor.assumed, "insulation");
    EXPECT_EQ(conductor.diameter.in(), 0.364);
    EXPECT_EQ(conductor.area.in2(), 0.1041);
    sample = test::oneTap();
    sample.conductor("c1").stranding.reset();
    conductor = firstConductor(sample);
    EXPECT_EQ(conductor.assumed, "stranding");
    EXPECT_EQ(conductor.diameter.in(), 0.364);
}

TEST(BuiltConductors, EverySizeAndKindHasSomeDiameter) {
    for (const units::WireSize size : units::WireSize::all()) {
        for (const standards::Insulation insulation : standards::allInsulations()) {
            Sample sample = test::emptyGutter();
            auto& conductor =
                sample.addConductor("c1", test::spare({1, 1, 1}), test::spare({9, 1, 1}));
            conductor.size = size;
            conductor.insulation = insulation;
            conductor.stranding = standards::Stranding::compact;
            const BuiltConductor made = firstConductor(sample);
            EXPECT_GT(made.diameter.in(), 0.0) << size.text();
            EXPECT_TRUE(made.assumed.empty() || made.assumed == "outside diameter");
        }
    }
}

// ---- ends -----------------------------------------------------------------------------------

// From (12, 8, 2) down 6, along 19, up 2 to the mouth and 1.5 in: 28.5 less two savings.
constexpr double kTapLength = 28.5 - 2.0 * kSaved;

TEST(BuiltEnds, EntryToBlindPort) {
    const BuiltConductor conductor = firstConductor(test::oneTap());
    EXPECT_TRUE(conductor.built.faults.empty());
    EXPECT_NEAR(conductor.built.path.length().in(), kTapLength, 1e-9);

    const BuiltEnd& from = conductor.from;
    EXPECT_EQ(from.kind, Kind::entry);
    EXPECT_EQ(from.entry, 0U);
    EXPECT_EQ(from.block, std::nullopt);
    expectAt(from.mouth, {12, 8, 2});
    expectAt(from.axis, {0, -1, 0});
    EXPECT_EQ(from.kink, 0.0);
    EXPECT_EQ(from.mouthAt, 0.0);
    EXPECT_NEAR(from.leadIn, 6.0 - 1.25, 1e-12);
    EXPECT_EQ(from.inserted, 0.0);

    const BuiltEnd& to = conductor.to;
    EXPECT_EQ(to.kind, Kind::port);
    EXPECT_EQ(to.block, 0U);
    EXPECT_EQ(to.port, 0U);
    EXPECT_EQ(to.entry, std::nullopt);
    expectAt(to.mouth, {31, 4, 2});
    expectAt(to.axis, {0, -1, 0});  // out of the port, into the gutter
    EXPECT_NEAR(to.kink, 0.0, 1e-12);
    EXPECT_NEAR(to.mouthAt, kTapLength - 1.5, 1e-9);
    EXPECT_NEAR(to.leadIn, 2.0 - 1.25, 1e-9);
    EXPECT_EQ(to.inserted, 1.5);
    EXPECT_EQ(to.strip, std::nullopt);
    EXPECT_FALSE(to.intoClosedMouth);

    expectAt(conductor.built.path.end(), {31, 5.5, 2}, 1e-9);
    expectStretches(conductor.inBlocks, {{kTapLength - 1.5, kTapLength}});
    EXPECT_TRUE(conductor.bare.empty());
}

TEST(BuiltEnds, RunTheOtherWayTheEndsChangePlaces) {
    Sample sample = test::oneTap();
    auto& conductor = sample.conductor("c1");
    std::swap(conductor.from, conductor.to);
    std::reverse(conductor.corners.begin(), conductor.corners.end());
    std::get<layout::InPort>(conductor.from).strip = Inches::of(1.625);
    const BuiltConductor made = firstConductor(sample);
    EXPECT_EQ(made.from.kind, Kind::port);
    EXPECT_NEAR(made.from.mouthAt, 1.5, 1e-12);
    EXPECT_NEAR(made.from.leadIn, 0.75, 1e-9);
    EXPECT_NEAR(made.from.kink, 0.0, 1e-12);
    expectAt(made.from.axis, {0, -1, 0});
    EXPECT_EQ(made.to.kind, Kind::entry);
    EXPECT_NEAR(made.to.mouthAt, kTapLength, 1e-9);
    EXPECT_NEAR(made.to.leadIn, 4.75, 1e-9);
    expectStretches(made.inBlocks, {{0.0, 1.5}});
    expectStretches(made.bare, {{0.0, 1.625}});
}

TEST(BuiltEnds, StripIsBareFromTheTip) {
    Sample sample = test::oneTap();
    toPort(sample).strip = Inches::of(1.625);
    const BuiltConductor conductor = firstConductor(sample);
    EXPECT_EQ(conductor.to.strip, 1.625);
    expectStretches(conductor.bare, {{kTapLength - 1.625, kTapLength}});
}

TEST(BuiltEnds, StatedInsertionMovesTheTip) {
    Sample sample = test::oneTap();
    toPort(sample).inserted = Inches::of(1.0);
    const BuiltConductor conductor = firstConductor(sample);
    EXPECT_EQ(conductor.to.inserted, 1.0);
    EXPECT_NEAR(conductor.to.mouthAt, kTapLength - 1.5, 1e-9);
    EXPECT_NEAR(conductor.to.leadIn, 0.75, 1e-9);
    expectAt(conductor.built.path.end(), {31, 5, 2}, 1e-9);
    expectStretches(conductor.inBlocks, {{kTapLength - 1.5, kTapLength - 0.5}});
}

TEST(BuiltEnds, NotInsertedAtAllIsNotInTheBlock) {
    Sample sample = test::oneTap();
    toPort(sample).inserted = Inches::of(0.0);
    const BuiltConductor conductor = firstConductor(sample);
    expectAt(conductor.built.path.end(), {31, 4, 2}, 1e-9);
    EXPECT_TRUE(conductor.inBlocks.empty());
}

TEST(BuiltEnds, ASlantedFirstLegKinksAtTheWall) {
    Sample sample = test::oneTap();
    sample.conductor("c1").corners[0].at = {18, 2, 2};  // 6 along and 6 down from the entry
    const BuiltConductor conductor = firstConductor(sample);
    EXPECT_NEAR(conductor.from.kink, kPi / 4, 1e-12);
    EXPECT_NEAR(conductor.to.kink, 0.0, 1e-12);
    // The leg of 6 sqrt 2 less the tangent length of half a right angle.
    EXPECT_NEAR(conductor.from.leadIn, 6.0 * std::sqrt(2.0) - 1.25 * std::tan(kPi / 8), 1e-9);
}

TEST(BuiltEnds, ASlantedLastLegKinksAtThePort) {
    Sample sample = test::oneTap();
    // From (27.5, 2) to the tip (31, 5.5): 45 degrees to the bore.
    sample.conductor("c1").corners[1].at = {27.5, 2, 2};
    EXPECT_NEAR(firstConductor(sample).to.kink, kPi / 4, 1e-12);
}

TEST(BuiltEnds, ABendThatBeginsInTheBoreLeavesNoLeadIn) {
    Sample sample = test::oneTap();
    sample.conductor("c1").corners[1].at = {31, 3.5, 2};  // the tangent point is at y = 4.75
    EXPECT_EQ(firstConductor(sample).to.leadIn, 0.0);
}

TEST(BuiltEnds, WithoutABendTheLeadInIsTheWholeWay) {
    // "row" upside down: port 1 at (35, 4, 2) bored downward, right under the entry.
    Sample sample = test::emptyGutter();
    sample.addEntry("in", Wall::top, 35, 2);
    sample.addBlock("A", "row", {30, 2, 1}, "-x-y");
    sample.addConductor("c1", test::atEntry("in"), test::inPort("A", "1"));
    const BuiltConductor conductor = firstConductor(sample);
    EXPECT_NEAR(conductor.built.path.length().in(), 5.5, 1e-12);
    EXPECT_NEAR(conductor.from.leadIn, 4.0, 1e-12);
    EXPECT_NEAR(conductor.to.leadIn, 4.0, 1e-12);
    expectAt(conductor.to.axis, {0, 1, 0});
    EXPECT_NEAR(conductor.to.kink, 0.0, 1e-12);
}

TEST(BuiltEnds, StripsThatMeetAreOneBareStretch) {
    // Two rows facing each other over 2 in: tips at y = 0.5 and 5.5, 5 in apart, 3 in bare each.
    Sample sample = test::emptyGutter();
    sample.addBlock("A", "row", {30, 4, 1});
    sample.addBlock("B", "row", {26, 0, 1}, "-x-y");
    auto& conductor = sample.addConductor("c1", test::inPort("B", "1"), test::inPort("A", "1"));
    std::get<layout::InPort>(conductor.from).strip = Inches::of(3.0);
    std::get<layout::InPort>(conductor.to).strip = Inches::of(3.0);
    const BuiltConductor made = firstConductor(sample);
    EXPECT_EQ(made.from.block, 1U);
    expectStretches(made.bare, {{0.0, 5.0}});
    expectStretches(made.inBlocks, {{0.0, 1.5}, {3.5, 5.0}});
}

TEST(BuiltEnds, SpareEndsLieWhereTheyAreStated) {
    Sample sample = test::emptyGutter();
    sample.addConductor("c1", test::spare({5, 1, 1}), test::spare({9, 1, 1}));
    const BuiltConductor conductor = firstConductor(sample);
    for (const BuiltEnd* end : {&conductor.from, &conductor.to}) {
        EXPECT_EQ(end->kind, Kind::spare);
        EXPECT_EQ(end->kink, 0.0);
        EXPECT_EQ(end->inserted, 0.0);
        EXPECT_EQ(end->leadIn, 4.0);
        EXPECT_EQ(end->entry, std::nullopt);
        EXPECT_EQ(end->block, std::nullopt);
    }
    expectAt(conductor.from.mouth, {5, 1, 1});
    expectAt(conductor.from.axis, {1, 0, 0});
    expectAt(conductor.to.axis, {-1, 0, 0});
    EXPECT_EQ(conductor.to.mouthAt, 4.0);
}

// ---- which mouth ----------------------------------------------------------------------------

// Block "T" at (20, 4, 1): bore "run" from (20, 5, 2) to (24, 5, 2), open at both mouths.
Sample throughAt20() {
    Sample sample = test::emptyGutter();
    sample.addBlock("T", "through", {20, 4, 1});
    return sample;
}

TEST(BuiltEnds, AThroughPortIsEnteredFromTheSideTheConductorComesFrom) {
    Sample sample = throughAt20();
    sample.addConductor("left", test::spare({10, 5, 2}), test::inPort("T", "run"));
    sample.addConductor("right", test::spare({40, 5, 2}), test::inPort("T", "run"));
    const BuiltLayout layout = built(sample);
    const BuiltEnd& left = layout.conductors[0].to;
    const BuiltEnd& right = layout.conductors[1].to;
    expectAt(left.mouth, {20, 5, 2});
    expectAt(left.axis, {-1, 0, 0});
    expectAt(right.mouth, {24, 5, 2});
    expectAt(right.axis, {1, 0, 0});
    // Half way in, where they meet.
    EXPECT_EQ(left.inserted, 2.0);
    EXPECT_EQ(right.inserted, 2.0);
    expectAt(layout.conductors[0].built.path.end(), {22, 5, 2}, 1e-9);
    expectAt(layout.conductors[1].built.path.end(), {22, 5, 2}, 1e-9);
    EXPECT_FALSE(left.intoClosedMouth);
}

TEST(BuiltEnds, TheLastCornerSaysWhichSideAConductorComesFrom) {
    Sample sample = throughAt20();
    sample.addConductor(
        "c1", test::spare({10, 7, 2}), test::inPort("T", "run"), {{30, 7, 2}, {30, 5, 2}});
    const BuiltConductor conductor = firstConductor(sample);
    expectAt(conductor.to.mouth, {24, 5, 2});
    EXPECT_NEAR(conductor.to.kink, 0.0, 1e-12);
}

TEST(BuiltEnds, FromNeitherSideTheNearMouthIsTaken) {
    Sample sample = throughAt20();
    sample.addConductor("c1", test::spare({22, 0, 2}), test::inPort("T", "run"));
    expectAt(firstConductor(sample).to.mouth, {20, 5, 2});
}

// Block "E" at (30, 2, 1): bore "e" from (31, 2, 2) to (31, 5, 2), either mouth; conductor from
// below.
struct EitherRow {
    const char* name;
    std::optional<bool> nearOpen;
    Vec3 mouth;
    Vec3 axis;
    Vec3 tip;
};

void PrintTo(const EitherRow& row, std::ostream* out) {
    *out << row.name;
}

class EitherMouth : public testing::TestWithParam<EitherRow> {};

TEST_P(EitherMouth, IsTheOneStatedOpen) {
    const EitherRow& row = GetParam();
    Sample sample = test::emptyGutter();
    layout::Block& block = sample.addBlock("E", "either", {30, 2, 1});
    if (row.nearOpen) {
        block.openMouths = {{parts::PortName("e"), *row.nearOpen}};
    }
    sample.addConductor("c1", test::spare({31, 0.5, 2}), test::inPort("E", "e"));
    const BuiltConductor conductor = firstConductor(sample);
    expectAt(conductor.to.mouth, row.mouth);
    expectAt(conductor.to.axis, row.axis);
    expectAt(conductor.built.path.end(), row.tip, 1e-9);
    EXPECT_EQ(conductor.to.inserted, 3.0);
    EXPECT_EQ(conductor.to.intoClosedMouth, !row.nearOpen.has_value());
}

const EitherRow kEither[] = {
    {"NearOpen", true, {31, 2, 2}, {0, -1, 0}, {31, 5, 2}},
    {"FarOpen", false, {31, 5, 2}, {0, 1, 0}, {31, 2, 2}},
    {"NotStated", std::nullopt, {31, 2, 2}, {0, -1, 0}, {31, 5, 2}},
};
INSTANTIATE_TEST_SUITE_P(ByHand, EitherMouth, testing::ValuesIn(kEither));

// ---- passing through ------------------------------------------------------------------------

layout::Pass passOfRun(std::optional<double> start = {}, std::optional<double> length = {}) {
    layout::Pass pass;
    pass.block = layout::BlockId("T");
    pass.port = parts::PortName("run");
    if (start) {
        pass.windowStart = Inches::of(*start);
    }
    if (length) {
        pass.windowLength = Inches::of(*length);
    }
    return pass;
}

Sample passing(const Vec3& from,
               const Vec3& to,
               const std::vector<Vec3>& corners = {},
               const layout::Pass& pass = passOfRun(-0.125, 4.25)) {
    Sample sample = throughAt20();
    sample.addConductor("c1", test::spare(from), test::spare(to), corners).passes = {pass};
    return sample;
}

TEST(BuiltPasses, StraightThroughOnTheAxis) {
    const BuiltConductor conductor = firstConductor(passing({10, 5, 2}, {40, 5, 2}));
    ASSERT_EQ(conductor.passes.size(), 1U);
    const BuiltPass& pass = conductor.passes[0];
    EXPECT_EQ(pass.block, 0U);
    EXPECT_EQ(pass.port, 0U);
    EXPECT_TRUE(pass.onAxis);
    EXPECT_NEAR(pass.offAxis, 0.0, 1e-12);
    EXPECT_NEAR(pass.nearAt, 10.0, 1e-12);
    EXPECT_NEAR(pass.farAt, 14.0, 1e-12);
    EXPECT_EQ(pass.window, Stretch(-0.125, 4.125));
    expectStretches(conductor.inBlocks, {{10.0, 14.0}});
    expectStretches(conductor.bare, {{9.875, 14.125}});
}

TEST(BuiltPasses, BackwardsTheWindowStillCountsFromTheNearMouth) {
    const BuiltConductor conductor =
        firstConductor(passing({40, 5, 2}, {10, 5, 2}, {}, passOfRun(-0.5, 4.25)));
    const BuiltPass& pass = conductor.passes.at(0);
    EXPECT_TRUE(pass.onAxis);
    EXPECT_NEAR(pass.nearAt, 20.0, 1e-12);
    EXPECT_NEAR(pass.farAt, 16.0, 1e-12);
    expectStretches(conductor.inBlocks, {{16.0, 20.0}});
    expectStretches(conductor.bare, {{16.25, 20.5}});  // 20 - 3.75 to 20 + 0.5
}

TEST(BuiltPasses, AWindowNotStatedIsNoWindow) {
    for (const auto& pass : {passOfRun(), passOfRun(0.0), passOfRun({}, 4.0)}) {
        const BuiltConductor conductor = firstConductor(passing({10, 5, 2}, {40, 5, 2}, {}, pass));
        EXPECT_EQ(conductor.passes.at(0).window, std::nullopt);
        EXPECT_TRUE(conductor.bare.empty());
        EXPECT_EQ(conductor.inBlocks.size(), 1U);
    }
}

struct AsideRow {
    const char* name;
    double aside;
    bool onAxis;
    bool inBore;  // bore 0.75 in wide
};

void PrintTo(const AsideRow& row, std::ostream* out) {
    *out << row.aside << " in beside the axis";
}

std::string asideName(const testing::TestParamInfo<AsideRow>& row) {
    return row.param.name;
}

class BesideTheAxis : public testing::TestWithParam<AsideRow> {};

TEST_P(BesideTheAxis, IsMeasured) {
    const AsideRow& row = GetParam();
    const double y = 5.0 + row.aside;
    const BuiltConductor conductor = firstConductor(passing({10, y, 2}, {40, y, 2}));
    EXPECT_NEAR(conductor.passes.at(0).offAxis, row.aside, 1e-12);
    EXPECT_EQ(conductor.passes.at(0).onAxis, row.onAxis);
    EXPECT_EQ(!conductor.inBlocks.empty(), row.inBore);
}

const AsideRow kAside[] = {
    {"AtTheLimit", 0.015625, true, true},  // kOnAxis = 1/64 in
    {"BeyondTheLimit", 0.03125, false, true},
    {"AtTheBore", 0.375, false, true},
    {"OutsideTheBore", 0.5, false, false},
};
INSTANTIATE_TEST_SUITE_P(Limit, BesideTheAxis, testing::ValuesIn(kAside), asideName);

TEST(BuiltPasses, ASlantedPathIsMeasuredAtTheMouths) {
    // Through the near mouth, 0.1 in high at the far one: nearest there 0.1 cos(atan(0.1/4)).
    const double slope = 0.1 / 4.0;
    const BuiltConductor conductor =
        firstConductor(passing({10, 5 - 10 * slope, 2}, {40, 5 + 20 * slope, 2}));
    EXPECT_NEAR(conductor.passes.at(0).offAxis, 0.1 / std::sqrt(1.0 + slope * slope), 1e-9);
    EXPECT_FALSE(conductor.passes.at(0).onAxis);
}

TEST(BuiltPasses, APathThatBendsOutOfTheBoreIsOffAxis) {
    // It turns up at x = 22 with its arc's centre at (20.75, 6.25): nearest to the far mouth
    // (24, 5) is the arc's point toward it.
    const BuiltConductor conductor =
        firstConductor(passing({10, 5, 2}, {22, 7.5, 2}, {{22, 5, 2}}));
    EXPECT_NEAR(conductor.passes.at(0).offAxis, std::hypot(3.25, 1.25) - 1.25, 1e-9);
    EXPECT_FALSE(conductor.passes.at(0).onAxis);
    EXPECT_TRUE(conductor.inBlocks.empty());
}

TEST(BuiltPasses, ABulgeBetweenTheMouthsIsFound) {
    // Down through the near mouth, an arc of radius 25 and up through the far one. On it at both
    // mouths, half the chord is 2: it sags 25 - sqrt(25² - 2²) between them.
    Sample sample = throughAt20();
    const double half = std::asin(2.0 / 25.0);
    const double tangent = 25.0 * std::tan(half);
    const Vec3 corner{22.0, 5.0 - tangent * std::sin(half), 2.0};
    const Vec3 out{10.0 * std::cos(half), 10.0 * std::sin(half), 0.0};
    auto& conductor = sample.addConductor(
        "c1", test::spare(corner + Vec3{-out.x, out.y, 0.0}), test::spare(corner + out), {corner});
    conductor.corners[0].radius = Inches::of(25.0);
    conductor.passes = {passOfRun()};
    const double sag = 25.0 - std::sqrt(625.0 - 4.0);
    EXPECT_NEAR(firstConductor(sample).passes.at(0).offAxis, sag, 1e-3 * sag);
}

TEST(BuiltPasses, APathThatEndsInTheBoreDoesNotPass) {
    const BuiltConductor conductor = firstConductor(passing({10, 5, 2}, {22, 5, 2}));
    EXPECT_NEAR(conductor.passes.at(0).offAxis, 2.0, 1e-12);
    EXPECT_FALSE(conductor.passes.at(0).onAxis);
}

TEST(BuiltPasses, TwoBlocksInARowAreTwoPasses) {
    Sample sample = passing({10, 5, 2}, {40, 5, 2}, {}, passOfRun());
    sample.addBlock("U", "through", {30, 4, 1});
    layout::Pass second = passOfRun();
    second.block = layout::BlockId("U");
    sample.layout.conductors[0].passes.push_back(second);
    const BuiltConductor conductor = firstConductor(sample);
    ASSERT_EQ(conductor.passes.size(), 2U);
    EXPECT_EQ(conductor.passes[1].block, 1U);
    expectStretches(conductor.inBlocks, {{10.0, 14.0}, {20.0, 24.0}});
}

// ---- the whole ------------------------------------------------------------------------------

TEST(BuiltLayout, FillCountsConductorsAndBlocks) {
    const BuiltLayout layout = built(test::oneTap());
    EXPECT_EQ(layout.fill.length, 48.0);
    EXPECT_EQ(layout.fill.interior, 64.0);
    EXPECT_NEAR(layout.fill.at(20.0).conductors, kThhn6Area, 1e-9);
    EXPECT_EQ(layout.fill.at(20.0).blocks, 0.0);
    EXPECT_NEAR(layout.fill.at(34.0).blocks, 4.0, 1e-9);  // a face of 2 x 2 in
    EXPECT_EQ(layout.fill.at(5.0).conductors, 0.0);
}

TEST(BuiltLayout, FaultsOfPathsAreKept) {
    Sample sample = test::oneTap();
    sample.conductor("c1").corners[1].radius = Inches::of(4.0);  // the last leg is 3.5 in
    const BuiltConductor conductor = firstConductor(sample);
    ASSERT_EQ(conductor.built.faults.size(), 1U);
    EXPECT_EQ(conductor.built.faults[0].index, 2U);
}

bool isFinite(const Vec3& v) {
    return std::isfinite(v.x) && std::isfinite(v.y) && std::isfinite(v.z);
}

bool isFinite(const BuiltEnd& end) {
    return isFinite(end.mouth) && isFinite(end.axis) && std::isfinite(end.kink) &&
           std::isfinite(end.mouthAt) && std::isfinite(end.leadIn) && end.leadIn >= 0.0;
}

// Coordinates on a coarse grid, so that corners coincide with one another, with ends and with axes.
TEST(BuiltLayout, NothingThatValidateAcceptsGivesNan) {
    for (const std::uint64_t seed : {1U, 2U, 3U}) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        test_support::Random random(seed);
        const auto grid = [&random] {
            const double x = 3.0 * std::floor(random.between(3, 12)) - 2.0;
            const double y = std::floor(random.between(2, 8));
            return Vec3{x, y, 2.0};
        };
        for (int round = 0; round < 300; ++round) {
            Sample sample = throughAt20();
            sample.addEntry("in", Wall::top, 12, 2);
            sample.addBlock("A", "row", {30, 4, 1});
            std::vector<Vec3> corners(random.below(5));
            std::generate(corners.begin(), corners.end(), grid);
            const layout::End ends[] = {test::atEntry("in"),
                                        test::inPort("A", "1"),
                                        test::inPort("T", "run"),
                                        test::spare(grid())};
            const std::size_t from = random.below(4);
            auto& conductor =
                sample.addConductor("c1", ends[from], ends[(from + random.below(4)) % 4], corners);
            if (conductor.to.index() == 0 && conductor.from.index() == 0) {
                conductor.to = test::spare({12, 8, 2});
            }
            conductor.passes = {passOfRun(0.0, 4.0)};
            const BuiltConductor made = firstConductor(sample);
            EXPECT_TRUE(isFinite(made.from));
            EXPECT_TRUE(isFinite(made.to));
            EXPECT_TRUE(std::isfinite(made.built.path.length().in()));
            EXPECT_TRUE(std::isfinite(made.passes.at(0).offAxis));
            for (const Vec3& p : made.built.path.flattened(0.05)) {
                EXPECT_TRUE(isFinite(p));
            }
        }
    }
}

TEST(BuiltLayout, MovingEverythingAlongTheGutterMovesNothingElse) {
    Sample here = test::oneTap();
    Sample there = test::oneTap();
    there.entry("in").u += 8.0;
    there.block("A").corner.x += 8.0;
    for (auto& corner : there.conductor("c1").corners) {
        corner.at.x += 8.0;
    }
    const BuiltConductor a = firstConductor(here);
    const BuiltConductor b = firstConductor(there);
    EXPECT_NEAR(a.built.path.length().in(), b.built.path.length().in(), 1e-12);
    EXPECT_NEAR(a.to.leadIn, b.to.leadIn, 1e-12);
    expectAt(a.to.mouth + Vec3{8, 0, 0}, b.to.mouth);
}

}  // namespace
}  // namespace gw::geometry
