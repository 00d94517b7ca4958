#pragma once

#include <optional>
#include <vector>

#include "geometry/built_layout.h"
#include "layout/layout.h"

/// Finds paths for the samples: whole candidate polylines (straight, one jog, a run in a lane),
/// the first in order of cost that clears all that was laid before. Simple and greedy: it serves to
/// make sample layouts, not to route.
namespace gw::tools {

struct LaneWishes {
    std::vector<double> y;  ///< lanes to try, inches
    std::vector<double> z;
    double gap = 0.06;       ///< inches to keep from everything
    double leadIn = 1.0;     ///< straight length at a port, in conductor diameters
    double perDepth = 0.25;  ///< cost of an inch of z: lie at the back
    double perBend = 1.5;    ///< cost of a bend, inches
    double perSlant = 0.0;   ///< cost of an inch on a leg along none of the gutter's axes
    double furthest = 12.0;  ///< inches from a terminal to its first bend, at most
    bool lanesOnly = false;  ///< only these lanes, no jogs straight across
};

/// Centreline radius at which a conductor this thick (inches) may be trained, up to 1/16 in.
double trainingRadius(double diameter);

/// Gives conductor `index` of `layout` the cheapest corners that clear walls, blocks and the
/// conductors that already have a path (`laid`). False when none of the candidates fits.
bool layConductor(layout::Layout& layout,
                  const parts::Shelf& shelf,
                  std::size_t index,
                  const std::vector<std::size_t>& laid,
                  const LaneWishes& wishes);

}  // namespace gw::tools
