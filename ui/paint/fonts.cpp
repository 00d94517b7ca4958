#include "paint/fonts.h"

#include <QFile>
#include <QFontDatabase>
#include <QFontInfo>

#include "base/contract.h"

namespace gw::ui {
namespace {

constexpr int kUnitsPerEm = 2048;  // of the DejaVu faces

struct FaceFile {
    drawing::Face face;
    const char* path;
    const char* family;  ///< as QRawFont reports it
    bool bold;
};

constexpr std::array<FaceFile, 4> kFaces = {{
    {drawing::Face::regular, ":/fonts/DejaVuSans.ttf", "DejaVu Sans", false},
    {drawing::Face::bold, ":/fonts/DejaVuSans-Bold.ttf", "DejaVu Sans", true},
    {drawing::Face::condensed, ":/fonts/DejaVuSansCondensed.ttf", "DejaVu Sans Condensed", false},
    {drawing::Face::condensedBold,
     ":/fonts/DejaVuSansCondensed-Bold.ttf",
     "DejaVu Sans Condensed",
     true},
}};

const FaceFile& fileOf(drawing::Face face) {
    const auto index = static_cast<std::size_t>(face);
    CONTRACT(index < kFaces.size() && kFaces[index].face == face);
    return kFaces[index];
}

QFont unchecked(const FaceFile& file, int pixelSize) {
    QFont font(QString::fromLatin1(file.family));  // one family: with a list, exactMatch() crashes
    font.setBold(file.bold);
    font.setPixelSize(pixelSize);
    font.setKerning(false);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(QFont::StyleStrategy(QFont::NoFontMerging | QFont::ForceOutline));
    return font;
}

/// Both must agree: a family name alone can resolve to another face.
bool resolves(const FaceFile& file) {
    const QFont font = unchecked(file, kUnitsPerEm);
    const QRawFont raw = QRawFont::fromFont(font);
    return QFontInfo(font).exactMatch() && raw.familyName() == QLatin1String(file.family) &&
           (raw.weight() >= QFont::Bold) == file.bold;
}

bool loadShippedFaces() {
    for (const auto& file : kFaces) {
        CONTRACT(QFontDatabase::addApplicationFont(QString::fromLatin1(file.path)) >= 0);
    }
    for (const auto& file : kFaces) {
        CONTRACT(resolves(file));
    }
    return true;
}

QRawFont rawOf(const FaceFile& file) {
    QRawFont raw(QString::fromLatin1(file.path), kUnitsPerEm, QFont::PreferNoHinting);
    CONTRACT(raw.isValid() && raw.unitsPerEm() == kUnitsPerEm);
    return raw;
}

}  // namespace

QFont fontOf(drawing::Face face, int pixelSize) {
    static const bool kLoaded = loadShippedFaces();
    CONTRACT(kLoaded && pixelSize >= 1);
    return unchecked(fileOf(face), pixelSize);
}

FontMetrics::FontMetrics() {
    for (std::size_t i = 0; i < raw_.size(); ++i) {
        raw_[i] = rawOf(kFaces[i]);
    }
}

double FontMetrics::width(std::string_view text, double height, drawing::Face face) const {
    const auto& raw = raw_[static_cast<std::size_t>(face)];
    const auto glyphs = raw.glyphIndexesForString(
        QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())));
    double units = 0.0;
    for (const QPointF& advance : raw.advancesForGlyphIndexes(glyphs, QRawFont::SeparateAdvances)) {
        units += advance.x();
    }
    return units / kUnitsPerEm * height;
}

}  // namespace gw::ui
