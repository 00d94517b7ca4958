#include "drawing/sheet.h"

#include <algorithm>
#include <cmath>

#include "drawing/details.h"
#include "drawing/finding_tables.h"
#include "drawing/schedules.h"
#include "drawing/section_marks.h"
#include "drawing/sheet_plan.h"
#include "drawing/title_block.h"

namespace gw::drawing {
namespace {

constexpr double kLeastDetail = 0.4;  // of the long views' scale
constexpr double kHigher = 1.08;      // from one height of columns tried to the next
constexpr double kColumnGap = 7.0;    // mm between columns of tables

/// Columns as wide as a schedule needs, the same all.
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

class SheetMaker {
public:
    SheetMaker(const geometry::BuiltLayout& built,
               const std::vector<checks::Finding>& findings,
               Paper paper,
               const TextMetrics& metrics)
        : subject_{&built, &findings, sectionMarks(built), textSizes(paper)},
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
        const auto& room = plan_.longViews;
        const LongViews views(subject_, plan_.scale, room.width, metrics_, plan_.shown);
        views.draw(pages_[0], {room.x, room.y}, room.height);
        if (plan_.details) {
            drawDetails(pages_[0], subject_, details_, *plan_.details);
        }
    }

    /// Columns of schedules as low as need no further page, so that they end alike.
    void setTables() {
        const Rect later = plan_.details ? area_ : drawDetailsOnSecondPage();
        const auto schedules = schedulesLeft();
        auto whole = withTables(schedules, later, area_.height);
        for (double most = tallest(schedules); most < area_.height; most *= kHigher) {
            auto lower = withTables(schedules, later, most);
            if (lower.size() == whole.size()) {
                whole = std::move(lower);
                break;
            }
        }
        pages_ = std::move(whole);
    }

    /// The pages so far with the findings over the whole width, then the schedules in columns.
    std::vector<Sketch> withTables(const std::vector<Table>& schedules,
                                   const Rect& later,
                                   double most) const {
        auto pages = pages_;
        Flow flow(pages, plan_.rest, {area_});
        if (!plan_.details) {
            flow.addRegions(1, {later});
        }
        if (hasOpen(*subject_.findings) || subject_.findings->empty()) {
            setTable(flow, openFindingTable(*subject_.built, *subject_.findings), subject_.sizes);
        }
        setTable(flow, metTable(*subject_.built, *subject_.findings), subject_.sizes);
        const auto divider = [&](const Rect& rect) {
            return columnsOf({rect.x, rect.y, rect.width, std::min(rect.height, most)},
                             subject_.sizes);
        };
        flow.divide(divider, kWorthTables);
        for (const auto& table : schedules) {
            setTable(flow, table, subject_.sizes);
        }
        return pages;
    }

    /// Height of the tallest schedule: no column lower than it parts one.
    double tallest(const std::vector<Table>& schedules) const {
        const double width = columnsOf(area_, subject_.sizes).front().width;
        double most = kWorthTables;
        for (const auto& table : schedules) {
            most = std::max(most, tableHeight(table, width, subject_.sizes, metrics_) + 1.0);
        }
        return most;
    }

    /// Sets small tables into the nooks of the first page and returns the others, in order.
    std::vector<Table> schedulesLeft() {
        const auto& built = *subject_.built;
        std::vector<Table> left{conductorTable(built), entryTable(built), blockTable(built)};
        std::vector<Table> small{gutterTable(built), cautionTable()};
        for (auto nook : plan_.nooks) {
            for (auto table = small.begin(); table != small.end();) {
                table = fillNook(nook, *table) ? small.erase(table) : table + 1;
            }
        }
        std::move(small.begin(), small.end(), std::back_inserter(left));
        return left;
    }

    /// Sets the table if it fits, and takes its room from the nook.
    bool fillNook(Rect& nook, const Table& table) {
        const double height = tableHeight(table, nook.width, subject_.sizes, metrics_);
        if (nook.width < kNookEms * subject_.sizes.body || height > nook.height) {
            return false;
        }
        Flow flow(pages_, {nook}, {area_});
        setTable(flow, table, subject_.sizes);
        nook.y += height + kColumnGap;
        nook.height -= height + kColumnGap;
        return true;
    }

    /// The top view too where the first page has no room for it. Returns what is left of the page.
    Rect drawDetailsOnSecondPage() {
        pages_.emplace_back(metrics_);
        Rect room = area_;
        if (plan_.shown == LongViews::Shown::frontAndProfile) {
            const LongViews top(
                subject_, plan_.scale, area_.width, metrics_, LongViews::Shown::top);
            top.draw(pages_[1], {area_.x, area_.y}, top.height());
            room = below(area_.y + top.height() + kColumnGap);
        }
        secondDetails_ = planDetails(
            subject_, details_, paper_, kLeastDetail * plan_.scale.ratio, room, metrics_);
        if (!secondDetails_) {
            return room;
        }
        drawDetails(pages_[1], subject_, details_, *secondDetails_);
        return below(secondDetails_->used.bottom() + kColumnGap);
    }

    Rect below(double y) const { return {area_.x, y, area_.width, area_.bottom() - y}; }

    std::vector<Drawing> finish() {
        std::vector<Drawing> drawings;
        const auto& layout = subject_.layout();
        const auto count = pages_.size();
        for (std::size_t i = 0; i < count; ++i) {
            const TitleBlock block{
                nameOfPage(i), scaleOfPage(i), tallyText(*subject_.findings), i + 1, count};
            drawTitleBlock(pages_[i], layout, block, size_, subject_.sizes);
            drawings.push_back(std::move(pages_[i]).finish(size_, layout.title));
        }
        return drawings;
    }

    /// Whether the second page has views too.
    bool hasMoreViews(std::size_t page) const { return page == 1 && secondDetails_; }

    std::string nameOfPage(std::size_t page) const {
        return page == 0 ? "Gutter layout" : hasMoreViews(page) ? "More views" : "Schedules";
    }

    std::string scaleOfPage(std::size_t page) const {
        if (page > 0 && !hasMoreViews(page)) {
            return "–";
        }
        const auto& details = page == 0 ? plan_.details : secondDetails_;
        const bool longViews = page == 0 || plan_.shown == LongViews::Shown::frontAndProfile;
        std::string sections = details ? std::string(details->scale.text) : "";
        if (!longViews) {
            return sections;
        }
        const bool differ = details && details->scale.ratio != plan_.scale.ratio;
        return std::string(plan_.scale.text) + (differ ? ", sections " + sections : "");
    }

    Subject subject_;
    std::vector<Detail> details_;
    Paper paper_;
    Rect size_;
    Rect area_;
    const TextMetrics& metrics_;
    SheetPlan plan_;
    std::optional<DetailPlan> secondDetails_;  ///< those the first page has no room for
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
