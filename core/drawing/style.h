#pragma once

#include <string>

#include "drawing/drawing.h"
#include "drawing/sheet.h"
#include "layout/layout.h"

/// The hand of the drawing office: line weights, text sizes, and how a phase is told.
namespace gw::drawing {

// Line weights, mm. Common practice, no source: three steps that a photocopy keeps apart.
inline constexpr double kHeavy = 0.70;  ///< sheet border, cutting-plane ends
inline constexpr double kOutline = 0.50;
inline constexpr double kObject = 0.35;
inline constexpr double kFine = 0.25;
inline constexpr double kThin = 0.18;  ///< dimensions, centre lines, hatching

inline constexpr double kLeaderDot = 0.4;  ///< mm, radius of the dot a leader ends in

inline constexpr Colour kInk{0, 0, 0};
inline constexpr Colour kGrey{110, 110, 110};
inline constexpr Colour kMidGrey{170, 170, 170};
inline constexpr Colour kPaleGrey{228, 228, 228};
inline constexpr Colour kPaper{255, 255, 255};
inline constexpr Colour kBlockFill{246, 240, 214};
inline constexpr Colour kCopperFill{214, 150, 96};
inline constexpr Colour kCopperLine{120, 64, 16};

/// Font sizes in mm of em. Capitals are 0.729 of it: at 2.75 they are 2 mm high, and no text on a
/// sheet is smaller.
struct TextSizes {
    double body = 2.75;                          ///< labels, dimensions, tables
    double heading = 3.3;                        ///< table titles
    double title = 3.9;                          ///< view titles
    double large = 5.2;                          ///< the layout's title in the title block
    double line() const { return body * 1.35; }  ///< from baseline to baseline
};
/// Larger on larger papers, which are read from further away or printed at half size.
TextSizes textSizes(Paper paper);

/// How a conductor of a phase is told: a tint, and a pattern along its middle that a copy without
/// colour keeps.
struct PhaseStyle {
    Colour fill;
    Colour line;
    Dash dash = Dash::solid;
};
/// The colour the layout states for the conductor when it is one of the usual names; else the
/// customary one for the system's voltage (480 V between phases: brown, orange, yellow, grey; else
/// black, red, blue, white; green always for G). Common practice: NFPA 70 fixes none of the phases.
PhaseStyle styleOf(const layout::Conductor& conductor, const layout::Layout& layout);
PhaseStyle styleOf(layout::Phase phase, bool above250 = false);
/// "solid line", "dashes", …: for the key.
std::string patternText(layout::Phase phase);

/// A fine pen in ink.
Pen inkPen(double width, Dash dash = Dash::solid);

}  // namespace gw::drawing
