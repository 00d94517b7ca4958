#include "editing/next_phase.h"

#include <gtest/gtest.h>

#include "core/editing/samples.h"
#include "core/support/sample_layouts.h"
#include "support/shipped_shelf.h"

namespace gw::editing {
namespace {

using gw::test::oneTap;
using gw::test::Sample;
using layout::BlockId;
using layout::ConductorId;
using layout::Phase;

geometry::BuiltLayout builtOf(const Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

/// oneTap with a second block of the same attitude to the right of the first, and room below both
/// for an offset.
Sample twoBlocks() {
    Sample sample = oneTap();
    sample.block("A").corner = {20, 5.5, 1};
    sample.conductor("c1").corners[1].at.x = 21;
    sample.block("A").phase = Phase::a;
    sample.addBlock("B", "row", {38, 5.5, 1});
    return sample;
}

TEST(NextPhase, TheRouteLiesALaneBesideAndEndsInTheBlockOfThePhase) {
    const Sample sample = twoBlocks();
    const auto made = routeForNextPhase(builtOf(sample), ConductorId("c1"));
    ASSERT_TRUE(made) << toLine(made.error());
    ASSERT_EQ(made->layout.conductors.size(), 2U);
    const auto& copy = made->layout.conductors.back();
    EXPECT_EQ(copy.phase, Phase::b);
    EXPECT_EQ(copy.size, sample.layout.conductors.front().size);
    EXPECT_EQ(std::get<layout::AtEntry>(copy.from).slot, 2);
    EXPECT_EQ(std::get<layout::InPort>(copy.to).block, BlockId("B"));
    EXPECT_EQ(std::get<layout::InPort>(copy.to).port, parts::PortName("1"));
    EXPECT_EQ(made->layout.blocks.back().phase, Phase::b);
    const auto built = geometry::build(made->layout, sample.shelf);
    const auto& first = built.conductors.front();
    const auto& second = built.conductors.back();
    EXPECT_TRUE(first.built.faults.empty());
    EXPECT_TRUE(second.built.faults.empty());
    EXPECT_LT(second.to.kink, 1e-9);
    EXPECT_LT(second.from.kink, 1e-9);
    // The run along the gutter at (y, z) = (2, 2) moved by one lane: 0.254 in up to the next 1/8.
    ASSERT_GE(copy.corners.size(), 2U);
    bool lane = false;
    for (const auto& corner : copy.corners) {
        lane = lane || std::abs(distance({0, corner.at.y, corner.at.z}, {0, 2, 2}) - 0.375) < 1e-6;
    }
    EXPECT_TRUE(lane);
    const auto& a = first.built.path;
    const auto& b = second.built.path;
    const auto gap = geometry::clearance(geometry::Tube{&a, first.radius(), 0.0, a.length().in()},
                                         geometry::Tube{&b, second.radius(), 0.0, b.length().in()});
    EXPECT_GT(gap.gap.in(), -1e-6);
}

TEST(NextPhase, WithoutABlockForItItSaysSo) {
    const auto refused = routeForNextPhase(builtOf(oneTap()), ConductorId("c1"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::missing);
    EXPECT_EQ(refused.error().sentence, "no block has a port left for phase B");
}

TEST(NextPhase, ABlockFullOfItsOwnPhaseHasNoPortLeft) {
    Sample sample = twoBlocks();
    sample.block("B").phase = Phase::b;
    for (const auto* port : {"1", "2", "3"}) {
        auto& other = sample.addConductor(
            std::string("n") + port, gw::test::spare({44, 2, 2}), gw::test::inPort("B", port));
        other.phase = Phase::b;
        other.circuit = layout::CircuitId("other");
    }
    sample.addCircuit("other");
    const auto refused = routeForNextPhase(builtOf(sample), ConductorId("c1"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().sentence, "no block has a port left for phase B");
}

TEST(NextPhase, APortTooSmallForItIsNoneLeft) {
    Sample sample = twoBlocks();
    sample.conductor("c1").size = units::WireSize::of("250");  // the row takes 14 to 2/0
    const auto refused = routeForNextPhase(builtOf(sample), ConductorId("c1"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::missing);
}

TEST(NextPhase, AfterTheLastPhaseThereIsNone) {
    Sample sample = twoBlocks();
    sample.circuit("feed").phases = {Phase::a};
    const auto refused = routeForNextPhase(builtOf(sample), ConductorId("c1"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().sentence, "all phases of set 1 of circuit feed have a conductor");
}

TEST(NextPhase, WhatPassesThroughPortsIsRefused) {
    Sample sample = twoBlocks();
    sample.addBlock("T", "through", {14, 1, 1});
    sample.conductor("c1").passes = {{BlockId("T"), parts::PortName("run"), {}, {}}};
    const auto refused = routeForNextPhase(builtOf(sample), ConductorId("c1"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::contradicts);
}

/// In each sample a conductor is taken away and led again from the one before it in its circuit:
/// what comes out is sound.
TEST(NextPhase, InTheSamplesWhatIsLedAgainIsSound) {
    const parts::Shelf shelf = gw::test::shippedShelf();
    int led = 0;
    for (const std::string& name : test::goodSamples()) {
        const auto sample = test::sampleLayout(name, shelf);
        for (std::size_t i = 1; i < sample.conductors.size() && i < 6; ++i) {
            auto less = sample;
            const auto like = less.conductors[i - 1];
            const auto gone = less.conductors[i];
            if (like.circuit != gone.circuit || like.set != gone.set || !like.passes.empty()) {
                continue;
            }
            less.conductors.erase(less.conductors.begin() + static_cast<std::ptrdiff_t>(i));
            const auto made = routeForNextPhase(geometry::build(less, shelf), like.id);
            ASSERT_TRUE(made) << name << " " << like.id.text() << " " << toLine(made.error());
            const auto built = geometry::build(made->layout, shelf);
            EXPECT_TRUE(built.conductors.back().built.faults.empty())
                << name << " " << like.id.text();
            EXPECT_EQ(made->layout.conductors.back().phase, gone.phase) << name;
            ++led;
        }
    }
    EXPECT_GT(led, 0);
}

}  // namespace
}  // namespace gw::editing
