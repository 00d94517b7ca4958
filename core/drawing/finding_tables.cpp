#include "drawing/finding_tables.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "drawing/names.h"

namespace gw::drawing {
namespace {

using checks::Finding;
using checks::Verdict;
using layout::Layout;

int rankOf(Verdict verdict) {
    switch (verdict) {
        case Verdict::breach:
            return 0;
        case Verdict::caution:
            return 1;
        case Verdict::cannotTell:
            return 2;
        case Verdict::meets:
            return 3;
    }
    return 3;
}

std::string verdictWord(Verdict verdict) {
    return verdict == Verdict::breach ? "BREACH" : std::string(checks::verdictText(verdict));
}

std::string subjectsText(const Finding& finding, const Layout& layout) {
    struct Reader {
        const Layout& in;
        std::string operator()(const layout::ConductorId& id) const { return tagOf(in, id); }
        std::string operator()(const layout::BlockId& id) const { return nameOf(in.blocks, id); }
        std::string operator()(const layout::EntryId& id) const { return nameOf(in.entries, id); }
        std::string operator()(const layout::CircuitId& id) const {
            return nameOf(in.circuits, id);
        }
    };
    std::string text;
    for (const auto& subject : finding.subjects) {
        text += (text.empty() ? "" : ", ") + std::visit(Reader{layout}, subject);
    }
    return text.empty() ? "gutter" : text;
}

std::string quantityText(const std::optional<checks::Quantity>& quantity) {
    return quantity ? checks::toText(*quantity) : "–";
}

std::string editionOf(const Layout& layout) {
    return "NFPA 70-" + std::string(standards::editionText(layout.edition));
}

/// The section alone where it is of the edition that the table's title names; starred where its
/// wording was not read.
std::string sectionText(const standards::Citation& citation, const Layout& layout) {
    std::string text = citation.section;
    if (citation.standard != editionOf(layout) || text.empty()) {
        text = citation.standard + (text.empty() ? "" : " " + text);
    }
    return text + (citation.basis == standards::Basis::memory ? " *" : "");
}

bool isFromMemory(const Finding& finding) {
    return finding.citation.basis == standards::Basis::memory;
}

std::string subtitleOf(const std::string& words, const std::vector<const Finding*>& findings) {
    const bool starred = std::any_of(findings.begin(), findings.end(), [](const auto* finding) {
        return isFromMemory(*finding);
    });
    return words + (starred ? "; * from memory, not read in the standard" : "");
}

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const auto& word : words) {
        text += (text.empty() ? "" : ", ") + word;
    }
    return text;
}

/// The working, what would settle it, and what is to be known about its source.
std::string fullWorking(const Finding& finding) {
    std::string text = finding.working;
    const auto add = [&](const std::string& more) { text += (text.empty() ? "" : " ") + more; };
    if (!finding.missing.empty()) {
        add("Missing: " + joined(finding.missing) + ".");
    }
    if (!finding.citation.note.empty()) {
        add("(Source: " + finding.citation.note + ".)");
    }
    return text;
}

/// Room to spare as a part of the limit: the least is nearest to it. Without a margin it is last.
double sparePart(const Finding& finding) {
    if (!finding.margin) {
        return std::numeric_limits<double>::infinity();
    }
    const double limit = finding.limit ? std::abs(finding.limit->value) : 0.0;
    return limit > 0.0 ? finding.margin->value / limit : finding.margin->value;
}

std::vector<const Finding*> metOf(const std::vector<Finding>& findings, checks::Check check) {
    std::vector<const Finding*> met;
    for (const auto& finding : findings) {
        if (finding.check == check && finding.verdict == Verdict::meets) {
            met.push_back(&finding);
        }
    }
    return met;
}

const Finding& nearestToLimit(const std::vector<const Finding*>& met) {
    return **std::min_element(met.begin(), met.end(), [](const Finding* a, const Finding* b) {
        return sparePart(*a) < sparePart(*b);
    });
}

