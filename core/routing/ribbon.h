#pragma once

#include <optional>
#include <vector>

#include "geometry/path.h"
#include "geometry/solids.h"

/// A stretch of conductor cut into chords: how far from others it is can be told at a glance, and
/// exactly only where a glance does not do.
namespace gw::routing {

/// inches. No arc strays further from its chords.
inline constexpr double kChordError = 0.02;

struct Ribbon {
    const geometry::Path* path = nullptr;  ///< outlives the ribbon
    double radius = 0.0;
    double from = 0.0;  ///< arc lengths of the stretch
    double to = 0.0;
    std::vector<Vec3> points;  ///< on the centreline, in order
    std::vector<double> at;    ///< arc length of each point
    geometry::Box bounds;      ///< of the tube, at most kChordError too small
};

Ribbon ribbonOf(const geometry::Path& path, double from, double to, double radius);

struct Overlap {
    double depth = 0.0;  ///< inches, > 0
    Vec3 place;          ///< between the two centrelines
};

/// Whether the tubes overlap by more than kLimitSlack, and where. Both only from the arc lengths
/// given on (`leaving`: those that belong together with the other's are not compared).
struct Part {
    const Ribbon* ribbon = nullptr;
    double from = 0.0;
    double to = 0.0;
};
std::optional<Overlap> overlapOf(const Part& a, const Part& b);
std::optional<Overlap> overlapOf(const Ribbon& a, const Ribbon& b);
/// With a body, of the part only.
std::optional<Overlap> overlapOf(const Part& a, const geometry::Box& body);

}  // namespace gw::routing
