#pragma once

#include <string>
#include <vector>

#include "checks/finding.h"
#include "drawing/sheet.h"
#include "drawing/sketch.h"

/// The frame of the papers that are worked from at the bench and at the gutter: what they are, of
/// which layout, whether that layout has breaches, page numbers, and the cautions.
namespace gw::drawing {

struct WorkPaper {
    Paper paper = Paper::letter;
    std::string kind;     ///< "Bench cards"
    std::string caution;  ///< of this kind of paper, one sentence
};

/// What is left for its matter on each page, mm.
Rect workArea(Paper paper);

/// Sizes of its text: larger than on the permit set, to be read at arm's length.
TextSizes workSizes();

/// The pages with heads and feet. Pages are numbered as they are.
std::vector<Drawing> finished(std::vector<Sketch> pages,
                              const WorkPaper& paper,
                              const layout::Layout& layout,
                              const std::vector<checks::Finding>& findings);

/// "2 breaches: mend them before a conductor is cut (gutterwright check)." or that there is none.
std::string breachSentence(const std::vector<checks::Finding>& findings);

}  // namespace gw::drawing
