#pragma once

#include <cstddef>
#include <vector>

namespace gw::geometry {

/// What an edit moves, by indices in the layout, ascending: blocks that stand elsewhere, and
/// conductors that run otherwise between the same ends, those attached to such blocks among them.
struct Moved {
    std::vector<std::size_t> conductors;
    std::vector<std::size_t> blocks;
    bool empty() const { return conductors.empty() && blocks.empty(); }
};

}  // namespace gw::geometry
