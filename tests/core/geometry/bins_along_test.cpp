#include "geometry/bins_along.h"

#include <gtest/gtest.h>

#include "support/random.h"

namespace gw::geometry {
namespace {

using test_support::Random;

Box someBox(Random& random) {
    const Vec3 least = random.in({-2, 0, 0}, {40, 10, 10});
    return {least, least + random.in({0, 0, 0}, {12, 4, 4})};
}

bool touch(const Box& a, const Box& b) {
    const auto meet = [](double lowA, double highA, double lowB, double highB) {
        return lowA <= highB && lowB <= highA;
    };
    return meet(a.least.x, a.greatest.x, b.least.x, b.greatest.x) &&
           meet(a.least.y, a.greatest.y, b.least.y, b.greatest.y) &&
           meet(a.least.z, a.greatest.z, b.least.z, b.greatest.z);
}

TEST(BinsAlong, FindsWhatLooksOneByOneFind) {
    constexpr std::size_t kThings = 30;
    Random random(3);
    BinsAlong bins(40.0, kThings);
    for (std::size_t i = 0; i < kThings; ++i) {
        bins.place(i, someBox(random));
    }
    for (int move = 0; move < 1000; ++move) {
        bins.place(random.below(kThings), someBox(random));
        const Box asked = someBox(random);
        std::vector<std::size_t> expected;
        for (std::size_t i = 0; i < kThings; ++i) {
            if (touch(bins.boxOf(i), asked)) {
                expected.push_back(i);
            }
        }
        ASSERT_EQ(bins.overlapping(asked), expected) << "seed 3, move " << move;
    }
}

TEST(BinsAlong, WhatIsNotPlacedIsNotFound) {
    BinsAlong bins(10.0, 2);
    bins.place(1, {{0, 0, 0}, {1, 1, 1}});
    EXPECT_EQ(bins.overlapping({{0, 0, 0}, {10, 10, 10}}), std::vector<std::size_t>{1});
}

}  // namespace
}  // namespace gw::geometry
