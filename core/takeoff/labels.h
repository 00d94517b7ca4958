#pragma once

#include "geometry/built_layout.h"
#include "takeoff/table.h"

namespace gw::takeoff {

/// What is written on which label: each conductor's tag at both of its ends, with what its circuit
/// supplies, and each block's name and phase. Notes name circuits that do not say what they supply.
Table labelTable(const geometry::BuiltLayout& built);

}  // namespace gw::takeoff
