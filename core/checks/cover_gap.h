#pragma once

#include <vector>

#include "geometry/built_layout.h"
#include "geometry/things.h"

/// How near conductors and blocks come to the cover.
namespace gw::checks {

struct CoverGap {
    double gap = 0.0;  ///< inches; negative: it stands out by that much
    Vec3 place;        ///< on a conductor's centreline, in the middle of a block
};

struct CoverGaps {
    std::vector<CoverGap> conductors;
    std::vector<CoverGap> blocks;
};
CoverGaps coverGapsOf(const geometry::BuiltLayout& built);

/// Makes them those of the built layout as it is, after these things moved.
void updateCoverGaps(CoverGaps& gaps,
                     const geometry::BuiltLayout& built,
                     const geometry::Things& moved);

}  // namespace gw::checks
