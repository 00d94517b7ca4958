#pragma once

#include <QAbstractTableModel>
#include <QIcon>
#include <QSortFilterProxyModel>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "editing/fields.h"
#include "tools/tool.h"

namespace gw::ui {

/// What a column that is worked out shows; not to be typed over.
struct WorkedCell {
    QString text;
    double order = 0.0;  ///< sorted by this
    QIcon icon = {};
};

/// A column of a table of owners: the field of that name that each has, or what is worked out.
struct TableColumn {
    QString title;
    std::string field = {};  ///< where an owner has no such field its cell is empty and closed
    std::function<WorkedCell(const editing::Owner&)> worked = {};
};

/// Owners row by row, their fields column by column. It shows values and takes no part in changing
/// them: FieldTable does, for several rows at once.
class FieldTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    /// Length, number and choice sort by what they mean, text by letters and the numbers in it.
    static constexpr int kOrderRole = Qt::UserRole;

    FieldTableModel(const Bench& bench, std::vector<TableColumn> columns, QObject* parent);

    /// As the layout is now. Rows stay, and what is selected and edited with them, where the
    /// owners are the same.
    void show(const editing::Owners& owners);

    const editing::Owner& ownerAt(int row) const { return rows_[std::size_t(row)].owner; }
    /// nullptr: there is nothing to be typed.
    const editing::Field* fieldAt(int row, int column) const;
    const TableColumn& column(int column) const { return columns_[std::size_t(column)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    struct Row {
        editing::Owner owner;
        std::vector<std::optional<editing::Field>> fields;  ///< by column
        std::vector<WorkedCell> worked;                     ///< by column
    };
    Row rowOf(const editing::Owner& owner) const;
    bool sameOwners(const editing::Owners& owners) const;
    QVariant orderOf(const Row& row, std::size_t column) const;
    const std::vector<std::string>& choicesOf(std::size_t column,
                                              const editing::Field& field) const;

    Bench bench_;
    std::vector<TableColumn> columns_;
    std::vector<Row> rows_;
    mutable std::vector<std::vector<std::string>> choices_;  ///< by column, made when first asked
};

/// Sorted by meaning, and only the rows in which every word that was typed is found.
class FieldTableOrder : public QSortFilterProxyModel {
    Q_OBJECT
public:
    using QSortFilterProxyModel::QSortFilterProxyModel;
    void setWords(const QString& text);

protected:
    bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;
    bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

private:
    QStringList words_;
};

}  // namespace gw::ui
