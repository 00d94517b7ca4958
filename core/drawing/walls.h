#pragma once

#include "drawing/gutter_view.h"

namespace gw::drawing {

/// The cut walls around an interior: hatched, drawn thicker than life, outlined heavily; the cover,
/// where the view shows it from its edge, as a plain plate.
void drawWalls(Sketch& sketch, const Rect& inside, geometry::View view);

}  // namespace gw::drawing
