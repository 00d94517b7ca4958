#pragma once

#include <QFont>
#include <QRawFont>
#include <array>

#include "drawing/drawing.h"

/// The font that comes with the program. Nothing here ever falls back to an installed one, so a
/// sheet looks alike on every machine. REQUIRES a QGuiApplication.
namespace gw::ui {

/// The shipped font of a face, unhinted and without kerning or font merging: what is painted is as
/// wide as FontMetrics says. pixelSize: the em, in painter units, >= 1.
/// CONTRACT that the shipped face, and no other, is what Qt resolves.
QFont fontOf(drawing::Face face, int pixelSize);

/// Advances of the shipped font, read at 2048 units an em (the font's own grid) and scaled: exact,
/// and the same at every size. Characters the font lacks count as its box.
class FontMetrics : public drawing::TextMetrics {
public:
    FontMetrics();
    double width(std::string_view text, double height, drawing::Face face) const override;

private:
    std::array<QRawFont, 4> raw_;  ///< by Face
};

}  // namespace gw::ui
