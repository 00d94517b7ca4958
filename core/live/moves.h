#pragma once

#include <optional>

#include "checks/occupancy.h"
#include "geometry/things.h"
#include "layout/patch.h"

namespace gw::live {

/// What a patch moves where it does nothing else: corners and radii of conductors, place and
/// attitude of blocks. Conductors in the ports of such blocks are among what moves. Empty where
/// anything else changes. Cost: by what the patch holds.
std::optional<geometry::Things> movesOf(const layout::Patch& patch,
                                        const geometry::BuiltLayout& before,
                                        const checks::Occupancy& occupancy);

}  // namespace gw::live
