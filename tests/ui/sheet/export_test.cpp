#include "sheet/export.h"

#include <gtest/gtest.h>

#include <QPainter>
#include <QTemporaryDir>
#include <cmath>

#include "ui/support/process.h"

namespace gw::ui {
namespace {

using drawing::Drawing;

const drawing::Colour kBlack{};

/// A black bar 80 mm by 50 mm from (20, 30), a dashed line below it, and a word.
Drawing page(double width, double height) {
    Drawing drawing{width, height, "Sheet of the test", {{"all", {}}}};
    auto& elements = drawing.layers[0].elements;
    elements.push_back(
        drawing::Polyline{{{20, 30}, {100, 30}, {100, 80}, {20, 80}}, true, std::nullopt, kBlack});
    elements.push_back(drawing::Polyline{
        {{20, 90}, {100, 90}}, false, drawing::Pen{0.25, kBlack, drawing::Dash::dashed}, {}});
    elements.push_back(drawing::Text{{20, 20}, "Gutter ⌀ 5½″ — é <&>", 4.0});
    return drawing;
}

class Export : public ::testing::Test {
protected:
    QString save(const char* name, const QByteArray& bytes) const {
        const auto path = folder_.filePath(QString::fromLatin1(name));
        test::writeFile(path, bytes);
        return path;
    }
    /// What a program says about a PDF.
    QString say(const char* program, const QStringList& arguments) const {
        const auto run = test::runProgram(QString::fromLatin1(program), arguments);
        EXPECT_TRUE(run.good()) << program << ": " << run.err.toStdString();
        return QString::fromUtf8(run.out);
    }
    QTemporaryDir folder_;
};

struct PaperRow {
    double width;
    double height;
    const char* points;  ///< as pdfinfo prints it: millimetres / 25.4 * 72, whole points
};

TEST_F(Export, PdfPagesHaveTheirOwnSizes) {
    const PaperRow rows[] = {{279.4, 215.9, "792 x 612 pts"},
                             {431.8, 279.4, "1224 x 792 pts"},
                             {297.0, 210.0, "842 x 595 pts"},
                             {914.4, 609.6, "2592 x 1728 pts"}};
    std::vector<Drawing> pages;
    for (const auto& row : rows) {
        pages.push_back(page(row.width, row.height));
    }
    const auto path = save("sheet.pdf", sheetToPdf(pages));
    for (int i = 0; i < 4; ++i) {
        const auto number = QString::number(i + 1);
        const auto text = say("pdfinfo", {"-f", number, "-l", number, path});
        EXPECT_TRUE(text.contains(QString::fromLatin1(rows[i].points))) << text.toStdString();
    }
}

TEST_F(Export, PdfIsSoundAndStatesTitleAndCreatorButNoDate) {
    const auto path = save("sheet.pdf", sheetToPdf({page(297, 210), page(297, 210)}));
    const auto checked = say("qpdf", {"--check", path});
    EXPECT_TRUE(checked.contains(QStringLiteral("No syntax or stream encoding errors")))
        << checked.toStdString();
    const auto text = say("pdfinfo", {path});
    EXPECT_TRUE(text.contains(QStringLiteral("Sheet of the test")));
    EXPECT_TRUE(text.contains(QStringLiteral("Gutterwright")));
    EXPECT_TRUE(text.contains(QStringLiteral("PDF version:     1.6"))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("CreationDate")));
}

TEST_F(Export, PdfTextIsFoundAndItsFontEmbedded) {
    const auto path = save("sheet.pdf", sheetToPdf({page(297, 210)}));
    const auto text = say("pdftotext", {path, "-"});
    EXPECT_TRUE(text.contains(QStringLiteral("Gutter ⌀ 5½″ — é <&>"))) << text.toStdString();
    const auto fonts = say("pdffonts", {path});
    EXPECT_TRUE(fonts.contains(QStringLiteral("DejaVuSans"))) << fonts.toStdString();
    EXPECT_FALSE(fonts.contains(QStringLiteral("Condensed"))) << fonts.toStdString();
}

TEST_F(Export, SameInputGivesSameBytes) {
    EXPECT_EQ(sheetToPdf({page(297, 210)}), sheetToPdf({page(297, 210)}));
    EXPECT_EQ(pageToSvg(page(297, 210)), pageToSvg(page(297, 210)));
    EXPECT_NE(sheetToPdf({page(297, 210)}), sheetToPdf({page(298, 210)}));
}

/// The dark part of a picture, in pixels; rows above the given one do not count.
QRect darkPart(const QImage& image, int fromRow, int toRow) {
    QRect part;
    for (int y = fromRow; y < toRow; ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (qGray(image.pixel(x, y)) < 128) {
                part |= QRect(x, y, 1, 1);
            }
        }
    }
    return part;
}

