#pragma once

#include <QObject>
#include <QTimer>
#include <optional>

#include "document/recovery_folder.h"

namespace gw::ui {

struct AutosaveTimes {
    int idle = 1000;     ///< milliseconds after the last edit
    int longest = 1800;  ///< after the first edit not kept, however busy the hand is; < 2 s in all
};

/// Keeps what is unsaved in the recovery folder, and takes it away once it is saved or given up.
/// Never touches the document's own file.
class Autosave : public QObject {
    Q_OBJECT
public:
    Autosave(const Document& document,
             const FileSession& session,
             RecoveryFolder folder,
             QObject* parent = nullptr,
             AutosaveTimes times = {});

    /// The document is the one recovered from this slot: it goes on there.
    void adopt(RecoverySlot slot);
    /// What is unsaved has been given up. The next edit begins anew.
    void discard();
    /// At once, where anything is unsaved.
    void keepNow();

    /// Whether all that is unsaved is kept.
    bool isKept() const { return slot_.has_value() && !longest_.isActive(); }

Q_SIGNALS:
    void kept();
    /// Once, until it succeeds again: a full disk, a folder that may not be written.
    void failed(const QString& why);

private:
    void schedule();
    void followModified();
    Result<void> write();

    const Document& document_;
    const FileSession& session_;
    RecoveryFolder folder_;
    std::optional<RecoverySlot> slot_;
    QByteArray written_;  ///< digest of what the slot holds: a long drag changes nothing in it
    QTimer idle_;
    QTimer longest_;
    bool told_ = false;
};

}  // namespace gw::ui
