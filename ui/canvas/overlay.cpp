#include "canvas/overlay.h"

#include <QPainterPath>
#include <algorithm>

namespace gw::ui {
namespace {

using checks::Verdict;

QPolygonF centreline(const geometry::Path& path, const PaneTransform& transform) {
    constexpr double kStray = 0.02;  // inches
    QPolygonF points;
    for (const Vec3& point : path.flattened(kStray)) {
        points.append(transform.toPixels(point));
    }
    return points;
}

QRectF boxOf(const geometry::Box& box, const PaneTransform& transform) {
    return QRectF(transform.toPixels(box.least), transform.toPixels(box.greatest)).normalized();
}

/// Items to their outlines in pixels.
struct Outliner {
    const geometry::BuiltLayout& built;
    const PaneTransform& transform;

    QPainterPath operator()(const layout::ConductorId& id) const {
        QPainterPath outline;
        for (std::size_t i = 0; i < built.conductors.size(); ++i) {
            if (built.layout.conductors[i].id == id) {
                addConductor(outline, built.conductors[i]);
            }
        }
        return outline;
    }

    QPainterPath operator()(const layout::CircuitId& id) const {
        QPainterPath outline;
        for (std::size_t i = 0; i < built.conductors.size(); ++i) {
            if (built.layout.conductors[i].circuit == id) {
                addConductor(outline, built.conductors[i]);
            }
        }
        return outline;
    }

    QPainterPath operator()(const layout::BlockId& id) const {
        QPainterPath outline;
        for (std::size_t i = 0; i < built.blocks.size(); ++i) {
            if (built.layout.blocks[i].id == id) {
                outline.addRect(boxOf(built.blocks[i].body, transform).adjusted(-3, -3, 3, 3));
            }
        }
        return outline;
    }

    QPainterPath operator()(const layout::EntryId& id) const {
        QPainterPath outline;
        for (std::size_t i = 0; i < built.entries.size(); ++i) {
            if (built.layout.entries[i].id == id) {
                addEntry(outline, built.entries[i]);
            }
        }
        return outline;
    }

    void addConductor(QPainterPath& outline, const geometry::BuiltConductor& conductor) const {
        QPainterPath line;
        line.addPolygon(centreline(conductor.built.path, transform));
        QPainterPathStroker stroker;
        stroker.setWidth(conductor.diameter.in() * transform.pixelsPerInch + 5.0);
        stroker.setJoinStyle(Qt::RoundJoin);
        outline.addPath(stroker.createStroke(line).simplified());
    }

    void addEntry(QPainterPath& outline, const geometry::BuiltEntry& entry) const {
        const double half = std::max(entry.bore * transform.pixelsPerInch / 2.0, 6.0) + 4.0;
        const QPointF at = transform.toPixels(entry.centre);
        const QPointF out = at - (transform.toPixels(entry.centre + entry.axis) - at) /
                                     transform.pixelsPerInch * 26.0;
        QRectF around = QRectF(at, out).normalized();
        const bool facing = std::abs(around.width()) < 1.0 && std::abs(around.height()) < 1.0;
        const double across = around.width() > around.height() ? 0.0 : half;
        const double along = around.width() > around.height() ? half : 0.0;
        around = facing ? around.adjusted(-half, -half, half, half)
                        : around.adjusted(-across - 3, -along - 3, across + 3, along + 3);
        outline.addRect(around);
    }
};

int weight(Verdict verdict) {
    switch (verdict) {
        case Verdict::breach:
            return 3;
        case Verdict::caution:
            return 2;
        case Verdict::cannotTell:
            return 1;
        case Verdict::meets:
            return 0;
    }
    return 0;
}

QColor colourOf(Verdict verdict) {
    switch (verdict) {
        case Verdict::breach:
            return board_colour::kBreach;
        case Verdict::caution:
            return board_colour::kCaution;
        case Verdict::cannotTell:
            return board_colour::kCannotTell;
        case Verdict::meets:
            return {30, 110, 60};
    }
    return {};
}

struct Badge {
    QPointF at;
    Verdict worst = Verdict::meets;
    int count = 0;
};

std::vector<Badge> badgesOf(const std::vector<checks::Finding>& findings,
                            const PaneTransform& transform) {
    constexpr double kTogether = 14.0;  // pixels
    std::vector<Badge> badges;
    for (const auto& finding : findings) {
        if (finding.verdict == Verdict::meets || !finding.place) {
            continue;
        }
        const QPointF at = transform.toPixels(*finding.place);
        const auto near = std::find_if(badges.begin(), badges.end(), [&](const Badge& badge) {
            return (badge.at - at).manhattanLength() < kTogether;
        });
        Badge& badge = near != badges.end() ? *near : badges.emplace_back(Badge{at});
        badge.worst = weight(finding.verdict) > weight(badge.worst) ? finding.verdict : badge.worst;
        ++badge.count;
    }
    return badges;
}

}  // namespace

void paintHalo(QPainter& painter,
               const geometry::BuiltLayout& built,
               const PaneTransform& transform,
               const Item& item,
               const QColor& colour,
               double width) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colour, width));
    painter.drawPath(std::visit(Outliner{built, transform}, item));
}

void paintVerdict(QPainter& painter, const QRectF& box, Verdict verdict) {
    const QPointF middle = box.center();
    const double r = box.width() / 2.0;
    painter.setPen(QPen(Qt::white, 1.0));
    painter.setBrush(colourOf(verdict));
    QString sign;
    switch (verdict) {
        case Verdict::breach:
            painter.drawRect(box);
            sign = QStringLiteral("✕");
            break;
        case Verdict::caution:
            painter.drawPolygon(QPolygonF({{middle.x(), box.top() - r * 0.15},
                                           {box.right() + r * 0.15, box.bottom()},
                                           {box.left() - r * 0.15, box.bottom()}}));
            sign = QStringLiteral("!");
            break;
        case Verdict::cannotTell:
            painter.drawEllipse(box);
            sign = QStringLiteral("?");
            break;
        case Verdict::meets:
            painter.drawEllipse(box);
            sign = QStringLiteral("✓");
            break;
    }
    QFont font = fontOf(drawing::Face::bold, std::max(6, static_cast<int>(box.width() * 0.72)));
    painter.setFont(font);
    painter.setPen(Qt::white);
    const double lower = verdict == Verdict::caution ? r * 0.3 : 0.0;
    painter.drawText(box.translated(0, lower), Qt::AlignCenter, sign);
}

void paintFindings(QPainter& painter,
                   const std::vector<checks::Finding>& findings,
                   const PaneTransform& transform) {
    constexpr double kSize = 14.0;
    for (const Badge& badge : badgesOf(findings, transform)) {
        const QRectF box(badge.at - QPointF(kSize, kSize) / 2.0, QSizeF(kSize, kSize));
        paintVerdict(painter, box, badge.worst);
        if (badge.count > 1) {
            const QRectF plate(box.right() + 1, box.top() + 1, 16, 12);
            painter.setPen(Qt::NoPen);
            painter.setBrush(QColor(255, 255, 255, 220));
            painter.drawRect(plate);
            painter.setPen(colourOf(badge.worst));
            painter.setFont(fontOf(drawing::Face::bold, 10));
            painter.drawText(plate, Qt::AlignCenter, QStringLiteral("×%1").arg(badge.count));
        }
    }
}

}  // namespace gw::ui
