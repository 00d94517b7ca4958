#include "drawing/profile_view.h"

#include <algorithm>
#include <cmath>

namespace gw::drawing {
namespace {

constexpr double kConductorLimit = 20.0;  // NFPA 70 366.22(A), 376.22(A)
constexpr double kSpliceLimit = 75.0;     // NFPA 70 366.56(A), 376.56(B)(1)
constexpr Colour kConductorFill{204, 214, 226};

class Chart {
public:
    Chart(const geometry::FillProfile& fill, const ProfilePlace& place)
        : fill_(fill), place_(place), top_(profileTop(fill)) {}

    double x(double inches) const { return place_.left + inches * place_.mmPerInch; }
    double y(double percent) const { return place_.top + place_.height * (1.0 - percent / top_); }
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

void drawAxis(Sketch& sketch, const Chart& chart, const TextSizes& sizes) {
    for (double percent = 0.0; percent <= chart.top() + 1e-9; percent += 20.0) {
        const double y = chart.y(percent);
        sketch.line(Stratum::frame, {chart.x(0), y}, {chart.right(), y}, {0.1, {190, 190, 190}});
        sketch.line(Stratum::dimensions, {chart.x(0) - 1.0, y}, {chart.x(0), y}, inkPen(kThin));
        auto text = label({chart.x(0) - 1.6, y}, units::formatDecimal(percent, 0), sizes);
        text.anchorX = AnchorX::right;
        text.anchorY = AnchorY::middle;
        sketch.text(text);
    }
    auto unit =
        label({chart.x(0) - 1.6 - 3.2 * sizes.body, chart.y(chart.top() / 2)}, "percent", sizes);
    unit.rotationDegrees = 90.0;
    unit.anchorX = AnchorX::middle;
    sketch.text(unit);
    sketch.rect(Stratum::dimensions, chart.box(), inkPen(kThin));
}

void drawLimit(Sketch& sketch,
               const Chart& chart,
               double percent,
               const std::string& name,
               const TextSizes& sizes,
               Placer& placer) {
    const double y = chart.y(percent);
    sketch.line(Stratum::marks, {chart.x(0), y}, {chart.right(), y}, inkPen(kObject, Dash::dashed));
    auto text = label({chart.right() - 1.0, y - 0.5}, name, sizes);
    text.anchorX = AnchorX::right;
    text.anchorY = AnchorY::bottom;
    placer.take(sketch.extentOf(text));
    sketch.plate(text);
}

void drawPeak(Sketch& sketch,
              const Chart& chart,
              const geometry::FillProfile::Worst& worst,
              const std::string& name,
              const TextSizes& sizes,
              Placer& placer) {
    const Point peak{chart.x(0.5 * (worst.from + worst.to)), chart.y(100.0 * worst.fraction)};
    auto text = label(peak, units::formatDecimal(100.0 * worst.fraction, 1) + " % " + name, sizes);
    text.face = Face::condensedBold;
    text.anchorX = AnchorX::middle;
    for (const double dy : {-1.0, -4.0, -7.0, 4.5, 8.0}) {
        for (const double dx : {0.0, -14.0, 14.0, -28.0, 28.0, -45.0, 45.0}) {
            text.at = {peak.x + dx, peak.y + dy};
            const auto box = sketch.extentOf(text);
            if (placer.isFree(box)) {
                placer.take(box);
                if (dx != 0.0 || dy != -1.0) {
                    sketch.line(
                        Stratum::dimensions,
                        {std::clamp(peak.x, box.x, box.right()), dy < 0 ? box.bottom() : box.y},
                        peak,
                        inkPen(kThin));
                }
                sketch.plate(text);
                return;
            }
        }
    }
}

void drawMark(Sketch& sketch, const Chart& chart, const SectionMark& mark) {
    const double x = chart.x(mark.x);
    sketch.line(
        Stratum::marks, {x, chart.box().y}, {x, chart.box().bottom()}, inkPen(kThin, Dash::chain));
}

}  // namespace

double profileTop(const geometry::FillProfile& fill) {
    const double worst =
        std::max(fill.worstConductors().fraction, fill.worstSplice().fraction) * 100.0;
    return std::max(80.0, std::ceil((worst + 5.0) / 20.0) * 20.0);
}

void drawProfile(Sketch& sketch,
                 const geometry::FillProfile& fill,
                 const std::vector<SectionMark>& marks,
                 const ProfilePlace& place,
                 const TextSizes& sizes) {
    const Chart chart(fill, place);
    Placer placer(chart.box());
    drawAxis(sketch, chart, sizes);
    drawSplices(sketch, chart);
    drawConductors(sketch, chart);
    drawLimit(sketch, chart, kSpliceLimit, "75 % at splices", sizes, placer);
    drawLimit(sketch, chart, kConductorLimit, "20 % conductors", sizes, placer);
    for (const auto& mark : marks) {
        drawMark(sketch, chart, mark);
    }
    drawPeak(sketch, chart, fill.worstConductors(), "conductors", sizes, placer);
    if (fill.worstSplice().area > 0.0) {
        drawPeak(sketch, chart, fill.worstSplice(), "at splices", sizes, placer);
    }
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
