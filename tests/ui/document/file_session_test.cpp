#include "document/file_session.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <cerrno>

#include "ui/support/documents.h"
#include "ui/support/faulty_disk.h"
#include "ui/support/process.h"
#include "ui/support/roles.h"
#include "ui/support/small_disk.h"

namespace gw::ui {
namespace {

using test::bytesOf;
using test::readWholeFile;
using test::retitle;
using test::smallLayout;
using test::writeFile;

constexpr int kPatience = 10000;  // milliseconds for what comes within one or two hundred

/// A document with its file, in a folder of its own.
struct Bench {
    std::unique_ptr<Document> document = test::documentOf(smallLayout());
    FileSession session{*document};
};

class FileSessionTest : public ::testing::Test {
protected:
    QString path(const char* name = "yard.gutter.json") const {
        return folder_.filePath(QString::fromLatin1(name));
    }
    /// A file with the layout of this title, as the program writes it.
    QString put(const char* title, const char* name = "yard.gutter.json") const {
        writeFile(path(name), bytesOf(smallLayout(title)));
        return path(name);
    }
    QStringList namesInFolder() const {
        return QDir(folder_.path()).entryList(QDir::Files | QDir::Hidden, QDir::Name);
    }

    QTemporaryDir folder_;
    Bench bench_;
    Document& document_ = *bench_.document;
    FileSession& session_ = bench_.session;
};

void expectTrouble(const Saved& saved, SaveTrouble trouble) {
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().trouble, trouble);
    EXPECT_FALSE(toLine(saved.error().error).empty());
    EXPECT_EQ(toLine(saved.error().error).find('\n'), std::string::npos);
}

// ---- new, open, save --------------------------------------------------------------------------

TEST_F(FileSessionTest, LayoutWithNoFileAsksForAPlace) {
    ASSERT_TRUE(session_.newLayout(smallLayout("Boat hall")));
    EXPECT_FALSE(session_.hasPath());
    EXPECT_FALSE(document_.isModified());
    EXPECT_EQ(document_.layout().title, "Boat hall");
    expectTrouble(session_.save(), SaveTrouble::noPath);
}

TEST_F(FileSessionTest, SaveAsWritesTheLayoutAndTakesThePath) {
    retitle(document_, "Boat hall");
    ASSERT_TRUE(document_.isModified());
    const QSignalSpy moved(&session_, &FileSession::pathChanged);
    ASSERT_TRUE(session_.saveAs(path()));
    EXPECT_EQ(session_.path(), path());
    EXPECT_EQ(moved.count(), 1);
    EXPECT_FALSE(document_.isModified());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Boat hall")));
}

TEST_F(FileSessionTest, OpensAndSavesInPlace) {
    ASSERT_TRUE(session_.open(put("Before")));
    EXPECT_EQ(document_.layout().title, "Before");
    EXPECT_FALSE(session_.isReadOnly()) << session_.readOnlyReason().toStdString();
    retitle(document_, "After");
    ASSERT_TRUE(session_.save());
    EXPECT_FALSE(document_.isModified());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("After")));
}

TEST_F(FileSessionTest, FileThatIsNoLayoutChangesNothing) {
    ASSERT_TRUE(session_.open(put("Good")));
    retitle(document_, "Edited");
    writeFile(path("bad.json"), "{\"format\": \"gutterwright-layout\"");
    const auto opened = session_.open(path("bad.json"));
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().file, path("bad.json").toStdString());
    EXPECT_EQ(session_.path(), path());
    EXPECT_EQ(document_.layout().title, "Edited");
    EXPECT_TRUE(document_.isModified());
    ASSERT_TRUE(session_.save());
    EXPECT_EQ(namesInFolder().filter(QStringLiteral("bad")), QStringList("bad.json"));
}

TEST_F(FileSessionTest, FileThatIsNotThereCannotBeOpened) {
    ASSERT_FALSE(session_.open(path("nothing.json")));
    EXPECT_FALSE(session_.hasPath());
    EXPECT_TRUE(namesInFolder().isEmpty());
}

