#include "canvas/section_pane.h"

#include <QContextMenuEvent>
#include <QMouseEvent>
#include <QWheelEvent>
#include <algorithm>
#include <utility>

#include "canvas/overlay.h"
#include "geometry/section.h"
#include "paint/painter.h"

namespace gw::ui {
namespace {

constexpr double kTitleHeight = 22.0;  // pixels
constexpr double kUnit = kPixelsPerMillimetre / kUnitsPerMillimetre;

}  // namespace

SectionPane::SectionPane(const Bench& bench, ToolHolder& tools, QWidget* parent)
    : QWidget(parent), bench_(bench), tools_(tools) {
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Section at the cut line"));
    const auto repaint = [this] { update(); };
    connect(&bench.document, &Document::changed, this, &SectionPane::redraw);
    connect(&bench.document, &Document::replaced, this, &SectionPane::redraw);
    connect(&bench.board, &BoardState::cutChanged, this, &SectionPane::redraw);
    connect(&bench.board, &BoardState::hoveredChanged, this, repaint);
    connect(&bench.selection, &Selection::changed, this, repaint);
    connect(&tools, &ToolHolder::paintChanged, this, repaint);
}

void SectionPane::redraw() {
    shown_.reset();
    update();
}

void SectionPane::resizeEvent(QResizeEvent*) {
    redraw();
}

/// The tags at the sides do not grow with the scale, so it is found by halving.
drawing::SectionPlan SectionPane::largestPlan() const {
    const auto& built = bench_.document.built();
    const double width = (QWidget::width() - 8.0) / kPixelsPerMillimetre;
    const double height = (QWidget::height() - kTitleHeight - 8.0) / kPixelsPerMillimetre;
    double low = 0.5;
    double high = 60.0;
    for (int i = 0; i < 20; ++i) {
        const double middle = (low + high) / 2.0;
        const auto size = drawing::sectionSize(built, {bench_.board.cut(), middle, {}}, metrics_);
        (size.width <= width && size.height <= height ? low : high) = middle;
    }
    return {bench_.board.cut(), low, {}};
}

const SectionPane::Shown& SectionPane::shown() {
    if (!shown_) {
        const auto& built = bench_.document.built();
        const auto plan = largestPlan();
        const auto size = drawing::sectionSize(built, plan, metrics_);
        drawing::Sketch sketch(metrics_);
        drawing::drawSection(sketch, built, plan, {0.0, 0.0});
        const auto frame = drawing::sectionFrame(built, plan, metrics_, {0.0, 0.0});
        const QPointF corner((width() - size.width * kPixelsPerMillimetre) / 2.0,
                             kTitleHeight + 4.0);
        const QPointF zero =
            corner + QPointF(frame.origin.x, frame.origin.y) * kPixelsPerMillimetre;
        shown_ = Shown{std::move(sketch).finish(size, {}),
                       {geometry::View::end, plan.mmPerInch * kPixelsPerMillimetre, zero},
                       corner};
    }
    return *shown_;
}

PaneTransform SectionPane::transform() {
    return shown().transform;
}

void SectionPane::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), Qt::white);
    painter.save();
    painter.translate(shown().corner);
    painter.scale(kUnit, kUnit);
    ui::paint(painter, shown().drawing, metrics_);
    painter.restore();
    painter.setRenderHint(QPainter::Antialiasing);
    paintTitle(painter);
    paintChosen(painter);
    tools_.current().paint(painter, shown().transform);
}

void SectionPane::paintTitle(QPainter& painter) const {
    const auto unit = bench_.document.layout().displayUnit;
    const auto at = units::formatLength(units::Inches::of(bench_.board.cut()), unit);
    painter.setPen(board_colour::kCut);
    painter.setFont(fontOf(drawing::Face::bold, 12));
    painter.drawText(QRectF(8, 4, width() - 16, kTitleHeight - 4),
                     Qt::AlignLeft | Qt::AlignVCenter,
                     tr("Section at %1").arg(QString::fromStdString(at)));
}

void SectionPane::paintChosen(QPainter& painter) {
    const auto& built = bench_.document.built();
    const auto section = geometry::sectionAt(built, bench_.board.cut());
    const auto paintOutline = [&](const geometry::Outline& outline, const Item& item) {
        const bool chosen = bench_.selection.contains(item);
        if (!chosen && bench_.board.hovered() != std::optional(item)) {
            return;
        }
        QPolygonF polygon;
        for (const auto& point : outline) {
            polygon.append(shown().transform.toPixels(point));
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(chosen ? board_colour::kChosen : board_colour::kHovered, 3.0));
        painter.drawPolygon(polygon);
    };
    for (const auto& block : section.blocks) {
        paintOutline(block.outline, built.layout.blocks[block.block].id);
    }
    for (const auto& cut : section.conductors) {
        paintOutline(cut.outline, built.layout.conductors[cut.conductor].id);
    }
}

BoardPoint SectionPane::pointAt(const QPointF& pixel, Qt::KeyboardModifiers modifiers) {
    const auto& here = shown().transform;
    return {geometry::View::end,
            here.toInches(pixel),
            1.0 / here.pixelsPerInch,
            modifiers,
            bench_.board.cut()};
}

void SectionPane::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        tools_.current().press(pointAt(event->position(), event->modifiers()));
    } else {
        event->ignore();
    }
}

void SectionPane::mouseMoveEvent(QMouseEvent* event) {
    tools_.current().move(pointAt(event->position(), event->modifiers()));
}

void SectionPane::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        tools_.current().release(pointAt(event->position(), event->modifiers()));
    }
}

void SectionPane::contextMenuEvent(QContextMenuEvent* event) {
    if (event->reason() == QContextMenuEvent::Mouse) {
        Q_EMIT menuWanted(pointAt(event->pos(), event->modifiers()), event->globalPos());
    } else {
        event->ignore();
    }
}

/// The wheel moves the cut.
void SectionPane::wheelEvent(QWheelEvent* event) {
    constexpr double kPerStep = 120.0;
    constexpr double kInches = 0.5;
    const double moved = event->angleDelta().y() / kPerStep * kInches;
    const double length = bench_.document.built().gutter().inside.x;
    bench_.board.setCut(std::clamp(bench_.board.cut() + moved, 0.0, length));
    event->accept();
}

}  // namespace gw::ui
