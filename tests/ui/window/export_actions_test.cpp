#include "window/export_actions.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>

#include "checks/report.h"
#include "drawing/template.h"
#include "support/shipped_shelf.h"
#include "ui/support/process.h"
#include "window/main_window.h"

namespace gw::ui {
namespace {

class Exports : public testing::Test {
protected:
    Exports() : window(test::shippedShelf(), [](checks::Check) { return QString(); }) {
        window.resize(1280, 820);
        const auto opened = window.open(QStringLiteral(GW_SOURCE_DIR) +
                                        QStringLiteral("/samples/five-tenants/layout.json"));
        EXPECT_TRUE(opened) << toLine(opened.error());
    }
    QString in(const char* name) const { return folder.filePath(QString::fromLatin1(name)); }
    QStringList files() const { return QDir(folder.path()).entryList(QDir::Files, QDir::Name); }

    QTemporaryDir folder;
    MainWindow window;
};

TEST_F(Exports, ASheetIsAPdfByItsNameOrAnSvgAPage) {
    ASSERT_TRUE(window.exports().saveSheetTo(in("sheet.pdf")));
    EXPECT_TRUE(test::readWholeFile(in("sheet.pdf")).startsWith("%PDF-"));
    ASSERT_TRUE(window.exports().saveSheetTo(in("sheet.svg")));
    const auto svgs = files().filter(QStringLiteral(".svg"));
    EXPECT_GE(svgs.size(), 1);
    for (const auto& one : svgs) {
        EXPECT_TRUE(test::readWholeFile(folder.filePath(one)).contains("<svg"));
    }
    const auto run = test::runProgram(QStringLiteral("pdfinfo"), {in("sheet.pdf")});
    ASSERT_TRUE(run.good());
    EXPECT_TRUE(QString::fromUtf8(run.out).contains(
        QRegularExpression(QStringLiteral("Pages: +%1\n").arg(svgs.size()))))
        << run.out.toStdString();
}

TEST_F(Exports, TheTakeoffIsAPageATextOrJsonByItsName) {
    ASSERT_TRUE(window.exports().saveTakeoffTo(in("takeoff.html")));
    EXPECT_TRUE(test::readWholeFile(in("takeoff.html")).contains("Cut list"));
    ASSERT_TRUE(window.exports().saveTakeoffTo(in("takeoff.txt")));
    EXPECT_TRUE(test::readWholeFile(in("takeoff.txt")).startsWith("Takeoff of "));
    ASSERT_TRUE(window.exports().saveTakeoffTo(in("takeoff.json")));
    EXPECT_TRUE(test::readWholeFile(in("takeoff.json")).contains("gutterwright-takeoff"));
}

TEST_F(Exports, TheTemplateHasTheSheetsOfTheCommandLine) {
    ASSERT_TRUE(window.exports().saveTemplateTo(in("template.pdf")));
    const auto run = test::runProgram(QStringLiteral("pdfinfo"), {in("template.pdf")});
    ASSERT_TRUE(run.good());
    const auto tiles = drawing::templateTiles(window.document().built(), {});
    EXPECT_TRUE(QString::fromUtf8(run.out).contains(
        QRegularExpression(QStringLiteral("Pages: +%1\n").arg(tiles.size()))))
        << run.out.toStdString();
}

TEST_F(Exports, CardsStepsAndLabelsAreWrittenAsPdf) {
    ASSERT_TRUE(window.exports().saveCardsTo(in("cards.pdf")));
    ASSERT_TRUE(window.exports().saveStepsTo(in("steps.pdf")));
    ASSERT_TRUE(window.exports().saveLabelsTo(in("labels.pdf")));
    for (const char* name : {"cards.pdf", "steps.pdf", "labels.pdf"}) {
        EXPECT_TRUE(test::readWholeFile(in(name)).startsWith("%PDF")) << name;
    }
    EXPECT_FALSE(window.exports().saveCardsTo(in("none/cards.pdf")));
    EXPECT_FALSE(window.exports().saveStepsTo(in("none/steps.pdf")));
    EXPECT_FALSE(window.exports().saveLabelsTo(in("none/labels.pdf")));
    EXPECT_EQ(files().size(), 3);
}

TEST_F(Exports, ATakeoffOrTemplateThatCannotBeWrittenLeavesNothing) {
    EXPECT_FALSE(window.exports().saveTakeoffTo(in("none/takeoff.html")));
    EXPECT_FALSE(window.exports().saveTemplateTo(in("none/template.pdf")));
    EXPECT_TRUE(files().isEmpty());
}

TEST_F(Exports, TheSheetLiesOnThePaperThatWasChosen) {
    // ANSI/ASME Y14.1: Letter is 11 x 8.5 in, 792 x 612 points.
    window.exports().setPaper(drawing::Paper::letter);
    ASSERT_TRUE(window.exports().saveSheetTo(in("sheet.pdf")));
    const auto run = test::runProgram(QStringLiteral("pdfinfo"), {in("sheet.pdf")});
    ASSERT_TRUE(run.good());
    EXPECT_TRUE(QString::fromUtf8(run.out).contains(QStringLiteral("792 x 612")))
        << run.out.toStdString();
}

TEST_F(Exports, TheReportIsTheOneOfTheCommandLine) {
    const auto& document = window.document();
    ASSERT_TRUE(window.exports().saveReportTo(in("report.txt"), QStringLiteral("yard")));
    EXPECT_EQ(test::readWholeFile(in("report.txt")).toStdString(),
              checks::textReport(document.built(), document.findings(), {"yard"}));
    ASSERT_TRUE(window.exports().saveReportTo(in("report.json"), QStringLiteral("yard")));
    EXPECT_EQ(test::readWholeFile(in("report.json")).toStdString(),
              checks::jsonReport(document.built(), document.findings(), {"yard"}));
}

TEST_F(Exports, ThePictureIsTheBoardAtTwiceItsSize) {
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    ASSERT_TRUE(window.exports().savePictureTo(in("board.png")));
    const QImage picture(in("board.png"));
    EXPECT_EQ(picture.size(), window.board().size() * 2);
    const QString to = qEnvironmentVariable("GW_WINDOW_TO");
    if (!to.isEmpty()) {
        QFile::copy(in("board.png"), to + QStringLiteral("/exported-board.png"));
    }
    // It is drawn on: not all of one colour.
    int others = 0;
    for (int x = 0; x < picture.width(); x += 7) {
        others += picture.pixel(x, picture.height() / 2) != picture.pixel(0, 0) ? 1 : 0;
    }
    EXPECT_GT(others, 20);
}

TEST_F(Exports, AFolderThatIsNotThereIsAnErrorAndLeavesNothing) {
    const QString path = in("none/sheet.pdf");
    for (const auto& refused :
         {window.exports().saveSheetTo(path),
          window.exports().saveReportTo(in("none/report.txt"), QStringLiteral("yard")),
          window.exports().savePictureTo(in("none/board.png"))}) {
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().code, ErrorCode::unwritable);
    }
    EXPECT_TRUE(files().isEmpty());
    EXPECT_FALSE(QDir(in("none")).exists());
}

TEST_F(Exports, NothingExportedIsAStepOrAChange) {
    ASSERT_TRUE(window.exports().saveSheetTo(in("sheet.pdf")));
    EXPECT_EQ(window.document().history().count(), 0);
    EXPECT_FALSE(window.document().isModified());
}

}  // namespace
}  // namespace gw::ui
