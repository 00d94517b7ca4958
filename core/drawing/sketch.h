#pragma once

#include <array>
#include <string>
#include <vector>

#include "drawing/drawing.h"
#include "drawing/style.h"

namespace gw::drawing {

/// What lies over what on a sheet, lowest first.
enum class Stratum { frame, walls, objects, marks, dimensions, text };

/// A page in the making: elements gathered by stratum. Points in mm on the paper.
class Sketch {
public:
    explicit Sketch(const TextMetrics& metrics) : metrics_(&metrics) {}

    void add(Stratum stratum, Element element);
    void line(Stratum stratum, Point from, Point to, const Pen& pen);
    void chain(Stratum stratum, std::vector<Point> points, const Pen& pen);
    void rect(Stratum stratum,
              const Rect& rect,
              std::optional<Pen> pen,
              std::optional<Colour> fill = std::nullopt);
    /// Text always lies on top.
    void text(Text text);
    /// Text on a small plate that hides what is under it.
    void plate(Text text, Colour fill = kPaper, std::optional<Pen> pen = std::nullopt);

    const TextMetrics& metrics() const { return *metrics_; }
    Rect extentOf(const Text& text) const { return extent(text, *metrics_); }
    Rect inkOf(const Text& text) const { return drawing::inkOf(text, *metrics_); }
    Drawing finish(const Rect& paper, std::string title) &&;

private:
    const TextMetrics* metrics_;  ///< outlives the sketch
    std::array<std::vector<Element>, 6> strata_;
};

/// Parallel 45 degree lines over a rectangle, `spacing` apart measured square to them.
void hatch(Sketch& sketch, Stratum stratum, const Rect& rect, double spacing, const Pen& pen);

}  // namespace gw::drawing
