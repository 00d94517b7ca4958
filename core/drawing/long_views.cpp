#include "drawing/long_views.h"

#include <algorithm>

#include "drawing/gutter_view.h"
#include "drawing/marks.h"
#include "drawing/tags.h"

namespace gw::drawing {
namespace {

using layout::Wall;

constexpr double kStubBand = kWall + kStub + 1.8;  // mm: raceway ends and section marks
constexpr double kRunningGap = 2.2;                // mm beyond running numbers
constexpr double kChartEms = 8.8;                  // least height of the fill profile, in body text
constexpr double kChartMostEms = 18.0;
constexpr double kBelowTitle = 1.5;    // mm between a view's title and labels under it
constexpr double kBetweenMost = 14.0;  // mm of white space more between two views

/// Room at the left: captions, the chart's numbers, the overall heights, raceways of the end wall.
double leftMargin(const Subject& subject) {
    const double own = 9.5 * subject.sizes.body;
    const bool both = subject.hasEntries(Wall::left) && subject.hasEntries(Wall::right);
    const double labels =
        EndLabels(subject, Wall::left).depth() + (both ? dimensionBand(subject.sizes) + 2.0 : 0.0);
    return std::max(own, labels);
}

double rightMargin(const Subject& subject) {
    const bool depths = subject.hasEntries(Wall::top) || subject.hasEntries(Wall::bottom);
    const double numbers = depths ? kWall + 8.4 + 4.6 * subject.sizes.body : 3.0;
    const bool height = subject.hasEntries(Wall::left) && !subject.hasEntries(Wall::right);
    const double overall = height ? kWall + dimensionBand(subject.sizes) + 1.0 : 0.0;
    return std::max({numbers, overall, EndLabels(subject, Wall::right).depth()});
}

Ruler rulerOf(const Subject& subject, const Scale& scale, double width) {
    const double own =
        leftMargin(subject) + subject.inside().x * scale.mmPerInch() + rightMargin(subject);
    const double left = leftMargin(subject) + 0.5 * std::max(0.0, width - own);
    return {scale.mmPerInch(), -left, width - left};
}

EntryLabels sideLabels(const Subject& subject,
                       Wall wall,
                       const Ruler& ruler,
                       const TextMetrics& metrics) {
    return {
        labelsOf(subject, wall, ruler.mmPerInch), ruler.low, ruler.high, subject.sizes, metrics};
}

/// Left ends of the blocks, each once, ascending.
std::vector<double> blockPlaces(const Subject& subject) {
    std::vector<double> places;
    for (const auto& block : subject.built->blocks) {
        places.push_back(block.body.least.x);
    }
    std::sort(places.begin(), places.end());
    places.erase(
        std::unique(
            places.begin(), places.end(), [](double a, double b) { return b - a < 1.0 / 64; }),
        places.end());
    return places;
}

std::string captionOf(Wall wall) {
    return "entries, " + std::string(layout::wallText(wall));
}

}  // namespace

LongViews::LongViews(const Subject& subject,
                     const Scale& scale,
                     double width,
                     const TextMetrics& metrics,
                     Shown shown)
    : subject_(subject),
      scale_(scale),
      metrics_(&metrics),
      shown_(shown),
      ruler_(rulerOf(subject, scale, width)),
      leftLabels_(subject, Wall::left),
      rightLabels_(subject, Wall::right),
      backLabels_(sideLabels(subject, Wall::back, ruler_, metrics)),
      aboveLabels_(sideLabels(subject, Wall::top, ruler_, metrics)),
      belowLabels_(sideLabels(subject, Wall::bottom, ruler_, metrics)) {}

double LongViews::left() const {
    return leftMargin(subject_);
}
double LongViews::right() const {
    return rightMargin(subject_);
}

double LongViews::width() const {
    return left() + subject_.inside().x * scale_.mmPerInch() + right();
}

double LongViews::runningBand(const std::vector<double>& inches) const {
    if (inches.empty()) {
        return 0.0;
    }
    const auto running = runningOf(inches, subject_, 0.0, scale_.mmPerInch());
    return runningDepth(running, subject_.sizes, *metrics_) + kRunningGap;
}

/// Blocks are dimensioned on the side that has no raceways, above when neither has.
bool LongViews::blocksAbove() const {
    return !subject_.hasEntries(Wall::top);
}

LongViews::Bands LongViews::topBands() const {
    const bool back = subject_.hasEntries(Wall::back);
    return {back ? kStubBand + runningBand(entryPlaces(subject_, {Wall::back}, 0)) +
                       backLabels_.height()
                 : kWall + nameBand(subject_.sizes) + 0.5,
            subject_.inside().z * scale_.mmPerInch(),
            kWall + dimensionBand(subject_.sizes) + 2.0};
}

LongViews::Bands LongViews::frontBands() const {
    const double blocks = runningBand(blockPlaces(subject_));
    const double air = subject_.hasEntries(Wall::top) && hasTop() ? kBelowTitle : 0.0;
    const double above = air + kStubBand + runningBand(entryPlaces(subject_, {Wall::top}, 0)) +
                         aboveLabels_.height() + (blocksAbove() ? blocks : 0.0);
    const double below = kStubBand + runningBand(entryPlaces(subject_, {Wall::bottom}, 0)) +
                         belowLabels_.height() + (blocksAbove() ? 0.0 : blocks);
    return {above, subject_.inside().y * scale_.mmPerInch(), below};
}

double LongViews::height() const {
    const double title = viewTitleHeight(subject_.sizes);
    const double top = hasTop() ? topBands().total() + title : 0.0;
    const double front = frontBands().total() + kChartEms * subject_.sizes.body + 2 * title;
    return top + (hasFront() ? front : 0.0);
}

double LongViews::mostHeight() const {
    const double chart = (kChartMostEms - kChartEms) * subject_.sizes.body;
    return height() + (hasFront() ? chart : 0.0) + 2 * kBetweenMost;
}

/// The ruler lies, so a gutter that runs up the wall is drawn lying too: said with the scale.
std::string LongViews::scaleAndAttitude() const {
    const bool lies = subject_.layout().gutter.orientation == layout::Orientation::horizontal;
    return std::string(scale_.text) +
           (lies ? "" : "; the gutter runs vertically, and is drawn lying");
}

void LongViews::draw(Sketch& sketch, Point corner, double room) const {
    const double spare = std::max(0.0, room - height());
    const double least = kChartEms * subject_.sizes.body;
    const double chart = std::min(least + 0.4 * spare, kChartMostEms * subject_.sizes.body);
    const double between = std::min(0.5 * (spare - (chart - least)), kBetweenMost);
    const double titles = viewTitleHeight(subject_.sizes);
    const std::string scale = scaleAndAttitude();
    const double x = corner.x - ruler_.low;
    double y = corner.y;
    if (hasTop()) {
        drawTop(sketch, {x, y + topBands().above});
        y += topBands().total();
        drawViewTitle(sketch, {x, y}, "Top view", scale, subject_.sizes);
        y += titles + between;
    }
    if (hasFront()) {
        drawFront(sketch, {x, y + frontBands().above});
        y += frontBands().total();
        drawViewTitle(sketch, {x, y}, "Front view, cover off", scale, subject_.sizes);
        drawChart(sketch, {x, y + titles + between}, chart);
    }
}

void LongViews::drawChart(Sketch& sketch, Point corner, double height) const {
    drawProfile(sketch,
                subject_.built->fill,
                subject_.sections,
                {corner.x, scale_.mmPerInch(), corner.y, height},
                subject_.sizes);
    drawViewTitle(sketch,
                  {corner.x, corner.y + height + 0.8},
                  "Fill profile",
                  "lengths as in the front view; larger scale below 25 %",
                  subject_.sizes);
}

void LongViews::drawTop(Sketch& sketch, Point corner) const {
    const auto frame = frameAt(geometry::View::top, subject_.inside(), scale_.mmPerInch(), corner);
    const auto interior = interiorOf(frame, subject_.inside());
    drawGutter(sketch, *subject_.built, frame);
    Placer placer(roomForLabels(interior, subject_.sizes));
    const auto legs = legsOf(*subject_.built, frame);
    const MarkedView view{sketch, placer, subject_, frame, legs};
    keepLabelsOff(view);
    nameBlocks(view);
    nameFacingEntries(view);
    placer.keepOff(bandAbove(interior, subject_.sizes));
    placeTags(sketch, placer, *subject_.built, frame, {subject_.sizes, true});
    drawTopDimensions(sketch, interior);
}

void LongViews::drawTopDimensions(Sketch& sketch, const Rect& interior) const {
    const auto unit = subject_.layout().displayUnit;
    const double band = dimensionBand(subject_.sizes);
    const double stub = subject_.hasEntries(Wall::left) ? kStubBand : kWall;
    dimensionAlongY(sketch,
                    {interior.y, interior.bottom(), interior.x - kWall, interior.x - stub - band},
                    dimensionText(subject_.inside().z, unit),
                    subject_.sizes);
    dimensionAlongX(
        sketch,
        {interior.x, interior.right(), interior.bottom() + kWall, interior.bottom() + kWall + band},
        dimensionText(subject_.inside().x, unit),
        subject_.sizes);
    drawSide(sketch, interior, Wall::back, backLabels_);
    const auto depths = entryPlaces(subject_, {Wall::top, Wall::bottom}, 2);
    if (!depths.empty()) {
        auto running = runningOf(depths, subject_, interior.y, scale_.mmPerInch());
        running.feature = interior.right() + (subject_.hasEntries(Wall::right) ? kStubBand : kWall);
        running.line = running.feature + 4.0;
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
    return line + runningDepth(running, subject_.sizes, *metrics_) + kRunningGap;
}

/// Running dimensions of the entries of a wall along the gutter, and their labels beyond.
void LongViews::drawSide(Sketch& sketch,
                         const Rect& interior,
                         Wall wall,
                         const EntryLabels& labels) const {
    if (!subject_.hasEntries(wall)) {
        return;
    }
    const bool above = wall != Wall::bottom;
    const double from = kStubBand + 1.2;
    double line = kStubBand;
    line = drawRunning(
        sketch, entryPlaces(subject_, {wall}, 0), interior, line, above, captionOf(wall));
    if (!above && !blocksAbove()) {
        line = drawRunning(sketch, blockPlaces(subject_), interior, line, above, "blocks");
    }
    labels.draw(sketch,
                interior.x,
                above ? interior.y - line : interior.bottom() + line,
                above ? interior.y - from : interior.bottom() + from,
                above);
}

void LongViews::drawFront(Sketch& sketch, Point corner) const {
    const auto frame =
        frameAt(geometry::View::front, subject_.inside(), scale_.mmPerInch(), corner);
    const auto interior = interiorOf(frame, subject_.inside());
    drawGutter(sketch, *subject_.built, frame);
    Placer placer(roomForLabels(interior, subject_.sizes));
    keepOffExtensions(placer, interior);
    const auto legs = legsOf(*subject_.built, frame);
    const MarkedView view{sketch, placer, subject_, frame, legs};
    keepLabelsOff(view);
    markSections(view);
    nameBlocks(view);
    nameFacingEntries(view);
    markFindings(view);
    placer.keepOff(bandAbove(interior, subject_.sizes));
    placeTags(sketch, placer, *subject_.built, frame, {subject_.sizes, false});
    drawFrontDimensions(sketch, frame);
}

/// Names above the wall stand clear of the lines that go up from it.
void LongViews::keepOffExtensions(Placer& placer, const Rect& interior) const {
    auto places = entryPlaces(subject_, {Wall::top}, 0);
    if (blocksAbove()) {
        const auto blocks = blockPlaces(subject_);
        places.insert(places.end(), blocks.begin(), blocks.end());
        places.push_back(0.0);
    }
    const double high = kWall + nameBand(subject_.sizes);
    for (const double place : places) {
        const double x = interior.x + place * scale_.mmPerInch();
        placer.keepOff({x - 0.3, interior.y - high, 0.6, high - kWall});
    }
}

void LongViews::drawFrontDimensions(Sketch& sketch, const ViewFrame& frame) const {
    const auto interior = interiorOf(frame, subject_.inside());
    drawSide(sketch, interior, Wall::top, aboveLabels_);
    drawSide(sketch, interior, Wall::bottom, belowLabels_);
    if (blocksAbove()) {
        drawRunning(sketch, blockPlaces(subject_), interior, kStubBand, true, "blocks");
    } else if (!subject_.hasEntries(Wall::bottom)) {
        drawRunning(sketch, blockPlaces(subject_), interior, kStubBand, false, "blocks");
    }
    leftLabels_.draw(sketch, frame);
    rightLabels_.draw(sketch, frame);
    drawOverallHeight(sketch, interior);
}

/// At the end that has no raceways, at the left when neither has, beyond the labels when both have.
void LongViews::drawOverallHeight(Sketch& sketch, const Rect& interior) const {
    const double band = dimensionBand(subject_.sizes);
    const bool atRight = subject_.hasEntries(Wall::left) && !subject_.hasEntries(Wall::right);
    const double feature = atRight ? interior.right() + kWall : interior.x - kWall;
    const double line =
        atRight ? feature + band : interior.x - std::max(kWall + band, leftLabels_.depth() + band);
    dimensionAlongY(sketch,
                    {interior.y, interior.bottom(), feature, line},
                    dimensionText(subject_.inside().y, subject_.layout().displayUnit),
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
    if (!scale.empty()) {
        sketch.text(beside);
    }
    sketch.line(Stratum::frame,
                {corner.x, box.bottom() + 0.2},
                {box.right(), box.bottom() + 0.2},
                inkPen(kObject));
}

}  // namespace gw::drawing
