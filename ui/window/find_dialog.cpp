#include "window/find_dialog.h"

#include <QVBoxLayout>

#include "editing/find.h"
#include "panels/panel_text.h"

namespace gw::ui {

FindDialog::FindDialog(const Bench& bench, QWidget* parent)
    : QDialog(parent), bench_(bench), text_(new QLineEdit), list_(new QListWidget) {
    setWindowTitle(tr("Find"));
    text_->setPlaceholderText(tr("Tag, name, circuit, where it leads"));
    text_->setAccessibleName(tr("What to find"));
    text_->setClearButtonEnabled(true);
    list_->setAccessibleName(tr("What was found"));
    auto* column = new QVBoxLayout(this);
    column->addWidget(text_);
    column->addWidget(list_);
    resize(340, 300);
    connect(text_, &QLineEdit::textChanged, this, &FindDialog::look);
    connect(text_, &QLineEdit::returnPressed, this, [this] {
        go(std::max(0, list_->currentRow()));
        accept();
    });
    connect(list_, &QListWidget::currentRowChanged, this, &FindDialog::go);
    connect(list_, &QListWidget::itemActivated, this, &QDialog::accept);
    look();
}

void FindDialog::look() {
    const QSignalBlocker quiet(list_);
    const auto& layout = bench_.document.layout();
    items_ = editing::findItems(layout, text_->text().trimmed().toStdString());
    list_->clear();
    for (const Item& item : items_) {
        list_->addItem(itemName(layout, item));
    }
    if (items_.empty() && !text_->text().trimmed().isEmpty()) {
        list_->addItem(tr("nothing of that name"));
        list_->item(0)->setFlags(Qt::NoItemFlags);
    }
}

void FindDialog::go(int row) {
    const auto at = static_cast<std::size_t>(row);
    if (row < 0 || at >= items_.size() || !editing::isThere(bench_.document.layout(), items_[at])) {
        return;
    }
    bench_.selection.set({items_[at]});
    Q_EMIT found(items_[at]);
}

}  // namespace gw::ui
