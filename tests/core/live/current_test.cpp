#include <gtest/gtest.h>

#include "checks/report.h"
#include "live/live_layout.h"
#include "support/drawn_layout.h"
#include "support/long_gutter.h"
#include "support/paths.h"
#include "support/random_moves.h"
#include "support/same_built.h"
#include "support/shipped_shelf.h"

/// Whatever moves, what was kept current is what a fresh look gives.
namespace gw::live {
namespace {

using test_support::Random;

struct Row {
    const char* name;
    layout::Layout (*layout)();
    double reach;  ///< inches
    int moves;
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

std::string caseName(const testing::TestParamInfo<Row>& info) {
    return info.param.name;
}

class KeptCurrent : public testing::TestWithParam<Row> {};

test_support::Move someMove(const layout::Layout& layout, Random& random, double reach) {
    const bool block = !layout.blocks.empty() && random.chance(0.3);
    return block ? test_support::moveOfABlock(layout, random, reach)
                 : test_support::moveOfAConductor(layout, random, reach);
}

void expectCurrent(const LiveLayout& live, const layout::Layout& layout) {
    const auto fresh = geometry::build(layout, live.shelf());
    ASSERT_EQ(test_support::firstDifference(live.built(), fresh), "");
    ASSERT_EQ(test_support::firstDifference(live.findings(), checks::checkAll(fresh)), "");
}

TEST_P(KeptCurrent, WhateverMoves) {
    constexpr std::uint64_t kSeed = 20241126;
    SCOPED_TRACE("seed " + std::to_string(kSeed));
    auto live = LiveLayout::create(GetParam().layout(), test::shippedShelf());
    ASSERT_TRUE(live) << toLine(live.error());
    Random random(kSeed);
    std::vector<layout::Patch> done;
    for (int i = 0; i < GetParam().moves; ++i) {
        SCOPED_TRACE("move " + std::to_string(i));
        const auto move = someMove(live->layout(), random, GetParam().reach);
        const auto patch = live->change(move.after);
        if (patch) {
            done.push_back(*patch);
            expectCurrent(*live, move.after);
        }
        if (HasFatalFailure()) {
            return;
        }
    }
    EXPECT_GT(done.size(), static_cast<std::size_t>(GetParam().moves / 2));
    while (!done.empty()) {
        live->apply(done.back().reversed());
        done.pop_back();
    }
    expectCurrent(*live, GetParam().layout());
}

template <std::size_t kConductors>
layout::Layout longGutter() {
    return test_support::longGutter(kConductors, test::shippedShelf());
}

layout::Layout drawn() {
    return test::drawnLayout().layout;
}

const Row kRows[] = {
    {"Drawn", drawn, 0.5, 60},
    {"DrawnFar", drawn, 6.0, 60},
    {"Long", longGutter<24>, 0.5, 60},
    {"LongFar", longGutter<36>, 6.0, 60},
};
INSTANTIATE_TEST_SUITE_P(Layouts, KeptCurrent, testing::ValuesIn(kRows), caseName);

}  // namespace
}  // namespace gw::live
