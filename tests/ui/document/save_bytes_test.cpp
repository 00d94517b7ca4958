#include "document/save_bytes.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "ui/support/process.h"
#include "ui/support/small_disk.h"

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

TEST(SmallDisk, FullDiskKeepsTheOldFile) {
    if (test::smallDisk().isEmpty()) {
        test::runOnSmallDisk("SmallDisk.FullDiskKeepsTheOldFile", "1m");
        return;
    }
    const auto path = test::smallDisk() + QStringLiteral("/good");
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

TEST(SmallDisk, DiskThatIsFullAlreadyKeepsTheOldFile) {
    if (test::smallDisk().isEmpty()) {
        test::runOnSmallDisk("SmallDisk.DiskThatIsFullAlreadyKeepsTheOldFile", "1m");
        return;
    }
    const auto path = test::smallDisk() + QStringLiteral("/good");
    writeFile(path, "good old");
    test::fillSmallDisk();
    for (const int size : {9000, 100}) {
        EXPECT_FALSE(saveBytes(path.toStdString(), QByteArray(size, 'x'))) << size;
        EXPECT_EQ(readWholeFile(path), "good old") << size;
    }
}

TEST(SmallDisk, ReadOnlyDiskIsRefused) {
    if (test::smallDisk().isEmpty()) {
        test::runOnSmallDisk("SmallDisk.ReadOnlyDiskIsRefused", "1m");
        return;
    }
    const auto path = test::smallDisk() + QStringLiteral("/good");
    writeFile(path, "good old");
    test::makeSmallDiskReadOnly();
    const auto saved = saveBytes(path.toStdString(), "new");
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().code, ErrorCode::unwritable);
    EXPECT_EQ(readWholeFile(path), "good old");
}

}  // namespace
}  // namespace gw::ui
