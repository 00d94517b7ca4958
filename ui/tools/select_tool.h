#pragma once

#include <memory>
#include <optional>

#include "editing/hit.h"
#include "editing/snap.h"
#include "tools/drag.h"
#include "tools/tool.h"

namespace gw::ui {

/// Chooses, and drags what is chosen: blocks, entries, a conductor's legs, bends and ends.
class SelectTool : public Tool {
    Q_OBJECT
public:
    explicit SelectTool(const Bench& bench) : Tool(bench) {}
    ~SelectTool() override;

    QString name() const override { return tr("Select"); }
    QString hint() const override;
    void press(const BoardPoint& point) override;
    void move(const BoardPoint& point) override;
    void release(const BoardPoint& point) override;
    void doubleClick(const BoardPoint& point) override;
    bool key(QKeyEvent* event) override;
    bool cancel() override;
    void paint(QPainter& painter, const PaneTransform& transform) const override;

private:
    std::vector<editing::Hit> hits(const BoardPoint& point) const;
    void hover(const BoardPoint& point);
    void choose(const BoardPoint& point, const std::optional<editing::Hit>& hit);
    void startDrag();
    void drag(const BoardPoint& point);
    editing::Edit outcome(const BoardPoint& point, const Vec3& by);
    editing::Edit endOutcome(const BoardPoint& point, const Vec3& by);
    Vec3 snappedShift(const BoardPoint& point);
    QString stepName() const;
    bool nudge(QKeyEvent* event);
    bool turn(QKeyEvent* event);
    bool bend(QKeyEvent* event);
    void make(const QString& name, const editing::Edit& after, int mergeKey = -1);
    void walk(int direction);
    void paintHandles(QPainter& painter, const PaneTransform& transform) const;
    void paintBand(QPainter& painter, const PaneTransform& transform) const;

    std::optional<BoardPoint> pressed_;
    std::optional<editing::Hit> grip_;  ///< what was pressed
    std::unique_ptr<Drag> drag_;
    std::optional<editing::Band> band_;
    BoardPoint last_;
    editing::Snapped snapped_;
    QString plate_;    ///< text at the pointer
    QString landing_;  ///< what letting go here would do to an end
};

}  // namespace gw::ui
