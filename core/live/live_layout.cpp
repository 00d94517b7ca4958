#include "live/live_layout.h"

#include <utility>

#include "live/moves.h"

namespace gw::live {

Result<LiveLayout> LiveLayout::create(const layout::Layout& layout, parts::Shelf shelf) {
    if (const auto valid = layout::validate(layout, shelf); !valid) {
        return fail(valid.error());
    }
    return LiveLayout(layout, std::move(shelf));
}

LiveLayout::LiveLayout(const layout::Layout& layout, parts::Shelf shelf)
    : shelf_(std::move(shelf)),
      built_(geometry::build(layout, shelf_)),
      rebuilder_(built_.layout),
      facts_(built_),
      findings_(built_, facts_.facts()) {}

Result<layout::Patch> LiveLayout::change(const layout::Layout& after) {
    if (const auto valid = layout::validate(after, shelf_); !valid) {
        return fail(valid.error());
    }
    layout::Patch patch = layout::difference(layout(), after);
    apply(patch);
    return patch;
}

void LiveLayout::apply(const layout::Patch& patch) {
    if (patch.empty()) {
        return;
    }
    if (const auto moved = movesOf(patch, built_, facts_.facts().occupancy)) {
        layout::apply(patch, built_.layout);
        applyMove(*moved);
        return;
    }
    layout::Layout next = built_.layout;
    layout::apply(patch, next);
    *this = LiveLayout(next, std::move(shelf_));
}

void LiveLayout::applyMove(const geometry::Things& moved) {
    rebuilder_.rebuild(built_, moved);
    const Touched touched = facts_.update(built_, moved);
    findings_.update(built_, facts_.facts(), touched);
}

}  // namespace gw::live
