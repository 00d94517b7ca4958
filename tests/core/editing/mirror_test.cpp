#include "editing/mirror.h"

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
using layout::EntryId;

geometry::BuiltLayout builtOf(const Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

const Items kAll{EntryId("in"), BlockId("A"), ConductorId("c1")};

/// Seen in the mirror of a 48 in gutter, x is 48 - x: a row's ports at 31, 33, 35 lie at 17, 15,
/// 13, so that the first is where the third of the same row at 12 is.
TEST(Mirroring, ARowStaysUprightAndItsConductorsGoToThePortsThatLieThere) {
    const auto after = mirrorItems(builtOf(oneTap()), kAll);
    ASSERT_TRUE(after) << toLine(after.error());
    const auto& block = after->blocks.front();
    EXPECT_EQ(block.corner, (Vec3{12, 4, 1}));
    EXPECT_EQ(block.attitude.text(), "+x+y");
    const auto& conductor = after->conductors.front();
    EXPECT_EQ(std::get<layout::InPort>(conductor.to).port, parts::PortName("3"));
    EXPECT_EQ(after->entries.front().u, 36.0);
    EXPECT_EQ(conductor.corners[0].at, (Vec3{36, 2, 2}));
    EXPECT_EQ(conductor.corners[1].at, (Vec3{17, 2, 2}));
    const auto built = geometry::build(*after, oneTap().shelf);
    EXPECT_TRUE(built.conductors.front().built.faults.empty());
    EXPECT_LT(built.conductors.front().to.kink, 1e-9);
}

TEST(Mirroring, ABlockAloneTakesItsConductorsAlongOnNewPaths) {
    const auto after = mirrorItems(builtOf(oneTap()), {BlockId("A")});
    ASSERT_TRUE(after) << toLine(after.error());
    EXPECT_EQ(after->entries, oneTap().layout.entries);
    const auto built = geometry::build(*after, oneTap().shelf);
    EXPECT_TRUE(built.conductors.front().built.faults.empty());
    EXPECT_LT(built.conductors.front().to.kink, 1e-9);
    EXPECT_LT(distance(built.conductors.front().to.mouth, {17, 4, 2}), 1e-9);
}

TEST(Mirroring, AConductorAloneBetweenThingsThatStayIsRefused) {
    const auto refused = mirrorItems(builtOf(oneTap()), {ConductorId("c1")});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::missing);
}

TEST(Mirroring, AnEntryOfTheLeftWallIsOfTheRightOneAfterwards) {
    Sample sample = oneTap();
    sample.addEntry("side", layout::Wall::left, 3, 5);
    const auto after = mirrorItems(builtOf(sample), {EntryId("side")});
    ASSERT_TRUE(after);
    EXPECT_EQ(after->entries.back().wall, layout::Wall::right);
    EXPECT_EQ(after->entries.back().u, 3.0);
    EXPECT_EQ(after->entries.back().v, 5.0);
}

TEST(Mirroring, APassKeepsItsWindowInTheMirror) {
    Sample sample = oneTap();
    sample.addBlock("T", "through", {18, 1, 1});
    auto& conductor = sample.conductor("c1");
    conductor.passes = {
        {BlockId("T"), parts::PortName("run"), units::Inches::of(0.5), units::Inches::of(1.25)}};
    const auto after =
        mirrorItems(builtOf(sample), {EntryId("in"), BlockId("A"), BlockId("T"), conductor.id});
    ASSERT_TRUE(after) << toLine(after.error());
    const auto before = builtOf(sample).conductors.front().bare;
    const auto built = geometry::build(*after, sample.shelf);
    const auto& bare = built.conductors.front().bare;
    ASSERT_EQ(bare.size(), before.size());
    for (std::size_t i = 0; i < bare.size(); ++i) {
        EXPECT_NEAR(bare[i].first, before[i].first, 1e-9);
        EXPECT_NEAR(bare[i].second, before[i].second, 1e-9);
    }
}

/// How far the corners of b are from the mirror image of those of a; 1e9 where there are others.
double apartInTheMirror(const layout::Conductor& a, const layout::Conductor& b, double length) {
    if (a.corners.size() != b.corners.size()) {
        return 1e9;
    }
    double worst = 0.0;
    for (std::size_t i = 0; i < a.corners.size(); ++i) {
        const Vec3& at = a.corners[i].at;
        worst = std::max(worst, distance({length - at.x, at.y, at.z}, b.corners[i].at));
    }
    return worst;
}

/// Blocks and entries mirrored twice are where they were. Conductors lie as their mirror image but
/// for what their place in the raceway differs from it (at most half an inch here), save a few
/// whose legs have no room for that; none has got a fault.
TEST(Mirroring, EverySampleLiesAsInTheMirrorAndTwiceIsItself) {
    const parts::Shelf shelf = gw::test::shippedShelf();
    int exact = 0;
    std::size_t conductors = 0;
    std::size_t alike = 0;
    for (const std::string& name : test::goodSamples()) {
        const auto sample = test::sampleLayout(name, shelf);
        const auto built = geometry::build(sample, shelf);
        Items all;
        for (const auto& one : sample.entries) {
            all.emplace_back(one.id);
        }
        for (std::size_t i = 0; i < sample.blocks.size(); ++i) {
            all.emplace_back(sample.blocks[i].id);
            exact += mirroredBlock(built, i).exact ? 1 : 0;
        }
        for (const auto& one : sample.conductors) {
            all.emplace_back(one.id);
        }
        const auto once = mirrorItems(built, all);
        ASSERT_TRUE(once) << name << " " << toLine(once.error());
        const auto builtOnce = geometry::build(*once, shelf);
        for (std::size_t i = 0; i < built.conductors.size(); ++i) {
            EXPECT_LE(builtOnce.conductors[i].built.faults.size(),
                      built.conductors[i].built.faults.size())
                << name << " " << sample.conductors[i].id.text();
            ++conductors;
            alike += apartInTheMirror(
                         sample.conductors[i], once->conductors[i], sample.gutter.inside.x) < 0.5
                         ? 1U
                         : 0U;
        }
        const auto twice = mirrorItems(builtOnce, all);
        ASSERT_TRUE(twice) << name;
        for (std::size_t i = 0; i < sample.blocks.size(); ++i) {
            EXPECT_LT(distance(twice->blocks[i].corner, sample.blocks[i].corner), 1e-9) << name;
            EXPECT_EQ(twice->blocks[i].attitude, sample.blocks[i].attitude) << name;
        }
        for (std::size_t i = 0; i < sample.entries.size(); ++i) {
            EXPECT_EQ(twice->entries[i].wall, sample.entries[i].wall) << name;
            EXPECT_NEAR(twice->entries[i].u, sample.entries[i].u, 1e-9) << name;
        }
    }
    EXPECT_GT(exact, 0);
    EXPECT_GE(10 * alike, 9 * conductors) << alike << " of " << conductors;
}

}  // namespace
}  // namespace gw::editing
