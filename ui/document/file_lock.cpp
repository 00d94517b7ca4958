#include "document/file_lock.h"

#include <QDir>
#include <QFileInfo>

namespace gw::ui {
namespace {

QString lockPathOf(const QString& path) {
    const QFileInfo document(realPath(path));
    return document.dir().filePath('.' + document.fileName() + QStringLiteral(".lock"));
}

QString holderOf(const QLockFile& lock) {
    qint64 process = 0;
    QString machine;
    QString program;
    if (!lock.getLockInfo(&process, &machine, &program)) {
        return QStringLiteral("another program");
    }
    return QStringLiteral("process %1 on %2").arg(process).arg(machine);
}

}  // namespace

QString realPath(const QString& path) {
    const QFileInfo info(path);
    const QString target = info.canonicalFilePath();
    if (!target.isEmpty()) {
        return target;
    }
    const QString folder = info.dir().canonicalPath();
    return folder.isEmpty() ? info.absoluteFilePath() : QDir(folder).filePath(info.fileName());
}

FileLock FileLock::take(const QString& path) {
    FileLock taken;
    taken.lock_ = std::make_unique<QLockFile>(lockPathOf(path));
    taken.lock_->setStaleLockTime(0);  // only a holder that is gone makes it stale, never its age
    if (taken.lock_->tryLock(0)) {
        taken.state_ = State::held;
    } else if (taken.lock_->error() == QLockFile::LockFailedError) {
        taken.state_ = State::elsewhere;
        taken.holder_ = holderOf(*taken.lock_);
    }
    return taken;
}

FileLock FileLock::takeOver(const QString& path) {
    FileLock taken = take(path);
    if (taken.state_ == State::elsewhere && taken.lock_->removeStaleLockFile()) {
        return take(path);
    }
    return taken;
}

}  // namespace gw::ui
