#pragma once

#include <memory>
#include <optional>

#include "editing/conductors.h"
#include "editing/hit.h"
#include "editing/snap.h"
#include "tools/drag.h"
#include "tools/tool.h"

namespace gw::ui {

/// Draws a conductor by pointing: from a raceway or port, through places, to a raceway or port, or
/// to an end that stays capped. Bends have the legal radius at once. When one is done the next of
/// its circuit is in hand.
class ConductorTool : public Tool {
    Q_OBJECT
public:
    ConductorTool(const Bench& bench, layout::CircuitId circuit, editing::ConductorKind kind);
    ~ConductorTool() override;

    QString name() const override { return tr("Draw conductor"); }
    QString hint() const override;
    QCursor cursor() const override { return Qt::CrossCursor; }
    void press(const BoardPoint&) override {}
    void move(const BoardPoint& point) override;
    void release(const BoardPoint& point) override;
    void doubleClick(const BoardPoint& point) override;
    bool key(QKeyEvent* event) override;
    bool cancel() override;
    void paint(QPainter& painter, const PaneTransform& transform) const override;

private:
    /// An end to be, and where it is.
    struct Target {
        layout::End end;
        Vec3 at;
        QString text;
        bool holds = false;  ///< a port or raceway, not just a place
    };

    Target targetAt(const BoardPoint& point);
    Vec3 placeAt(const BoardPoint& point);
    void begin(const Target& target);
    void showTo(const Target& target);
    void finish();
    void shiftLane(double direction);

    layout::CircuitId circuit_;
    editing::ConductorKind kind_;
    std::optional<editing::ConductorFacts> facts_;
    std::optional<Target> from_;
    std::vector<Vec3> via_;
    Vec3 lane_;  ///< what the view in use does not show comes from here
    std::unique_ptr<Drag> drag_;
    std::optional<BoardPoint> last_;
    editing::Items made_;
    editing::Snapped snapped_;
    QString plate_;
};

}  // namespace gw::ui
