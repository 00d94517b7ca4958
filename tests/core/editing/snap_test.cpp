#include "editing/snap.h"

#include <gtest/gtest.h>

#include "core/support/sample_layouts.h"

namespace gw::editing {
namespace {

using geometry::Point2;
using geometry::View;
using gw::test::oneTap;

/// oneTap(): gutter 48 x 8 x 8 in; ports of block A at x = 31, 33, 35 upward from y = 4, z = 2, its
/// body from (30, 4, 1) to (36, 6, 3); entry "in" downward at x = 12, z = 2.
geometry::BuiltLayout built() {
    return geometry::build(oneTap().layout, oneTap().shelf);
}

struct Row {
    const char* name;
    View view;
    Point2 at;
    Point2 expected;
    const char* sentence;
};
void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}
class Snaps : public testing::TestWithParam<Row> {};

TEST_P(Snaps, ToWhatIsNear) {
    const Row& row = GetParam();
    const auto snapped = snap(built(), row.view, row.at);
    EXPECT_NEAR(snapped.at.x, row.expected.x, 1e-12);
    EXPECT_NEAR(snapped.at.y, row.expected.y, 1e-12);
    EXPECT_EQ(snapped.sentence, row.sentence);
}

// clang-format off
const std::vector<Row> kRows = {
    {"PortsAxis",          View::front, {31.1, 2.6},  {31.0, 2.5},  "on the axis of port 1 of block A"},
    {"EntrysAxis",         View::front, {12.2, 2.6},  {12.0, 2.5},  "on the axis of entry in"},
    {"EntryInTheTopView",  View::top,   {12.2, -2.1}, {12.0, -2.0}, "on the axis of entry in, on the axis of port 1 of block A"},
    {"MiddleOfTheDepth",   View::top,   {20.1, -4.1}, {20.0, -4.0}, "on the middle of the depth"},
    {"FaceOfABlock",       View::front, {20.1, 5.8},  {20.0, 6.0},  "in line with a face of block A"},
    {"NothingButTheGrid",  View::front, {20.1, 2.6},  {20.0, 2.5},  ""},
    {"TheCover",           View::top,   {20.1, -7.9}, {20.0, -8.0}, "at the cover"},
};
// clang-format on
std::string caseName(const testing::TestParamInfo<Row>& row) {
    return row.param.name;
}
INSTANTIATE_TEST_SUITE_P(All, Snaps, testing::ValuesIn(kRows), caseName);

TEST(Snapping, HeldOffLeavesThePointWhereItIs) {
    SnapOptions options;
    options.held = true;
    const auto snapped = snap(built(), View::front, {31.1, 2.6}, options);
    EXPECT_EQ(snapped.at.x, 31.1);
    EXPECT_FALSE(snapped.lineAcross);
}

TEST(Snapping, WhatIsMovedDoesNotAttractItself) {
    SnapOptions options;
    options.leaveOut = {layout::BlockId("A")};
    EXPECT_EQ(snap(built(), View::front, {31.1, 2.6}, options).sentence, "");
}

TEST(Snapping, ABodyGoesWithItsMiddleToAnAxisAndWithItsFacesToFaces) {
    SnapOptions options;
    options.leaveOut = {layout::BlockId("A")};
    options.extents = Vec3{6, 2, 2};
    const auto onAxis = snap(built(), View::front, {9.1, 5.9}, options);
    EXPECT_NEAR(onAxis.at.x, 9.0, 1e-12);  // its middle, 3 in further, on the entry's axis
    EXPECT_NEAR(onAxis.at.y, 6.0, 1e-12);  // its upper face at the top wall
    EXPECT_EQ(*onAxis.lineAcross, 12.0);
    EXPECT_EQ(*onAxis.lineUp, 8.0);
}

TEST(Snapping, GoesNoFurtherThanItsReach) {
    SnapOptions options;
    options.reach = 0.05;
    options.grid = 0.0;
    const auto snapped = snap(built(), View::front, {31.1, 2.6}, options);
    EXPECT_EQ(snapped.at.x, 31.1);
}

}  // namespace
}  // namespace gw::editing
