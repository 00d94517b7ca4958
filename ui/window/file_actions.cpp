#include "window/file_actions.h"

#include <QCoreApplication>
#include <QDropEvent>
#include <QFileInfo>
#include <QMimeData>
#include <QProcess>

#include "panels/panel_text.h"
#include "window/main_window.h"
#include "window/samples.h"
#include "window/start_page.h"

namespace gw::ui {
namespace {

constexpr QLatin1String kBoardHint("boardHint");

/// The one file that is being dropped; empty where it is none, or several.
QString droppedFile(const QDropEvent& event) {
    const auto urls = event.mimeData()->urls();
    return urls.size() == 1 ? urls.front().toLocalFile() : QString();
}

}  // namespace

FileActions::FileActions(
    MainWindow& window, Desk& desk, FileCare& care, Settings& settings, const Places& places)
    : QObject(&window),
      window_(window),
      desk_(desk),
      care_(care),
      settings_(settings),
      places_(places) {
    window.setAcceptDrops(true);
    window.installEventFilter(this);
    connect(&window.session(), &FileSession::pathChanged, this, [this] {
        if (window_.session().hasPath()) {
            settings_.addRecentFile(window_.session().path());
        }
    });
    const auto toBoard = [this] { desk_.showBoard(); };
    connect(&window.document(), &Document::replaced, this, toBoard);
    connect(&window.document(), &Document::changed, this, toBoard);
    connect(&window.tools(), &ToolHolder::changed, this, toBoard);
    connect(&desk, &Desk::changed, this, [this] {
        if (desk_.showsBoard()) {
            showDocks();
        }
    });
    hintAtTheBoard();
}

// ---- menu -----------------------------------------------------------------------------------

void FileActions::addTo(QMenu& menu) {
    auto* recent = menu.addMenu(tr("Open &recent"));
    connect(recent, &QMenu::aboutToShow, this, [this, recent] { listRecent(*recent); });
    auto* samples = menu.addMenu(tr("Open a sa&mple"));
    connect(samples, &QMenu::aboutToShow, this, [this, samples] { listSamples(*samples); });
    connect(menu.addAction(tr("S&tart page")), &QAction::triggered, this, &FileActions::showStart);
    connect(menu.addAction(tr("Ne&w window")),
            &QAction::triggered,
            this,
            &FileActions::openAnotherWindow);
}

void FileActions::listRecent(QMenu& menu) {
    menu.clear();
    menu.setToolTipsVisible(true);
    const QStringList files = settings_.recentFiles();
    for (const auto& path : files) {
        const QFileInfo file(path);
        auto* action = menu.addAction(file.exists() ? file.fileName()
                                                    : tr("%1 – missing").arg(file.fileName()));
        action->setToolTip(path);
        action->setEnabled(file.exists());
        connect(action, &QAction::triggered, this, [this, path] { openFile(path); });
    }
    menu.addSeparator();
    auto* forget = menu.addAction(tr("&Clear the list"));
    forget->setEnabled(!files.isEmpty());
    connect(forget, &QAction::triggered, this, [this] { settings_.forgetRecentFiles(); });
}

void FileActions::listSamples(QMenu& menu) {
    menu.clear();
    for (const Sample& sample : samplesIn(places_.samples)) {
        const QString name = sample.isSpoilt ? tr("Breach: %1").arg(sample.name) : sample.name;
        connect(menu.addAction(name), &QAction::triggered, this, [this, path = sample.path] {
            openSample(path);
        });
    }
    if (menu.isEmpty()) {
        menu.addAction(tr("none found"))->setEnabled(false);
    }
}

void FileActions::openAnotherWindow() {
    if (!QProcess::startDetached(QCoreApplication::applicationFilePath(), {})) {
        window_.boardState().setHint(tr("Another window could not be opened"));
    }
}

// ---- start page -----------------------------------------------------------------------------

void FileActions::showStart() {
    auto* page = new StartPage(samplesIn(places_.samples), window_.document().shelf());
    const auto list = [this, page] { page->showRecent(settings_.recentFiles()); };
    const auto listLeftovers = [this, page] { page->showLeftovers(care_.leftovers()); };
    list();
    listLeftovers();
    connect(page, &StartPage::newWanted, this, &FileActions::begin);
    connect(page, &StartPage::fileWanted, &window_, &MainWindow::askAndOpen);
    connect(page, &StartPage::recentWanted, this, &FileActions::openFile);
    connect(page, &StartPage::sampleWanted, this, &FileActions::openSample);
    connect(page, &StartPage::recoveryWanted, &care_, &FileCare::recover);
    connect(page, &StartPage::recentForgotten, this, [this, list] {
        settings_.forgetRecentFiles();
        list();
    });
    connect(&care_, &FileCare::leftoversChanged, page, listLeftovers);
    desk_.showPage(page);
    hideDocks();
    page->setFocus();
}

void FileActions::hideDocks() {
    for (auto* dock : window_.findChildren<QDockWidget*>()) {
        if (!dock->isHidden()) {
            dock->hide();
            hidden_.emplace_back(dock);
        }
    }
}

void FileActions::showDocks() {
    for (const auto& dock : hidden_) {
        if (dock) {
            dock->show();
        }
    }
    hidden_.clear();
}

void FileActions::begin(const layout::Layout& layout) {
    if (!window_.mayDrop()) {
        return;
    }
    if (const auto started = window_.session().newLayout(layout); !started) {
        window_.complain(started.error());
    }
}

void FileActions::openFile(const QString& path) {
    if (!window_.mayDrop()) {
        return;
    }
    if (const auto opened = window_.open(path); !opened) {
        window_.complain(opened.error());
    }
}

void FileActions::openSample(const QString& path) {
    const auto layout = readSample(path, window_.document().shelf());
    if (!layout) {
        window_.complain(layout.error());
        return;
    }
    begin(*layout);
}

// ---- first use ------------------------------------------------------------------------------

/// Shown with the board until it is put away, once for all.
void FileActions::hintAtTheBoard() {
    if (!settings_.remembers() || settings_.isPutAway(kBoardHint)) {
        return;
    }
    hint_ = new Notice(Notice::Sign::information, tr("How the board works"));
    hint_->say(
        tr("Drag blocks, entries and the ends of conductors; an end dropped on a port is "
           "landed. The Place menu brings in more. The findings judge every move, and the "
           "line at the bottom says what the mouse would do."));
    hint_->offer(tr("&Got it"), [this] {
        settings_.putAway(kBoardHint);
        hint_->hide();
        hint_->deleteLater();
        hint_ = nullptr;
    });
    desk_.add(hint_);
    const auto follow = [this] {
        if (hint_ != nullptr) {
            hint_->setVisible(desk_.showsBoard());
        }
    };
    connect(&desk_, &Desk::changed, this, follow);
    follow();
}

// ---- drag and drop --------------------------------------------------------------------------

bool FileActions::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::DragEnter || event->type() == QEvent::Drop) {
        auto& drop = static_cast<QDropEvent&>(*event);
        const QString file = droppedFile(drop);
        if (!file.isEmpty()) {
            drop.acceptProposedAction();
            if (event->type() == QEvent::Drop) {
                // Once the other program is free again: a question may follow.
                QMetaObject::invokeMethod(
                    this, [this, file] { openFile(file); }, Qt::QueuedConnection);
            }
            return true;
        }
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace gw::ui
