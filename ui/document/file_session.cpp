#include "document/file_session.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFileInfo>
#include <utility>

#include "base/contract.h"
#include "base/read_file.h"
#include "document/save_bytes.h"
#include "files/layout_file.h"

namespace gw::ui {
namespace {

/// How long the disk is left alone after it stirred: others write in several goes.
constexpr int kSettlingMilliseconds = 100;

/// Stands for a hash where there is no file, or none that can be read.
const QByteArray kNoFile = QByteArrayLiteral("no file");
const QByteArray kUnreadable = QByteArrayLiteral("unreadable");

/// Of what lies there now; kNoFile, kUnreadable. Empty for an empty path.
QByteArray hashOnDisk(const QString& path) {
    if (path.isEmpty()) {
        return {};
    }
    if (!QFileInfo::exists(path)) {
        return kNoFile;
    }
    const auto bytes = readFile(path.toStdString());
    return bytes ? hashOf(*bytes) : kUnreadable;
}

QString reasonForReadOnly(const QString& path, const FileLock& lock) {
    const QFileInfo file(path);
    if (lock.state() == FileLock::State::elsewhere) {
        return FileSession::tr("open for writing in %1").arg(lock.holder());
    }
    if (file.exists() && !file.isWritable()) {
        return FileSession::tr("the file may not be written");
    }
    const QFileInfo folder(QFileInfo(realPath(path)).path());
    if (folder.exists() && !folder.isWritable()) {
        return FileSession::tr("the folder may not be written: %1").arg(folder.filePath());
    }
    return {};
}

SaveFailure failure(SaveTrouble trouble,
                    const std::string& sentence,
                    const QString& path,
                    const QString& found = {}) {
    return {trouble,
            {ErrorCode::unwritable, sentence, path.toStdString(), {}, {}, found.toStdString()}};
}

}  // namespace

QByteArray hashOf(const std::string& bytes) {
    const auto size = static_cast<qsizetype>(bytes.size());
    return QCryptographicHash::hash(QByteArray::fromRawData(bytes.data(), size),
                                    QCryptographicHash::Sha256)
        .toHex();
}

const layout::Layout& settledLayout(const Document& document) {
    return document.inGesture() ? document.beforeGesture() : document.layout();
}

FileSession::FileSession(Document& document, QObject* parent)
    : QObject(parent), document_(document) {
    settling_.setSingleShot(true);
    settling_.setInterval(kSettlingMilliseconds);
    const auto stirred = [this] {
        if (!settling_.isActive()) {
            settling_.start();
        }
    };
    connect(&watcher_, &QFileSystemWatcher::fileChanged, this, stirred);
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, stirred);
    connect(&settling_, &QTimer::timeout, this, &FileSession::look);
}

Result<void> FileSession::newLayout(const layout::Layout& layout) {
    if (const auto replaced = document_.replace(layout); !replaced) {
        return replaced;
    }
    settle({}, FileLock(), {});
    return {};
}

Result<void> FileSession::open(const QString& path, IfHeld ifHeld) {
    const QString full = QFileInfo(path).absoluteFilePath();
    auto lock = lockFor(full, ifHeld);  // before reading: its owner may be about to save
    const auto bytes = readFile(full.toStdString());
    if (!bytes) {
        return fail(bytes.error());
    }
    if (const auto shown = show(*bytes, full); !shown) {
        return shown;
    }
    settle(full, std::move(lock), hashOf(*bytes));
    Q_EMIT message(isReadOnly() ? tr("Opened %1 read-only: %2").arg(shownName(), readOnlyReason_)
                                : tr("Opened %1").arg(shownName()));
    return {};
}

Result<void> FileSession::reload() {
    CONTRACT(hasPath());
    return open(path_);
}

Result<void> FileSession::openRecovered(const RecoveredLayout& recovered) {
    auto lock =
        recovered.path.isEmpty() ? FileLock() : lockFor(recovered.path, IfHeld::openReadOnly);
    if (const auto shown = show(recovered.bytes, recovered.path); !shown) {
        return shown;
    }
    document_.setUnsaved();
    settle(recovered.path, std::move(lock), recovered.baseHash);
    settling_.start();  // tells at once where the file is another by now
    Q_EMIT message(tr("Recovered %1: not saved yet").arg(shownName()));
    return {};
}

Saved FileSession::save(IfChanged ifChanged) {
    if (auto stopped = obstacle(ifChanged)) {
        return tl::unexpected(std::move(*stopped));
    }
    return write(path_, std::nullopt);
}

