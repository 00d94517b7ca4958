#pragma once

#include <cstddef>
#include <vector>

#include "checks/block_row.h"
#include "checks/clearance_scene.h"
#include "checks/cover_gap.h"
#include "checks/current_carrying.h"
#include "checks/joint_census.h"
#include "checks/joint_graph.h"
#include "checks/landing_order.h"
#include "checks/links.h"
#include "checks/occupancy.h"
#include "checks/screw_corridors.h"
#include "checks/springs.h"
#include "geometry/built_layout.h"
#include "standards/tables.h"

namespace gw::checks {

/// What several checks ask of a built layout, worked out once and handed to them. The first members
/// follow from the layout alone, whatever lies where; the others hang on where things lie, each on
/// its own, so that one can be made anew without the rest.
struct Facts {
    Links links;
    Occupancy occupancy;
    JointGraph joints;
    Census census;
    std::vector<standards::Cited<standards::ColourCustom>> colourCustoms;  ///< of the edition

    BlockRow blockRow;         ///< where the blocks stand
    CurrentCarrying carrying;  ///< where the conductors lie along the gutter
    Neighbours neighbours;     ///< how near conductors and blocks are to one another
    CoverGaps coverGaps;       ///< and to the cover
    Corridors corridors;       ///< what is near the ways to the screws
    Landing landing;           ///< what lies in front of what, and in the ways to the screws
    Springs springs;           ///< how far bends spring toward the cover
};

Facts factsOf(const geometry::BuiltLayout& built);

}  // namespace gw::checks
