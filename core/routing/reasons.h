#pragma once

#include "routing/negotiation.h"
#include "routing/routing.h"

/// Why a conductor has no path, in trade words, with place and numbers.
namespace gw::routing {

/// What proves that no path of this span can meet the limits; empty where nothing does. Proven are
/// only: a gutter thinner than the conductor, a wall or block inside the straight lead-in, and a
/// wall before the terminal nearer than the least bend away from it needs.
std::optional<Unresolved> provenImpossible(const geometry::BuiltLayout& built, const Span& span);

/// No way of the templates is legal, even with no other conductor asked for.
Unresolved noWay(const geometry::BuiltLayout& built, const Item& item);

/// There are ways, but each clashes with others. chosen: by item, as settled.
Unresolved noRoom(const geometry::BuiltLayout& built,
                  const std::vector<Item>& items,
                  const std::vector<std::size_t>& chosen,
                  std::size_t item,
                  std::size_t rounds);

}  // namespace gw::routing
