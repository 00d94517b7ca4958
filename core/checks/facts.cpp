#include "checks/facts.h"

namespace gw::checks {

Facts factsOf(const geometry::BuiltLayout& built) {
    Links links = linksOf(built);
    JointGraph joints(built, links);
    Census census = censusOf(built, links, joints);
    return {std::move(links),
            Occupancy(built),
            std::move(joints),
            std::move(census),
            standards::colourCustoms(built.layout.edition),
            BlockRow(built),
            CurrentCarrying(built)};
}

}  // namespace gw::checks
