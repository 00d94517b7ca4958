#include "window/export_actions.h"

#include <QBuffer>
#include <QFileDialog>
#include <QFileInfo>
#include <QImage>
#include <array>

#include "checks/report.h"
#include "document/save_bytes.h"
#include "drawing/bench_cards.h"
#include "drawing/label_sheet.h"
#include "drawing/landing_sheet.h"
#include "drawing/template.h"
#include "panels/panel_text.h"
#include "sheet/export.h"
#include "sheet/takeoff_page.h"
#include "takeoff/takeoff.h"

namespace gw::ui {
namespace {

constexpr std::array kPapers{drawing::Paper::letter,
                             drawing::Paper::legal,
                             drawing::Paper::tabloid,
                             drawing::Paper::archC,
                             drawing::Paper::archD,
                             drawing::Paper::a4,
                             drawing::Paper::a3,
                             drawing::Paper::a2,
                             drawing::Paper::a1};

/// "PDF, all pages (*.pdf)" -> ".pdf"
QString endingOf(const QString& filter) {
    const auto from = filter.lastIndexOf(QLatin1Char('*')) + 1;
    return filter.mid(from, filter.lastIndexOf(QLatin1Char(')')) - from);
}

/// What is wrong where there is no page, and what it would take.
struct Nothing {
    const char* sentence;
    const char* expected;
};
constexpr Nothing kNoConductor{"there is nothing to be drawn", "a layout with a conductor"};

Result<void> savePages(const std::vector<drawing::Drawing>& pages,
                       const Nothing& nothing,
                       const QString& path) {
    if (pages.empty()) {
        return fail({ErrorCode::missing, nothing.sentence, {}, {}, nothing.expected});
    }
    if (const auto saved = saveSheet(pages, path.toStdString()); !saved) {
        return fail(saved.error());
    }
    return {};
}

}  // namespace

ExportActions::ExportActions(const Bench& bench,
                             Board& board,
                             QWidget& window,
                             std::function<void(const Error&)> complain)
    : QObject(&window),
      bench_(bench),
      board_(board),
      window_(window),
      complain_(std::move(complain)) {}

void ExportActions::addTo(QMenu& menu) {
    const auto add = [&](const QString& text,
                         const QKeySequence& key,
                         const QString& title,
                         const QStringList& filters,
                         const std::function<Result<void>(const QString&)>& save) {
        auto* made = menu.addAction(text);
        made->setShortcut(key);
        connect(made, &QAction::triggered, this, [this, title, filters, save] {
            if (!bench_.document.inGesture()) {
                ask(title, filters, save);
            }
        });
    };
    add(tr("Layout s&heet…"),
        QKeySequence(Qt::CTRL | Qt::Key_E),
        tr("Save the layout sheet"),
        {tr("PDF, all pages (*.pdf)"), tr("SVG, a file a page (*.svg)")},
        [this](const QString& path) { return saveSheetTo(path); });
    addPapersTo(*menu.addMenu(tr("Paper o&f the sheet")));
    add(tr("Re&port…"),
        QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_E),
        tr("Save the report"),
        {tr("Text, for people (*.txt)"), tr("JSON, for scripts (*.json)")},
        [this](const QString& path) { return saveReportTo(path, window_.windowFilePath()); });
    add(tr("&Takeoff…"),
        QKeySequence(Qt::CTRL | Qt::Key_T),
        tr("Save the takeoff"),
        {tr("One page for a browser and printer (*.html)"),
         tr("Text (*.txt)"),
         tr("JSON, for scripts (*.json)")},
        [this](const QString& path) { return saveTakeoffTo(path); });
    add(tr("&Drilling template…"),
        QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_T),
        tr("Save the drilling template"),
        {tr("PDF, all sheets (*.pdf)"), tr("SVG, a file a sheet (*.svg)")},
        [this](const QString& path) { return saveTemplateTo(path); });
    const QStringList drawn{tr("PDF, all pages (*.pdf)"), tr("SVG, a file a page (*.svg)")};
    add(tr("&Bench cards…"),
        {},
        tr("Save a bench card for each conductor"),
        drawn,
        [this](const QString& path) { return saveCardsTo(path); });
    add(tr("Landing &steps…"),
        {},
        tr("Save the landing order step by step"),
        drawn,
        [this](const QString& path) { return saveStepsTo(path); });
    add(tr("&Labels…"), {}, tr("Save the labels"), drawn, [this](const QString& path) {
        return saveLabelsTo(path);
    });
    add(tr("P&icture of the board…"),
        {},
        tr("Save a picture of the board"),
        {tr("PNG picture (*.png)")},
        [this](const QString& path) { return savePictureTo(path); });
}

