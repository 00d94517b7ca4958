#pragma once

#include "geometry/built_layout.h"
#include "takeoff/cut_list.h"
#include "takeoff/table.h"

namespace gw::takeoff {

/// What to buy: gutter, blocks by part, conductors by reel, raceway fittings by kind, mounting
/// screws, labels. Prices where the part states one; the notes say what has none, what the known
/// prices come to, and what the layout does not state.
Table materialTable(const geometry::BuiltLayout& built, const CutOptions& options = {});

}  // namespace gw::takeoff
