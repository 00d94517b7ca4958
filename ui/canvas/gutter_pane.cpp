#include "canvas/gutter_pane.h"

#include <QContextMenuEvent>
#include <QDragEnterEvent>
#include <QMimeData>
#include <QMouseEvent>
#include <QWheelEvent>
#include <cmath>

#include "canvas/overlay.h"
#include "drawing/board_view.h"
#include "paint/painter.h"
#include "tools/place_tool.h"

namespace gw::ui {

using geometry::View;

GutterPane::GutterPane(View view, const Bench& bench, ToolHolder& tools, QWidget* parent)
    : QWidget(parent), view_(view), bench_(bench), tools_(tools) {
    setMouseTracking(true);
    setFocusPolicy(Qt::ClickFocus);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAcceptDrops(true);
    const auto repaint = [this] { update(); };
    connect(&bench.document, &Document::changed, this, &GutterPane::redraw);
    connect(&bench.document, &Document::replaced, this, &GutterPane::redraw);
    connect(&bench.board, &BoardState::scaleChanged, this, &GutterPane::redraw);
    connect(&bench.board, &BoardState::cutChanged, this, repaint);
    connect(&bench.board, &BoardState::hoveredChanged, this, repaint);
    connect(&bench.selection, &Selection::changed, this, repaint);
    connect(&tools, &ToolHolder::paintChanged, this, repaint);
    connect(&tools, &ToolHolder::changed, this, [this] { setCursor(tools_.current().cursor()); });
}

double GutterPane::heightInches() const {
    const Vec3& inside = bench_.document.built().gutter().inside;
    return view_ == View::top ? inside.z : inside.y;
}

PaneTransform GutterPane::transform() const {
    const double scale = bench_.board.pixelsPerInch();
    const double half = heightInches() * scale / 2.0;
    const double middle = height() / 2.0 + shift_;
    return {view_,
            scale,
            {-bench_.board.left() * scale, view_ == View::top ? middle - half : middle + half}};
}

QSize GutterPane::sizeHint() const {
    constexpr double kAround = 70.0;  // pixels: walls, raceways, names
    return {600, static_cast<int>(heightInches() * bench_.board.pixelsPerInch() + kAround)};
}

QSize GutterPane::minimumSizeHint() const {
    return {200, 90};
}

void GutterPane::centre() {
    shift_ = 0.0;
    update();
}

void GutterPane::redraw() {
    drawing_.reset();
    update();
}

const drawing::Drawing& GutterPane::drawing() {
    if (!drawing_) {
        drawing_ = drawing::boardView(bench_.document.built(), transform().frame(), metrics_);
    }
    return *drawing_;
}

BoardPoint GutterPane::pointAt(const QPointF& pixel, Qt::KeyboardModifiers modifiers) const {
    const auto here = transform();
    return {view_, here.toInches(pixel), 1.0 / here.pixelsPerInch, modifiers, 0.0};
}

void GutterPane::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), Qt::white);
    const auto here = transform();
    painter.save();
    painter.translate(here.origin);
    constexpr double kUnit = kPixelsPerMillimetre / kUnitsPerMillimetre;
    painter.scale(kUnit, kUnit);
    ui::paint(painter, drawing(), metrics_);
    painter.restore();
    painter.setRenderHint(QPainter::Antialiasing);
    paintOverlays(painter);
}

void GutterPane::paintOverlays(QPainter& painter) const {
    const auto here = transform();
    const double cut = here.toPixels(geometry::Point2{bench_.board.cut(), 0.0}).x();
    painter.setPen(QPen(board_colour::kCut, 1.0, Qt::DashDotLine));
    painter.drawLine(QPointF(cut, 0), QPointF(cut, height()));
    const auto& built = bench_.document.built();
    if (const auto& hovered = bench_.board.hovered()) {
        paintHalo(painter, built, here, *hovered, board_colour::kHovered, 3.0);
    }
    for (const Item& item : bench_.selection.items()) {
        paintHalo(painter, built, here, item, board_colour::kChosen, 2.0);
    }
    paintFindings(painter, bench_.document.findings(), here);
    tools_.current().paint(painter, here);
}

