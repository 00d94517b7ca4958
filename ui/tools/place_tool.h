#pragma once

#include <memory>
#include <optional>

#include "editing/snap.h"
#include "parts/attitude.h"
#include "tools/drag.h"
#include "tools/tool.h"

namespace gw::ui {

/// Puts a part from the shelf into the gutter: it follows the pointer, snaps, turns by keys, and
/// shows the room in front of its ports.
class PlaceTool : public Tool {
    Q_OBJECT
public:
    PlaceTool(const Bench& bench, parts::PartId part);
    ~PlaceTool() override;

    QString name() const override;
    QString hint() const override;
    QCursor cursor() const override { return Qt::CrossCursor; }
    void press(const BoardPoint&) override {}
    void move(const BoardPoint& point) override;
    void release(const BoardPoint& point) override;
    bool key(QKeyEvent* event) override;
    bool cancel() override;
    void paint(QPainter& painter, const PaneTransform& transform) const override;

    /// With the keyboard: in the middle of the gutter's length, at the back.
    void placeInMiddle();

private:
    void follow(const BoardPoint& point);
    void showAt(const Vec3& corner);
    Vec3 extents() const;

    parts::PartId part_;
    parts::Attitude attitude_;
    Vec3 corner_;
    std::unique_ptr<Drag> drag_;
    std::optional<BoardPoint> last_;
    editing::Items made_;
    editing::Snapped snapped_;
    QString plate_;
};

/// What a dragged part carries: its id.
inline constexpr char kPartMime[] = "application/x-gutterwright-part";

/// Before each port of a block: the way a conductor of the bore's size comes in straight, hatched.
/// Length: the bending space of the table for the largest conductor that the port takes, where the
/// table has one.
void paintPortRoom(QPainter& painter,
                   const geometry::BuiltLayout& built,
                   std::size_t block,
                   const PaneTransform& transform);

}  // namespace gw::ui
