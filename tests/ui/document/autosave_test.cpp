#include "document/autosave.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QElapsedTimer>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <cerrno>

#include "ui/support/documents.h"
#include "ui/support/faulty_disk.h"
#include "ui/support/process.h"

namespace gw::ui {
namespace {

using test::bytesOf;
using test::readWholeFile;
using test::retitle;
using test::smallLayout;
using test::writeFile;

constexpr int kPatience = 10000;

class AutosaveTest : public ::testing::Test {
protected:
    QString path() const { return place_.filePath(QStringLiteral("yard.json")); }
    void openFile() {
        writeFile(path(), bytesOf(smallLayout("On disk")));
        ASSERT_TRUE(session_.open(path()));
    }
    bool waitKept() {
        QSignalSpy kept(&autosave_, &Autosave::kept);
        return kept.wait(kPatience);
    }
    QStringList files() const {
        return QDir(folderPath_).entryList({QStringLiteral("*.recovery")}, QDir::Files);
    }
    RecoveredLayout keptOnDisk() const {
        const auto slot = RecoverySlot(QDir(folderPath_).filePath(files().value(0)), nullptr);
        return slot.read().value_or(RecoveredLayout{});
    }

    QTemporaryDir place_;
    QString folderPath_ = place_.filePath(QStringLiteral("recovery"));
    std::unique_ptr<Document> document_ = test::documentOf(smallLayout());
    FileSession session_{*document_};
    Autosave autosave_{*document_, session_, RecoveryFolder(folderPath_), nullptr, {60, 300}};
};

TEST_F(AutosaveTest, UsualTimesLoseNothingOlderThanTwoSeconds) {
    EXPECT_LT(AutosaveTimes{}.idle, 2000);
    EXPECT_LT(AutosaveTimes{}.longest, 2000);
}

TEST_F(AutosaveTest, NothingIsKeptOfWhatWasNotEdited) {
    openFile();
    autosave_.keepNow();
    EXPECT_TRUE(files().isEmpty());
}

TEST_F(AutosaveTest, EditIsKeptWithItsPathAndTheDigestOfTheFileItCameFrom) {
    openFile();
    const auto before = readWholeFile(path());
    retitle(*document_, "Edited");
    EXPECT_FALSE(autosave_.isKept());
    ASSERT_TRUE(waitKept());
    EXPECT_TRUE(autosave_.isKept());
    EXPECT_EQ(keptOnDisk().path, path());
    EXPECT_EQ(keptOnDisk().baseHash, hashOf(before.toStdString()));
    EXPECT_EQ(keptOnDisk().bytes, bytesOf(smallLayout("Edited")).toStdString());
    EXPECT_EQ(readWholeFile(path()), before);
}

TEST_F(AutosaveTest, LayoutNeverSavedIsKeptToo) {
    retitle(*document_, "Edited");
    ASSERT_TRUE(waitKept());
    EXPECT_TRUE(keptOnDisk().path.isEmpty());
    EXPECT_EQ(keptOnDisk().bytes, bytesOf(smallLayout("Edited")).toStdString());
}

TEST_F(AutosaveTest, BusyHandIsKeptUpWithAllTheSame) {
    QElapsedTimer since;
    since.start();
    QSignalSpy kept(&autosave_, &Autosave::kept);
    for (int i = 0; kept.isEmpty() && since.elapsed() < kPatience; ++i) {
        retitle(*document_, std::to_string(i));
        QTest::qWait(10);  // never idle for as long as the idle time
    }
    ASSERT_FALSE(kept.isEmpty());
    EXPECT_GE(since.elapsed(), 250);
}

TEST_F(AutosaveTest, SavingTakesItAway) {
    openFile();
    retitle(*document_, "Edited");
    ASSERT_TRUE(waitKept());
    ASSERT_TRUE(session_.save());
    EXPECT_TRUE(QDir(folderPath_).isEmpty());
    retitle(*document_, "Edited again");
    ASSERT_TRUE(waitKept());
    EXPECT_EQ(keptOnDisk().baseHash, session_.knownHash());
}

TEST_F(AutosaveTest, UndoingAllTakesItAwayAndRedoKeepsItAgain) {
    openFile();
    retitle(*document_, "Edited");
    ASSERT_TRUE(waitKept());
    document_->undo();
    EXPECT_TRUE(files().isEmpty());
    document_->redo();
    ASSERT_TRUE(waitKept());
    EXPECT_EQ(files().size(), 1);
}

TEST_F(AutosaveTest, AnotherLayoutTakesItAway) {
    retitle(*document_, "Edited");
    ASSERT_TRUE(waitKept());
    ASSERT_TRUE(session_.newLayout(smallLayout("Other")));
    EXPECT_TRUE(files().isEmpty());
}

TEST_F(AutosaveTest, GivenUpIsGoneAndStaysGone) {
    retitle(*document_, "Edited");
    ASSERT_TRUE(waitKept());
    retitle(*document_, "Edited more");
    autosave_.discard();
    QTest::qWait(200);
    EXPECT_TRUE(files().isEmpty());
}

TEST_F(AutosaveTest, DragUnderWayIsKeptAsItWasBefore) {
    retitle(*document_, "Settled");
    Gesture drag(*document_);
    ASSERT_TRUE(drag.preview(smallLayout("Dragging")));
    ASSERT_TRUE(waitKept());
    EXPECT_EQ(keptOnDisk().bytes, bytesOf(smallLayout("Settled")).toStdString());
    ASSERT_TRUE(drag.preview(smallLayout("Dragging on")));
    const test::FaultyDisk disk({});
    ASSERT_TRUE(waitKept());
    EXPECT_EQ(disk.calls(), 0) << "nothing new to write";
}

TEST_F(AutosaveTest, RecoveredLayoutGoesOnInItsOwnPlace) {
    retitle(*document_, "Edited");
    ASSERT_TRUE(waitKept());
    const auto other = test::documentOf(smallLayout());
    FileSession otherSession(*other);
    const RecoveryFolder folder(folderPath_);
    Autosave second(*other, otherSession, folder, nullptr, {60, 300});
    auto left = folder.take({});
    ASSERT_TRUE(left && left->write({path(), "0123", bytesOf(smallLayout("Lost")).toStdString()}));
    const QString place = left->path();
    ASSERT_TRUE(otherSession.openRecovered(*left->read()));
    second.adopt(std::move(*left));
    EXPECT_TRUE(QFile::exists(place)) << "a crash right now loses nothing";
    retitle(*other, "Found");
    QSignalSpy kept(&second, &Autosave::kept);
    ASSERT_TRUE(kept.wait(kPatience));
    EXPECT_EQ(files().size(), 2);
    ASSERT_TRUE(otherSession.saveAs(path()));
    EXPECT_EQ(files().size(), 1);
}

TEST_F(AutosaveTest, FullDiskIsToldOnceAndWorkGoesOn) {
    QSignalSpy failed(&autosave_, &Autosave::failed);
    {
        const test::FaultyDisk disk({1, ENOSPC, true, false});
        for (const char* title : {"One", "Two", "Three"}) {
            retitle(*document_, title);
            autosave_.keepNow();
        }
    }
    ASSERT_EQ(failed.count(), 1);
    EXPECT_FALSE(failed.at(0).at(0).toString().isEmpty());
    retitle(*document_, "Four");
    ASSERT_TRUE(waitKept());
    EXPECT_EQ(keptOnDisk().bytes, bytesOf(smallLayout("Four")).toStdString());
}

}  // namespace
}  // namespace gw::ui
