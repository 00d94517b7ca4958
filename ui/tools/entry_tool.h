#pragma once

#include <memory>
#include <optional>

#include "editing/place.h"
#include "editing/snap.h"
#include "tools/drag.h"
#include "tools/tool.h"

namespace gw::ui {

/// Puts a raceway into a wall: it follows the pointer along the walls, and tells its knockout and
/// locknut and what they collide with.
class EntryTool : public Tool {
    Q_OBJECT
public:
    EntryTool(const Bench& bench,
              std::optional<standards::RacewayType> raceway,
              std::optional<standards::TradeSize> tradeSize);
    ~EntryTool() override;

    QString name() const override { return tr("Place entry"); }
    QString hint() const override;
    QCursor cursor() const override { return Qt::CrossCursor; }
    void press(const BoardPoint&) override {}
    void move(const BoardPoint& point) override;
    void release(const BoardPoint& point) override;
    bool key(QKeyEvent* event) override;
    bool cancel() override;
    void paint(QPainter& painter, const PaneTransform& transform) const override;

private:
    editing::EntryFacts factsAt(const BoardPoint& point) const;
    void show(const editing::EntryFacts& facts);
    void settle(bool stay);

    std::optional<standards::RacewayType> raceway_;
    std::optional<standards::TradeSize> tradeSize_;
    std::unique_ptr<Drag> drag_;
    std::optional<BoardPoint> last_;
    editing::Items made_;
    editing::Snapped snapped_;
    QString plate_;
};

/// "knockout 4 5/8 in, locknut 5 3/8 in across; collides with the locknut of entry Service".
QString holeText(const geometry::BuiltLayout& built, const layout::EntryId& entry);

}  // namespace gw::ui
