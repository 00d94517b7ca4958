#include "paint/fonts.h"

#include <gtest/gtest.h>

#include <QFontInfo>
#include <QImage>
#include <QPainter>
#include <cmath>

#include "paint/painter.h"

namespace gw::ui {
namespace {

using drawing::Face;

struct FaceRow {
    const char* name;
    Face face;
    const char* family;
    bool bold;
    int digit;  ///< advance of every digit, units of 2048 an em
    int capitalM;
};

// Advances as the horizontal metrics (hmtx) of the shipped files, DejaVu 2.37, state them.
// clang-format off
const FaceRow kFaces[] = {
    {"Regular",       Face::regular,       "DejaVu Sans",           false, 1303, 1767},
    {"Bold",          Face::bold,          "DejaVu Sans",           true,  1425, 2038},
    {"Condensed",     Face::condensed,     "DejaVu Sans Condensed", false, 1172, 1590},
    {"CondensedBold", Face::condensedBold, "DejaVu Sans Condensed", true,  1282, 1834},
};
// clang-format on

void PrintTo(const FaceRow& row, std::ostream* out) {
    *out << row.name;
}

class ShippedFont : public ::testing::TestWithParam<FaceRow> {};

std::string caseName(const ::testing::TestParamInfo<FaceRow>& row) {
    return row.param.name;
}

TEST_P(ShippedFont, ResolvesToTheShippedFace) {
    const QFont font = fontOf(GetParam().face, 250);
    EXPECT_TRUE(QFontInfo(font).exactMatch());
    EXPECT_EQ(QRawFont::fromFont(font).familyName().toStdString(), GetParam().family);
    EXPECT_EQ(QFontInfo(font).bold(), GetParam().bold);
}

TEST_P(ShippedFont, WidthsAreTheFilesOwnAtEverySize) {
    const FontMetrics metrics;
    for (const double height : {2.0, 2.5, 7.0}) {
        const double em = height / 2048.0;
        EXPECT_NEAR(
            metrics.width("0123456789", height, GetParam().face), 10 * GetParam().digit * em, 1e-9);
        EXPECT_NEAR(metrics.width("M", height, GetParam().face), GetParam().capitalM * em, 1e-9);
    }
    EXPECT_EQ(metrics.width("", 2.5, GetParam().face), 0.0);
}

/// The glyphs the sheet needs are in the font: none is as wide as, and drawn as, the missing box.
TEST_P(ShippedFont, HoldsTheSignsOfTheTrade) {
    const auto raw = QRawFont::fromFont(fontOf(GetParam().face, 250));
    for (const char32_t sign : U"½¼¾⅛⅜⅝⅞×°″′≤≥—–→·é") {
        if (sign != U'\0') {
            EXPECT_TRUE(raw.supportsCharacter(sign)) << static_cast<unsigned>(sign);
        }
    }
}

/// Columns of the picture that hold ink, first and last.
std::pair<int, int> inkedColumns(const QImage& image) {
    std::pair<int, int> columns{image.width(), -1};
    for (int x = 0; x < image.width(); ++x) {
        for (int y = 0; y < image.height(); ++y) {
            if (qGray(image.pixel(x, y)) < 128) {
                columns = {std::min(columns.first, x), x};
            }
        }
    }
    return columns;
}

TEST_P(ShippedFont, PaintedTextIsAsWideAsMeasured) {
    const FontMetrics metrics;
    drawing::Drawing page{60.0, 10.0, "", {{"text", {}}}};
    const drawing::Text text{{5.0, 7.0}, "|AVAToWWW fi 1/2|", 2.5, GetParam().face};
    page.layers[0].elements.push_back(text);
    QImage image(6000, 1000, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paint(painter, page, metrics);
    painter.end();
    const auto [first, last] = inkedColumns(image);
    // A bar stands in the middle of its advance: from bar to bar is the width less one advance.
    const double bar = metrics.width("|", 2.5, GetParam().face);
    const double expected = metrics.width(text.text, 2.5, GetParam().face) - bar;
    const double stroke = (last - first) * 0.01 - expected;
    EXPECT_GT(stroke, 0.10);
    EXPECT_LT(stroke, 0.45);  // one bar's own stroke: 0.07 to 0.14 em
}

INSTANTIATE_TEST_SUITE_P(Faces, ShippedFont, ::testing::ValuesIn(kFaces), caseName);

}  // namespace
}  // namespace gw::ui