TableRow metRow(const std::vector<const Finding*>& met, const Layout& layout) {
    const auto& nearest = nearestToLimit(met);
    return {{std::string(checks::checkTitle(nearest.check)),
             std::to_string(met.size()),
             subjectsText(nearest, layout),
             quantityText(nearest.measured),
             quantityText(nearest.limit),
             quantityText(nearest.margin),
             sectionText(nearest.citation, layout),
             nearest.working}};
}

TableRow openRow(const Finding& finding, int number, const Layout& layout) {
    return {{std::to_string(number),
             verdictWord(finding.verdict),
             std::string(checks::checkTitle(finding.check)),
             subjectsText(finding, layout),
             quantityText(finding.measured),
             quantityText(finding.limit),
             quantityText(finding.margin),
             sectionText(finding.citation, layout),
             fullWorking(finding)},
            finding.verdict == Verdict::breach};
}

Table emptyOpenTable() {
    return {"Findings",
            "",
            {{"No.", AnchorX::right},
             {"Verdict"},
             {"Check", AnchorX::left, 0.7},
             {"Subject", AnchorX::left, 0.9},
             {"Measured", AnchorX::right},
             {"Limit", AnchorX::right},
             {"Margin", AnchorX::right},
             {"Section", AnchorX::left, 0.8},
             {"Working", AnchorX::left, 3.0}},
            {},
            true,
            "No breach, no caution, and nothing that cannot be told."};
}

Table emptyMetTable() {
    return {"Checks that meet",
            "",
            {{"Check", AnchorX::left, 0.8},
             {"Met", AnchorX::right},
             {"Nearest to its limit", AnchorX::left, 0.9},
             {"Measured", AnchorX::right},
             {"Limit", AnchorX::right},
             {"Margin", AnchorX::right},
             {"Section", AnchorX::left, 0.8},
             {"Working", AnchorX::left, 3.0}},
            {},
            true,
            "No check meets."};
}

}  // namespace

std::vector<const Finding*> inOrder(const std::vector<Finding>& findings) {
    std::vector<const Finding*> ordered;
    for (const auto& finding : findings) {
        ordered.push_back(&finding);
    }
    std::stable_sort(ordered.begin(), ordered.end(), [](const auto* a, const auto* b) {
        return rankOf(a->verdict) < rankOf(b->verdict);
    });
    return ordered;
}

bool isMarked(const Finding& finding) {
    const bool told = finding.verdict == Verdict::breach || finding.verdict == Verdict::caution;
    return told && finding.place.has_value();
}

bool hasOpen(const std::vector<Finding>& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.verdict != Verdict::meets;
    });
}

Table openFindingTable(const geometry::BuiltLayout& built, const std::vector<Finding>& findings) {
    Table table = emptyOpenTable();
    std::vector<const Finding*> open;
    for (const auto* finding : inOrder(findings)) {
        if (finding->verdict != Verdict::meets) {
            open.push_back(finding);
            table.rows.push_back(openRow(*finding, static_cast<int>(open.size()), built.layout));
        }
    }
    table.subtitle = subtitleOf(tallyText(findings) + "; by " + editionOf(built.layout), open);
    return withoutEmptyColumns(std::move(table));
}

Table metTable(const geometry::BuiltLayout& built, const std::vector<Finding>& findings) {
    Table table = emptyMetTable();
    std::vector<const Finding*> shown;
    for (const auto check : checks::allChecks()) {
        const auto met = metOf(findings, check);
        if (!met.empty()) {
            shown.push_back(&nearestToLimit(met));
            table.rows.push_back(metRow(met, built.layout));
        }
    }
    std::string words = "of each check the one nearest to its limit";
    if (!hasOpen(findings)) {
        table.title = "Findings";
        words = tallyText(findings) + "; " + words;
    }
    table.subtitle = subtitleOf(words + "; by " + editionOf(built.layout), shown);
    return withoutEmptyColumns(std::move(table));
}

std::string tallyText(const std::vector<Finding>& findings) {
    const auto counts = checks::tally(findings);
    return counted(counts.breach, "breach", "breaches") + ", " +
           counted(counts.caution, "caution", "cautions") + ", " +
           std::to_string(counts.cannotTell) + " cannot tell, " + std::to_string(counts.meets) +
           " met";
}

}  // namespace gw::drawing