TEST_F(FileSessionTest, SavingInMidDragSavesTheLayoutBeforeIt) {
    ASSERT_TRUE(session_.open(put("Before")));
    retitle(document_, "Settled");
    Gesture drag(document_);
    ASSERT_TRUE(drag.preview(smallLayout("Dragging")));
    ASSERT_TRUE(session_.save());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Settled")));
    drag.commit(QStringLiteral("Drag"));
    EXPECT_TRUE(document_.isModified());
}

TEST_F(FileSessionTest, NewLayoutLetsGoOfTheFile) {
    ASSERT_TRUE(session_.open(put("Before")));
    ASSERT_TRUE(session_.newLayout(smallLayout("Other")));
    EXPECT_FALSE(session_.hasPath());
    Bench other;
    ASSERT_TRUE(other.session.open(path()));
    EXPECT_FALSE(other.session.isReadOnly());
}

TEST_F(FileSessionTest, RecoveredLayoutIsModifiedAndSavesToItsOwnPath) {
    put("On disk");
    const RecoveredLayout recovered{path(),
                                    hashOf(bytesOf(smallLayout("On disk")).toStdString()),
                                    bytesOf(smallLayout("Recovered")).toStdString()};
    ASSERT_TRUE(session_.openRecovered(recovered));
    EXPECT_TRUE(document_.isModified());
    EXPECT_EQ(session_.path(), path());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("On disk")));
    ASSERT_TRUE(session_.save());
    EXPECT_FALSE(document_.isModified());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Recovered")));
}

TEST_F(FileSessionTest, RecoveredLayoutWhoseFileIsAnotherByNowAsksBeforeOverwriting) {
    put("Written since");
    const RecoveredLayout recovered{path(),
                                    hashOf(bytesOf(smallLayout("As it was")).toStdString()),
                                    bytesOf(smallLayout("Recovered")).toStdString()};
    QSignalSpy told(&session_, &FileSession::changedOnDisk);
    ASSERT_TRUE(session_.openRecovered(recovered));
    expectTrouble(session_.save(), SaveTrouble::changedOnDisk);
    EXPECT_TRUE(told.wait(kPatience));
}

// ---- behind its back --------------------------------------------------------------------------

TEST_F(FileSessionTest, FileChangedBehindItsBackIsNotOverwrittenUnasked) {
    ASSERT_TRUE(session_.open(put("Before")));
    retitle(document_, "Mine");
    put("Theirs");
    expectTrouble(session_.save(), SaveTrouble::changedOnDisk);
    EXPECT_TRUE(document_.isModified());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Theirs")));

    ASSERT_TRUE(session_.save(IfChanged::overwrite));
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Mine")));
    EXPECT_FALSE(document_.isModified());
}

TEST_F(FileSessionTest, ReloadTakesWhatTheOtherWrote) {
    ASSERT_TRUE(session_.open(put("Before")));
    retitle(document_, "Mine");
    put("Theirs");
    ASSERT_TRUE(session_.reload());
    EXPECT_EQ(document_.layout().title, "Theirs");
    EXPECT_FALSE(document_.isModified());
    EXPECT_FALSE(session_.isReadOnly());
    retitle(document_, "Mine again");
    EXPECT_TRUE(session_.save());
}

TEST_F(FileSessionTest, SameBytesWrittenAgainAreNoChange) {
    ASSERT_TRUE(session_.open(put("Before")));
    retitle(document_, "Mine");
    put("Before");
    EXPECT_EQ(session_.diskState(), DiskState::asKnown);
    EXPECT_TRUE(session_.save());
}

TEST_F(FileSessionTest, FileThatIsGoneIsWrittenAgain) {
    ASSERT_TRUE(session_.open(put("Before")));
    retitle(document_, "Mine");
    ASSERT_TRUE(QFile::remove(path()));
    EXPECT_EQ(session_.diskState(), DiskState::gone);
    ASSERT_TRUE(session_.save());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Mine")));
}

