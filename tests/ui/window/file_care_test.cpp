#include "window/file_care.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include "support/shipped_shelf.h"
#include "ui/support/documents.h"
#include "ui/support/message_box.h"
#include "ui/support/process.h"
#include "window/main_window.h"

namespace gw::ui {
namespace {

using test::Answer;
using test::bytesOf;
using test::readWholeFile;
using test::retitle;
using test::smallLayout;
using test::writeFile;

constexpr int kPatience = 10000;

class FileCareTest : public ::testing::Test {
protected:
    FileCareTest() {
        places_.recovery = place_.filePath(QStringLiteral("recovery"));
        writeFile(path(), bytesOf(smallLayout("On disk")));
    }
    QString path() const { return place_.filePath(QStringLiteral("yard.json")); }

    void leave(const QString& documentPath, const char* title) {
        auto slot = folder().take(documentPath);
        ASSERT_TRUE(slot);
        ASSERT_TRUE(slot->write({documentPath,
                                 hashOf(bytesOf(smallLayout("On disk")).toStdString()),
                                 bytesOf(smallLayout(title)).toStdString()}));
    }
    RecoveryFolder folder() const { return RecoveryFolder(places_.recovery); }
    int kept() const {
        return static_cast<int>(
            QDir(places_.recovery).entryList({QStringLiteral("*.recovery")}).size());
    }

    std::unique_ptr<MainWindow> start() {
        auto window = std::make_unique<MainWindow>(
            test::shippedShelf(), [](checks::Check) { return QString(); }, places_);
        window->show();
        QApplication::processEvents();
        return window;
    }
    static Notice* notice(const MainWindow& window, const QString& name) {
        auto* found = window.findChild<Notice*>(name);
        return found != nullptr && found->isVisible() ? found : nullptr;
    }
    static Notice* offer(const MainWindow& window) {
        return notice(window, FileCare::tr("Unsaved work found"));
    }
    static void click(Notice* notice, const QString& text) {
        ASSERT_NE(notice, nullptr);
        for (auto* button : notice->findChildren<QPushButton*>()) {
            if (button->text().remove('&').startsWith(text)) {
                QTest::mouseClick(button, Qt::LeftButton);
                return;
            }
        }
        FAIL() << "no button " << text.toStdString();
    }
    static void keepPicture(MainWindow& window, const QString& name) {
        const QString to = qEnvironmentVariable("GW_WINDOW_TO");
        if (!to.isEmpty()) {
            QApplication::processEvents();
            window.grab().save(to + QLatin1Char('/') + name + QStringLiteral(".png"));
        }
    }

    QTemporaryDir place_;
    Places places_;
};

TEST_F(FileCareTest, NothingLeftIsNothingOffered) {
    const auto window = start();
    EXPECT_EQ(offer(*window), nullptr);
    EXPECT_FALSE(window->isWindowModified());
}

TEST_F(FileCareTest, LeftoverIsOfferedAndRecoveredUnsavedAtItsOwnPath) {
    leave(path(), "Lost");
    auto window = start();
    ASSERT_NE(offer(*window), nullptr);
    EXPECT_TRUE(offer(*window)->sentence().contains(QStringLiteral("yard.json")));
    EXPECT_NE(window->document().layout().title, "Lost") << "offered, never forced";
    keepPicture(*window, QStringLiteral("recovery-offered"));

    click(offer(*window), QStringLiteral("Recover"));
    EXPECT_EQ(offer(*window), nullptr);
    EXPECT_EQ(window->document().layout().title, "Lost");
    EXPECT_EQ(window->session().path(), path());
    EXPECT_TRUE(window->isWindowModified());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("On disk")));
    EXPECT_EQ(kept(), 1) << "still kept until it is saved";

    ASSERT_TRUE(window->session().save());
    EXPECT_EQ(readWholeFile(path()), bytesOf(smallLayout("Lost")));
    EXPECT_EQ(kept(), 0);
}

TEST_F(FileCareTest, RecoveredAndKilledAgainIsOfferedAgain) {
    leave(path(), "Lost");
    auto window = start();
    click(offer(*window), QStringLiteral("Recover"));
    window.reset();  // without closing: as a program that is killed leaves its files
    window = start();
    ASSERT_NE(offer(*window), nullptr);
}

