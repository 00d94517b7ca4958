#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <algorithm>
#include <memory>
#include <thread>

#include "document/autosave.h"
#include "support/random.h"
#include "ui/support/documents.h"
#include "ui/support/process.h"
#include "ui/support/roles.h"

/// Programs killed at any moment (SIGKILL: no handler, no destructor). A few times here;
/// tests/kill/run does it a thousand times and fifty.
namespace gw::ui {
namespace {

using test::bytesOf;
using test::readWholeFile;
using test::smallLayout;
using test::writeFile;

int countFrom(const char* variable, int usual) {
    return qEnvironmentVariableIsSet(variable) ? qEnvironmentVariableIntValue(variable) : usual;
}

std::uint64_t seedFromClock() {
    return static_cast<std::uint64_t>(test::monotonicMilliseconds());
}

void sleepFor(qint64 milliseconds) {
    std::this_thread::sleep_for(std::chrono::milliseconds(milliseconds));
}

/// The number in the last whole line that begins so; 0 where there is none.
int lastNumber(const QStringList& lines, const QString& beginning) {
    const QStringList found = lines.filter(beginning);
    return found.isEmpty() ? 0 : found.last().mid(beginning.size()).toInt();
}

TEST(Killed, WhileSavingTheFileIsTheOldOneOrTheNewOne) {
    const int kills = countFrom("GW_KILLS", 30);
    test_support::Random random(seedFromClock());
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("yard.json"));
    int inMidSave = 0;
    for (int i = 0; i < kills; ++i) {
        writeFile(path, bytesOf(smallLayout("0")));
        test::Player saver(QStringLiteral("saver"), {path});
        ASSERT_EQ(saver.line(), QStringLiteral("saving 1"));
        std::this_thread::sleep_for(std::chrono::microseconds(random.below(20000)));
        saver.kill();
        const QStringList lines = saver.rest();
        const int saved = lastNumber(lines, QStringLiteral("saved "));
        const int begun = std::max(1, lastNumber(lines, QStringLiteral("saving ")));
        const QByteArray now = readWholeFile(path);
        EXPECT_TRUE(now == bytesOf(smallLayout(std::to_string(saved))) ||
                    now == bytesOf(smallLayout(std::to_string(begun))))
            << "kill " << i << ": " << saved << " saved, " << begun << " begun, " << now.size()
            << " bytes";
        inMidSave += begun > saved ? 1 : 0;
    }
    RecordProperty("kills", kills);
    RecordProperty("in the middle of a save", inMidSave);
    std::printf("%d kills, %d in the middle of a save\n", kills, inMidSave);
    EXPECT_GT(inMidSave, kills / 10) << "the kills must strike while it saves";
}

// ---- unsaved work -----------------------------------------------------------------------------

struct Edit {
    int number = 0;
    qint64 at = 0;  ///< milliseconds
    QByteArray digest;
};

std::vector<Edit> editsOf(const QStringList& lines) {
    std::vector<Edit> edits;
    for (const auto& line : lines) {
        const QStringList words = line.split(' ');
        edits.push_back({words[1].toInt(), words[3].toLongLong(), words[4].toLatin1()});
    }
    return edits;
}

/// The first edit that may be lost: it is less than two seconds old, and what the scheduler of a
/// busy machine takes.
std::size_t firstThatMayBeLost(const std::vector<Edit>& edits, qint64 killedAt) {
    constexpr qint64 kKept = 2000;
    constexpr qint64 kScheduler = 500;
    const auto young = std::find_if(edits.begin(), edits.end(), [&](const Edit& edit) {
        return killedAt - edit.at < kKept + kScheduler;
    });
    return static_cast<std::size_t>(young - edits.begin());
}

/// An editor with its own document and its own recovery folder.
struct Editor {
    explicit Editor(std::uint64_t seed)
        : path(folder.filePath(QStringLiteral("yard.json"))),
          recovery(folder.filePath(QStringLiteral("recovery"))) {
        writeFile(path, bytesOf(smallLayout("On disk")));
        player = std::make_unique<test::Player>(QStringLiteral("editor"),
                                                QStringList{path, recovery, QString::number(seed)});
    }
    QTemporaryDir folder;
    QString path;
    QString recovery;
    std::unique_ptr<test::Player> player;
};

struct Outcome {
    bool offered = false;
    qint64 lost = 0;  ///< milliseconds of edits
};

Outcome killAndLook(Editor& editor) {
    const qint64 killedAt = test::monotonicMilliseconds();
    editor.player->kill();
    const auto edits = editsOf(editor.player->rest());
    const auto left = RecoveryFolder(editor.recovery).leftovers();
    const std::size_t mayBeLost = firstThatMayBeLost(edits, killedAt);
    EXPECT_EQ(readWholeFile(editor.path), bytesOf(smallLayout("On disk")));
    if (left.empty()) {
        EXPECT_EQ(mayBeLost, 0U) << "nothing is offered";
        return {};
    }
    EXPECT_EQ(left.size(), 1U);
    EXPECT_TRUE(left.front().kept) << toLine(left.front().kept.error());
    EXPECT_EQ(left.front().kept->path, editor.path);
    EXPECT_EQ(left.front().kept->baseHash, hashOf(bytesOf(smallLayout("On disk")).toStdString()));
    const QByteArray digest = hashOf(left.front().kept->bytes);
    const auto found = std::find_if(
        edits.rbegin(), edits.rend(), [&](const Edit& edit) { return edit.digest == digest; });
    const auto index = static_cast<std::size_t>(edits.rend() - found);  // edits kept
    EXPECT_GT(index, 0U) << "what is offered is no state it ever had";
    EXPECT_GE(index, mayBeLost);
    return {true, index < edits.size() ? killedAt - edits[index].at : 0};
}

TEST(Killed, AfterAnyEditsTheWorkUpToTheLastTwoSecondsIsOffered) {
    const int wanted = countFrom("GW_RECOVERIES", 3);
    constexpr int kAtOnce = 5;
    const std::uint64_t seed = seedFromClock();
    SCOPED_TRACE("seed " + std::to_string(seed));
    test_support::Random random(seed);
    qint64 mostLost = 0;
    int offered = 0;
    for (int done = 0; done < wanted; done += kAtOnce) {
        std::vector<std::unique_ptr<Editor>> editors;
        for (int i = done; i < std::min(wanted, done + kAtOnce); ++i) {
            editors.push_back(std::make_unique<Editor>(seed + static_cast<std::uint64_t>(i)));
        }
        sleepFor(4000);
        for (auto& editor : editors) {
            sleepFor(static_cast<qint64>(random.below(1500)));
            const Outcome outcome = killAndLook(*editor);
            offered += outcome.offered ? 1 : 0;
            mostLost = std::max(mostLost, outcome.lost);
        }
    }
    std::printf("%d killed, %d offered, at most %lld ms of edits lost\n",
                wanted,
                offered,
                static_cast<long long>(mostLost));
    EXPECT_GT(offered, wanted / 2);
}

}  // namespace
}  // namespace gw::ui
