#include "checks/entry_users.h"

#include <algorithm>

#include "base/contract.h"
#include "checks/support.h"

namespace gw::checks {

std::vector<std::vector<std::size_t>> conductorsAtEntries(const geometry::BuiltLayout& built) {
    std::vector<std::vector<std::size_t>> users(built.entries.size());
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        for (const auto* end : {&built.conductors[i].from, &built.conductors[i].to}) {
            if (end->entry) {
                users[*end->entry].push_back(i);
            }
        }
    }
    return users;
}

bool isLargeInsulated(const layout::Conductor& conductor) {
    return conductor.size >= units::WireSize::of("4") &&
           conductor.insulation != standards::Insulation::bare;
}

std::vector<std::string> insulationsMissing(const geometry::BuiltLayout& built,
                                            const std::vector<std::size_t>& conductors) {
    std::vector<std::string> missing;
    for (const std::size_t i : conductors) {
        if (!built.layout.conductors[i].insulation) {
            missing.push_back("insulation of " + conductorName(built, i));
        }
    }
    return missing;
}

units::WireSize largestSize(const geometry::BuiltLayout& built,
                            const std::vector<std::size_t>& conductors) {
    CONTRACT(!conductors.empty());
    units::WireSize largest = built.layout.conductors[conductors.front()].size;
    for (const std::size_t i : conductors) {
        largest = std::max(largest, built.layout.conductors[i].size);
    }
    return largest;
}

}  // namespace gw::checks
