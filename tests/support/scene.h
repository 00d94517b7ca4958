#pragma once

#include <cstdint>
#include <vector>

#include "geometry/fill.h"
#include "geometry/near_pairs.h"
#include "support/random.h"

/// Made-up scenes for tests and benchmarks: the same for the same seed, on every machine.
namespace gw::test_support {

struct SceneTube {
    geometry::Path path;
    double radius = 0.0;
};

struct Scene {
    Vec3 inside;  ///< inches: length, height, depth of the gutter
    std::vector<SceneTube> tubes;
    std::vector<geometry::Box> blocks;

    /// Tubes first, then blocks, each in a group of its own. Loans from the scene.
    std::vector<geometry::SceneItem> items() const;
    /// Areas as pi r^2. Loans from the scene.
    std::vector<geometry::FillConductor> fillConductors() const;
};

/// Bundles of three or four conductors that come in through the top or the bottom, bend into lanes,
/// run 12 to 40 in along the gutter, some with a gentle change of lane, and leave through a wall or
/// end straight at a block. The gutter is 12 in square and 96 in long for every 50 conductors (at
/// least 40), so density is the same for every count.
Scene gutterScene(std::size_t conductors, std::uint64_t seed);

/// A handful of tubes that wander through space, and some boxes: less like a gutter, more bends.
Scene looseScene(std::size_t tubes, std::size_t blocks, std::uint64_t seed);

}  // namespace gw::test_support
