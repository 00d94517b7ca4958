#include "checks/pieces.h"

#include <algorithm>
#include <numeric>

#include "base/contract.h"

namespace gw::checks {

Groups::Groups(std::size_t things) : parent_(things) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
}

std::size_t Groups::groupOf(std::size_t thing) const {
    while (parent_[thing] != thing) {
        thing = parent_[thing];
    }
    return thing;
}

void Groups::join(std::size_t a, std::size_t b) {
    const auto [least, other] = std::minmax({groupOf(a), groupOf(b)});
    parent_[other] = least;
    // Point what was asked for straight at the group, so that chains stay short.
    parent_[a] = least;
    parent_[b] = least;
}

std::vector<std::size_t> blocksOf(const geometry::BuiltConductor& conductor) {
    std::vector<std::size_t> blocks;
    for (const geometry::BuiltEnd* end : {&conductor.from, &conductor.to}) {
        if (end->block) {
            blocks.push_back(*end->block);
        }
    }
    for (const geometry::BuiltPass& pass : conductor.passes) {
        blocks.push_back(pass.block);
    }
    std::sort(blocks.begin(), blocks.end());
    blocks.erase(std::unique(blocks.begin(), blocks.end()), blocks.end());
    return blocks;
}

Groups piecesOf(const geometry::BuiltLayout& built, const std::vector<bool>& leaveOut) {
    CONTRACT(leaveOut.size() == built.conductors.size());
    const std::size_t conductors = built.conductors.size();
    Groups groups(conductors + built.blocks.size());
    for (std::size_t i = 0; i < conductors; ++i) {
        if (leaveOut[i]) {
            continue;
        }
        for (const std::size_t block : blocksOf(built.conductors[i])) {
            groups.join(i, conductors + block);
        }
    }
    return groups;
}

}  // namespace gw::checks
