#include "layout/patch.h"

#include <gtest/gtest.h>

#include <functional>
#include <string>

#include "core/support/sample_layouts.h"
#include "files/layout_file.h"
#include "support/drawn_layout.h"

namespace gw::layout {
namespace {

using units::Inches;

struct Row {
    const char* name;
    std::function<void(Layout&)> edit;
};

void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

class Differences : public testing::TestWithParam<Row> {};

TEST_P(Differences, LeadThereAndBackToTheSameBytes) {
    const Layout before = test::drawnLayout().layout;
    Layout after = before;
    GetParam().edit(after);
    ASSERT_FALSE(before == after);
    const Patch patch = difference(before, after);
    EXPECT_FALSE(patch.empty());

    Layout layout = before;
    apply(patch, layout);
    EXPECT_EQ(layout, after);
    EXPECT_EQ(files::writeLayout(layout), files::writeLayout(after));
    apply(patch.reversed(), layout);
    EXPECT_EQ(layout, before);
    EXPECT_EQ(files::writeLayout(layout), files::writeLayout(before));
}

Conductor another(const Layout& layout) {
    Conductor copy = layout.conductors.front();
    copy.id = ConductorId("another");
    return copy;
}

const std::vector<Row> kRows = {
    {"Title", [](Layout& one) { one.title = "Another"; }},
    {"GutterLonger", [](Layout& one) { one.gutter.inside.x += 1.0; }},
    {"Amendment", [](Layout& one) { one.amendments.spliceFillPercent = 60.0; }},
    {"System", [](Layout& one) { one.systems.front().faultKiloamperes = 22.0; }},
    {"CircuitGone", [](Layout& one) { one.circuits.pop_back(); }},
    {"EntryMoved", [](Layout& one) { one.entries.front().u += 0.5; }},
    {"BlockAdded", [](Layout& one) { one.blocks.push_back(one.blocks.front()); }},
    {"FirstConductor", [](Layout& one) { one.conductors.front().tag = "X"; }},
    {"LastConductor", [](Layout& one) { one.conductors.back().tag = "X"; }},
    {"FirstAndLast",
     [](Layout& one) {
         one.conductors.front().tag = "X";
         one.conductors.back().tag = "Y";
     }},
    {"InsertedFirst",
     [](Layout& one) { one.conductors.insert(one.conductors.begin(), another(one)); }},
    {"OneAgainBesideItself",
     [](Layout& one) { one.conductors.insert(one.conductors.begin(), one.conductors.front()); }},
    {"AllConductorsGone", [](Layout& one) { one.conductors.clear(); }},
    {"FirstTwoChanged", [](Layout& one) { std::swap(one.conductors.at(0), one.conductors.at(1)); }},
    {"RemarkAdded", [](Layout& one) { one.remarks.emplace_back(); }},
    {"EverythingGone", [](Layout& one) { one = Layout{}; }},
};

std::string caseName(const testing::TestParamInfo<Row>& row) {
    return row.param.name;
}

INSTANTIATE_TEST_SUITE_P(All, Differences, testing::ValuesIn(kRows), caseName);

TEST(Difference, OfALayoutFromItselfIsEmpty) {
    const Layout layout = test::drawnLayout().layout;
    EXPECT_TRUE(difference(layout, layout).empty());
}

TEST(Difference, OfOneConductorHoldsThatConductorOnly) {
    const Layout before = test::drawnLayout().layout;
    Layout after = before;
    after.conductors.at(1).tag = "X";
    const Patch patch = difference(before, after);
    EXPECT_EQ(patch.conductors.at, 1U);
    EXPECT_EQ(patch.conductors.before.size(), 1U);
    EXPECT_EQ(patch.conductors.after.size(), 1U);
    EXPECT_TRUE(patch.circuits.empty());
    EXPECT_FALSE(patch.rest);
}

}  // namespace
}  // namespace gw::layout
