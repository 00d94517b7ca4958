#include "app/takeoff.h"

#include <CLI/CLI.hpp>
#include <QByteArray>
#include <algorithm>
#include <iostream>

#include "document/save_bytes.h"
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
}

Result<void> tellTakeoff(const geometry::BuiltLayout& built, const TakeoffOptions& options) {
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
