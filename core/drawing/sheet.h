#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "checks/finding.h"
#include "drawing/drawing.h"
#include "geometry/built_layout.h"

/// The layout sheet for the permit set: front, top, worst section and end section to a stated
/// scale, the fill profile under the front view, findings, cautions, title block.
namespace gw::drawing {

enum class Paper { letter, legal, tabloid, archC, archD, a4, a3, a2, a1 };
std::string_view paperText(Paper paper);                    ///< "Letter", "ARCH D", "A4", …
std::optional<Paper> paperFromText(std::string_view text);  ///< any case, blanks and '-' ignored
/// Landscape width and height in mm.
Rect paperSize(Paper paper);

struct SheetOptions {
    Paper paper = Paper::tabloid;
};

/// One drawing a page; the first holds the views, more follow while the findings need them.
std::vector<Drawing> layoutSheet(const geometry::BuiltLayout& built,
                                 const std::vector<checks::Finding>& findings,
                                 const SheetOptions& options,
                                 const TextMetrics& metrics);

}  // namespace gw::drawing
