#pragma once

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QStyledItemDelegate>
#include <QTableView>

#include "panels/field_table_model.h"

namespace gw::ui {

/// A table of owners and their fields: sorted by its headings, filtered by words, edited in place.
/// What is typed or chosen in a cell goes to that column of every selected row, as one step; so
/// does one copied value. A copied block of cells is pasted from the current cell right and down,
/// all of it or nothing. What cannot be is said below, and nothing changes.
class FieldTable : public QWidget {
    Q_OBJECT
public:
    FieldTable(const Bench& bench, std::vector<TableColumn> columns, QWidget* parent = nullptr);

    void show(const editing::Owners& owners);

    QTableView* view() const { return view_; }
    QLineEdit* words() const { return words_; }
    /// What was refused last; empty: nothing.
    QString complaint() const { return complaint_->text(); }
    FieldTableModel& model() const { return *model_; }
    /// Of the selected rows, from top to bottom.
    editing::Owners selectedOwners() const;
    void select(const editing::Owners& owners);

    /// Sets a column in the rows that are selected, or in the one row if it is not among them.
    void commit(const QModelIndex& index, const QString& text);
    /// Tab-separated lines, as spreadsheets take and give them.
    void copy() const;
    void paste();

Q_SIGNALS:
    void selectionChanged();
    void rowActivated(const gw::editing::Owner& owner);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void makeView();
    void fitColumns();
    QModelIndexList selectedIn(int column) const;
    /// The cells a block of values falls on; empty where it does not fit, which is then said.
    QModelIndexList targetsOf(const std::vector<QStringList>& block);
    void make(const QString& step, const std::vector<editing::FieldEdit>& edits);
    std::optional<editing::FieldEdit> editOf(const QModelIndex& index, const QString& text) const;
    void complain(const QString& text);

    Bench bench_;
    FieldTableModel* model_;
    FieldTableOrder* order_;
    QLineEdit* words_;
    QTableView* view_;
    QLabel* complaint_;
    bool selecting_ = false;
};

}  // namespace gw::ui
