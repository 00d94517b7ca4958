#include "drawing/sheet_plan.h"

#include <algorithm>

namespace gw::drawing {
namespace {

using Shown = LongViews::Shown;

constexpr double kBetween = 8.0;      // mm between long views, details and tables
constexpr double kLegible = 1.0 / 8;  // a scale at which nothing need leave the first page
constexpr double kWorthMore = 1.3;    // gain in scale that sends the details to the second page
constexpr double kWorthSplit = 1.3;   // and the top view too

class Planner {
public:
    Planner(const Subject& subject,
            const std::vector<Detail>& details,
            Paper paper,
            const Rect& area,
            const TextMetrics& metrics)
        : subject_(subject), details_(details), paper_(paper), area_(area), metrics_(metrics) {}

    SheetPlan plan() const {
        auto whole = largest([&](const Scale& scale) { return withDetails(scale); });
        if (whole && whole->scale.ratio >= kLegible) {
            return *std::move(whole);
        }
        auto apart = largest([&](const Scale& scale) { return alone(scale, Shown::all); });
        auto split =
            largest([&](const Scale& scale) { return alone(scale, Shown::frontAndProfile); });
        auto best = larger(
            larger(std::move(whole), std::move(apart), kWorthMore), std::move(split), kWorthSplit);
        // A gutter no sheet can hold is drawn as small as it goes.
        return best ? *std::move(best)
                    : SheetPlan{scalesFor(paper_).back(), Shown::all, area_, {}, {}, {}};
    }

private:
    template <class Make>
    std::optional<SheetPlan> largest(Make make) const {
        for (const auto& scale : scalesFor(paper_)) {
            if (auto plan = make(scale)) {
                return plan;
            }
        }
        return std::nullopt;
    }

    /// The first, unless the second is larger by that factor.
    static std::optional<SheetPlan> larger(std::optional<SheetPlan> first,
                                           std::optional<SheetPlan> second,
                                           double factor) {
        const bool worth = first && second && second->scale.ratio > factor * first->scale.ratio;
        return !first || worth ? std::move(second) : std::move(first);
    }

    LongViews views(const Scale& scale, double width, Shown shown) const {
        return {subject_, scale, width, metrics_, shown};
    }

    double ems(double count) const { return count * subject_.sizes.body; }

    /// Width the long views get: their own where a strip worth using stays beside them, else all.
    double widthOf(const Scale& scale) const {
        const double own = views(scale, area_.width, Shown::all).width();
        return area_.width - own - kBetween >= ems(kNookEms) ? own : area_.width;
    }

    /// The long views in the upper left corner, if they fit.
    std::optional<SheetPlan> atTop(const Scale& scale, double width, Shown shown) const {
        const auto longViews = views(scale, width, shown);
        if (longViews.width() > area_.width || longViews.height() > area_.height) {
            return std::nullopt;
        }
        return SheetPlan{scale, shown, {area_.x, area_.y, width, longViews.height()}, {}, {}, {}};
    }

    bool placeDetails(SheetPlan& sheet, const Rect& room) const {
        if (room.width <= 0.0 || room.height <= 0.0) {
            return false;
        }
        sheet.details = planDetails(subject_, details_, paper_, sheet.scale.ratio, room, metrics_);
        return sheet.details.has_value();
    }

    /// A strip beside a view: for running tables when wide enough, else for small ones.
    void addStrip(SheetPlan& sheet, const Rect& strip) const {
        if (strip.width < ems(kNookEms) || strip.height < kWorthTables) {
            return;
        }
        (strip.width >= ems(kWideEms) ? sheet.rest : sheet.nooks).push_back(strip);
    }

    /// Everything from y down.
    Rect below(double y) const { return {area_.x, y, area_.width, area_.bottom() - y}; }
    Rect rightOf(double x, double y, double bottom) const {
        return {x, y, area_.right() - x, bottom - y};
    }

    /// Height that no table will use spreads the long views, and moves the details down.
    void spread(SheetPlan& sheet, double spare) const {
        const auto longViews = views(sheet.scale, sheet.longViews.width, sheet.shown);
        const double extra = std::clamp(spare, 0.0, longViews.mostHeight() - longViews.height());
        sheet.longViews.height += extra;
        for (auto& place : sheet.details->places) {
            place.y += extra;
        }
        sheet.details->used.y += extra;
    }

    std::optional<SheetPlan> detailsBelow(const Scale& scale) const {
        auto sheet = atTop(scale, widthOf(scale), Shown::all);
        if (!sheet || !placeDetails(*sheet, below(sheet->longViews.bottom() + kBetween))) {
            return std::nullopt;
        }
        const double right = sheet->longViews.right() + kBetween;
        const bool tablesAtRight = area_.right() - right >= ems(kWideEms);
        const double foot = sheet->details->used.bottom();
        if (tablesAtRight) {
            spread(*sheet, area_.bottom() - foot);
        }
        addStrip(*sheet, rightOf(right, area_.y, sheet->longViews.bottom()));
        const auto& used = sheet->details->used;
        addStrip(*sheet, rightOf(used.right() + kBetween, used.y, used.bottom()));
        addStrip(*sheet, below(used.bottom() + kBetween));
        return sheet;
    }

    std::optional<SheetPlan> detailsAtRight(const Scale& scale) const {
        const double own = views(scale, area_.width, Shown::all).width();
        auto sheet = atTop(scale, own, Shown::all);
        const double left = area_.x + own + kBetween;
        if (!sheet || !placeDetails(*sheet, rightOf(left, area_.y, area_.bottom()))) {
            return std::nullopt;
        }
        double foot = std::max(sheet->longViews.bottom(), sheet->details->used.bottom());
        const auto strip = below(foot + kBetween);
        if (strip.height > kWorthTables) {
            sheet->rest.push_back(strip);
        } else {
            foot = area_.bottom();
            sheet->longViews.height = area_.height;
        }
        const auto nook = rightOf(left, sheet->details->used.bottom() + kBetween, foot);
        if (nook.height > 0.0) {
            sheet->nooks.push_back(nook);
        }
        return sheet;
    }

    /// Whichever placing lets the details be larger.
    std::optional<SheetPlan> withDetails(const Scale& scale) const {
        auto under = detailsBelow(scale);
        auto beside = detailsAtRight(scale);
        if (!under || !beside) {
            return under ? std::move(under) : std::move(beside);
        }
        return beside->details->scale.ratio > under->details->scale.ratio ? std::move(beside)
                                                                          : std::move(under);
    }

    std::optional<SheetPlan> alone(const Scale& scale, Shown shown) const {
        auto sheet = atTop(scale, area_.width, shown);
        if (!sheet) {
            return std::nullopt;
        }
        const auto strip = below(sheet->longViews.bottom() + kBetween);
        if (strip.height > kWorthTables) {
            sheet->rest.push_back(strip);
        } else {
            sheet->longViews.height = area_.height;
        }
        return sheet;
    }

    const Subject& subject_;
    const std::vector<Detail>& details_;
    Paper paper_;
    Rect area_;
    const TextMetrics& metrics_;
};

}  // namespace

SheetPlan planSheet(const Subject& subject,
                    const std::vector<Detail>& details,
                    Paper paper,
                    const Rect& area,
                    const TextMetrics& metrics) {
    return Planner(subject, details, paper, area, metrics).plan();
}

}  // namespace gw::drawing
