#include <algorithm>
#include <chrono>
#include <memory>
#include <numbers>
#include <vector>

#include "base/contract.h"
#include "bench/report.h"
#include "checks/clearance_scene.h"
#include "live/live_layout.h"
#include "peer/fcl_scene.h"
#include "support/drawn_layout.h"
#include "support/long_gutter.h"
#include "support/random_moves.h"
#include "support/shipped_shelf.h"

/// What a move costs while it is dragged: building what moved, the fill, every check on what it
/// touches; beside a general collision library that is told of the move, or looks at all anew.
namespace gw::bench {
namespace {

using test_support::FclScene;
using test_support::Random;

constexpr std::uint64_t kSeed = 20241126;
constexpr double kFiveDegrees = std::numbers::pi / 36;
constexpr double kReach = 0.25;  // inches, each way
constexpr std::size_t kMoves = 256;

/// Moves from one layout, each with its way back.
struct Moves {
    live::LiveLayout live;
    std::vector<layout::Patch> there;
    std::vector<layout::Patch> back;
};

template <class SomeMove>
Moves movesOf(const layout::Layout& layout, SomeMove someMove) {
    auto live = live::LiveLayout::create(layout, test::shippedShelf());
    CONTRACT(live.has_value());
    Moves moves{std::move(*live), {}, {}};
    Random random(kSeed);
    while (moves.there.size() < kMoves) {
        const auto after = someMove(layout, random).after;
        if (layout::validate(after, moves.live.shelf())) {
            moves.there.push_back(layout::difference(layout, after));
            moves.back.push_back(moves.there.back().reversed());
        }
    }
    return moves;
}

double at(const std::vector<double>& sorted, double share) {
    const auto last = static_cast<double>(sorted.size() - 1);
    return sorted[static_cast<std::size_t>(share * last)];
}

/// Times single moves, there and back by turns, and tells how they are spread.
void drag(benchmark::State& state, Moves moves) {
    using Clock = std::chrono::steady_clock;
    std::vector<double> microseconds;
    std::size_t next = 0;
    for (auto _ : state) {
        const std::size_t move = next / 2 % kMoves;
        const auto start = Clock::now();
        moves.live.apply(next % 2 == 0 ? moves.there[move] : moves.back[move]);
        microseconds.push_back(
            std::chrono::duration<double, std::micro>(Clock::now() - start).count());
        ++next;
    }
    std::sort(microseconds.begin(), microseconds.end());
    state.counters["p50_us"] = at(microseconds, 0.5);
    state.counters["p95_us"] = at(microseconds, 0.95);
    state.counters["p99_us"] = at(microseconds, 0.99);
}

layout::Layout longGutter(const benchmark::State& state) {
    return test_support::longGutter(static_cast<std::size_t>(state.range(0)), test::shippedShelf());
}

void liveConductor(benchmark::State& state) {
    drag(state, movesOf(longGutter(state), [](const layout::Layout& layout, Random& random) {
             return test_support::moveOfAConductor(layout, random, kReach);
         }));
}

/// In long gutters a block holds two conductors.
void liveBlock(benchmark::State& state) {
    drag(state, movesOf(longGutter(state), [](const layout::Layout& layout, Random& random) {
             return test_support::moveOfABlock(layout, random, kReach);
         }));
}

/// A block a phase, each with eight conductors: two of the service, six of tenants.
void liveBlockOfEight(benchmark::State& state) {
    test::DrawnOptions options;
    options.tenants = 6;
    const auto layout = test::drawnLayout(options).layout;
    drag(state, movesOf(layout, [](const layout::Layout& before, Random& random) {
             return test_support::moveOfABlock(before, random, kReach);
         }));
}

/// The whole way from a layout to its findings.
void fullRecheck(benchmark::State& state) {
    const parts::Shelf shelf = test::shippedShelf();
    const layout::Layout layout = longGutter(state);
    for (auto _ : state) {
        benchmark::DoNotOptimize(checks::checkAll(geometry::build(layout, shelf)).size());
    }
}

std::unique_ptr<FclScene> peerFor(const benchmark::State& state) {
    const auto layout = longGutter(state);
    return std::make_unique<FclScene>(
        test_support::sceneOf(geometry::build(layout, test::shippedShelf())),
        kFiveDegrees,
        checks::kNeighbourhood);
}

/// It is told of one conductor's move and asked what is near that: clearances only.
void peerIncremental(benchmark::State& state) {
    const auto scene = peerFor(state);
    Random random(kSeed);
    const auto count = static_cast<std::size_t>(state.range(0));
    double way = kReach;
    std::uint32_t item = 0;
    for (auto _ : state) {
        item = way > 0.0 ? static_cast<std::uint32_t>(random.below(count)) : item;
        benchmark::DoNotOptimize(scene->gapsAfterMove(item, {0.0, way, 0.0}).size());
        way = -way;
    }
}

void peerFull(benchmark::State& state) {
    const auto scene = peerFor(state);
    for (auto _ : state) {
        scene->setUpTree(FclScene::Tree::plain);
        benchmark::DoNotOptimize(scene->nearGaps().size());
    }
}

void counts(benchmark::internal::Benchmark* bench) {
    for (const int count : {50, 200, 800}) {
        bench->Arg(count);
    }
    bench->Unit(benchmark::kMicrosecond);
}

BENCHMARK(liveConductor)->Name("live_conductor")->Apply(counts);
BENCHMARK(liveBlock)->Name("live_block")->Apply(counts);
BENCHMARK(liveBlockOfEight)->Name("live_block_of_eight")->Arg(33)->Unit(benchmark::kMicrosecond);
BENCHMARK(fullRecheck)->Name("live_full")->Apply(counts);
BENCHMARK(peerIncremental)->Name("live_fcl_incremental")->Apply(counts);
BENCHMARK(peerFull)->Name("live_fcl_full")->Apply(counts);

}  // namespace
}  // namespace gw::bench
