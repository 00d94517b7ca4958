#include "ui/support/small_disk.h"

#include <gtest/gtest.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <QFile>
#include <QTemporaryDir>

#include "ui/support/process.h"

namespace gw::test {
namespace {

constexpr const char* kVariable = "GW_TEST_SMALL_DISK";
constexpr int kNoMount = 99;

/// A run that never reached the test says nothing about the program.
void takeOver(const Finished& run, const char* testName, const char* missing) {
    if (run.exitCode == kNoMount || (run.exitCode != 0 && !run.out.contains(testName))) {
        GTEST_SKIP() << "NOT TESTED: " << missing << ": " << run.err.toStdString();
    }
    EXPECT_EQ(run.exitCode, 0) << run.out.toStdString();
    EXPECT_TRUE(run.out.contains("Running 1 test")) << run.out.toStdString();
}

qint64 freeBytes(const QString& folder) {
    struct statvfs status {};
    EXPECT_EQ(statvfs(folder.toUtf8().constData(), &status), 0);
    return static_cast<qint64>(status.f_bavail * status.f_bsize);
}

}  // namespace

QString smallDisk() {
    return qEnvironmentVariable(kVariable);
}

void runOnSmallDisk(const char* testName, const char* size) {
    const QTemporaryDir mountPoint;
    const auto at = mountPoint.path();
    const auto mount =
        QStringLiteral("mount -t tmpfs -o size=%4 tmpfs '%1' || exit %5; exec '%2' '%3'")
            .arg(at, ownProgram(), onlyTest(testName), QString::fromLatin1(size))
            .arg(kNoMount);
    const auto run =
        runProgram(QStringLiteral("unshare"),
                   {QStringLiteral("--mount"), QStringLiteral("sh"), QStringLiteral("-c"), mount},
                   {QString::fromLatin1(kVariable) + '=' + at});
    takeOver(run, testName, "a disk of its own could not be mounted here");
}

void makeSmallDiskReadOnly() {
    const auto remount = runProgram(
        QStringLiteral("mount"), {QStringLiteral("-o"), QStringLiteral("remount,ro"), smallDisk()});
    ASSERT_TRUE(remount.good()) << remount.err.toStdString();
}

void fillSmallDisk(qint64 bytesLeft) {
    const qint64 size = freeBytes(smallDisk()) - bytesLeft;
    ASSERT_GE(size, 0);
    writeFile(smallDisk() + QStringLiteral("/filler"), QByteArray(size, 'z'));
    ASSERT_EQ(freeBytes(smallDisk()), bytesLeft);
}

bool isPlainUser() {
    return geteuid() != 0;
}

void runAsPlainUser(const char* testName) {
    const auto run = runProgram(QStringLiteral("setpriv"),
                                {QStringLiteral("--reuid=65534"),
                                 QStringLiteral("--regid=65534"),
                                 QStringLiteral("--clear-groups"),
                                 ownProgram(),
                                 onlyTest(testName)});
    takeOver(run, testName, "this program could not be run as another user");
}

}  // namespace gw::test
