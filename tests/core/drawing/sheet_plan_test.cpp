#include "drawing/sheet_plan.h"

#include <gtest/gtest.h>

#include "core/drawing/fixed_metrics.h"
#include "drawing/section_marks.h"
#include "drawing/title_block.h"
#include "support/drawn_layout.h"

namespace gw::drawing {
namespace {

test::DrawnOptions gutter(double length, int tenants, int blocks) {
    test::DrawnOptions options;
    options.length = length;
    options.tenants = tenants;
    options.blocks = blocks;
    return options;
}

class SheetPlanning : public ::testing::TestWithParam<Paper> {};

std::vector<Rect> allOf(const SheetPlan& plan) {
    std::vector<Rect> rects{plan.longViews};
    if (plan.details) {
        rects.insert(rects.end(), plan.details->places.begin(), plan.details->places.end());
    }
    rects.insert(rects.end(), plan.rest.begin(), plan.rest.end());
    rects.insert(rects.end(), plan.nooks.begin(), plan.nooks.end());
    return rects;
}

TEST_P(SheetPlanning, ViewsAndTablesLieApartInsideTheBorder) {
    const test::FixedMetrics metrics;
    for (const auto& options :
         {gutter(12, 1, 1), gutter(36, 0, 4), gutter(72, 5, 4), gutter(120, 8, 4)}) {
        const auto built = test::drawnLayout(options);
        const auto findings = test::drawnFindings(built);
        const Subject subject{&built, &findings, sectionMarks(built), textSizes(GetParam())};
        const auto area = drawingArea(paperSize(GetParam()), subject.sizes);
        const auto plan = planSheet(subject, detailsOf(subject), GetParam(), area, metrics);
        const auto rects = allOf(plan);
        for (std::size_t i = 0; i < rects.size(); ++i) {
            EXPECT_TRUE(holds(grown(area, 1e-6), rects[i])) << options.length << " in, no. " << i;
            for (std::size_t k = 0; k < i; ++k) {
                EXPECT_FALSE(overlap(grown(rects[i], -1e-6), rects[k]))
                    << options.length << " in, no. " << i << " and " << k;
            }
        }
    }
}

std::string caseName(const ::testing::TestParamInfo<Paper>& info) {
    std::string name(paperText(info.param));
    std::erase(name, ' ');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Papers,
                         SheetPlanning,
                         ::testing::Values(Paper::letter,
                                           Paper::legal,
                                           Paper::tabloid,
                                           Paper::archC,
                                           Paper::archD,
                                           Paper::a4,
                                           Paper::a3,
                                           Paper::a2,
                                           Paper::a1),
                         caseName);

}  // namespace
}  // namespace gw::drawing
