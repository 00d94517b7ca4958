#include "window/panel_docks.h"

#include "panels/findings_panel.h"
#include "panels/properties_panel.h"

namespace gw::ui {

PanelDocks::PanelDocks(QMainWindow& window, const Bench& bench, ToolHolder& tools)
    : QObject(&window),
      window_(window),
      properties_(new PropertiesPanel(bench)),
      gutter_(new GutterPanel(bench)),
      findings_(new FindingsPanel(bench)) {
    (void)tools;
    add(tr("Properties"), QStringLiteral("properties"), properties_);
    add(tr("Gutter"), QStringLiteral("gutter"), gutter_);
    add(tr("Findings"), QStringLiteral("findings"), findings_);
    arrange();
}

PanelDocks::~PanelDocks() {
    for (auto* dock : docks_) {
        delete dock;
    }
}

QDockWidget* PanelDocks::add(const QString& title, const QString& name, QWidget* panel) {
    auto* dock = new QDockWidget(title, &window_);
    dock->setObjectName(name);
    dock->setWidget(panel);
    docks_.push_back(dock);
    return dock;
}

/// At the right: what is worked on above, what comes of it below.
void PanelDocks::arrange() {
    constexpr int kWidth = 330;
    constexpr std::size_t kBelow = 2;  // the first of those below
    for (auto* dock : docks_) {
        dock->setFloating(false);
        window_.addDockWidget(Qt::RightDockWidgetArea, dock);
        dock->show();
    }
    window_.splitDockWidget(docks_.front(), docks_[kBelow], Qt::Vertical);
    for (std::size_t i = 1; i < docks_.size(); ++i) {
        if (i != kBelow) {
            window_.tabifyDockWidget(docks_[i < kBelow ? 0 : kBelow], docks_[i]);
        }
    }
    docks_.front()->raise();
    docks_[kBelow]->raise();
    window_.setTabPosition(Qt::RightDockWidgetArea, QTabWidget::North);
    window_.resizeDocks({docks_.front()}, {kWidth}, Qt::Horizontal);
    window_.resizeDocks({docks_.front(), docks_[kBelow]}, {1, 1}, Qt::Vertical);
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
