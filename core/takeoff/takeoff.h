#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "geometry/built_layout.h"
#include "takeoff/cut_list.h"
#include "takeoff/table.h"

/// Everything counted from the layout.
namespace gw::takeoff {

/// Names of all tables, in the order in which they are read: "cut-list", "reels", …
std::span<const std::string_view> tableNames();

/// One table. REQUIRES one of tableNames().
Table tableNamed(std::string_view name,
                 const geometry::BuiltLayout& built,
                 const CutOptions& options = {});

/// Those tables for reading, with the layout's title above and the usual cautions below.
std::string textTakeoff(const std::vector<Table>& tables, const layout::Layout& layout);

/// The same as JSON; lengths in inches.
std::string jsonTakeoff(const std::vector<Table>& tables, const layout::Layout& layout);

}  // namespace gw::takeoff
