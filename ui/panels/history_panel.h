#pragma once

#include <QListWidget>

#include "panels/panel.h"

namespace gw::ui {

/// The steps taken, the first above; any of them can be gone back or forward to.
class HistoryPanel : public Panel {
    Q_OBJECT
public:
    explicit HistoryPanel(const Bench& bench, QWidget* parent = nullptr);

    QListWidget* list() const { return list_; }

protected:
    void refresh() override;

private:
    void rebuild();

    QListWidget* list_;
};

}  // namespace gw::ui
