#pragma once

#include <QStackedWidget>
#include <QVBoxLayout>
#include <QWidget>

#include "window/notice.h"

namespace gw::ui {

/// The middle of the window: notices, and under them the board or a page in its place.
class Desk : public QWidget {
    Q_OBJECT
public:
    explicit Desk(QWidget* board, QWidget* parent = nullptr);

    /// Under those shown already; hidden until it is shown.
    void add(Notice* notice);

    /// In the board's place, until showBoard(). Takes it over; the page before goes.
    void showPage(QWidget* page);
    void showBoard();
    bool showsBoard() const { return stack_->currentWidget() == board_; }

Q_SIGNALS:
    void changed();  ///< between the board and a page

private:
    QVBoxLayout* notices_;
    QStackedWidget* stack_;
    QWidget* board_;
    QWidget* page_ = nullptr;
};

}  // namespace gw::ui
