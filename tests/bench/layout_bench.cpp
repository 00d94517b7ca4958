#include <memory>
#include <numbers>

#include "bench/report.h"
#include "checks/clearance_scene.h"
#include "checks/facts.h"
#include "checks/finding.h"
#include "peer/fcl_scene.h"
#include "support/long_gutter.h"
#include "support/shipped_shelf.h"

/// Whole layouts: building one, all checks on it, and the clearance check beside a general
/// collision library.
namespace gw::bench {
namespace {

using geometry::BuiltLayout;
using test_support::FclScene;

constexpr double kFiveDegrees = std::numbers::pi / 36;

layout::Layout layoutFor(const benchmark::State& state, const parts::Shelf& shelf) {
    return test_support::longGutter(static_cast<std::size_t>(state.range(0)), shelf);
}

BuiltLayout builtFor(const benchmark::State& state) {
    const parts::Shelf shelf = test::shippedShelf();
    return geometry::build(layoutFor(state, shelf), shelf);
}

void build(benchmark::State& state) {
    const parts::Shelf shelf = test::shippedShelf();
    const layout::Layout layout = layoutFor(state, shelf);
    for (auto _ : state) {
        benchmark::DoNotOptimize(geometry::build(layout, shelf).conductors.size());
    }
}

void checkAll(benchmark::State& state) {
    const BuiltLayout built = builtFor(state);
    for (auto _ : state) {
        benchmark::DoNotOptimize(checks::checkAll(built).size());
    }
}

void buildAndCheckAll(benchmark::State& state) {
    const parts::Shelf shelf = test::shippedShelf();
    const layout::Layout layout = layoutFor(state, shelf);
    for (auto _ : state) {
        const BuiltLayout built = geometry::build(layout, shelf);
        benchmark::DoNotOptimize(checks::checkAll(built).size());
    }
}

/// What the check of clearances asks geometry, from the built layout: cutting conductors up by what
/// holds them, nearest places of all pairs within an inch, sorting out what belongs together.
void clearance(benchmark::State& state) {
    const BuiltLayout built = builtFor(state);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            checks::neighboursOf(built, checks::Occupancy(built)).ofConductors.size());
    }
}

/// The same and its findings, worded, with walls and cover.
void clearanceFindings(benchmark::State& state) {
    const BuiltLayout built = builtFor(state);
    for (auto _ : state) {
        benchmark::DoNotOptimize(checks::runChecks(built, {checks::Check::clearance}).size());
    }
}

template <class Run>
void peer(benchmark::State& state, Run run) {
    FclScene scene(test_support::sceneOf(builtFor(state)), kFiveDegrees, checks::kNeighbourhood);
    for (auto _ : state) {
        benchmark::DoNotOptimize(run(scene));
    }
}

void peerGaps(benchmark::State& state) {
    peer(state, [](FclScene& scene) {
        scene.setUpTree(FclScene::Tree::plain);
        return scene.nearGaps().size();
    });
}

void peerCollisions(benchmark::State& state) {
    peer(state, [](FclScene& scene) {
        scene.setUpTree(FclScene::Tree::grown);
        return scene.nearPairs(FclScene::Way::collisions).size();
    });
}

/// What the checks share.
void facts(benchmark::State& state) {
    const BuiltLayout built = builtFor(state);
    for (auto _ : state) {
        benchmark::DoNotOptimize(checks::factsOf(built).links.circuitOf.size());
    }
}

/// With the facts at hand.
void oneCheck(benchmark::State& state, checks::Check check) {
    const BuiltLayout built = builtFor(state);
    const auto facts = checks::factsOf(built);
    for (auto _ : state) {
        benchmark::DoNotOptimize(checks::runChecks(built, facts, {check}).size());
    }
}

void counts(benchmark::internal::Benchmark* bench) {
    for (const int count : {12, 50, 200, 800}) {
        bench->Arg(count);
    }
    bench->Unit(benchmark::kMicrosecond);
}

BENCHMARK(build)->Name("build")->Apply(counts);
BENCHMARK(checkAll)->Name("checkAll")->Apply(counts);
BENCHMARK(facts)->Name("facts")->Apply(counts);
BENCHMARK(buildAndCheckAll)->Name("build_checkAll")->Apply(counts);
/// "check NAME", each on its own.
[[maybe_unused]] const bool kChecksRegistered = [] {
    for (const checks::Check check : checks::allChecks()) {
        const std::string name = "check " + std::string(checks::checkName(check));
        counts(benchmark::RegisterBenchmark(
            name.c_str(), [check](benchmark::State& state) { oneCheck(state, check); }));
    }
    return true;
}();

BENCHMARK(clearance)->Name("clearance")->Apply(counts);
BENCHMARK(clearanceFindings)->Name("clearance_findings")->Apply(counts);
BENCHMARK(peerGaps)->Name("clearance_fcl_gaps")->Apply(counts);
BENCHMARK(peerCollisions)->Name("clearance_fcl_collide")->Apply(counts);

}  // namespace
}  // namespace gw::bench
