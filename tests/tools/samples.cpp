#include "tools/samples.h"

namespace gw::tools {

std::vector<Sample> allSamples(const parts::Shelf& shelf) {
    std::vector<Sample> samples{{"five-tenants", fiveTenants(shelf)},
                                {"gate-house", gateHouse(shelf)},
                                {"shallow-loft", shallowLoft(shelf)},
                                {"slipway-pumps", slipwayPumps(shelf)},
                                {"boat-hall", boatHall(shelf)},
                                {"rope-walk", ropeWalk(shelf)}};
    for (auto& twin : brokenTwins(samples, shelf)) {
        samples.push_back(std::move(twin));
    }
    return samples;
}

}  // namespace gw::tools
