#include <numbers>

#include "bench/report.h"
#include "support/fill_sampler.h"
#include "support/scene.h"

/// The whole fill profile from nothing, against a plane every tenth of an inch.
namespace gw::bench {
namespace {

constexpr std::uint64_t kSeed = 20240611;
constexpr double kEvery = 0.1;
constexpr double kFiveDegrees = std::numbers::pi / 36;

using test_support::FillSampler;
using test_support::gutterScene;
using test_support::Scene;

void fill(benchmark::State& state) {
    const Scene scene = gutterScene(static_cast<std::size_t>(state.range(0)), kSeed);
    const auto conductors = scene.fillConductors();
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            geometry::fillProfile(scene.inside, conductors, scene.blocks).worstConductors().area);
    }
}

/// Conductors only; legs whole, bends every five degrees; what lies wholly beside the plane is
/// passed over by its extent.
void fillSampled(benchmark::State& state) {
    const Scene scene = gutterScene(static_cast<std::size_t>(state.range(0)), kSeed);
    const auto conductors = scene.fillConductors();
    for (auto _ : state) {
        const FillSampler sampler(conductors, kFiveDegrees);
        benchmark::DoNotOptimize(sampler.peak(0.0, kEvery, scene.inside.x));
    }
}

void counts(benchmark::internal::Benchmark* bench) {
    for (const int count : {12, 50, 200, 800}) {
        bench->Arg(count);
    }
    bench->Unit(benchmark::kMicrosecond);
}

BENCHMARK(fill)->Name("fill")->Apply(counts);
BENCHMARK(fillSampled)->Name("fill_sampled")->Apply(counts);

}  // namespace
}  // namespace gw::bench
