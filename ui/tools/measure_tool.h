#pragma once

#include <optional>

#include "editing/measure.h"
#include "tools/tool.h"

namespace gw::ui {

/// Measures from place to place: a click begins, the next one ends, and the one after begins anew.
/// It changes nothing.
class MeasureTool : public Tool {
    Q_OBJECT
public:
    explicit MeasureTool(const Bench& bench) : Tool(bench) {}

    QString name() const override { return tr("Measure"); }
    QString hint() const override;
    QCursor cursor() const override { return Qt::CrossCursor; }
    void press(const BoardPoint& point) override;
    void move(const BoardPoint& point) override;
    void release(const BoardPoint& /*point*/) override {}
    /// Forgets what is being measured.
    bool cancel() override;
    void paint(QPainter& painter, const PaneTransform& transform) const override;

    /// "12 1/2 in: 10 in right, …"; empty before there are two places.
    QString reading() const;

private:
    editing::Picked pickAt(const BoardPoint& point) const;

    std::optional<editing::Picked> from_;
    std::optional<editing::Picked> to_;
    bool ended_ = false;
    geometry::View view_ = geometry::View::front;  ///< where the pointer is
};

}  // namespace gw::ui
