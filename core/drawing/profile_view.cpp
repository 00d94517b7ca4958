#include "drawing/profile_view.h"

#include <algorithm>
#include <cmath>

namespace gw::drawing {
namespace {

constexpr double kConductorLimit = 20.0;  // NFPA 70 366.22(A), 376.22(A)
constexpr double kSpliceLimit = 75.0;     // NFPA 70 366.56(A), 376.56(B)(1)
constexpr Colour kConductorFill{204, 214, 226};
constexpr Colour kFaint{205, 205, 205};
constexpr double kKnee = 25.0;        // percent: below it the axis is drawn larger
constexpr double kBelowKnee = 0.68;   // of the axis' height
constexpr double kPeakRadius = 0.55;  // mm

class Chart {
public:
    Chart(const geometry::FillProfile& fill, const ProfilePlace& place)
        : fill_(fill), place_(place), top_(profileTop(fill)) {}

    double x(double inches) const { return place_.left + inches * place_.mmPerInch; }
    /// Two straight scales that meet at the knee.
    double y(double percent) const {
        const double part =
            percent <= kKnee ? kBelowKnee * percent / kKnee
                             : kBelowKnee + (1.0 - kBelowKnee) * (percent - kKnee) / (top_ - kKnee);
        return place_.top + place_.height * (1.0 - part);
    }
    double percent(double area) const { return 100.0 * area / fill_.interior; }
    double right() const { return x(fill_.length); }
    double end(std::size_t slice) const {
        return slice + 1 < fill_.slices.size() ? fill_.slices[slice + 1].from : fill_.length;
    }
    Rect box() const { return {place_.left, place_.top, right() - place_.left, place_.height}; }
    const geometry::FillProfile& fill() const { return fill_; }
    double top() const { return top_; }

private:
    const geometry::FillProfile& fill_;
    const ProfilePlace& place_;
    double top_;
};

Text label(Point at, std::string text, const TextSizes& sizes) {
    Text result;
    result.at = at;
    result.text = std::move(text);
    result.height = sizes.body;
    result.face = Face::condensed;
    return result;
}

/// The step line of one area over the whole length, from the left end to the right.
template <class AreaOf>
std::vector<Point> steps(const Chart& chart, AreaOf areaOf) {
    std::vector<Point> points;
    const auto& slices = chart.fill().slices;
    for (std::size_t i = 0; i < slices.size(); ++i) {
        const double y = chart.y(chart.percent(areaOf(slices[i])));
        points.push_back({chart.x(slices[i].from), y});
        points.push_back({chart.x(chart.end(i)), y});
    }
    return points;
}

void drawConductors(Sketch& sketch, const Chart& chart) {
    auto line = steps(chart, [](const geometry::FillSlice& slice) { return slice.conductors; });
    auto area = line;
    area.push_back({chart.right(), chart.y(0)});
    area.push_back({chart.x(0), chart.y(0)});
    sketch.add(Stratum::walls, Polyline{std::move(area), true, std::nullopt, kConductorFill});
    sketch.chain(Stratum::objects, std::move(line), inkPen(kObject));
}

void drawSplices(Sketch& sketch, const Chart& chart) {
    const auto& slices = chart.fill().slices;
    for (std::size_t i = 0; i < slices.size(); ++i) {
        if (slices[i].blocks <= 0.0) {
            continue;
        }
        const double top = chart.y(chart.percent(slices[i].splice()));
        const Rect bar{chart.x(slices[i].from),
                       top,
                       chart.x(chart.end(i)) - chart.x(slices[i].from),
                       chart.y(0) - top};
        hatch(sketch, Stratum::walls, bar, 1.4, {0.1, kGrey});
    }
    auto line = steps(chart, [](const geometry::FillSlice& slice) {
        return slice.blocks > 0.0 ? slice.splice() : 0.0;
    });
    sketch.chain(Stratum::walls, std::move(line), {kFine, kGrey});
}

void drawTick(Sketch& sketch, const Chart& chart, double percent, const TextSizes& sizes) {
    const double y = chart.y(percent);
    sketch.line(Stratum::frame, {chart.x(0), y}, {chart.right(), y}, {0.1, kFaint});
    sketch.line(Stratum::dimensions, {chart.x(0) - 1.0, y}, {chart.x(0), y}, inkPen(kThin));
    auto text = label({chart.x(0) - 1.6, y}, units::formatDecimal(percent, 0), sizes);
    text.anchorX = AnchorX::right;
    text.anchorY = AnchorY::middle;
    sketch.text(text);
}

/// A sign across both ends of the axis: the scale changes here.
void drawKnee(Sketch& sketch, const Chart& chart) {
    const double y = chart.y(kKnee);
    for (const double x : {chart.x(0), chart.right()}) {
        sketch.add(
            Stratum::dimensions,
            Polyline{
                {{x - 1.2, y + 0.2}, {x + 1.2, y - 1.0}, {x + 1.2, y - 0.2}, {x - 1.2, y + 1.0}},
                true,
                std::nullopt,
                kPaper});
        for (const double shift : {0.0, 0.8}) {
            sketch.line(Stratum::dimensions,
                        {x - 1.2, y + 0.2 + shift},
                        {x + 1.2, y - 1.0 + shift},
                        inkPen(kThin));
        }
    }
}

/// Steps of five below the knee, of 25 above it, each number a line of text from the last.
void drawAxis(Sketch& sketch, const Chart& chart, const TextSizes& sizes) {
    const double room = chart.y(0) - chart.y(5);
    const double step = room >= 1.05 * sizes.body ? 5.0 : 10.0;
    for (double percent = 0.0; percent < kKnee - 1e-9; percent += step) {
        drawTick(sketch, chart, percent, sizes);
    }
    for (double percent = 50.0; percent <= chart.top() + 1e-9; percent += 25.0) {
        drawTick(sketch, chart, percent, sizes);
    }
    auto unit = label({chart.x(0) - 1.6 - 2.4 * sizes.body, chart.y(0) - 0.5 * chart.box().height},
                      "percent",
                      sizes);
    unit.rotationDegrees = 90.0;
    unit.anchorX = AnchorX::middle;
    sketch.text(unit);
    sketch.rect(Stratum::dimensions, chart.box(), inkPen(kThin));
    drawKnee(sketch, chart);
}

void drawLimit(Sketch& sketch,
               const Chart& chart,
               double percent,
               const std::string& name,
               const TextSizes& sizes,
               Placer& placer) {
    const double y = chart.y(percent);
    sketch.line(Stratum::marks, {chart.x(0), y}, {chart.right(), y}, inkPen(kObject, Dash::dashed));
    auto text = label({chart.right() - 2.0, y + 1.0}, name, sizes);
    if (sketch.extentOf(text).width > chart.box().width - 4.0) {
        return;  // a chart that short: the axis names both
    }
    text.anchorX = AnchorX::right;
    text.anchorY = AnchorY::top;
    placer.take(sketch.extentOf(text));
    placer.takeLeader({chart.x(0), y}, {chart.right(), y}, 0.0);
    sketch.plate(text);
}

Point peakOf(const Chart& chart, const geometry::FillProfile::Worst& worst) {
    return {chart.x(0.5 * (worst.from + worst.to)), chart.y(100.0 * worst.fraction)};
}

/// The worst place: a dot on the step line and its value beside it. Nothing where nothing is.
void drawPeak(Sketch& sketch,
              const Chart& chart,
              const geometry::FillProfile::Worst& worst,
              const std::string& name,
              const TextSizes& sizes,
              Placer& placer) {
    if (worst.area <= 0.0) {
        return;
    }
    const auto peak = peakOf(chart, worst);
    sketch.add(Stratum::marks, Circle{peak, kPeakRadius, std::nullopt, kInk});
    auto text = label(peak, units::formatDecimal(100.0 * worst.fraction, 1) + " % " + name, sizes);
    text.face = Face::condensedBold;
    text.anchorX = AnchorX::middle;
    for (const double dy : {-1.6, -4.6, -7.6, -10.6, 4.8, 8.0}) {
        for (const double dx : {0.0, -14.0, 14.0, -28.0, 28.0, -45.0, 45.0}) {
            text.at = {peak.x + dx, peak.y + dy};
            const auto box = sketch.extentOf(text);
            if (!placer.isFree(box)) {
                continue;
            }
            const Point from{std::clamp(peak.x, box.x, box.right()), dy < 0 ? box.bottom() : box.y};
            if (!placer.isFree(from, peak)) {
                continue;
            }
            placer.take(box);
            if (dx != 0.0 || dy != -1.6) {
                sketch.line(Stratum::dimensions, from, peak, inkPen(kThin));
                placer.takeLeader(from, peak, 0.0);
            }
            sketch.plate(text);
            return;
        }
    }
}

void drawMark(Sketch& sketch,
              const Chart& chart,
              const SectionMark& mark,
              const TextSizes& sizes,
              Placer& placer) {
    const double x = chart.x(mark.x);
    sketch.line(
        Stratum::marks, {x, chart.box().y}, {x, chart.box().bottom()}, inkPen(kThin, Dash::chain));
    auto text = label({x + 0.8, chart.y(kKnee) - 1.2}, mark.letter, sizes);
    text.face = Face::condensedBold;
    placer.take(sketch.extentOf(text));
    sketch.plate(text);
}

}  // namespace

double profileTop(const geometry::FillProfile& fill) {
    const double worst =
        std::max(fill.worstConductors().fraction, fill.worstSplice().fraction) * 100.0;
    return std::max(80.0, std::ceil((worst + 5.0) / 10.0) * 10.0);
}

void drawProfile(Sketch& sketch,
                 const geometry::FillProfile& fill,
                 const std::vector<SectionMark>& marks,
                 const ProfilePlace& place,
                 const TextSizes& sizes) {
    const Chart chart(fill, place);
    Placer placer(grown(chart.box(), -0.8));
    drawAxis(sketch, chart, sizes);
    drawSplices(sketch, chart);
    drawConductors(sketch, chart);
    drawLimit(sketch, chart, kSpliceLimit, "limit 75 %, at splices", sizes, placer);
    drawLimit(sketch, chart, kConductorLimit, "limit 20 %, conductors", sizes, placer);
    for (const auto& mark : marks) {
        drawMark(sketch, chart, mark, sizes, placer);
    }
    const auto conductors = fill.worstConductors();
    const auto splice = fill.worstSplice();
    for (const auto& worst : {conductors, splice}) {
        const auto peak = peakOf(chart, worst);
        placer.keepOff(grown({peak.x, peak.y, 0, 0}, kPeakRadius));
    }
    drawPeak(sketch, chart, conductors, "conductors", sizes, placer);
    drawPeak(sketch, chart, splice, "at splices", sizes, placer);
}

double clearPlane(double from, double to, const std::vector<double>& avoid) {
    double best = 0.5 * (from + to);
    double bestRoom = -1.0;
    for (const double t : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}) {
        const double x = from + t * (to - from);
        double room = 1e9;
        for (const double place : avoid) {
            room = std::min(room, std::abs(place - x));
        }
        if (room > bestRoom + 1e-9) {
            bestRoom = room;
            best = x;
        }
    }
    return best;
}

}  // namespace gw::drawing
