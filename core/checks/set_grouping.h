#pragma once

#include <optional>

#include "checks/facts.h"
#include "checks/finding.h"

namespace gw::checks {

/// Whether parallel sets run as groups of one conductor a phase: a caution where conductors lie
/// nearer to another set than to their own. Judged across the middle of the longest stretch that
/// two or more whole sets run along the gutter together; empty where none do. Grounding conductors
/// belong to no group. Cost n² in the circuit's conductors.
/// Source: NFPA 70 366.20, 376.20, 378.20 (2017 and later); that nearness tells is common practice,
/// no source.
std::optional<Finding> setGroupingFinding(const geometry::BuiltLayout& built,
                                          const Facts& facts,
                                          std::size_t circuit);

}  // namespace gw::checks
