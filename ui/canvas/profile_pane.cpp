#include "canvas/profile_pane.h"

#include <QMouseEvent>
#include <algorithm>

#include "canvas/overlay.h"
#include "drawing/profile_view.h"
#include "paint/painter.h"

namespace gw::ui {

ProfilePane::ProfilePane(const Bench& bench, QWidget* parent) : QWidget(parent), bench_(bench) {
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Fill along the gutter"));
    const auto repaint = [this] { update(); };
    connect(&bench.document, &Document::changed, this, &ProfilePane::redraw);
    connect(&bench.document, &Document::replaced, this, &ProfilePane::redraw);
    connect(&bench.board, &BoardState::scaleChanged, this, &ProfilePane::redraw);
    connect(&bench.board, &BoardState::cutChanged, this, repaint);
}

void ProfilePane::redraw() {
    drawing_.reset();
    update();
}

void ProfilePane::resizeEvent(QResizeEvent*) {
    redraw();
}

double ProfilePane::toInches(double pixel) const {
    return bench_.board.left() + pixel / bench_.board.pixelsPerInch();
}

void ProfilePane::paintEvent(QPaintEvent*) {
    constexpr double kAbove = 5.0;  // mm
    constexpr double kBelow = 3.0;
    if (!drawing_) {
        drawing::Sketch sketch(metrics_);
        const drawing::TextSizes sizes;
        const double high = std::max(height() / kPixelsPerMillimetre - kAbove - kBelow, 8.0);
        drawing::drawProfile(
            sketch,
            bench_.document.built().fill,
            {},
            {0.0, bench_.board.pixelsPerInch() / kPixelsPerMillimetre, kAbove, high},
            sizes);
        drawing_ = std::move(sketch).finish({}, {});
    }
    QPainter painter(this);
    painter.fillRect(rect(), Qt::white);
    painter.save();
    painter.translate(-bench_.board.left() * bench_.board.pixelsPerInch(), 0.0);
    constexpr double kUnit = kPixelsPerMillimetre / kUnitsPerMillimetre;
    painter.scale(kUnit, kUnit);
    ui::paint(painter, *drawing_, metrics_);
    painter.restore();
    paintReadout(painter);
}

/// The cut, and the two numbers there.
void ProfilePane::paintReadout(QPainter& painter) const {
    const auto& fill = bench_.document.built().fill;
    const double x = (bench_.board.cut() - bench_.board.left()) * bench_.board.pixelsPerInch();
    painter.setPen(QPen(board_colour::kCut, 1.0, Qt::DashDotLine));
    painter.drawLine(QPointF(x, 0), QPointF(x, height()));
    const auto& slice = fill.at(bench_.board.cut());
    const QString text =
        tr("%1 % conductors").arg(100.0 * slice.conductors / fill.interior, 0, 'f', 1) +
        (slice.blocks > 0.0
             ? tr(", %1 % with blocks").arg(100.0 * slice.splice() / fill.interior, 0, 'f', 1)
             : QString());
    painter.setFont(fontOf(drawing::Face::bold, 11));
    const QRectF needed = painter.boundingRect(QRectF(0, 0, 400, 16), Qt::AlignLeft, text);
    const bool right = x + needed.width() + 10 < width();
    const QRectF plate(right ? x + 4 : x - 8 - needed.width(), 2, needed.width() + 4, 15);
    painter.fillRect(plate, QColor(255, 255, 255, 230));
    painter.setPen(board_colour::kCut);
    painter.drawText(plate, Qt::AlignCenter, text);
}

void ProfilePane::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        bench_.board.setCut(std::clamp(
            toInches(event->position().x()), 0.0, bench_.document.built().gutter().inside.x));
    }
}

void ProfilePane::mouseMoveEvent(QMouseEvent* event) {
    if (event->buttons() & Qt::LeftButton) {
        bench_.board.setCut(std::clamp(
            toInches(event->position().x()), 0.0, bench_.document.built().gutter().inside.x));
    }
    bench_.board.setHint(tr("Click or drag to cut the gutter here"));
}

}  // namespace gw::ui
