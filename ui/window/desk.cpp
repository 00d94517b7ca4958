#include "window/desk.h"

namespace gw::ui {

Desk::Desk(QWidget* board, QWidget* parent)
    : QWidget(parent), notices_(new QVBoxLayout), stack_(new QStackedWidget(this)), board_(board) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addLayout(notices_);
    column->addWidget(stack_, 1);
    stack_->addWidget(board);
    setFocusProxy(board);
}

void Desk::add(Notice* notice) {
    notice->hide();
    notices_->addWidget(notice);
}

void Desk::showPage(QWidget* page) {
    showBoard();
    page_ = page;
    stack_->addWidget(page);
    stack_->setCurrentWidget(page);
    setFocusProxy(page);
    Q_EMIT changed();
}

void Desk::showBoard() {
    if (showsBoard()) {
        return;
    }
    stack_->setCurrentWidget(board_);
    setFocusProxy(board_);
    if (page_ != nullptr) {
        stack_->removeWidget(page_);
        page_->deleteLater();  // it may be the sender
        page_ = nullptr;
    }
    board_->setFocus();
    Q_EMIT changed();
}

}  // namespace gw::ui
