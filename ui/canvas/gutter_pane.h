#pragma once

#include <QWidget>
#include <optional>

#include "canvas/pane_transform.h"
#include "drawing/drawing.h"
#include "paint/fonts.h"
#include "tools/tool.h"

namespace gw::ui {

/// The front or the top view: the gutter as the sheet draws it, with selection, findings, the cut
/// and the tool in hand on top. Pointer and keys go to the tool; wheel and middle button move the
/// view.
class GutterPane : public QWidget {
    Q_OBJECT
public:
    GutterPane(geometry::View view, const Bench& bench, ToolHolder& tools, QWidget* parent);

    PaneTransform transform() const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    /// The gutter in the middle of the height again.
    void centre();

Q_SIGNALS:
    void menuWanted(const gw::ui::BoardPoint& point, const QPoint& global);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void leaveEvent(QEvent* event) override;
    // A part from the shelf: held as with the placing tool, let go where it is dropped.
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void redraw();  ///< the drawing is another: layout or scale
    const drawing::Drawing& drawing();
    BoardPoint pointAt(const QPointF& pixel, Qt::KeyboardModifiers modifiers) const;
    double heightInches() const;
    void panBy(const QPointF& pixels);
    void zoomAt(const QPointF& pixel, double factor);
    void paintOverlays(QPainter& painter) const;

    geometry::View view_;
    Bench bench_;
    ToolHolder& tools_;
    FontMetrics metrics_;
    double shift_ = 0.0;  ///< pixels the gutter lies below the middle
    std::optional<drawing::Drawing> drawing_;
    std::optional<QPointF> panFrom_;
};

}  // namespace gw::ui
