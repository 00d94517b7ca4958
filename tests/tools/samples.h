#pragma once

#include <string>
#include <vector>

#include "layout/layout.h"

/// The sample layouts of the riverside yard, and for every check a broken twin.
namespace gw::tools {

struct Sample {
    std::string name;
    layout::Layout layout;
};

std::vector<Sample> allSamples(const parts::Shelf& shelf);

/// Two parallel sets feed one block per phase and neutral, tapped to five disconnects.
layout::Layout fiveTenants(const parts::Shelf& shelf);
/// One set, three blocks, two taps.
layout::Layout gateHouse(const parts::Shelf& shelf);
/// 4 x 4 in: across it only two-tier blocks find room.
layout::Layout shallowLoft(const parts::Shelf& shelf);
/// Vertical, wet, sealed blocks.
layout::Layout slipwayPumps(const parts::Shelf& shelf);
/// The feeder passes through its blocks uncut.
layout::Layout boatHall(const parts::Shelf& shelf);

/// A feeder with its grounding conductor, pulled straight through a short wireway.
layout::Layout ropeWalk(const parts::Shelf& shelf);

/// A layout each, with one thing done wrong, named after the check that shows it.
/// good: the samples above.
std::vector<Sample> brokenTwins(const std::vector<Sample>& good, const parts::Shelf& shelf);

}  // namespace gw::tools
