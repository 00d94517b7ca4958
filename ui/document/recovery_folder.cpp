#include "document/recovery_folder.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

#include "base/read_file.h"
#include "document/save_bytes.h"

namespace gw::ui {
namespace {

constexpr QLatin1String kFormat("gutterwright-recovery");
constexpr int kVersion = 1;
constexpr QLatin1String kEnding(".recovery");
constexpr int kDigestShown = 12;      // of the path's digest, in a name: enough to tell them apart
constexpr int kNameShown = 60;        // of the document's name: file names have at most 255 bytes
constexpr int kMostOfOneName = 1000;  // places for one document before giving up

/// The layout's own bytes as text: they come back to the byte.
QByteArray toFile(const RecoveredLayout& kept) {
    const QJsonObject object{{"format", kFormat},
                             {"version", kVersion},
                             {"path", kept.path},
                             {"base", QString::fromLatin1(kept.baseHash)},
                             {"layout", QString::fromStdString(kept.bytes)}};
    return QJsonDocument(object).toJson();
}

tl::unexpected<Error> noRecovery(const QString& path, const char* place) {
    return fail({ErrorCode::syntax, "not a recovery file", path.toStdString(), place});
}

Result<RecoveredLayout> fromFile(const QString& path) {
    const auto bytes = readFile(path.toStdString(), 64'000'000);
    if (!bytes) {
        return fail(bytes.error());
    }
    const auto object = QJsonDocument::fromJson(QByteArray::fromStdString(*bytes)).object();
    if (object.value("format") != kFormat || object.value("version") != kVersion) {
        return noRecovery(path, "/format");
    }
    for (const char* member : {"path", "base", "layout"}) {
        if (!object.value(QLatin1String(member)).isString()) {
            return noRecovery(path, member);
        }
    }
    return RecoveredLayout{object.value("path").toString(),
                           object.value("base").toString().toLatin1(),
                           object.value("layout").toString().toStdString()};
}

/// "5f2a…-yard.json" or "untitled".
QString baseName(const QString& documentPath) {
    if (documentPath.isEmpty()) {
        return QStringLiteral("untitled");
    }
    const QString real = realPath(documentPath);
    return QString::fromLatin1(hashOf(real.toStdString()).left(kDigestShown)) + '-' +
           QFileInfo(real).fileName().left(kNameShown);
}

std::unique_ptr<QLockFile> hold(const QString& path) {
    auto lock = std::make_unique<QLockFile>(path + QStringLiteral(".lock"));
    lock->setStaleLockTime(0);  // only an owner that is gone makes it stale, never its age
    return lock;
}

bool makeFolder(const QString& path) {
    if (QFileInfo(path).isDir()) {
        return true;
    }
    // Its user's own: layouts are nobody else's business.
    return QDir().mkpath(path) &&
           QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
}

/// What a saving that was killed left beside the file. REQUIRES that the place is held.
void removeHalfWritten(const QString& path) {
    const QFileInfo file(path);
    QDir folder = file.dir();
    constexpr int kAdded = 7;  // a dot and six letters, as QSaveFile names them
    for (const auto& name : folder.entryList(QDir::Files)) {
        if (name.size() == file.fileName().size() + kAdded &&
            name.startsWith(file.fileName() + '.')) {
            folder.remove(name);
        }
    }
}

/// Saved after all, or saved and not tidied up.
bool isSaved(const RecoveredLayout& kept) {
    const auto bytes = readFile(kept.path.toStdString());
    return bytes && *bytes == kept.bytes;
}

}  // namespace

RecoverySlot::RecoverySlot(QString path, std::unique_ptr<QLockFile> lock)
    : path_(std::move(path)), lock_(std::move(lock)) {}

RecoverySlot::~RecoverySlot() = default;

Result<void> RecoverySlot::write(const RecoveredLayout& kept) {
    return saveBytes(path_.toStdString(), toFile(kept));
}

Result<RecoveredLayout> RecoverySlot::read() const {
    return fromFile(path_);
}

void RecoverySlot::removeFile() {
    QFile::remove(path_);
    removeHalfWritten(path_);
}

Result<RecoverySlot> RecoveryFolder::take(const QString& documentPath) const {
    makeFolder(path_);
    const QString base = QDir(path_).filePath(baseName(documentPath));
    for (int i = 1; i <= kMostOfOneName; ++i) {
        const QString path = (i == 1 ? base : QStringLiteral("%1-%2").arg(base).arg(i)) + kEnding;
        auto lock = hold(path);
        if (lock->tryLock(0)) {
            if (!QFileInfo::exists(path)) {
                removeHalfWritten(path);
                return RecoverySlot(path, std::move(lock));
            }
        } else if (lock->error() != QLockFile::LockFailedError) {
            break;
        }
    }
    return fail({ErrorCode::unwritable, "no place to keep unsaved work", path_.toStdString()});
}

std::vector<Leftover> RecoveryFolder::leftovers() const {
    std::vector<Leftover> found;
    const QDir folder(path_);
    for (const auto& file :
         folder.entryInfoList({QLatin1Char('*') + kEnding}, QDir::Files, QDir::Time)) {
        auto slot = claim(file.filePath());
        if (!slot) {
            continue;
        }
        auto kept = slot->read();
        if (kept && isSaved(*kept)) {
            slot->removeFile();
        } else {
            found.push_back({file.filePath(), file.lastModified(), std::move(kept)});
        }
    }
    return found;
}

std::optional<RecoverySlot> RecoveryFolder::claim(const QString& leftoverPath) const {
    auto lock = hold(leftoverPath);
    if (!lock->tryLock(0) || !QFileInfo::exists(leftoverPath)) {
        return std::nullopt;
    }
    return RecoverySlot(leftoverPath, std::move(lock));
}

}  // namespace gw::ui
