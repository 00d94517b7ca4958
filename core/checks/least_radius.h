#pragma once

#include "layout/layout.h"
#include "standards/look_up.h"
#include "standards/tables.h"

/// How tightly a conductor may be bent: what the check judges by, and what tools bend by.
namespace gw::checks {

/// The insulation of all 600 V building wire up to 2000 kcmil is no thicker (from memory), which is
/// the training rule's first group. Where the published diameters do not bear it out, the verdict
/// does not rest on it.
inline constexpr auto kThinInsulation = units::Inches::of(0.156);

/// Least radius at the inner surface in overall diameters: the training rule, or what the local
/// authority has put in its place.
standards::Cited<double> bendMultiple(units::Inches diameter,
                                      units::Inches insulation,
                                      const layout::Layout& layout);

/// inches, of the centreline: what meets the rule whatever is not known of the conductor's covering
/// (all of it taken for insulation). diameter: over the insulation, as built.
double leastBendRadius(const layout::Layout& layout,
                       const layout::Conductor& conductor,
                       units::Inches diameter);

}  // namespace gw::checks
