#pragma once

#include <QLabel>

#include "panels/field_form.h"
#include "panels/panel.h"

namespace gw::ui {

/// What is selected, member by member; the gutter where nothing is.
class PropertiesPanel : public Panel {
    Q_OBJECT
public:
    explicit PropertiesPanel(const Bench& bench, QWidget* parent = nullptr);

    FieldForm& form() { return *form_; }
    QString heading() const { return heading_->text(); }

protected:
    void refresh() override;

private:
    QLabel* heading_;
    FieldForm* form_;
};

/// The gutter and the layout as a whole, whatever is selected.
class GutterPanel : public Panel {
    Q_OBJECT
public:
    explicit GutterPanel(const Bench& bench, QWidget* parent = nullptr);

    FieldForm& form() { return *form_; }

protected:
    void refresh() override;

private:
    FieldForm* form_;
};

}  // namespace gw::ui
