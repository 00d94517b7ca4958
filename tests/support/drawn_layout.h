#pragma once

#include <vector>

#include "checks/finding.h"
#include "geometry/built_layout.h"

/// A gutter made to be drawn: what the sheet must be able to show, not what a check must pass.
namespace gw::test {

struct DrawnOptions {
    double length = 72.0;     ///< inches; tenants are spread over it
    int tenants = 5;          ///< raceways in the bottom wall, 0 to 12
    bool topEntries = false;  ///< the tenants' raceways in the top wall instead
    units::LengthUnit unit = units::LengthUnit::inch;
    int blocks = 4;          ///< one a phase, 0 to 4; without, the service runs through
    bool conductors = true;  ///< false: raceways and blocks only
    bool vertical = false;   ///< the gutter runs up the wall
};

/// Two sets of 350 kcmil from the left wall to the blocks, or through to the right wall; from the
/// blocks a conductor a phase to each tenant's raceway; a bare conductor along the back. Paths are
/// plain, and may touch.
geometry::BuiltLayout drawnLayout(const DrawnOptions& options = {});

/// One finding of each verdict that the layout has subjects for, and `meets` more.
std::vector<checks::Finding> drawnFindings(const geometry::BuiltLayout& built, int meets = 20);

}  // namespace gw::test
