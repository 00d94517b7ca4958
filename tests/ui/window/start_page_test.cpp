#include "window/start_page.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QDropEvent>
#include <QLabel>
#include <QMimeData>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include "standards/tables.h"
#include "support/shipped_shelf.h"
#include "ui/support/documents.h"
#include "ui/support/message_box.h"
#include "ui/support/pictures.h"
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

class StartPageTest : public ::testing::Test {
protected:
    StartPageTest() {
        places_ = {place_.filePath(QStringLiteral("window.ini")),
                   place_.filePath(QStringLiteral("recovery")),
                   QStringLiteral(GW_SOURCE_DIR "/samples")};
    }
    void start() {
        window_.reset();
        window_ = std::make_unique<MainWindow>(
            test::shippedShelf(), [](checks::Check) { return QString(); }, places_);
        window_->fileActions().showStart();
        window_->show();
        QApplication::processEvents();
    }
    StartPage* page() const { return window_->findChild<StartPage*>(); }
    /// Gone, or about to go.
    bool showsBoard() const { return window_->board().isVisible(); }
    QString put(const char* title) const {
        const QString path = place_.filePath(QString::fromLatin1(title) + QStringLiteral(".json"));
        writeFile(path, bytesOf(smallLayout(title)));
        return path;
    }
    static void activate(QListWidget& list, int row) {
        list.setCurrentRow(row);
        QTest::keyClick(&list, Qt::Key_Return);
    }
    static int rowOf(const QListWidget& list, const QString& text) {
        for (int row = 0; row < list.count(); ++row) {
            if (list.item(row)->text().contains(text)) {
                return row;
            }
        }
        return -1;
    }
    Notice* hint() const {
        auto* found = window_->findChild<Notice*>(FileActions::tr("How the board works"));
        return found != nullptr && found->isVisible() ? found : nullptr;
    }

    QTemporaryDir place_;
    Places places_;
    std::unique_ptr<MainWindow> window_;
};

TEST_F(StartPageTest, IsShownOnlyWhenAskedForAndLeavesWithTheFirstLayout) {
    start();
    ASSERT_NE(page(), nullptr);
    EXPECT_FALSE(showsBoard());
    EXPECT_FALSE(window_->findings().isVisible()) << "there is nothing to judge";
    ASSERT_TRUE(window_->open(put("Yard")));
    EXPECT_TRUE(showsBoard());
    EXPECT_TRUE(window_->findings().isVisible());
    window_->fileActions().showStart();
    EXPECT_FALSE(showsBoard());
    EXPECT_EQ(window_->document().layout().title, "Yard") << "showing it drops nothing";
}

TEST_F(StartPageTest, BeginsTheGutterThatWasChosen) {
    start();
    auto boxes = page()->form().findChildren<QComboBox*>();
    ASSERT_EQ(boxes.size(), 4);
    for (auto* one : boxes) {
        one->setCurrentIndex(one->count() - 1);
    }
    const layout::Layout chosen = page()->form().chosen();
    const auto sections = standards::stockSections();
    EXPECT_EQ(chosen.gutter.inside.y, sections.back().value.width.in());
    EXPECT_EQ(chosen.gutter.inside.z, sections.back().value.depth.in());
    QTest::keyClick(page()->focusProxy(), Qt::Key_Space);
    EXPECT_TRUE(showsBoard());
    EXPECT_EQ(bytesOf(window_->document().layout()), bytesOf(chosen));
    EXPECT_FALSE(window_->session().hasPath());
    EXPECT_FALSE(window_->isWindowModified());
}

TEST_F(StartPageTest, SentenceSaysWhatComesOfTheChoices) {
    NewGutterForm form;
    EXPECT_TRUE(form.sentence().contains(QStringLiteral("100 in²"))) << "10 x 10";
    EXPECT_TRUE(form.sentence().contains(QStringLiteral("20.0 in²"))) << "a fifth of it";
    EXPECT_TRUE(form.sentence().contains(QStringLiteral("75.0 in²"))) << "three quarters";
    EXPECT_TRUE(form.sentence().contains(QStringLiteral("not stated yet")));
    const QString before = form.sentence();
    for (auto* one : form.findChildren<QComboBox*>()) {
        one->setCurrentIndex(one->count() - 1);
        EXPECT_NE(form.sentence(), before);
    }
}

TEST_F(StartPageTest, SampleIsOpenedAsACopyWithNoFile) {
    start();
    const int row = rowOf(page()->samples(), QStringLiteral("Five tenants"));
    ASSERT_GE(row, 0);
    const QString path = QStringLiteral(GW_SOURCE_DIR "/samples/five-tenants/layout.json");
    const QByteArray before = readWholeFile(path);
    activate(page()->samples(), row);
    EXPECT_EQ(window_->document().layout().title, "Five workshops on one service");
    EXPECT_FALSE(window_->session().hasPath());
    EXPECT_FALSE(window_->isWindowModified());
    retitle(window_->document(), "Mine");
    const auto saved = window_->session().save();
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().trouble, SaveTrouble::noPath);
    EXPECT_EQ(readWholeFile(path), before);
    EXPECT_TRUE(window_->session().saveAs(place_.filePath(QStringLiteral("mine.json"))));
}

