#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "drawing/drawing.h"

namespace gw::drawing {

/// Breaks text at blanks into lines of at most `width` mm; a word longer than that is broken where
/// it must be, between UTF-8 characters. At least one line, which may be empty. Control characters
/// become blanks.
std::vector<std::string> wrapped(
    std::string_view text, double width, double height, Face face, const TextMetrics& metrics);

/// One line, cut with "…" where it is too wide.
std::string shortened(
    std::string_view text, double width, double height, Face face, const TextMetrics& metrics);

}  // namespace gw::drawing
