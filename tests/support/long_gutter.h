#pragma once

#include <cstddef>

#include "geometry/built_layout.h"
#include "support/scene.h"

/// Large layouts for benchmarks: any number of conductors at one density, all of them legal.
namespace gw::test_support {

/// A gutter 12 x 12 in, 1.5 in long for every conductor. Every 18 in a stretch of twelve 1/0 AWG
/// conductors: four come in at the top in front, run 26 in and leave at the bottom; behind them
/// four come in, run and end in inline splices, and four lead on from these and leave at the
/// bottom. The last stretch has what is left of the twelve, in this order. The text is an invented
/// yard's. REQUIRES 12 to 800 conductors, and the part "splice-end-to-end-350" on the shelf.
layout::Layout longGutter(std::size_t conductors, const parts::Shelf& shelf);

/// The bodies of a built layout, conductors whole: what a peer is asked about.
Scene sceneOf(const geometry::BuiltLayout& built);

}  // namespace gw::test_support
