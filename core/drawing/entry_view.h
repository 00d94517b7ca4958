#pragma once

#include "drawing/gutter_view.h"

namespace gw::drawing {

/// A raceway seen from its side: the hole in the wall, a length of it with a break line, and its
/// centre line. Dashed walls where the layout does not state its size.
void drawStub(Sketch& sketch, const geometry::BuiltEntry& entry, const ViewFrame& frame);

/// A raceway seen from its end: a circle with centre lines.
void drawFacingEntry(Sketch& sketch,
                     Stratum stratum,
                     const geometry::BuiltEntry& entry,
                     const ViewFrame& frame);

}  // namespace gw::drawing
