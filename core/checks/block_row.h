#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "geometry/built_layout.h"

namespace gw::checks {

/// Blocks in order along the gutter, so that whoever looks for one need not look at all of them.
class BlockRow {
public:
    explicit BlockRow(const geometry::BuiltLayout& built);

    /// Those that reach into the stretch between two x, in order. REQUIRES the built layout it was
    /// made from.
    template <class Visit>
    void between(const geometry::BuiltLayout& built, double from, double to, Visit visit) const {
        const auto first = std::lower_bound(
            order_.begin(), order_.end(), from - longest_, [&](std::size_t block, double x) {
                return built.blocks[block].body.least.x < x;
            });
        for (auto one = first; one != order_.end(); ++one) {
            if (built.blocks[*one].body.least.x > to) {
                break;
            }
            visit(*one);
        }
    }

private:
    std::vector<std::size_t> order_;
    double longest_ = 0.0;  ///< inches along the gutter
};

}  // namespace gw::checks
