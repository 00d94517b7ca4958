#include "checks/joint_census.h"

#include <algorithm>
#include <numeric>

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;

/// What the counting looks at.
struct Counting {
    const BuiltLayout& built;
    const Links& links;
    const JointGraph& graph;
};

Census countedSlots(const Counting& at) {
    Census census;
    const auto& layout = at.built.layout;
    for (std::size_t i = 0; i < layout.circuits.size(); ++i) {
        for (const Phase phase : layout.circuits[i].phases) {
            for (int set = 1; set <= layout.circuits[i].sets; ++set) {
                census.slots[{i, phase, set}];
            }
        }
    }
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        const auto& one = layout.conductors[i];
        census.slots[{at.links.circuitOf[i], one.phase, one.set}].push_back(i);
    }
    for (const auto& [slot, conductors] : census.slots) {
        if (conductors.size() != 1) {
            census.off[slot] = static_cast<int>(conductors.size()) - 1;
        }
    }
    census.toldAt.resize(layout.blocks.size());
    census.told.resize(layout.circuits.size());
    return census;
}

void settleOne(Census& census, const Slot& slot, int by) {
    const auto found = census.off.find(slot);
    found->second += by;
    if (found->second == 0) {
        census.off.erase(found);
    }
}

/// What is told must not hang on the order of the layout.
void sortByName(const Counting& at, std::vector<Slot>& slots) {
    const auto& circuits = at.built.layout.circuits;
    std::sort(slots.begin(), slots.end(), [&](const Slot& a, const Slot& b) {
        return std::tie(circuits[a.circuit].id, a.phase, a.set) <
               std::tie(circuits[b.circuit].id, b.phase, b.set);
    });
}

std::vector<std::size_t> blocksByName(const Counting& at) {
    const auto& blocks = at.built.layout.blocks;
    std::vector<std::size_t> order(blocks.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return blocks[a].id < blocks[b].id;
    });
    return order;
}

/// A conductor astray on a block that is one too many in its circuit and would be a missing one of
/// those the block is for: it is marked wrongly, and its block tells so.
void explainByBlocks(const Counting& at, Census& census) {
    std::map<Net, std::vector<Slot>> missing;
    for (const auto& [slot, off] : census.off) {
        if (off < 0) {
            missing[netFor(at.built, at.graph.roots, slot.circuit, slot.phase)].push_back(slot);
        }
    }
    for (auto& [net, slots] : missing) {
        sortByName(at, slots);
    }
    for (const std::size_t block : blocksByName(at)) {
        const auto& carries = at.graph.blocks[block].carries;
        for (const std::size_t i : at.graph.blocks[block].astray) {
            const auto& one = at.built.layout.conductors[i];
            const Slot own{at.links.circuitOf[i], one.phase, one.set};
            const auto extra = census.off.find(own);
            if (!carries || extra == census.off.end() || extra->second < 0 ||
                missing[*carries].empty()) {
                continue;
            }
            const Slot meant = missing[*carries].back();
            missing[*carries].pop_back();
            settleOne(census, own, -1);
            settleOne(census, meant, 1);
            census.toldAt[block].insert({own.circuit, meant.circuit});
            census.told[own.circuit] = census.told[meant.circuit] = true;
        }
    }
}

/// A conductor too few in one circuit and one too many of that phase in another: one is marked with
/// the wrong circuit.
void pairSwaps(const Counting& at, Census& census) {
    std::map<Phase, std::vector<Slot>> extras;
    std::vector<Slot> missing;
    for (const auto& [slot, off] : census.off) {
        if (off < 0) {
            missing.push_back(slot);
        }
        for (int i = 0; i < off; ++i) {
            extras[slot.phase].push_back(slot);
        }
    }
    sortByName(at, missing);
    for (auto& [phase, slots] : extras) {
        sortByName(at, slots);
    }
    for (const Slot& slot : missing) {
        auto& slots = extras[slot.phase];
        const auto extra = std::find_if(slots.begin(), slots.end(), [&](const Slot& other) {
            return other.circuit != slot.circuit;
        });
        if (extra == slots.end() ||
            !census.swaps.emplace(slot.circuit, Swap{slot, *extra}).second) {
            continue;
        }
        settleOne(census, slot, 1);
        settleOne(census, *extra, -1);
        census.named.insert(extra->circuit);
        slots.erase(extra);
    }
}

}  // namespace

Census censusOf(const BuiltLayout& built, const Links& links, const JointGraph& graph) {
    const Counting at{built, links, graph};
    Census census = countedSlots(at);
    explainByBlocks(at, census);
    pairSwaps(at, census);
    return census;
}

}  // namespace gw::checks
