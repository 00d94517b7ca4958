#pragma once

#include <optional>

#include "drawing/legs.h"

namespace gw::drawing {

/// Where a label beside a thing stands, and its leader if it does not touch.
struct Spot {
    Point at;  ///< the label's middle
    struct Leader {
        Point start;  ///< on the label's edge
        Point foot;   ///< just inside the thing
    };
    std::optional<Leader> leader;
    double cost = 0.0;  ///< what it spoils: less is better
};

/// The best free place around a thing for a label of that size: near it, over no conductor where
/// that can be, its leader over few. Empty when every place is taken. size: only width and height.
std::optional<Spot> bestSpot(const Placer& placer,
                             const std::vector<Leg>& legs,
                             const Rect& size,
                             const Rect& thing);

}  // namespace gw::drawing
