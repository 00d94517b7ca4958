#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "geometry/built_layout.h"

/// On which side of the service disconnects a circuit lies.
namespace gw::checks {

enum class Side {
    service,
    other,
    exempt,   ///< bonding and equipment grounding: may lie with either
    unknown,  ///< a tap of which neither its source nor its rule is stated
};

/// Of every circuit, by the circuit at the head of its chain of taps and splices: all are one node
/// with it, for no device may stand in a gutter. joins: [circuit] -> the one it joins.
std::vector<Side> sidesOf(const geometry::BuiltLayout& built,
                          const std::vector<std::optional<std::size_t>>& joins);

}  // namespace gw::checks
