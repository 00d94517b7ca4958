#pragma once

#include <optional>
#include <span>
#include <vector>

#include "drawing/drawing.h"

namespace gw::drawing {

/// Keeps labels off each other: remembers what is taken, and finds the first place that is free.
class Placer {
public:
    /// bounds: nothing may leave them.
    explicit Placer(const Rect& bounds) : bounds_(bounds) {}

    void take(const Rect& rect) { taken_.push_back(rect); }
    /// A leader or centre line that later labels must not cover.
    void takeLine(Point from, Point to) { lines_.push_back({from, to}); }

    bool isFree(const Rect& rect) const;
    /// Whether a leader from a to b would cross no label.
    bool isFree(Point from, Point to) const;

private:
    struct Line {
        Point from;
        Point to;
    };
    Rect bounds_;
    std::vector<Rect> taken_;
    std::vector<Line> lines_;
};

/// Whether the line from a to b has a point in the rectangle.
bool crosses(const Rect& rect, Point from, Point to);

/// Places intervals of the given widths along a line without overlap, in the given order, each as
/// near its wish (of its middle) as the others allow (least sum of squares), inside [low, high].
/// Empty when they do not fit. wishes: ascending.
std::optional<std::vector<double>> spreadOut(std::span<const double> wishes,
                                             std::span<const double> widths,
                                             double gap,
                                             double low,
                                             double high);

}  // namespace gw::drawing