TEST_F(FileSessionTest, ChangeInPlaceIsTold) {
    ASSERT_TRUE(session_.open(put("Before")));
    QSignalSpy told(&session_, &FileSession::changedOnDisk);
    put("Theirs");
    ASSERT_TRUE(told.wait(kPatience));
    EXPECT_EQ(told.takeFirst().at(0).value<DiskState>(), DiskState::changed);
}

TEST_F(FileSessionTest, FilesPutInItsPlaceOneAfterAnotherAreEachTold) {
    ASSERT_TRUE(session_.open(put("Before")));
    QSignalSpy told(&session_, &FileSession::changedOnDisk);
    for (const char* title : {"Theirs", "Theirs again", "And again"}) {
        put(title, "beside");
        ASSERT_EQ(std::rename(path("beside").toUtf8().constData(), path().toUtf8().constData()), 0);
        ASSERT_TRUE(told.wait(kPatience)) << title;
        EXPECT_EQ(told.takeFirst().at(0).value<DiskState>(), DiskState::changed) << title;
    }
}

TEST_F(FileSessionTest, RemovalAndReturnAreTold) {
    ASSERT_TRUE(session_.open(put("Before")));
    QSignalSpy told(&session_, &FileSession::changedOnDisk);
    ASSERT_TRUE(QFile::remove(path()));
    ASSERT_TRUE(told.wait(kPatience));
    EXPECT_EQ(told.takeFirst().at(0).value<DiskState>(), DiskState::gone);
    put("Before");
    ASSERT_TRUE(told.wait(kPatience));
    EXPECT_EQ(told.takeFirst().at(0).value<DiskState>(), DiskState::asKnown);
}

TEST_F(FileSessionTest, OwnSavesAreNotTold) {
    ASSERT_TRUE(session_.open(put("Before")));
    QSignalSpy told(&session_, &FileSession::changedOnDisk);
    for (const char* title : {"One", "Two", "Three"}) {
        retitle(document_, title);
        ASSERT_TRUE(session_.save());
    }
    put("Theirs");  // what is told first is the other's change, and nothing before it
    ASSERT_TRUE(told.wait(kPatience));
    EXPECT_EQ(told.takeFirst().at(0).value<DiskState>(), DiskState::changed);
    EXPECT_EQ(told.count(), 0);
}

// ---- a disk that fails ------------------------------------------------------------------------

struct DiskCase {
    const char* name;
    int error;
    bool andAllAfter;
    bool halfWritten;
};

void PrintTo(const DiskCase& disk, std::ostream* out) {
    *out << disk.name;
}

class FileSessionOnAFaultyDisk : public FileSessionTest,
                                 public ::testing::WithParamInterface<DiskCase> {
protected:
    test::Fault faultAt(int call) const {
        return {call, GetParam().error, GetParam().andAllAfter, GetParam().halfWritten};
    }
};

/// The system's errors for each call in turn; a save changes the disk by five calls or so.
TEST_P(FileSessionOnAFaultyDisk, NthCallFailingKeepsTheOldFileWhicheverItIs) {
    ASSERT_TRUE(session_.open(put("Before")));
    retitle(document_, "After");
    int refused = 0;
    for (int call = 1;; ++call) {
        const auto before = namesInFolder();
        const auto old = readWholeFile(path());
        Saved saved;
        bool struck = false;
        {
            const test::FaultyDisk disk(faultAt(call));
            saved = session_.save();
            struck = disk.struck();
        }
        if (!struck) {
            ASSERT_TRUE(saved);
            break;
        }
        if (saved) {  // a passing fault may be got over; then all is as after any save
            EXPECT_EQ(readWholeFile(path()), bytesOf(document_.layout())) << call;
            retitle(document_, "After " + std::to_string(call));
        } else {
            ++refused;
            expectTrouble(saved, SaveTrouble::cannotWrite);
            EXPECT_EQ(saved.error().error.code, ErrorCode::unwritable);
            EXPECT_EQ(readWholeFile(path()), old) << call;
            EXPECT_TRUE(document_.isModified()) << call;
        }
        EXPECT_EQ(namesInFolder(), before) << "left behind when call " << call << " failed";
        ASSERT_LT(call, 100);
    }
    EXPECT_GE(refused, 3);  // opening, writing and syncing at the least
    EXPECT_EQ(readWholeFile(path()), bytesOf(document_.layout()));
    EXPECT_FALSE(document_.isModified());
}

