#include "window/file_care.h"

#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QTimer>
#include <algorithm>

#include "panels/panel_text.h"
#include "window/main_window.h"

namespace gw::ui {
namespace {

QString whenText(const QDateTime& time) {
    return QLocale().toString(time, QLocale::ShortFormat);
}

}  // namespace

QString shownName(const Leftover& leftover) {
    if (!leftover.kept) {
        return QFileInfo(leftover.path).fileName();
    }
    return leftover.kept->path.isEmpty() ? FileCare::tr("a layout never saved")
                                         : QFileInfo(leftover.kept->path).fileName();
}

FileCare::FileCare(MainWindow& window, Desk& desk, const Places& places)
    : QObject(&window), window_(window), desk_(desk), folder_(places.recovery) {
    if (places.recovery.isEmpty()) {
        return;
    }
    autosave_ = std::make_unique<Autosave>(window.document(), window.session(), folder_);
    connect(autosave_.get(), &Autosave::failed, this, [this](const QString& why) {
        window_.boardState().setHint(
            tr("Unsaved work cannot be kept against a crash: %1").arg(why));
    });
    QTimer::singleShot(0, this, &FileCare::lookForLeftovers);  // once the window is there
}

void FileCare::forget() {
    if (autosave_) {
        autosave_->discard();
    }
}

// ---- what an earlier run left ----------------------------------------------------------------

void FileCare::makeRecoveryNotice() {
    recovery_ = new Notice(Notice::Sign::information, tr("Unsaved work found"));
    recover_ = recovery_->offer(tr("&Recover"), [this] { recover(leftovers_.front().path); });
    recovery_->offer(tr("Show &later"), [this] { recovery_->hide(); });
    recovery_->offer(tr("&Discard…"), [this] { discardLatest(); });
    desk_.add(recovery_);
}

void FileCare::lookForLeftovers() {
    leftovers_ = folder_.leftovers();
    if (!leftovers_.empty()) {
        makeRecoveryNotice();
        offerLatest();
        Q_EMIT leftoversChanged();
    }
}

void FileCare::offerLatest() {
    if (leftovers_.empty()) {
        recovery_->hide();
        return;
    }
    const Leftover& latest = leftovers_.front();
    const auto others = static_cast<int>(leftovers_.size()) - 1;
    QString text = tr("Unsaved work on %1 was kept on %2, when the program ended without closing.")
                       .arg(shownName(latest), whenText(latest.written));
    if (!latest.kept) {
        text = tr("Unsaved work was kept, but cannot be read: %1")
                   .arg(toQString(toLine(latest.kept.error())));
    }
    if (others > 0) {
        text += ' ' + tr("%n more after this.", nullptr, others);
    }
    recover_->setEnabled(latest.kept.has_value());
    recovery_->say(text, latest.kept ? latest.kept->path : latest.path);
    recovery_->show();
}

void FileCare::recover(const QString& leftoverPath) {
    if (!window_.mayDrop()) {
        return;
    }
    auto slot = folder_.claim(leftoverPath);
    if (!slot) {
        QMessageBox::information(&window_,
                                 tr("Unsaved work"),
                                 tr("Another window has taken this unsaved work up already."));
        drop(leftoverPath);
        return;
    }
    const auto kept = slot->read();
    const auto opened = kept ? window_.session().openRecovered(*kept) : fail(kept.error());
    if (!opened) {
        window_.complain(opened.error());
        return;
    }
    autosave_->adopt(std::move(*slot));
    drop(leftoverPath);
}

void FileCare::discardLatest() {
    const Leftover latest = leftovers_.front();
    const auto answer =
        QMessageBox::question(&window_,
                              tr("Discard unsaved work"),
                              tr("Discard the unsaved work on %1 of %2? It cannot be brought back.")
                                  .arg(shownName(latest), whenText(latest.written)),
                              QMessageBox::Discard | QMessageBox::Cancel,
                              QMessageBox::Cancel);
    if (answer != QMessageBox::Discard) {
        return;
    }
    if (auto slot = folder_.claim(latest.path)) {
        slot->removeFile();
    }
    drop(latest.path);
}

/// Decided on: out of the list.
void FileCare::drop(const QString& leftoverPath) {
    std::erase_if(leftovers_, [&](const Leftover& one) { return one.path == leftoverPath; });
    offerLatest();
    Q_EMIT leftoversChanged();
}

}  // namespace gw::ui
