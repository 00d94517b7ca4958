#pragma once

#include <QLabel>
#include <QWidget>

#include "layout/layout.h"
#include "window/choice.h"

namespace gw::ui {

/// A new gutter in one step: stock section and length, article, location, and a sentence that says
/// what comes of them.
class NewGutterForm : public QWidget {
    Q_OBJECT
public:
    explicit NewGutterForm(QWidget* parent = nullptr);

    /// With nothing in it and nothing else stated.
    layout::Layout chosen() const;
    QString sentence() const { return sentence_->text(); }

private:
    void describe();

    Choice* section_ = nullptr;
    Choice* length_ = nullptr;
    Choice* article_ = nullptr;
    Choice* location_ = nullptr;
    QLabel* sentence_ = nullptr;
};

}  // namespace gw::ui
