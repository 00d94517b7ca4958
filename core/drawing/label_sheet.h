#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "drawing/sheet.h"
#include "geometry/built_layout.h"

/// Labels for conductors and blocks, laid out on plain paper to be cut, or on a sheet of labels.
namespace gw::drawing {

/// A sheet of labels held upright. Inches.
struct LabelGrid {
    int columns = 0;  ///< 1 to 40
    int rows = 0;     ///< 1 to 100
    double width = 0.0;
    double height = 0.0;
    double left = 0.0;  ///< of the first label from the sheet's edge
    double top = 0.0;
    double pitchAcross = 0.0;  ///< from label to label, at least the width
    double pitchDown = 0.0;
    friend bool operator==(const LabelGrid&, const LabelGrid&) = default;
};

/// "3 x 10, 2 5/8 x 1, 3/16 x 1/2, 2 3/4 x 1": columns by rows, a label's width by height, the
/// first one's distance from the left and upper edge, and from label to label; without the last
/// they touch. Lengths in inches, or with mm. Error: syntax or outOfRange, naming what was
/// expected.
Result<LabelGrid> parseLabelGrid(std::string_view text);

struct LabelOptions {
    Paper paper = Paper::letter;    ///< held upright
    std::optional<LabelGrid> grid;  ///< empty: plain paper, 2 x 3/4 in, with lines to cut along
    int skip = 0;                   ///< labels of the first sheet that are used up, >= 0
};

/// Each label of takeoff/labels.h as often as it is needed: text large, then circuit and what it
/// supplies. Error outOfRange where the grid does not fit on the paper. Empty without anything to
/// label.
Result<std::vector<Drawing>> labelSheet(const geometry::BuiltLayout& built,
                                        const LabelOptions& options,
                                        const TextMetrics& metrics);

}  // namespace gw::drawing
