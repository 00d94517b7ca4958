#include "tools/place_tool.h"

#include <utility>

#include "canvas/overlay.h"
#include "editing/bounds.h"
#include "editing/edits.h"
#include "editing/port_room.h"

namespace gw::ui {

using geometry::View;

PlaceTool::PlaceTool(const Bench& bench, parts::PartId part)
    : Tool(bench), part_(std::move(part)) {}

PlaceTool::~PlaceTool() = default;

QString PlaceTool::name() const {
    return tr("Place block");
}

QString PlaceTool::hint() const {
    return tr("Click to place the block; X, Y, Z turn it, Shift-click places several, Esc ends");
}

Vec3 PlaceTool::extents() const {
    const auto* part = layout::findPart(bench().document.layout(), bench().document.shelf(), part_);
    return part != nullptr ? attitude_.turnedExtents(part->body) : Vec3{};
}

void PlaceTool::move(const BoardPoint& point) {
    last_ = point;
    if (point.view != View::end) {
        follow(point);
    }
}

/// The body's middle follows the pointer; what the view does not show stays as it is, at first
/// against the back wall and in the middle of the height.
void PlaceTool::follow(const BoardPoint& point) {
    if (!drag_) {
        drag_ = std::make_unique<Drag>(bench().document);
        const Vec3& inside = drag_->before().gutter().inside;
        corner_ = {0.0, (inside.y - extents().y) / 2.0, 0.0};
    }
    const auto size = geometry::project(point.view, extents());
    editing::SnapOptions options;
    options.held = point.modifiers & Qt::AltModifier;
    options.reach = 7.0 * point.inchesPerPixel;
    options.extents = extents();
    const geometry::Point2 least{point.at.x - size.x / 2.0, point.at.y - size.y / 2.0};
    snapped_ = editing::snap(drag_->before(), point.view, least, options);
    const Vec3 shown = editing::inGutter(point.view, snapped_.at.x, snapped_.at.y);
    corner_.x = shown.x;
    (point.view == View::top ? corner_.z : corner_.y) = point.view == View::top ? shown.z : shown.y;
    showAt(corner_);
}

void PlaceTool::showAt(const Vec3& corner) {
    auto& document = bench().document;
    auto made = editing::placeBlock(
        drag_->before(), document.shelf(), part_, corner, attitude_, std::nullopt);
    if (!made) {
        plate_ = QString::fromStdString(made.error().sentence);
    } else if (const auto refused = drag_->show(made->layout)) {
        plate_ = *refused;
    } else {
        made_ = made->items;
        plate_ = affectedText(document, made_);
    }
    bench().board.setHint(snapped_.sentence.empty() ? hint()
                                                    : QString::fromStdString(snapped_.sentence));
    Q_EMIT paintChanged();
}

void PlaceTool::release(const BoardPoint& point) {
    if (!drag_) {
        return;
    }
    drag_->commit(
        tr("Place %1")
            .arg(QString::fromStdString(editing::itemsName(bench().document.layout(), made_))));
    drag_.reset();
    bench().selection.set(made_);
    made_.clear();
    if (!(point.modifiers & Qt::ShiftModifier)) {
        Q_EMIT finished();
    }
}

void PlaceTool::placeInMiddle() {
    const Vec3& inside = bench().document.built().gutter().inside;
    drag_ = std::make_unique<Drag>(bench().document);
    corner_ = {(inside.x - extents().x) / 2.0, (inside.y - extents().y) / 2.0, 0.0};
    showAt(corner_);
    release({});
}

bool PlaceTool::key(QKeyEvent* event) {
    const int axis = event->key() == Qt::Key_X   ? 0
                     : event->key() == Qt::Key_Y ? 1
                     : event->key() == Qt::Key_Z ? 2
                                                 : -1;
    if (axis >= 0) {
        attitude_ = attitude_.quarterTurned(axis);
        if (last_ && drag_) {
            follow(*last_);
        }
        return true;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        if (drag_) {
            release({});
        } else {
            placeInMiddle();
        }
        return true;
    }
    return false;
}

bool PlaceTool::cancel() {
    drag_.reset();
    made_.clear();
    plate_.clear();
    return false;  // Esc ends the tool as well
}

void PlaceTool::paint(QPainter& painter, const PaneTransform& transform) const {
    if (!drag_ || transform.view == View::end) {
        return;
    }
    const auto& built = bench().document.built();
    for (const Item& item : made_) {
        if (const auto* id = std::get_if<layout::BlockId>(&item)) {
            if (const auto index = editing::indexOf(built.layout, *id)) {
                paintPortRoom(painter, built, *index, transform);
            }
        }
        paintHalo(painter, built, transform, item, board_colour::kChosen, 2.0);
    }
    if (last_ && transform.view == last_->view) {
        const QString snap = QString::fromStdString(snapped_.sentence);
        paintPlate(painter,
                   transform.toPixels(last_->at),
                   snap.isEmpty() ? plate_ : plate_ + QLatin1Char('\n') + snap);
    }
}

void paintPortRoom(QPainter& painter,
                   const geometry::BuiltLayout& built,
                   std::size_t block,
                   const PaneTransform& transform) {
    for (const auto& room : editing::portRooms(built, block)) {
        const QColor colour = room.inside ? board_colour::kChosen : board_colour::kBreach;
        painter.setPen(QPen(colour, 1.0, Qt::DashLine));
        painter.setBrush(QBrush(QColor(colour.red(), colour.green(), colour.blue(), 110),
                                room.inside ? Qt::BDiagPattern : Qt::DiagCrossPattern));
        painter.drawRect(
            QRectF(transform.toPixels(room.box.least), transform.toPixels(room.box.greatest))
                .normalized());
    }
}

}  // namespace gw::ui
