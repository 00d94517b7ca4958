#include "checks/facts.h"

namespace gw::checks {

Facts factsOf(const geometry::BuiltLayout& built) {
    Links links = linksOf(built);
    Occupancy occupancy(built);
    JointGraph joints(built, links);
    Census census = censusOf(built, links, joints);
    Corridors corridors = corridorsOf(built, occupancy);
    return {.links = std::move(links),
            .occupancy = occupancy,
            .joints = std::move(joints),
            .census = std::move(census),
            .colourCustoms = standards::colourCustoms(built.layout.edition),
            .blockRow = BlockRow(built),
            .carrying = CurrentCarrying(built),
            .neighbours = neighboursOf(built, occupancy),
            .coverGaps = coverGapsOf(built),
            .corridors = corridors,
            .landing = landingOf(built, occupancy, corridors),
            .springs = springsOf(built)};
}

}  // namespace gw::checks
