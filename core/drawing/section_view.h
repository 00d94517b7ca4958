#pragma once

#include <string>

#include "drawing/sketch.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// The gutter cut square to its length: every conductor's true cut shape, with its tag at the side.
struct SectionPlan {
    double x = 0.0;  ///< inches: where it is cut
    double mmPerInch = 1.0;
    TextSizes sizes;
};

/// Room it takes on the paper with the columns of tags at its sides and the wall, no title.
Rect sectionSize(const geometry::BuiltLayout& built,
                 const SectionPlan& plan,
                 const TextMetrics& metrics);

/// Where the gutter lies in it when its upper left corner is at `corner`.
ViewFrame sectionFrame(const geometry::BuiltLayout& built,
                       const SectionPlan& plan,
                       const TextMetrics& metrics,
                       Point corner);

/// Draws it with its upper left corner at `corner`.
void drawSection(Sketch& sketch,
                 const geometry::BuiltLayout& built,
                 const SectionPlan& plan,
                 Point corner);

/// The view from the left end, the end wall taken off, with height and depth dimensioned.
Rect endViewSize(const geometry::BuiltLayout& built, double mmPerInch, const TextSizes& sizes);
void drawEndView(Sketch& sketch,
                 const geometry::BuiltLayout& built,
                 double mmPerInch,
                 const TextSizes& sizes,
                 Point corner);

}  // namespace gw::drawing
