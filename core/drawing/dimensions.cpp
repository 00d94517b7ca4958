#include "drawing/dimensions.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace gw::drawing {
namespace {

constexpr double kGap = 0.8;        // mm between feature and extension line
constexpr double kOvershoot = 1.2;  // mm of extension line beyond the dimension line
constexpr double kTextGap = 0.9;    // mm between line and number
constexpr double kDatumRadius = 0.7;
constexpr double kAside = 0.8;  // mm between an extension line and a number beside it
constexpr double kJog = 2.0;    // mm of extension line bent to a number that had to move

Text number(Point at, const std::string& text, const TextSizes& sizes) {
    Text label;
    label.at = at;
    label.text = text;
    label.height = sizes.body;
    label.face = Face::condensed;
    return label;
}

/// Along is the dimension's direction, across square to it.
class Axis {
public:
    explicit Axis(bool alongX) : alongX_(alongX) {}
    Point at(double along, double across) const {
        return alongX_ ? Point{along, across} : Point{across, along};
    }

private:
    bool alongX_;
};

void extensionLine(Sketch& sketch, const Axis& axis, double along, double feature, double line) {
    const double away = line > feature ? 1.0 : -1.0;
    sketch.line(Stratum::dimensions,
                axis.at(along, feature + away * kGap),
                axis.at(along, line + away * kOvershoot),
                inkPen(kThin));
}

void spanLines(Sketch& sketch, const Axis& axis, const Span& span) {
    extensionLine(sketch, axis, span.from, span.feature, span.line);
    extensionLine(sketch, axis, span.to, span.feature, span.line);
    sketch.line(Stratum::dimensions,
                axis.at(span.from, span.line),
                axis.at(span.to, span.line),
                inkPen(kThin));
    const auto head = axis.at(1.0, 0.0);
    arrowhead(sketch, axis.at(span.from, span.line), -head.x, -head.y);
    arrowhead(sketch, axis.at(span.to, span.line), head.x, head.y);
}

enum class Beside { left, right };

/// Numbers lying flat, each left of its extension line where it fits there, else right of it.
/// Empty where one fits on neither side.
std::optional<std::vector<Beside>> flatPlaces(const Running& running,
                                              const TextSizes& sizes,
                                              const TextMetrics& metrics) {
    std::vector<Beside> places;
    double free = running.datum + kDatumRadius;
    for (std::size_t i = 0; i < running.at.size(); ++i) {
        const double width =
            metrics.width(running.texts[i], sizes.body, Face::condensed) + 2 * kAside;
        const bool last = i + 1 == running.at.size();
        if (running.at[i] - free >= width) {
            places.push_back(Beside::left);
            free = running.at[i];
        } else if (last || running.at[i + 1] - running.at[i] >= width) {
            places.push_back(Beside::right);
            free = running.at[i] + width;
        } else {
            return std::nullopt;
        }
    }
    return places;
}

void runningLines(Sketch& sketch, const Axis& axis, const Running& running) {
    extensionLine(sketch, axis, running.datum, running.feature, running.line);
    sketch.add(Stratum::dimensions,
               Circle{axis.at(running.datum, running.line), kDatumRadius, inkPen(kThin), kPaper});
    for (std::size_t i = 0; i < running.at.size(); ++i) {
        const double at = running.at[i];
        extensionLine(sketch, axis, at, running.feature, running.line);
        const double from = i == 0 ? running.datum : running.at[i - 1];
        const double sign = at >= from ? 1.0 : -1.0;
        sketch.line(Stratum::dimensions,
                    axis.at(i == 0 ? from + sign * kDatumRadius : from, running.line),
                    axis.at(at, running.line),
                    inkPen(kThin));
        const auto head = axis.at(sign, 0.0);
        arrowhead(sketch, axis.at(at, running.line), head.x, head.y, 1.6);
    }
}

/// Where numbers standing upright go so that none touch: at their lines, nudged apart.
std::vector<double> nudged(const std::vector<double>& at, double least) {
    std::vector<double> places = at;
    for (std::size_t i = 1; i < places.size(); ++i) {
        places[i] = std::max(places[i], places[i - 1] + least);
    }
    return places;
}

}  // namespace

std::string dimensionText(double inches, units::LengthUnit unit) {
    const auto length = units::Inches::of(inches);
    if (unit == units::LengthUnit::inch) {
        return units::formatInchMark(length);
    }
    return units::formatDecimal(std::round(length.mm() * 10.0) / 10.0, 1);
}

double dimensionBand(const TextSizes& sizes) {
    return sizes.body + 3.0;
}

