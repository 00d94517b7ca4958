#pragma once

#include "layout/layout.h"

namespace gw::checks {

/// Whether the check of tap rules compares what the circuit may carry with its own device, without
/// the next size up: then no other check does, and a breach is told once.
bool isJudgedByTapRule(const layout::Circuit& circuit);

}  // namespace gw::checks
