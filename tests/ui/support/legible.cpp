#include "ui/support/legible.h"

#include <algorithm>
#include <cmath>

#include "drawing/placer.h"

namespace gw::test {

using drawing::Drawing;
using drawing::Rect;
using drawing::Text;

namespace {

/// Whether an element's ink runs through a rectangle, and whether it hides all that is under it.
struct InkUnder {
    const Rect& rect;

    bool runsThrough(const drawing::Polyline& line) const {
        const auto count = line.points.size();
        const auto inked = drawing::grown(rect, line.pen ? 0.5 * line.pen->width - 0.05 : 0.0);
        for (std::size_t i = 0; line.pen && i + (line.closed ? 0 : 1) < count; ++i) {
            if (drawing::crosses(inked, line.points[i], line.points[(i + 1) % count])) {
                return true;
            }
        }
        return false;
    }
    bool runsThrough(const drawing::Circle& circle) const {
        const double dx =
            std::max(std::abs(circle.centre.x - rect.x - 0.5 * rect.width), 0.5 * rect.width);
        const double dy =
            std::max(std::abs(circle.centre.y - rect.y - 0.5 * rect.height), 0.5 * rect.height);
        const double nearX = std::max(0.0, dx - 0.5 * rect.width);
        const double nearY = std::max(0.0, dy - 0.5 * rect.height);
        const bool reaches = std::hypot(nearX, nearY) < circle.radius;
        return reaches && (circle.fill || std::hypot(dx, dy) + 0.5 * rect.width > circle.radius);
    }
    bool runsThrough(const drawing::Arc&) const { return false; }
    bool runsThrough(const Text&) const { return false; }

    /// A filled shape that the rectangle lies in as a whole.
    bool hides(const drawing::Polyline& line) const {
        const auto count = line.points.size();
        bool inside = false;
        for (std::size_t i = 0; line.closed && line.fill && i < count; ++i) {
            const auto& a = line.points[i];
            const auto& b = line.points[(i + 1) % count];
            if (drawing::crosses(rect, a, b)) {
                return false;
            }
            if ((a.y > rect.y) != (b.y > rect.y) &&
                rect.x < a.x + (rect.y - a.y) / (b.y - a.y) * (b.x - a.x)) {
                inside = !inside;
            }
        }
        return inside;
    }
    bool hides(const drawing::Circle& circle) const {
        const double dx = std::max(circle.centre.x - rect.x, rect.right() - circle.centre.x);
        const double dy = std::max(circle.centre.y - rect.y, rect.bottom() - circle.centre.y);
        return circle.fill && std::hypot(dx, dy) < circle.radius;
    }
    bool hides(const drawing::Arc&) const { return false; }
    bool hides(const Text&) const { return false; }
};

}  // namespace

std::vector<Text> textsOf(const Drawing& page) {
    std::vector<Text> texts;
    for (const auto& layer : page.layers) {
        for (const auto& element : layer.elements) {
            if (const auto* text = std::get_if<Text>(&element)) {
                texts.push_back(*text);
            }
        }
    }
    return texts;
}

Rect inkOfText(const Text& text, const drawing::TextMetrics& metrics) {
    return drawing::grown(drawing::inkOf(text, metrics), -0.05);
}

int linesThrough(const Drawing& page, const Text& text, const drawing::TextMetrics& metrics) {
    const auto rect = inkOfText(text, metrics);
    const InkUnder ink{rect};
    int lines = 0;
    for (const auto& layer : page.layers) {
        for (const auto& element : layer.elements) {
            std::visit(
                [&](const auto& shape) {
                    lines = ink.hides(shape) ? 0 : lines + (ink.runsThrough(shape) ? 1 : 0);
                },
                element);
        }
    }
    return lines;
}

}  // namespace gw::test
