#pragma once

#include <QDockWidget>
#include <QMainWindow>
#include <QMenu>
#include <vector>

#include "tools/tool.h"

namespace gw::ui {

class FindingsPanel;
class GutterPanel;
class PropertiesPanel;

/// The panels around the board, each in a dock of its own: tabbed at first, to be moved, floated
/// and closed. Every one is reached by a key.
class PanelDocks : public QObject {
    Q_OBJECT
public:
    PanelDocks(QMainWindow& window, const Bench& bench, ToolHolder& tools);
    ~PanelDocks() override;  ///< with the panels: before what they show

    PropertiesPanel& properties() { return *properties_; }
    GutterPanel& gutter() { return *gutter_; }
    FindingsPanel& findings() { return *findings_; }

    /// To show, close and go to each, and to put all back where they were at first.
    void addActions(QMenu* menu);
    /// Shown, in front of its neighbours, with the keyboard in it.
    void goTo(QDockWidget* dock);
    /// As at the first start.
    void arrange();

private:
    QDockWidget* add(const QString& title, const QString& name, QWidget* panel);

    QMainWindow& window_;
    PropertiesPanel* properties_;
    GutterPanel* gutter_;
    FindingsPanel* findings_;
    std::vector<QDockWidget*> docks_;  ///< in the order of their keys
};

}  // namespace gw::ui
