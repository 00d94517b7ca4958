#include "drawing/legs.h"

#include <cmath>
#include <set>

#include "drawing/tubes.h"

namespace gw::drawing {

double Leg::length() const {
    return std::hypot(to.x - from.x, to.y - from.y);
}

Leg legOf(std::size_t conductor, Point from, Point to, double nearness, double width) {
    const auto line = united({from.x, from.y, 0, 0}, {to.x, to.y, 0, 0});
    return {conductor, from, to, nearness, width, grown(line, 0.5 * width + 1e-6)};
}

std::vector<Leg> legsOf(const geometry::BuiltLayout& built, const ViewFrame& frame) {
    std::vector<Leg> legs;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        for (const auto& run : runsOf(built, i, frame)) {
            for (std::size_t k = 0; k + 1 < run.points.size(); ++k) {
                legs.push_back(legOf(i, run.points[k], run.points[k + 1], run.nearness, run.width));
            }
        }
    }
    return legs;
}

bool covers(const Leg& leg, const Rect& rect) {
    return overlap(leg.box, rect) && crosses(grown(rect, 0.45 * leg.width), leg.from, leg.to);
}

std::size_t conductorsUnder(const std::vector<Leg>& legs, const Rect& rect) {
    std::set<std::size_t> under;
    for (const auto& leg : legs) {
        if (covers(leg, rect)) {
            under.insert(leg.conductor);
        }
    }
    return under.size();
}

std::size_t conductorsCrossed(const std::vector<Leg>& legs, Point from, Point to) {
    std::set<std::size_t> crossed;
    const auto line = grown(united({from.x, from.y, 0, 0}, {to.x, to.y, 0, 0}), 1e-6);
    for (const auto& leg : legs) {
        if (overlap(leg.box, line) && cross(from, to, leg.from, leg.to)) {
            crossed.insert(leg.conductor);
        }
    }
    return crossed.size();
}

}  // namespace gw::drawing
