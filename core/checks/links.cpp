#include "checks/links.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "base/contract.h"
#include "checks/entry_users.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using Indices = std::vector<std::size_t>;

std::size_t at(const std::map<layout::CircuitId, std::size_t>& indices,
               const layout::CircuitId& id) {
    const auto found = indices.find(id);
    CONTRACT(found != indices.end());
    return found->second;
}

Indices ranksOf(const BuiltLayout& built) {
    const auto& all = built.layout.conductors;
    Indices order(all.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return all[a].id < all[b].id;
    });
    Indices rank(all.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        rank[order[i]] = i;
    }
    return rank;
}

std::size_t systemOf(const BuiltLayout& built, const layout::Circuit& circuit) {
    const auto& systems = built.layout.systems;
    const auto found = std::find_if(
        systems.begin(), systems.end(), [&](const auto& one) { return one.id == circuit.system; });
    CONTRACT(found != systems.end());
    return static_cast<std::size_t>(found - systems.begin());
}

void readCircuits(Links& links, const BuiltLayout& built) {
    std::map<layout::CircuitId, std::size_t> indices;
    const auto& circuits = built.layout.circuits;
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        indices.emplace(circuits[i].id, i);
    }
    links.joins.resize(circuits.size());
    links.joinedBy.resize(circuits.size());
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        links.systemOf.push_back(systemOf(built, circuits[i]));
        if (circuits[i].joins) {
            links.joins[i] = at(indices, *circuits[i].joins);
            links.joinedBy[*links.joins[i]].push_back(i);
        }
    }
    for (const auto& conductor : built.layout.conductors) {
        links.circuitOf.push_back(at(indices, conductor.circuit));
    }
}

void noteNeutral(SystemLinks& system, const BuiltLayout& built, std::size_t conductor) {
    const auto& colour = built.layout.conductors[conductor].colour;
    auto& known = system.neutralsByColour;
    system.neutralDrawn = true;
    if (colour && std::none_of(known.begin(), known.end(), [&](std::size_t other) {
            return built.layout.conductors[other].colour == colour;
        })) {
        known.push_back(conductor);
    }
}

void readSystems(Links& links, const BuiltLayout& built) {
    using layout::Phase;
    links.systems.resize(built.layout.systems.size());
    for (std::size_t i = 0; i < links.systemOf.size(); ++i) {
        const auto& phases = built.layout.circuits[i].phases;
        links.systems[links.systemOf[i]].threePhases |=
            std::find(phases.begin(), phases.end(), Phase::c) != phases.end();
    }
    Indices byRank(links.rank.size());
    for (std::size_t i = 0; i < links.rank.size(); ++i) {
        byRank[links.rank[i]] = i;
    }
    for (const std::size_t i : byRank) {
        if (built.layout.conductors[i].phase == Phase::n) {
            noteNeutral(links.systems[links.systemOf[links.circuitOf[i]]], built, i);
        }
    }
}

void readMembers(Links& links, const BuiltLayout& built) {
    links.members.resize(built.layout.circuits.size());
    for (std::size_t i = 0; i < links.circuitOf.size(); ++i) {
        links.members[links.circuitOf[i]].push_back(i);
    }
    for (std::size_t circuit = 0; circuit < links.members.size(); ++circuit) {
        links.sortById(links.members[circuit]);
        links.runs.push_back(phaseRuns(built, circuit, links.members[circuit]));
    }
}

}  // namespace

Side Links::sideOf(const BuiltLayout& built, std::size_t conductor) const {
    return built.layout.conductors[conductor].phase == layout::Phase::g
               ? Side::exempt
               : sides[circuitOf[conductor]];
}

void Links::sortById(Indices& conductors) const {
    std::sort(conductors.begin(), conductors.end(), [&](std::size_t a, std::size_t b) {
        return rank[a] < rank[b];
    });
}

Links linksOf(const BuiltLayout& built) {
    Links links;
    links.rank = ranksOf(built);
    readCircuits(links, built);
    readSystems(links, built);
    readMembers(links, built);
    links.sides = sidesOf(built, links.joins);
    links.atEntries = conductorsAtEntries(built);
    return links;
}

}  // namespace gw::checks
