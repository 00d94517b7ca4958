#include "ui/support/pictures.h"

#include <QApplication>
#include <QPainter>
#include <QPalette>

namespace gw::test {
namespace {

QPixmap pictureOf(QWidget& widget, qreal ratio) {
    QApplication::processEvents();
    QPixmap picture(widget.size() * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    widget.render(&picture);
    return picture;
}

}  // namespace

QPalette darkPalette() {
    QPalette dark(QColor(45, 45, 48));
    dark.setColor(QPalette::Base, QColor(30, 30, 32));
    dark.setColor(QPalette::AlternateBase, QColor(38, 38, 40));
    return dark;
}

void keepPictures(QWidget& widget, const QString& name) {
    const QString to = qEnvironmentVariable("GW_WINDOW_TO");
    if (to.isEmpty()) {
        return;
    }
    const QString path = to + QLatin1Char('/') + name;
    pictureOf(widget, 1.0).save(path + QStringLiteral(".png"));
    pictureOf(widget, 2.0).save(path + QStringLiteral("-2x.png"));
    const QPalette usual = QApplication::palette();
    QApplication::setPalette(darkPalette());
    pictureOf(widget, 1.0).save(path + QStringLiteral("-dark.png"));
    QApplication::setPalette(usual);
}

}  // namespace gw::test
