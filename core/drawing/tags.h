#pragma once

#include <set>

#include "drawing/placer.h"
#include "drawing/sketch.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

struct TagOptions {
    TextSizes sizes;
    /// Only where the tag hides nothing; else wherever the conductor shows, and with a leader where
    /// it never shows long enough.
    bool onlyWhereFree = false;
};

/// Writes each conductor's tag on it, where the conductor is seen, along its run. Takes the places
/// it uses. Returns the conductors (indices) that got a tag.
std::set<std::size_t> placeTags(Sketch& sketch,
                                Placer& placer,
                                const geometry::BuiltLayout& built,
                                const ViewFrame& frame,
                                const TagOptions& options);

}  // namespace gw::drawing
