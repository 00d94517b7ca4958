#include "drawing/sheet_plan.h"

#include <algorithm>

namespace gw::drawing {
namespace {

constexpr double kBetween = 8.0;       // mm between long views, details and tables
constexpr double kWorthTables = 42.0;  // mm of height below which no table is begun
constexpr double kWorthMore = 1.5;     // gain in scale that sends the details to the second page

std::optional<SheetPlan> withDetailsBelow(const Subject& subject,
                                          const std::vector<Detail>& details,
                                          Paper paper,
                                          const Scale& scale,
                                          const Rect& area,
                                          const TextMetrics& metrics) {
    const LongViews views(subject, scale, area.width, metrics);
    if (views.width() > area.width || views.height() > area.height) {
        return std::nullopt;
    }
    const double top = area.y + views.height() + kBetween;
    auto plan = planDetails(subject,
                            details,
                            paper,
                            scale.ratio,
                            {area.x, top, area.width, area.bottom() - top},
                            metrics);
    if (!plan) {
        return std::nullopt;
    }
    SheetPlan sheet{scale, {area.x, area.y, area.width, views.height()}, std::move(plan), {}};
    const double rest = area.bottom() - sheet.details->used.bottom() - kBetween;
    if (rest > kWorthTables) {
        sheet.rest.push_back({area.x, area.bottom() - rest, area.width, rest});
    }
    return sheet;
}

std::optional<SheetPlan> withDetailsAtRight(const Subject& subject,
                                            const std::vector<Detail>& details,
                                            Paper paper,
                                            const Scale& scale,
                                            const Rect& area,
                                            const TextMetrics& metrics) {
    const double width = LongViews(subject, scale, area.width, metrics).width();
    const LongViews views(subject, scale, width, metrics);
    const double left = area.x + width + kBetween;
    if (views.height() > area.height || left > area.right()) {
        return std::nullopt;
    }
    auto plan = planDetails(subject,
                            details,
                            paper,
                            scale.ratio,
                            {left, area.y, area.right() - left, area.height},
                            metrics);
    if (!plan) {
        return std::nullopt;
    }
    SheetPlan sheet{scale, {area.x, area.y, width, views.height()}, std::move(plan), {}};
    const double below =
        area.bottom() - std::max(sheet.longViews.bottom(), sheet.details->used.bottom()) - kBetween;
    if (below > kWorthTables) {
        sheet.rest.push_back({area.x, area.bottom() - below, area.width, below});
    }
    return sheet;
}

/// Whichever placing lets the details be larger.
std::optional<SheetPlan> withDetails(const Subject& subject,
                                     const std::vector<Detail>& details,
                                     Paper paper,
                                     const Scale& scale,
                                     const Rect& area,
                                     const TextMetrics& metrics) {
    auto below = withDetailsBelow(subject, details, paper, scale, area, metrics);
    auto right = withDetailsAtRight(subject, details, paper, scale, area, metrics);
    if (!below || !right) {
        return below ? std::move(below) : std::move(right);
    }
    return right->details->scale.ratio > below->details->scale.ratio ? right : below;
}

std::optional<SheetPlan> alone(const Subject& subject,
                               const Scale& scale,
                               const Rect& area,
                               const TextMetrics& metrics) {
    const LongViews views(subject, scale, area.width, metrics);
    if (views.width() > area.width || views.height() > area.height) {
        return std::nullopt;
    }
    SheetPlan sheet{scale, {area.x, area.y, area.width, views.height()}, std::nullopt, {}};
    const double rest = area.height - views.height() - kBetween;
    if (rest > kWorthTables) {
        sheet.rest.push_back({area.x, area.bottom() - rest, area.width, rest});
    }
    return sheet;
}

}  // namespace

SheetPlan planSheet(const Subject& subject,
                    const std::vector<Detail>& details,
                    Paper paper,
                    const Rect& area,
                    const TextMetrics& metrics) {
    std::optional<SheetPlan> largest;
    for (const auto& scale : scalesFor(paper)) {
        if (!largest) {
            largest = alone(subject, scale, area, metrics);
        }
        auto whole = withDetails(subject, details, paper, scale, area, metrics);
        if (whole) {
            const bool worthMore =
                largest && largest->scale.ratio > kWorthMore * scale.ratio + 1e-9;
            return worthMore ? *std::move(largest) : *std::move(whole);
        }
    }
    const auto smallest =
        scalesFor(paper).back();  // a gutter no sheet can hold: as small as it goes
    return largest ? *std::move(largest) : SheetPlan{smallest, area, std::nullopt, {}};
}

}  // namespace gw::drawing
