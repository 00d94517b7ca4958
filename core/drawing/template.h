#pragma once

#include <string>
#include <vector>

#include "drawing/sheet.h"
#include "takeoff/holes.h"

/// The drilling template: the walls that have holes at full size, over as many sheets as it takes.
namespace gw::drawing {

struct TemplateOptions {
    Paper paper = Paper::letter;
    std::vector<layout::Wall> walls = {};  ///< these only; empty: all that have holes
};

/// One sheet of a wall. Sheets of one wall overlap by half an inch; those without a hole are left
/// out.
struct TemplateTile {
    layout::Wall wall = layout::Wall::top;
    int column = 0;
    int row = 0;
    int columns = 1;  ///< of the whole wall
    int rows = 1;
    Rect window;  ///< mm on the sheet: where the wall is drawn
    Point
        wallCorner;  ///< mm on the sheet: the wall's upper left corner as it is seen; may be off it
};

/// A mark that lies on the same place of the wall on two sheets that overlap.
struct TemplateJoint {
    std::string name;  ///< the same on both
    Point at;          ///< mm on the sheet
};
std::vector<TemplateJoint> templateJoints(const TemplateTile& tile);

/// How a wall is seen: all from outside, as they are drilled, but the back, which is laid in from
/// the cover side. Across and down from the upper left corner as seen, inches.
Point asSeen(layout::Wall wall, const Vec3& inside, double u, double v);
/// "seen from outside, from above: back at the top".
const char* viewText(layout::Wall wall);

/// Wall by wall, row by row.
std::vector<TemplateTile> templateTiles(const geometry::BuiltLayout& built,
                                        const TemplateOptions& options);

/// A sheet for each tile: outline, holes with centre marks, names, sizes and places, marks where
/// the next sheet is laid on, check bars of 4 in and 100 mm; that there are breaches, where there
/// are. Empty where nothing is drilled.
std::vector<Drawing> drillingTemplate(const geometry::BuiltLayout& built,
                                      const std::vector<checks::Finding>& findings,
                                      const TemplateOptions& options,
                                      const TextMetrics& metrics);

}  // namespace gw::drawing
