#pragma once

#include <span>
#include <string_view>

#include "drawing/sheet.h"

namespace gw::drawing {

/// A standard scale, as stated on the sheet.
struct Scale {
    std::string_view text;  ///< `3" = 1'-0"`, `1:5`
    double ratio = 1.0;     ///< paper over real: 0.25, 0.2
    /// Millimetres of paper for an inch of gutter.
    double mmPerInch() const { return 25.4 * ratio; }
};

/// Largest first. Inch papers: the scales of an architect's rule, down to 1/32 in (common
/// practice); metric papers: 1, 2, 5 times powers of ten (ISO 5455, from memory).
std::span<const Scale> scalesFor(Paper paper);

}  // namespace gw::drawing