void GutterPane::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::MiddleButton) {
        panFrom_ = event->position();
        setCursor(Qt::ClosedHandCursor);
    } else if (event->button() == Qt::LeftButton) {
        tools_.current().press(pointAt(event->position(), event->modifiers()));
    } else {
        event->ignore();
    }
}

void GutterPane::mouseMoveEvent(QMouseEvent* event) {
    if (panFrom_) {
        panBy(event->position() - *panFrom_);
        panFrom_ = event->position();
        return;
    }
    tools_.current().move(pointAt(event->position(), event->modifiers()));
}

void GutterPane::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() == Qt::MiddleButton) {
        panFrom_.reset();
        setCursor(tools_.current().cursor());
    } else if (event->button() == Qt::LeftButton) {
        tools_.current().release(pointAt(event->position(), event->modifiers()));
    }
}

void GutterPane::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        tools_.current().doubleClick(pointAt(event->position(), event->modifiers()));
    }
}

/// The wheel goes along the gutter, with Shift up and down; with Ctrl it zooms about the pointer.
void GutterPane::wheelEvent(QWheelEvent* event) {
    constexpr double kPerStep = 120.0;  // of a wheel's notch
    const QPointF turned = event->angleDelta();
    if (event->modifiers() & Qt::ControlModifier) {
        constexpr double kZoomStep = 1.2;
        zoomAt(event->position(), std::pow(kZoomStep, turned.y() / kPerStep));
    } else {
        const QPointF moved =
            event->pixelDelta().isNull() ? turned / 2.0 : QPointF(event->pixelDelta());
        const bool vertical = event->modifiers() & Qt::ShiftModifier;
        panBy(vertical ? QPointF(0.0, moved.y()) : QPointF(moved.y() + moved.x(), 0.0));
    }
    event->accept();
}

void GutterPane::contextMenuEvent(QContextMenuEvent* event) {
    if (event->reason() == QContextMenuEvent::Mouse) {
        Q_EMIT menuWanted(pointAt(event->pos(), event->modifiers()), event->globalPos());
    } else {
        event->ignore();  // the board knows what is selected
    }
}

void GutterPane::leaveEvent(QEvent*) {
    bench_.board.setHovered(std::nullopt);
    bench_.board.setHint(tools_.current().hint());
}

void GutterPane::dragEnterEvent(QDragEnterEvent* event) {
    const auto mime = QString::fromLatin1(kPartMime);
    if (!event->mimeData()->hasFormat(mime) || bench_.document.inGesture()) {
        event->ignore();
        return;
    }
    const parts::PartId part(event->mimeData()->data(mime).toStdString());
    tools_.take(std::make_unique<PlaceTool>(bench_, part));
    event->acceptProposedAction();
}

void GutterPane::dragMoveEvent(QDragMoveEvent* event) {
    tools_.current().move(pointAt(event->position(), event->modifiers()));
    event->acceptProposedAction();
}

void GutterPane::dragLeaveEvent(QDragLeaveEvent*) {
    tools_.take(nullptr);
}

void GutterPane::dropEvent(QDropEvent* event) {
    const auto at = pointAt(event->position(), event->modifiers());
    tools_.current().move(at);
    tools_.current().release(at);
    event->acceptProposedAction();
}

void GutterPane::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        update();
    }
    QWidget::changeEvent(event);
}

void GutterPane::panBy(const QPointF& pixels) {
    auto& board = bench_.board;
    shift_ += pixels.y();
    board.setScale(board.pixelsPerInch(), board.left() - pixels.x() / board.pixelsPerInch());
    update();
}

/// What is under the pointer stays there.
void GutterPane::zoomAt(const QPointF& pixel, double factor) {
    const auto kept = transform().toInches(pixel);
    auto& board = bench_.board;
    const double scale = std::clamp(board.pixelsPerInch() * factor,
                                    BoardState::kLeastPixelsPerInch,
                                    BoardState::kMostPixelsPerInch);
    board.setScale(scale, kept.x - pixel.x() / scale);
    shift_ += pixel.y() - transform().toPixels(kept).y();
    update();
}

}  // namespace gw::ui
