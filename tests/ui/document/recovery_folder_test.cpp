#include "document/recovery_folder.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QTemporaryDir>

#include "ui/support/documents.h"
#include "ui/support/faulty_disk.h"
#include "ui/support/process.h"
#include "ui/support/roles.h"

namespace gw::ui {
namespace {

using test::bytesOf;
using test::readWholeFile;
using test::smallLayout;
using test::writeFile;

class RecoveryFolderTest : public ::testing::Test {
protected:
    QString document(const char* name = "yard.json") const {
        return place_.filePath(QString::fromLatin1(name));
    }
    RecoveredLayout work(const char* title = "Edited") const {
        return {document(), "0123", bytesOf(smallLayout(title)).toStdString()};
    }
    /// As a program leaves it that was killed.
    QString leave(const RecoveredLayout& kept) const {
        auto slot = folder_.take(kept.path);
        EXPECT_TRUE(slot && slot->write(kept));
        return slot->path();
    }
    QStringList names() const {
        return QDir(folderPath_).entryList(QDir::Files | QDir::Hidden, QDir::Name);
    }

    QTemporaryDir place_;
    QString folderPath_ = place_.filePath(QStringLiteral("data/recovery"));
    RecoveryFolder folder_{folderPath_};
};

TEST_F(RecoveryFolderTest, FolderThatIsNotThereHasNoLeftoversAndIsNotMade) {
    EXPECT_TRUE(folder_.leftovers().empty());
    EXPECT_FALSE(QDir(folderPath_).exists());
}

TEST_F(RecoveryFolderTest, WhatWasWrittenComesBackToTheByte) {
    for (auto kept : {work("Größe ½ \"x\" \\ \xE2\x82\xAC"), work("x")}) {
        leave(kept);
        const auto found = folder_.leftovers();
        ASSERT_FALSE(found.empty());
        ASSERT_TRUE(found.front().kept) << toLine(found.front().kept.error());
        EXPECT_EQ(found.front().kept->bytes, kept.bytes);
        EXPECT_EQ(found.front().kept->path, kept.path);
        EXPECT_EQ(found.front().kept->baseHash, kept.baseHash);
        folder_.claim(found.front().path)->removeFile();
        EXPECT_TRUE(folder_.leftovers().empty());
    }
}

TEST_F(RecoveryFolderTest, FolderIsForItsUserAlone) {
    leave(work());
    const auto rights = QFile::permissions(folderPath_);
    EXPECT_FALSE(rights & (QFile::ReadGroup | QFile::ReadOther | QFile::ExeOther)) << int(rights);
}

TEST_F(RecoveryFolderTest, WhatIsHeldIsNoLeftover) {
    auto slot = folder_.take(document());
    ASSERT_TRUE(slot && slot->write(work()));
    EXPECT_TRUE(folder_.leftovers().empty());
    EXPECT_FALSE(folder_.claim(slot->path()));
    slot = fail({});
    EXPECT_EQ(folder_.leftovers().size(), 1U);
}

TEST_F(RecoveryFolderTest, OnlyOneClaimsALeftover) {
    const QString path = leave(work());
    const auto first = folder_.claim(path);
    ASSERT_TRUE(first);
    EXPECT_FALSE(folder_.claim(path));
    EXPECT_TRUE(folder_.leftovers().empty());
}

TEST_F(RecoveryFolderTest, LeftoverIsNeverWrittenOver) {
    const QString first = leave(work("First"));
    const QString second = leave(work("Second"));
    EXPECT_NE(first, second);
    EXPECT_EQ(folder_.leftovers().size(), 2U);
}

TEST_F(RecoveryFolderTest, TwoOwnersOfOneDocumentKeepTheirWorkApart) {
    const auto first = folder_.take(document());
    const auto second = folder_.take(document());
    ASSERT_TRUE(first && second);
    EXPECT_NE(first->path(), second->path());
}

TEST_F(RecoveryFolderTest, DocumentsOfOneNameInTwoPlacesAreToldApart) {
    QDir(place_.path()).mkpath(QStringLiteral("a"));
    QDir(place_.path()).mkpath(QStringLiteral("b"));
    const auto first = folder_.take(document("a/yard.json"));
    const auto second = folder_.take(document("b/yard.json"));
    ASSERT_TRUE(first && second);
    EXPECT_NE(QFileInfo(first->path()).fileName(), QFileInfo(second->path()).fileName());
    EXPECT_TRUE(first->path().contains(QStringLiteral("yard.json"))) << "for people to find";
}

TEST_F(RecoveryFolderTest, OddAndLongNamesHaveAPlace) {
    for (const QString& name :
         {QStringLiteral("[a*].json"), QString(240, 'x'), QStringLiteral("½")}) {
        auto slot = folder_.take(place_.filePath(name));
        ASSERT_TRUE(slot) << name.toStdString();
        EXPECT_TRUE(slot->write({place_.filePath(name), {}, "{}"}));
        slot->removeFile();
    }
    EXPECT_TRUE(names().filter(QStringLiteral(".recovery")).filter(QStringLiteral("{")).isEmpty());
}

TEST_F(RecoveryFolderTest, LayoutThatItsFileHoldsHasNothingToRecover) {
    writeFile(document(), bytesOf(smallLayout("Edited")));
    leave(work("Edited"));
    EXPECT_TRUE(folder_.leftovers().empty());
    EXPECT_TRUE(names().isEmpty()) << names().join(' ').toStdString();
    writeFile(document(), bytesOf(smallLayout("Before")));
    leave(work("Edited"));
    EXPECT_EQ(folder_.leftovers().size(), 1U);
}

TEST_F(RecoveryFolderTest, DamagedFileIsShownWithItsErrorAndStays) {
    const QString path = leave(work());
    const QByteArray whole = readWholeFile(path);
    for (const QByteArray& bytes :
         {QByteArray(),
          whole.left(whole.size() / 2),
          QByteArray("[]"),
          QByteArray("{}"),
          QByteArray(whole).replace("\"base\"", "\"bass\""),
          QByteArray(whole).replace("\"version\": 1", "\"version\": 2")}) {
        ASSERT_NE(bytes, whole);
        writeFile(path, bytes);
        const auto found = folder_.leftovers();
        ASSERT_EQ(found.size(), 1U);
        ASSERT_FALSE(found.front().kept) << bytes.constData();
        EXPECT_EQ(found.front().kept.error().file, path.toStdString());
    }
}

TEST_F(RecoveryFolderTest, RemovingTakesWhatAKilledSavingLeftBeside) {
    auto slot = folder_.take(document());
    ASSERT_TRUE(slot && slot->write(work()));
    writeFile(slot->path() + QStringLiteral(".aBcDeF"), "half");
    slot->removeFile();
    slot = fail({});
    EXPECT_TRUE(names().isEmpty()) << names().join(' ').toStdString();
}

TEST_F(RecoveryFolderTest, FullDiskKeepsWhatWasKeptBefore) {
    auto slot = folder_.take(document());
    ASSERT_TRUE(slot && slot->write(work("Kept")));
    {
        const test::FaultyDisk disk({1, ENOSPC, true, true});
        EXPECT_FALSE(slot->write(work("Lost")));
    }
    EXPECT_EQ(slot->read()->bytes, work("Kept").bytes);
}

TEST_F(RecoveryFolderTest, LiveProgramsWorkIsNotOfferedAndADeadOnesIs) {
    writeFile(document(), bytesOf(smallLayout("On disk")));
    test::Player editor(QStringLiteral("editor"), {document(), folderPath_, "7"});
    ASSERT_TRUE(editor.line().startsWith(QStringLiteral("edit 1 ")));
    const auto isKept = [&] { return !names().filter(".recovery").filter("yard").isEmpty(); };
    for (int i = 0; i < 400 && !isKept(); ++i) {
        ASSERT_FALSE(editor.line().isEmpty());
    }
    ASSERT_TRUE(isKept());
    EXPECT_TRUE(folder_.leftovers().empty());
    editor.kill();
    EXPECT_EQ(folder_.leftovers().size(), 1U);
}

}  // namespace
}  // namespace gw::ui
