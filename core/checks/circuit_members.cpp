#include "checks/circuit_members.h"

#include <algorithm>
#include <map>

#include "base/contract.h"

namespace gw::checks {
namespace {

void sortById(const geometry::BuiltLayout& built, std::vector<std::size_t>& conductors) {
    const auto& all = built.layout.conductors;
    std::sort(conductors.begin(), conductors.end(), [&](std::size_t a, std::size_t b) {
        return all[a].id < all[b].id;
    });
}

}  // namespace

std::vector<std::vector<std::size_t>> membersOfCircuits(const geometry::BuiltLayout& built) {
    std::map<layout::CircuitId, std::size_t> indices;
    for (std::size_t i = 0; i < built.layout.circuits.size(); ++i) {
        indices.emplace(built.layout.circuits[i].id, i);
    }
    std::vector<std::vector<std::size_t>> members(built.layout.circuits.size());
    for (std::size_t i = 0; i < built.layout.conductors.size(); ++i) {
        const auto found = indices.find(built.layout.conductors[i].circuit);
        CONTRACT(found != indices.end());
        members[found->second].push_back(i);
    }
    for (auto& conductors : members) {
        sortById(built, conductors);
    }
    return members;
}

std::vector<std::size_t> byId(const geometry::BuiltLayout& built,
                              const std::set<std::size_t>& conductors) {
    std::vector<std::size_t> sorted(conductors.begin(), conductors.end());
    sortById(built, sorted);
    return sorted;
}

std::size_t circuitOf(const geometry::BuiltLayout& built, std::size_t conductor) {
    const auto circuit = built.circuitIndex(built.layout.conductors[conductor].circuit);
    CONTRACT(circuit.has_value());
    return *circuit;
}

const layout::System& systemOf(const geometry::BuiltLayout& built, std::size_t circuit) {
    const auto& systems = built.layout.systems;
    const auto& id = built.layout.circuits[circuit].system;
    const auto found = std::find_if(
        systems.begin(), systems.end(), [&](const layout::System& one) { return one.id == id; });
    CONTRACT(found != systems.end());
    return *found;
}

}  // namespace gw::checks
