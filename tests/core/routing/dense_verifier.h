#pragma once

#include <string>
#include <vector>

#include "geometry/built_layout.h"

/// Judges paths by dense points on centrelines worked out here, from corners and radii alone: it
/// shares no code with the program's paths, distances and checks. Only what may be wrong for sure
/// is told: points 1/32 in apart see an overlap deeper than about 0.003 in.
namespace gw::routing::test {

/// One sentence for each fault; none where all is well. Conductors by index; those that are not
/// named are neither judged nor in the way. For layouts in which no port holds two conductors and
/// none is passed.
std::vector<std::string> faultsOf(const geometry::BuiltLayout& built,
                                  const std::vector<std::size_t>& conductors);

}  // namespace gw::routing::test
