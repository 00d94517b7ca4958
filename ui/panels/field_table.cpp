#include "panels/field_table.h"

#include <QAccessible>
#include <QClipboard>
#include <QComboBox>
#include <QGuiApplication>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>

#include "panels/panel_text.h"

namespace gw::ui {
namespace {

using editing::Field;
using editing::FieldEdit;
using editing::FieldKind;

/// A combo box where a value is chosen, a line where it is typed.
class CellDelegate : public QStyledItemDelegate {
public:
    CellDelegate(FieldTable& table, const FieldTableOrder& order)
        : QStyledItemDelegate(&table), table_(table), order_(order) {}

    QWidget* createEditor(QWidget* parent,
                          const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override {
        const Field* field = fieldOf(index);
        if (field == nullptr || field->kind != FieldKind::choice) {
            return QStyledItemDelegate::createEditor(parent, option, index);
        }
        auto* box = new QComboBox(parent);
        if (field->mayBeOpen) {
            box->addItem(QString());
        }
        for (const auto& choice : field->choices()) {
            box->addItem(toQString(choice));
        }
        connect(box, &QComboBox::activated, this, [this, box] {
            auto* self = const_cast<CellDelegate*>(this);
            Q_EMIT self->commitData(box);
            Q_EMIT self->closeEditor(box);
        });
        return box;
    }
    void setEditorData(QWidget* editor, const QModelIndex& index) const override {
        if (auto* box = qobject_cast<QComboBox*>(editor)) {
            box->setCurrentIndex(box->findText(index.data(Qt::EditRole).toString()));
        } else if (auto* line = qobject_cast<QLineEdit*>(editor); line && !line->isModified()) {
            QStyledItemDelegate::setEditorData(editor, index);
        }
    }
    void setModelData(QWidget* editor,
                      QAbstractItemModel*,
                      const QModelIndex& index) const override {
        const auto* box = qobject_cast<QComboBox*>(editor);
        const auto* line = qobject_cast<QLineEdit*>(editor);
        table_.commit(index, box != nullptr ? box->currentText() : line->text());
    }

private:
    const Field* fieldOf(const QModelIndex& index) const {
        const auto source = order_.mapToSource(index);
        return table_.model().fieldAt(source.row(), source.column());
    }

    FieldTable& table_;
    const FieldTableOrder& order_;
};

std::vector<QStringList> cellsOf(QString text) {
    text.remove(QLatin1Char('\r'));
    while (text.endsWith(QLatin1Char('\n'))) {
        text.chop(1);
    }
    std::vector<QStringList> cells;
    for (const auto& line : text.split(QLatin1Char('\n'))) {
        cells.push_back(line.split(QLatin1Char('\t')));
    }
    return cells;
}

}  // namespace

FieldTable::FieldTable(const Bench& bench, std::vector<TableColumn> columns, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      model_(new FieldTableModel(bench, std::move(columns), this)),
      order_(new FieldTableOrder(this)),
      words_(new QLineEdit),
      view_(new QTableView),
      complaint_(new QLabel) {
    order_->setSourceModel(model_);
    order_->setSortRole(FieldTableModel::kOrderRole);
    words_->setPlaceholderText(tr("Filter by words"));
    words_->setAccessibleName(tr("Filter the rows by words"));
    words_->setClearButtonEnabled(true);
    connect(words_, &QLineEdit::textChanged, order_, &FieldTableOrder::setWords);
    makeView();
    complaint_->setWordWrap(true);
    complaint_->hide();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(words_);
    column->addWidget(view_, 1);
    column->addWidget(complaint_);
}

void FieldTable::makeView() {
    view_->setModel(order_);
    view_->setItemDelegate(new CellDelegate(*this, *order_));
    view_->setSelectionBehavior(QAbstractItemView::SelectRows);
    view_->setSelectionMode(QAbstractItemView::ExtendedSelection);
    view_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                           QAbstractItemView::AnyKeyPressed);
    view_->setAlternatingRowColors(true);
    view_->setTabKeyNavigation(false);  // Tab leaves the table
    view_->verticalHeader()->hide();
    view_->verticalHeader()->setDefaultSectionSize(view_->fontMetrics().height() + 8);
    view_->horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
    view_->horizontalHeader()->setSortIndicatorClearable(true);
    view_->horizontalHeader()->setSectionsMovable(true);
    view_->horizontalHeader()->setHighlightSections(false);
    view_->setSortingEnabled(true);
    view_->installEventFilter(this);
    connect(view_->selectionModel(), &QItemSelectionModel::selectionChanged, this, [this] {
        if (!selecting_) {
            Q_EMIT selectionChanged();
        }
    });
    connect(view_, &QTableView::activated, this, [this](const QModelIndex& index) {
        Q_EMIT rowActivated(model_->ownerAt(order_->mapToSource(index).row()));
    });
}

void FieldTable::show(const editing::Owners& owners) {
    const auto selected = selectedOwners();
    const bool first = model_->rowCount() == 0;
    selecting_ = true;
    model_->show(owners);
    selecting_ = false;
    select(selected);
    if (first && model_->rowCount() > 0) {
        fitColumns();
    }
}

/// As wide as what they hold, within reason.
void FieldTable::fitColumns() {
    constexpr int kWidest = 170;
    view_->resizeColumnsToContents();
    for (int column = 0; column < model_->columnCount(); ++column) {
        view_->setColumnWidth(column, std::min(view_->columnWidth(column), kWidest));
    }
}

editing::Owners FieldTable::selectedOwners() const {
    editing::Owners owners;
    for (int row = 0; row < order_->rowCount(); ++row) {
        if (view_->selectionModel()->isRowSelected(row)) {
            owners.push_back(model_->ownerAt(order_->mapToSource(order_->index(row, 0)).row()));
        }
    }
    return owners;
}

void FieldTable::select(const editing::Owners& owners) {
    QItemSelection wanted;
    for (int row = 0; row < order_->rowCount(); ++row) {
        const auto& owner = model_->ownerAt(order_->mapToSource(order_->index(row, 0)).row());
        if (std::find(owners.begin(), owners.end(), owner) != owners.end()) {
            const auto first = order_->index(row, 0);
            wanted.select(first, first.siblingAtColumn(order_->columnCount() - 1));
        }
    }
    selecting_ = true;
    view_->selectionModel()->select(wanted, QItemSelectionModel::ClearAndSelect);
    if (!wanted.isEmpty() && !view_->selectionModel()->isRowSelected(view_->currentIndex().row())) {
        const auto first = wanted.first().topLeft();
        view_->selectionModel()->setCurrentIndex(first, QItemSelectionModel::NoUpdate);
        view_->scrollTo(first);
    }
    selecting_ = false;
}

// ---- edits ----------------------------------------------------------------------------------

/// In that column, the rows that are selected, from top to bottom.
QModelIndexList FieldTable::selectedIn(int column) const {
    QModelIndexList cells;
    for (int row = 0; row < order_->rowCount(); ++row) {
        if (view_->selectionModel()->isRowSelected(row)) {
            cells << order_->index(row, column);
        }
    }
    return cells;
}

std::optional<FieldEdit> FieldTable::editOf(const QModelIndex& index, const QString& text) const {
    const auto source = order_->mapToSource(index);
    const Field* field = model_->fieldAt(source.row(), source.column());
    if (field == nullptr) {
        return std::nullopt;
    }
    return FieldEdit{model_->ownerAt(source.row()), field->name, text.trimmed().toStdString()};
}

void FieldTable::commit(const QModelIndex& index, const QString& text) {
    const bool several = view_->selectionModel()->isRowSelected(index.row());
    const auto cells = several ? selectedIn(index.column()) : QModelIndexList{index};
    std::vector<FieldEdit> edits;
    editing::Owners owners;
    bool changes = false;
    for (const auto& cell : cells) {
        if (const auto edit = editOf(cell, text)) {
            edits.push_back(*edit);
            owners.push_back(edit->owner);
            changes = changes || cell.data(Qt::EditRole).toString() != text.trimmed();
        }
    }
    if (!changes) {
        complain(QString());
        return;
    }
    const auto& document = bench_.document;
    make(toQString(editing::fieldStepName(
             document.built(), document.shelf(), owners, edits.front().name, edits.front().text)),
         edits);
}

void FieldTable::make(const QString& step, const std::vector<FieldEdit>& edits) {
    auto& document = bench_.document;
    if (document.inGesture() || edits.empty()) {
        return;
    }
    const auto after = editing::setFields(document.built(), document.shelf(), edits);
    const auto edited = after ? document.edit(step, *after) : fail(after.error());
    complain(edited ? QString() : errorText(edited.error()));
}

void FieldTable::complain(const QString& text) {
    complaint_->setText(text.isEmpty() ? text : QStringLiteral("⚠ ") + text);
    complaint_->setVisible(!text.isEmpty());
    view_->setAccessibleDescription(text);
    if (!text.isEmpty()) {
        QAccessibleEvent event(view_, QAccessible::Alert);
        QAccessible::updateAccessibility(&event);
    }
}

// ---- the clipboard --------------------------------------------------------------------------

void FieldTable::copy() const {
    QStringList lines;
    for (const auto& row : selectedIn(0)) {
        QStringList cells;
        for (int visual = 0; visual < order_->columnCount(); ++visual) {
            const int column = view_->horizontalHeader()->logicalIndex(visual);
            cells << row.siblingAtColumn(column).data(Qt::DisplayRole).toString();
        }
        lines << cells.join(QLatin1Char('\t'));
    }
    QGuiApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
}

QModelIndexList FieldTable::targetsOf(const std::vector<QStringList>& block) {
    const auto& header = *view_->horizontalHeader();
    const auto from = view_->currentIndex();
    const int rows = order_->rowCount() - from.row();
    const int columns = order_->columnCount() - header.visualIndex(from.column());
    const auto wide = std::max_element(
        block.begin(), block.end(), [](auto& a, auto& b) { return a.size() < b.size(); });
    if (int(block.size()) > rows || int(wide->size()) > columns) {
        complain(tr("%1 rows of %2 cells do not fit: from here there are %3 rows of %4")
                     .arg(block.size())
                     .arg(wide->size())
                     .arg(rows)
                     .arg(columns));
        return {};
    }
    QModelIndexList targets;
    for (int row = 0; row < int(block.size()); ++row) {
        for (int cell = 0; cell < int(block[std::size_t(row)].size()); ++cell) {
            const int column = header.logicalIndex(header.visualIndex(from.column()) + cell);
            targets << order_->index(from.row() + row, column);
        }
    }
    return targets;
}

void FieldTable::paste() {
    const auto block = cellsOf(QGuiApplication::clipboard()->text());
    const auto current = view_->currentIndex();
    if (!current.isValid()) {
        return;
    }
    if (block.size() == 1 && block.front().size() == 1) {
        commit(current, block.front().front());
        return;
    }
    QStringList values;
    for (const auto& line : block) {
        values << line;
    }
    const auto targets = targetsOf(block);
    std::vector<FieldEdit> edits;
    for (int i = 0; i < targets.size(); ++i) {
        if (targets[i].data(Qt::EditRole).toString() == values[i].trimmed()) {
            continue;  // so that a copied row can be pasted with what is worked out in it
        }
        const auto edit = editOf(targets[i], values[i]);
        if (!edit) {
            complain(tr("%1 cannot be typed: %2 is left out, and nothing is pasted")
                         .arg(model_->column(targets[i].column()).title, values[i]));
            return;
        }
        edits.push_back(*edit);
    }
    make(tr("Paste %n value(s)", nullptr, int(edits.size())), edits);
}

/// The window's own copy and paste are for what lies on the board.
bool FieldTable::eventFilter(QObject* watched, QEvent* event) {
    const bool asked = event->type() == QEvent::ShortcutOverride;
    if (watched == view_ && (asked || event->type() == QEvent::KeyPress)) {
        auto* key = static_cast<QKeyEvent*>(event);
        const bool copies = key->matches(QKeySequence::Copy);
        if (!copies && !key->matches(QKeySequence::Paste)) {
            return QWidget::eventFilter(watched, event);
        }
        if (!asked) {
            copies ? copy() : paste();
        }
        event->accept();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace gw::ui
