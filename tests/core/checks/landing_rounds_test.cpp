#include "checks/landing_rounds.h"

#include <gtest/gtest.h>

#include "checks/landing_order.h"
#include "support/long_gutter.h"
#include "support/random.h"
#include "support/shipped_shelf.h"

namespace gw::checks {
namespace {

constexpr std::size_t kConductors = 24;

geometry::BuiltLayout someLayout() {
    const parts::Shelf shelf = test::shippedShelf();
    return geometry::build(test_support::longGutter(kConductors, shelf), shelf);
}

std::vector<std::vector<std::size_t>> told(const LandingRounds& rounds) {
    std::vector<std::vector<std::size_t>> all;
    for (const auto& round : rounds.rounds()) {
        all.emplace_back();
        for (const std::size_t rank : round) {
            all.back().push_back(rounds.conductorAt(rank));
        }
    }
    return all;
}

/// By the two walks of Kosaraju, which know nothing of what was before.
std::vector<std::vector<std::size_t>> fresh(const LandingOrder& order) {
    std::vector<std::vector<std::size_t>> all;
    for (const std::size_t i : order.order) {
        all.resize(std::max(all.size(), order.rounds[i] + 1));
        all[order.rounds[i]].push_back(i);
    }
    return all;
}

TEST(LandingRounds, WhateverPairsComeAndGoTheyAreThoseOfTheOrder) {
    const auto built = someLayout();
    test_support::Random random(5);
    std::vector<LandingPair> pairs;
    LandingRounds rounds(built, pairs);
    int knots = 0;
    for (int step = 0; step < 2000; ++step) {
        SCOPED_TRACE("seed 5, step " + std::to_string(step));
        std::vector<LandingPair> gone;
        std::vector<LandingPair> come;
        if (!pairs.empty() && random.chance(pairs.size() > 30 ? 0.9 : 0.4)) {
            const auto at = static_cast<std::ptrdiff_t>(random.below(pairs.size()));
            gone.push_back(pairs[static_cast<std::size_t>(at)]);
            pairs.erase(pairs.begin() + at);
        } else {
            const std::size_t first = random.below(kConductors);
            const std::size_t other = (first + 1 + random.below(kConductors - 1)) % kConductors;
            come.push_back(random.chance(0.9) ? LandingPair(std::minmax(first, other))
                                              : LandingPair(first, other));
            pairs.push_back(come.back());
        }
        rounds.update(gone, come);
        std::vector<LandingConstraint> constraints;
        for (const auto& [first, second] : pairs) {
            constraints.push_back({first, second, std::nullopt, {}, true});
        }
        const LandingOrder order = landingOrder(built, constraints);
        ASSERT_EQ(rounds.knotted(), !order.knots.empty());
        knots += rounds.knotted() ? 1 : 0;
        if (!rounds.knotted()) {
            ASSERT_EQ(told(rounds), fresh(order));
        }
    }
    EXPECT_GT(knots, 50);
    EXPECT_LT(knots, 1900);
}

TEST(LandingRounds, APairForTwoReasonsStaysWhenOneIsGone) {
    const auto built = someLayout();
    LandingRounds rounds(built, {{0, 1}, {0, 1}});
    EXPECT_FALSE(rounds.update({{0, 1}}, {}));
    EXPECT_EQ(rounds.rounds().size(), 2U);
    EXPECT_TRUE(rounds.update({{0, 1}}, {}));
    EXPECT_EQ(rounds.rounds().size(), 1U);
}

}  // namespace
}  // namespace gw::checks
