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

/// Circles packed as tightly as the method can, and the round bore that takes them.
struct TightPacking {
    std::vector<SlotPlace> places;  ///< as the diameters
    double bore = 0.0;              ///< inches, diameter
};

/// Packs unequal circles (diameters in inches, each > 0) so that none overlap and all lie inside
/// `bore`. Deterministic: same diameters, same places. One circle is in the middle, two lie side by
/// side along u, three equal ones in a triangle on a base along u, four equal ones in a square with
/// sides along the axes; more are set one by one, largest first, each where it touches two things.
/// Circles keep a hair apart (1e-3 in). The bore is within 1e-3 in of the least that the method
/// finds; up to eight equal circles that is within 1 % of the best there is. More than 40 circles
/// go on a hexagonal grid of the largest.
TightPacking packTightly(std::span<const double> diameters);
/// Whether a round bore takes it, to 1e-3 in.
bool fits(const TightPacking& packing, double bore);

/// packTightly's places if they lie inside this bore. Error outOfRange, naming the bore that would
/// be needed, if not.
Result<std::vector<SlotPlace>> packCircles(std::span<const double> diameters, double bore);

/// packTightly's bore, 0 for no circles. Needed where no raceway is stated, so that there is still
/// a place to draw every conductor.
double boreNeeded(std::span<const double> diameters);

}  // namespace gw::geometry
