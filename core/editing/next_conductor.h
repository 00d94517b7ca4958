#pragma once

#include <optional>

#include "editing/conductors.h"

namespace gw::editing {

/// The first set and phase of the circuit, set by set, that has no conductor yet, of the kind of
/// the circuit's last conductor, else of `kind`. Empty: all are there, or there is no such circuit.
std::optional<ConductorFacts> nextConductor(const layout::Layout& layout,
                                            const layout::CircuitId& circuit,
                                            const ConductorKind& kind);

}  // namespace gw::editing
