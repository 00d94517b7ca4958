#pragma once

#include <optional>

#include "parts/part.h"

namespace gw::parts {

/// lbf-in that a screw states for a size: the greatest, should rows overlap. Empty: none.
std::optional<double> statedTorque(const Screw& screw, units::WireSize size);

}  // namespace gw::parts
