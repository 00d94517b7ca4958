#include "tools/measure_tool.h"

#include "canvas/overlay.h"
#include "editing/places.h"
#include "tools/drag.h"

namespace gw::ui {

namespace {

/// Whether it is known where the place lies in the view.
bool isSeen(const editing::Picked& picked, geometry::View view) {
    const auto sight = static_cast<std::size_t>(editing::lookedAlong(view));
    for (std::size_t axis = 0; axis < picked.known.size(); ++axis) {
        if (axis != sight && !picked.known.at(axis)) {
            return false;
        }
    }
    return true;
}

}  // namespace

QString MeasureTool::hint() const {
    return tr("Click where to measure from, then where to; Alt: no snapping; Esc ends");
}

editing::Picked MeasureTool::pickAt(const BoardPoint& point) const {
    editing::SnapOptions options;
    options.held = point.modifiers & Qt::AltModifier;
    options.reach = kReachPixels * point.inchesPerPixel;
    options.grid = editing::kNudgeFine;
    return editing::pick(bench().document.built(), point.view, point.at, point.cut, options);
}

void MeasureTool::press(const BoardPoint& point) {
    view_ = point.view;
    if (!from_ || ended_) {
        from_ = pickAt(point);
        to_.reset();
        ended_ = false;
    } else {
        to_ = pickAt(point);
        ended_ = true;
        bench().board.setHint(reading());
    }
    Q_EMIT paintChanged();
}

void MeasureTool::move(const BoardPoint& point) {
    view_ = point.view;
    const auto here = pickAt(point);
    const QString what = QString::fromStdString(here.what);
    if (from_ && !ended_) {
        to_ = here;
        bench().board.setHint(what.isEmpty() ? reading() : tr("to %1: %2").arg(what, reading()));
        Q_EMIT paintChanged();
    } else if (!ended_) {
        bench().board.setHint(what.isEmpty() ? hint() : tr("Measure from %1").arg(what));
    }
}

bool MeasureTool::cancel() {
    const bool under = from_.has_value();
    from_.reset();
    to_.reset();
    ended_ = false;
    Q_EMIT paintChanged();
    return under;
}

QString MeasureTool::reading() const {
    if (!from_ || !to_) {
        return {};
    }
    return QString::fromStdString(editing::measuredText(editing::measured(*from_, *to_),
                                                        bench().document.layout().displayUnit));
}

void MeasureTool::paint(QPainter& painter, const PaneTransform& transform) const {
    if (!from_ || !isSeen(*from_, transform.view)) {
        return;
    }
    const auto cross = [&](const QPointF& at) {
        constexpr double kHalf = 6.0;
        painter.drawLine(at - QPointF(kHalf, 0), at + QPointF(kHalf, 0));
        painter.drawLine(at - QPointF(0, kHalf), at + QPointF(0, kHalf));
    };
    painter.setPen(QPen(board_colour::kChosen, 2.0));
    const QPointF a = transform.toPixels(from_->at);
    cross(a);
    if (!to_ || !isSeen(*to_, transform.view)) {
        return;
    }
    const QPointF b = transform.toPixels(to_->at);
    cross(b);
    painter.setPen(QPen(board_colour::kChosen, 1.0, Qt::DashLine));
    painter.drawLine(a, b);
    if (transform.view == view_) {
        paintPlate(painter, b, reading());
    }
}

}  // namespace gw::ui
