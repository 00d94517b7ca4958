#include "editing/next_conductor.h"

#include <algorithm>

namespace gw::editing {
namespace {

bool isThere(const layout::Layout& layout,
             const layout::CircuitId& circuit,
             int set,
             layout::Phase phase) {
    return std::any_of(layout.conductors.begin(), layout.conductors.end(), [&](const auto& one) {
        return one.circuit == circuit && one.set == set && one.phase == phase;
    });
}

ConductorKind kindOf(const layout::Layout& layout,
                     const layout::CircuitId& circuit,
                     const ConductorKind& otherwise) {
    const auto last = std::find_if(layout.conductors.rbegin(),
                                   layout.conductors.rend(),
                                   [&](const auto& one) { return one.circuit == circuit; });
    if (last == layout.conductors.rend()) {
        return otherwise;
    }
    return {last->size, last->metal, last->insulation, last->stranding};
}

}  // namespace

std::optional<ConductorFacts> nextConductor(const layout::Layout& layout,
                                            const layout::CircuitId& circuit,
                                            const ConductorKind& kind) {
    const auto index = indexOf(layout, circuit);
    if (!index) {
        return std::nullopt;
    }
    const layout::Circuit& one = layout.circuits[*index];
    for (int set = 1; set <= one.sets; ++set) {
        for (const layout::Phase phase : one.phases) {
            if (!isThere(layout, circuit, set, phase)) {
                return ConductorFacts{
                    circuit, set, phase, kindOf(layout, circuit, kind), std::nullopt};
            }
        }
    }
    return std::nullopt;
}

}  // namespace gw::editing
