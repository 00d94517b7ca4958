#pragma once

#include <QScrollBar>
#include <QWidget>

#include "canvas/gutter_pane.h"
#include "canvas/profile_pane.h"
#include "canvas/ruler.h"
#include "canvas/section_pane.h"

namespace gw::ui {

/// The drawing board: top view, front view and fill on one ruler, the section at the cut beside
/// them. Keys go to the tool in hand.
class Board : public QWidget {
    Q_OBJECT
public:
    Board(const Bench& bench, ToolHolder& tools, QWidget* parent = nullptr);

    GutterPane& front() { return *front_; }
    GutterPane& top() { return *top_; }
    SectionPane& section() { return *section_; }
    Ruler& ruler() { return *ruler_; }

    void fitAll();
    void fitSelection();
    void zoomBy(double factor);
    /// Brings a place into sight and cuts there.
    void show(const Vec3& place);

Q_SIGNALS:
    /// A context menu for what lies at the point of a view; without one, for what is selected.
    void menuWanted(const std::optional<gw::ui::BoardPoint>& point, const QPoint& global);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    /// The front view's width is what the whole gutter is fitted to.
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* titled(QWidget* pane, const QString& title);
    void layOut();
    void scaleWasChanged();
    void updateScrollBar();

    Bench bench_;
    ToolHolder& tools_;
    Ruler* ruler_;
    GutterPane* top_;
    GutterPane* front_;
    ProfilePane* profile_;
    SectionPane* section_;
    QScrollBar* scroll_;
    bool whole_ = true;  ///< the whole gutter is shown, and stays so when the window changes
};

}  // namespace gw::ui
