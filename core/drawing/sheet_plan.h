#pragma once

#include "drawing/details.h"
#include "drawing/long_views.h"

namespace gw::drawing {

inline constexpr double kNookEms = 34.0;      ///< least width of a small table, in body text
inline constexpr double kColumnEms = 43.0;    ///< least width of a column of schedules
inline constexpr double kWideEms = 58.0;      ///< least width of the findings
inline constexpr double kWorthTables = 42.0;  ///< mm of height below which no table is begun

/// What goes where on the first page, and at which scales.
struct SheetPlan {
    Scale scale;                                     ///< of the long views
    LongViews::Shown shown = LongViews::Shown::all;  ///< the rest of them is on the second page
    Rect longViews;                                  ///< mm: all the room they may use
    std::optional<DetailPlan> details;               ///< empty: they go on the second page
    std::vector<Rect> rest;                          ///< where tables may begin on the first page
    std::vector<Rect> nooks;                         ///< where a small table may stand whole
};

/// The largest standard scale at which the long views and the details fit the area: details below
/// or at the right of the long views. Where that is small and the long views alone could be drawn
/// much larger, the details go to the second page; where the front view and its profile alone could
/// be larger still, the top view goes there too.
SheetPlan planSheet(const Subject& subject,
                    const std::vector<Detail>& details,
                    Paper paper,
                    const Rect& area,
                    const TextMetrics& metrics);

}  // namespace gw::drawing
