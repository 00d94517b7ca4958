#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/built_layout.h"
#include "takeoff/table.h"

/// What is stripped and tightened at each port.
namespace gw::takeoff {

/// One screw on one conductor.
struct StripAndTorque {
    std::size_t block = 0;  ///< indices in the layout, the block's part and the layout
    std::size_t port = 0;
    std::size_t conductor = 0;
    std::optional<units::Inches> strip;  ///< at an end; empty: not stated, or it passes uncut
    bool uncut = false;                  ///< it passes through, with a window
    std::optional<units::Inches> window;
    std::string screw;                  ///< its name; empty: the part states no screws
    std::string drive;                  ///< "hex 1/4 in"; empty: not stated
    std::optional<double> poundInches;  ///< lbf-in, of the part for that size; empty: not stated
};

/// Block by block, port by port, conductor by conductor, screw by screw.
std::vector<StripAndTorque> stripAndTorque(const geometry::BuiltLayout& built);

/// With boxes to be filled in: reading, initials, date.
Table stripAndTorqueTable(const geometry::BuiltLayout& built);

}  // namespace gw::takeoff
