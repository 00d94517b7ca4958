#include "ui/support/process.h"

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QFile>
#include <QProcess>

namespace gw::test {
namespace {

constexpr int kMinute = 60000;

QProcessEnvironment environmentWith(const QStringList& additions) {
    auto environment = QProcessEnvironment::systemEnvironment();
    // Or this program, run again for one test, would leave that test to another share of them.
    environment.remove(QStringLiteral("GTEST_TOTAL_SHARDS"));
    environment.remove(QStringLiteral("GTEST_SHARD_INDEX"));
    for (const auto& addition : additions) {
        const auto equals = addition.indexOf('=');
        environment.insert(addition.left(equals), addition.mid(equals + 1));
    }
    return environment;
}

}  // namespace

Finished runProgram(const QString& program,
                    const QStringList& arguments,
                    const QStringList& environment) {
    QProcess process;
    process.setProcessEnvironment(environmentWith(environment));
    process.start(program, arguments);
    Finished finished;
    finished.started = process.waitForStarted(kMinute);
    if (finished.started && process.waitForFinished(kMinute) &&
        process.exitStatus() == QProcess::NormalExit) {
        finished.exitCode = process.exitCode();
    }
    finished.out = process.readAllStandardOutput();
    finished.err = process.readAllStandardError();
    return finished;
}

QString ownProgram() {
    return QCoreApplication::applicationFilePath();
}

QString onlyTest(const char* name) {
    return QStringLiteral("--gtest_filter=") + QString::fromLatin1(name);
}

void writeFile(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly)) << path.toStdString();
    ASSERT_EQ(file.write(bytes), bytes.size());
}

QByteArray readWholeFile(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

}  // namespace gw::test
