#include "live/live_layout.h"

#include <utility>

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
      findings_(checks::checkAll(built_)) {}

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
    layout::Layout next = built_.layout;
    layout::apply(patch, next);
    built_ = geometry::build(next, shelf_);
    findings_ = checks::checkAll(built_);
}

}  // namespace gw::live
