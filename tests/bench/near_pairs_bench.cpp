#include <numbers>

#include "bench/report.h"
#include "peer/fcl_scene.h"
#include "support/scene.h"

/// The full clearance check of a gutter from nothing: every pair of conductors and blocks nearer
/// than a quarter inch, with the gap and the place for ours, only which pairs for the peer.
namespace gw::bench {
namespace {

constexpr std::uint64_t kSeed = 20240611;
constexpr double kWithin = 0.25;
constexpr double kFiveDegrees = std::numbers::pi / 36;

using test_support::FclScene;
using test_support::gutterScene;
using test_support::Scene;

void nearPairs(benchmark::State& state) {
    const Scene scene = gutterScene(static_cast<std::size_t>(state.range(0)), kSeed);
    const auto items = scene.items();
    std::size_t pairs = 0;
    for (auto _ : state) {
        pairs = geometry::nearPairs(items, kWithin).size();
        benchmark::DoNotOptimize(pairs);
    }
    state.counters["pairs"] = static_cast<double>(pairs);
}

/// The peer's shapes and their places are made beforehand. Its tree is made anew where `anew` says
/// so; otherwise it stands already, in the peer's favour.
void peer(benchmark::State& state, FclScene::Way way, bool anew) {
    const Scene scene = gutterScene(static_cast<std::size_t>(state.range(0)), kSeed);
    FclScene shapes(scene, kFiveDegrees, kWithin);
    std::size_t pairs = 0;
    for (auto _ : state) {
        if (anew) {
            shapes.setUpTree();
        }
        pairs = shapes.nearPairs(way).size();
        benchmark::DoNotOptimize(pairs);
    }
    state.counters["pairs"] = static_cast<double>(pairs);
}

void peerDistances(benchmark::State& state) {
    peer(state, FclScene::Way::distances, false);
}
void peerOverlaps(benchmark::State& state) {
    peer(state, FclScene::Way::overlaps, false);
}
void peerCollisions(benchmark::State& state) {
    peer(state, FclScene::Way::collisions, false);
}
void peerAnew(benchmark::State& state) {
    peer(state, FclScene::Way::overlaps, true);
}

void counts(benchmark::internal::Benchmark* bench) {
    for (const int count : {12, 50, 200, 800}) {
        bench->Arg(count);
    }
    bench->Unit(benchmark::kMicrosecond);
}

BENCHMARK(nearPairs)->Name("nearPairs")->Apply(counts);
BENCHMARK(peerOverlaps)->Name("nearPairs_fcl_overlaps")->Apply(counts);
BENCHMARK(peerCollisions)->Name("nearPairs_fcl_collisions")->Apply(counts);
BENCHMARK(peerDistances)->Name("nearPairs_fcl_distances")->Apply(counts);
BENCHMARK(peerAnew)->Name("nearPairs_fcl_with_tree")->Apply(counts);

}  // namespace
}  // namespace gw::bench
