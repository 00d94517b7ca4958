#pragma once

#include <QDialog>
#include <QLineEdit>
#include <QListWidget>

#include "tools/tool.h"

namespace gw::ui {

/// Finds things by tag, name or id while one types. What is pointed at in the list is selected and
/// shown; Return does the same with the first and puts the window away.
class FindDialog : public QDialog {
    Q_OBJECT
public:
    FindDialog(const Bench& bench, QWidget* parent);

    QLineEdit& text() { return *text_; }
    QListWidget& list() { return *list_; }

Q_SIGNALS:
    void found(const gw::ui::Item& item);

private:
    void look();
    void go(int row);

    Bench bench_;
    QLineEdit* text_;
    QListWidget* list_;
    editing::Items items_;
};

}  // namespace gw::ui
