#include "window/panel_docks.h"

#include "panels/findings_panel.h"
#include "panels/history_panel.h"
#include "panels/properties_panel.h"
#include "panels/shelf_panel.h"
#include "panels/tables_panel.h"

namespace gw::ui {

PanelDocks::PanelDocks(QMainWindow& window, const Bench& bench)
    : QObject(&window),
      window_(window),
      properties_(new PropertiesPanel(bench)),
      gutter_(new GutterPanel(bench)),
      findings_(new FindingsPanel(bench)),
      shelf_(new ShelfPanel(bench)),
      tables_(new TablesPanel(bench)),
      history_(new HistoryPanel(bench)) {
    auto* properties = add(tr("Properties"), QStringLiteral("properties"), properties_);
    auto* gutter = add(tr("Gutter"), QStringLiteral("gutter"), gutter_);
    auto* findings = add(tr("Findings"), QStringLiteral("findings"), findings_);
    auto* shelf = add(tr("Parts shelf"), QStringLiteral("shelf"), shelf_);
    wide_ = add(tr("Tables"), QStringLiteral("tables"), tables_, Qt::BottomDockWidgetArea);
    auto* history = add(tr("History"), QStringLiteral("history"), history_);
    above_ = {properties, gutter, shelf};
    below_ = {findings, history};
    arrange();
}

PanelDocks::~PanelDocks() {
    for (auto* dock : docks_) {
        delete dock;
    }
}

QDockWidget* PanelDocks::add(const QString& title,
                             const QString& name,
                             QWidget* panel,
                             Qt::DockWidgetArea area) {
    auto* dock = new QDockWidget(title, &window_);
    dock->setObjectName(name);
    dock->setWidget(panel);
    window_.addDockWidget(area, dock);
    docks_.push_back(dock);
    return dock;
}

void PanelDocks::stack(const std::vector<QDockWidget*>& docks) {
    for (std::size_t i = 1; i < docks.size(); ++i) {
        window_.tabifyDockWidget(docks.front(), docks[i]);
    }
    docks.front()->raise();
}

/// At the right: what is worked on above, what comes of it below. The tables take room from the
/// board: they wait until they are asked for.
void PanelDocks::arrange() {
    constexpr int kWidth = 330;
    for (auto* dock : docks_) {
        dock->setFloating(false);
        const bool wide = dock == wide_;
        window_.addDockWidget(wide ? Qt::BottomDockWidgetArea : Qt::RightDockWidgetArea, dock);
        dock->setVisible(!wide);
    }
    window_.setCorner(Qt::BottomRightCorner, Qt::RightDockWidgetArea);
    window_.splitDockWidget(above_.front(), below_.front(), Qt::Vertical);
    stack(above_);
    stack(below_);
    window_.setTabPosition(Qt::RightDockWidgetArea, QTabWidget::North);
    window_.resizeDocks({above_.front()}, {kWidth}, Qt::Horizontal);
    window_.resizeDocks({above_.front(), below_.front()}, {1, 1}, Qt::Vertical);
}

void PanelDocks::goTo(QDockWidget* dock) {
    dock->show();
    dock->raise();
    auto* first = dock->widget()->nextInFocusChain();
    while (first != dock->widget() &&
           !(dock->widget()->isAncestorOf(first) && (first->focusPolicy() & Qt::TabFocus) != 0 &&
             first->isEnabled() && !first->isHidden())) {
        first = first->nextInFocusChain();
    }
    first->setFocus(Qt::ShortcutFocusReason);
}

void PanelDocks::addActions(QMenu* menu) {
    auto* shown = menu->addMenu(tr("&Panels"));
    auto* go = menu->addMenu(tr("&Go to panel"));
    int number = 0;
    for (auto* dock : docks_) {
        shown->addAction(dock->toggleViewAction());
        auto* action = go->addAction(dock->windowTitle());
        action->setShortcut(QKeySequence(QStringLiteral("Ctrl+%1").arg(++number)));
        connect(action, &QAction::triggered, this, [this, dock] { goTo(dock); });
    }
    shown->addSeparator();
    connect(shown->addAction(tr("&Back to the first arrangement")),
            &QAction::triggered,
            this,
            &PanelDocks::arrange);
}

}  // namespace gw::ui
