#pragma once

#include "drawing/details.h"
#include "drawing/long_views.h"

namespace gw::drawing {

/// What goes where on the first page, and at which scales.
struct SheetPlan {
    Scale scale;                        ///< of the long views
    Rect longViews;                     ///< mm
    std::optional<DetailPlan> details;  ///< empty: they go on the second page
    std::vector<Rect> rest;             ///< where tables may begin on the first page
};

/// The largest standard scale at which the long views and the details fit the area: details below
/// or at the right of the long views. Where the long views alone could be drawn half as large again
/// or more, the details go to the second page instead.
SheetPlan planSheet(const Subject& subject,
                    const std::vector<Detail>& details,
                    Paper paper,
                    const Rect& area,
                    const TextMetrics& metrics);

}  // namespace gw::drawing
