#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "checks/finding.h"
#include "layout/layout.h"

/// What a tool takes hold of.
namespace gw::editing {

using Item = checks::Subject;
using Items = std::vector<Item>;

/// Where it stands in the layout's own vector; empty when it is not there.
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::SystemId& id);
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::CircuitId& id);
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::EntryId& id);
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::BlockId& id);
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::ConductorId& id);

bool isThere(const layout::Layout& layout, const Item& item);
const std::string& idText(const Item& item);

/// "conductor S1-A", "block A", "entry Service", "circuit Bakery": by tag or name, else by id. A
/// name that already begins with the kind is not said twice. By id alone where it is not there.
std::string itemName(const layout::Layout& layout, const Item& item);
/// One item by its name, more by number and kind: "3 conductors", "2 blocks and 1 entry".
std::string itemsName(const layout::Layout& layout, const Items& items);

bool holds(const Items& items, const Item& item);

}  // namespace gw::editing
