#pragma once

#include <functional>
#include <vector>

#include "drawing/placer.h"
#include "drawing/sketch.h"
#include "drawing/tubes.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

/// One view of the gutter: its walls cut and hatched, raceways, blocks and conductors.
namespace gw::drawing {

/// Thickness a wall is drawn with, mm: sheet metal true to scale would be a hair.
inline constexpr double kWall = 1.2;
/// Length of raceway drawn outside the wall, mm.
inline constexpr double kStub = 6.0;

/// How an entry shows in a view.
enum class EntrySight { stub, near, far };  ///< near: in the wall taken away; far: behind all else
EntrySight sightOf(const geometry::BuiltEntry& entry, const ViewFrame& frame);

/// Where a raceway seen from its side ends, mm on the paper.
Point stubEnd(const geometry::BuiltEntry& entry, const ViewFrame& frame);

/// Draws the whole view.
void drawGutter(Sketch& sketch, const geometry::BuiltLayout& built, const ViewFrame& frame);

/// How a conductor shows: not at all, in pale grey, in full, or all in ink.
enum class Showing { hidden, pale, full, inked };
/// The view with each conductor as asked, by its index.
void drawGutter(Sketch& sketch,
                const geometry::BuiltLayout& built,
                const ViewFrame& frame,
                const std::function<Showing(std::size_t)>& showing);

/// What labels must keep clear of: blocks, raceways.
Rect blockRect(const geometry::BuiltBlock& block, const ViewFrame& frame);

}  // namespace gw::drawing
