#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "checks/bending_force.h"
#include "geometry/built_layout.h"

/// How far bent conductors spring toward the cover.
///
/// A bend springs open when it is let go. The straight leg beyond it then swings in the bend's
/// plane, away from the middle of the bend, by its length times the angle.
namespace gw::checks {

/// Where the far end of a leg could spring to.
struct Spring {
    std::size_t conductor = 0;
    Vec3 at;
    double proud = 0.0;  ///< inches beyond the cover's plane; negative: short of it
    double free = 0.0;   ///< inches along the conductor to the nearest support
    Band push;           ///< lbf
};

struct BentConductor {
    bool bent = false;
    /// Of the legs that swing toward the cover the one that pushes hardest; where none reaches it,
    /// the one that comes nearest. Empty: none does, or nothing holds the conductor.
    std::optional<Spring> hardest;
};

/// By conductor.
using Springs = std::vector<BentConductor>;
BentConductor springOfConductor(const geometry::BuiltLayout& built, std::size_t conductor);
Springs springsOf(const geometry::BuiltLayout& built);

}  // namespace gw::checks
