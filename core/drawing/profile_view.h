#pragma once

#include <string>
#include <vector>

#include "drawing/placer.h"
#include "drawing/sketch.h"
#include "geometry/fill.h"

/// The fill profile: percentage of the gutter's cross-section over its length, on the same ruler as
/// the front view.
namespace gw::drawing {

/// A section's place along the gutter.
struct SectionMark {
    std::string letter;  ///< "A"
    double x = 0.0;      ///< inches
};

struct ProfilePlace {
    double left = 0.0;  ///< mm: where x = 0 lies
    double mmPerInch = 1.0;
    double top = 0.0;      ///< mm
    double height = 25.0;  ///< mm from 0 to the top of the axis
};

/// Conductors as a filled step line, blocks with their conductors as a hatched one, with the 20 %
/// (conductors) and 75 % (at splices) lines of NFPA 70 366.22(A), 376.22(A), 366.56(A),
/// 376.56(B)(1). The axis has two scales: below 25 percent, where most gutters lie, it is drawn
/// larger; a break sign stands where they meet.
void drawProfile(Sketch& sketch,
                 const geometry::FillProfile& fill,
                 const std::vector<SectionMark>& marks,
                 const ProfilePlace& place,
                 const TextSizes& sizes);

/// Percent at the top of the axis: 80, or the next ten above the greatest fill.
double profileTop(const geometry::FillProfile& fill);

/// The middle of the worst slice, moved within it away from the given places (of raceways), so that
/// the section's mark stands clear: any plane of the slice is as bad.
double clearPlane(double from, double to, const std::vector<double>& avoid);

}  // namespace gw::drawing
