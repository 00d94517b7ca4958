#pragma once

#include <QWidget>

#include "tools/tool.h"

namespace gw::ui {

/// Distances along the gutter from its left end, in the layout's unit, with the cut line's handle:
/// dragged, or moved with the arrow keys, it cuts the gutter elsewhere.
class Ruler : public QWidget {
    Q_OBJECT
public:
    Ruler(const Bench& bench, QWidget* parent);
    QSize sizeHint() const override { return {200, 26}; }
    QSize minimumSizeHint() const override { return {100, 26}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    double toPixels(double inches) const;
    void cutAt(double pixel);
    void paintTicks(QPainter& painter) const;
    void paintCut(QPainter& painter) const;

    Bench bench_;
};

/// Of the steps a rule is divided by, the least that leaves `room` pixels between two, in inches.
/// Inches: 1/16 … 1, 2, 4, 6, 12, 24, 60, 120; millimetres: 1, 2, 5 times powers of ten.
double rulerStep(double pixelsPerInch, double room, units::LengthUnit unit);

}  // namespace gw::ui
