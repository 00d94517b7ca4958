#pragma once

#include "drawing/scale.h"
#include "drawing/subject.h"

namespace gw::drawing {

/// Top view, front view and fill profile under one another on one x ruler, with their dimensions,
/// labels, tags, section marks and finding marks. Knows its size before it is drawn.
class LongViews {
public:
    /// width: mm the whole may take, margins included.
    LongViews(const Subject& subject, const Scale& scale, double width, const TextMetrics& metrics);

    double width() const;
    double height() const;
    /// corner: upper left. room: mm of height to use, at least height(); the rest goes between.
    void draw(Sketch& sketch, Point corner, double room) const;

private:
    /// Heights of the bands around an interior.
    struct Bands {
        double above = 0.0;
        double interior = 0.0;
        double below = 0.0;  ///< without the title
        double total() const { return above + interior + below; }
    };

    double left() const;
    double right() const;
    double runningBand(const std::vector<layout::Wall>& walls) const;
    double blockBand() const;
    Bands topBands() const;
    Bands frontBands() const;
    double profileHeight() const;
    std::vector<double> blockPlaces() const;

    void drawTop(Sketch& sketch, Point corner) const;
    void drawFront(Sketch& sketch, Point corner) const;
    void drawFrontDimensions(Sketch& sketch, const Rect& interior) const;
    void drawChart(Sketch& sketch, Point corner, double height) const;
    /// Running dimensions along x, `line` mm from the interior's edge.
    double drawRunning(Sketch& sketch,
                       const std::vector<double>& inches,
                       const Rect& interior,
                       double line,
                       bool above,
                       const std::string& caption) const;

    Subject subject_;
    Scale scale_;
    const TextMetrics* metrics_;  ///< outlives the views
    Ruler ruler_;
    EntryLabels backLabels_;
    EntryLabels aboveLabels_;
    EntryLabels belowLabels_;
};

/// A view's title with its scale under it, left of `corner`.
void drawViewTitle(Sketch& sketch,
                   Point corner,
                   const std::string& title,
                   const std::string& scale,
                   const TextSizes& sizes);
double viewTitleHeight(const TextSizes& sizes);

}  // namespace gw::drawing
