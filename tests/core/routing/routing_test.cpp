#include "routing/routing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <numeric>

#include "core/routing/dense_verifier.h"
#include "support/shipped_shelf.h"
#include "support/small_gutter.h"

namespace gw::routing {
namespace {

using layout::Wall;
using test_support::SmallGutter;
using Why = Unresolved::Why;

constexpr const char* kRowOfFour = "row-one-side-4-to-350";  // mouths 1.1 in apart, opening down

const parts::Shelf& shelf() {
    static const parts::Shelf kShelf = gw::test::shippedShelf();
    return kShelf;
}

std::vector<std::size_t> all(const layout::Layout& layout) {
    std::vector<std::size_t> indices(layout.conductors.size());
    std::iota(indices.begin(), indices.end(), std::size_t{0});
    return indices;
}

void expectRouted(const layout::Layout& layout) {
    const auto routing = route(layout, shelf()).value();
    for (const auto& unresolved : routing.unresolved) {
        ADD_FAILURE() << unresolved.conductor.text() << ": " << unresolved.sentence;
    }
    ASSERT_TRUE(routing.answer);
    const auto built = geometry::build(*routing.answer, shelf());
    for (const auto& fault : test::faultsOf(built, all(layout))) {
        ADD_FAILURE() << fault;
    }
}

/// Four 3/0 from the left wall, one above the other, to the four ports of a block.
layout::Layout feeds(bool reversed) {
    SmallGutter gutter({60.0, 12.0, 8.0});
    gutter.addBlock("B", kRowOfFour, {40.0, 7.0, 0.1});
    for (int i = 0; i < 4; ++i) {
        const std::string number = std::to_string(i + 1);
        gutter.addEntry("E" + number, Wall::left, 1.5 + 1.5 * i, 2.5);
        gutter.addConductor("C" + number,
                            SmallGutter::atEntry("E" + number),
                            SmallGutter::inPort("B", std::to_string(reversed ? 4 - i : i + 1)));
    }
    return gutter.layout;
}

TEST(Routing, FeedsInOrderFindTheirWays) {
    expectRouted(feeds(false));
}

TEST(Routing, FeedsThatCrossFindTheirWays) {
    expectRouted(feeds(true));
}

/// From every wall, to ports and to other walls.
TEST(Routing, EveryWallLeadsToAPort) {
    SmallGutter gutter({60.0, 12.0, 10.0});
    gutter.addBlock("B", kRowOfFour, {30.0, 7.0, 0.1});
    gutter.addBlock("D", kRowOfFour, {45.0, 7.0, 0.1});
    gutter.addEntry("L", Wall::left, 3.0, 3.0);
    gutter.addEntry("R", Wall::right, 3.0, 3.0);
    gutter.addEntry("T", Wall::top, 12.0, 6.0);
    gutter.addEntry("U", Wall::bottom, 20.0, 6.0);
    gutter.addEntry("H", Wall::back, 8.0, 8.0);
    const std::array<std::pair<const char*, const char*>, 5> ways = {
        {{"L", "1"}, {"T", "2"}, {"U", "3"}, {"H", "4"}, {"R", "1"}}};
    for (const auto& [entry, port] : ways) {
        gutter.addConductor(std::string("C-") + entry,
                            SmallGutter::atEntry(entry),
                            SmallGutter::inPort(entry[0] == 'R' ? "D" : "B", port));
    }
    expectRouted(gutter.layout);
}

TEST(Routing, AShallowGutterIsNoObstacle) {
    SmallGutter gutter({48.0, 12.0, 1.25});
    for (int i = 0; i < 4; ++i) {
        const std::string number = std::to_string(i + 1);
        gutter.addEntry("E" + number, Wall::left, 2.0 + 1.5 * i, 0.6);
        gutter.addEntry("D" + number, Wall::bottom, 24.0 + 3.0 * i, 0.6);
        gutter.addConductor(
            "C" + number, SmallGutter::atEntry("E" + number), SmallGutter::atEntry("D" + number));
    }
    expectRouted(gutter.layout);
}

// ---- what cannot be -------------------------------------------------------------------------

/// Into a port that opens toward the bottom wall, 2 in below the top. 3/0 THWN-2 is 0.584 in thick
/// (NFPA 70 Chapter 9 Table 5): it needs 0.584 lead-in + 2.75 bend radius (4.5 diameters, up to the
/// next 1/4 in) + 0.292 = 3.626 in before the port.
layout::Layout dropInto(double height) {
    SmallGutter gutter({36.0, height, 6.0});
    gutter.addBlock("B", kRowOfFour, {20.0, height - 2.0, 0.1});
    gutter.addEntry("E", Wall::left, 1.5, 2.5);
    gutter.addConductor("C", SmallGutter::atEntry("E"), SmallGutter::inPort("B", "1"));
    return gutter.layout;
}

TEST(Routing, AnInchTooLowIsProvenImpossible) {
    const auto routing = route(dropInto(5.0), shelf()).value();
    EXPECT_FALSE(routing.answer);
    EXPECT_EQ(routing.partial, dropInto(5.0));
    ASSERT_EQ(routing.unresolved.size(), 1U);
    const Unresolved& found = routing.unresolved.front();
    EXPECT_EQ(found.why, Why::provenImpossible);
    EXPECT_NEAR(found.needed.value(), 3.626, 1e-9);
    EXPECT_NEAR(found.free.value(), 3.0, 1e-9);
    EXPECT_NE(found.sentence.find("port 1 of block B"), std::string::npos) << found.sentence;
}

TEST(Routing, AnInchHigherItIsNot) {
    expectRouted(dropInto(6.0));
}

TEST(Routing, AGutterThinnerThanTheConductorIsProvenImpossible) {
    SmallGutter gutter({36.0, 6.0, 1.0});
    gutter.size = "1000";  // 1.310 in thick (NFPA 70 Chapter 9 Table 5)
    gutter.addEntry("E", Wall::left, 3.0, 0.5);
    gutter.addEntry("D", Wall::right, 3.0, 0.5);
    gutter.addConductor("C", SmallGutter::atEntry("E"), SmallGutter::atEntry("D"));
    const auto routing = route(gutter.layout, shelf()).value();
    ASSERT_EQ(routing.unresolved.size(), 1U);
    EXPECT_EQ(routing.unresolved.front().why, Why::provenImpossible);
    EXPECT_NEAR(routing.unresolved.front().needed.value(), 1.310, 1e-9);
    gutter.layout.gutter.inside.z = 1.4;
    gutter.layout.entries[0].v = gutter.layout.entries[1].v = 0.7;
    expectRouted(gutter.layout);
}

/// A row of blocks from the back to 0.4 in below the cover, and from the bottom to the top.
TEST(Routing, NoLaneBesideABlockIsNotFoundAndNamesTheBlock) {
    SmallGutter gutter({40.0, 3.0, 2.23});
    gutter.addBlock("Wall", kRowOfFour, {15.0, 0.9, 0.0});
    gutter.addEntry("E", Wall::left, 1.5, 1.1);
    gutter.addEntry("D", Wall::right, 1.5, 1.1);
    gutter.addConductor("C", SmallGutter::atEntry("E"), SmallGutter::atEntry("D"));
    gutter.layout.blocks[0].corner.y = 0.3;
    gutter.layout.gutter.inside.y = 2.3;
    const auto routing = route(gutter.layout, shelf()).value();
    EXPECT_FALSE(routing.answer);
    ASSERT_EQ(routing.unresolved.size(), 1U);
    const Unresolved& found = routing.unresolved.front();
    EXPECT_EQ(found.why, Why::notFound);
    EXPECT_EQ(found.sentence,
              "no lane left in front of block Wall between x 15 in and 20.4 in: needs 0.584 in, "
              "0.4 in free");
    EXPECT_NEAR(found.needed.value(), 0.584, 1e-9);
    EXPECT_NEAR(found.free.value(), 0.4, 1e-9);
}

TEST(Routing, MoreThanFitAreNotAllRoutedAndTheRestIsLegal) {
    SmallGutter gutter({40.0, 2.0, 1.0});  // three lanes, 0.584 in each
    for (int i = 0; i < 4; ++i) {
        const std::string number = std::to_string(i + 1);
        gutter.addEntry("E" + number, Wall::left, 0.4 + 0.4 * i, 0.5);
        gutter.addEntry("D" + number, Wall::right, 0.4 + 0.4 * i, 0.5);
        gutter.addConductor(
            "C" + number, SmallGutter::atEntry("E" + number), SmallGutter::atEntry("D" + number));
    }
    const auto routing = route(gutter.layout, shelf()).value();
    EXPECT_FALSE(routing.answer);
    EXPECT_EQ(routing.routed.size() + routing.unresolved.size(), 4U);
    EXPECT_GE(routing.routed.size(), 2U);
    std::vector<std::size_t> routed;
    for (std::size_t i = 0; i < 4; ++i) {
        const auto& id = gutter.layout.conductors[i].id;
        if (std::any_of(routing.routed.begin(), routing.routed.end(), [&](const Routed& one) {
                return one.conductor == id;
            })) {
            routed.push_back(i);
        }
    }
    EXPECT_EQ(test::faultsOf(geometry::build(routing.partial, shelf()), routed),
              std::vector<std::string>{});
    for (const Unresolved& unresolved : routing.unresolved) {
        EXPECT_EQ(unresolved.why, Why::notFound);
        EXPECT_TRUE(unresolved.place && unresolved.needed && unresolved.free)
            << unresolved.sentence;
    }
}

// ---- the same answer ------------------------------------------------------------------------

std::map<std::string, std::vector<layout::Corner>> pathsOf(const layout::Layout& layout) {
    std::map<std::string, std::vector<layout::Corner>> paths;
    for (const auto& conductor : layout.conductors) {
        paths[conductor.id.text()] = conductor.corners;
    }
    return paths;
}

TEST(Routing, RepeatGivesTheSameToTheByte) {
    const auto layout = feeds(true);
    const auto first = route(layout, shelf()).value();
    EXPECT_EQ(jsonReport(first, "f"), jsonReport(route(layout, shelf()).value(), "f"));
    EXPECT_EQ(first.answer.value(), route(layout, shelf()).value().answer.value());
}

TEST(Routing, TheOrderOfTheLayoutDoesNotMatter) {
    const auto layout = feeds(true);
    const auto paths = pathsOf(route(layout, shelf()).value().answer.value());
    auto permuted = layout;
    std::reverse(permuted.conductors.begin(), permuted.conductors.end());
    std::rotate(permuted.entries.begin(), permuted.entries.begin() + 1, permuted.entries.end());
    EXPECT_EQ(paths, pathsOf(route(permuted, shelf()).value().answer.value()));
}

TEST(Routing, PathsThereBeforeDoNotMatter) {
    const auto layout = feeds(true);
    const auto once = route(layout, shelf()).value().answer.value();
    EXPECT_EQ(pathsOf(route(once, shelf()).value().answer.value()), pathsOf(once));
}

// ---- some only ------------------------------------------------------------------------------

TEST(Routing, OthersStayWhereTheyLieAndAreKeptClearOf) {
    const auto routed = route(feeds(true), shelf()).value().answer.value();
    auto one = routed;
    one.conductors[2].corners.clear();
    Options options;
    options.only = {one.conductors[2].id};
    const auto routing = route(one, shelf(), options).value();
    ASSERT_TRUE(routing.answer);
    ASSERT_EQ(routing.routed.size(), 1U);
    for (const std::size_t i : {0U, 1U, 3U}) {
        EXPECT_EQ(routing.answer->conductors[i], routed.conductors[i]);
    }
    EXPECT_EQ(test::faultsOf(geometry::build(*routing.answer, shelf()), all(one)),
              std::vector<std::string>{});
}

TEST(Routing, AnUnknownConductorIsAnError) {
    Options options;
    options.only = {layout::ConductorId("nobody")};
    const auto routing = route(feeds(false), shelf(), options);
    ASSERT_FALSE(routing);
    EXPECT_EQ(routing.error().code, ErrorCode::dangling);
    EXPECT_EQ(routing.error().found, "nobody");
}

// ---- stopping -------------------------------------------------------------------------------

TEST(Routing, StopsWhenAskedTo) {
    const auto layout = feeds(true);
    for (const int after : {0, 3, 40, 200}) {
        SCOPED_TRACE(after);
        int asked = 0;
        Options options;
        options.onProgress = [&](const Progress&) { return asked++ < after; };
        const auto routing = route(layout, shelf(), options).value();
        EXPECT_TRUE(routing.stopped);
        EXPECT_EQ(asked, after + 1) << "asked again after it was told to stop";
        EXPECT_FALSE(routing.answer);
        EXPECT_EQ(routing.partial, layout);
        ASSERT_EQ(routing.unresolved.size(), 4U);
        EXPECT_EQ(routing.unresolved.front().why, Why::stopped);
    }
}

TEST(Routing, ProgressCountsConductorsAndConflicts) {
    Progress last;
    Options options;
    options.onProgress = [&](const Progress& progress) {
        EXPECT_GE(progress.prepared, last.prepared);
        last = progress;
        return true;
    };
    ASSERT_TRUE(route(feeds(true), shelf(), options).value().answer);
    EXPECT_EQ(last.asked, 4U);
    EXPECT_EQ(last.prepared, 4U);
    EXPECT_GE(last.round, 1U);
}

}  // namespace
}  // namespace gw::routing