TEST_F(FileCareTest, ShownLaterIsOfferedAtTheNextStart) {
    leave(path(), "Lost");
    auto window = start();
    click(offer(*window), QStringLiteral("Show later"));
    EXPECT_EQ(offer(*window), nullptr);
    EXPECT_EQ(window->fileCare().leftovers().size(), 1U);
    window->close();
    window = start();
    EXPECT_NE(offer(*window), nullptr);
}

TEST_F(FileCareTest, DiscardingAsksFirst) {
    leave(path(), "Lost");
    const auto window = start();
    {
        const Answer no(QMessageBox::Cancel);
        click(offer(*window), QStringLiteral("Discard"));
        EXPECT_TRUE(no.wasAsked());
    }
    EXPECT_EQ(kept(), 1);
    const Answer yes(QMessageBox::Discard);
    click(offer(*window), QStringLiteral("Discard"));
    EXPECT_EQ(kept(), 0);
    EXPECT_EQ(offer(*window), nullptr);
}

TEST_F(FileCareTest, SeveralAreOfferedOneAfterAnother) {
    leave(path(), "First");
    leave({}, "Never saved");
    const auto window = start();
    ASSERT_NE(offer(*window), nullptr);
    EXPECT_TRUE(offer(*window)->sentence().contains(QStringLiteral("1 more")))
        << offer(*window)->sentence().toStdString();
    click(offer(*window), QStringLiteral("Recover"));
    ASSERT_NE(offer(*window), nullptr);
    const Answer giveUp(QMessageBox::Discard);
    click(offer(*window), QStringLiteral("Recover"));
    EXPECT_TRUE(giveUp.wasAsked()) << "the one just recovered is not saved yet";
    EXPECT_EQ(offer(*window), nullptr);
}

TEST_F(FileCareTest, DamagedLeftoverCannotBeRecoveredAndSaysWhy) {
    QDir().mkpath(places_.recovery);
    writeFile(places_.recovery + QStringLiteral("/x.recovery"), "{");
    const auto window = start();
    ASSERT_NE(offer(*window), nullptr);
    EXPECT_TRUE(offer(*window)->sentence().contains(QStringLiteral("cannot be read")));
    EXPECT_FALSE(offer(*window)->findChildren<QPushButton*>().front()->isEnabled());
}

TEST_F(FileCareTest, LeftoverTakenByAnotherWindowIsNotTakenTwice) {
    leave(path(), "Lost");
    const auto window = start();
    const auto theirs = folder().claim(window->fileCare().leftovers().front().path);
    ASSERT_TRUE(theirs);
    const Answer understood(QMessageBox::Ok);
    click(offer(*window), QStringLiteral("Recover"));
    EXPECT_TRUE(understood.wasAsked());
    EXPECT_NE(window->document().layout().title, "Lost");
}

TEST_F(FileCareTest, WindowThatIsOpenIsNotOfferedToAnother) {
    const auto first = start();
    ASSERT_TRUE(first->open(path()));
    retitle(first->document(), "Mine");
    ASSERT_TRUE(QTest::qWaitFor([&] { return kept() == 1; }, kPatience));
    const auto second = start();
    EXPECT_EQ(offer(*second), nullptr);
}

TEST_F(FileCareTest, ClosingLeavesNothingBehind) {
    const auto window = start();
    ASSERT_TRUE(window->open(path()));
    retitle(window->document(), "Mine");
    ASSERT_TRUE(QTest::qWaitFor([&] { return kept() == 1; }, kPatience));
    const Answer discard(QMessageBox::Discard);
    ASSERT_TRUE(window->close());
    EXPECT_EQ(kept(), 0);
}

TEST_F(FileCareTest, ClosingThatIsThoughtBetterOfKeepsTheWork) {
    const auto window = start();
    retitle(window->document(), "Mine");
    ASSERT_TRUE(QTest::qWaitFor([&] { return kept() == 1; }, kPatience));
    {
        const Answer cancel(QMessageBox::Cancel);
        EXPECT_FALSE(window->close());
    }
    EXPECT_EQ(kept(), 1);
    const Answer discard(QMessageBox::Discard);
    ASSERT_TRUE(window->close());
}

}  // namespace
}  // namespace gw::ui
