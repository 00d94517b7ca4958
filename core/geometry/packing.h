#pragma once

#include <span>
#include <vector>

#include "base/result.h"

namespace gw::geometry {

/// Centre of one circle in a raceway, inches from the raceway's axis. u, v are the wall's axes as
/// in layout::Entry.
struct SlotPlace {
    double u = 0.0;
    double v = 0.0;
};

/// Packs unequal circles (diameters in inches, in slot order) into a round bore so that none
/// overlap and all lie inside. Deterministic: same diameters, same places, on every machine.
/// Symmetric where it can be: one in the middle, two side by side along u, three in a triangle,
/// four in a square with sides along the axes. Circles keep a hair apart (1e-6 in).
/// Error outOfRange, naming the bore that would be needed, when no packing was found.
Result<std::vector<SlotPlace>> packCircles(std::span<const double> diameters, double bore);

/// The smallest round bore the same method finds for these circles, within 1e-3 in. Needed where no
/// raceway is stated, so that there is still a place to draw every conductor.
double boreNeeded(std::span<const double> diameters);

}  // namespace gw::geometry