Saved FileSession::saveAs(const QString& path) {
    const QString full = QFileInfo(path).absoluteFilePath();
    if (isOwnPath(full)) {
        return save(IfChanged::overwrite);
    }
    auto lock = lockFor(full, IfHeld::openReadOnly);
    if (lock->state() == FileLock::State::elsewhere) {
        return tl::unexpected(failure(
            SaveTrouble::heldElsewhere, "the file is open elsewhere", full, lock->holder()));
    }
    return write(full, std::move(lock));
}

QString FileSession::shownName() const {
    return hasPath() ? QFileInfo(path_).fileName() : tr("Untitled");
}

DiskState FileSession::diskState() const {
    const QByteArray now = hashOnDisk(path_);
    if (now == knownHash_ || (now == kNoFile && knownHash_.isEmpty())) {
        return DiskState::asKnown;
    }
    return now == kNoFile ? DiskState::gone : DiskState::changed;
}

bool FileSession::isOwnPath(const QString& path) const {
    return hasPath() && realPath(path) == realPath(path_);
}

/// None where the lock held already is the one.
std::optional<FileLock> FileSession::lockFor(const QString& path, IfHeld ifHeld) const {
    if (isOwnPath(path) && lock_.state() == FileLock::State::held) {
        return std::nullopt;
    }
    return ifHeld == IfHeld::takeOver ? FileLock::takeOver(path) : FileLock::take(path);
}

Result<void> FileSession::show(const std::string& bytes, const QString& path) {
    const auto layout = files::readLayout(bytes, path.toStdString(), document_.shelf());
    if (!layout) {
        return fail(layout.error());
    }
    return document_.replace(*layout);
}

void FileSession::settle(const QString& path,
                         std::optional<FileLock> lock,
                         const QByteArray& hash) {
    path_ = path;
    if (lock) {
        lock_ = std::move(*lock);
    }
    knownHash_ = hash;
    seenHash_ = hash.isEmpty() ? kNoFile : hash;
    readOnlyReason_ = hasPath() ? reasonForReadOnly(path_, lock_) : QString();
    watch();
    Q_EMIT pathChanged();
}

/// The holder may have gone, the place may have become writable, or the reverse.
void FileSession::refreshReadOnly() {
    if (lock_.state() != FileLock::State::held) {
        lock_ = FileLock::take(path_);
    }
    const QString reason = reasonForReadOnly(path_, lock_);
    if (reason != readOnlyReason_) {
        readOnlyReason_ = reason;
        Q_EMIT pathChanged();
    }
}

std::optional<SaveFailure> FileSession::obstacle(IfChanged ifChanged) {
    if (!hasPath()) {
        return failure(SaveTrouble::noPath, "the layout has no file yet", {});
    }
    refreshReadOnly();
    if (isReadOnly()) {
        return failure(
            SaveTrouble::readOnly, "the layout is open read-only", path_, readOnlyReason_);
    }
    if (ifChanged == IfChanged::refuse && diskState() == DiskState::changed) {
        return failure(SaveTrouble::changedOnDisk, "another program has changed the file", path_);
    }
    return std::nullopt;
}

Saved FileSession::write(const QString& path, std::optional<FileLock> lock) {
    const std::string bytes = files::writeLayout(settledLayout(document_));
    const auto written = saveBytes(path.toStdString(), QByteArray::fromStdString(bytes));
    if (!written) {
        return tl::unexpected(SaveFailure{SaveTrouble::cannotWrite, written.error()});
    }
    settle(path, std::move(lock), hashOf(bytes));
    document_.setSaved();
    Q_EMIT message(tr("Saved %1").arg(shownName()));
    Q_EMIT saved();
    return {};
}

/// A file put in another's place by renaming is another to the watcher: it is told again each time.
/// The folder tells when the file comes back.
void FileSession::watch() {
    const QStringList before = watcher_.files() + watcher_.directories();
    if (!before.isEmpty()) {
        watcher_.removePaths(before);
    }
    if (!hasPath()) {
        return;
    }
    const QString file = realPath(path_);
    watcher_.addPath(QFileInfo(file).path());
    if (QFileInfo::exists(file)) {
        watcher_.addPath(file);
    }
}

void FileSession::look() {
    watch();
    const QByteArray now = hashOnDisk(path_);
    if (now == seenHash_ || !hasPath()) {
        return;
    }
    seenHash_ = now;
    Q_EMIT changedOnDisk(diskState());
}

}  // namespace gw::ui
