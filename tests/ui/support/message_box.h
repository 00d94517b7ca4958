#pragma once

#include <QAbstractButton>
#include <QApplication>
#include <QMessageBox>
#include <QTimer>

namespace gw::test {

/// Answers the next question the program asks, and keeps what it asked.
class Answer {
public:
    explicit Answer(QMessageBox::StandardButton button) : button_(button) {
        QObject::connect(&timer_, &QTimer::timeout, [this] { answer(); });
        timer_.start(5);
    }
    bool wasAsked() const { return !text_.isEmpty(); }
    QString text() const { return text_; }

private:
    void answer() {
        for (QWidget* widget : QApplication::topLevelWidgets()) {
            auto* box = qobject_cast<QMessageBox*>(widget);
            if (box != nullptr && box->isVisible() && box->button(button_) != nullptr) {
                timer_.stop();
                text_ = box->text();
                box->button(button_)->click();
                return;
            }
        }
    }

    QMessageBox::StandardButton button_;
    QString text_;
    QTimer timer_;
};

}  // namespace gw::test
