#pragma once

#include "checks/finding.h"
#include "geometry/built_layout.h"

namespace gw::fuzz {

/// Requires that no number of these is NaN or infinite.
void requireFinite(const geometry::BuiltLayout& built);
void requireFinite(const checks::Finding& finding);

}  // namespace gw::fuzz
