#pragma once

#include <QByteArray>
#include <QImage>
#include <string>
#include <vector>

#include "base/result.h"
#include "drawing/drawing.h"

/// Drawings as complete files in memory: save them with saveBytes. Same input, same bytes.
/// REQUIRES a QGuiApplication (the offscreen platform will do).
namespace gw::ui {

/// One page a drawing, each of its own size, to scale 1:1, text as text with the font embedded.
/// PDF 1.6 without a creation date, which would differ with every run. REQUIRES pages not empty.
QByteArray sheetToPdf(const std::vector<drawing::Drawing>& pages);

/// Size in millimetres, view box in 0.01 mm. Text stays text; the font is named, not embedded.
QByteArray pageToSvg(const drawing::Drawing& page);

/// As PDF where the name ends in .pdf, else a page a file as SVG: "sheet.svg" for the first,
/// "sheet-2.svg" for the second. The files written, in order; Error as saveBytes. path: UTF-8, with
/// an ending. REQUIRES pages not empty.
Result<std::vector<std::string>> saveSheet(const std::vector<drawing::Drawing>& pages,
                                           const std::string& path);

/// White paper, antialiased. dotsPerInch: 20 to 2400.
QImage pageToImage(const drawing::Drawing& page, double dotsPerInch);

}  // namespace gw::ui
