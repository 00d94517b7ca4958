#include "app/cli.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/drawings.h"
#include "app/help_pages.h"
#include "app/shelf.h"
#include "app/takeoff.h"
#include "base/read_file.h"
#include "checks/report.h"
#include "document/save_bytes.h"
#include "drawing/sheet.h"
#include "drawing/template.h"
#include "files/layout_file.h"
#include "geometry/built_layout.h"
#include "paint/fonts.h"
#include "routing/routing.h"
#include "takeoff/holes.h"

namespace gw::app {
namespace {

enum ExitStatus { kNoBreach = 0, kBreaches = 1, kBadInput = 2, kOwnFault = 3 };

struct Options {
    std::string file;
    std::string check;
    std::string edition;
    std::vector<std::string> parts;
    bool json = false;
    std::vector<std::string> only;
    std::vector<std::string> skip;
    std::string out;
    std::string partial;
    std::string paper;  ///< empty: the verb's own
    std::vector<std::string> walls;
    TakeoffOptions takeoff;
};

struct Checked {
    geometry::BuiltLayout built;
    std::vector<checks::Finding> findings;
};

bool contains(const std::vector<std::string>& names, std::string_view name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

/// Whether the check was asked for: named by --only where that is given, and not by --skip.
bool isWanted(const Options& options, checks::Check check) {
    const auto name = checks::checkName(check);
    return (options.only.empty() || contains(options.only, name)) && !contains(options.skip, name);
}

/// The checks asked for, or those that were not.
std::vector<checks::Check> checksOf(const Options& options, bool wanted) {
    std::vector<checks::Check> some;
    for (const checks::Check check : checks::allChecks()) {
        if (isWanted(options, check) == wanted) {
            some.push_back(check);
        }
    }
    return some;
}

struct Read {
    layout::Layout layout;
    parts::Shelf shelf;
};

Result<Read> read(const Options& options) {
    const auto shelf = loadShelf(options.parts);
    if (!shelf) {
        return fail(shelf.error());
    }
    const auto bytes = readFile(options.file);
    if (!bytes) {
        return fail(bytes.error());
    }
    auto layout = files::readLayout(*bytes, options.file, *shelf);
    if (!layout) {
        return fail(layout.error());
    }
    return Read{*layout, *shelf};
}

Result<Checked> readAndCheck(const Options& options) {
    auto file = read(options);
    if (!file) {
        return fail(file.error());
    }
    if (const auto edition = standards::editionFromText(options.edition)) {
        file->layout.edition = *edition;
    }
    Checked checked{geometry::build(file->layout, file->shelf), {}};
    checked.findings = checks::runChecks(checked.built, checksOf(options, true));
    return checked;
}

int complain(const Error& error) {
    std::cerr << "gutterwright: " << toLine(error) << "\n";
    return kBadInput;
}

int statusOf(const std::vector<checks::Finding>& findings) {
    return checks::tally(findings).breach > 0 ? kBreaches : kNoBreach;
}

/// The status, if all that was printed went out.
int flushed(const std::string& what, int status) {
    if (!std::cout.flush()) {
        return complain({ErrorCode::unwritable, what + " could not be written", "standard output"});
    }
    return status;
}

int check(const Options& options) {
    const auto checked = readAndCheck(options);
    if (!checked) {
        return complain(checked.error());
    }
    const checks::ReportHead head{options.file, checksOf(options, false)};
    std::cout << (options.json ? checks::jsonReport(checked->built, checked->findings, head)
                               : checks::textReport(checked->built, checked->findings, head));
    return flushed("the report", statusOf(checked->findings));
}

/// The edition asked for, else all.
std::vector<standards::Edition> editionsOf(const Options& options) {
    using standards::Edition;
    if (const auto edition = standards::editionFromText(options.edition)) {
        return {*edition};
    }
    return {Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026};
}

int help(const Options& options) {
    for (const checks::Check check : checks::allChecks()) {
        if (checks::checkName(check) == options.check) {
            std::cout << checks::helpText(helpPage(check), check, editionsOf(options));
        }
    }
    return flushed("the page", kNoBreach);
}

/// The paper asked for, or the verb's own; Error where there is no such, or --out is neither PDF
/// nor SVG.
Result<drawing::Paper> paperOf(const Options& options, drawing::Paper usual) {
    const auto paper = paperNamed(options.paper, usual);
    if (!paper) {
        return paper;
    }
    if (const auto drawable = drawableTo(options.out, "--out"); !drawable) {
        return fail(drawable.error());
    }
    return paper;
}

int writePagesOf(const Options& options,
                 const std::vector<drawing::Drawing>& pages,
                 const std::vector<checks::Finding>& findings) {
    if (const auto written = writePages(pages, options.out); !written) {
        return complain(written.error());
    }
    return flushed("the list of files", statusOf(findings));
}

int sheet(const Options& options) {
    const auto paper = paperOf(options, drawing::Paper::tabloid);
    if (!paper) {
        return complain(paper.error());
    }
    const auto checked = readAndCheck(options);
    if (!checked) {
        return complain(checked.error());
    }
    const Application application;
    const ui::FontMetrics metrics;
    const auto pages = drawing::layoutSheet(checked->built, checked->findings, {*paper}, metrics);
    return writePagesOf(options, pages, checked->findings);
}

Result<void> writeText(const std::string& path, const std::string& text) {
    return ui::saveBytes(path, QByteArray(text.data(), static_cast<qsizetype>(text.size())));
}

// ---- route ----------------------------------------------------------------------------------

Result<void> writeLayout(const std::string& path, const layout::Layout& layout) {
    return writeText(path, files::writeLayout(layout));
}

/// The answer goes to --out only when there is one; what was found of it to --partial.
Result<void> writeRouting(const Options& options, const routing::Routing& routing) {
    if (!options.out.empty() && routing.answer) {
        if (const auto saved = writeLayout(options.out, *routing.answer); !saved) {
            return saved;
        }
    }
    if (!options.partial.empty() && !routing.answer) {
        return writeLayout(options.partial, routing.partial);
    }
    return {};
}

int route(const Options& options) {
    const auto file = read(options);
    if (!file) {
        return complain(file.error());
    }
    routing::Options asked;
    for (const std::string& id : options.only) {
        asked.only.emplace_back(id);
    }
    const auto routing = routing::route(file->layout, file->shelf, asked);
    if (!routing) {
        return complain(routing.error());
    }
    if (const auto written = writeRouting(options, *routing); !written) {
        return complain(written.error());
    }
    std::cout << (options.json ? routing::jsonReport(*routing, options.file)
                               : routing::textReport(*routing, options.file));
    const bool good = routing->answer && routing->breaches.empty();
    return flushed("the report", good ? kNoBreach : kBreaches);
}

// ---- takeoff --------------------------------------------------------------------------------

int takeOff(const Options& options) {
    const auto checked = readAndCheck(options);
    if (!checked) {
        return complain(checked.error());
    }
    const auto told = tellTakeoff(checked->built, checked->findings, options.takeoff);
    return told ? flushed("the takeoff", statusOf(checked->findings)) : complain(told.error());
}

// ---- template -------------------------------------------------------------------------------

int drillingTemplate(const Options& options) {
    const auto paper = paperOf(options, drawing::Paper::letter);
    if (!paper) {
        return complain(paper.error());
    }
    const auto checked = readAndCheck(options);
    if (!checked) {
        return complain(checked.error());
    }
    drawing::TemplateOptions asked{*paper, {}};
    for (const auto& wall : options.walls) {
        asked.walls.push_back(*layout::wallFromText(wall));
    }
    const Application application;
    const ui::FontMetrics metrics;
    const auto pages = drawing::drillingTemplate(checked->built, checked->findings, asked, metrics);
    if (pages.empty()) {
        return complain({ErrorCode::missing,
                         "there is nothing to be drilled",
                         options.file,
                         "",
                         "an entry, or a block that is bolted down, on the walls asked for"});
    }
    for (const auto& note : takeoff::holeNotes(checked->built)) {
        std::cerr << "gutterwright: note: " << note << "\n";
    }
    return writePagesOf(options, pages, checked->findings);
}

void addEdition(CLI::App& verb, Options& options, const char* help) {
    verb.add_option("--edition", options.edition, help)
        ->check(CLI::IsMember({"2017", "2020", "2023", "2026"}));
}

void addCommon(CLI::App& verb, Options& options) {
    verb.add_option("FILE", options.file, "the layout")->required();
    addEdition(verb, options, "judge by this edition of NFPA 70");
    verb.add_option("--parts", options.parts, "part files beside the ones shipped");
}

std::vector<std::string> checkNames() {
    std::vector<std::string> names;
    for (const checks::Check check : checks::allChecks()) {
        names.emplace_back(checks::checkName(check));
    }
    return names;
}

void addChoice(CLI::App& verb,
               const char* name,
               std::vector<std::string>& names,
               const char* help) {
    verb.add_option(name, names, help)
        ->delimiter(',')
        ->check(CLI::IsMember(checkNames()))
        ->option_text("CHECK,CHECK…");
}

CLI::App* addRoute(CLI::App& program, Options& options) {
    auto* verb = program.add_subcommand("route", "find a path for every conductor");
    verb->add_option("FILE", options.file, "the layout")->required();
    verb->add_option("--parts", options.parts, "part files beside the ones shipped");
    verb->add_option("--only", options.only, "these conductors only; the others stay as they lie")
        ->delimiter(',')
        ->option_text("CONDUCTOR,CONDUCTOR…");
    verb->add_option("--out", options.out, "where to write the layout, once all are routed");
    verb->add_option("--partial", options.partial, "where to write it when some are not");
    verb->add_flag("--json", options.json, "print the report as JSON");
    return verb;
}

CLI::App* addTakeoff(CLI::App& program, Options& options) {
    auto* verb = program.add_subcommand(
        "takeoff",
        "cut list, bend marks, strip and torque, landing order, materials, labels, weights");
    addCommon(*verb, options);
    addTakeoffOptions(*verb, options.takeoff);
    return verb;
}

CLI::App* addTemplate(CLI::App& program, Options& options) {
    auto* verb = program.add_subcommand("template", "draw the drilling template at full size");
    addCommon(*verb, options);
    verb->add_option("--out", options.out, "where to: NAME.pdf or NAME.svg")->required();
    verb->add_option("--paper", options.paper, "Letter unless said; A4 and the larger ones");
    verb->add_option("--wall", options.walls, "these walls only")
        ->delimiter(',')
        ->check(CLI::IsMember({"left", "right", "top", "bottom", "back"}))
        ->option_text("WALL,WALL…");
    return verb;
}

CLI::App* addHelp(CLI::App& program, Options& options) {
    auto* verb = program.add_subcommand("help", "what a check asks, and how it is measured");
    verb->add_option("CHECK", options.check, "the check, by its name in a report")
        ->required()
        ->check(CLI::IsMember(checkNames()));
    addEdition(*verb, options, "its sections in this edition of NFPA 70 only");
    return verb;
}

}  // namespace

int runCommandLine(int argc, char** argv) {
    Options options;
    CLI::App program("Plans an electrical gutter before a conductor is cut.", "gutterwright");
    program.set_version_flag("--version", "gutterwright " GW_VERSION);
    program.require_subcommand(1);
    auto* checkVerb =
        program.add_subcommand("check", "judge a layout, each verdict with its working");
    addCommon(*checkVerb, options);
    checkVerb->add_flag("--json", options.json, "print the report as JSON");
    addChoice(*checkVerb, "--only", options.only, "judge by these checks only");
    addChoice(*checkVerb, "--skip", options.skip, "judge by all checks but these");
    auto* sheetVerb = program.add_subcommand("sheet", "draw the layout sheet");
    addCommon(*sheetVerb, options);
    sheetVerb->add_option("--out", options.out, "where to: NAME.pdf or NAME.svg")->required();
    sheetVerb->add_option(
        "--paper", options.paper, "Letter … ARCH D, A4 … A1 (Tabloid unless said)");
    const auto* routeVerb = addRoute(program, options);
    const auto* templateVerb = addTemplate(program, options);
    const auto* takeoffVerb = addTakeoff(program, options);
    const auto* helpVerb = addHelp(program, options);
    try {
        program.parse(argc, argv);
    } catch (const CLI::Success& done) {
        return program.exit(done);
    } catch (const CLI::ParseError& error) {
        std::cerr << "gutterwright: " << error.what() << " (gutterwright --help shows the verbs)\n";
        return kBadInput;
    }
    if (helpVerb->parsed()) {
        return help(options);
    }
    if (routeVerb->parsed()) {
        return route(options);
    }
    if (templateVerb->parsed()) {
        return drillingTemplate(options);
    }
    if (takeoffVerb->parsed()) {
        return takeOff(options);
    }
    return checkVerb->parsed() ? check(options) : sheet(options);
}

}  // namespace gw::app
