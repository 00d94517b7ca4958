#pragma once

#include <QLockFile>
#include <QString>
#include <memory>

#include "base/result.h"

/// Who has a file open for writing: one owner at a time, in whatever program.
namespace gw::ui {

/// The lock lies beside the document, hidden (".NAME.lock"), not in a folder of the user's own: a
/// layout in a shared office folder is seen by everybody's machine. A lock whose process is gone is
/// taken over at once, unless it was taken on another machine, whose processes cannot be seen here.
class FileLock {
public:
    enum class State {
        held,       ///< by this one
        elsewhere,  ///< by another: see holder()
        none,       ///< no lock can be made there: a read-only place, a full disk, a missing folder
    };

    /// Tries to hold `path` (a link's target); its folder must exist. Never waits.
    static FileLock take(const QString& path);
    /// The same, after removing a lock that no process of this machine holds.
    static FileLock takeOver(const QString& path);

    State state() const { return state_; }
    /// "process 4711 on harbour-office", or empty.
    QString holder() const { return holder_; }

private:
    std::unique_ptr<QLockFile> lock_;  ///< released when it goes
    State state_ = State::none;
    QString holder_;
};

/// Where a link leads, however many steps; the path itself, made absolute, where there is no link
/// or its target is missing.
QString realPath(const QString& path);

}  // namespace gw::ui
