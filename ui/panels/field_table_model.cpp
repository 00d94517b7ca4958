#include "panels/field_table_model.h"

#include <QCollator>
#include <algorithm>

#include "panels/panel_text.h"
#include "units/length.h"

namespace gw::ui {

using editing::Field;
using editing::FieldKind;
using editing::Owner;

FieldTableModel::FieldTableModel(const Bench& bench,
                                 std::vector<TableColumn> columns,
                                 QObject* parent)
    : QAbstractTableModel(parent), bench_(bench), columns_(std::move(columns)) {}

FieldTableModel::Row FieldTableModel::rowOf(const Owner& owner) const {
    auto all = editing::fieldsOf(bench_.document.built(), bench_.document.shelf(), owner);
    Row row{owner, {}, {}};
    for (const auto& column : columns_) {
        const auto found = std::find_if(all.begin(), all.end(), [&](const Field& field) {
            return !column.field.empty() && field.name == column.field;
        });
        row.fields.push_back(found == all.end() ? std::nullopt : std::optional(*found));
        row.worked.push_back(column.worked ? column.worked(owner) : WorkedCell{});
    }
    return row;
}

bool FieldTableModel::sameOwners(const editing::Owners& owners) const {
    return std::equal(rows_.begin(),
                      rows_.end(),
                      owners.begin(),
                      owners.end(),
                      [](const Row& row, const Owner& owner) { return row.owner == owner; });
}

void FieldTableModel::show(const editing::Owners& owners) {
    std::vector<Row> rows;
    std::transform(owners.begin(), owners.end(), std::back_inserter(rows), [&](const Owner& owner) {
        return rowOf(owner);
    });
    choices_.assign(columns_.size(), {});
    if (!rows.empty() && sameOwners(owners)) {
        rows_ = std::move(rows);
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        return;
    }
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

const Field* FieldTableModel::fieldAt(int row, int column) const {
    const auto& field = rows_[std::size_t(row)].fields[std::size_t(column)];
    return field && (field->write || field->edit) ? &*field : nullptr;
}

int FieldTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int FieldTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

const std::vector<std::string>& FieldTableModel::choicesOf(std::size_t column,
                                                           const Field& field) const {
    if (choices_[column].empty()) {
        choices_[column] = field.choices();
    }
    return choices_[column];
}

/// What is not stated comes before all that is.
QVariant FieldTableModel::orderOf(const Row& row, std::size_t column) const {
    if (columns_[column].worked) {
        return row.worked[column].order;
    }
    const auto& field = row.fields[column];
    if (!field || field->value.empty()) {
        return -1.0;
    }
    if (field->kind == FieldKind::choice) {
        const auto& choices = choicesOf(column, *field);
        return double(std::find(choices.begin(), choices.end(), field->value) - choices.begin());
    }
    if (field->kind == FieldKind::length) {
        const auto length = units::parseLength(field->value, bench_.document.layout().displayUnit);
        return length ? length->in() : -1.0;
    }
    const QString text = toQString(field->value);
    return field->kind == FieldKind::number ? QVariant(text.toDouble()) : QVariant(text);
}

QVariant FieldTableModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return {};
    }
    const auto column = std::size_t(index.column());
    const Row& row = rows_[std::size_t(index.row())];
    const auto& field = row.fields[column];
    switch (role) {
        case Qt::DisplayRole:
        case Qt::EditRole:
        case Qt::ToolTipRole:
            return field ? toQString(field->value) : row.worked[column].text;
        case Qt::DecorationRole:
            return row.worked[column].icon.isNull() ? QVariant() : row.worked[column].icon;
        case Qt::AccessibleTextRole:
            return columns_[column].title + QStringLiteral(": ") +
                   data(index, Qt::DisplayRole).toString();
        case kOrderRole:
            return orderOf(row, column);
        default:
            return {};
    }
}

QVariant FieldTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    return columns_[std::size_t(section)].title;
}

Qt::ItemFlags FieldTableModel::flags(const QModelIndex& index) const {
    const auto flags = QAbstractTableModel::flags(index);
    return index.isValid() && fieldAt(index.row(), index.column()) != nullptr
               ? flags | Qt::ItemIsEditable
               : flags;
}

// ---- order ----------------------------------------------------------------------------------

void FieldTableOrder::setWords(const QString& text) {
    words_ = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    invalidateFilter();
}

bool FieldTableOrder::lessThan(const QModelIndex& left, const QModelIndex& right) const {
    static const QCollator kByNumber = [] {
        QCollator collator(QLocale::c());
        collator.setNumericMode(true);
        return collator;
    }();
    const auto a = left.data(FieldTableModel::kOrderRole);
    const auto b = right.data(FieldTableModel::kOrderRole);
    const bool aNumber = a.userType() == QMetaType::Double;
    const bool bNumber = b.userType() == QMetaType::Double;
    if (aNumber && bNumber) {
        return a.toDouble() < b.toDouble();
    }
    return aNumber != bNumber ? aNumber : kByNumber.compare(a.toString(), b.toString()) < 0;
}

bool FieldTableOrder::filterAcceptsRow(int row, const QModelIndex& parent) const {
    QStringList cells;
    for (int column = 0; column < sourceModel()->columnCount(parent); ++column) {
        cells << sourceModel()->index(row, column, parent).data(Qt::DisplayRole).toString();
    }
    const QString all = cells.join(QLatin1Char('\t'));
    return std::all_of(words_.begin(), words_.end(), [&](const QString& word) {
        return all.contains(word, Qt::CaseInsensitive);
    });
}

}  // namespace gw::ui
