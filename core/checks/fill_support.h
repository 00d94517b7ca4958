#pragma once

#include <string>
#include <vector>

#include "checks/finding.h"

/// What the two checks of fill share.
namespace gw::checks {

/// The fill by all blocks, the conductors whose diameter is known, and the metal alone of the
/// others: what is certain.
geometry::FillProfile certainFill(const geometry::BuiltLayout& built);

/// The percentage of the inside that conductors and blocks may take together.
standards::Cited<double> spliceLimit(const geometry::BuiltLayout& built);

/// Conductors cut by a plane between these x whose diameter had to be assumed.
std::vector<std::size_t> assumedBetween(const geometry::BuiltLayout& built, double from, double to);

/// "insulation of conductor S1-A", one each.
std::vector<std::string> assumedInputs(const geometry::BuiltLayout& built,
                                       const std::vector<std::size_t>& conductors);

/// ", by the largest published diameter of conductor S1-A", for those whose own is not known; empty
/// for none.
std::string assumedClause(const geometry::BuiltLayout& built,
                          const std::vector<std::size_t>& conductors);

/// Writes place and interval: the middle of the cross-section at the middle of the stretch.
void placeAt(Finding& finding, const geometry::BuiltLayout& built, double from, double to);

/// A breach that rests on assumed diameters becomes cannotTell and names the inputs.
void excuseAssumed(Finding& finding,
                   const geometry::BuiltLayout& built,
                   const std::vector<std::size_t>& assumed);

/// "between x = 12 in and x = 14.5 in".
std::string stretchText(double from, double to);

}  // namespace gw::checks