void arrowhead(Sketch& sketch, Point tip, double dx, double dy, double length) {
    const double half = length * 0.19;
    const Point back{tip.x - dx * length, tip.y - dy * length};
    sketch.add(Stratum::dimensions,
               Polyline{{tip,
                         {back.x - dy * half, back.y + dx * half},
                         {back.x + dy * half, back.y - dx * half}},
                        true,
                        std::nullopt,
                        kInk});
}

void dimensionAlongX(Sketch& sketch,
                     const Span& span,
                     const std::string& text,
                     const TextSizes& sizes) {
    spanLines(sketch, Axis(true), span);
    auto label = number({0.5 * (span.from + span.to), span.line - kTextGap}, text, sizes);
    label.anchorX = AnchorX::middle;
    sketch.plate(label);
}

void dimensionAlongY(Sketch& sketch,
                     const Span& span,
                     const std::string& text,
                     const TextSizes& sizes) {
    spanLines(sketch, Axis(false), span);
    auto label = number({span.line - kTextGap, 0.5 * (span.from + span.to)}, text, sizes);
    label.anchorX = AnchorX::middle;
    label.rotationDegrees = 90.0;
    sketch.plate(label);
}

double runningDepth(const Running& running, const TextSizes& sizes, const TextMetrics& metrics) {
    if (flatPlaces(running, sizes, metrics)) {
        return sizes.body + kTextGap;
    }
    double widest = 0.0;
    for (const auto& text : running.texts) {
        widest = std::max(widest, metrics.width(text, sizes.body, Face::condensed));
    }
    return widest + kOvershoot + kJog + kTextGap;
}

namespace {

void flatNumbers(Sketch& sketch,
                 const Running& running,
                 const std::vector<Beside>& places,
                 double away,
                 const TextSizes& sizes) {
    for (std::size_t i = 0; i < places.size(); ++i) {
        const bool left = places[i] == Beside::left;
        auto label =
            number({running.at[i] + (left ? -kAside : kAside), running.line + away * kTextGap},
                   running.texts[i],
                   sizes);
        label.anchorX = left ? AnchorX::right : AnchorX::left;
        label.anchorY = away > 0 ? AnchorY::top : AnchorY::baseline;
        sketch.plate(label);
    }
}

void uprightNumbers(Sketch& sketch, const Running& running, double away, const TextSizes& sizes) {
    const auto places = nudged(running.at, sizes.body + 0.4);
    const double end = running.line + away * kOvershoot;
    for (std::size_t i = 0; i < places.size(); ++i) {
        sketch.chain(Stratum::dimensions,
                     {{running.at[i], end}, {places[i], end + away * kJog}},
                     inkPen(kThin));
        auto label = number({places[i], end + away * (kJog + kTextGap)}, running.texts[i], sizes);
        label.anchorX = away > 0 ? AnchorX::right : AnchorX::left;
        label.anchorY = AnchorY::middle;
        label.rotationDegrees = 90.0;
        sketch.plate(label);
    }
}

}  // namespace

void runningAlongX(Sketch& sketch, const Running& running, const TextSizes& sizes) {
    runningLines(sketch, Axis(true), running);
    const double away = (running.line > running.feature) == running.textsAway ? 1.0 : -1.0;
    if (const auto places = flatPlaces(running, sizes, sketch.metrics())) {
        flatNumbers(sketch, running, *places, away, sizes);
    } else {
        uprightNumbers(sketch, running, away, sizes);
    }
}

void runningAlongY(Sketch& sketch, const Running& running, const TextSizes& sizes) {
    runningLines(sketch, Axis(false), running);
    const double away = running.line > running.feature ? 1.0 : -1.0;
    // Along y the numbers lie flat beyond their lines; they need only be a line of text apart.
    const bool down = !running.at.empty() && running.at.back() > running.datum;
    std::vector<double> distances;
    for (const double at : running.at) {
        distances.push_back(down ? at : -at);
    }
    const auto places = nudged(distances, sizes.body + 0.3);
    const double end = running.line + away * kOvershoot;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double y = down ? places[i] : -places[i];
        const bool moved = std::abs(y - running.at[i]) > 1e-6;
        const double x = end + away * (kJog + kTextGap);
        sketch.chain(Stratum::dimensions,
                     {{end, running.at[i]}, {end + away * kJog, moved ? y : running.at[i]}},
                     inkPen(kThin));
        auto label = number({x, y}, running.texts[i], sizes);
        label.anchorX = away > 0 ? AnchorX::left : AnchorX::right;
        label.anchorY = AnchorY::middle;
        sketch.plate(label);
    }
}

}  // namespace gw::drawing
