#include "drawing/view_frame.h"

#include "base/contract.h"

namespace gw::drawing {

using geometry::View;

Point ViewFrame::turned(const Vec3& direction) const {
    switch (view) {
        case View::front:
            return {direction.x, -direction.y};
        case View::top:
            return {direction.x, direction.z};
        case View::end:
            return {direction.z, -direction.y};
    }
    return {};
}

Point ViewFrame::at(const Vec3& point) const {
    const auto inches = turned(point);
    return {origin.x + mm(inches.x), origin.y + mm(inches.y)};
}

Vec3 ViewFrame::towardEye() const {
    switch (view) {
        case View::front:
            return {0, 0, 1};
        case View::top:
            return {0, 1, 0};
        case View::end:
            return {-1, 0, 0};
    }
    return {};
}

double ViewFrame::nearness(const Vec3& point) const {
    return dot(point, towardEye());
}

ViewFrame frameAt(View view, const Vec3& inside, double mmPerInch, Point corner) {
    CONTRACT(mmPerInch > 0.0);
    ViewFrame frame{view, corner, mmPerInch};
    if (view != View::top) {
        frame.origin.y += inside.y * mmPerInch;
    }
    return frame;
}

Rect interiorOf(const ViewFrame& frame, const Vec3& inside) {
    const auto a = frame.at({0, 0, 0});
    const auto b = frame.at(inside);
    return united({a.x, a.y, 0, 0}, {b.x, b.y, 0, 0});
}

}  // namespace gw::drawing
