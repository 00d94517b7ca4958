#include "drawing/long_views.h"

#include <algorithm>

#include "drawing/gutter_view.h"
#include "drawing/marks.h"
#include "drawing/tags.h"

namespace gw::drawing {
namespace {

using layout::Wall;

constexpr double kStubBand = kWall + kStub + 1.8;  // mm: raceway ends and section marks
constexpr double kChart = 24.0;                    // mm, the least height of the fill profile
constexpr double kChartMost = 45.0;

Ruler rulerOf(const Scale& scale, double width, double left) {
    return {scale.mmPerInch(), -left, width - left};
}

/// Room at the left: overall heights, the chart's numbers, captions of running dimensions, and the
/// raceways of the end wall with theirs.
double leftMargin(const Subject& subject) {
    const double band = dimensionBand(subject.sizes);
    const double names = 8.0 + 2.6 * band;
    return subject.hasEntries(Wall::left) ? kStubBand + 1.5 * band + names : 4.0 + 2.2 * band + 4.0;
}

double rightMargin(const Subject& subject) {
    const double band = dimensionBand(subject.sizes);
    const bool depths = subject.hasEntries(Wall::top) || subject.hasEntries(Wall::bottom);
    const double own = subject.hasEntries(Wall::right) ? kStubBand + 8.0 + 1.6 * band : 3.0;
    return std::max(own, depths ? 3.0 + 2.2 * band : 3.0);
}

}  // namespace

LongViews::LongViews(const Subject& subject,
                     const Scale& scale,
                     double width,
                     const TextMetrics& metrics)
    : subject_(subject),
      scale_(scale),
      metrics_(&metrics),
      ruler_(rulerOf(scale, width, leftMargin(subject))),
      backLabels_(labelsOf(subject, {Wall::back}, scale.mmPerInch()),
                  ruler_.low,
                  ruler_.high,
                  subject.sizes,
                  metrics),
      aboveLabels_(labelsOf(subject, {Wall::top, Wall::left, Wall::right}, scale.mmPerInch()),
                   ruler_.low,
                   ruler_.high,
                   subject.sizes,
                   metrics),
      belowLabels_(labelsOf(subject, {Wall::bottom}, scale.mmPerInch()),
                   ruler_.low,
                   ruler_.high,
                   subject.sizes,
                   metrics) {}

double LongViews::left() const {
    return leftMargin(subject_);
}
double LongViews::right() const {
    return rightMargin(subject_);
}

double LongViews::width() const {
    return left() + subject_.inside().x * scale_.mmPerInch() + right();
}

double LongViews::runningBand(const std::vector<Wall>& walls) const {
    const auto places = entryPlaces(subject_, walls, 0);
    if (places.empty()) {
        return 0.0;
    }
    const auto running = runningOf(places, subject_, 0.0, scale_.mmPerInch());
    return runningDepth(running, subject_.sizes, *metrics_) + 2.2;
}

std::vector<double> LongViews::blockPlaces() const {
    std::vector<double> places;
    for (const auto& block : subject_.built->blocks) {
        places.push_back(block.body.least.x);
    }
    std::sort(places.begin(), places.end());
    places.erase(
        std::unique(
            places.begin(), places.end(), [](double a, double b) { return b - a < 1.0 / 64; }),
        places.end());
    return places;
}

double LongViews::blockBand() const {
    const auto places = blockPlaces();
    if (places.empty()) {
        return 0.0;
    }
    const auto running = runningOf(places, subject_, 0.0, scale_.mmPerInch());
    return runningDepth(running, subject_.sizes, *metrics_) + 2.2;
}

LongViews::Bands LongViews::topBands() const {
    const bool back = subject_.hasEntries(Wall::back);
    return {back ? kStubBand + runningBand({Wall::back}) + backLabels_.height() : kWall + 1.0,
            subject_.inside().z * scale_.mmPerInch(),
            kWall + 1.0};
}

LongViews::Bands LongViews::frontBands() const {
    const double above = kStubBand + runningBand({Wall::top}) + aboveLabels_.height();
    const double below = kStubBand + runningBand({Wall::bottom}) + blockBand() +
                         dimensionBand(subject_.sizes) + belowLabels_.height();
    return {above, subject_.inside().y * scale_.mmPerInch(), below};
}

double LongViews::profileHeight() const {
    return kChart;
}

double LongViews::height() const {
    return topBands().total() + frontBands().total() + profileHeight() +
           3 * viewTitleHeight(subject_.sizes);
}

void LongViews::draw(Sketch& sketch, Point corner, double room) const {
    const double spare = std::max(0.0, room - height());
    const double chart = std::min(kChart + 0.4 * spare, kChartMost);
    const double between = std::min(0.5 * (spare - (chart - kChart)), 10.0);
    const double titles = viewTitleHeight(subject_.sizes);
    double y = corner.y;
    const double x = corner.x + left();
    drawTop(sketch, {x, y + topBands().above});
    y += topBands().total();
    drawViewTitle(sketch, {x, y}, "Top view", std::string(scale_.text), subject_.sizes);
    y += titles + between;
    drawFront(sketch, {x, y + frontBands().above});
    y += frontBands().total();
    drawViewTitle(
        sketch, {x, y}, "Front view, cover off", std::string(scale_.text), subject_.sizes);
    y += titles + between;
    drawChart(sketch, {x, y}, chart);
    drawViewTitle(sketch,
                  {x, y + chart + 0.8},
                  "Fill profile",
                  "same x scale as the front view",
                  subject_.sizes);
}

void LongViews::drawTop(Sketch& sketch, Point corner) const {
    const auto frame = frameAt(geometry::View::top, subject_.inside(), scale_.mmPerInch(), corner);
    const auto interior = interiorOf(frame, subject_.inside());
    drawGutter(sketch, *subject_.built, frame);
    Placer placer(grown(interior, -0.5));
    const MarkedView view{sketch, placer, subject_, frame};
    nameFacingEntries(view);
    nameBlocks(view);
    placeTags(sketch, placer, *subject_.built, frame, {subject_.sizes, true});
    const auto unit = subject_.layout().displayUnit;
    dimensionAlongY(sketch,
                    {interior.y,
                     interior.bottom(),
                     interior.x - kWall,
                     interior.x - (subject_.hasEntries(Wall::left) ? kStubBand : kWall) -
                         dimensionBand(subject_.sizes)},
                    dimensionText(subject_.inside().z, unit),
                    subject_.sizes);
    if (subject_.hasEntries(Wall::back)) {
        const double line = drawRunning(sketch,
                                        entryPlaces(subject_, {Wall::back}, 0),
                                        interior,
                                        kStubBand,
                                        true,
                                        "entries, back");
        backLabels_.draw(sketch, interior.x, interior.y - line, true);
    }
    const auto depths = entryPlaces(subject_, {Wall::top, Wall::bottom}, 2);
    if (!depths.empty()) {
        auto running = runningOf(depths, subject_, interior.y, scale_.mmPerInch());
        running.feature = interior.right() + kWall;
        running.line = interior.right() + kWall + 4.0;
        runningAlongY(sketch, running, subject_.sizes);
    }
}

double LongViews::drawRunning(Sketch& sketch,
                              const std::vector<double>& inches,
                              const Rect& interior,
                              double line,
                              bool above,
                              const std::string& caption) const {
    if (inches.empty()) {
        return line;
    }
    auto running = runningOf(inches, subject_, interior.x, scale_.mmPerInch());
    running.feature = above ? interior.y - kWall : interior.bottom() + kWall;
    running.line = above ? interior.y - line : interior.bottom() + line;
    runningAlongX(sketch, running, subject_.sizes);
    Text text;
    text.at = {interior.x - 1.6, running.line};
    text.text = caption;
    text.height = subject_.sizes.body;
    text.face = Face::condensed;
    text.anchorX = AnchorX::right;
    text.anchorY = AnchorY::middle;
    sketch.text(text);
    return line + runningDepth(running, subject_.sizes, *metrics_) + 2.2;
}

void LongViews::drawFront(Sketch& sketch, Point corner) const {
    const auto frame =
        frameAt(geometry::View::front, subject_.inside(), scale_.mmPerInch(), corner);
    const auto interior = interiorOf(frame, subject_.inside());
    drawGutter(sketch, *subject_.built, frame);
    Placer placer(grown(interior, -0.5));
    const MarkedView view{sketch, placer, subject_, frame};
    Placer outside(grown(interior, 60.0));
    markSections({sketch, outside, subject_, frame});
    nameEndEntries({sketch, outside, subject_, frame});
    nameBlocks(view);
    nameFacingEntries(view);
    markFindings(view);
    placeTags(sketch, placer, *subject_.built, frame, {subject_.sizes, false});
    drawFrontDimensions(sketch, interior);
}

void LongViews::drawFrontDimensions(Sketch& sketch, const Rect& interior) const {
    const auto& sizes = subject_.sizes;
    const auto unit = subject_.layout().displayUnit;
    const double above = drawRunning(
        sketch, entryPlaces(subject_, {Wall::top}, 0), interior, kStubBand, true, "entries, top");
    aboveLabels_.draw(sketch, interior.x, interior.y - above, true);
    double below = drawRunning(sketch,
                               entryPlaces(subject_, {Wall::bottom}, 0),
                               interior,
                               kStubBand,
                               false,
                               "entries, bottom");
    below = drawRunning(sketch, blockPlaces(), interior, below, false, "blocks");
    const double overall = below + 0.6 * dimensionBand(sizes);
    dimensionAlongX(
        sketch,
        {interior.x, interior.right(), interior.bottom() + kWall, interior.bottom() + overall},
        dimensionText(subject_.inside().x, unit),
        sizes);
    belowLabels_.draw(sketch, interior.x, interior.bottom() + below + dimensionBand(sizes), false);
    const double stubs = subject_.hasEntries(Wall::left) ? kStubBand + 8.0 : kWall;
    const auto heights = entryPlaces(subject_, {Wall::left}, 1);
    if (!heights.empty()) {
        auto running = runningOf(heights, subject_, interior.bottom(), scale_.mmPerInch(), -1.0);
        running.feature = interior.x - kWall;
        running.line = interior.x - stubs - 1.0;
        runningAlongY(sketch, running, sizes);
    }
    dimensionAlongY(sketch,
                    {interior.y,
                     interior.bottom(),
                     interior.x - kWall,
                     interior.x - stubs - (heights.empty() ? 1.0 : 2.4) * dimensionBand(sizes)},
                    dimensionText(subject_.inside().y, unit),
                    sizes);
    const auto atRight = entryPlaces(subject_, {Wall::right}, 1);
    if (!atRight.empty()) {
        auto running = runningOf(atRight, subject_, interior.bottom(), scale_.mmPerInch(), -1.0);
        running.feature = interior.right() + kWall;
        running.line = interior.right() + kStubBand + 9.0;
        runningAlongY(sketch, running, sizes);
    }
}

void LongViews::drawChart(Sketch& sketch, Point corner, double height) const {
    drawProfile(sketch,
                subject_.built->fill,
                subject_.sections,
                {corner.x, scale_.mmPerInch(), corner.y, height},
                subject_.sizes);
}

double viewTitleHeight(const TextSizes& sizes) {
    return sizes.title * 1.9;
}

void drawViewTitle(Sketch& sketch,
                   Point corner,
                   const std::string& title,
                   const std::string& scale,
                   const TextSizes& sizes) {
    Text text;
    text.at = {corner.x, corner.y + 1.25 * sizes.title};
    text.text = title;
    text.height = sizes.title;
    text.face = Face::bold;
    const auto box = sketch.extentOf(text);
    sketch.text(text);
    Text beside;
    beside.at = {box.right() + 3.0, text.at.y};
    beside.text = scale;
    beside.height = sizes.body;
    sketch.text(beside);
    sketch.line(Stratum::frame,
                {corner.x, box.bottom() + 0.2},
                {box.right(), box.bottom() + 0.2},
                inkPen(kObject));
}

}  // namespace gw::drawing
