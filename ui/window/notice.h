#pragma once

#include <QFrame>
#include <QLabel>
#include <QPushButton>
#include <functional>

class QHBoxLayout;

namespace gw::ui {

/// A strip across the window that says something and waits for no answer: a sign, a sentence and
/// what can be done about it.
class Notice : public QFrame {
    Q_OBJECT
public:
    enum class Sign { information, warning };

    /// name: of the object, and of the strip to who cannot see it.
    Notice(Sign sign, const QString& name, QWidget* parent = nullptr);

    void say(const QString& sentence, const QString& toolTip = {});
    QString sentence() const { return label_->text(); }
    QPushButton* offer(const QString& text, const std::function<void()>& what);

private:
    QLabel* label_;
    QHBoxLayout* row_;
};

}  // namespace gw::ui
