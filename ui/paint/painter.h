#pragma once

#include <QPainter>

#include "drawing/drawing.h"
#include "paint/fonts.h"

/// The one painter of drawings: canvas, picture, PDF and SVG differ only in the device.
namespace gw::ui {

/// Painter units a millimetre of paper: one unit is 0.01 mm, so that whole-number font sizes are
/// fine enough and every pen is wider than one unit (the SVG writer's dashes need that).
inline constexpr int kUnitsPerMillimetre = 100;

/// Paints all layers in order. The painter's transform must map kUnitsPerMillimetre units to a
/// millimetre of paper, origin at the page's top left corner. State is restored.
void paint(QPainter& painter, const drawing::Drawing& drawing, const FontMetrics& metrics);

}  // namespace gw::ui
