#include "drawing/sketch.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gw::drawing {
namespace {

constexpr std::array<const char*, 6> kNames = {
    "frame", "walls", "objects", "marks", "dimensions", "text"};
constexpr double kPlateMargin = 0.3;  // mm around the letters

}  // namespace

void Sketch::add(Stratum stratum, Element element) {
    strata_[static_cast<std::size_t>(stratum)].push_back(std::move(element));
}

void Sketch::line(Stratum stratum, Point from, Point to, const Pen& pen) {
    add(stratum, Polyline{{from, to}, false, pen, std::nullopt});
}

void Sketch::chain(Stratum stratum, std::vector<Point> points, const Pen& pen) {
    add(stratum, Polyline{std::move(points), false, pen, std::nullopt});
}

void Sketch::rect(Stratum stratum,
                  const Rect& rect,
                  std::optional<Pen> pen,
                  std::optional<Colour> fill) {
    add(stratum,
        Polyline{{{rect.x, rect.y},
                  {rect.right(), rect.y},
                  {rect.right(), rect.bottom()},
                  {rect.x, rect.bottom()}},
                 true,
                 pen,
                 fill});
}

void Sketch::text(Text text) {
    add(Stratum::text, std::move(text));
}

void Sketch::plate(Text text, Colour fill, std::optional<Pen> pen) {
    rect(Stratum::text, grown(inkOf(text), kPlateMargin), pen, fill);
    add(Stratum::text, std::move(text));
}

Drawing Sketch::finish(const Rect& paper, std::string title) && {
    Drawing drawing{paper.width, paper.height, std::move(title), {}};
    for (std::size_t i = 0; i < strata_.size(); ++i) {
        drawing.layers.push_back({kNames[i], std::move(strata_[i])});
    }
    return drawing;
}

void hatch(Sketch& sketch, Stratum stratum, const Rect& rect, double spacing, const Pen& pen) {
    const double step = spacing * std::numbers::sqrt2;
    // Lines x + y = c, y down: rising to the right. c from the upper left to the lower right
    // corner.
    const double first = std::ceil((rect.x + rect.y) / step) * step;
    for (double c = first; c <= rect.right() + rect.bottom(); c += step) {
        const double x0 = std::max(rect.x, c - rect.bottom());
        const double x1 = std::min(rect.right(), c - rect.y);
        if (x1 - x0 > 1e-6) {
            sketch.line(stratum, {x0, c - x0}, {x1, c - x1}, pen);
        }
    }
}

}  // namespace gw::drawing
