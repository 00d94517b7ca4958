#pragma once

#include <QWidget>
#include <optional>

#include "canvas/pane_transform.h"
#include "drawing/drawing.h"
#include "drawing/section_view.h"
#include "paint/fonts.h"
#include "tools/tool.h"

namespace gw::ui {

/// The gutter cut square to its length at the cut line, as large as the pane allows: every
/// conductor's true cut, named.
class SectionPane : public QWidget {
    Q_OBJECT
public:
    SectionPane(const Bench& bench, ToolHolder& tools, QWidget* parent);
    QSize sizeHint() const override { return {290, 360}; }
    QSize minimumSizeHint() const override { return {180, 160}; }

    PaneTransform transform();

Q_SIGNALS:
    void menuWanted(const gw::ui::BoardPoint& point, const QPoint& global);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    struct Shown {
        drawing::Drawing drawing;
        PaneTransform transform;
        QPointF corner;  ///< pixels: where the drawing's (0, 0) lies
    };

    void redraw();
    const Shown& shown();
    drawing::SectionPlan largestPlan() const;
    void paintTitle(QPainter& painter) const;
    void paintChosen(QPainter& painter);
    BoardPoint pointAt(const QPointF& pixel, Qt::KeyboardModifiers modifiers);

    Bench bench_;
    ToolHolder& tools_;
    FontMetrics metrics_;
    std::optional<Shown> shown_;
};

}  // namespace gw::ui
