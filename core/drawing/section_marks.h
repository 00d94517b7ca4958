#pragma once

#include <vector>

#include "drawing/profile_view.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// Where the sheet cuts the gutter. First the worst place: of conductors or of splices, whichever
/// is nearer to its limit. Then the plane that shows most of what the first does not cut, a block
/// before a conductor; none where every other plane would tell the same.
std::vector<SectionMark> sectionMarks(const geometry::BuiltLayout& built);

}  // namespace gw::drawing
