#include "panels/panel_text.h"

#include <QPainter>
#include <QPixmap>
#include <QStringList>

#include "canvas/overlay.h"

namespace gw::ui {
namespace {

using checks::Quantity;
using checks::Verdict;

QPixmap verdictPicture(Verdict verdict) {
    constexpr int kSize = 16;
    constexpr double kDensity = 2.0;
    QPixmap picture(static_cast<int>(kSize * kDensity), static_cast<int>(kSize * kDensity));
    picture.setDevicePixelRatio(kDensity);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    paintVerdict(painter, QRectF(1.5, 1.5, kSize - 3.0, kSize - 3.0), verdict);
    return picture;
}

}  // namespace

QString toQString(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QString itemName(const layout::Layout& layout, const Item& item) {
    return toQString(editing::itemName(layout, item));
}

QString subjectsName(const layout::Layout& layout, const checks::Finding& finding) {
    QStringList names;
    for (const auto& subject : finding.subjects) {
        names << itemName(layout, subject);
    }
    return names.isEmpty() ? QStringLiteral("the gutter") : names.join(QStringLiteral(", "));
}

QString quantityText(const Quantity& quantity, units::LengthUnit unit) {
    constexpr double kMm = units::Inches::kMillimetresPerInch;
    if (unit == units::LengthUnit::millimetre && quantity.unit == Quantity::Unit::inches) {
        return toQString(units::formatDecimal(quantity.value * kMm, 2)) + QStringLiteral(" mm");
    }
    if (unit == units::LengthUnit::millimetre && quantity.unit == Quantity::Unit::squareInches) {
        return toQString(units::formatDecimal(quantity.value * kMm * kMm, 0)) +
               QStringLiteral(" mm²");
    }
    return toQString(checks::toText(quantity));
}

QString quantityText(const std::optional<Quantity>& quantity, units::LengthUnit unit) {
    return quantity ? quantityText(*quantity, unit) : QString();
}

QString errorText(const Error& error) {
    Error bare = error;
    bare.file.clear();
    bare.place.clear();
    return toQString(toLine(bare));
}

QIcon verdictIcon(Verdict verdict) {
    return QIcon(verdictPicture(verdict));
}

QString countedVerdict(Verdict verdict, int count) {
    const QString number = QString::number(count) + QLatin1Char(' ');
    switch (verdict) {
        case Verdict::breach:
            return number + (count == 1 ? QStringLiteral("breach") : QStringLiteral("breaches"));
        case Verdict::caution:
            return number + (count == 1 ? QStringLiteral("caution") : QStringLiteral("cautions"));
        case Verdict::cannotTell:
            return number + QStringLiteral("cannot tell");
        case Verdict::meets:
            return number + (count == 1 ? QStringLiteral("meets") : QStringLiteral("meet"));
    }
    return {};
}

}  // namespace gw::ui
