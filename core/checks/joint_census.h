#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <tuple>
#include <vector>

#include "checks/joint_graph.h"

/// Whether every circuit has its conductors, each once, and what explains it where one has not.
namespace gw::checks {

/// One place for a conductor.
struct Slot {
    std::size_t circuit = 0;
    layout::Phase phase = layout::Phase::a;
    int set = 1;
    friend bool operator<(const Slot& a, const Slot& b) {
        return std::tie(a.circuit, a.phase, a.set) < std::tie(b.circuit, b.phase, b.set);
    }
};

/// A conductor that is missing in one circuit and one too many in another.
struct Swap {
    Slot missing;
    Slot extra;
};

struct Census {
    std::map<Slot, std::vector<std::size_t>> slots;
    std::map<Slot, int> off;  ///< conductors too many (positive) or too few, not explained yet
    std::vector<std::set<std::size_t>> toldAt;  ///< by block: circuits whose numbers it explains
    std::vector<bool> told;                     ///< by circuit: explained at a block
    std::map<std::size_t, Swap> swaps;          ///< by the circuit that misses one
    std::set<std::size_t> named;                ///< circuits told of with another
};

Census censusOf(const geometry::BuiltLayout& built, const Links& links, const JointGraph& graph);

}  // namespace gw::checks
