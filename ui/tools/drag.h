#pragma once

#include <QString>
#include <memory>
#include <optional>

#include "editing/edited.h"
#include "geometry/built_layout.h"
#include "tools/tool.h"

namespace gw::ui {

/// A gesture on the document with the gutter as it was built before it: every move shows the
/// outcome from there, so nothing adds up. Cancels when it goes out of scope.
class Drag {
public:
    explicit Drag(Document& document);

    const geometry::BuiltLayout& before() const { return before_; }
    /// Shows the outcome; an edit that is refused shows nothing new and gives its sentence.
    std::optional<QString> show(const editing::Edit& after);
    void commit(const QString& name) { gesture_.commit(name); }

private:
    Document& document_;
    Gesture gesture_;
    geometry::BuiltLayout before_;
};

/// A plate with text beside the pointer, kept off the pane's edges.
void paintPlate(QPainter& painter, const QPointF& at, const QString& text);

/// "clearance 3/16 in short", "fill 21.3 % of 20 %": the worst finding on these items, and the
/// greatest fill where they lie. Empty: none.
QString affectedText(const Document& document, const editing::Items& items);

/// "3 1/4 in right, 1 in up", in the layout's unit; empty for no shift.
QString shiftText(const Vec3& by, units::LengthUnit unit);

}  // namespace gw::ui
