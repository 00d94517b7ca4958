#pragma once

#include <vector>

#include "drawing/drawing.h"

/// Whether what is drawn can be read.
namespace gw::test {

/// All texts of a page, in the order they are painted.
std::vector<drawing::Text> textsOf(const drawing::Drawing& page);

/// Letters themselves; 0.05 mm of touching is let pass.
drawing::Rect inkOfText(const drawing::Text& text, const drawing::TextMetrics& metrics);

/// How many lines run through a text, over or under it, once the plates have hidden theirs.
int linesThrough(const drawing::Drawing& page,
                 const drawing::Text& text,
                 const drawing::TextMetrics& metrics);

}  // namespace gw::test
