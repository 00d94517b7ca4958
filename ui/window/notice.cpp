#include "window/notice.h"

#include <QHBoxLayout>
#include <QStyle>

namespace gw::ui {

Notice::Notice(Sign sign, const QString& name, QWidget* parent) : QFrame(parent) {
    setObjectName(name);
    setAccessibleName(name);
    setFrameShape(QFrame::StyledPanel);
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::AlternateBase);
    auto* icon = new QLabel(this);
    const int size = style()->pixelMetric(QStyle::PM_SmallIconSize);
    icon->setPixmap(style()
                        ->standardIcon(sign == Sign::warning ? QStyle::SP_MessageBoxWarning
                                                             : QStyle::SP_MessageBoxInformation)
                        .pixmap(size, size));
    label_ = new QLabel(this);
    label_->setWordWrap(true);
    label_->setTextFormat(Qt::PlainText);
    row_ = new QHBoxLayout(this);
    row_->setContentsMargins(10, 6, 10, 6);
    row_->addWidget(icon);
    row_->addWidget(label_, 1);
}

void Notice::say(const QString& sentence, const QString& toolTip) {
    label_->setText(sentence);
    label_->setToolTip(toolTip);
    setAccessibleDescription(sentence);
}

QPushButton* Notice::offer(const QString& text, const std::function<void()>& what) {
    auto* button = new QPushButton(text, this);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, what);
    row_->addWidget(button);
    return button;
}

}  // namespace gw::ui
