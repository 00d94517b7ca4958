#include "support/long_gutter.h"

#include <gtest/gtest.h>

#include "checks/finding.h"
#include "support/shipped_shelf.h"

namespace gw::test_support {
namespace {

class LongGutter : public testing::TestWithParam<std::size_t> {};

TEST_P(LongGutter, IsAValidLayoutWithNothingInTheWay) {
    const parts::Shelf shelf = test::shippedShelf();
    const layout::Layout layout = longGutter(GetParam(), shelf);
    EXPECT_EQ(layout.conductors.size(), GetParam());
    const auto valid = layout::validate(layout, shelf);
    ASSERT_TRUE(valid.has_value()) << toLine(valid.error());
    const geometry::BuiltLayout built = geometry::build(layout, shelf);
    for (const geometry::BuiltConductor& conductor : built.conductors) {
        EXPECT_TRUE(conductor.built.faults.empty());
    }
    for (const checks::Finding& finding : checks::checkClearance(built)) {
        EXPECT_NE(finding.verdict, checks::Verdict::breach) << finding.working;
    }
}

INSTANTIATE_TEST_SUITE_P(Counts, LongGutter, testing::Values(12, 20, 50, 200));

}  // namespace
}  // namespace gw::test_support