TEST_P(FileSessionOnAFaultyDisk, SaveAsThatFailsLeavesThePathAndTheFileThere) {
    ASSERT_TRUE(session_.open(put("Before")));
    retitle(document_, "After");
    const auto other = put("Another", "other.gutter.json");
    for (int call = 1; call <= 3; ++call) {
        const test::FaultyDisk disk({call, GetParam().error, true, GetParam().halfWritten});
        EXPECT_FALSE(session_.saveAs(other)) << call;
        EXPECT_EQ(session_.path(), path()) << call;
        EXPECT_TRUE(document_.isModified()) << call;
        EXPECT_EQ(readWholeFile(other), bytesOf(smallLayout("Another"))) << call;
    }
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Before")));
    ASSERT_TRUE(session_.saveAs(other));
    EXPECT_EQ(session_.path(), other);
    EXPECT_EQ(readWholeFile(other), bytesOf(smallLayout("After")));
}

// clang-format off
const DiskCase kDisks[] = {
    {"Full",               ENOSPC, true,  false},
    {"FullInTheMiddle",    ENOSPC, true,  true},
    {"OverQuota",          EDQUOT, true,  false},
    {"TurnedReadOnly",     EROFS,  true,  false},
    {"Broken",             EIO,    true,  false},
    {"FullForAMoment",     ENOSPC, false, false},
    {"BrokenForAMoment",   EIO,    false, false},
};
// clang-format on

std::string diskName(const ::testing::TestParamInfo<DiskCase>& row) {
    return row.param.name;
}

INSTANTIATE_TEST_SUITE_P(Disks, FileSessionOnAFaultyDisk, ::testing::ValuesIn(kDisks), diskName);

/// A layout whose file has this many bytes: systems to spare, and a title for the slack.
layout::Layout layoutOfSize(qint64 bytes) {
    constexpr qint64 kSystem = 250;  // more than one takes, less than a title may have
    auto layout = smallLayout("x");  // an empty title is left out of the file
    while (bytesOf(layout).size() + kSystem < bytes) {
        layout.systems.push_back(layout.systems.front());
        layout.systems.back().id = layout::SystemId("Z" + std::to_string(layout.systems.size()));
    }
    layout.title.append(static_cast<std::size_t>(bytes - bytesOf(layout).size()), 'x');
    return layout;
}

/// A disk gives room by pages: two pages free take a file of 8192 bytes and none of 8193.
TEST(FileSessionOnASmallDisk, LayoutOneByteTooLargeKeepsTheOldFile) {
    if (test::smallDisk().isEmpty()) {
        test::runOnSmallDisk("FileSessionOnASmallDisk.LayoutOneByteTooLargeKeepsTheOldFile", "64k");
        return;
    }
    constexpr qint64 kRoom = 8192;
    const QString path = test::smallDisk() + QStringLiteral("/yard.gutter.json");
    const auto old = bytesOf(smallLayout("Before"));
    writeFile(path, old);
    Bench bench;
    ASSERT_TRUE(bench.session.open(path));
    test::fillSmallDisk(kRoom);

    ASSERT_TRUE(bench.document->edit(QStringLiteral("Grow"), layoutOfSize(kRoom + 1)));
    expectTrouble(bench.session.save(), SaveTrouble::cannotWrite);
    EXPECT_EQ(readWholeFile(path), old);
    EXPECT_TRUE(bench.document->isModified());

    for (const qint64 size : {kRoom, kRoom - 1}) {
        ASSERT_TRUE(bench.document->edit(QStringLiteral("Shrink"), layoutOfSize(size)));
        const auto saved = bench.session.save();
        ASSERT_TRUE(saved) << size << ": " << toLine(saved.error().error);
        EXPECT_EQ(readWholeFile(path).size(), size);
        EXPECT_FALSE(bench.document->isModified());
        // Both files lie on the disk during a save: make the old one as small as it was.
        ASSERT_TRUE(bench.document->edit(QStringLiteral("Back"), smallLayout("Before")));
        ASSERT_TRUE(QFile::remove(test::smallDisk() + QStringLiteral("/filler")));
        ASSERT_TRUE(bench.session.save());
        test::fillSmallDisk(kRoom);
    }
}

