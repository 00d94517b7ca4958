#include "live/moves.h"

#include <algorithm>

namespace gw::live {
namespace {

bool onlyMoves(const layout::Conductor& before, const layout::Conductor& after) {
    layout::Conductor moved = before;
    moved.corners = after.corners;
    return moved == after;
}

bool onlyMoves(const layout::Block& before, const layout::Block& after) {
    layout::Block moved = before;
    moved.corner = after.corner;
    moved.attitude = after.attitude;
    return moved == after;
}

/// The indices of what differs. False: something does more than move.
template <class T>
bool collect(const layout::Splice<T>& splice, std::vector<std::size_t>& moved) {
    if (splice.before.size() != splice.after.size()) {
        return false;
    }
    for (std::size_t i = 0; i < splice.before.size(); ++i) {
        if (splice.before[i] == splice.after[i]) {
            continue;
        }
        if (!onlyMoves(splice.before[i], splice.after[i])) {
            return false;
        }
        moved.push_back(splice.at + i);
    }
    return true;
}

void addAttached(std::vector<std::size_t>& conductors,
                 const geometry::BuiltLayout& built,
                 const checks::Occupancy& occupancy,
                 std::size_t block) {
    for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
        for (const checks::Occupant& one : occupancy.of(block, port)) {
            conductors.push_back(one.conductor);
        }
    }
}

}  // namespace

std::optional<geometry::Things> movesOf(const layout::Patch& patch,
                                        const geometry::BuiltLayout& before,
                                        const checks::Occupancy& occupancy) {
    const bool more = patch.rest || !patch.systems.empty() || !patch.circuits.empty() ||
                      !patch.entries.empty() || !patch.remarks.empty() || !patch.parts.empty();
    geometry::Things moved;
    if (more || !collect(patch.conductors, moved.conductors) ||
        !collect(patch.blocks, moved.blocks)) {
        return std::nullopt;
    }
    for (const std::size_t block : moved.blocks) {
        addAttached(moved.conductors, before, occupancy, block);
    }
    auto& conductors = moved.conductors;
    std::sort(conductors.begin(), conductors.end());
    conductors.erase(std::unique(conductors.begin(), conductors.end()), conductors.end());
    return moved;
}

}  // namespace gw::live
