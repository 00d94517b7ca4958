#include "drawing/sheet.h"

#include <algorithm>
#include <cmath>

#include "drawing/details.h"
#include "drawing/schedules.h"
#include "drawing/sheet_plan.h"
#include "drawing/title_block.h"

namespace gw::drawing {
namespace {

constexpr double kColumnGap = 7.0;   // mm between columns of tables
constexpr double kColumnEms = 78.0;  // least width of a column, in body text

/// The worst plane for conductors, and the worst at a splice where that is another one.
std::vector<SectionMark> sectionsOf(const geometry::BuiltLayout& built) {
    std::vector<double> avoid;
    for (const auto& entry : built.entries) {
        avoid.push_back(entry.centre.x);
    }
    const auto conductors = built.fill.worstConductors();
    std::vector<SectionMark> marks{{"A", clearPlane(conductors.from, conductors.to, avoid)}};
    const auto splice = built.fill.worstSplice();
    if (splice.area > 0.0 && (splice.from != conductors.from || splice.to != conductors.to)) {
        avoid.push_back(marks.front().x);
        marks.push_back({"B", clearPlane(splice.from, splice.to, avoid)});
    }
    return marks;
}

std::vector<Rect> columnsOf(const Rect& area, const TextSizes& sizes) {
    const double fits = (area.width + kColumnGap) / (kColumnEms * sizes.body + kColumnGap);
    const int count = std::max(1, static_cast<int>(std::floor(fits)));
    const double width = (area.width - kColumnGap * (count - 1)) / count;
    std::vector<Rect> columns;
    for (int i = 0; i < count; ++i) {
        columns.push_back({area.x + i * (width + kColumnGap), area.y, width, area.height});
    }
    return columns;
}

std::vector<Rect> columnsOfAll(const std::vector<Rect>& areas, const TextSizes& sizes) {
    std::vector<Rect> columns;
    for (const auto& area : areas) {
        const auto more = columnsOf(area, sizes);
        columns.insert(columns.end(), more.begin(), more.end());
    }
    return columns;
}

class SheetMaker {
public:
    SheetMaker(const geometry::BuiltLayout& built,
               const std::vector<checks::Finding>& findings,
               Paper paper,
               const TextMetrics& metrics)
        : subject_{&built, &findings, sectionsOf(built), textSizes(paper)},
          details_(detailsOf(subject_)),
          paper_(paper),
          size_(paperSize(paper)),
          area_(drawingArea(size_, subject_.sizes)),
          metrics_(metrics),
          plan_(planSheet(subject_, details_, paper, area_, metrics)) {}

    std::vector<Drawing> make() {
        pages_.emplace_back(metrics_);
        drawViews();
        setTables();
        return finish();
    }

private:
    void drawViews() {
        const LongViews views(subject_, plan_.scale, plan_.longViews.width, metrics_);
        // What no table can use is white space between the views.
        const double bottom = plan_.rest.empty() ? areaAboveDetails() : plan_.longViews.bottom();
        views.draw(pages_[0], {plan_.longViews.x, plan_.longViews.y}, bottom - plan_.longViews.y);
        if (plan_.details) {
            drawDetails(pages_[0], subject_, details_, *plan_.details);
        }
    }

    /// Where the long views must end when they may use all height that is left.
    double areaAboveDetails() const {
        const bool below = plan_.details && plan_.details->used.y >= plan_.longViews.bottom();
        return below ? plan_.longViews.bottom() : area_.bottom();
    }

    void setTables() {
        Rect later = area_;
        if (!plan_.details) {
            later = drawDetailsOnSecondPage();
        }
        const auto columns = columnsOf(area_, subject_.sizes);
        auto first = columnsOfAll(plan_.rest, subject_.sizes);
        Flow flow(pages_, first, columns);
        if (!plan_.details) {
            flow.addRegions(1, columnsOf(later, subject_.sizes));
        }
        const auto& built = *subject_.built;
        for (const auto& table : {findingTable(built, *subject_.findings),
                                  conductorTable(built),
                                  entryTable(built),
                                  blockTable(built),
                                  gutterTable(built),
                                  cautionTable()}) {
            setTable(flow, table, subject_.sizes);
        }
    }

    /// What is left of that page.
    Rect drawDetailsOnSecondPage() {
        pages_.emplace_back(metrics_);
        const Rect room{area_.x, area_.y, area_.width, area_.height};
        const auto plan =
            planDetails(subject_, details_, paper_, plan_.scale.ratio, room, metrics_);
        if (!plan) {
            return area_;
        }
        drawDetails(pages_[1], subject_, details_, *plan);
        const double top = plan->used.bottom() + kColumnGap;
        return {area_.x, top, area_.width, area_.bottom() - top};
    }

    std::vector<Drawing> finish() {
        std::vector<Drawing> drawings;
        const auto& layout = subject_.layout();
        const auto count = pages_.size();
        for (std::size_t i = 0; i < count; ++i) {
            TitleBlock block{i == 0 ? "Gutter layout" : "Schedules",
                             i == 0 ? scaleText() : "–",
                             tallyText(*subject_.findings),
                             i + 1,
                             count};
            drawTitleBlock(pages_[i], layout, block, size_, subject_.sizes);
            drawings.push_back(std::move(pages_[i]).finish(size_, layout.title));
        }
        return drawings;
    }

    std::string scaleText() const {
        std::string text(plan_.scale.text);
        if (plan_.details && plan_.details->scale.ratio != plan_.scale.ratio) {
            text += ", sections " + std::string(plan_.details->scale.text);
        }
        return text;
    }

    Subject subject_;
    std::vector<Detail> details_;
    Paper paper_;
    Rect size_;
    Rect area_;
    const TextMetrics& metrics_;
    SheetPlan plan_;
    std::vector<Sketch> pages_;
};

}  // namespace

std::vector<Drawing> layoutSheet(const geometry::BuiltLayout& built,
                                 const std::vector<checks::Finding>& findings,
                                 const SheetOptions& options,
                                 const TextMetrics& metrics) {
    return SheetMaker(built, findings, options.paper, metrics).make();
}

}  // namespace gw::drawing
