#include "drawing/label_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"
#include "core/drawing/fixed_metrics.h"

namespace gw::drawing {
namespace {

using check_test::GutterBuilder;
using check_test::spare;
using testing::HasSubstr;

TEST(LabelGrid, IsReadAsItIsTyped) {
    const auto grid = parseLabelGrid("3 x 10, 2 5/8 x 1, 3/16 x 1/2, 2 3/4 x 1");
    ASSERT_TRUE(grid.has_value());
    EXPECT_EQ(*grid, (LabelGrid{3, 10, 2.625, 1.0, 0.1875, 0.5, 2.75, 1.0}));
    const auto metric = parseLabelGrid("2x4,50.8mm x 25.4mm,0x0");
    ASSERT_TRUE(metric.has_value());
    EXPECT_EQ(*metric, (LabelGrid{2, 4, 2.0, 1.0, 0.0, 0.0, 2.0, 1.0})) << "they touch";
}

struct BadGrid {
    const char* text;
    ErrorCode code;
};

void PrintTo(const BadGrid& bad, std::ostream* out) {
    *out << bad.text;
}

class BadLabelGrid : public testing::TestWithParam<BadGrid> {};

TEST_P(BadLabelGrid, IsRefusedWithWhatWasExpected) {
    const auto grid = parseLabelGrid(GetParam().text);
    ASSERT_FALSE(grid.has_value());
    EXPECT_EQ(grid.error().code, GetParam().code);
    EXPECT_EQ(grid.error().found, GetParam().text);
    EXPECT_FALSE(grid.error().expected.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Rows,
    BadLabelGrid,
    testing::Values(BadGrid{"", ErrorCode::syntax},
                    BadGrid{"3 x 10", ErrorCode::syntax},
                    BadGrid{"3 x 10, 2 x 1", ErrorCode::syntax},
                    BadGrid{"3 x 10 x 2, 2 x 1, 0 x 0", ErrorCode::syntax},
                    BadGrid{"3 x 10, wide x 1, 0 x 0", ErrorCode::syntax},
                    BadGrid{"0 x 10, 2 x 1, 0 x 0", ErrorCode::syntax},
                    BadGrid{"41 x 10, 2 x 1, 0 x 0", ErrorCode::syntax},
                    BadGrid{"2.5 x 10, 2 x 1, 0 x 0", ErrorCode::syntax},
                    BadGrid{"3 x 101, 2 x 1, 0 x 0", ErrorCode::syntax},
                    BadGrid{"3 x 10, 2 x 1, 0 x 0, 2 x 1, 1 x 1", ErrorCode::syntax},
                    BadGrid{"3 x 10, 2 x 0.2, 0 x 0", ErrorCode::outOfRange},
                    BadGrid{"3 x 10, 2 x 1, -1 x 0", ErrorCode::outOfRange},
                    BadGrid{"3 x 10, 2 x 1, 0 x 0, 1.9 x 1", ErrorCode::outOfRange}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });

/// Conductors "C1" … of which each has two labels.
geometry::BuiltLayout conductors(int count) {
    GutterBuilder builder;
    for (int i = 1; i <= count; ++i) {
        builder.conductor("C" + std::to_string(i), spare({5, 1.0 * i, 1}), spare({50, 1.0 * i, 1}));
    }
    return builder.build();
}

std::vector<Text> textsOf(const Drawing& page) {
    std::vector<Text> texts;
    for (const auto& layer : page.layers) {
        for (const auto& element : layer.elements) {
            if (const auto* text = std::get_if<Text>(&element)) {
                texts.push_back(*text);
            }
        }
    }
    return texts;
}

TEST(LabelSheet, PutsEachInTheMiddleOfItsPlace) {
    const test::FixedMetrics metrics;
    const LabelGrid grid{2, 3, 3.0, 1.0, 0.25, 0.5, 3.5, 1.25};
    const auto pages = labelSheet(conductors(2), {Paper::letter, grid, 0}, metrics).value();
    ASSERT_EQ(pages.size(), 1U);
    EXPECT_DOUBLE_EQ(pages[0].width, 215.9);
    EXPECT_DOUBLE_EQ(pages[0].height, 279.4);
    std::vector<double> middles;
    for (const auto& text : textsOf(pages[0])) {
        if (text.text[0] == 'C' && text.text.size() == 2) {
            middles.push_back(text.at.x / 25.4);
        }
    }
    ASSERT_EQ(middles.size(), 4U);
    EXPECT_NEAR(middles[0], 1.75, 1e-9);
    EXPECT_NEAR(middles[1], 5.25, 1e-9);
    EXPECT_NEAR(middles[2], 1.75, 1e-9);
}

TEST(LabelSheet, LeavesOutWhatIsUsedUpAndGoesOnToTheNextSheet) {
    const test::FixedMetrics metrics;
    const LabelGrid grid{2, 2, 3.0, 1.0, 0.25, 0.5, 3.5, 1.25};
    const auto one = labelSheet(conductors(2), {Paper::letter, grid, 0}, metrics).value();
    EXPECT_EQ(one.size(), 1U) << "four labels on four places";
    const auto two = labelSheet(conductors(2), {Paper::letter, grid, 1}, metrics).value();
    ASSERT_EQ(two.size(), 2U);
    EXPECT_EQ(textsOf(two[0]).size(), 6U) << "three labels of two lines";
    EXPECT_EQ(textsOf(two[1]).size(), 2U);
    EXPECT_TRUE(labelSheet(conductors(0), {Paper::letter, grid, 0}, metrics)->empty());
}

TEST(LabelSheet, RefusesAGridLargerThanThePaper) {
    const test::FixedMetrics metrics;
    const LabelGrid exact{2, 11, 4.25, 1.0, 0.0, 0.0, 4.25, 1.0};
    EXPECT_TRUE(labelSheet(conductors(1), {Paper::letter, exact, 0}, metrics).has_value())
        << "8 1/2 by 11 in";
    auto wide = exact;
    wide.left = 0.01;
    const auto refused = labelSheet(conductors(1), {Paper::letter, wide, 0}, metrics);
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(refused.error().code, ErrorCode::outOfRange);
    EXPECT_THAT(refused.error().expected, HasSubstr("8.5 x 11 in"));
}

}  // namespace
}  // namespace gw::drawing
