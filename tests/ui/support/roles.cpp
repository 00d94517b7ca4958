#include "ui/support/roles.h"

#include <cstdio>

#include "document/file_session.h"
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

}  // namespace

int playRole(const QStringList& arguments) {
    if (arguments.size() < 4 || arguments[1] != QStringLiteral("--role")) {
        return -1;
    }
    if (arguments[2] == QStringLiteral("holder")) {
        return holdFile(arguments[3]);
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
