#pragma once

#include "editing/item.h"
#include "geometry/built_layout.h"
#include "geometry/section.h"

namespace gw::editing {

/// The least box around these things as built; the gutter's inside where they are none or nothing
/// of them is drawn.
geometry::Box boundsOf(const geometry::BuiltLayout& built, const Items& items);

/// A shift in a view as a shift in the gutter: nothing along the line of sight.
Vec3 inGutter(geometry::View view, double across, double up);

}  // namespace gw::editing
