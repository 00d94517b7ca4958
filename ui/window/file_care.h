#pragma once

#include <QObject>
#include <vector>

#include "document/autosave.h"
#include "window/desk.h"
#include "window/places.h"

namespace gw::ui {

class MainWindow;

/// What the window does about its document's file unasked: it keeps unsaved work, offers what an
/// earlier run left over, and tells what others do to the file. It never forces anything.
class FileCare : public QObject {
    Q_OBJECT
public:
    FileCare(MainWindow& window, Desk& desk, const Places& places);

    /// The window closes, and what is unsaved has been given up.
    void forget();

    /// Of earlier runs, not decided on yet.
    const std::vector<Leftover>& leftovers() const { return leftovers_; }
    void recover(const QString& leftoverPath);

Q_SIGNALS:
    void leftoversChanged();

private:
    void makeRecoveryNotice();
    void lookForLeftovers();
    void offerLatest();
    void discardLatest();
    void drop(const QString& leftoverPath);

    MainWindow& window_;
    Desk& desk_;
    RecoveryFolder folder_;
    std::unique_ptr<Autosave> autosave_;  ///< none where nothing is to be kept
    std::vector<Leftover> leftovers_;
    Notice* recovery_ = nullptr;
    QPushButton* recover_ = nullptr;
};

/// "yard.json", or for a layout never saved its title.
QString shownName(const Leftover& leftover);

}  // namespace gw::ui
