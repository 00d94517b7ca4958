#include "checks/block_row.h"

#include <numeric>
#include <tuple>

namespace gw::checks {

BlockRow::BlockRow(const geometry::BuiltLayout& built) : order_(built.blocks.size()) {
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
        return std::tie(built.blocks[a].body.least.x, built.layout.blocks[a].id) <
               std::tie(built.blocks[b].body.least.x, built.layout.blocks[b].id);
    });
    for (const auto& block : built.blocks) {
        longest_ = std::max(longest_, block.body.extents().x);
    }
}

}  // namespace gw::checks
