#include "app/takeoff.h"

#include <CLI/CLI.hpp>
#include <QByteArray>
#include <algorithm>
#include <iostream>

#include "app/drawings.h"
#include "document/save_bytes.h"
#include "drawing/bench_cards.h"
#include "drawing/label_sheet.h"
#include "drawing/landing_sheet.h"
#include "paint/fonts.h"
#include "sheet/takeoff_page.h"
#include "takeoff/takeoff.h"

namespace gw::app {
namespace {

using takeoff::Table;

Result<takeoff::CutOptions> cutOptions(const std::string& allowance) {
    if (allowance.empty()) {
        return takeoff::CutOptions{};
    }
    const auto length = units::parseLength(allowance);
    if (!length || length->in() < 0.0) {
        return fail({ErrorCode::outOfRange,
                     "no such allowance",
                     "",
                     "--allowance",
                     "a length of 0 or more, as 1 1/2 or 40 mm",
                     allowance});
    }
    return takeoff::CutOptions{*length};
}

Result<std::vector<Table>> tablesOf(const geometry::BuiltLayout& built,
                                    const TakeoffOptions& options) {
    const auto cut = cutOptions(options.allowance);
    if (!cut) {
        return fail(cut.error());
    }
    const auto& asked = options.tables;
    std::vector<Table> tables;
    for (const auto name : takeoff::tableNames()) {
        if (asked.empty() || std::find(asked.begin(), asked.end(), name) != asked.end()) {
            tables.push_back(takeoff::tableNamed(name, built, *cut));
        }
    }
    return tables;
}

/// Each file's path goes to standard output once it is written.
Result<void> write(const std::string& path, const QByteArray& bytes) {
    if (const auto saved = ui::saveBytes(path, bytes); !saved) {
        return saved;
    }
    std::cout << path << "\n";
    return {};
}

/// Each table as NAME.csv in the folder.
Result<void> writeCsv(const std::vector<Table>& tables, const std::string& folder) {
    for (const auto& table : tables) {
        const std::string path = folder + "/" + table.name + ".csv";
        const auto csv = QByteArray::fromStdString(takeoff::toCsv(table));
        if (const auto written = write(path, csv); !written) {
            return written;
        }
    }
    return {};
}

// ---- drawings -------------------------------------------------------------------------------

using Pages = std::vector<drawing::Drawing>;

Result<Pages> labelPages(const geometry::BuiltLayout& built,
                         const TakeoffOptions& options,
                         drawing::Paper paper,
                         const drawing::TextMetrics& metrics) {
    drawing::LabelOptions asked{paper, std::nullopt, options.skip};
    if (!options.grid.empty()) {
        auto grid = drawing::parseLabelGrid(options.grid);
        if (!grid) {
            grid.error().place = "--label-grid";
            return fail(grid.error());
        }
        asked.grid = *grid;
    }
    return drawing::labelSheet(built, asked, metrics);
}

/// One of the drawings, where it is asked for.
Result<void> drawTo(const std::string& file, const Result<Pages>& pages) {
    if (!pages) {
        return fail(pages.error());
    }
    if (pages->empty()) {
        return fail({ErrorCode::missing,
                     "there is nothing to be drawn",
                     file,
                     "",
                     "a layout with a conductor"});
    }
    return writePages(*pages, file);
}

/// Before anything is written.
Result<drawing::Paper> drawable(const TakeoffOptions& options) {
    for (const auto& [file, option] : {std::pair(&options.cards, "--cards"),
                                       std::pair(&options.steps, "--steps"),
                                       std::pair(&options.labels, "--labels")}) {
        if (!file->empty()) {
            if (const auto known = drawableTo(*file, option); !known) {
                return fail(known.error());
            }
        }
    }
    return paperNamed(options.paper, drawing::Paper::letter);
}

bool draws(const TakeoffOptions& options) {
    return !options.cards.empty() || !options.steps.empty() || !options.labels.empty();
}

Result<void> draw(const geometry::BuiltLayout& built,
                  const std::vector<checks::Finding>& findings,
                  const TakeoffOptions& options) {
    const auto paper = drawable(options);
    if (!paper) {
        return fail(paper.error());
    }
    const auto cut = cutOptions(options.allowance);
    if (!cut) {
        return fail(cut.error());
    }
    const Application application;
    const ui::FontMetrics metrics;
    Result<void> written;
    if (!options.cards.empty()) {
        written =
            drawTo(options.cards, drawing::benchCards(built, findings, {*paper, *cut}, metrics));
    }
    if (written && !options.steps.empty()) {
        written = drawTo(options.steps, drawing::landingSheet(built, findings, *paper, metrics));
    }
    if (written && !options.labels.empty()) {
        written = drawTo(options.labels, labelPages(built, options, *paper, metrics));
    }
    return written;
}

}  // namespace

void addTakeoffOptions(CLI::App& verb, TakeoffOptions& options) {
    const auto names = takeoff::tableNames();
    verb.add_option("--table", options.tables, "these tables only")
        ->delimiter(',')
        ->check(CLI::IsMember(std::vector<std::string>(names.begin(), names.end())))
        ->option_text("TABLE,TABLE…");
    verb.add_option("--allowance", options.allowance, "add this to every cut, in place of our own");
    auto* json = verb.add_flag("--json", options.json, "as JSON");
    auto* csv = verb.add_option("--csv", options.csv, "write TABLE.csv for each into this folder");
    auto* html = verb.add_option("--html", options.html, "write one page for a browser or printer");
    auto* out = verb.add_option("--out", options.out, "write to this file");
    csv->excludes(json)->excludes(out)->excludes(html);
    html->excludes(json)->excludes(out);
    const auto addDrawing = [&](const char* name, std::string& file, const char* help) {
        auto* option = verb.add_option(name, file, help);
        option->excludes(csv)->excludes(json)->excludes(out)->excludes(html);
        return option;
    };
    addDrawing("--cards", options.cards, "draw a bench card for each conductor: NAME.pdf or .svg");
    addDrawing("--steps", options.steps, "draw the landing order step by step: NAME.pdf or .svg");
    auto* labels = addDrawing("--labels", options.labels, "draw the labels: NAME.pdf or .svg");
    verb.add_option("--label-grid",
                    options.grid,
                    "sheet of labels: columns x rows, width x height, left x top, from label to "
                    "label, as \"3 x 10, 2 5/8 x 1, 3/16 x 1/2, 2 3/4 x 1\"")
        ->needs(labels);
    verb.add_option("--skip-labels", options.skip, "labels of the first sheet that are used up")
        ->needs(labels)
        ->check(CLI::Range(0, 3999));
    verb.add_option("--paper", options.paper, "of drawings: Letter unless said; A4 and the others");
}

Result<void> tellTakeoff(const geometry::BuiltLayout& built,
                         const std::vector<checks::Finding>& findings,
                         const TakeoffOptions& options) {
    if (draws(options)) {
        return draw(built, findings, options);
    }
    const auto tables = tablesOf(built, options);
    if (!tables) {
        return fail(tables.error());
    }
    if (!options.csv.empty()) {
        return writeCsv(*tables, options.csv);
    }
    if (!options.html.empty()) {
        return write(options.html, ui::takeoffToHtml(*tables, built.layout));
    }
    const auto text = options.json ? takeoff::jsonTakeoff(*tables, built.layout)
                                   : takeoff::textTakeoff(*tables, built.layout);
    if (!options.out.empty()) {
        return write(options.out, QByteArray::fromStdString(text));
    }
    std::cout << text;
    return {};
}

}  // namespace gw::app
