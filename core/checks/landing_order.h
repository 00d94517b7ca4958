#pragma once

#include <cstddef>
#include <vector>

#include "checks/landing_constraints.h"
#include "geometry/built_layout.h"

/// In which order conductors can be laid in and landed.
namespace gw::checks {

/// Conductors by their indices in the layout.
struct LandingOrder {
    /// All of them, by round and within a round by id. Keeps every constraint but those inside a
    /// knot, whose members follow one another.
    std::vector<std::size_t> order;
    /// By conductor: how many have to be before it, one after the other. Conductors of one round
    /// can be laid in any order; a knot is in one round.
    std::vector<std::size_t> rounds;
    /// Conductors that block one another all round, by id; the knots in the order they are come to.
    std::vector<std::vector<std::size_t>> knots;
};

/// Ties by id, so that the order of the layout changes nothing. Cost O(n log n) in conductors and
/// constraints.
LandingOrder landingOrder(const geometry::BuiltLayout& built,
                          const std::vector<LandingConstraint>& constraints);

/// By landingConstraints().
LandingOrder landingOrder(const geometry::BuiltLayout& built);

/// What the order follows from, kept current.
struct Landing {
    LandingWays ways;
    LandingRounds rounds;
};
Landing landingOf(const geometry::BuiltLayout& built,
                  const Occupancy& occupancy,
                  const Corridors& corridors);

/// As updateLandingWays(). Gives back whether the order, or what is told of a knot, may be another.
bool updateLanding(Landing& landing,
                   const geometry::BuiltLayout& built,
                   const Occupancy& occupancy,
                   const Corridors& corridors,
                   const std::vector<std::size_t>& moved,
                   const std::vector<std::size_t>& around,
                   const std::vector<std::size_t>& blocks);

}  // namespace gw::checks
