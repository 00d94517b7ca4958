#pragma once

#include <QPointF>

#include "drawing/view_frame.h"
#include "geometry/section.h"

namespace gw::ui {

/// Pixels of a device-independent screen in a millimetre: 96 to the inch.
inline constexpr double kPixelsPerMillimetre = 96.0 / 25.4;

/// From inches of a view to pixels of its pane and back.
struct PaneTransform {
    geometry::View view = geometry::View::front;
    double pixelsPerInch = 1.0;
    QPointF origin;  ///< where the gutter's (0, 0, 0) lies

    QPointF toPixels(const geometry::Point2& at) const {
        return {origin.x() + at.x * pixelsPerInch, origin.y() - at.y * pixelsPerInch};
    }
    QPointF toPixels(const Vec3& point) const { return toPixels(geometry::project(view, point)); }
    geometry::Point2 toInches(const QPointF& pixel) const {
        return {(pixel.x() - origin.x()) / pixelsPerInch, (origin.y() - pixel.y()) / pixelsPerInch};
    }
    /// The frame of a drawing to be painted with its (0, 0) at `origin`.
    drawing::ViewFrame frame() const {
        return {view, {0.0, 0.0}, pixelsPerInch / kPixelsPerMillimetre};
    }
};

}  // namespace gw::ui
