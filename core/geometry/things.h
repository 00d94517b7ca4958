#pragma once

#include <cstddef>
#include <vector>

#include "geometry/built_layout.h"

namespace gw::geometry {

/// Some conductors and blocks of a layout, by index, ascending.
struct Things {
    std::vector<std::size_t> conductors;
    std::vector<std::size_t> blocks;
    bool empty() const { return conductors.empty() && blocks.empty(); }
};

Things allThings(const BuiltLayout& built);

}  // namespace gw::geometry
