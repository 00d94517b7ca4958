#include "checks/service_side.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Circuit;
using layout::Role;
using layout::TapRule;

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

Side sideBy(const Circuit& head) {
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

}  // namespace

std::vector<Side> sidesOf(const BuiltLayout& built,
                          const std::vector<std::optional<std::size_t>>& joins) {
    std::vector<Side> sides;
    sides.reserve(joins.size());
    for (std::size_t i = 0; i < joins.size(); ++i) {
        std::size_t head = i;
        while (joins[head]) {
            head = *joins[head];
        }
        const bool bonding = built.layout.circuits[i].role == Role::bonding;
        sides.push_back(bonding ? Side::exempt : sideBy(built.layout.circuits[head]));
    }
    return sides;
}

}  // namespace gw::checks
