#include "ui/support/roles.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QTimer>
#include <cstdio>
#include <cstdlib>

#include "document/autosave.h"
#include "document/file_session.h"
#include "editing/edits.h"
#include "support/random.h"
#include "ui/support/documents.h"
#include "ui/support/process.h"

namespace gw::test {
namespace {

constexpr int kMinute = 60000;

void say(const QString& line) {
    std::fputs(line.toUtf8().constData(), stdout);
    std::fputc('\n', stdout);
    std::fflush(stdout);
}

/// Opens a layout and has it open until told to end.
int holdFile(const QString& path) {
    const auto document = documentOf(smallLayout());
    ui::FileSession session(*document);
    if (!session.open(path) || session.isReadOnly()) {
        return 1;
    }
    say(QStringLiteral("open"));
    return std::getchar() == EOF ? 0 : 1;
}

/// Saves one layout after another until it is killed: "saving 17" before, "saved 17" after.
int saveForEver(const QString& path) {
    const auto document = documentOf(smallLayout());
    ui::FileSession session(*document);
    if (!session.open(path)) {
        return 1;
    }
    for (int i = 1;; ++i) {
        retitle(*document, std::to_string(i));
        say(QStringLiteral("saving %1").arg(i));
        if (!session.save()) {
            return 1;
        }
        say(QStringLiteral("saved %1").arg(i));
    }
}

/// Moves something and writes the number of the edit into the title.
void editAnything(ui::Document& document, int number, test_support::Random& random) {
    const auto shift = [&] { return (static_cast<double>(random.below(33)) - 16.0) / 8.0; };
    const auto& entries = document.layout().entries;
    const editing::Item item = entries[random.below(entries.size())].id;
    auto after = editing::moveItems(document.built(), {item}, {shift(), shift(), shift()})
                     .value_or(document.layout());
    after.title = std::to_string(number);
    if (!document.edit(QStringLiteral("Edit"), after)) {
        std::abort();
    }
}

/// Edits in bursts and pauses until it is killed: "edit 17 at MILLISECONDS DIGEST" after each, by
/// the clock that all processes share.
int editForEver(const QString& path, const QString& folder, std::uint64_t seed) {
    const auto document = documentOf(smallLayout());
    ui::FileSession session(*document);
    if (!session.open(path)) {
        return 1;
    }
    const ui::Autosave autosave(*document, session, ui::RecoveryFolder(folder));
    test_support::Random random(seed);
    QTimer timer;
    timer.setSingleShot(true);
    int number = 0;
    QObject::connect(&timer, &QTimer::timeout, [&] {
        editAnything(*document, ++number, random);
        const auto digest = ui::hashOf(bytesOf(document->layout()).toStdString());
        say(QStringLiteral("edit %1 at %2 %3")
                .arg(number)
                .arg(monotonicMilliseconds())
                .arg(QString::fromLatin1(digest)));
        const bool pause = random.below(4) == 0;
        timer.start(static_cast<int>(random.below(pause ? 3000 : 200)));
    });
    timer.start(0);
    return QCoreApplication::exec();
}

}  // namespace

qint64 monotonicMilliseconds() {
    QElapsedTimer now;
    now.start();
    return now.msecsSinceReference();
}

int playRole(const QStringList& arguments) {
    if (arguments.size() < 4 || arguments[1] != QStringLiteral("--role")) {
        return -1;
    }
    if (arguments[2] == QStringLiteral("holder")) {
        return holdFile(arguments[3]);
    }
    if (arguments[2] == QStringLiteral("saver")) {
        return saveForEver(arguments[3]);
    }
    if (arguments[2] == QStringLiteral("editor") && arguments.size() == 6) {
        return editForEver(arguments[3], arguments[4], arguments[5].toULongLong());
    }
    return 2;
}

Player::Player(const QString& role, const QStringList& arguments) {
    process_.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    process_.start(ownProgram(), QStringList{QStringLiteral("--role"), role} + arguments);
    process_.waitForStarted(kMinute);
}

QString Player::line() {
    while (!process_.canReadLine() && process_.waitForReadyRead(kMinute)) {
    }
    return QString::fromUtf8(process_.readLine()).trimmed();
}

QStringList Player::rest() {
    const QStringList lines = QString::fromUtf8(process_.readAll()).split('\n');
    return lines.mid(0, lines.size() - 1);  // what follows the last line's end is half a line
}

void Player::kill() {
    process_.kill();
    process_.waitForFinished(kMinute);
}

int Player::finish() {
    process_.closeWriteChannel();
    return process_.waitForFinished(kMinute) ? process_.exitCode() : -1;
}

}  // namespace gw::test
