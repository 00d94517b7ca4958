#pragma once

#include <QDockWidget>
#include <QMainWindow>
#include <QMenu>
#include <vector>

#include "tools/tool.h"

namespace gw::ui {

class FindingsPanel;
class GutterPanel;
class HistoryPanel;
class PropertiesPanel;
class ShelfPanel;
class TablesPanel;

/// The panels around the board, each in a dock of its own: tabbed at first, to be moved, floated
/// and closed. Every one is reached by a key.
class PanelDocks : public QObject {
    Q_OBJECT
public:
    PanelDocks(QMainWindow& window, const Bench& bench);
    ~PanelDocks() override;  ///< with the panels: before what they show

    PropertiesPanel& properties() { return *properties_; }
    GutterPanel& gutter() { return *gutter_; }
    FindingsPanel& findings() { return *findings_; }
    ShelfPanel& shelf() { return *shelf_; }
    TablesPanel& tables() { return *tables_; }
    HistoryPanel& history() { return *history_; }

    /// To show, close and go to each, and to put all back where they were at first.
    void addActions(QMenu* menu);
    /// Shown, in front of its neighbours, with the keyboard in it.
    void goTo(QDockWidget* dock);
    /// As at the first start.
    void arrange();

private:
    QDockWidget* add(const QString& title,
                     const QString& name,
                     QWidget* panel,
                     Qt::DockWidgetArea area = Qt::RightDockWidgetArea);
    /// Over one another at the right: the first in front.
    void stack(const std::vector<QDockWidget*>& docks);

    QMainWindow& window_;
    PropertiesPanel* properties_;
    GutterPanel* gutter_;
    FindingsPanel* findings_;
    ShelfPanel* shelf_;
    TablesPanel* tables_;
    HistoryPanel* history_;
    std::vector<QDockWidget*> docks_;  ///< in the order of their keys
    std::vector<QDockWidget*> above_;  ///< at the right, what is worked on
    std::vector<QDockWidget*> below_;  ///< and what comes of it
    QDockWidget* wide_ = nullptr;      ///< the tables, under the board
};

}  // namespace gw::ui
