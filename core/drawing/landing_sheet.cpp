#include "drawing/landing_sheet.h"

#include <algorithm>
#include <cmath>

#include "checks/landing_order.h"
#include "drawing/flow.h"
#include "drawing/gutter_view.h"
#include "drawing/names.h"
#include "drawing/work_paper.h"
#include "drawing/wrap.h"
#include "editing/fields.h"
#include "takeoff/landing_steps.h"

namespace gw::drawing {

using geometry::BuiltLayout;
using geometry::View;

namespace {

constexpr double kGutterColumns = 6.0;     // mm between two columns
constexpr double kAround = kWall + kStub;  // mm: walls and raceways outside the interior
constexpr double kBetweenSteps = 4.0;      // mm below a step
constexpr double kBetween = 3.0;           // mm between top and front view
constexpr double kLargest = 4.0;           // mm an inch: larger tells no more
constexpr double kLeastScale =
    1.1;                          // mm an inch: a page is not parted into more columns than keep it
constexpr double kTallest = 0.5;  // of the page: two rows of steps at least

/// Where each view of a step lies in its cell, and to which scale.
struct Cell {
    double scale = 1.0;  ///< mm an inch
    double head = 0.0;   ///< mm above the views
    double height = 0.0;
};

Cell cellOf(const Vec3& inside, const Rect& column, double page) {
    const double head = 3.0 * workSizes().line() + 1.0;
    const double wide = (column.width - 2.0 * kAround) / inside.x;
    const double high = (page * kTallest - kBetweenSteps - head - 4.0 * kAround - 2.0 * kBetween) /
                        (inside.y + inside.z);
    const double scale = std::min({wide, high, kLargest});
    return {scale, head, head + (inside.y + inside.z) * scale + 4.0 * kAround + 2.0 * kBetween};
}

Text words(Point at, std::string said, Face face) {
    Text text;
    text.at = at;
    text.text = std::move(said);
    text.height = workSizes().body;
    text.face = face;
    text.anchorY = AnchorY::top;
    return text;
}

std::string passesText(const BuiltLayout& built, const layout::Conductor& conductor) {
    std::string text;
    for (const auto& pass : conductor.passes) {
        text += ", uncut through " +
                editing::endText(built.layout, layout::InPort{pass.block, pass.port, {}, {}});
    }
    return text;
}

class Steps {
public:
    Steps(const BuiltLayout& built, checks::LandingOrder order)
        : built_(built), order_(std::move(order)) {}

    std::size_t count() const { return order_.order.size(); }

    void draw(Sketch& sketch, std::size_t step, const Cell& cell, const Rect& room) const {
        drawWords(sketch, step, room);
        const Vec3& inside = built_.gutter().inside;
        const double x = room.x + kAround;
        const double top = room.y + cell.head + kAround;
        const double front = top + inside.z * cell.scale + 2.0 * kAround + kBetween;
        const auto showing = [&](std::size_t conductor) { return showingAt(step, conductor); };
        drawGutter(sketch, built_, frameAt(View::top, inside, cell.scale, {x, top}), showing);
        drawGutter(sketch, built_, frameAt(View::front, inside, cell.scale, {x, front}), showing);
    }

private:
    Showing showingAt(std::size_t step, std::size_t conductor) const {
        const auto begin = order_.order.begin();
        const auto now = begin + static_cast<std::ptrdiff_t>(step);
        if (*now == conductor) {
            return Showing::inked;
        }
        return std::find(begin, now, conductor) != now ? Showing::pale : Showing::hidden;
    }

    void drawWords(Sketch& sketch, std::size_t step, const Rect& room) const {
        const auto sizes = workSizes();
        const auto index = order_.order[step];
        const auto& conductor = built_.layout.conductors[index];
        const std::string head = std::to_string(step + 1) + ". " + tagOf(conductor) + ", " +
                                 conductor.size.text() + ", round " +
                                 std::to_string(order_.rounds[index] + 1);
        const auto fitted = [&](const std::string& text, Face face) {
            return shortened(text, room.width, sizes.body, face, sketch.metrics());
        };
        sketch.text(words({room.x, room.y}, fitted(head, Face::bold), Face::bold));
        double y = room.y + sizes.line();
        for (const auto& text : {"from " + editing::endText(built_.layout, conductor.from) +
                                     passesText(built_, conductor),
                                 "to " + editing::endText(built_.layout, conductor.to)}) {
            sketch.text(words({room.x, y}, fitted(text, Face::regular), Face::regular));
            y += sizes.line();
        }
    }

    const BuiltLayout& built_;  ///< outlives it
    checks::LandingOrder order_;
};

/// Columns of steps across a page.
std::vector<Rect> columnsOf(const Rect& area, const Vec3& inside) {
    const double least = inside.x * kLeastScale + 2.0 * kAround;
    const auto fit = std::floor((area.width + kGutterColumns) / (least + kGutterColumns));
    const double count = std::clamp(fit, 1.0, 3.0);
    const double width = (area.width - (count - 1.0) * kGutterColumns) / count;
    std::vector<Rect> columns;
    for (double i = 0.0; i < count; i += 1.0) {
        columns.push_back({area.x + i * (width + kGutterColumns), area.y, width, area.height});
    }
    return columns;
}

/// Knots and the like, across the page. Returns the height they take.
double drawNotes(Sketch& sketch, const std::vector<std::string>& notes, const Rect& area) {
    const auto sizes = workSizes();
    double y = area.y;
    for (const auto& note : notes) {
        for (const auto& line :
             wrapped(note, area.width, sizes.body, Face::bold, sketch.metrics())) {
            sketch.text(words({area.x, y}, line, Face::bold));
            y += sizes.line();
        }
    }
    return y == area.y ? 0.0 : y - area.y + sizes.line() / 2.0;
}

}  // namespace

std::vector<Drawing> landingSheet(const BuiltLayout& built,
                                  const std::vector<checks::Finding>& findings,
                                  Paper paper,
                                  const TextMetrics& metrics) {
    if (built.conductors.empty()) {
        return {};
    }
    const Rect area = workArea(paper);
    const Steps steps(built, checks::landingOrder(built));
    std::vector<Sketch> pages;
    pages.emplace_back(metrics);
    const double notes = drawNotes(pages.front(), takeoff::landingTable(built).notes, area);
    const auto columns = columnsOf(area, built.gutter().inside);
    const Cell cell = cellOf(built.gutter().inside, columns.front(), area.height);
    auto first = columns;
    for (Rect& column : first) {
        column.y += notes;
        column.height -= notes;
    }
    Flow flow(pages, first, columns);
    for (std::size_t step = 0; step < steps.count(); ++step) {
        flow.ensure(0.0, cell.height);
        steps.draw(flow.sketch(), step, cell, flow.room());
        flow.use(cell.height + kBetweenSteps);
    }
    return finished(
        std::move(pages),
        {paper,
         "Landing order",
         "Black: laid in at this step; grey: there already. Seen from above, and below that "
         "from the front. "
         "Conductors of one round go in in any order. Work de-energised."},
        built.layout,
        findings);
}

}  // namespace gw::drawing
