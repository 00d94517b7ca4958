#pragma once

#include <cstddef>
#include <set>
#include <vector>

#include "geometry/built_layout.h"

/// Which conductors belong to which circuit.
namespace gw::checks {

/// [circuit] -> its conductors, by id.
std::vector<std::vector<std::size_t>> membersOfCircuits(const geometry::BuiltLayout& built);

/// The conductors of a set by their ids, so that the order of the layout tells nothing.
std::vector<std::size_t> byId(const geometry::BuiltLayout& built,
                              const std::set<std::size_t>& conductors);

/// The circuit of a conductor.
std::size_t circuitOf(const geometry::BuiltLayout& built, std::size_t conductor);

/// The system a circuit belongs to.
const layout::System& systemOf(const geometry::BuiltLayout& built, std::size_t circuit);

}  // namespace gw::checks
