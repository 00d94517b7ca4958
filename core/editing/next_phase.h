#pragma once

#include "editing/edited.h"
#include "geometry/built_layout.h"

namespace gw::editing {

/// The same route for the next phase of the conductor's set that has no conductor yet: through the
/// next free slot of the same raceways, into the ports of the nearest blocks for that phase (a
/// block that states it or holds it already, else an empty one), its run a lane beside: the nearest
/// of the lanes toward the cover, away from it, up and down on which it is clear of other
/// conductors, else the first. Where the route does not fit its new ends it gets a path of its own.
/// Error missing: all phases of the set are there, or no block has a port left for the phase;
/// contradicts: it passes through ports, which belong to its own phase.
Result<Made> routeForNextPhase(const geometry::BuiltLayout& built,
                               const layout::ConductorId& conductor);

}  // namespace gw::editing
