#pragma once

#include <optional>
#include <vector>

#include "geometry/built_layout.h"

/// What lies between two places at which a conductor is held: its ends and the ports it passes.
namespace gw::routing {

/// Straight conductor asked for outside a port, in diameters. *Common practice, no source.*
inline constexpr double kLeadInDiameters = 1.0;

struct Terminal {
    Vec3 mouth;         ///< inches: on the wall, at the port; a capped end's tip
    Vec3 axis;          ///< unit, into the gutter; zero where it is not held
    double lead = 0.0;  ///< inches that stay straight outside the mouth
    std::optional<std::size_t> entry;
    std::optional<std::size_t> block;
    std::optional<std::size_t> port;

    bool held() const { return entry.has_value() || block.has_value(); }
};

struct Span {
    std::size_t conductor = 0;
    std::size_t number = 0;        ///< 0 from the conductor's `from` on
    double radius = 0.0;           ///< inches, of the tube
    double bend = 0.0;             ///< inches, least radius of the centreline
    std::vector<Terminal> starts;  ///< the first is the one to take where there is a way
    std::vector<Terminal> ends;
};

/// The spans of a conductor, in order. built: of a layout in which the conductor has no corners.
std::vector<Span> spansOf(const geometry::BuiltLayout& built, std::size_t conductor);

/// Inches of the straight line through lead-ins, passes and ends: no path is shorter.
double straightLineOf(const geometry::BuiltLayout& built,
                      std::size_t conductor,
                      const std::vector<Span>& spans);

/// inches: rounded up to the next 1/4 in from the least that the checks ask for.
double bendRadiusFor(const geometry::BuiltLayout& built, std::size_t conductor);

}  // namespace gw::routing
