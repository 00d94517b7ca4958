#pragma once

#include <string>
#include <vector>

#include "checks/finding.h"
#include "drawing/dimensions.h"
#include "drawing/entry_labels.h"
#include "drawing/names.h"
#include "drawing/profile_view.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

namespace gw::drawing {

/// What all views of one sheet are drawn from.
struct Subject {
    const geometry::BuiltLayout* built = nullptr;            ///< outlives the views
    const std::vector<checks::Finding>* findings = nullptr;  ///< outlives the views
    std::vector<SectionMark> sections;
    TextSizes sizes;

    const layout::Layout& layout() const { return built->layout; }
    const Vec3& inside() const { return built->gutter().inside; }
    bool hasEntries(layout::Wall wall) const;
};

/// The row of x a view may use, from the interior's left end: its margins reach beyond both ends.
struct Ruler {
    double mmPerInch = 1.0;
    double low = 0.0;   ///< mm, <= 0
    double high = 0.0;  ///< mm, >= the gutter's length on the paper
};

/// "E1  4 in EMT".
std::string entryHead(const layout::Entry& entry);

/// Labels of the entries in a wall along the gutter, anchored at their place along x.
std::vector<EntryLabel> labelsOf(const Subject& subject, layout::Wall wall, double mmPerInch);

/// Distances from the datum at which the entries of a wall sit along one gutter axis, each once,
/// ascending, inches. axis: 0 x, 1 y, 2 z.
std::vector<double> entryPlaces(const Subject& subject,
                                const std::vector<layout::Wall>& walls,
                                int axis);

/// Running dimensions of such distances on the paper. sign: +1 where the axis grows with the
/// paper's coordinate, else -1.
Running runningOf(const std::vector<double>& inches,
                  const Subject& subject,
                  double datum,
                  double mmPerInch,
                  double sign = 1.0);

}  // namespace gw::drawing
