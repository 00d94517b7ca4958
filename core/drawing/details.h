#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drawing/scale.h"
#include "drawing/subject.h"

/// The small views beside the long ones: end view, sections, key.
namespace gw::drawing {

struct Detail {
    enum class Kind { endView, section, key };
    Kind kind = Kind::key;
    std::string title;
    SectionMark mark;  ///< sections
};

/// A section for each mark of the subject, the end view where an end wall has entries, the key.
std::vector<Detail> detailsOf(const Subject& subject);

/// Where each detail goes, upper left corners, in their order.
struct DetailPlan {
    Scale scale;
    std::vector<Rect> places;
    Rect used;  ///< all of them
};

/// Shelves of details, filled from the left, in the largest standard scale at which they fit the
/// room, no smaller than `least` and no larger than four times it. Empty when none fits.
std::optional<DetailPlan> planDetails(const Subject& subject,
                                      const std::vector<Detail>& details,
                                      Paper paper,
                                      double least,
                                      const Rect& room,
                                      const TextMetrics& metrics);

void drawDetails(Sketch& sketch,
                 const Subject& subject,
                 const std::vector<Detail>& details,
                 const DetailPlan& plan);

}  // namespace gw::drawing
