#pragma once

#include <vector>

#include "geometry/built_layout.h"

/// The layout flattened for drawing: three views, and a cut at any x. Inches.
namespace gw::geometry {

struct Point2 {
    double x = 0.0;
    double y = 0.0;
};
using Outline = std::vector<Point2>;  ///< closed, last point not repeated, anticlockwise

/// Which two axes of the gutter a view shows, and from where it is seen.
enum class View {
    front,  ///< x right, y up; seen from the cover
    top,    ///< x right, z down the sheet (back wall at the top); seen from above
    end,    ///< z left to right (back wall at the left), y up; seen from the left end
};

Point2 project(View view, const Vec3& point);
/// Distance toward the eye in that view: larger is nearer.
double nearness(View view, const Vec3& point);

/// The silhouette of a conductor of true width in a view (union of its pieces; Boost.Geometry).
std::vector<Outline> silhouette(const BuiltConductor& conductor, View view);

/// One conductor cut at plane x: its true cut shape (an ellipse or, where it lies in the plane, a
/// stripe), clipped to nothing. One entry a connected part. In (z, y) as View::end.
struct CutConductor {
    std::size_t conductor = 0;
    Outline outline;
    Point2 centre;
};
struct Section {
    double x = 0.0;
    std::vector<CutConductor> conductors;
    struct CutBlock {
        std::size_t block = 0;
        Outline outline;
    };
    std::vector<CutBlock> blocks;
};
Section sectionAt(const BuiltLayout& built, double x);

/// Area of an outline, square inches, positive.
double outlineArea(const Outline& outline);

}  // namespace gw::geometry
