#pragma once

#include "geometry/built_layout.h"
#include "takeoff/table.h"

namespace gw::takeoff {

/// In which order conductors are laid in and landed so that none blocks the screw or the place of a
/// later one (checks/landing_order.h): numbered steps. Conductors of one round go in in any order.
/// A note for each knot, for which there is no order.
Table landingTable(const geometry::BuiltLayout& built);

}  // namespace gw::takeoff
