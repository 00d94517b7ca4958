#pragma once

#include <span>

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// What edits share: keeping paths at their ends, and the last look at what comes out.
namespace gw::editing {

/// A layout whose paths follow their ends, and the same built: its conductors' ends are right, the
/// paths of those that followed are as they were.
struct Settled {
    layout::Layout layout;
    geometry::BuiltLayout built;
};
/// Conductors that both have, with the same two ends and corners, follow where these have moved to;
/// where an axis has turned, they get a new path. Others stay as they are.
Settled settledAndBuilt(const geometry::BuiltLayout& before,
                        layout::Layout after,
                        const parts::Shelf& shelf);

/// After any other change to the layout (a size, a slot, a raceway, taken from a table): paths
/// follow their ends to where these are now. `after` must pass layout::validate with the shelf.
layout::Layout settled(const geometry::BuiltLayout& before,
                       layout::Layout after,
                       const parts::Shelf& shelf);

/// The layout if it is one that layout::validate accepts.
Edit accepted(layout::Layout layout, const parts::Shelf& shelf);

/// Other paths settled, this conductor's planned anew.
Edit replanned(const geometry::BuiltLayout& before,
               layout::Layout after,
               const layout::ConductorId& conductor,
               std::span<const Vec3> via = {});

/// "no such conductor": `what` and the id that was asked for.
Error notThere(const std::string& what, const std::string& id);

}  // namespace gw::editing
