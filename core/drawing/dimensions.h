#pragma once

#include <span>
#include <string>
#include <vector>

#include "drawing/sketch.h"
#include "units/length.h"

/// Dimension lines: thin, with slender arrowheads, the number above the line or left of it.
namespace gw::drawing {

/// The number on a dimension line: `5 1/2"`, or millimetres without a unit mark (the title block
/// says which), to the nearest 1/16 in or 0.1 mm.
std::string dimensionText(double inches, units::LengthUnit unit);

/// Space a dimension line takes across: text, and air to the next.
double dimensionBand(const TextSizes& sizes);

struct Span {
    double from = 0.0;     ///< along the line, mm on the paper
    double to = 0.0;       ///< beyond `from`
    double feature = 0.0;  ///< where the extension lines start, across
    double line = 0.0;     ///< where the dimension line lies, across
};
/// One overall dimension, along x or along y.
void dimensionAlongX(Sketch& sketch,
                     const Span& span,
                     const std::string& text,
                     const TextSizes& sizes);
void dimensionAlongY(Sketch& sketch,
                     const Span& span,
                     const std::string& text,
                     const TextSizes& sizes);

/// Running dimensions from one datum, each number at its extension line.
struct Running {
    double datum = 0.0;              ///< along the line, mm on the paper
    std::vector<double> at;          ///< ascending, mm on the paper, no two the same
    std::vector<std::string> texts;  ///< as many
    double feature = 0.0;            ///< where the extension lines start, across
    double line = 0.0;               ///< where the dimension line lies, across
    bool textsAway = true;           ///< the numbers lie on the side away from the feature
};
/// Space across that the numbers need beyond the line: more when they must stand upright.
double runningDepth(const Running& running, const TextSizes& sizes, const TextMetrics& metrics);
void runningAlongX(Sketch& sketch, const Running& running, const TextSizes& sizes);
/// Along y the numbers stand right of the line (line right of the feature) or left of it.
void runningAlongY(Sketch& sketch, const Running& running, const TextSizes& sizes);

/// A filled arrowhead with its tip at `tip`, pointing along (dx, dy), a unit direction.
void arrowhead(Sketch& sketch, Point tip, double dx, double dy, double length = 2.0);

}  // namespace gw::drawing
