#pragma once

#include <vector>

#include "geometry/built_layout.h"
#include "support/shipped_shelf.h"

/// A gutter with one conductor in it, for what is counted of one.
namespace gw::test {

struct OneConductor {
    const char* size = "500";
    standards::Metal metal = standards::Metal::copper;
    standards::Insulation insulation = standards::Insulation::thhn;
    std::vector<layout::Corner> corners;
    Vec3 from{2.0, 2.0, 2.0};
    Vec3 to{40.0, 2.0, 2.0};
};

/// Capped at both ends.
inline geometry::BuiltLayout oneConductor(const OneConductor& one) {
    layout::Layout layout;
    layout.gutter.inside = {60.0, 24.0, 24.0};
    layout::System system;
    system.id = layout::SystemId("S");
    layout.systems.push_back(system);
    layout::Circuit circuit;
    circuit.id = layout::CircuitId("C");
    circuit.system = system.id;
    circuit.phases = {layout::Phase::a};
    layout.circuits.push_back(circuit);
    layout::Conductor conductor;
    conductor.id = layout::ConductorId("W");
    conductor.tag = "W";
    conductor.circuit = circuit.id;
    conductor.size = units::WireSize::of(one.size);
    conductor.metal = one.metal;
    conductor.insulation = one.insulation;
    conductor.stranding = standards::Stranding::classB;
    conductor.from = layout::Spare{one.from};
    conductor.to = layout::Spare{one.to};
    conductor.corners = one.corners;
    layout.conductors.push_back(conductor);
    return geometry::build(layout, shippedShelf());
}

}  // namespace gw::test
