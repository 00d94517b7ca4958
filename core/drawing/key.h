#pragma once

#include "drawing/sketch.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// The key: how the phases in use, bare copper, raceways and finding marks are drawn.
Rect keySize(const geometry::BuiltLayout& built, const TextSizes& sizes);
void drawKey(Sketch& sketch,
             const geometry::BuiltLayout& built,
             const TextSizes& sizes,
             Point corner);

}  // namespace gw::drawing
