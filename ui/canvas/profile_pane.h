#pragma once

#include <QWidget>
#include <optional>

#include "drawing/drawing.h"
#include "paint/fonts.h"
#include "tools/tool.h"

namespace gw::ui {

/// Fill over the length of the gutter, on the ruler of the views above it. A click cuts there.
class ProfilePane : public QWidget {
    Q_OBJECT
public:
    ProfilePane(const Bench& bench, QWidget* parent);
    QSize sizeHint() const override { return {600, 120}; }
    QSize minimumSizeHint() const override { return {200, 80}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void redraw();
    void paintReadout(QPainter& painter) const;
    double toInches(double pixel) const;

    Bench bench_;
    FontMetrics metrics_;
    std::optional<drawing::Drawing> drawing_;
};

}  // namespace gw::ui
