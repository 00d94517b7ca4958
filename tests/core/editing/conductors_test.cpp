#include "editing/conductors.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "checks/least_radius.h"
#include "core/editing/samples.h"
#include "core/support/sample_layouts.h"
#include "support/shipped_shelf.h"

namespace gw::editing {
namespace {

using gw::test::emptyGutter;
using gw::test::inPort;
using gw::test::oneTap;
using gw::test::Sample;
using layout::CircuitId;
using layout::ConductorId;
using layout::EntryId;
using layout::Phase;

geometry::BuiltLayout builtOf(const Sample& sample) {
    return geometry::build(sample.layout, sample.shelf);
}

ConductorKind sixCopper() {
    return {units::WireSize::of("6"),
            standards::Metal::copper,
            standards::Insulation::thhn,
            standards::Stranding::classB};
}

int breaches(const geometry::BuiltLayout& built, checks::Check check) {
    return checks::tally(checks::runChecks(built, {check})).breach;
}

struct RadiusRow {
    const char* name;
    const char* size;
    double inches;
};
void PrintTo(const RadiusRow& row, std::ostream* out) {
    *out << row.name;
}
class LegalRadius : public testing::TestWithParam<RadiusRow> {};

TEST_P(LegalRadius, IsTheRulesUpToTheNextQuarter) {
    Sample sample = oneTap();
    auto& conductor = sample.conductor("c1");
    conductor.size = units::WireSize::of(GetParam().size);
    EXPECT_DOUBLE_EQ(legalRadius(sample.layout, conductor), GetParam().inches);
}

// THHN, over the insulation by NFPA 70 Chapter 9 Table 5; inside radius by ICEA S-95-658: 4 times
// up to 1.000 in overall, 5 times above; half a diameter more to the centreline.
const std::vector<RadiusRow> kRadii = {
    {"SixAwg", "6", 1.25},        // 4.5 x 0.254 = 1.143
    {"FourOught", "4/0", 3.0},    // 4.5 x 0.642 = 2.889
    {"FiveHundred", "500", 4.5},  // 4.5 x 0.949 = 4.271
    {"SevenFifty", "750", 6.5},   // 5.5 x 1.156 = 6.358
};
std::string radiusName(const testing::TestParamInfo<RadiusRow>& row) {
    return row.param.name;
}
INSTANTIATE_TEST_SUITE_P(All, LegalRadius, testing::ValuesIn(kRadii), radiusName);

TEST(LeastBendRadius, MeetsTheCheckAndLessDoesNot) {
    Sample sample = oneTap();
    auto& conductor = sample.conductor("c1");
    const auto diameter = builtOf(sample).conductors.front().diameter;
    const double least = checks::leastBendRadius(sample.layout, conductor, diameter);
    for (auto& corner : conductor.corners) {
        corner.radius = units::Inches::of(least);
    }
    EXPECT_EQ(breaches(builtOf(sample), checks::Check::bendRadius), 0);
    conductor.corners.front().radius = units::Inches::of(least - 0.01);
    EXPECT_EQ(breaches(builtOf(sample), checks::Check::bendRadius), 1);
}

TEST(Tags, SayTheSetOnlyWhereItTells) {
    layout::Circuit circuit;
    circuit.id = CircuitId("service");
    circuit.role = layout::Role::service;
    EXPECT_EQ(tagFor(circuit, 2, Phase::b), "S2-B");
    circuit.id = CircuitId("T3");
    circuit.role = layout::Role::tap;
    EXPECT_EQ(tagFor(circuit, 1, Phase::n), "T3-N");
    circuit.sets = 2;
    EXPECT_EQ(tagFor(circuit, 1, Phase::a), "T3.1-A");
}

TEST(FanningIn, BringsEverySetAndPhaseOnceInASlotOfItsOwn) {
    Sample sample = emptyGutter();
    sample.circuit("feed").sets = 2;
    auto& entry = sample.addEntry("in", layout::Wall::top, 12, 4);
    entry.raceway = standards::RacewayType::emt;
    entry.tradeSize = standards::TradeSize::of("3");
    const auto made = fanIn(builtOf(sample), EntryId("in"), CircuitId("feed"), sixCopper());
    ASSERT_TRUE(made) << toLine(made.error());
    ASSERT_EQ(made->layout.conductors.size(), 8U);  // 2 sets of A, B, C, N
    std::set<int> slots;
    std::set<std::pair<int, Phase>> kinds;
    const auto built = geometry::build(made->layout, sample.shelf);
    for (std::size_t i = 0; i < 8; ++i) {
        const auto& one = made->layout.conductors[i];
        slots.insert(std::get<layout::AtEntry>(one.from).slot);
        kinds.insert({one.set, one.phase});
        const Vec3 tip = built.conductors[i].built.path.end();
        EXPECT_NEAR(tip.y, 0.5, 1e-9);  // straight down, to half an inch from the bottom
        EXPECT_LT(built.conductors[i].from.kink, 1e-6);
    }
    EXPECT_EQ(slots, (std::set<int>{1, 2, 3, 4, 5, 6, 7, 8}));
    EXPECT_EQ(kinds.size(), 8U);

    const auto again = fanIn(
        geometry::build(made->layout, sample.shelf), EntryId("in"), CircuitId("feed"), sixCopper());
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().code, ErrorCode::missing);
}

/// A conductor drawn in an otherwise empty gutter with the row's ports and an entry.
geometry::BuiltLayout drawn(const Sample& sample,
                            const layout::End& from,
                            const layout::End& to,
                            const std::vector<Vec3>& via = {}) {
    const auto built = builtOf(sample);
    const auto conductor =
        newConductor(sample.layout, {CircuitId("feed"), 1, Phase::a, sixCopper(), std::nullopt});
    EXPECT_TRUE(conductor);
    const auto made = drawConductor(built, *conductor, from, to, via);
    EXPECT_TRUE(made) << toLine(made.error());
    return geometry::build(made->layout, sample.shelf);
}

void expectLegal(const geometry::BuiltLayout& built) {
    const auto& conductor = built.conductors.back();
    EXPECT_TRUE(conductor.built.faults.empty());
    EXPECT_LT(conductor.from.kink, 1e-6);
    EXPECT_LT(conductor.to.kink, 1e-6);
    EXPECT_EQ(breaches(built, checks::Check::bendRadius), 0);
    const Vec3& inside = built.gutter().inside;
    for (const Vec3& point : conductor.built.path.flattened(0.01)) {
        EXPECT_TRUE(point.x >= -2 && point.x <= inside.x + 2 && point.y >= -2 &&
                    point.y <= inside.y + 2 && point.z >= 0 && point.z <= inside.z);
    }
}

Sample withEntryAndBlock(double entryDepth) {
    Sample sample = emptyGutter();
    sample.addEntry("in", layout::Wall::top, 8, entryDepth);
    sample.addBlock("A", "row", {30, 5, 1});  // ports open downward at y = 5, z = 2
    return sample;
}

TEST(Drawing, LeavesTheRacewayAndEntersThePortStraightWithLegalBends) {
    const Sample sample = withEntryAndBlock(2.0);
    expectLegal(drawn(sample, layout::AtEntry{EntryId("in"), 1}, inPort("A", "1")));
}

TEST(Drawing, MakesUpForALittleDifferenceInDepthToo) {
    const Sample sample = withEntryAndBlock(2.6);
    expectLegal(drawn(sample, layout::AtEntry{EntryId("in"), 1}, inPort("A", "2")));
}

TEST(Drawing, GoesThroughThePlacesPointedAt) {
    const Sample sample = withEntryAndBlock(2.0);
    const Vec3 via{20, 1.5, 2};
    const auto built = drawn(sample, layout::AtEntry{EntryId("in"), 1}, inPort("A", "1"), {via});
    expectLegal(built);
    double nearest = 1e9;
    for (const Vec3& point : built.conductors.back().built.path.flattened(0.001)) {
        nearest = std::min({nearest, std::hypot(point.y - via.y, point.z - via.z)});
    }
    EXPECT_LT(nearest, 0.01);  // its lane is the one pointed at
}

TEST(Landing, StripsAsThePartSaysAndGivesTheBlockItsPhase) {
    Sample sample = withEntryAndBlock(2.0);
    const auto made = fanIn(builtOf(sample), EntryId("in"), CircuitId("feed"), sixCopper());
    ASSERT_TRUE(made);
    const auto built = geometry::build(made->layout, sample.shelf);
    const auto id = std::get<ConductorId>(made->items.front());
    const auto landed =
        landEnd(built, id, ConductorEnd::to, layout::BlockId("A"), parts::PortName("1"));
    ASSERT_TRUE(landed) << toLine(landed.error());
    const auto& end = std::get<layout::InPort>(landed->conductors.front().to);
    EXPECT_EQ(end.strip, sample.part("row").ports.front().stripLength);
    EXPECT_EQ(landed->blocks.front().phase, Phase::a);

    const auto freed = freeEnd(geometry::build(*landed, sample.shelf), id, ConductorEnd::to);
    ASSERT_TRUE(freed);
    const auto* tip = std::get_if<layout::Spare>(&freed->conductors.front().to);
    ASSERT_NE(tip, nullptr);
    EXPECT_LT(tip->tip.y, 5.0);  // below the mouth it was in
}

TEST(Landing, InAPortThatIsNotThereIsRefused) {
    const auto refused = landEnd(builtOf(oneTap()),
                                 ConductorId("c1"),
                                 ConductorEnd::to,
                                 layout::BlockId("A"),
                                 parts::PortName("9"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::dangling);
}

TEST(Landing, InATakenSlotIsRefused) {
    Sample sample = oneTap();
    sample.addEntry("other", layout::Wall::bottom, 6, 4);
    auto& second =
        sample.addConductor("c2", layout::AtEntry{EntryId("other"), 1}, gw::test::spare({6, 3, 4}));
    second.phase = Phase::b;
    EXPECT_FALSE(
        enterEnd(builtOf(sample), ConductorId("c2"), ConductorEnd::from, EntryId("in"), 1));
    const auto next =
        enterEnd(builtOf(sample), ConductorId("c2"), ConductorEnd::from, EntryId("in"));
    ASSERT_TRUE(next);
    EXPECT_EQ(std::get<layout::AtEntry>(next->conductors.back().from).slot, 2);
}

Sample alongAThroughPort() {
    Sample sample = emptyGutter();
    sample.addBlock("R", "through", {20, 3, 1});  // "run" along x at y = 4, z = 2
    sample.addConductor("c1", gw::test::spare({4, 4.5, 2}), gw::test::spare({44, 4.5, 2}));
    return sample;
}

TEST(PassingThrough, BringsTheLegOntoTheBoreWithAWindowInsideIt) {
    const Sample sample = alongAThroughPort();
    const auto passed = passThrough(
        builtOf(sample), ConductorId("c1"), 0, layout::BlockId("R"), parts::PortName("run"));
    ASSERT_TRUE(passed) << toLine(passed.error());
    const auto built = geometry::build(*passed, sample.shelf);
    ASSERT_EQ(built.conductors.front().passes.size(), 1U);
    EXPECT_TRUE(built.conductors.front().passes.front().onAxis);
    EXPECT_EQ(breaches(built, checks::Check::exposedCopper), 0);
    const auto dropped =
        dropPass(built, ConductorId("c1"), layout::BlockId("R"), parts::PortName("run"));
    ASSERT_TRUE(dropped);
    EXPECT_TRUE(dropped->conductors.front().passes.empty());
}

TEST(PassingThrough, ABlindPortIsRefused) {
    const Sample sample = alongAThroughPort();
    const auto refused = passThrough(
        builtOf(sample), ConductorId("c1"), 0, layout::BlockId("R"), parts::PortName("tap"));
    EXPECT_FALSE(refused);
}

TEST(Rerouting, KeepsEveryConductorOfTheSamplesAValidLayoutWithoutKinks) {
    const parts::Shelf shelf = gw::test::shippedShelf();
    for (const std::string& name : test::goodSamples()) {
        const auto built = geometry::build(test::sampleLayout(name, shelf), shelf);
        for (const auto& conductor : built.layout.conductors) {
            const auto after = reroute(built, conductor.id);
            ASSERT_TRUE(after) << name << " " << conductor.tag << " " << toLine(after.error());
            const auto again = geometry::build(*after, shelf);
            const auto& path = again.conductors[*indexOf(*after, conductor.id)];
            EXPECT_LT(path.from.kink, 1e-6) << name << " " << conductor.tag;
            EXPECT_LT(path.to.kink, 1e-6) << name << " " << conductor.tag;
        }
    }
}

}  // namespace
}  // namespace gw::editing
