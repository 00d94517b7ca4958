#pragma once

#include "drawing/legs.h"
#include "drawing/placer.h"
#include "drawing/subject.h"

/// Short marks on a view: block and entry names, cutting planes, places of findings.
namespace gw::drawing {

/// What a view offers its marks.
struct MarkedView {
    Sketch& sketch;
    Placer& placer;
    const Subject& subject;
    const ViewFrame& frame;
    const std::vector<Leg>& legs;  ///< of the view
};

/// Where names of a view may stand: inside, and in a band above the upper wall.
Rect roomForLabels(const Rect& interior, const TextSizes& sizes);
Rect bandAbove(const Rect& interior, const TextSizes& sizes);
/// Height of that band above the wall, mm.
double nameBand(const TextSizes& sizes);
/// Keeps labels that come later off the upper wall, the blocks' faces and the raceways.
void keepLabelsOff(const MarkedView& view);
/// Each block's name on its face, or beside it with a leader where it is too small.
void nameBlocks(const MarkedView& view);
/// Names of the entries seen from their ends (in the wall toward or away from the eye).
void nameFacingEntries(const MarkedView& view);
/// Short heavy strokes with arrows and letters outside the walls: looking to the right.
void markSections(const MarkedView& view);
/// A numbered circle for each breach and caution that has a place, leading to it.
void markFindings(const MarkedView& view);

}  // namespace gw::drawing
