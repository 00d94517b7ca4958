#include "panels/panel.h"

namespace gw::ui {

Panel::Panel(const Bench& bench, QWidget* parent) : QWidget(parent), bench_(bench) {
    timer_.setSingleShot(true);
    timer_.setInterval(0);
    connect(&timer_, &QTimer::timeout, this, &Panel::refreshIfSeen);
    connect(&document(), &Document::changed, this, &Panel::refreshSoon);
    connect(&document(), &Document::replaced, this, &Panel::refreshSoon);
}

void Panel::refreshNow() {
    timer_.stop();
    stale_ = false;
    refresh();
}

void Panel::refreshSoon() {
    stale_ = true;
    if (isVisible() && !timer_.isActive()) {
        timer_.start();
    }
}

void Panel::refreshIfSeen() {
    if (stale_ && isVisible()) {
        refreshNow();
    }
}

void Panel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_) {
        refreshNow();
    }
}

}  // namespace gw::ui
