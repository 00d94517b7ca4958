#pragma once

#include <QDateTime>
#include <QLockFile>
#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "base/result.h"
#include "document/file_session.h"

/// Unsaved layouts kept against a crash: one file each, beside a lock that its owner holds for as
/// long as it lives. What lies there without a live owner was left over.
namespace gw::ui {

/// One place in the folder, held by this process until the slot goes. The file outlives it.
class RecoverySlot {
public:
    RecoverySlot(QString path, std::unique_ptr<QLockFile> lock);
    RecoverySlot(RecoverySlot&&) = default;
    RecoverySlot& operator=(RecoverySlot&&) = default;
    RecoverySlot(const RecoverySlot&) = delete;
    RecoverySlot& operator=(const RecoverySlot&) = delete;
    ~RecoverySlot();

    QString path() const { return path_; }
    /// Whole or not at all. Error as of saveBytes.
    Result<void> write(const RecoveredLayout& kept);
    /// Error: unreadable, or not a file that write() made.
    Result<RecoveredLayout> read() const;
    /// The file goes; the place stays held.
    void removeFile();

private:
    QString path_;
    std::unique_ptr<QLockFile> lock_;
};

/// A layout whose owner is gone.
struct Leftover {
    QString path;  ///< of the recovery file
    QDateTime written;
    Result<RecoveredLayout> kept;
};

class RecoveryFolder {
public:
    /// The folder is made when it is first needed.
    explicit RecoveryFolder(QString path) : path_(std::move(path)) {}

    /// A free place for the document at this path; empty for one never saved. Never one where
    /// something was left over. Error where the folder cannot be made or written.
    Result<RecoverySlot> take(const QString& documentPath) const;

    /// By time, the latest first. Those whose layout is what their document holds on the disk have
    /// nothing to recover: they are removed. Those of live owners are left out.
    std::vector<Leftover> leftovers() const;

    /// To go on with a leftover, or to remove it. Nothing where it is gone or another took it.
    std::optional<RecoverySlot> claim(const QString& leftoverPath) const;

private:
    QString path_;
};

}  // namespace gw::ui
