#include "checks/service_side.h"

#include "base/contract.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Circuit;
using layout::Role;
using layout::TapRule;

const Circuit& headOf(const BuiltLayout& built, const Circuit& circuit) {
    const Circuit* head = &circuit;
    while (head->joins) {
        const auto next = built.circuitIndex(*head->joins);
        CONTRACT(next.has_value());
        head = &built.layout.circuits[*next];
    }
    return *head;
}

Side sideOfTap(const std::optional<TapRule>& rule) {
    if (!rule) {
        return Side::unknown;
    }
    switch (*rule) {
        case TapRule::serviceConductors:
            return Side::service;
        case TapRule::tenFoot:
        case TapRule::twentyFiveFoot:
        case TapRule::highBay:
        case TapRule::outside:
            return Side::other;
        case TapRule::none:
            return Side::unknown;
    }
    return Side::unknown;
}

}  // namespace

Side sideOf(const BuiltLayout& built, const Circuit& circuit) {
    if (circuit.role == Role::bonding) {
        return Side::exempt;
    }
    const Circuit& head = headOf(built, circuit);
    switch (head.role) {
        case Role::service:
            return Side::service;
        case Role::tap:
            return sideOfTap(head.tapRule);
        case Role::feeder:
        case Role::branch:
            return Side::other;
        case Role::bonding:
            return Side::exempt;
    }
    return Side::unknown;
}

Side sideOf(const BuiltLayout& built, const layout::Conductor& conductor) {
    if (conductor.phase == layout::Phase::g) {
        return Side::exempt;
    }
    const auto circuit = built.circuitIndex(conductor.circuit);
    CONTRACT(circuit.has_value());
    return sideOf(built, built.layout.circuits[*circuit]);
}

bool areServiceConductors(const BuiltLayout& built, std::size_t circuit) {
    return sideOf(built, built.layout.circuits[circuit]) == Side::service;
}

}  // namespace gw::checks
