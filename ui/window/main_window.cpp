#include "window/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QStatusBar>
#include <QTextBrowser>
#include <QToolBar>
#include <QVBoxLayout>
#include <map>

#include "base/contract.h"
#include "editing/edits.h"
#include "panels/panel_text.h"
#include "panels/shelf_panel.h"
#include "panels/tables_panel.h"
#include "tools/conductor_tool.h"
#include "tools/entry_tool.h"
#include "tools/place_tool.h"
#include "window/dialogs.h"

namespace gw::ui {
namespace {

live::LiveLayout liveOf(parts::Shelf shelf) {
    auto live = live::LiveLayout::create(emptyLayout(), std::move(shelf));
    CONTRACT(live.has_value());
    return std::move(*live);
}

QString layoutFilter() {
    return QObject::tr("Layouts (*.json)");
}

}  // namespace

layout::Layout emptyLayout() {
    layout::Layout layout;
    layout.gutter.inside = {60.0, 10.0, 10.0};
    return layout;
}

MainWindow::MainWindow(parts::Shelf shelf, HelpPages help, const Places& places, QWidget* parent)
    : QMainWindow(parent),
      help_(std::move(help)),
      document_(liveOf(std::move(shelf))),
      tools_(bench()),
      session_(document_),
      board_(new Board(bench(), tools_, this)),
      desk_(new Desk(board_)),
      fileCare_(new FileCare(*this, *desk_, places)),
      settings_(places.settings),
      fileActions_(new FileActions(*this, *desk_, *fileCare_, settings_, places)),
      edits_(new EditActions(bench(), tools_, *board_, *this)),
      exports_(new ExportActions(
          bench(), *board_, *this, [this](const Error& error) { complain(error); })),
      routes_(new RouteActions(bench(), *this)) {
    setObjectName(QStringLiteral("main"));
    setCentralWidget(desk_);
    resize(1280, 820);
    makeFileMenu();
    makeEditMenu();
    makePlaceMenu();
    makePanels();
    makeViewMenu();
    makeHelpMenu();
    makeStatus();
    connect(&document_, &Document::changed, this, [this] {
        if (!document_.inGesture()) {
            selection_.keepThoseIn(document_.layout());
        }
    });
    connect(&document_, &Document::replaced, this, [this] {
        tools_.take(nullptr);
        selection_.clear();
    });
    connect(&document_, &Document::modifiedChanged, this, &MainWindow::updateTitle);
    connect(&session_, &FileSession::pathChanged, this, &MainWindow::updateTitle);
    for (const auto signal : {&Document::gestureChanged, &Document::replaced}) {
        connect(&document_, signal, this, &MainWindow::updateActions);
    }
    connect(&document_.history(), &QUndoStack::indexChanged, this, &MainWindow::updateActions);
    updateTitle();
    updateActions();
    board_->setFocus();
}

MainWindow::~MainWindow() {
    document_.disconnect(this);
    document_.history().disconnect(this);
    session_.disconnect(this);
    selection_.disconnect(this);
    delete exports_;
    delete edits_;
    delete routes_;
    delete fileActions_;
    delete fileCare_;
    delete panels_;
    delete takeCentralWidget();  // before what it works on
}

// ---- menus ----------------------------------------------------------------------------------

QAction* MainWindow::action(QMenu* menu,
                            const QString& text,
                            const QKeySequence& key,
                            const std::function<void()>& what) {
    auto* made = menu->addAction(text);
    made->setShortcut(key);
    connect(made, &QAction::triggered, this, [this, what] {
        if (!document_.inGesture()) {  // in mid-drag nothing else happens
            what();
        }
    });
    return made;
}

void MainWindow::makeFileMenu() {
    auto* menu = menuBar()->addMenu(tr("&File"));
    action(menu, tr("&New gutter…"), QKeySequence::New, [this] { startNew(); });
    action(menu, tr("&Open…"), QKeySequence::Open, [this] { askAndOpen(); });
    fileActions_->addTo(*menu);
    menu->addSeparator();
    action(menu, tr("&Save"), QKeySequence::Save, [this] { save(); });
    action(menu, tr("Save &as…"), QKeySequence::SaveAs, [this] { saveAs(); });
    menu->addSeparator();
    exports_->addTo(*menu);
    menu->addSeparator();
    action(menu, tr("&Quit"), QKeySequence::Quit, [this] { close(); });
}

void MainWindow::makeEditMenu() {
    auto* menu = menuBar()->addMenu(tr("&Edit"));
    undo_ = action(menu, tr("&Undo"), QKeySequence::Undo, [this] { document_.undo(); });
    redo_ = action(menu, tr("&Redo"), QKeySequence::Redo, [this] { document_.redo(); });
    menu->addSeparator();
    edits_->addTo(*menu);
}

void MainWindow::makePlaceMenu() {
    auto* menu = menuBar()->addMenu(tr("&Place"));
    makePartsMenu(menu->addMenu(tr("&Block")));
    action(menu, tr("&Entry…"), QKeySequence(Qt::Key_E), [this] { addEntry(); });
    menu->addSeparator();
    action(menu, tr("&Circuit…"), QKeySequence(Qt::Key_C), [this] { addCircuit(); });
    action(menu, tr("&Fan in a circuit…"), QKeySequence(Qt::Key_F), [this] { fanIn(); });
    action(menu, tr("&Draw conductors…"), QKeySequence(Qt::Key_D), [this] { drawConductors(); });
    menu->addSeparator();
    routes_->addTo(*menu);
    edits_->offerOnNothing(menu);
}

/// By family, as the parts say.
void MainWindow::makePartsMenu(QMenu* menu) {
    std::map<std::string, QMenu*> families;
    for (const auto& [id, part] : document_.shelf()) {
        QMenu*& family = families[part.family];
        if (family == nullptr) {
            family = menu->addMenu(part.family.empty() ? tr("other") : toQString(part.family));
            family->setToolTipsVisible(true);
        }
        auto* made =
            action(family, toQString(part.name), {}, [this, part = id] { takeInHand(part); });
        made->setToolTip(toQString(part.note));
    }
}

void MainWindow::takeInHand(const parts::PartId& part) {
    if (!document_.inGesture()) {
        tools_.take(std::make_unique<PlaceTool>(bench(), part));
        board_->setFocus();
    }
}

void MainWindow::makeViewMenu() {
    constexpr double kStep = 1.25;
    auto* menu = menuBar()->addMenu(tr("&View"));
    action(menu, tr("Zoom &in"), QKeySequence::ZoomIn, [this] { board_->zoomBy(kStep); });
    action(menu, tr("Zoom &out"), QKeySequence::ZoomOut, [this] { board_->zoomBy(1.0 / kStep); });
    action(menu, tr("&Whole gutter"), QKeySequence(Qt::CTRL | Qt::Key_0), [this] {
        board_->fitAll();
    });
    action(menu, tr("What is &selected"), QKeySequence(Qt::CTRL | Qt::Key_9), [this] {
        board_->fitSelection();
    });
    menu->addSeparator();
    panels_->addActions(menu);
}

void MainWindow::makeHelpMenu() {
    auto* menu = menuBar()->addMenu(tr("&Help"));
    action(menu, tr("&About Gutterwright"), {}, [this] { showAbout(); });
}

void MainWindow::makePanels() {
    panels_ = new PanelDocks(*this, bench());
    connect(&findings(), &FindingsPanel::jumpTo, board_, &Board::show);
    connect(&findings(), &FindingsPanel::helpWanted, this, &MainWindow::showHelp);
    connect(&panels_->shelf(), &ShelfPanel::partWanted, this, &MainWindow::takeInHand);
    connect(&panels_->tables(), &TablesPanel::showOnBoard, board_, &Board::fitSelection);
    connect(&panels_->tables(), &TablesPanel::circuitWanted, this, &MainWindow::addCircuit);
}

void MainWindow::makeStatus() {
    auto* tool = new QLabel(this);
    auto* hint = new QLabel(this);
    statusBar()->addWidget(tool);
    statusBar()->addWidget(hint, 1);
    const auto showTool = [this, tool] { tool->setText(tools_.current().name() + tr(" |")); };
    showTool();
    hint->setText(tools_.current().hint());
    connect(&tools_, &ToolHolder::changed, tool, showTool);
    connect(&state_, &BoardState::hintChanged, hint, &QLabel::setText);
    connect(&session_, &FileSession::message, hint, &QLabel::setText);
}

void MainWindow::updateTitle() {
    setWindowTitle(session_.shownName() + QStringLiteral("[*]") +
                   (session_.isReadOnly() ? tr(" (read-only)") : QString()) +
                   tr(" – Gutterwright"));
    setWindowFilePath(session_.path());
    setWindowModified(document_.isModified());
}

void MainWindow::updateActions() {
    const auto& history = document_.history();
    undo_->setEnabled(document_.canUndo());
    redo_->setEnabled(document_.canRedo());
    undo_->setText(history.canUndo() ? tr("&Undo: %1").arg(history.undoText()) : tr("&Undo"));
    redo_->setText(history.canRedo() ? tr("&Redo: %1").arg(history.redoText()) : tr("&Redo"));
}

// ---- files ----------------------------------------------------------------------------------

Result<void> MainWindow::open(const QString& path) {
    return session_.open(path);
}

void MainWindow::complain(const Error& error) {
    QMessageBox::warning(this, tr("Gutterwright"), toQString(toLine(error)));
}

bool MainWindow::mayDrop() {
    if (!document_.isModified()) {
        return true;
    }
    const auto answer =
        QMessageBox::question(this,
                              tr("Unsaved changes"),
                              tr("Save the changes to %1?").arg(session_.shownName()),
                              QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel);
    return answer == QMessageBox::Discard || (answer == QMessageBox::Save && save());
}

void MainWindow::startNew() {
    const auto layout = mayDrop() ? askNewGutter(this) : std::nullopt;
    if (!layout) {
        return;
    }
    if (const auto started = session_.newLayout(*layout); !started) {
        complain(started.error());
    }
}

void MainWindow::askAndOpen() {
    const QString path =
        mayDrop() ? QFileDialog::getOpenFileName(this, tr("Open a layout"), {}, layoutFilter())
                  : QString();
    if (path.isEmpty()) {
        return;
    }
    if (const auto opened = open(path); !opened) {
        complain(opened.error());
    }
}

bool MainWindow::save() {
    return saved(session_.save());
}

bool MainWindow::saveAs() {
    const QString path =
        QFileDialog::getSaveFileName(this, tr("Save the layout"), session_.path(), layoutFilter());
    return !path.isEmpty() && saved(session_.saveAs(path));
}

/// Where asking helps, asks.
bool MainWindow::saved(const Saved& outcome) {
    if (outcome) {
        return true;
    }
    switch (outcome.error().trouble) {
        case SaveTrouble::noPath:
            return saveAs();
        case SaveTrouble::changedOnDisk: {
            const auto answer = QMessageBox::question(
                this,
                tr("Changed by another program"),
                tr("%1 was changed by another program since it was opened. Overwrite it?")
                    .arg(session_.shownName()),
                QMessageBox::Yes | QMessageBox::Cancel,
                QMessageBox::Cancel);
            return answer == QMessageBox::Yes && saved(session_.save(IfChanged::overwrite));
        }
        case SaveTrouble::readOnly:
            complain(outcome.error().error);
            return saveAs();
        case SaveTrouble::heldElsewhere:
        case SaveTrouble::cannotWrite:
            complain(outcome.error().error);
            return false;
    }
    return false;
}

void MainWindow::closeEvent(QCloseEvent* event) {
    tools_.take(nullptr);
    event->setAccepted(mayDrop());
    if (event->isAccepted()) {
        fileCare_->forget();
    }
}

// ---- edits ----------------------------------------------------------------------------------

void MainWindow::makeEdit(const QString& name, const editing::Edit& after) {
    if (!after) {
        complain(after.error());
    } else if (const auto edited = document_.edit(name, *after); !edited) {
        complain(edited.error());
    }
}

void MainWindow::makeNew(const QString& name, const Result<editing::Made>& made) {
    if (!made) {
        complain(made.error());
        return;
    }
    makeEdit(name, made->layout);
    selection_.set(made->items);
}

void MainWindow::addCircuit() {
    if (const auto circuit = askCircuit(this, document_.layout())) {
        makeNew(tr("Add circuit"), editing::addCircuit(document_.built(), *circuit));
    }
}

void MainWindow::addEntry() {
    if (const auto answer = askRaceway(this)) {
        tools_.take(std::make_unique<EntryTool>(bench(), answer->raceway, answer->tradeSize));
        board_->setFocus();
    }
}

void MainWindow::fanIn() {
    const auto& layout = document_.layout();
    if (layout.circuits.empty() || layout.entries.empty()) {
        state_.setHint(tr("Place an entry and add a circuit first"));
        return;
    }
    if (const auto answer = askConductors(this, layout, true)) {
        makeNew(tr("Fan in %1").arg(toQString(editing::itemName(layout, answer->circuit))),
                editing::fanIn(document_.built(), *answer->entry, answer->circuit, answer->kind));
    }
}

void MainWindow::drawConductors() {
    if (document_.layout().circuits.empty()) {
        state_.setHint(tr("Add a circuit first"));
        return;
    }
    if (const auto answer = askConductors(this, document_.layout(), false)) {
        tools_.take(std::make_unique<ConductorTool>(bench(), answer->circuit, answer->kind));
        board_->setFocus();
    }
}

// ---- help -----------------------------------------------------------------------------------

void MainWindow::showHelp(checks::Check check) {
    QDialog dialog(this);
    dialog.setWindowTitle(toQString(checks::checkTitle(check)));
    auto* page = new QTextBrowser;
    page->setMarkdown(help_(check));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
    connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    auto* column = new QVBoxLayout(&dialog);
    column->addWidget(page);
    column->addWidget(buttons);
    dialog.resize(640, 560);
    dialog.exec();
}

void MainWindow::showAbout() {
    QMessageBox::about(
        this,
        tr("About Gutterwright"),
        tr("<p><b>Gutterwright</b> plans an electrical gutter before a conductor is cut.</p>"
           "<p>It is a planning aid. The adopted code and its local amendments, the authority "
           "having jurisdiction, and the listing and instructions of the equipment come before it. "
           "The work is for licensed electricians, on equipment that is de-energized, locked out "
           "and tested.</p>"
           "<p>The parts that come with it are invented: replace them with the data of the "
           "connector you buy.</p>"));
}

}  // namespace gw::ui
