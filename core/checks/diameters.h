#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "geometry/built_layout.h"

/// How thick a conductor is at the least where the layout does not say enough to know: built
/// layouts then carry the largest published diameter of its size.
namespace gw::checks {

/// inches. The least published diameter over the metal: NFPA 70 Chapter 9 Table 8, and 5A where the
/// stranding is compact or not stated. 0 where neither has the size.
double leastBareDiameter(const layout::Conductor& conductor, standards::Edition edition);

/// inches, >= 0. By how much the built radius may be too large: 0 where the diameter is known, else
/// all but the metal.
double radiusInDoubt(const geometry::BuiltLayout& built, std::size_t conductor);

/// "insulation of conductor S1-A", of those whose diameter is not known.
std::vector<std::string> diametersUnknown(const geometry::BuiltLayout& built,
                                          const std::vector<std::size_t>& conductors);

}  // namespace gw::checks
