#pragma once

#include <QDockWidget>
#include <QMenu>
#include <QObject>
#include <QPointer>
#include <vector>

#include "window/desk.h"
#include "window/file_care.h"
#include "window/places.h"
#include "window/settings.h"

namespace gw::ui {

class MainWindow;
class StartPage;

/// The ways to a layout beside New and Open: the start page, recent files, samples, files dropped
/// on the window, another window.
class FileActions : public QObject {
    Q_OBJECT
public:
    FileActions(
        MainWindow& window, Desk& desk, FileCare& care, Settings& settings, const Places& places);

    /// Their entries, at the menu's end.
    void addTo(QMenu& menu);
    void showStart();

    /// Asks about unsaved work first; complains where it cannot be read.
    void openFile(const QString& path);
    /// A copy of it, with no file yet.
    void openSample(const QString& path);

protected:
    /// Files dropped on the window.
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void listRecent(QMenu& menu);
    void listSamples(QMenu& menu);
    void begin(const layout::Layout& layout);
    void openAnotherWindow();
    void hintAtTheBoard();
    void hideDocks();
    void showDocks();

    MainWindow& window_;
    Desk& desk_;
    FileCare& care_;
    Settings& settings_;
    Places places_;
    Notice* hint_ = nullptr;
    std::vector<QPointer<QDockWidget>> hidden_;  ///< while there is no layout to judge
};

}  // namespace gw::ui
