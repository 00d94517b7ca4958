#include "document/autosave.h"

#include <utility>

#include "files/layout_file.h"

namespace gw::ui {

Autosave::Autosave(const Document& document,
                   const FileSession& session,
                   RecoveryFolder folder,
                   QObject* parent,
                   AutosaveTimes times)
    : QObject(parent), document_(document), session_(session), folder_(std::move(folder)) {
    for (QTimer* timer : {&idle_, &longest_}) {
        timer->setSingleShot(true);
        timer->setTimerType(Qt::PreciseTimer);  // a coarse one may come 5 % late
        connect(timer, &QTimer::timeout, this, &Autosave::keepNow);
    }
    idle_.setInterval(times.idle);
    longest_.setInterval(times.longest);
    connect(&document, &Document::changed, this, &Autosave::schedule);
    connect(&document, &Document::modifiedChanged, this, &Autosave::followModified);
}

void Autosave::adopt(RecoverySlot slot) {
    discard();
    slot_ = std::move(slot);
}

void Autosave::discard() {
    idle_.stop();
    longest_.stop();
    if (slot_) {
        slot_->removeFile();
        slot_.reset();
        written_.clear();
    }
}

void Autosave::keepNow() {
    idle_.stop();
    longest_.stop();
    if (!document_.isModified()) {
        return;
    }
    if (const auto written = write(); written) {
        told_ = false;
        Q_EMIT kept();
    } else if (!std::exchange(told_, true)) {
        Q_EMIT failed(QString::fromStdString(toLine(written.error())));
    }
}

Result<void> Autosave::write() {
    if (!slot_) {
        auto slot = folder_.take(session_.path());
        if (!slot) {
            return fail(slot.error());
        }
        slot_ = std::move(*slot);
    }
    const RecoveredLayout now{
        session_.path(), session_.knownHash(), files::writeLayout(settledLayout(document_))};
    const QByteArray digest = hashOf(now.bytes);
    if (digest == written_) {
        return {};
    }
    auto written = slot_->write(now);
    written_ = written ? digest : QByteArray();
    return written;
}

void Autosave::schedule() {
    idle_.start();
    if (!longest_.isActive()) {
        longest_.start();
    }
}

void Autosave::followModified() {
    if (document_.isModified()) {
        schedule();
    } else {
        discard();
    }
}

}  // namespace gw::ui
