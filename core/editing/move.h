#pragma once

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// Moving what is selected.
namespace gw::editing {

/// Blocks move, kept within the gutter together; entries move along their walls; what conductors
/// are selected move with the free part of their paths, whole when both their ends move. Other
/// conductors that end in what moves follow: their straight starts stay on the axis, legs keep
/// their directions, and no more of the path moves than must. Where that would reach the other end
/// of the conductor, it gets an offset instead. Circuits do not move.
Edit moveItems(const geometry::BuiltLayout& built, const Items& items, const Vec3& by);

}  // namespace gw::editing
