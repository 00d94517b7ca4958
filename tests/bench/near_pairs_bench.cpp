#include <memory>
#include <numbers>

#include "bench/report.h"
#include "peer/fcl_scene.h"
#include "support/scene.h"

/// The full clearance check of a gutter: every pair of conductors and blocks nearer than a quarter
/// inch, with its gap.
namespace gw::bench {
namespace {

constexpr std::uint64_t kSeed = 20240611;
constexpr double kWithin = 0.25;
constexpr double kFiveDegrees = std::numbers::pi / 36;

using test_support::FclScene;
using test_support::gutterScene;
using test_support::Scene;

/// As many scenes as hold 800 conductors together, one after the other: small scenes differ a lot.
std::vector<Scene> scenesFor(const benchmark::State& state) {
    const auto conductors = static_cast<std::size_t>(state.range(0));
    std::vector<Scene> scenes;
    for (std::size_t i = 0; i < 800 / conductors; ++i) {
        scenes.push_back(gutterScene(conductors, kSeed + i));
    }
    return scenes;
}

/// From nothing: cuts, grid, distances.
void nearPairs(benchmark::State& state) {
    const auto scenes = scenesFor(state);
    std::size_t next = 0;
    for (auto _ : state) {
        const auto items = scenes[next++ % scenes.size()].items();
        benchmark::DoNotOptimize(geometry::nearPairs(items, kWithin).size());
    }
}

/// The peer's shapes stand ready. Its tree of boxes is made anew each time, except where the name
/// says that it stands.
template <class Run>
void peer(benchmark::State& state, Run run) {
    std::vector<std::unique_ptr<FclScene>> scenes;
    for (const Scene& scene : scenesFor(state)) {
        scenes.push_back(std::make_unique<FclScene>(scene, kFiveDegrees, kWithin));
    }
    std::size_t next = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(run(*scenes[next++ % scenes.size()]));
    }
}

/// As ours: the gap of every pair. The tree's distance query and the distances of shapes.
void peerGaps(benchmark::State& state) {
    peer(state, [](FclScene& scene) {
        scene.setUpTree(FclScene::Tree::plain);
        return scene.nearGaps().size();
    });
}

void peerGapsStanding(benchmark::State& state) {
    peer(state, [](FclScene& scene) { return scene.nearGaps().size(); });
}

/// Less than ours: only which pairs are near. The tree's collision query and, on shapes grown by
/// half the reach, whether they collide.
void peerCollisions(benchmark::State& state) {
    peer(state, [](FclScene& scene) {
        scene.setUpTree(FclScene::Tree::grown);
        return scene.nearPairs(FclScene::Way::collisions).size();
    });
}

/// The same by the sign of their distance, which the peer has in closed form for capsules.
void peerOverlaps(benchmark::State& state) {
    peer(state, [](FclScene& scene) {
        scene.setUpTree(FclScene::Tree::grown);
        return scene.nearPairs(FclScene::Way::overlaps).size();
    });
}

void counts(benchmark::internal::Benchmark* bench) {
    for (const int count : {12, 50, 200, 800}) {
        bench->Arg(count);
    }
    bench->Unit(benchmark::kMicrosecond);
}

BENCHMARK(nearPairs)->Name("nearPairs")->Apply(counts);
BENCHMARK(peerGaps)->Name("nearPairs_fcl_gaps")->Apply(counts);
BENCHMARK(peerGapsStanding)->Name("nearPairs_fcl_gaps_standing")->Apply(counts);
BENCHMARK(peerCollisions)->Name("nearPairs_fcl_collide")->Apply(counts);
BENCHMARK(peerOverlaps)->Name("nearPairs_fcl_distance")->Apply(counts);

}  // namespace
}  // namespace gw::bench
