#include "panels/history_panel.h"

#include <QVBoxLayout>

namespace gw::ui {

HistoryPanel::HistoryPanel(const Bench& bench, QWidget* parent)
    : Panel(bench, parent), list_(new QListWidget) {
    setAccessibleName(tr("History"));
    list_->setAccessibleName(tr("Steps taken"));
    list_->setUniformItemSizes(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(4, 4, 4, 4);
    column->addWidget(list_);
    connect(&document().history(), &QUndoStack::indexChanged, this, &HistoryPanel::refreshSoon);
    connect(&document().history(), &QUndoStack::cleanChanged, this, &HistoryPanel::refreshSoon);
    const auto go = [this](QListWidgetItem* item) { document().goToStep(list_->row(item)); };
    connect(list_, &QListWidget::itemActivated, this, go);
    connect(list_, &QListWidget::itemClicked, this, go);
}

/// Row n: the layout as it is after n steps.
void HistoryPanel::rebuild() {
    const auto& history = document().history();
    list_->clear();
    list_->addItem(tr("As opened"));
    for (int step = 0; step < history.count(); ++step) {
        list_->addItem(history.text(step));
    }
}

void HistoryPanel::refresh() {
    const auto& history = document().history();
    rebuild();
    for (int row = 0; row < list_->count(); ++row) {
        auto* item = list_->item(row);
        const bool undone = row > history.index();
        QFont font = list_->font();
        font.setItalic(undone);
        item->setFont(font);
        QString said = item->text();
        said += undone ? tr(", undone") : QString();
        said += row == history.cleanIndex() ? tr(", saved") : QString();
        item->setData(Qt::AccessibleTextRole, said);
        item->setToolTip(said);
    }
    list_->setCurrentRow(history.index());
}

}  // namespace gw::ui
