#pragma once

#include <vector>

#include "checks/finding.h"
#include "standards/citation.h"
#include "standards/sections.h"

/// What each check judges by: for the help page, the table of checks, and whoever looks a verdict
/// up in the code.
namespace gw::checks {

/// The rules a check judges by, each once, the one its findings cite most first. Empty for a check
/// of the shapes alone, and for one whose rule is none of NFPA 70's (the bend radius to 1000 V).
std::vector<standards::Rule> rulesOf(Check check);

/// Where those rules stand in that edition, in the order of rulesOf(): auxiliary gutters first,
/// then metal and nonmetallic wireways. Each section once; a rule the edition does not have is left
/// out. For the bend radius the cable standard. Empty for a check of the shapes alone.
std::vector<standards::Citation> sourcesOf(Check check, standards::Edition edition);

}  // namespace gw::checks
