#include "paint/painter.h"

#include <QPainterPath>
#include <QPen>
#include <QPolygonF>
#include <cmath>

namespace gw::ui {
namespace {

constexpr double kUnits = kUnitsPerMillimetre;

QPointF toUnits(const drawing::Point& point) {
    return {point.x * kUnits, point.y * kUnits};
}

QColor toQt(const drawing::Colour& colour) {
    return {colour.red, colour.green, colour.blue};
}

/// Strokes and gaps in millimetres of paper, whatever the pen's width.
QList<qreal> strokesOf(drawing::Dash dash) {
    switch (dash) {
        case drawing::Dash::solid:
            return {};
        case drawing::Dash::dashed:
            return {3.0, 1.2};
        case drawing::Dash::dotted:
            return {0.4, 0.9};
        case drawing::Dash::chain:
            return {6.0, 1.0, 0.6, 1.0};
        case drawing::Dash::fine:
            return {1.0, 0.7};
    }
    return {};
}

QPen toQt(const drawing::Pen& pen) {
    QPen qt(toQt(pen.colour), pen.width * kUnits);
    qt.setCapStyle(pen.roundCaps ? Qt::RoundCap : Qt::FlatCap);
    qt.setJoinStyle(pen.roundCaps ? Qt::RoundJoin : Qt::MiterJoin);
    auto strokes = strokesOf(pen.dash);
    if (!strokes.empty()) {
        for (auto& stroke : strokes) {
            stroke /= pen.width;  // Qt counts dashes in pen widths
        }
        qt.setDashPattern(strokes);
        qt.setDashOffset(pen.dashOffset / pen.width);
    }
    return qt;
}

QPen penOf(const std::optional<drawing::Pen>& pen) {
    return pen ? toQt(*pen) : QPen(Qt::NoPen);
}

QBrush brushOf(const std::optional<drawing::Colour>& fill) {
    return fill ? QBrush(toQt(*fill)) : QBrush(Qt::NoBrush);
}

class ElementPainter {
public:
    ElementPainter(QPainter& painter, const FontMetrics& metrics)
        : painter_(painter), metrics_(metrics) {}

    void operator()(const drawing::Polyline& line) const {
        QPolygonF points;
        points.reserve(static_cast<qsizetype>(line.points.size()));
        for (const auto& point : line.points) {
            points.append(toUnits(point));
        }
        painter_.setPen(penOf(line.pen));
        painter_.setBrush(line.closed ? brushOf(line.fill) : QBrush(Qt::NoBrush));
        if (line.closed) {
            painter_.drawPolygon(points);
        } else {
            painter_.drawPolyline(points);
        }
    }

    void operator()(const drawing::Arc& arc) const {
        const double radius = arc.radius * kUnits;
        const QPointF centre = toUnits(arc.centre);
        const QRectF box(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius);
        QPainterPath path;
        path.arcMoveTo(box, arc.startDegrees);
        path.arcTo(box, arc.startDegrees, arc.sweepDegrees);
        painter_.setPen(toQt(arc.pen));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawPath(path);
    }

    void operator()(const drawing::Circle& circle) const {
        painter_.setPen(penOf(circle.pen));
        painter_.setBrush(brushOf(circle.fill));
        painter_.drawEllipse(
            toUnits(circle.centre), circle.radius * kUnits, circle.radius * kUnits);
    }

    void operator()(const drawing::Text& text) const {
        const auto start = drawing::baselineStart(text, metrics_);
        const auto size = std::max(1, static_cast<int>(std::lround(text.height * kUnits)));
        painter_.setPen(toQt(text.colour));
        painter_.setFont(fontOf(text.face, size));
        const auto string = QString::fromStdString(text.text);
        if (text.rotationDegrees == 0.0) {
            painter_.drawText(toUnits(start), string);
            return;
        }
        painter_.save();
        painter_.translate(toUnits(start));
        painter_.rotate(-text.rotationDegrees);
        painter_.drawText(QPointF(0, 0), string);
        painter_.restore();
    }

private:
    QPainter& painter_;
    const FontMetrics& metrics_;
};

}  // namespace

void paint(QPainter& painter, const drawing::Drawing& drawing, const FontMetrics& metrics) {
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const ElementPainter paintElement(painter, metrics);
    for (const auto& layer : drawing.layers) {
        for (const auto& element : layer.elements) {
            std::visit(paintElement, element);
        }
    }
    painter.restore();
}

}  // namespace gw::ui
