#pragma once

#include <optional>
#include <span>
#include <vector>

#include "editing/conductors.h"
#include "editing/way.h"
#include "geometry/built_layout.h"

/// Plans a conductor's path from end to end. Inches.
namespace gw::editing {

/// Where a path may begin or end.
struct PlanEnd {
    Vec3 tip;
    Vec3 mouth;  ///< on the wall, at the port; a capped end's tip
    Vec3 axis;   ///< unit, into the gutter; of a held end
    bool held = false;
    double lead = 0.0;  ///< straight asked for outside the mouth
};

/// The ways in which an end can sit: a port open at both mouths has two.
std::vector<PlanEnd> planEnds(const geometry::BuiltLayout& built,
                              std::size_t conductor,
                              ConductorEnd which);

struct PlanFacts {
    double radius = 0.0;                ///< of the bends
    double diameter = 0.0;              ///< of the conductor
    Vec3 inside;                        ///< of the gutter
    std::vector<geometry::Box> bodies;  ///< to keep out of, where there is a way
};

/// The cheapest of a few hundred ways by length, bends, slants and depth: of those that are sound
/// and inside the gutter where there are any, of those that keep clear of the bodies where there
/// are any. Goes through the points of `via` in order.
Way planned(const PlanEnd& from,
            const PlanEnd& to,
            const PlanFacts& facts,
            std::span<const Vec3> via = {});

/// Gives conductor `conductor` of `layout` a new path between its ends as `built` has them, through
/// the ports it passes, or else through `via`. A port of which either mouth can be opened and none
/// is stated gets the mouth that the path uses. REQUIRES that both have the same ends and blocks.
void planPath(layout::Layout& layout,
              const geometry::BuiltLayout& built,
              std::size_t conductor,
              std::span<const Vec3> via = {});

}  // namespace gw::editing
