#include "parts/part.h"

#include <gtest/gtest.h>

namespace gw::parts {
namespace {

TEST(BoreEnd, IsTheMouthPlusTheDepthAlongTheBore) {
    Port port;
    port.mouth = {1.0, 2.5, 0.75};
    port.direction = {0, -1, 0};
    port.boreDepth = units::Inches::of(1.5);
    EXPECT_EQ(boreEnd(port), (Vec3{1.0, 1.0, 0.75}));
}

}  // namespace
}  // namespace gw::parts
