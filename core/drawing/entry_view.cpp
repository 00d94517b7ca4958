#include "drawing/entry_view.h"

#include <algorithm>
#include <cmath>

namespace gw::drawing {
namespace {

constexpr double kCentreOvershoot = 1.5;  // mm of centre line beyond what it marks

/// Unit step on the paper from the gutter out through the entry.
Point outward(const geometry::BuiltEntry& entry, const ViewFrame& frame) {
    const auto in = frame.turned(entry.axis);
    return {-in.x, -in.y};
}

/// Corners along the outward step and across it.
class StubAxes {
public:
    StubAxes(Point root, Point out) : root_(root), out_(out) {}
    Point at(double outBy, double across) const {
        return {root_.x + out_.x * outBy - out_.y * across,
                root_.y + out_.y * outBy + out_.x * across};
    }

private:
    Point root_;
    Point out_;
};

/// A wavy line across the far end: the raceway goes on.
std::vector<Point> breakLine(const StubAxes& axes, double half) {
    std::vector<Point> points;
    constexpr int kSteps = 16;
    for (int i = 0; i <= kSteps; ++i) {
        const double t = static_cast<double>(i) / kSteps;
        points.push_back(
            axes.at(kWall + kStub + 0.5 * std::sin(t * 6.283185307179586), half * (2.0 * t - 1.0)));
    }
    return points;
}

}  // namespace

EntrySight sightOf(const geometry::BuiltEntry& entry, const ViewFrame& frame) {
    const double toward = dot(entry.axis, frame.towardEye());
    if (std::abs(toward) < 0.5) {
        return EntrySight::stub;
    }
    return toward < 0.0 ? EntrySight::near : EntrySight::far;
}

Point stubEnd(const geometry::BuiltEntry& entry, const ViewFrame& frame) {
    return StubAxes(frame.at(entry.centre), outward(entry, frame)).at(kWall + kStub, 0.0);
}

void drawStub(Sketch& sketch, const geometry::BuiltEntry& entry, const ViewFrame& frame) {
    const StubAxes axes(frame.at(entry.centre), outward(entry, frame));
    const double half = std::max(0.5 * frame.mm(entry.bore), 0.3);
    auto body = breakLine(axes, half);
    body.push_back(axes.at(0.0, half));
    body.push_back(axes.at(0.0, -half));
    sketch.add(Stratum::objects, Polyline{body, true, std::nullopt, kPaper});
    const auto pen = inkPen(kObject, entry.boreStated ? Dash::solid : Dash::fine);
    for (const double side : {-half, half}) {
        sketch.line(Stratum::objects, axes.at(0.0, side), axes.at(kWall + kStub, side), pen);
        // A locknut either side of the wall.
        sketch.line(Stratum::objects,
                    axes.at(kWall + 0.3, side),
                    axes.at(kWall + 0.3, side * (1.0 + 0.5 / half)),
                    inkPen(kOutline));
    }
    sketch.chain(Stratum::objects, breakLine(axes, half), inkPen(kThin));
    sketch.line(Stratum::marks,
                axes.at(-kCentreOvershoot, 0.0),
                axes.at(kWall + kStub + kCentreOvershoot, 0.0),
                inkPen(kThin, Dash::chain));
}

void drawFacingEntry(Sketch& sketch,
                     Stratum stratum,
                     const geometry::BuiltEntry& entry,
                     const ViewFrame& frame) {
    const auto centre = frame.at(entry.centre);
    const double radius = std::max(0.5 * frame.mm(entry.bore), 0.3);
    const bool behind = stratum == Stratum::walls;
    sketch.add(stratum,
               Circle{centre,
                      radius,
                      inkPen(behind ? kObject : kFine, entry.boreStated ? Dash::solid : Dash::fine),
                      behind ? std::optional(kPaleGrey) : std::nullopt});
    const double reach = radius + kCentreOvershoot;
    const auto pen = inkPen(kThin, Dash::chain);
    sketch.line(stratum, {centre.x - reach, centre.y}, {centre.x + reach, centre.y}, pen);
    sketch.line(stratum, {centre.x, centre.y - reach}, {centre.x, centre.y + reach}, pen);
}

}  // namespace gw::drawing
