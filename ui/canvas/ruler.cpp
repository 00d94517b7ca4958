#include "canvas/ruler.h"

#include <QMouseEvent>
#include <algorithm>
#include <array>
#include <cmath>

#include "canvas/overlay.h"

namespace gw::ui {
namespace {

constexpr std::array kInchSteps = {
    0.0625, 0.125, 0.25, 0.5, 1.0, 2.0, 4.0, 6.0, 12.0, 24.0, 60.0, 120.0, 240.0, 600.0, 1200.0};
constexpr std::array kMillimetreSteps = {
    1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0, 50000.0};

QString label(double inches, units::LengthUnit unit) {
    const auto length = units::Inches::of(inches);
    if (unit == units::LengthUnit::millimetre) {
        return QString::number(std::lround(length.mm()));
    }
    return QString::fromStdString(units::formatInchMark(length));
}

}  // namespace

double rulerStep(double pixelsPerInch, double room, units::LengthUnit unit) {
    const auto first = [&](const auto& steps, double inchesEach) {
        const auto found = std::find_if(steps.begin(), steps.end(), [&](double step) {
            return step * inchesEach * pixelsPerInch >= room;
        });
        return (found != steps.end() ? *found : steps.back()) * inchesEach;
    };
    return unit == units::LengthUnit::inch
               ? first(kInchSteps, 1.0)
               : first(kMillimetreSteps, 1.0 / units::Inches::kMillimetresPerInch);
}

Ruler::Ruler(const Bench& bench, QWidget* parent) : QWidget(parent), bench_(bench) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::SplitHCursor);
    setAccessibleName(tr("Ruler along the gutter, with the cut line"));
    setToolTip(tr("Drag to cut the gutter elsewhere; with the keyboard: arrow keys"));
    const auto repaint = [this] { update(); };
    connect(&bench.board, &BoardState::scaleChanged, this, repaint);
    connect(&bench.board, &BoardState::cutChanged, this, repaint);
    connect(&bench.document, &Document::changed, this, repaint);
    connect(&bench.document, &Document::replaced, this, repaint);
}

double Ruler::toPixels(double inches) const {
    return (inches - bench_.board.left()) * bench_.board.pixelsPerInch();
}

void Ruler::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), palette().window());
    painter.setRenderHint(QPainter::Antialiasing);
    paintTicks(painter);
    paintCut(painter);
    if (hasFocus()) {
        painter.setPen(QPen(palette().highlight().color(), 2.0));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

void Ruler::paintTicks(QPainter& painter) const {
    constexpr double kBetweenTicks = 5.0;
    constexpr double kBetweenLabels = 52.0;
    const auto unit = bench_.document.layout().displayUnit;
    const double length = bench_.document.built().gutter().inside.x;
    const double fine = rulerStep(bench_.board.pixelsPerInch(), kBetweenTicks, unit);
    const double coarse = rulerStep(bench_.board.pixelsPerInch(), kBetweenLabels, unit);
    painter.setPen(palette().windowText().color());
    painter.setFont(fontOf(drawing::Face::condensed, 11));
    const double from = std::max(0.0, std::floor(bench_.board.left() / fine) * fine);
    const auto first = static_cast<long>(std::lround(from / fine));
    for (long i = first; static_cast<double>(i) * fine <= length + 1e-9; ++i) {
        const double inches = static_cast<double>(i) * fine;
        const double x = toPixels(inches);
        if (x > width()) {
            break;
        }
        const double steps = inches / coarse;
        const bool labelled = std::abs(steps - std::round(steps)) < 1e-6;
        const bool half = std::abs(2.0 * steps - std::round(2.0 * steps)) < 1e-6;
        painter.drawLine(QPointF(x, height()),
                         QPointF(x,
                                 height() - (labelled ? 10
                                             : half   ? 7
                                                      : 4)));
        if (labelled) {
            painter.drawText(
                QRectF(x - 40, 0, 80, height() - 10), Qt::AlignCenter, label(inches, unit));
        }
    }
    painter.drawLine(QPointF(toPixels(0.0), height() - 0.5),
                     QPointF(toPixels(length), height() - 0.5));
}

void Ruler::paintCut(QPainter& painter) const {
    const double x = toPixels(bench_.board.cut());
    painter.setPen(QPen(Qt::white, 1.0));
    painter.setBrush(board_colour::kCut);
    const double foot = height();
    painter.drawPolygon(QPolygonF(
        {{x - 7, foot - 14}, {x + 7, foot - 14}, {x + 7, foot - 7}, {x, foot}, {x - 7, foot - 7}}));
}

void Ruler::cutAt(double pixel) {
    const double inches = bench_.board.left() + pixel / bench_.board.pixelsPerInch();
    constexpr double kGrid = 16.0;  // to the inch
    const double snapped = std::round(inches * kGrid) / kGrid;
    bench_.board.setCut(std::clamp(snapped, 0.0, bench_.document.built().gutter().inside.x));
}

void Ruler::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        cutAt(event->position().x());
    }
}

void Ruler::mouseMoveEvent(QMouseEvent* event) {
    if (event->buttons() & Qt::LeftButton) {
        cutAt(event->position().x());
    }
}

void Ruler::keyPressEvent(QKeyEvent* event) {
    const double step = event->modifiers() & Qt::ShiftModifier ? 1.0 : 0.25;
    const double length = bench_.document.built().gutter().inside.x;
    switch (event->key()) {
        case Qt::Key_Left:
            bench_.board.setCut(std::max(0.0, bench_.board.cut() - step));
            return;
        case Qt::Key_Right:
            bench_.board.setCut(std::min(length, bench_.board.cut() + step));
            return;
        case Qt::Key_Home:
            bench_.board.setCut(0.0);
            return;
        case Qt::Key_End:
            bench_.board.setCut(length);
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

}  // namespace gw::ui
