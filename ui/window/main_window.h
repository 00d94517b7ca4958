#pragma once

#include <QAction>
#include <QMainWindow>
#include <functional>

#include "canvas/board.h"
#include "document/file_session.h"
#include "editing/edited.h"
#include "panels/findings_panel.h"
#include "window/edit_actions.h"
#include "window/export_actions.h"
#include "window/file_actions.h"
#include "window/file_care.h"
#include "window/panel_docks.h"
#include "window/route_actions.h"

namespace gw::ui {

/// The window: the drawing board, the findings beside it, files and history.
class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    /// The page of help of a check, as text.
    using HelpPages = std::function<QString(checks::Check)>;

    /// A small empty gutter to begin with. shelf: all parts at hand.
    /// Without places it keeps and finds nothing beside the layouts themselves.
    MainWindow(parts::Shelf shelf,
               HelpPages help,
               const Places& places = {},
               QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Error as FileSession::open; then the window is as it was.
    Result<void> open(const QString& path);

    Document& document() { return document_; }
    Selection& selection() { return selection_; }
    BoardState& boardState() { return state_; }
    ToolHolder& tools() { return tools_; }
    Board& board() { return *board_; }
    FileSession& session() { return session_; }
    FindingsPanel& findings() { return panels_->findings(); }
    PanelDocks& panels() { return *panels_; }
    RouteActions& routes() { return *routes_; }
    FileCare& fileCare() { return *fileCare_; }
    FileActions& fileActions() { return *fileActions_; }
    EditActions& edits() { return *edits_; }
    ExportActions& exports() { return *exports_; }

    bool mayDrop();  ///< what is unsaved has been saved or given up
    void askAndOpen();
    void complain(const Error& error);

    /// For fanning in and placing without a dialogue.
    void makeEdit(const QString& name, const editing::Edit& after);
    void makeNew(const QString& name, const Result<editing::Made>& made);

protected:
    void closeEvent(QCloseEvent* event) override;

private:
    Bench bench() { return {document_, selection_, state_}; }
    QAction* action(QMenu* menu,
                    const QString& text,
                    const QKeySequence& key,
                    const std::function<void()>& what);
    void makeFileMenu();
    void makeEditMenu();
    void makePlaceMenu();
    void makePartsMenu(QMenu* menu);
    void takeInHand(const parts::PartId& part);  ///< to be placed
    void makeViewMenu();
    void makeHelpMenu();
    void makePanels();
    void makeStatus();
    void updateTitle();
    void updateActions();

    void startNew();
    bool save();
    bool saveAs();
    bool saved(const Saved& outcome);
    void addCircuit();
    void fanIn();
    void drawConductors();
    void addEntry();
    void showHelp(checks::Check check);
    void showAbout();

    HelpPages help_;
    Document document_;
    Selection selection_;
    BoardState state_;
    ToolHolder tools_;
    FileSession session_;
    Board* board_;
    Desk* desk_;
    FileCare* fileCare_;
    Settings settings_;
    FileActions* fileActions_;
    EditActions* edits_;
    ExportActions* exports_;
    PanelDocks* panels_ = nullptr;
    RouteActions* routes_;
    QAction* undo_ = nullptr;
    QAction* redo_ = nullptr;
};

/// 60 x 10 x 10 in, an auxiliary gutter of steel with nothing in it and nothing else stated.
layout::Layout emptyLayout();

}  // namespace gw::ui
