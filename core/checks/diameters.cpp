#include "checks/diameters.h"

#include <algorithm>

#include "checks/support.h"
#include "standards/tables.h"

namespace gw::checks {

double leastBareDiameter(const layout::Conductor& conductor, standards::Edition edition) {
    using standards::Insulation;
    using standards::Stranding;
    std::vector<Stranding> candidates = {Stranding::solid, Stranding::classB, Stranding::compact};
    if (conductor.stranding) {
        candidates = {*conductor.stranding};
    }
    double least = 0.0;
    for (const Stranding stranding : candidates) {
        const auto found =
            standards::insulatedConductor(conductor.size, Insulation::bare, stranding, edition);
        if (found && (least == 0.0 || found->value.diameter.in() < least)) {
            least = found->value.diameter.in();
        }
    }
    return least;
}

double radiusInDoubt(const geometry::BuiltLayout& built, std::size_t conductor) {
    const auto& one = built.conductors[conductor];
    if (one.assumed.empty()) {
        return 0.0;
    }
    const double bare = leastBareDiameter(built.layout.conductors[conductor], built.layout.edition);
    return std::max(0.0, one.diameter.in() - bare) / 2.0;
}

std::vector<std::string> diametersUnknown(const geometry::BuiltLayout& built,
                                          const std::vector<std::size_t>& conductors) {
    std::vector<std::string> inputs;
    for (const std::size_t i : conductors) {
        if (!built.conductors[i].assumed.empty()) {
            inputs.push_back(built.conductors[i].assumed + " of " + conductorName(built, i));
        }
    }
    return inputs;
}

}  // namespace gw::checks
