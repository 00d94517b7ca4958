#pragma once

#include <string>

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// Copies: duplicate, mirror, array, cut and paste.
namespace gw::editing {

/// Some of a layout, with what it needs to stand elsewhere: a small layout of its own (the gutter
/// it was taken from, the parts of its blocks, the circuits of its conductors). Can be written and
/// read as a layout file.
struct Clip {
    layout::Layout layout;
    bool empty() const {
        return layout.blocks.empty() && layout.entries.empty() && layout.conductors.empty() &&
               layout.circuits.empty();
    }
};

/// Conductors' ends at what is not copied become spares where they come out of it.
Clip copyItems(const geometry::BuiltLayout& built, const Items& items);

/// Everything in the clip moved by `by`, with new ids and names that are free; entries stay on
/// their walls. A conductor whose circuit is there joins it, in the first set and phase not yet
/// taken, or in its own where all are. Blocks stay within the gutter.
Result<Made> paste(const geometry::BuiltLayout& built,
                   const parts::Shelf& shelf,
                   const Clip& clip,
                   const Vec3& by);

/// copyItems and paste in one.
Result<Made> duplicate(const geometry::BuiltLayout& built, const Items& items, const Vec3& by);
/// `count` copies, each `by` further than the one before; 1 to 100.
Result<Made> arrayOf(const geometry::BuiltLayout& built,
                     const Items& items,
                     int count,
                     const Vec3& by);

/// Left and right changed about the middle of what is selected: blocks by the attitude that puts
/// their ports on the other side where there is one, entries of the left and right walls change
/// walls, conductors with both ends among the items are mirrored, others follow.
Edit mirrorItems(const geometry::BuiltLayout& built, const Items& items);

}  // namespace gw::editing