void ExportActions::addPapersTo(QMenu& menu) {
    for (const drawing::Paper paper : kPapers) {
        auto* made = menu.addAction(toQString(drawing::paperText(paper)));
        made->setCheckable(true);
        made->setChecked(paper == paper_);
        papers_.addAction(made);
        connect(made, &QAction::triggered, this, [this, paper] { paper_ = paper; });
    }
}

void ExportActions::ask(const QString& title,
                        const QStringList& filters,
                        const std::function<Result<void>(const QString&)>& save) {
    QString filter = filters.front();
    QString path = QFileDialog::getSaveFileName(
        &window_, title, {}, filters.join(QStringLiteral(";;")), &filter);
    if (path.isEmpty()) {
        return;
    }
    if (QFileInfo(path).suffix().isEmpty()) {
        path += endingOf(filter);
    }
    if (const auto saved = save(path); !saved) {
        complain_(saved.error());
    } else {
        bench_.board.setHint(tr("Saved %1").arg(path));
    }
}

Result<void> ExportActions::saveSheetTo(const QString& path) {
    const FontMetrics metrics;
    const auto& document = bench_.document;
    const auto pages =
        drawing::layoutSheet(document.built(), document.findings(), {paper_}, metrics);
    if (const auto saved = saveSheet(pages, path.toStdString()); !saved) {
        return fail(saved.error());
    }
    return {};
}

Result<void> ExportActions::saveReportTo(const QString& path, const QString& nameOfLayout) {
    const auto& document = bench_.document;
    const checks::ReportHead head{nameOfLayout.toStdString()};
    const bool json = path.endsWith(QLatin1String(".json"), Qt::CaseInsensitive);
    const std::string report =
        json ? checks::jsonReport(document.built(), document.findings(), head)
             : checks::textReport(document.built(), document.findings(), head);
    return saveBytes(path.toStdString(), QByteArray::fromStdString(report));
}

Result<void> ExportActions::saveTakeoffTo(const QString& path) {
    const auto& built = bench_.document.built();
    std::vector<takeoff::Table> tables;
    for (const auto name : takeoff::tableNames()) {
        tables.push_back(takeoff::tableNamed(name, built));
    }
    const auto ends = [&](const char* ending) {
        return path.endsWith(QLatin1String(ending), Qt::CaseInsensitive);
    };
    if (ends(".html") || ends(".htm")) {
        return saveBytes(path.toStdString(), takeoffToHtml(tables, built.layout));
    }
    return saveBytes(
        path.toStdString(),
        QByteArray::fromStdString(ends(".json") ? takeoff::jsonTakeoff(tables, built.layout)
                                                : takeoff::textTakeoff(tables, built.layout)));
}

Result<void> ExportActions::saveTemplateTo(const QString& path) {
    const FontMetrics metrics;
    const auto& built = bench_.document.built();
    return savePages(
        drawing::drillingTemplate(built, bench_.document.findings(), {officePaper(), {}}, metrics),
        {"there is nothing to be drilled", "an entry, or a block that is bolted down"},
        path);
}

Result<void> ExportActions::saveCardsTo(const QString& path) {
    const FontMetrics metrics;
    const auto& document = bench_.document;
    return savePages(
        drawing::benchCards(document.built(), document.findings(), {officePaper(), {}}, metrics),
        kNoConductor,
        path);
}

Result<void> ExportActions::saveStepsTo(const QString& path) {
    const FontMetrics metrics;
    const auto& document = bench_.document;
    return savePages(
        drawing::landingSheet(document.built(), document.findings(), officePaper(), metrics),
        kNoConductor,
        path);
}

Result<void> ExportActions::saveLabelsTo(const QString& path) {
    const FontMetrics metrics;
    const auto pages =
        drawing::labelSheet(bench_.document.built(), {officePaper(), std::nullopt, 0}, metrics);
    return pages ? savePages(*pages, kNoConductor, path) : fail(pages.error());
}

drawing::Paper ExportActions::officePaper() const {
    const bool metric = bench_.document.built().layout.displayUnit == units::LengthUnit::millimetre;
    return metric ? drawing::Paper::a4 : drawing::Paper::letter;
}

Result<void> ExportActions::savePictureTo(const QString& path) {
    constexpr int kTimes = 2;
    QImage picture(board_.size() * kTimes, QImage::Format_RGB32);
    picture.setDevicePixelRatio(kTimes);
    picture.fill(Qt::white);
    board_.render(&picture);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!picture.save(&buffer, "PNG")) {
        return fail({ErrorCode::unwritable, "the picture could not be made", path.toStdString()});
    }
    return saveBytes(path.toStdString(), bytes);
}

}  // namespace gw::ui
