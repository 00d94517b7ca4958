#include "parts/torque.h"

#include <algorithm>

namespace gw::parts {

std::optional<double> statedTorque(const Screw& screw, units::WireSize size) {
    std::optional<double> stated;
    for (const TorqueRow& row : screw.torque) {
        if (row.smallest <= size && size <= row.largest) {
            stated = std::max(stated.value_or(0.0), row.poundInches);
        }
    }
    return stated;
}

}  // namespace gw::parts
