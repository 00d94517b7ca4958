#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "geometry/built_layout.h"

/// Who comes through which entry.
namespace gw::checks {

/// For every entry the conductors that come through it, in the order of the layout. A conductor
/// with both ends at one entry is named twice: it lies twice in its raceway.
std::vector<std::vector<std::size_t>> conductorsAtEntries(const geometry::BuiltLayout& built);

/// Whether the rules for large conductors count it: 4 AWG or larger, and not bare.
bool isLargeInsulated(const layout::Conductor& conductor);

/// "insulation of conductor S1-A" of each of these conductors whose insulation is not stated.
std::vector<std::string> insulationsMissing(const geometry::BuiltLayout& built,
                                            const std::vector<std::size_t>& conductors);

/// The largest size among them. REQUIRES at least one.
units::WireSize largestSize(const geometry::BuiltLayout& built,
                            const std::vector<std::size_t>& conductors);

}  // namespace gw::checks
