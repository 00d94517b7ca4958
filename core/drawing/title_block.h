#pragma once

#include <string>

#include "drawing/sketch.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// What stands in the strip at the foot of every page.
struct TitleBlock {
    std::string views;  ///< "Layout sheet", what kind of sheet it is
    std::string scale;
    std::string findings;  ///< the tally
    std::size_t sheet = 1;
    std::size_t of = 1;
};

/// Margin between the paper's edge and the border, mm.
double marginOf(const Rect& paper);
/// Of the planning-aid sentence at the foot, and of the whole strip, mm.
double footHeight(const Rect& paper, const TextSizes& sizes);
double titleBlockHeight(const Rect& paper, const TextSizes& sizes);
/// What is left for the drawing inside the border, above the strip.
Rect drawingArea(const Rect& paper, const TextSizes& sizes);

void drawTitleBlock(Sketch& sketch,
                    const layout::Layout& layout,
                    const TitleBlock& block,
                    const Rect& paper,
                    const TextSizes& sizes);

}  // namespace gw::drawing
