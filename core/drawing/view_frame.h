#pragma once

#include "drawing/drawing.h"
#include "geometry/section.h"

namespace gw::drawing {

/// Where a view of the gutter lies on the paper. front and end: y up the sheet; top: z down it.
struct ViewFrame {
    geometry::View view = geometry::View::front;
    Point origin;            ///< mm: where the gutter's (0, 0, 0) lies
    double mmPerInch = 1.0;  ///< of the view's scale

    /// Millimetres on the paper of a point of the gutter.
    Point at(const Vec3& point) const;
    /// The same turn for a direction, in inches.
    Point turned(const Vec3& direction) const;
    double mm(double inches) const { return inches * mmPerInch; }
    /// Larger is nearer to the eye.
    double nearness(const Vec3& point) const;
    /// Unit direction toward the eye.
    Vec3 towardEye() const;
};

/// A frame whose interior's upper left corner lies at `corner`.
ViewFrame frameAt(geometry::View view, const Vec3& inside, double mmPerInch, Point corner);
/// The interior on the paper.
Rect interiorOf(const ViewFrame& frame, const Vec3& inside);

}  // namespace gw::drawing
