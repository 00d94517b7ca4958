#pragma once

#include "drawing/drawing.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// The front view without words, as large as fits a picture of this size: for choosing among
/// layouts. width, height: mm, > 20.
Drawing gutterPicture(const geometry::BuiltLayout& built,
                      double width,
                      double height,
                      const TextMetrics& metrics);

}  // namespace gw::drawing
