#pragma once

#include "geometry/built_layout.h"

/// On which side of the service disconnects a circuit lies.
namespace gw::checks {

enum class Side {
    service,
    other,
    exempt,   ///< bonding and equipment grounding: may lie with either
    unknown,  ///< a tap of which neither its source nor its rule is stated
};

/// By the circuit at the head of its chain of taps and splices: all are one node with it, for no
/// device may stand in a gutter.
Side sideOf(const geometry::BuiltLayout& built, const layout::Circuit& circuit);
Side sideOf(const geometry::BuiltLayout& built, const layout::Conductor& conductor);

/// Whether it lies on the service's side.
bool areServiceConductors(const geometry::BuiltLayout& built, std::size_t circuit);

}  // namespace gw::checks
