#include "checks/report.h"

#include <algorithm>
#include <array>
#include <sstream>

#include "base/json_writer.h"

namespace gw::checks {
namespace {

constexpr std::size_t kColumns = 100;

constexpr std::array<Verdict, 4> kOrder = {
    Verdict::breach, Verdict::cannotTell, Verdict::caution, Verdict::meets};

std::string heading(Verdict verdict) {
    switch (verdict) {
        case Verdict::meets:
            return "MEETS";
        case Verdict::breach:
            return "BREACH";
        case Verdict::caution:
            return "CAUTION";
        case Verdict::cannotTell:
            return "CANNOT TELL";
    }
    return {};
}

std::string counted(int count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

/// Characters, not bytes: continuation bytes of UTF-8 take no column.
std::size_t columns(const std::string& text) {
    return std::size_t(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

/// Words of `text` in lines of at most kColumns, each behind `indent` blanks.
std::string wrapped(const std::string& text, std::size_t indent) {
    const std::string margin(indent, ' ');
    std::istringstream words(text);
    std::string out;
    std::string line = margin;
    for (std::string word; words >> word;) {
        if (line.size() > indent && columns(line) + 1 + columns(word) > kColumns) {
            out += line + "\n";
            line = margin;
        }
        line += (line.size() > indent ? " " : "") + word;
    }
    return out + line + "\n";
}

std::string subjectsText(const Finding& finding) {
    if (finding.subjects.empty()) {
        return "the gutter";
    }
    std::string text;
    for (const auto& subject : finding.subjects) {
        text += (text.empty() ? "" : ", ") + subjectText(subject);
    }
    return text;
}

std::string numbersText(const Finding& finding) {
    std::string text;
    const auto add = [&](const char* name, const std::optional<Quantity>& quantity) {
        if (quantity) {
            text += (text.empty() ? "" : "; ") + std::string(name) + " " + toText(*quantity);
        }
    };
    add("measured", finding.measured);
    add("limit", finding.limit);
    add("margin", finding.margin);
    return text;
}

std::string readingText(const Reading& reading) {
    return "reading" + std::string(reading.chosen ? " taken here" : "") + ": " + reading.name +
           ": " + std::string(verdictText(reading.verdict)) + ". " + reading.sentence;
}

std::string findingText(const Finding& finding) {
    std::string text =
        wrapped(std::string(checkTitle(finding.check)) + ": " + subjectsText(finding), 2);
    text += wrapped(finding.working, 6);
    for (const auto& reading : finding.readings) {
        text += wrapped(readingText(reading), 6);
    }
    for (const auto& missing : finding.missing) {
        text += wrapped("missing: " + missing, 6);
    }
    const auto numbers = numbersText(finding);
    const auto section = standards::toText(finding.citation);
    return text +
           wrapped(numbers.empty() ? "[" + section + "]" : numbers + "  [" + section + "]", 6);
}

std::string headText(const geometry::BuiltLayout& built, const ReportHead& head) {
    const auto& layout = built.layout;
    const auto& inside = layout.gutter.inside;
    const auto size = [](double inches) { return units::formatDecimal(inches, 3); };
    std::string text = wrapped((layout.title.empty() ? "Untitled layout" : layout.title) +
                                   (head.file.empty() ? "" : " (" + head.file + ")"),
                               0);
    text +=
        wrapped(std::string(standards::articleText(layout.gutter.article)) + " " + size(inside.y) +
                    " x " + size(inside.z) + " x " + size(inside.x) + " in inside, NFPA 70-" +
                    std::string(standards::editionText(layout.edition)) + "; " +
                    counted(int(layout.conductors.size()), "conductor", "conductors") + ", " +
                    counted(int(layout.blocks.size()), "block", "blocks") + ", " +
                    counted(int(layout.entries.size()), "entry", "entries"),
                0);
    return text;
}

/// "Local amendments (yard ordinance 12): conductor fill at most 15 %."
std::string amendmentsText(const layout::Amendments& amendments) {
    std::string text;
    const auto add = [&](const char* what, const std::optional<double>& value, const char* unit) {
        if (value) {
            text += (text.empty() ? "" : ", ") + std::string(what) +
                    units::formatDecimal(*value, 2) + unit;
        }
    };
    add("conductor fill at most ", amendments.conductorFillPercent, " %");
    add("splice fill at most ", amendments.spliceFillPercent, " %");
    add("bend radius at least ", amendments.bendRadiusMultiple, " overall diameters");
    if (text.empty()) {
        return text;
    }
    const std::string by = amendments.source.empty() ? "" : " (" + amendments.source + ")";
    return wrapped("Local amendments" + by + ": " + text + ".", 0);
}

/// A report on a part of the checks must not be taken for one on all.
std::string leftOutText(const std::vector<Check>& leftOut) {
    std::string names;
    for (const Check check : leftOut) {
        names += (names.empty() ? "Left out, not judged: " : ", ") + std::string(checkName(check));
    }
    return names.empty() ? names : wrapped(names + ".", 0);
}

/// "BREACH", and below it the findings with this verdict under the names of their groups.
std::string partOf(const std::vector<Finding>& findings, Verdict verdict) {
    std::string text;
    std::optional<Group> group;
    for (const auto& finding : findings) {
        if (finding.verdict != verdict) {
            continue;
        }
        if (text.empty()) {
            text += "\n" + heading(verdict) + "\n";
        }
        if (group != groupOf(finding.check)) {
            group = groupOf(finding.check);
            text += wrapped(std::string(groupTitle(*group)), 1);
        }
        text += findingText(finding);
    }
    return text;
}

std::vector<Check> askedFor(const ReportHead& head) {
    std::vector<Check> asked;
    for (const Check check : allChecks()) {
        if (std::find(head.leftOut.begin(), head.leftOut.end(), check) == head.leftOut.end()) {
            asked.push_back(check);
        }
    }
    return asked;
}

std::string notConcernedText(const std::vector<Check>& silent) {
    std::string text = silent.empty() ? "" : "\nNOT CONCERNED\n";
    for (const Check check : silent) {
        text += wrapped(
            std::string(checkTitle(check)) + ": " + std::string(whyNotConcerned(check)) + ".", 2);
    }
    return text;
}

}  // namespace

std::string summaryLine(const Tally& tally) {
    std::string line =
        tally.breach == 0 ? "No breach" : counted(tally.breach, "breach", "breaches");
    line += ": " + counted(tally.meets, "finding meets", "findings meet");
    if (tally.caution > 0) {
        line += ", " + counted(tally.caution, "caution", "cautions");
    }
    if (tally.cannotTell > 0) {
        line += ", " + std::to_string(tally.cannotTell) + " cannot tell";
    }
    return line + ".";
}

std::string textReport(const geometry::BuiltLayout& built,
                       const std::vector<Finding>& findings,
                       const ReportHead& head) {
    std::string text = headText(built, head) + "\n" + wrapped(summaryLine(tally(findings)), 0) +
                       amendmentsText(built.layout.amendments) + leftOutText(head.leftOut);
    for (const Verdict verdict : kOrder) {
        text += partOf(findings, verdict);
    }
    text += notConcernedText(notConcerned(askedFor(head), findings)) + "\n";
    for (const auto& caution : cautions()) {
        text += wrapped(caution, 0);
    }
    return text;
}

namespace {

std::string_view unitText(Quantity::Unit unit) {
    switch (unit) {
        case Quantity::Unit::inches:
            return "in";
        case Quantity::Unit::squareInches:
            return "in2";
        case Quantity::Unit::percent:
            return "%";
        case Quantity::Unit::count:
            return "count";
        case Quantity::Unit::degrees:
            return "degrees";
        case Quantity::Unit::amperes:
            return "A";
        case Quantity::Unit::volts:
            return "V";
        case Quantity::Unit::kiloamperes:
            return "kA";
        case Quantity::Unit::poundsForce:
            return "lbf";
        case Quantity::Unit::poundsForcePerFoot:
            return "lbf/ft";
    }
    return {};
}

void setQuantity(JsonTree& tree, std::string_view name, const std::optional<Quantity>& quantity) {
    if (quantity) {
        auto written = JsonTree::object();
        written.set("value", quantity->value).set("unit", unitText(quantity->unit));
        tree.set(name, std::move(written));
    }
}

std::optional<Quantity> percentIf(const std::optional<double>& value) {
    return value ? std::optional(Quantity{*value, Quantity::Unit::percent}) : std::nullopt;
}

JsonTree jsonCitation(const standards::Citation& citation) {
    auto tree = JsonTree::object();
    tree.set("standard", citation.standard).set("section", citation.section);
    tree.set("basis", standards::basisText(citation.basis)).set("note", citation.note);
    return tree;
}

JsonTree jsonReading(const Reading& reading) {
    auto tree = JsonTree::object();
    tree.set("name", reading.name).set("verdict", verdictText(reading.verdict));
    setQuantity(tree, "measured", reading.measured);
    setQuantity(tree, "limit", reading.limit);
    tree.set("sentence", reading.sentence).set("chosen", reading.chosen);
    return tree;
}

template <class Items, class Write>
JsonTree jsonList(const Items& items, Write write) {
    auto list = JsonTree::array();
    for (const auto& item : items) {
        list.push(write(item));
    }
    return list;
}

JsonTree jsonAmendments(const layout::Amendments& amendments) {
    auto tree = JsonTree::object();
    setQuantity(tree, "conductorFill", percentIf(amendments.conductorFillPercent));
    setQuantity(tree, "spliceFill", percentIf(amendments.spliceFillPercent));
    if (amendments.bendRadiusMultiple) {
        tree.set("bendRadiusMultiple", *amendments.bendRadiusMultiple);
    }
    tree.set("source", amendments.source);
    return tree;
}

JsonTree jsonNotConcerned(Check check) {
    auto tree = JsonTree::object();
    tree.set("check", checkName(check)).set("why", whyNotConcerned(check));
    return tree;
}

JsonTree jsonFinding(const Finding& finding) {
    auto tree = JsonTree::object();
    tree.set("check", checkName(finding.check)).set("verdict", verdictText(finding.verdict));
    tree.set("subjects", jsonList(finding.subjects, subjectText));
    if (finding.place) {
        auto place = JsonTree::object();
        place.set("x", finding.place->x).set("y", finding.place->y).set("z", finding.place->z);
        tree.set("place", std::move(place));
    }
    if (finding.interval) {
        auto interval = JsonTree::object();
        interval.set("from", finding.interval->first).set("to", finding.interval->second);
        tree.set("interval", std::move(interval));
    }
    setQuantity(tree, "measured", finding.measured);
    setQuantity(tree, "limit", finding.limit);
    setQuantity(tree, "margin", finding.margin);
    tree.set("citation", jsonCitation(finding.citation));
    tree.set("working", finding.working);
    tree.set("missing", jsonList(finding.missing, [](const std::string& text) { return text; }));
    tree.set("readings", jsonList(finding.readings, jsonReading));
    return tree;
}

}  // namespace

std::string jsonReport(const geometry::BuiltLayout& built,
                       const std::vector<Finding>& findings,
                       const ReportHead& head) {
    const auto counts = tally(findings);
    auto tallied = JsonTree::object();
    tallied.set("meets", counts.meets).set("breach", counts.breach);
    tallied.set("caution", counts.caution).set("cannotTell", counts.cannotTell);
    auto tree = JsonTree::object();
    tree.set("format", "gutterwright-report").set("version", 1);
    tree.set("file", head.file).set("title", built.layout.title);
    tree.set("edition", standards::editionText(built.layout.edition));
    if (built.layout.amendments.any()) {
        tree.set("amendments", jsonAmendments(built.layout.amendments));
    }
    tree.set("leftOut", jsonList(head.leftOut, checkName));
    tree.set("tally", std::move(tallied));
    tree.set("findings", jsonList(findings, jsonFinding));
    tree.set("notConcerned", jsonList(notConcerned(askedFor(head), findings), jsonNotConcerned));
    tree.set("cautions", jsonList(cautions(), [](const std::string& text) { return text; }));
    return tree.text();
}

const std::vector<std::string>& cautions() {
    // Sentences over several lines.
    // NOLINTBEGIN(bugprone-suspicious-missing-comma)
    static const std::vector<std::string> kCautions = {
        "This is a planning aid. The adopted code and its local amendments, the authority having "
        "jurisdiction, the listing and instructions of every connector, and licensed practice "
        "decide.",
        "Verify every section with the edition in force where the work is done.",
        "Work de-energised: find every source, open, lock and tag, and test for absence of voltage "
        "before touching a conductor (NFPA 70E; OSHA 29 CFR 1910.333).",
        "Service conductors stay live when every switch downstream is off: only the utility can "
        "make them dead, and nothing upstream limits a fault on them.",
        "Never measure or form conductors inside a live gutter.",
    };
    // NOLINTEND(bugprone-suspicious-missing-comma)
    return kCautions;
}

}  // namespace gw::checks
