#include "drawing/section_marks.h"

#include <gtest/gtest.h>

#include <set>

#include "core/support/sample_layouts.h"
#include "geometry/section.h"
#include "support/drawn_layout.h"

namespace gw::drawing {
namespace {

std::set<std::size_t> cutAt(const geometry::BuiltLayout& built, double x) {
    std::set<std::size_t> cut;
    for (const auto& conductor : geometry::sectionAt(built, x).conductors) {
        cut.insert(conductor.conductor);
    }
    return cut;
}

TEST(SectionMarks, FirstIsTheWorstPlaceSecondShowsSomethingElse) {
    const auto built = test::drawnLayout();
    const auto marks = sectionMarks(built);
    ASSERT_EQ(marks.size(), 2U);
    EXPECT_EQ(marks[0].letter, "A");
    EXPECT_EQ(marks[1].letter, "B");
    const auto conductors = built.fill.worstConductors();
    const auto splice = built.fill.worstSplice();
    const bool inWorst = (marks[0].x >= conductors.from && marks[0].x <= conductors.to) ||
                         (marks[0].x >= splice.from && marks[0].x <= splice.to);
    EXPECT_TRUE(inWorst) << marks[0].x;
    const auto first = cutAt(built, marks[0].x);
    bool fresh = !geometry::sectionAt(built, marks[1].x).blocks.empty();
    for (const auto index : cutAt(built, marks[1].x)) {
        fresh = fresh || first.count(index) == 0;
    }
    EXPECT_TRUE(fresh);
    EXPECT_GE(std::abs(marks[1].x - marks[0].x), 0.08 * built.fill.length);
}

/// The same everywhere: a second section would only repeat the first.
TEST(SectionMarks, AnEmptyGutterHasOneSection) {
    const auto sample = test::emptyGutter();
    EXPECT_EQ(sectionMarks(geometry::build(sample.layout, sample.shelf)).size(), 1U);
}

}  // namespace
}  // namespace gw::drawing
