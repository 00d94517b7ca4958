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

    /// A label: nothing may cover it, no leader may cross it.
    void take(const Rect& rect) { taken_.push_back(rect); }
    /// A thing that labels must not cover, though a leader may cross or end in it.
    void keepOff(const Rect& rect) { kept_.push_back(rect); }
    /// A leader that later labels must not cover and later leaders must not cross, with the dot of
    /// that radius at its end.
    void takeLeader(Point from, Point foot, double dot) {
        lines_.push_back({from, foot});
        keepOff(grown({foot.x, foot.y, 0, 0}, dot));
    }

    bool isFree(const Rect& rect) const;
    /// Whether no label lies there; a thing that labels keep off may.
    bool isUnlabelled(const Rect& rect) const;
    /// Whether a leader would cross no label and no other leader, its dot touch no label.
    bool isFree(Point from, Point foot, double dot = 0.0) const;

private:
    struct Line {
        Point from;
        Point to;
    };
    Rect bounds_;
    std::vector<Rect> taken_;
    std::vector<Rect> kept_;
    std::vector<Line> lines_;
};

/// Whether the line from a to b has a point in the rectangle.
bool crosses(const Rect& rect, Point from, Point to);

/// Whether two lines have a point in common that is inside both.
bool cross(Point a, Point b, Point c, Point d);

/// Places intervals of the given widths along a line without overlap, in the given order, each as
/// near its wish (of its middle) as the others allow (least sum of squares), inside [low, high].
/// Empty when they do not fit. wishes: ascending.
std::optional<std::vector<double>> spreadOut(std::span<const double> wishes,
                                             std::span<const double> widths,
                                             double gap,
                                             double low,
                                             double high);

}  // namespace gw::drawing
