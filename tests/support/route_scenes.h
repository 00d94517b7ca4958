#pragma once

#include <cstdint>

#include "layout/layout.h"

/// Gutters to be routed, at random within a family: the same for the same seed, on every machine.
/// Nothing says that all conductors of one can be routed.
namespace gw::test_support {

enum class RouteFamily {
    small,   ///< 12 conductors of 250 kcmil in 36 x 8 x 8 in, to four blocks
    middle,  ///< 32 of 500 kcmil in 60 x 12 x 12 in, to four blocks in two tiers
    large,   ///< 200 of 4/0 AWG in 120 x 24 x 24 in, half of them to ten blocks
};

/// Raceways of four at the walls; which conductor goes where is shuffled, as is the order in the
/// raceway in half of them.
layout::Layout routeScene(RouteFamily family, std::uint64_t seed);

}  // namespace gw::test_support
