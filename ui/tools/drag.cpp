#include "tools/drag.h"

#include <QStringList>
#include <algorithm>
#include <cmath>

#include "paint/fonts.h"

namespace gw::ui {
namespace {

using checks::Finding;
using checks::Verdict;

bool isAbout(const Finding& finding, const editing::Items& items) {
    return std::any_of(finding.subjects.begin(), finding.subjects.end(), [&](const auto& subject) {
        return editing::holds(items, subject);
    });
}

QString lengthText(double inches, units::LengthUnit unit) {
    return QString::fromStdString(units::formatLength(units::Inches::of(inches), unit));
}

QString shortText(const Finding& finding, units::LengthUnit unit) {
    const QString title =
        QString::fromUtf8(checks::checkTitle(finding.check).data(),
                          static_cast<qsizetype>(checks::checkTitle(finding.check).size()))
            .toLower();
    if (finding.margin && finding.margin->unit == checks::Quantity::Unit::inches) {
        return QObject::tr("%1 %2 short")
            .arg(title,
                 QString::fromStdString(units::formatLength(
                     units::Inches::of(-finding.margin->value), unit, units::Rounding::up)));
    }
    if (finding.measured && finding.limit) {
        return QObject::tr("%1: %2, limit %3")
            .arg(title,
                 QString::fromStdString(checks::toText(*finding.measured)),
                 QString::fromStdString(checks::toText(*finding.limit)));
    }
    return title;
}

}  // namespace

Drag::Drag(Document& document)
    : document_(document),
      gesture_(document),
      before_(geometry::build(document.layout(), document.shelf())) {}

std::optional<QString> Drag::show(const editing::Edit& after) {
    if (!after) {
        return QString::fromStdString(after.error().sentence);
    }
    if (const auto shown = document_.preview(*after); !shown) {
        return QString::fromStdString(shown.error().sentence);
    }
    return std::nullopt;
}

void paintPlate(QPainter& painter, const QPointF& at, const QString& text) {
    if (text.isEmpty()) {
        return;
    }
    painter.setFont(fontOf(drawing::Face::bold, 12));
    constexpr double kWidest = 420.0;
    constexpr double kAround = 16.0;
    const double widest = std::min<double>(kWidest, painter.viewport().width() - kAround);
    const QRectF needed = painter.boundingRect(QRectF(0, 0, widest, 200), Qt::TextWordWrap, text);
    const QSizeF size = needed.size() + QSizeF(12, 8);
    QPointF corner = at + QPointF(16, 16);
    const QRectF room = painter.viewport();
    corner.setX(std::max(2.0, std::min(corner.x(), room.width() - size.width() - 2)));
    if (corner.y() + size.height() > room.height() - 2) {
        corner.setY(std::max(2.0, at.y() - size.height() - 12));
    }
    const QRectF plate(corner, size);
    painter.setPen(QPen(QColor(40, 40, 40), 1.0));
    painter.setBrush(QColor(255, 252, 225));
    painter.drawRect(plate);
    painter.setPen(Qt::black);
    painter.drawText(plate.adjusted(6, 4, -6, -4), Qt::TextWordWrap, text);
}

QString affectedText(const Document& document, const editing::Items& items) {
    const auto unit = document.layout().displayUnit;
    QStringList lines;
    for (const Verdict verdict : {Verdict::breach, Verdict::caution}) {
        for (const Finding& finding : document.findings()) {
            constexpr qsizetype kMost = 3;
            if (finding.verdict == verdict && isAbout(finding, items) && lines.size() < kMost) {
                const QString sign =
                    verdict == Verdict::breach ? QStringLiteral("✕ ") : QStringLiteral("! ");
                const QString line = sign + shortText(finding, unit);
                if (!lines.contains(line)) {
                    lines.append(line);
                }
            }
        }
    }
    const auto& fill = document.built().fill;
    lines.append(
        QObject::tr("fill at most %1 %").arg(100.0 * fill.worstConductors().fraction, 0, 'f', 1));
    return lines.join(QLatin1Char('\n'));
}

QString shiftText(const Vec3& by, units::LengthUnit unit) {
    QStringList parts;
    const auto add = [&](double inches, const QString& plus, const QString& minus) {
        constexpr double kNothing = 1e-6;
        if (std::abs(inches) > kNothing) {
            parts.append(lengthText(std::abs(inches), unit) + QLatin1Char(' ') +
                         (inches > 0.0 ? plus : minus));
        }
    };
    add(by.x, QObject::tr("right"), QObject::tr("left"));
    add(by.y, QObject::tr("up"), QObject::tr("down"));
    add(by.z, QObject::tr("forward"), QObject::tr("back"));
    return parts.join(QStringLiteral(", "));
}

}  // namespace gw::ui
