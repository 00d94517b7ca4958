#pragma once

#include <QByteArray>
#include <QFileSystemWatcher>
#include <QObject>
#include <QString>
#include <QTimer>
#include <optional>
#include <string>

#include "document/document.h"
#include "document/file_lock.h"

/// The file of a document: where it lies, what it held when last seen, who else has it open.
namespace gw::ui {

/// Why nothing was saved. The window asks where asking helps.
enum class SaveTrouble {
    noPath,         ///< never saved: ask for a place
    readOnly,       ///< see FileSession::readOnlyReason(): offer Save As
    changedOnDisk,  ///< another program wrote it: offer overwriting, Save As, reloading
    heldElsewhere,  ///< Save As onto a file that another owner has open
    cannotWrite,    ///< a full disk, a missing folder, …: the error says it
};

struct SaveFailure {
    SaveTrouble trouble = SaveTrouble::cannotWrite;
    Error error;  ///< toLine(error) is one line for the user
};

using Saved = tl::expected<void, SaveFailure>;

/// The file against what this session last read or wrote.
enum class DiskState { asKnown, changed, gone };

enum class IfHeld {
    openReadOnly,
    takeOver,  ///< where no process of this machine holds it; read-only otherwise
};
enum class IfChanged { refuse, overwrite };

/// A document as its file last had it, found by a recovery.
struct RecoveredLayout {
    QString path;         ///< where it is saved; empty for one never saved
    QByteArray baseHash;  ///< of the file it was edited from; empty for one never saved
    std::string bytes;    ///< as files::writeLayout gave them
};

/// SHA-256 as hexadecimal digits.
QByteArray hashOf(const std::string& bytes);

/// The layout that counts: during a gesture, the one before it.
const layout::Layout& settledLayout(const Document& document);

/// Every failure leaves the file on the disk byte for byte as it was, the document as it was and
/// still modified.
class FileSession : public QObject {
    Q_OBJECT
public:
    explicit FileSession(Document& document, QObject* parent = nullptr);

    /// A layout with no file yet. Error as of Document::replace.
    Result<void> newLayout(const layout::Layout& layout);
    /// Reads it, and holds it for writing where that can be. Error as of readFile, readLayout.
    Result<void> open(const QString& path, IfHeld ifHeld = IfHeld::openReadOnly);
    /// Drops what was changed since. REQUIRES a path.
    Result<void> reload();
    /// The document as it was last kept, modified, to be saved at its own path. If that file has
    /// changed since, saving says so.
    Result<void> openRecovered(const RecoveredLayout& recovered);

    /// On success the document is no longer modified. Recreates a file that is gone.
    Saved save(IfChanged ifChanged = IfChanged::refuse);
    /// Takes the new path on success only. The user has been asked before about a file there.
    Saved saveAs(const QString& path);

    bool hasPath() const { return !path_.isEmpty(); }
    QString path() const { return path_; }  ///< absolute; empty when never saved
    /// File name without folder, or "Untitled".
    QString shownName() const;
    bool isReadOnly() const { return !readOnlyReason_.isEmpty(); }
    /// One sentence naming the holder or the place that cannot be written; empty otherwise.
    QString readOnlyReason() const { return readOnlyReason_; }
    /// Of the bytes last read or written; empty when there were none.
    QByteArray knownHash() const { return knownHash_; }
    /// Looks at the disk now.
    DiskState diskState() const;

Q_SIGNALS:
    void pathChanged();  ///< path, name or being read-only
    void saved();
    void message(const QString& text);  ///< one line for the status bar: "Saved …", "Opened …"
    /// Another program changed, removed or brought back the file. Once for each change; never for
    /// what this session wrote.
    void changedOnDisk(gw::ui::DiskState state);

private:
    bool isOwnPath(const QString& path) const;
    std::optional<FileLock> lockFor(const QString& path, IfHeld ifHeld) const;
    Result<void> show(const std::string& bytes, const QString& path);
    void settle(const QString& path, std::optional<FileLock> lock, const QByteArray& hash);
    void refreshReadOnly();
    std::optional<SaveFailure> obstacle(IfChanged ifChanged);
    Saved write(const QString& path, std::optional<FileLock> lock);
    void watch();
    void look();

    Document& document_;
    QString path_;
    QString readOnlyReason_;
    QByteArray knownHash_;
    QByteArray seenHash_;  ///< the last told; to tell each change once
    FileLock lock_;
    QFileSystemWatcher watcher_;
    QTimer settling_;
};

}  // namespace gw::ui
