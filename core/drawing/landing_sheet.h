#pragma once

#include <vector>

#include "checks/finding.h"
#include "drawing/sheet.h"
#include "geometry/built_layout.h"

/// The landing order as pictures: a step a conductor, with what lies in the gutter already in grey.
namespace gw::drawing {

/// Step by step as takeoff/landing_steps.h; knots are told first. Empty where the layout has no
/// conductor.
std::vector<Drawing> landingSheet(const geometry::BuiltLayout& built,
                                  const std::vector<checks::Finding>& findings,
                                  Paper paper,
                                  const TextMetrics& metrics);

}  // namespace gw::drawing
