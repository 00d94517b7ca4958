#include "sheet/export.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>
#include <cmath>

#include "base/contract.h"
#include "document/save_bytes.h"
#include "paint/painter.h"

namespace gw::ui {
namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr int kResolution = 2540;  // dots an inch: one painter unit is 0.01 mm

QPageSize pageSizeOf(const drawing::Drawing& page) {
    return QPageSize(QSizeF(page.width, page.height),
                     QPageSize::Millimeter,
                     QStringLiteral("sheet"),
                     QPageSize::ExactMatch);
}

/// Blanks the date with as many spaces, so that the offsets in the file stay right.
QByteArray withoutCreationDate(QByteArray pdf) {
    const auto start = pdf.indexOf("/CreationDate (");
    const auto end = start < 0 ? -1 : pdf.indexOf(')', start);
    CONTRACT(end > start);
    const auto length = end + 1 - start;
    return pdf.replace(start, length, QByteArray(length, ' '));
}

int toUnits(double millimetres) {
    return static_cast<int>(std::lround(millimetres * kUnitsPerMillimetre));
}

}  // namespace

QByteArray sheetToPdf(const std::vector<drawing::Drawing>& pages) {
    CONTRACT(!pages.empty());
    const FontMetrics metrics;
    QBuffer buffer;
    CONTRACT(buffer.open(QIODevice::WriteOnly));
    QPdfWriter writer(&buffer);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_1_6);
    writer.setResolution(kResolution);
    writer.setTitle(QString::fromStdString(pages.front().title));
    writer.setCreator(QStringLiteral("Gutterwright"));
    writer.setPageSize(pageSizeOf(pages.front()));
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    QPainter painter(&writer);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        if (i > 0) {
            writer.setPageSize(pageSizeOf(pages[i]));
            CONTRACT(writer.newPage());
        }
        paint(painter, pages[i], metrics);
    }
    painter.end();
    return withoutCreationDate(buffer.data());
}

QByteArray pageToSvg(const drawing::Drawing& page) {
    const FontMetrics metrics;
    QBuffer buffer;
    CONTRACT(buffer.open(QIODevice::WriteOnly));
    const QSize size(toUnits(page.width), toUnits(page.height));
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(kResolution);
    generator.setSize(size);
    generator.setViewBox(QRect(QPoint(0, 0), size));
    generator.setTitle(QString::fromStdString(page.title));
    QPainter painter(&generator);
    paint(painter, page, metrics);
    painter.end();
    return buffer.data();
}

QImage pageToImage(const drawing::Drawing& page, double dotsPerInch) {
    CONTRACT(dotsPerInch >= 20.0 && dotsPerInch <= 2400.0);
    const FontMetrics metrics;
    const double dotsPerMillimetre = dotsPerInch / kMillimetresPerInch;
    QImage image(static_cast<int>(std::lround(page.width * dotsPerMillimetre)),
                 static_cast<int>(std::lround(page.height * dotsPerMillimetre)),
                 QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(dotsPerMillimetre / kUnitsPerMillimetre, dotsPerMillimetre / kUnitsPerMillimetre);
    paint(painter, page, metrics);
    return image;
}

namespace {

std::string pagePath(const std::string& path, std::size_t page) {
    if (page == 0) {
        return path;
    }
    const auto dot = path.rfind('.');
    return path.substr(0, dot) + "-" + std::to_string(page + 1) + path.substr(dot);
}

}  // namespace

Result<std::vector<std::string>> saveSheet(const std::vector<drawing::Drawing>& pages,
                                           const std::string& path) {
    std::vector<std::string> written;
    if (QString::fromStdString(path).endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive)) {
        if (const auto saved = saveBytes(path, sheetToPdf(pages)); !saved) {
            return fail(saved.error());
        }
        return std::vector{path};
    }
    for (std::size_t page = 0; page < pages.size(); ++page) {
        written.push_back(pagePath(path, page));
        if (const auto saved = saveBytes(written.back(), pageToSvg(pages[page])); !saved) {
            return fail(saved.error());
        }
    }
    return written;
}

}  // namespace gw::ui
