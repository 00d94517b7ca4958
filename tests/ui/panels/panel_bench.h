#pragma once

#include <QString>
#include <memory>

#include "tools/tool.h"

/// What a panel stands on in tests: a sample opened, nothing selected.
namespace gw::test {

class PanelBench {
public:
    /// A folder of samples.
    explicit PanelBench(const char* sample = "five-tenants");

    ui::Bench bench() { return {*document, selection, board}; }
    const layout::Layout& layout() const { return document->layout(); }
    int steps() const { return document->history().index(); }

    std::unique_ptr<ui::Document> document;
    ui::Selection selection;
    ui::BoardState board;
};

/// As the program starts with what is due at once: timers of 0 ms.
void handleEvents();

/// Keeps a picture of the widget in the folder GW_PANELS_TO names, if it does, for looking at.
void keepPicture(QWidget& widget, const QString& name, QSize size);

}  // namespace gw::test
