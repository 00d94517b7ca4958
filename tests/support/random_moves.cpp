#include "support/random_moves.h"

#include <algorithm>
#include <cmath>

namespace gw::test_support {
namespace {

Vec3 sixteenths(Random& random, double reach) {
    const Vec3 by = random.in({-reach, -reach, -reach}, {reach, reach, reach}) * 16.0;
    return {std::round(by.x) / 16.0, std::round(by.y) / 16.0, std::round(by.z) / 16.0};
}

bool isIn(const layout::End& end, const layout::BlockId& block) {
    const auto* in = std::get_if<layout::InPort>(&end);
    return in != nullptr && in->block == block;
}

}  // namespace

std::vector<std::size_t> attachedTo(const layout::Layout& layout, const layout::BlockId& block) {
    std::vector<std::size_t> attached;
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        const auto& one = layout.conductors[i];
        const bool passes = std::any_of(one.passes.begin(),
                                        one.passes.end(),
                                        [&](const auto& pass) { return pass.block == block; });
        if (passes || isIn(one.from, block) || isIn(one.to, block)) {
            attached.push_back(i);
        }
    }
    return attached;
}

Move moveOfAConductor(const layout::Layout& before, Random& random, double reach) {
    Move move{before, {}};
    std::size_t index = random.below(before.conductors.size());
    while (before.conductors[index].corners.empty()) {
        index = (index + 1) % before.conductors.size();
    }
    auto& corners = move.after.conductors[index].corners;
    const Vec3 by = sixteenths(random, reach);
    if (random.chance(0.5)) {
        auto& corner = corners[random.below(corners.size())];
        corner.at = corner.at + by;
    } else {
        for (auto& corner : corners) {
            corner.at = corner.at + by;
        }
    }
    move.moved.conductors = {index};
    return move;
}

Move moveOfABlock(const layout::Layout& before, Random& random, double reach) {
    Move move{before, {}};
    const std::size_t index = random.below(before.blocks.size());
    auto& corner = move.after.blocks[index].corner;
    corner = corner + sixteenths(random, reach);
    move.moved.blocks = {index};
    move.moved.conductors = attachedTo(before, before.blocks[index].id);
    return move;
}

}  // namespace gw::test_support
