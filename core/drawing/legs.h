#pragma once

#include <cstddef>
#include <vector>

#include "drawing/placer.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// A straight stretch of a conductor on the paper; curves are many short ones.
struct Leg {
    std::size_t conductor = 0;
    Point from;
    Point to;
    double nearness = 0.0;  ///< inches toward the eye
    double width = 0.0;     ///< mm
    Rect box = {};          ///< around it at its true width
    double length() const;
    /// t: 0 at the start, 1 at the end.
    Point at(double t) const {
        return {from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)};
    }
};

/// A leg with its box.
Leg legOf(std::size_t conductor, Point from, Point to, double nearness, double width);

/// All conductors as a view shows them.
std::vector<Leg> legsOf(const geometry::BuiltLayout& built, const ViewFrame& frame);

/// Whether a part of the leg, at its true width, lies under the rectangle.
bool covers(const Leg& leg, const Rect& rect);

/// How many conductors a label in that place would hide a part of.
std::size_t conductorsUnder(const std::vector<Leg>& legs, const Rect& rect);
/// How many conductors a leader would run over.
std::size_t conductorsCrossed(const std::vector<Leg>& legs, Point from, Point to);

}  // namespace gw::drawing
