#pragma once

#include <QPainter>

#include "canvas/pane_transform.h"
#include "document/document.h"
#include "document/selection.h"
#include "paint/fonts.h"

/// What lies over the drawing of a view: halos of what is chosen, marks of findings, the cut.
namespace gw::ui {

/// Colours of the board itself; the drawing keeps the sheet's.
namespace board_colour {
inline const QColor kChosen(20, 110, 220);
inline const QColor kHovered(20, 110, 220, 70);
inline const QColor kBreach(190, 20, 30);
inline const QColor kCaution(150, 90, 0);
inline const QColor kCannotTell(80, 80, 150);
inline const QColor kCut(130, 30, 130);
}  // namespace board_colour

/// A line round the item, true to its outline in the view.
void paintHalo(QPainter& painter,
               const geometry::BuiltLayout& built,
               const PaneTransform& transform,
               const Item& item,
               const QColor& colour,
               double width);

/// A badge at each place with a finding that is no `meets`: the worst verdict's sign, and how many
/// where there are several. Told by shape and sign, not by colour alone.
void paintFindings(QPainter& painter,
                   const std::vector<checks::Finding>& findings,
                   const PaneTransform& transform);

/// The sign of a verdict alone, in a square: for lists too.
void paintVerdict(QPainter& painter, const QRectF& box, checks::Verdict verdict);

}  // namespace gw::ui