/// The bar lies within one pixel of where it should in a raster of so many dots an inch.
void expectBarInPlace(const QImage& image, double dotsPerInch) {
    const double dots = dotsPerInch / 25.4;
    const auto bar = darkPart(image, static_cast<int>(25 * dots), static_cast<int>(85 * dots));
    EXPECT_NEAR(bar.left(), 20 * dots, 1.0);
    EXPECT_NEAR(bar.top(), 30 * dots, 1.0);
    EXPECT_NEAR(bar.width(), 80 * dots, 1.0);
    EXPECT_NEAR(bar.height(), 50 * dots, 1.0);
}

TEST_F(Export, PdfIsTrueToScaleOnEveryPaper) {
    for (const auto& drawing : {page(279.4, 215.9), page(297, 210), page(420, 297)}) {
        const auto path = save("sheet.pdf", sheetToPdf({drawing}));
        say("pdftoppm", {"-r", "300", "-gray", "-singlefile", path, folder_.filePath("raster")});
        const QImage image(folder_.filePath(QStringLiteral("raster.pgm")));
        ASSERT_FALSE(image.isNull());
        EXPECT_NEAR(image.width(), drawing.width / 25.4 * 300, 3.0);  // whole points: 0.18 mm
        expectBarInPlace(image, 300);
    }
}

TEST_F(Export, PictureIsTrueToScale) {
    expectBarInPlace(pageToImage(page(297, 210), 300), 300);
}

TEST_F(Export, SvgHasItsSizeInMillimetresAndIsTrueToScale) {
    const auto svg = pageToSvg(page(279.4, 215.9));
    EXPECT_TRUE(svg.contains("width=\"279.4mm\""));
    EXPECT_TRUE(svg.contains("viewBox=\"0 0 27940 21590\""));
    EXPECT_TRUE(svg.contains("&lt;&amp;&gt;"));
    const auto path = save("sheet.svg", svg);
    say("rsvg-convert", {"-d", "300", "-p", "300", "-o", folder_.filePath("svg.png"), path});
    const QImage image(folder_.filePath(QStringLiteral("svg.png")));
    ASSERT_FALSE(image.isNull());
    QImage opaque(image.size(), QImage::Format_RGB32);
    opaque.fill(Qt::white);
    QPainter(&opaque).drawImage(0, 0, image);
    expectBarInPlace(opaque, 300);
}

TEST_F(Export, DashesHaveTheirLengthInPdfPictureAndSvg) {
    // 3 mm strokes and 1.2 mm gaps: the 80 mm line is 19 whole strokes and a last one of 0.2 mm.
    const auto dashes = [](const QImage& image, double dots) {
        int count = 0;
        bool dark = false;
        for (int x = 0; x < image.width(); ++x) {
            const bool now = qGray(image.pixel(x, static_cast<int>(90 * dots))) < 160;
            count += now && !dark ? 1 : 0;
            dark = now;
        }
        return count;
    };
    const double dots = 300 / 25.4;
    EXPECT_EQ(dashes(pageToImage(page(297, 210), 300), dots), 20);
    const auto path = save("dashes.svg", pageToSvg(page(297, 210)));
    say("rsvg-convert",
        {"-d",
         "300",
         "-p",
         "300",
         "--background-color=white",
         "-o",
         folder_.filePath("dashes.png"),
         path});
    EXPECT_EQ(dashes(QImage(folder_.filePath(QStringLiteral("dashes.png"))), dots), 20);
}

/// With no font on the machine Qt writes a PDF without any text and says nothing. The shipped font
/// must be all that is needed: the test runs itself under an empty font configuration.
TEST_F(Export, NoFontInstalledStillGivesText) {
    if (qEnvironmentVariableIsSet("GW_TEST_NO_FONTS")) {
        const auto path = save("sheet.pdf", sheetToPdf({page(297, 210)}));
        EXPECT_TRUE(say("pdftotext", {path, "-"}).contains(QStringLiteral("Gutter ⌀ 5½″ — é")));
        return;
    }
    const auto config = save("fonts.conf", "<?xml version=\"1.0\"?><fontconfig/>");
    const auto list = test::runProgram("fc-list", {}, {"FONTCONFIG_FILE=" + config});
    EXPECT_TRUE(!list.started || list.out.isEmpty()) << "the configuration is not empty";
    const auto run = test::runProgram(test::ownProgram(),
                                      {test::onlyTest("Export.NoFontInstalledStillGivesText")},
                                      {"FONTCONFIG_FILE=" + config, "GW_TEST_NO_FONTS=1"});
    EXPECT_TRUE(run.good()) << run.out.toStdString() << run.err.toStdString();
    EXPECT_TRUE(run.out.contains("[  PASSED  ] 1 test")) << run.out.toStdString();
}

}  // namespace
}  // namespace gw::ui
