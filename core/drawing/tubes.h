#pragma once

#include <cstddef>
#include <vector>

#include "drawing/drawing.h"
#include "drawing/style.h"
#include "drawing/view_frame.h"
#include "geometry/built_layout.h"

/// Conductors at true width, so that crossings read over and under: each is cut into runs of nearly
/// one distance from the eye, and every run brings its own dark edge.
namespace gw::drawing {

/// One thing to paint in order of nearness.
struct SceneItem {
    double nearness = 0.0;
    std::vector<Element> elements;
};

/// A stretch of a conductor as seen in a view.
struct TubeRun {
    std::size_t conductor = 0;
    std::vector<Point> points;  ///< mm on the paper, at least 2
    double nearness = 0.0;      ///< inches toward the eye, its middle
    double width = 0.0;         ///< mm
    double from = 0.0;          ///< arc length, inches
    double to = 0.0;
    bool bare = false;
};

/// All runs of a conductor, from its start. Curves stray at most 0.02 mm on the paper.
std::vector<TubeRun> runsOf(const geometry::BuiltLayout& built,
                            std::size_t conductor,
                            const ViewFrame& frame);

/// The runs of a conductor, ready to be painted.
std::vector<SceneItem> tubeItems(const geometry::BuiltLayout& built,
                                 std::size_t conductor,
                                 const ViewFrame& frame);

/// Elements for a straight sample of a conductor, for the key.
std::vector<Element> tubeSample(
    Point from, Point to, double width, const PhaseStyle& style, bool bare);

}  // namespace gw::drawing