TEST(FileSessionOnASmallDisk, OpensOnAFullDiskAndSavesWhenThereIsRoom) {
    if (test::smallDisk().isEmpty()) {
        test::runOnSmallDisk("FileSessionOnASmallDisk.OpensOnAFullDiskAndSavesWhenThereIsRoom",
                             "64k");
        return;
    }
    const QString path = test::smallDisk() + QStringLiteral("/yard.gutter.json");
    writeFile(path, bytesOf(smallLayout("Before")));
    test::fillSmallDisk();
    Bench bench;
    ASSERT_TRUE(bench.session.open(path));
    EXPECT_FALSE(bench.session.isReadOnly());
    retitle(*bench.document, "After");
    expectTrouble(bench.session.save(), SaveTrouble::cannotWrite);
    EXPECT_EQ(readWholeFile(path), bytesOf(smallLayout("Before")));
    ASSERT_TRUE(QFile::remove(test::smallDisk() + QStringLiteral("/filler")));
    ASSERT_TRUE(bench.session.save());
    EXPECT_EQ(readWholeFile(path), bytesOf(smallLayout("After")));
}

// ---- places that may not be written -----------------------------------------------------------

TEST(FileSessionOnASmallDisk, ReadOnlyDiskOpensReadOnly) {
    if (test::smallDisk().isEmpty()) {
        test::runOnSmallDisk("FileSessionOnASmallDisk.ReadOnlyDiskOpensReadOnly", "64k");
        return;
    }
    const QString path = test::smallDisk() + QStringLiteral("/yard.gutter.json");
    writeFile(path, bytesOf(smallLayout("Before")));
    test::makeSmallDiskReadOnly();
    Bench bench;
    ASSERT_TRUE(bench.session.open(path));
    EXPECT_TRUE(bench.session.isReadOnly());
    retitle(*bench.document, "After");
    expectTrouble(bench.session.save(), SaveTrouble::readOnly);
    EXPECT_TRUE(bench.document->isModified());
    const QTemporaryDir elsewhere;
    ASSERT_TRUE(bench.session.saveAs(elsewhere.filePath(QStringLiteral("copy.gutter.json"))));
    EXPECT_FALSE(bench.session.isReadOnly());
    EXPECT_EQ(readWholeFile(path), bytesOf(smallLayout("Before")));
}

TEST(FileSessionOfAPlainUser, FileAndFolderThatMayNotBeWrittenOpenReadOnly) {
    if (!test::isPlainUser()) {
        test::runAsPlainUser(
            "FileSessionOfAPlainUser.FileAndFolderThatMayNotBeWrittenOpenReadOnly");
        return;
    }
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("yard.gutter.json"));
    const auto old = bytesOf(smallLayout("Before"));
    writeFile(path, old);
    for (const QString& place : {path, folder.path()}) {
        const auto rights = QFile::permissions(place);
        ASSERT_TRUE(QFile::setPermissions(
            place, rights & ~(QFile::WriteOwner | QFile::WriteUser | QFile::WriteGroup)));
        Bench bench;
        ASSERT_TRUE(bench.session.open(path));
        EXPECT_TRUE(bench.session.isReadOnly()) << place.toStdString();
        retitle(*bench.document, "After");
        expectTrouble(bench.session.save(), SaveTrouble::readOnly);
        expectTrouble(bench.session.saveAs(path), SaveTrouble::readOnly);
        EXPECT_EQ(readWholeFile(path), old) << place.toStdString();
        EXPECT_TRUE(bench.document->isModified());
        ASSERT_TRUE(QFile::setPermissions(place, rights));
        EXPECT_TRUE(bench.session.save()) << "once it may be written, the next save does";
        writeFile(path, old);
    }
}

