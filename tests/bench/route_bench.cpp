#include <algorithm>
#include <cmath>
#include <cstdint>

#include "base/contract.h"
#include "bench/report.h"
#include "routing/routing.h"
#include "support/route_scenes.h"
#include "support/shipped_shelf.h"

/// Routing of scenes at random, ten seeds each: how many are routed whole, how many of their
/// conductors, and how long these are beside the shortest ways that they would have alone.
namespace gw::bench {
namespace {

using test_support::RouteFamily;

constexpr std::uint64_t kFirstSeed = 1000;
constexpr std::uint64_t kSeeds = 10;

struct Sums {
    double scenes = 0.0;
    double whole = 0.0;
    double asked = 0.0;
    double routed = 0.0;
    double length = 0.0;
    double alone = 0.0;
    double bends = 0.0;
};

void add(Sums& sums, const routing::Routing& routing) {
    sums.scenes += 1.0;
    sums.whole += routing.answer ? 1.0 : 0.0;
    sums.asked += static_cast<double>(routing.routed.size() + routing.unresolved.size());
    sums.routed += static_cast<double>(routing.routed.size());
    for (const auto& one : routing.routed) {
        sums.length += one.length;
        sums.alone += one.alone;
        sums.bends += static_cast<double>(one.bends);
    }
}

void routeFamily(benchmark::State& state, RouteFamily family) {
    const auto shelf = test::shippedShelf();
    Sums sums;
    for (auto _ : state) {
        for (std::uint64_t seed = kFirstSeed; seed < kFirstSeed + kSeeds; ++seed) {
            const auto routing = routing::route(test_support::routeScene(family, seed), shelf);
            CONTRACT(routing.has_value());
            add(sums, *routing);
        }
    }
    state.counters["wholeShare"] = sums.whole / sums.scenes;
    state.counters["routedShare"] = sums.routed / sums.asked;
    state.counters["lengthOverAlone"] = sums.length / sums.alone;
    state.counters["bendsEach"] = sums.bends / sums.routed;
}

void once(benchmark::internal::Benchmark* bench) {
    bench->Iterations(1)->Repetitions(1)->Unit(benchmark::kMillisecond);
}

BENCHMARK_CAPTURE(routeFamily, small, RouteFamily::small)->Name("route_small")->Apply(once);
BENCHMARK_CAPTURE(routeFamily, middle, RouteFamily::middle)->Name("route_middle")->Apply(once);

}  // namespace
}  // namespace gw::bench
