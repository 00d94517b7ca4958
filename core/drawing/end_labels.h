#pragma once

#include "drawing/subject.h"

namespace gw::drawing {

/// Raceways of an end wall in the front view: their heights as running dimensions, and a label
/// beyond each with its name, size and what it leads to. Heads only, then names only, where the
/// full labels would touch.
class EndLabels {
public:
    /// wall: left or right.
    EndLabels(const Subject& subject, layout::Wall wall);

    /// Room they take beyond the gutter's end, wall and raceway included; 0 without entries.
    double depth() const;
    void draw(Sketch& sketch, const ViewFrame& frame) const;

private:
    struct Label {
        double y = 0.0;  ///< mm on the paper
        std::vector<std::pair<std::string, Face>> lines;
    };

    double numberRoom() const;
    double labelRoom() const;
    std::vector<Label> labels(const Sketch& sketch, const ViewFrame& frame, int detail) const;
    void drawLabel(Sketch& sketch, const Label& label, double x, double y) const;

    const Subject* subject_;  ///< outlives the labels
    layout::Wall wall_;
};

}  // namespace gw::drawing
