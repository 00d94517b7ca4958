#include <gtest/gtest.h>

#include <cstdlib>

#include "core/routing/dense_verifier.h"
#include "routing/routing.h"
#include "support/random.h"
#include "support/route_scenes.h"
#include "support/shipped_shelf.h"
#include "support/small_gutter.h"

/// Random gutters: whatever is given as routed is legal, by dense points. How many are tried is
/// set by GW_RANDOM_GUTTERS.
namespace gw::routing {
namespace {

using layout::Wall;
using test_support::Random;
using test_support::SmallGutter;

constexpr std::uint64_t kSeed = 20261127;

std::size_t wanted() {
    const char* text = std::getenv("GW_RANDOM_GUTTERS");
    return text != nullptr ? std::strtoul(text, nullptr, 10) : 12;
}

/// Blocks in a row along the gutter, a raceway of its own for each conductor, on any wall; a few
/// run from raceway to raceway.
layout::Layout randomGutter(Random& random) {
    const Vec3 inside{
        random.between(48.0, 96.0), random.between(8.0, 14.0), random.between(5.0, 12.0)};
    SmallGutter gutter(inside);
    gutter.size = random.chance(0.5) ? "3/0" : "1/0";
    const std::size_t blocks = 1 + random.below(3);
    std::vector<std::pair<std::string, std::string>> ports;
    for (std::size_t b = 0; b < blocks; ++b) {
        const std::string name(1, static_cast<char>('A' + b));
        const double x =
            12.0 + (inside.x - 24.0) * (static_cast<double>(b) + 0.2) / static_cast<double>(blocks);
        gutter.addBlock(name,
                        "row-one-side-4-to-350",
                        {x, random.between(inside.y - 4.0, inside.y - 1.8), 0.0});
        for (const char* port : {"1", "2", "3", "4"}) {
            ports.emplace_back(name, port);
        }
    }
    const std::size_t conductors = 2 + random.below(7);
    for (std::size_t i = 0; i < conductors; ++i) {
        const std::string number = std::to_string(i + 10);
        const bool atSide = random.chance(0.3);
        const Wall wall = atSide ? (random.chance(0.5) ? Wall::left : Wall::right)
                                 : (random.chance(0.6) ? Wall::bottom : Wall::top);
        const double u =
            atSide ? random.between(1.0, inside.y - 1.0) : random.between(2.0, inside.x - 2.0);
        gutter.addEntry("E" + number, wall, u, random.between(1.0, inside.z - 1.0));
        if (ports.empty() || random.chance(0.2)) {
            gutter.addEntry("D" + number,
                            Wall::bottom,
                            random.between(2.0, inside.x - 2.0),
                            random.between(1.0, inside.z - 1.0));
            gutter.addConductor("C" + number,
                                SmallGutter::atEntry("E" + number),
                                SmallGutter::atEntry("D" + number));
            continue;
        }
        const std::size_t pick = random.below(ports.size());
        gutter.addConductor("C" + number,
                            SmallGutter::atEntry("E" + number),
                            SmallGutter::inPort(ports[pick].first, ports[pick].second));
        ports.erase(ports.begin() + static_cast<std::ptrdiff_t>(pick));
    }
    return gutter.layout;
}

std::vector<std::size_t> routedOf(const layout::Layout& layout, const Routing& routing) {
    std::vector<std::size_t> routed;
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        for (const Routed& one : routing.routed) {
            if (one.conductor == layout.conductors[i].id) {
                routed.push_back(i);
            }
        }
    }
    return routed;
}

TEST(RandomRoutes, NoIllegalPathIsGivenAsRouted) {
    const auto shelf = gw::test::shippedShelf();
    std::size_t routed = 0;
    std::size_t asked = 0;
    std::size_t proven = 0;
    std::size_t whole = 0;
    for (std::size_t n = 0; n < wanted(); ++n) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + n));
        Random random(kSeed + n);
        const auto layout = randomGutter(random);
        const auto routing = route(layout, shelf).value();
        const auto found = routedOf(layout, routing);
        const auto built = geometry::build(routing.partial, shelf);
        for (const auto& fault : test::faultsOf(built, found)) {
            ADD_FAILURE() << fault;
        }
        routed += found.size();
        asked += layout.conductors.size();
        whole += routing.answer ? 1U : 0U;
        for (const auto& unresolved : routing.unresolved) {
            EXPECT_FALSE(unresolved.sentence.empty());
            proven += unresolved.why == Unresolved::Why::provenImpossible ? 1U : 0U;
        }
    }
    RecordProperty("asked", std::to_string(asked));
    RecordProperty("routed", std::to_string(routed));
    RecordProperty("provenImpossible", std::to_string(proven));
    RecordProperty("whole", std::to_string(whole));
    // Entries lie anywhere, so that some cannot be routed; most can.
    EXPECT_GE(routed + proven, asked * 7 / 10);
}

/// Twelve of 250 kcmil in 36 x 8 x 8 in: most, and with none of them illegal.
TEST(RandomRoutes, SmallScenesAreMostlyRouted) {
    const auto shelf = gw::test::shippedShelf();
    for (std::uint64_t seed = 1000; seed < 1003; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const auto layout = test_support::routeScene(test_support::RouteFamily::small, seed);
        const auto routing = route(layout, shelf).value();
        const auto built = geometry::build(routing.partial, shelf);
        for (const auto& fault : test::faultsOf(built, routedOf(layout, routing))) {
            ADD_FAILURE() << fault;
        }
        EXPECT_GE(routing.routed.size(), 11U);
    }
}

}  // namespace
}  // namespace gw::routing
