#pragma once

#include "drawing/gutter_view.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// A block seen in a view: body, bores hidden behind its face in fine dashes, mouths and screw
/// heads on the face toward the eye.
SceneItem blockItem(const geometry::BuiltBlock& block, const ViewFrame& frame);

/// Radius a screw head is drawn with, mm.
double screwRadius(const ViewFrame& frame);

}  // namespace gw::drawing
