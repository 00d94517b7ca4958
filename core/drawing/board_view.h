#pragma once

#include "drawing/drawing.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// A view for the screen: the gutter as on the sheet, its blocks, raceways and conductors named
/// where there is room. Millimetres of screen, the gutter's (0, 0, 0) at the frame's origin.
Drawing boardView(const geometry::BuiltLayout& built,
                  const ViewFrame& frame,
                  const TextMetrics& metrics);

}  // namespace gw::drawing
