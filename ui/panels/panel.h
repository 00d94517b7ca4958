#pragma once

#include <QTimer>
#include <QWidget>

#include "tools/tool.h"

namespace gw::ui {

/// What all panels share: they follow the document, but redraw once however often it changes
/// before the next events are handled, and not at all while nobody sees them.
class Panel : public QWidget {
    Q_OBJECT
public:
    /// Shows the document as it is now, seen or not.
    void refreshNow();

protected:
    explicit Panel(const Bench& bench, QWidget* parent = nullptr);

    const Bench& bench() const { return bench_; }
    Document& document() const { return bench_.document; }
    Selection& selection() const { return bench_.selection; }

    /// Brings what is shown up to date.
    virtual void refresh() = 0;
    /// refresh() when the next events are handled, or when the panel is next seen.
    void refreshSoon();

    void showEvent(QShowEvent* event) override;

private:
    void refreshIfSeen();

    Bench bench_;
    QTimer timer_;
    bool stale_ = true;
};

}  // namespace gw::ui
