#include "drawing/drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gw::drawing {
namespace {

// Of the DejaVu faces, in em. Capitals 0.729, ascenders (b, d, l) 0.760, descenders 0.236.
constexpr double kCapHeight = 0.729;
constexpr double kAscent = 0.760;
constexpr double kDescent = 0.236;
constexpr const char* kGoBelow = "gjpqyQ,;()[]{}|/@_";

double leftOf(AnchorX anchor, double width) {
    switch (anchor) {
        case AnchorX::left:
            return 0.0;
        case AnchorX::middle:
            return -0.5 * width;
        case AnchorX::right:
            return -width;
    }
    return 0.0;
}

double baselineOf(AnchorY anchor, double height) {
    switch (anchor) {
        case AnchorY::baseline:
            return 0.0;
        case AnchorY::middle:
            return 0.5 * kCapHeight * height;
        case AnchorY::top:
            return kCapHeight * height;
        case AnchorY::bottom:
            return -kDescent * height;
    }
    return 0.0;
}

/// Turns a step from the anchor, x right and y down, anticlockwise on the paper.
Point turned(const Point& from, double x, double y, double degrees) {
    if (degrees == 0.0) {
        return {from.x + x, from.y + y};
    }
    const double angle = degrees * std::numbers::pi / 180.0;
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    return {from.x + x * c + y * s, from.y - x * s + y * c};
}

}  // namespace

Point baselineStart(const Text& text, const TextMetrics& metrics) {
    const double width = metrics.width(text.text, text.height, text.face);
    return turned(text.at,
                  leftOf(text.anchorX, width),
                  baselineOf(text.anchorY, text.height),
                  text.rotationDegrees);
}

namespace {

/// The upright rectangle from `above` over the baseline to `below` under it, in em.
Rect boxOf(const Text& text, const TextMetrics& metrics, double above, double below) {
    const double width = metrics.width(text.text, text.height, text.face);
    const double left = leftOf(text.anchorX, width);
    const double base = baselineOf(text.anchorY, text.height);
    const double top = base - above * text.height;
    const double bottom = base + below * text.height;
    const auto at = [&](double x, double y) { return turned(text.at, x, y, text.rotationDegrees); };
    const Point corners[] = {
        at(left, top), at(left + width, top), at(left + width, bottom), at(left, bottom)};
    Rect box{corners[0].x, corners[0].y, 0.0, 0.0};
    for (const auto& corner : corners) {
        box = united(box, {corner.x, corner.y, 0.0, 0.0});
    }
    return box;
}

}  // namespace

Rect extent(const Text& text, const TextMetrics& metrics) {
    return boxOf(text, metrics, kAscent, kDescent);
}

Rect inkOf(const Text& text, const TextMetrics& metrics) {
    const bool below = text.text.find_first_of(kGoBelow) != std::string::npos;
    return boxOf(text, metrics, kAscent, below ? kDescent : 0.0);
}

bool overlap(const Rect& a, const Rect& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

bool holds(const Rect& outer, const Rect& inner) {
    return inner.x >= outer.x && inner.y >= outer.y && inner.right() <= outer.right() &&
           inner.bottom() <= outer.bottom();
}

Rect grown(const Rect& rect, double by) {
    return {rect.x - by, rect.y - by, rect.width + 2.0 * by, rect.height + 2.0 * by};
}

Rect united(const Rect& a, const Rect& b) {
    const double x = std::min(a.x, b.x);
    const double y = std::min(a.y, b.y);
    return {x, y, std::max(a.right(), b.right()) - x, std::max(a.bottom(), b.bottom()) - y};
}

}  // namespace gw::drawing
