#include "base/tolerance.h"

#include <gtest/gtest.h>

namespace gw {
namespace {

TEST(AtMost, IsExactAtTheLimitWithinItsSlack) {
    EXPECT_TRUE(atMost(5.5, 5.5));
    EXPECT_TRUE(atMost(5.5 + 0.9 * kLimitSlack, 5.5));
    EXPECT_FALSE(atMost(5.5 + 1.1 * kLimitSlack, 5.5));
    EXPECT_TRUE(atMost(5.5 - 1.0 / 64, 5.5));
    EXPECT_FALSE(atMost(5.5 + 1.0 / 64, 5.5));
}

TEST(AtLeast, IsExactAtTheLimitWithinItsSlack) {
    EXPECT_TRUE(atLeast(5.5, 5.5));
    EXPECT_TRUE(atLeast(5.5 - 0.9 * kLimitSlack, 5.5));
    EXPECT_FALSE(atLeast(5.5 - 1.1 * kLimitSlack, 5.5));
    EXPECT_TRUE(atLeast(5.5 + 1.0 / 64, 5.5));
    EXPECT_FALSE(atLeast(5.5 - 1.0 / 64, 5.5));
}

TEST(AtMost, MirrorsAtLeast) {
    for (const double measured : {-1.0, 0.0, 5.4999995, 5.5, 5.5000005, 5.500002, 7.0}) {
        EXPECT_EQ(atMost(measured, 5.5), atLeast(-measured, -5.5)) << measured;
    }
}

}  // namespace
}  // namespace gw
