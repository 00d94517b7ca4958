#pragma once

#include <QString>
#include <QWidget>

namespace gw::test {

/// A palette as a dark desktop gives.
QPalette darkPalette();

/// Keeps pictures of the widget in the folder that GW_WINDOW_TO names, if it does, for looking at:
/// as it is, dark, and at twice the density.
void keepPictures(QWidget& widget, const QString& name);

}  // namespace gw::test
