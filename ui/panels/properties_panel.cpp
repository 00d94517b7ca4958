#include "panels/properties_panel.h"

#include <QVBoxLayout>

#include "panels/panel_text.h"

namespace gw::ui {
namespace {

QVBoxLayout* columnOf(QWidget* panel) {
    auto* column = new QVBoxLayout(panel);
    column->setContentsMargins(4, 4, 4, 4);
    return column;
}

QString capitalised(const std::string& name) {
    QString text = toQString(name);
    if (!text.isEmpty()) {
        text[0] = text[0].toUpper();
    }
    return text;
}

}  // namespace

PropertiesPanel::PropertiesPanel(const Bench& bench, QWidget* parent)
    : Panel(bench, parent), heading_(new QLabel), form_(new FieldForm(bench, this)) {
    setAccessibleName(tr("Properties of what is selected"));
    QFont bold = heading_->font();
    bold.setBold(true);
    bold.setPointSizeF(bold.pointSizeF() * 1.15);
    heading_->setFont(bold);
    heading_->setWordWrap(true);
    heading_->setTextFormat(Qt::PlainText);
    heading_->setAccessibleName(tr("Selected"));
    auto* column = columnOf(this);
    column->addWidget(heading_);
    column->addWidget(form_, 1);
    connect(&selection(), &Selection::changed, this, &PropertiesPanel::refreshSoon);
}

void PropertiesPanel::refresh() {
    auto owners = editing::ownersOf(selection().items());
    std::erase_if(owners, [&](const editing::Owner& owner) {
        return !editing::isThere(document().layout(), owner);
    });
    if (owners.empty()) {
        owners = {editing::WholeGutter{}};
    }
    heading_->setText(capitalised(editing::ownersName(document().layout(), owners)));
    form_->show(owners);
}

GutterPanel::GutterPanel(const Bench& bench, QWidget* parent)
    : Panel(bench, parent), form_(new FieldForm(bench, this)) {
    setAccessibleName(tr("Gutter and title block"));
    columnOf(this)->addWidget(form_);
}

void GutterPanel::refresh() {
    form_->show({editing::WholeGutter{}});
}

}  // namespace gw::ui
