#include "panels/field_form.h"

#include <QAccessible>
#include <QAccessibleEvent>
#include <QKeyEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "panels/panel_text.h"

namespace gw::ui {
namespace {

using editing::FieldKind;
using editing::SharedField;

QString notStated() {
    return FieldForm::tr("not stated");
}
QString several() {
    return FieldForm::tr("several");
}

enum class Choice { value, open, several };

QLabel* headingLabel(const QString& text) {
    auto* heading = new QLabel(text.toHtmlEscaped());
    QFont bold = heading->font();
    bold.setBold(true);
    heading->setFont(bold);
    heading->setContentsMargins(0, 8, 0, 0);
    return heading;
}

QLabel* complaintLabel() {
    auto* label = new QLabel;
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setFocusPolicy(Qt::NoFocus);
    label->hide();
    return label;
}

}  // namespace

QWidget* FieldForm::Row::editor() const {
    return line != nullptr ? static_cast<QWidget*>(line) : box;
}

FieldForm::FieldForm(const Bench& bench, QWidget* parent) : QScrollArea(parent), bench_(bench) {
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    rebuild({});
}

FieldForm::Row* FieldForm::find(const std::string& name) {
    const auto found = std::find_if(
        rows_.begin(), rows_.end(), [&](const Row& row) { return row.shown.field.name == name; });
    return found == rows_.end() ? nullptr : &*found;
}

QWidget* FieldForm::editor(const QString& name) const {
    const auto* row = const_cast<FieldForm*>(this)->find(name.toStdString());
    return row != nullptr ? row->editor() : nullptr;
}

QString FieldForm::complaint(const QString& name) const {
    const auto* row = const_cast<FieldForm*>(this)->find(name.toStdString());
    return row != nullptr && !row->complaint->isHidden() ? row->complaint->text() : QString();
}

// ---- rows -----------------------------------------------------------------------------------

void FieldForm::show(const editing::Owners& owners) {
    const auto fields =
        editing::sharedFields(bench_.document.built(), bench_.document.shelf(), owners);
    const bool others = owners != owners_;
    owners_ = owners;
    if (!sameRows(fields)) {
        rebuild(fields);
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        Row& row = rows_[i];
        const bool typing = !others && row.line != nullptr && row.line->isModified();
        update(row, fields[i]);
        if (!typing) {
            put(row);
        }
    }
}

bool FieldForm::sameRows(const std::vector<SharedField>& fields) const {
    return std::equal(rows_.begin(),
                      rows_.end(),
                      fields.begin(),
                      fields.end(),
                      [](const Row& row, const SharedField& other) {
                          const auto& shown = row.shown.field;
                          return shown.name == other.field.name &&
                                 shown.label == other.field.label &&
                                 shown.group == other.field.group && shown.kind == other.field.kind;
                      });
}

/// Where the keyboard was in a field that is there again, it is there again.
void FieldForm::rebuild(const std::vector<SharedField>& fields) {
    std::string focused;
    for (const Row& row : rows_) {
        if (row.editor()->hasFocus()) {
            focused = row.shown.field.name;
        }
    }
    rows_.clear();
    auto* page = new QWidget;
    form_ = new QFormLayout(page);
    form_->setContentsMargins(4, 2, 4, 6);
    form_->setVerticalSpacing(4);
    form_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    QString group;
    for (const auto& field : fields) {
        addRow(field, group);
    }
    if (auto* old = takeWidget()) {
        old->deleteLater();
    }
    setWidget(page);
    page->setAutoFillBackground(false);
    if (Row* row = find(focused)) {
        row->editor()->setFocus();
    }
}

void FieldForm::addRow(const SharedField& field, QString& group) {
    if (const QString heading = toQString(field.field.group); heading != group) {
        group = heading;
        form_->addRow(headingLabel(heading));
    }
    Row row;
    row.shown = field;
    QWidget* editor = makeEditor(row);
    const QString name = toQString(field.field.label);
    editor->setAccessibleName(name + QStringLiteral(", ") + group);
    editor->setObjectName(toQString(field.field.name));
    row.complaint = complaintLabel();
    auto* cell = new QWidget;
    auto* column = new QVBoxLayout(cell);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(1);
    column->addWidget(editor);
    column->addWidget(row.complaint);
    row.label = new QLabel(name);
    row.label->setBuddy(editor);
    form_->addRow(row.label, cell);
    rows_.push_back(row);
}

QWidget* FieldForm::makeEditor(Row& row) {
    const std::string& name = row.shown.field.name;
    if (row.shown.field.kind == FieldKind::choice) {
        row.box = new QComboBox;
        row.box->setFocusPolicy(Qt::StrongFocus);
        row.box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        row.box->setMinimumContentsLength(8);
        row.box->installEventFilter(this);
        connect(row.box, &QComboBox::activated, this, [this, name, box = row.box](int index) {
            switch (static_cast<Choice>(box->itemData(index).toInt())) {
                case Choice::several:
                    return;
                case Choice::open:
                    commit(name, QString());
                    return;
                case Choice::value:
                    commit(name, box->itemText(index));
                    return;
            }
        });
        return row.box;
    }
    row.line = new QLineEdit;
    row.line->setMinimumWidth(60);
    row.line->installEventFilter(this);
    connect(row.line, &QLineEdit::editingFinished, this, [this, name, line = row.line] {
        if (line->isModified()) {
            commit(name, line->text());
        }
    });
    return row.line;
}

void FieldForm::update(Row& row, const SharedField& field) {
    row.shown = field;
    if (row.box != nullptr) {
        fillBox(row);
        return;
    }
    row.line->setPlaceholderText(!field.same             ? several()
                                 : field.field.mayBeOpen ? notStated()
                                                         : QString());
}

/// Only where the choices are others: an open list stays.
void FieldForm::fillBox(Row& row) {
    std::vector<std::pair<QString, Choice>> items;
    if (!row.shown.same) {
        items.emplace_back(several(), Choice::several);
    }
    if (row.shown.field.mayBeOpen) {
        items.emplace_back(notStated(), Choice::open);
    }
    for (const auto& choice : row.shown.field.choices()) {
        items.emplace_back(toQString(choice), Choice::value);
    }
    const int count = row.box->count();
    bool same = count == static_cast<int>(items.size());
    for (int i = 0; i < count && same; ++i) {
        same = row.box->itemText(i) == items[static_cast<std::size_t>(i)].first;
    }
    if (!same) {
        row.box->clear();
        for (const auto& [text, choice] : items) {
            row.box->addItem(text, static_cast<int>(choice));
        }
    }
}

void FieldForm::put(Row& row) {
    const auto& shown = row.shown;
    complain(row, QString());
    if (row.line != nullptr) {
        const QString text = shown.same ? toQString(shown.field.value) : QString();
        if (row.line->text() != text) {
            row.line->setText(text);
            row.line->setCursorPosition(0);
        }
        row.line->setModified(false);
        row.line->setToolTip(text);
        return;
    }
    const QString text = !shown.same                 ? several()
                         : shown.field.value.empty() ? notStated()
                                                     : toQString(shown.field.value);
    row.box->setCurrentIndex(row.box->findText(text));
    row.box->setToolTip(text);
}

// ---- what is typed --------------------------------------------------------------------------

void FieldForm::commit(const std::string& name, const QString& text) {
    Row* row = find(name);
    auto& document = bench_.document;
    if (row == nullptr || document.inGesture()) {
        return;
    }
    const auto typed = text.toStdString();
    if (row->shown.same && typed == row->shown.field.value) {
        put(*row);
        return;
    }
    const auto after = editing::setField(document.built(), document.shelf(), owners_, name, typed);
    const QString step =
        toQString(editing::fieldStepName(document.built(), document.shelf(), owners_, name, typed));
    const auto edited = after ? document.edit(step, *after) : fail(after.error());
    if (!edited) {
        complain(*row, errorText(edited.error()));
        return;
    }
    if (row->line != nullptr) {
        row->line->setModified(false);
    }
    show(editing::Owners(owners_));
}

/// Told by its words and its sign; read out where someone listens.
void FieldForm::complain(Row& row, const QString& text) {
    row.complaint->setVisible(!text.isEmpty());
    row.editor()->setAccessibleDescription(text);
    if (text.isEmpty()) {
        row.complaint->clear();
        return;
    }
    colour(row);
    row.complaint->setText(QStringLiteral("⚠ ") + text);
    QAccessibleEvent event(row.editor(), QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
    ensureWidgetVisible(row.complaint);
}

/// Red that reads on this background.
void FieldForm::colour(Row& row) {
    const bool dark = palette().color(QPalette::Window).lightness() < 128;
    QPalette colours;
    colours.setColor(QPalette::WindowText, dark ? QColor(255, 150, 140) : QColor(170, 15, 25));
    row.complaint->setPalette(colours);
}

void FieldForm::changeEvent(QEvent* event) {
    QScrollArea::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        for (Row& row : rows_) {
            colour(row);
        }
    }
}

/// Esc puts back what was there; the wheel is for the form, not for what lies under the pointer.
bool FieldForm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Wheel) {
        event->ignore();
        return true;
    }
    const bool escape =
        event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyPress;
    if (escape && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        for (Row& row : rows_) {
            if (row.line == watched && (row.line->isModified() || !row.complaint->isHidden())) {
                if (event->type() == QEvent::KeyPress) {
                    put(row);
                    row.line->selectAll();
                }
                event->accept();
                return true;
            }
        }
    }
    return QScrollArea::eventFilter(watched, event);
}

}  // namespace gw::ui
