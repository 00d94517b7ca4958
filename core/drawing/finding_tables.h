#pragma once

#include <string>
#include <vector>

#include "checks/finding.h"
#include "drawing/table.h"
#include "geometry/built_layout.h"

/// The findings as tables: what needs a person's eye in full, what meets in one row a check.
namespace gw::drawing {

/// Worst verdict first, within one verdict as given. Their places are their numbers on the sheet.
std::vector<const checks::Finding*> inOrder(const std::vector<checks::Finding>& findings);

/// Whether the views show its place with its number.
bool isMarked(const checks::Finding& finding);

/// Breaches, cautions and what cannot be told, each in full, numbered as on the views.
Table openFindingTable(const geometry::BuiltLayout& built,
                       const std::vector<checks::Finding>& findings);

/// Whether there is anything but what meets.
bool hasOpen(const std::vector<checks::Finding>& findings);

/// What meets, a row a check: how many, and the one nearest to its limit with its working. Stands
/// for all findings, and says so, where nothing else was found.
Table metTable(const geometry::BuiltLayout& built, const std::vector<checks::Finding>& findings);

/// "1 breach, 0 cautions, 2 cannot tell, 30 met".
std::string tallyText(const std::vector<checks::Finding>& findings);

}  // namespace gw::drawing
