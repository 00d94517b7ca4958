#include "document/save_bytes.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "ui/support/process.h"

namespace gw::ui {
namespace {

using test::readWholeFile;
using test::writeFile;

class SaveBytes : public ::testing::Test {
protected:
    QString path(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }
    Result<void> save(const QString& to, const QByteArray& bytes) const {
        return saveBytes(to.toStdString(), bytes);
    }
    QTemporaryDir folder_;
};

TEST_F(SaveBytes, WritesANewFileWhole) {
    const QByteArray bytes("line\0and more\n", 14);
    ASSERT_TRUE(save(path("new"), bytes));
    EXPECT_EQ(readWholeFile(path("new")), bytes);
}

TEST_F(SaveBytes, TakesThePlaceOfALongerFileAndLeavesNothingBeside) {
    writeFile(path("old"), QByteArray(100000, 'x'));
    ASSERT_TRUE(save(path("old"), "short"));
    EXPECT_EQ(readWholeFile(path("old")), "short");
    EXPECT_EQ(QDir(folder_.path()).entryList(QDir::Files | QDir::Hidden).size(), 1);
}

TEST_F(SaveBytes, FollowsALinkAndKeepsIt) {
    writeFile(path("real"), "before");
    ASSERT_TRUE(QFile::link(path("real"), path("link")));
    ASSERT_TRUE(save(path("link"), "after"));
    EXPECT_EQ(readWholeFile(path("real")), "after");
    EXPECT_FALSE(QFile::symLinkTarget(path("link")).isEmpty());
}

TEST_F(SaveBytes, FolderThatIsNotThereIsAnErrorWithThePath) {
    const auto saved = save(path("nowhere/file"), "bytes");
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().code, ErrorCode::unwritable);
    EXPECT_EQ(saved.error().file, path("nowhere/file").toStdString());
    EXPECT_FALSE(saved.error().found.empty());
}

TEST_F(SaveBytes, FolderInPlaceOfAFileIsAnError) {
    ASSERT_TRUE(QDir(folder_.path()).mkdir(QStringLiteral("taken")));
    EXPECT_FALSE(save(path("taken"), "bytes"));
}

/// A one-megabyte disk of its own, in a mount namespace that ends with the process: the test runs
/// itself again inside. Root is not stopped by permission bits, so read-only is a mount too.
class SmallDisk : public ::testing::Test {
protected:
    static constexpr const char* kVariable = "GW_TEST_SMALL_DISK";

    static QString disk() { return qEnvironmentVariable(kVariable); }

    void runInside(const char* testName) const {
        QTemporaryDir mountPoint;
        const auto at = mountPoint.path();
        const auto mount =
            QStringLiteral("mount -t tmpfs -o size=1m tmpfs '%1' || exit 99; exec '%2' '%3'")
                .arg(at, test::ownProgram(), test::onlyTest(testName));
        const auto run = test::runProgram(
            QStringLiteral("unshare"),
            {QStringLiteral("--mount"), QStringLiteral("sh"), QStringLiteral("-c"), mount},
            {QString::fromLatin1(kVariable) + '=' + at});
        if (run.exitCode == 99 || (run.exitCode != 0 && !run.out.contains(testName))) {
            GTEST_SKIP() << "NOT TESTED: a disk of its own could not be mounted here: "
                         << run.err.toStdString();
        }
        EXPECT_EQ(run.exitCode, 0) << run.out.toStdString();
    }
};

TEST_F(SmallDisk, FullDiskKeepsTheOldFile) {
    if (disk().isEmpty()) {
        runInside("SmallDisk.FullDiskKeepsTheOldFile");
        return;
    }
    const auto path = disk() + QStringLiteral("/good");
    writeFile(path, "good old");
    for (const int size : {3 << 20, (1 << 20) + 1, 1 << 20}) {
        const auto saved = saveBytes(path.toStdString(), QByteArray(size, 'x'));
        ASSERT_FALSE(saved) << size;
        EXPECT_EQ(saved.error().code, ErrorCode::unwritable);
        EXPECT_EQ(readWholeFile(path), "good old") << size;
    }
    ASSERT_TRUE(saveBytes(path.toStdString(), QByteArray(1000, 'y')));
    EXPECT_EQ(readWholeFile(path), QByteArray(1000, 'y'));
}

TEST_F(SmallDisk, DiskThatIsFullAlreadyKeepsTheOldFile) {
    if (disk().isEmpty()) {
        runInside("SmallDisk.DiskThatIsFullAlreadyKeepsTheOldFile");
        return;
    }
    const auto path = disk() + QStringLiteral("/good");
    writeFile(path, "good old");
    {
        QFile filler(disk() + QStringLiteral("/filler"));
        ASSERT_TRUE(filler.open(QIODevice::WriteOnly | QIODevice::Unbuffered));
        while (filler.write(QByteArray(4096, 'z')) == 4096) {
        }
    }
    for (const int size : {9000, 100}) {
        EXPECT_FALSE(saveBytes(path.toStdString(), QByteArray(size, 'x'))) << size;
        EXPECT_EQ(readWholeFile(path), "good old") << size;
    }
}

TEST_F(SmallDisk, ReadOnlyDiskIsRefused) {
    if (disk().isEmpty()) {
        runInside("SmallDisk.ReadOnlyDiskIsRefused");
        return;
    }
    const auto path = disk() + QStringLiteral("/good");
    writeFile(path, "good old");
    const auto remount = test::runProgram(
        QStringLiteral("mount"), {QStringLiteral("-o"), QStringLiteral("remount,ro"), disk()});
    ASSERT_TRUE(remount.good()) << remount.err.toStdString();
    const auto saved = saveBytes(path.toStdString(), "new");
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().code, ErrorCode::unwritable);
    EXPECT_EQ(readWholeFile(path), "good old");
}

}  // namespace
}  // namespace gw::ui