TEST_F(StartPageTest, EverySampleIsListedAndDrawnSoonAfter) {
    start();
    const int folders =
        static_cast<int>(QDir(places_.samples).entryList(QDir::Dirs | QDir::NoDotAndDotDot).size());
    EXPECT_EQ(page()->samples().count() + page()->spoilt().count(), folders);
    EXPECT_GE(page()->samples().count(), 6);
    const auto isDrawn = [&](int row) {
        const QImage picture = page()->samples().item(row)->icon().pixmap(QSize(150, 68)).toImage();
        return picture.pixelColor(75, 34) != QColor(Qt::white) || [&] {
            for (int x = 0; x < picture.width(); ++x) {
                if (picture.pixelColor(x, picture.height() / 2) != QColor(Qt::white)) {
                    return true;
                }
            }
            return false;
        }();
    };
    for (int row = 0; row < page()->samples().count(); ++row) {
        EXPECT_TRUE(QTest::qWaitFor([&] { return isDrawn(row); }, kPatience)) << row;
    }
}

TEST_F(StartPageTest, RecentFilesComeLatestFirstAndMissingOnesAreGreyed) {
    start();
    const QString first = put("First");
    const QString second = put("Second");
    ASSERT_TRUE(window_->open(first));
    ASSERT_TRUE(window_->open(second));
    ASSERT_TRUE(QFile::remove(first));
    start();
    ASSERT_EQ(page()->recent().count(), 2);
    EXPECT_TRUE(page()->recent().item(0)->text().startsWith(QStringLiteral("Second.json")));
    EXPECT_TRUE(page()->recent().item(1)->text().contains(QStringLiteral("missing")));
    EXPECT_FALSE(page()->recent().item(1)->flags() & Qt::ItemIsEnabled);
    activate(page()->recent(), 0);
    EXPECT_EQ(window_->session().path(), second);
}

TEST_F(StartPageTest, ListOfRecentFilesCanBeCleared) {
    start();
    ASSERT_TRUE(window_->open(put("First")));
    start();
    for (auto* button : page()->findChildren<QPushButton*>()) {
        if (button->text().contains(QStringLiteral("lear"))) {
            button->click();
        }
    }
    EXPECT_EQ(rowOf(page()->recent(), QStringLiteral("First")), -1);
    EXPECT_TRUE(Settings(places_.settings).recentFiles().isEmpty());
}

TEST_F(StartPageTest, UnsavedWorkIsListedAndGoneOnWith) {
    {
        auto slot = RecoveryFolder(places_.recovery).take({});
        ASSERT_TRUE(slot && slot->write({{}, {}, bytesOf(smallLayout("Lost")).toStdString()}));
    }
    start();
    ASSERT_TRUE(QTest::qWaitFor([&] { return page()->leftovers().count() == 1; }, kPatience));
    activate(page()->leftovers(), 0);
    EXPECT_EQ(window_->document().layout().title, "Lost");
    EXPECT_TRUE(window_->isWindowModified());
    EXPECT_TRUE(showsBoard());
}

TEST_F(StartPageTest, HintIsShownWithTheBoardUntilItIsPutAwayForGood) {
    start();
    EXPECT_EQ(hint(), nullptr) << "not on the start page";
    ASSERT_TRUE(window_->open(put("First")));
    ASSERT_NE(hint(), nullptr);
    hint()->findChild<QPushButton*>()->click();
    QApplication::processEvents();
    EXPECT_EQ(hint(), nullptr);
    start();
    ASSERT_TRUE(window_->open(put("Second")));
    EXPECT_EQ(hint(), nullptr);
}

TEST_F(StartPageTest, FileDroppedOnTheWindowIsOpened) {
    start();
    const QString path = put("Dropped");
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(path)});
    QDragEnterEvent enter({5, 5}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window_.get(), &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent drop({5, 5}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window_.get(), &drop);
    QApplication::processEvents();
    EXPECT_EQ(window_->session().path(), path);
    QMimeData text;
    text.setText(QStringLiteral("no file"));
    QDragEnterEvent other({5, 5}, Qt::CopyAction, &text, Qt::LeftButton, Qt::NoModifier);
    other.ignore();
    QApplication::sendEvent(window_.get(), &other);
    EXPECT_FALSE(other.isAccepted());
}

TEST_F(StartPageTest, DamagedSettingsCountAsNone) {
    writeFile(places_.settings, QByteArray("\x00[[[=\xff\n%recent", 15));
    start();
    EXPECT_EQ(rowOf(page()->recent(), QStringLiteral("none yet")), 0);
}

TEST_F(StartPageTest, LooksAlikeInEveryLight) {
    put("Small yard");
    start();
    ASSERT_TRUE(window_->open(put("Boat hall north")));
    start();
    for (int row = 0; row < 20; ++row) {
        QTest::qWait(20);
    }
    window_->resize(1024, 700);
    test::keepPictures(*window_, QStringLiteral("start-page"));
    const auto* bar = page()->horizontalScrollBar();
    EXPECT_EQ(bar->maximum(), 0) << "all of its width is in sight";
    ASSERT_TRUE(window_->open(put("Boat hall north")));
    test::keepPictures(*window_, QStringLiteral("board-hint"));
}

}  // namespace
}  // namespace gw::ui
