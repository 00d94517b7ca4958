#pragma once

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// Removing what is selected with what depends on it.
namespace gw::editing {

/// What else a removal touches.
struct Dependants {
    Items removed;  ///< conductors that go, beyond the items themselves, in the layout's order
    Items freed;    ///< conductors that stay with an end capped or a port no longer passed
    bool empty() const { return removed.empty() && freed.empty(); }
};
/// Conductors go with an entry they come through and with their circuit; at a removed block they
/// become spares where they come out of it.
Dependants dependants(const layout::Layout& layout, const Items& items);
/// "2 conductors go with it; 3 conductors are freed"; empty when nothing depends on them.
std::string dependantsText(const layout::Layout& layout, const Items& items);

/// As where all blocks and entries but these were removed: ends in others are capped where they
/// come out, ports of others are no longer passed. laid: the conductor as built.
void freeFromAllBut(layout::Conductor& conductor,
                    const geometry::BuiltConductor& laid,
                    const Items& kept);

/// No reference to what is gone is left: remarks pinned to it stay without the item, circuits that
/// joined a removed circuit join nothing.
Edit removeItems(const geometry::BuiltLayout& built, const Items& items);

}  // namespace gw::editing
