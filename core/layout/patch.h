#pragma once

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "layout/layout.h"

/// What differs between two layouts, so that an edit can be done, undone and done again exactly.
namespace gw::layout {

/// The stretch of a list in which two layouts differ: from `at`, `before` stands in the one and
/// `after` in the other.
template <class T>
struct Splice {
    std::size_t at = 0;
    std::vector<T> before;
    std::vector<T> after;
    bool empty() const { return before.empty() && after.empty(); }
};

struct Patch {
    /// Everything that is no list, where it differs: layouts without items, before and after.
    std::optional<std::pair<Layout, Layout>> rest;
    Splice<System> systems;
    Splice<Circuit> circuits;
    Splice<Entry> entries;
    Splice<Block> blocks;
    Splice<Conductor> conductors;
    Splice<Remark> remarks;
    Splice<parts::Part> parts;

    bool empty() const;
    Patch reversed() const;
};

/// applied(before, difference(before, after)) is `after`, item for item in the same order. Cost:
/// one comparison of every item.
Patch difference(const Layout& before, const Layout& after);

/// Changes the layout in place. REQUIRES a layout equal to the patch's `before`; CONTRACT that its
/// lists are long enough.
void apply(const Patch& patch, Layout& layout);

}  // namespace gw::layout
