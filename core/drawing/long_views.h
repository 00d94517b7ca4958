#pragma once

#include "drawing/end_labels.h"
#include "drawing/scale.h"
#include "drawing/subject.h"

namespace gw::drawing {

/// Top view, front view and fill profile under one another on one x ruler, with their dimensions,
/// labels, tags, section marks and finding marks. Knows its size before it is drawn.
class LongViews {
public:
    /// Which of the three; the front view always has its profile.
    enum class Shown { all, frontAndProfile, top };

    /// width: mm the whole may take, margins included.
    LongViews(const Subject& subject,
              const Scale& scale,
              double width,
              const TextMetrics& metrics,
              Shown shown = Shown::all);
    LongViews(const LongViews&) = delete;
    LongViews& operator=(const LongViews&) = delete;
    ~LongViews() = default;

    double width() const;
    double height() const;
    /// Height beyond which more room would only be left white.
    double mostHeight() const;
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

    std::string scaleAndAttitude() const;
    double left() const;
    double right() const;
    double runningBand(const std::vector<double>& inches) const;
    bool blocksAbove() const;
    Bands topBands() const;
    Bands frontBands() const;

    bool hasTop() const { return shown_ != Shown::frontAndProfile; }
    bool hasFront() const { return shown_ != Shown::top; }

    void drawTop(Sketch& sketch, Point corner) const;
    void drawTopDimensions(Sketch& sketch, const Rect& interior) const;
    void drawFront(Sketch& sketch, Point corner) const;
    void drawChart(Sketch& sketch, Point corner, double height) const;
    void keepOffExtensions(Placer& placer, const Rect& interior) const;
    void drawFrontDimensions(Sketch& sketch, const ViewFrame& frame) const;
    void drawSide(Sketch& sketch,
                  const Rect& interior,
                  layout::Wall wall,
                  const EntryLabels& labels) const;
    void drawOverallHeight(Sketch& sketch, const Rect& interior) const;
    /// Running dimensions along x on a line `line` mm from the interior. Returns where they end.
    double drawRunning(Sketch& sketch,
                       const std::vector<double>& inches,
                       const Rect& interior,
                       double line,
                       bool above,
                       const std::string& caption) const;

    const Subject& subject_;  ///< outlives the views
    Scale scale_;
    const TextMetrics* metrics_;  ///< outlives the views
    Shown shown_;
    Ruler ruler_;
    EndLabels leftLabels_;
    EndLabels rightLabels_;
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
