#include "window/samples.h"

#include <QDir>
#include <QFileInfo>
#include <algorithm>

#include "base/read_file.h"
#include "drawing/gutter_picture.h"
#include "files/layout_file.h"
#include "geometry/built_layout.h"
#include "paint/fonts.h"
#include "sheet/export.h"

namespace gw::ui {
namespace {

constexpr QLatin1String kSpoilt("broken-");

QString readable(QString folder) {
    folder.replace('-', ' ');
    folder[0] = folder[0].toUpper();
    return folder;
}

}  // namespace

std::vector<Sample> samplesIn(const QString& folder) {
    std::vector<Sample> samples;
    const QDir dir(folder);
    if (folder.isEmpty() || !dir.exists()) {
        return samples;
    }
    for (const auto& name : dir.entryList(QDir::Dirs | QDir::NoDotAndDotDot, QDir::Name)) {
        const QString path = dir.filePath(name + QStringLiteral("/layout.json"));
        if (QFileInfo::exists(path)) {
            const bool spoilt = name.startsWith(kSpoilt);
            samples.push_back({readable(spoilt ? name.mid(kSpoilt.size()) : name), path, spoilt});
        }
    }
    std::stable_partition(
        samples.begin(), samples.end(), [](const Sample& one) { return !one.isSpoilt; });
    return samples;
}

Result<layout::Layout> readSample(const QString& path, const parts::Shelf& shelf) {
    const auto bytes = readFile(path.toStdString());
    return bytes ? files::readLayout(*bytes, path.toStdString(), shelf) : fail(bytes.error());
}

QImage pictureOf(const layout::Layout& layout, const parts::Shelf& shelf, QSize pixels) {
    constexpr double kWidth = 80.0;  // mm: the lines are then as thin as a small picture needs
    constexpr double kMillimetresPerInch = 25.4;
    const FontMetrics metrics;
    const double height = kWidth * pixels.height() / pixels.width();
    const auto picture =
        drawing::gutterPicture(geometry::build(layout, shelf), kWidth, height, metrics);
    return pageToImage(picture, pixels.width() * kMillimetresPerInch / kWidth);
}

}  // namespace gw::ui
