#pragma once

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <vector>

#include "editing/fields.h"
#include "tools/tool.h"

namespace gw::ui {

/// The fields of some owners, one row each, under their headings. What is typed becomes one step of
/// the history when Enter is pressed or the field is left; what cannot be is said under the field,
/// and nothing changes. Esc puts back what was there. Where the owners differ it says "several".
class FieldForm : public QScrollArea {
    Q_OBJECT
public:
    explicit FieldForm(const Bench& bench, QWidget* parent = nullptr);

    /// As the layout is now. What is being typed for the same owners stays.
    void show(const editing::Owners& owners);
    const editing::Owners& owners() const { return owners_; }

    /// The editor of a field: a line or a combo box. nullptr: there is no such field.
    QWidget* editor(const QString& name) const;
    /// What is wrong with what was typed there last; empty: nothing.
    QString complaint(const QString& name) const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    struct Row {
        editing::SharedField shown;
        QLabel* label = nullptr;
        QLineEdit* line = nullptr;
        QComboBox* box = nullptr;
        QLabel* complaint = nullptr;
        QWidget* editor() const;
    };

    bool sameRows(const std::vector<editing::SharedField>& fields) const;
    void rebuild(const std::vector<editing::SharedField>& fields);
    void addRow(const editing::SharedField& field, QString& group);
    QWidget* makeEditor(Row& row);
    void update(Row& row, const editing::SharedField& field);
    void fillBox(Row& row);
    void put(Row& row);  ///< shows the value as it is in the layout
    void commit(const std::string& name, const QString& text);
    void complain(Row& row, const QString& text);
    void colour(Row& row);
    Row* find(const std::string& name);

    Bench bench_;
    editing::Owners owners_;
    std::vector<Row> rows_;
    QFormLayout* form_ = nullptr;
};

}  // namespace gw::ui