// ---- two owners -------------------------------------------------------------------------------

TEST_F(FileSessionTest, SecondOwnerOpensReadOnlyAndIsToldTheFirst) {
    put("Before");
    test::Player first(QStringLiteral("holder"), {path()});
    ASSERT_EQ(first.line(), QStringLiteral("open"));

    ASSERT_TRUE(session_.open(path()));
    EXPECT_TRUE(session_.isReadOnly());
    EXPECT_TRUE(session_.readOnlyReason().contains(QString::number(first.process())))
        << session_.readOnlyReason().toStdString();
    retitle(document_, "After");
    expectTrouble(session_.save(), SaveTrouble::readOnly);
    expectTrouble(session_.save(IfChanged::overwrite), SaveTrouble::readOnly);
    ASSERT_TRUE(session_.open(path(), IfHeld::takeOver));
    EXPECT_TRUE(session_.isReadOnly()) << "a live holder keeps its file";
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Before")));

    retitle(document_, "After");
    EXPECT_EQ(first.finish(), 0);
    ASSERT_TRUE(session_.save());
    EXPECT_FALSE(session_.isReadOnly());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("After")));
}

TEST_F(FileSessionTest, SavingAsAFileThatAnotherHasOpenIsRefused) {
    put("Theirs");
    test::Player first(QStringLiteral("holder"), {path()});
    ASSERT_EQ(first.line(), QStringLiteral("open"));
    retitle(document_, "Mine");
    const auto saved = session_.saveAs(path());
    expectTrouble(saved, SaveTrouble::heldElsewhere);
    EXPECT_NE(toLine(saved.error().error).find(std::to_string(first.process())), std::string::npos);
    EXPECT_TRUE(document_.isModified());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Theirs")));
}

TEST_F(FileSessionTest, OwnerThatWasKilledHoldsNothing) {
    put("Before");
    test::Player first(QStringLiteral("holder"), {path()});
    ASSERT_EQ(first.line(), QStringLiteral("open"));
    first.kill();
    ASSERT_TRUE(session_.open(path()));
    EXPECT_FALSE(session_.isReadOnly()) << session_.readOnlyReason().toStdString();
}

TEST_F(FileSessionTest, TwoNamesOfOneFileHaveOneOwner) {
    put("Before");
    ASSERT_TRUE(QFile::link(path(), path("link.json")));
    ASSERT_TRUE(session_.open(path()));
    Bench other;
    ASSERT_TRUE(other.session.open(path("link.json")));
    EXPECT_TRUE(other.session.isReadOnly());
}

TEST_F(FileSessionTest, LockOfAnotherMachineIsTakenOverOnlyWhenAsked) {
    put("Before");
    writeFile(path(".yard.gutter.json.lock"),
              "4711\ngutterwright\nharbour-office\nmachine\nboot\n");
    ASSERT_TRUE(session_.open(path()));
    EXPECT_TRUE(session_.isReadOnly());
    EXPECT_TRUE(session_.readOnlyReason().contains(QStringLiteral("harbour-office")))
        << session_.readOnlyReason().toStdString();
    ASSERT_TRUE(session_.open(path(), IfHeld::takeOver));
    EXPECT_FALSE(session_.isReadOnly()) << session_.readOnlyReason().toStdString();
}

}  // namespace
}  // namespace gw::ui
