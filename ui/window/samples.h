#pragma once

#include <QImage>
#include <QString>
#include <vector>

#include "layout/layout.h"
#include "parts/part.h"

namespace gw::ui {

/// A layout that comes with the program.
struct Sample {
    QString name;  ///< "Five tenants"
    QString path;
    bool isSpoilt = false;  ///< made to show one breach
};

/// One for each folder that holds a layout, by name, the spoilt ones last. None where the folder is
/// missing.
std::vector<Sample> samplesIn(const QString& folder);

/// Error as of readFile and readLayout.
Result<layout::Layout> readSample(const QString& path, const parts::Shelf& shelf);

/// The front view on white, this many pixels wide and high. REQUIRES a QGuiApplication.
QImage pictureOf(const layout::Layout& layout, const parts::Shelf& shelf, QSize pixels);

}  // namespace gw::ui
