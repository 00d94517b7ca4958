#include "checks/help.h"

#include <algorithm>
#include <array>
#include <optional>

#include "base/contract.h"
#include "checks/check_rules.h"

namespace gw::checks {
namespace {

using standards::Basis;
using standards::Citation;
using standards::Edition;

struct Section {
    std::string_view heading;
    std::string HelpPage::*text;
};

constexpr std::array<Section, 4> kSections = {
    {{"## What it asks", &HelpPage::asks},
     {"## Why", &HelpPage::why},
     {"## How it is measured here", &HelpPage::measured},
     {"## What it does not judge", &HelpPage::notJudged}}};

constexpr std::string_view kTitleMark = "# ";

/// A heading with the text below it, up to the next.
struct Part {
    std::size_t line = 1;   ///< of the heading
    std::string heading{};  ///< empty: text above the first one
    std::string body{};     ///< without blank lines around it
};

bool startsWith(std::string_view text, std::string_view start) {
    return text.substr(0, start.size()) == start;
}

std::string withoutBlankEnds(const std::string& text) {
    const auto from = text.find_first_not_of('\n');
    return from == std::string::npos ? std::string()
                                     : text.substr(from, text.find_last_not_of('\n') + 1 - from);
}

std::vector<Part> partsOf(std::string_view text) {
    std::vector<Part> parts(1);
    for (std::size_t line = 1; !text.empty(); ++line) {
        const auto end = std::min(text.find('\n'), text.size());
        const std::string one(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
        if (startsWith(one, "#")) {
            parts.push_back({line, one});
        } else {
            parts.back().body += one + "\n";
        }
    }
    for (Part& part : parts) {
        part.body = withoutBlankEnds(part.body);
    }
    if (parts.front().body.empty()) {
        parts.erase(parts.begin());
    }
    return parts;
}

tl::unexpected<Error> wrong(const std::string& file,
                            std::size_t line,
                            std::string sentence,
                            std::string_view expected,
                            const std::string& found) {
    return fail({ErrorCode::syntax,
                 std::move(sentence),
                 file,
                 "line " + std::to_string(line),
                 std::string(expected),
                 found});
}

Result<std::string> titleOf(const std::vector<Part>& parts, const std::string& file) {
    const bool titled = !parts.empty() && startsWith(parts.front().heading, kTitleMark) &&
                        parts.front().heading.size() > kTitleMark.size();
    if (!titled) {
        return wrong(file,
                     parts.empty() ? 1 : parts.front().line,
                     "a help page begins with its title",
                     "# Title",
                     parts.empty() ? "" : parts.front().heading);
    }
    if (!parts.front().body.empty()) {
        return wrong(file,
                     parts.front().line,
                     "the title is followed by text",
                     kSections.front().heading,
                     parts.front().body);
    }
    return parts.front().heading.substr(kTitleMark.size());
}

/// Section i of a page whose title is the first part.
Result<std::string> sectionOf(const std::vector<Part>& parts,
                              std::size_t i,
                              const std::string& file) {
    const std::size_t last = parts.back().line;
    if (i + 1 >= parts.size()) {
        return wrong(file, last, "a section is missing", kSections[i].heading, "");
    }
    const Part& part = parts[i + 1];
    if (part.heading != kSections[i].heading) {
        return wrong(
            file, part.line, "not the heading due here", kSections[i].heading, part.heading);
    }
    if (part.body.empty()) {
        return wrong(file, part.line, "the section has no text", "", part.heading);
    }
    return part.body;
}

/// Where the first sentence of a text ends: at a full stop before a space or a new line, or with
/// its paragraph.
std::size_t firstSentenceEnd(const std::string& text) {
    const std::size_t paragraph = std::min(text.find("\n\n"), text.size());
    for (std::size_t at = text.find('.'); at < paragraph; at = text.find('.', at + 1)) {
        if (at + 1 == text.size() || text[at + 1] == ' ' || text[at + 1] == '\n') {
            return at;
        }
    }
    return paragraph;
}

std::size_t characters(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // not inside a UTF-8 character
    }));
}

/// Fit to be a cell of a table.
bool suitsATable(const HelpPage& page) {
    const std::string sentence = firstSentence(page);
    return characters(sentence) <= kLongestFirstSentence &&
           sentence.find_first_of("|.") == std::string::npos;
}

// ---- sources --------------------------------------------------------------------------------

bool isNec(const Citation& citation) {
    return startsWith(citation.standard, "NFPA 70-");
}

/// "366.22(A)", "*110.3(B)*" from memory, "ICEA S-95-658/NEMA WC 70".
std::string inTable(const Citation& citation) {
    const std::string& text = isNec(citation) ? citation.section : citation.standard;
    return citation.basis == Basis::memory ? "*" + text + "*" : text;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    std::string text;
    for (const auto& word : words) {
        text += (text.empty() ? "" : std::string(between)) + word;
    }
    return text;
}

std::string tableCell(Check check, Edition edition) {
    std::vector<std::string> words;
    for (const Citation& one : sourcesOf(check, edition)) {
        words.push_back(inTable(one));
    }
    return words.empty() ? "the shapes alone" : joined(words, ", ");
}

/// With all there is to know of each; the edition is told by the line it stands in.
std::string editionLine(Check check, Edition edition) {
    std::vector<std::string> words;
    for (Citation one : sourcesOf(check, edition)) {
        if (isNec(one)) {
            one.standard.clear();
        }
        words.push_back(standards::toText(one));
    }
    return "- " + std::string(standards::editionText(edition)) + ": " +
           (words.empty() ? "none; it follows from the shapes alone" : joined(words, "; ")) + "\n";
}

}  // namespace

Result<HelpPage> parseHelpPage(std::string_view text, const std::string& file) {
    const auto parts = partsOf(text);
    HelpPage page;
    auto title = titleOf(parts, file);
    if (!title) {
        return fail(title.error());
    }
    page.title = std::move(*title);
    for (std::size_t i = 0; i < kSections.size(); ++i) {
        auto section = sectionOf(parts, i, file);
        if (!section) {
            return fail(section.error());
        }
        page.*kSections[i].text = std::move(*section);
    }
    if (parts.size() > kSections.size() + 1) {
        const Part& more = parts[kSections.size() + 1];
        return wrong(file, more.line, "a heading too many", "", more.heading);
    }
    if (!suitsATable(page)) {
        return wrong(file,
                     parts[1].line,
                     "the first sentence does not stand alone in a table",
                     "at most " + std::to_string(kLongestFirstSentence) +
                         " characters, no bar and no full stop inside",
                     firstSentence(page));
    }
    return page;
}

std::string toText(const HelpPage& page) {
    std::string text = std::string(kTitleMark) + page.title + "\n";
    for (const Section& section : kSections) {
        text += "\n" + std::string(section.heading) + "\n\n" + page.*section.text + "\n";
    }
    return text;
}

std::string firstSentence(const HelpPage& page) {
    std::string sentence = page.asks.substr(0, firstSentenceEnd(page.asks));
    std::replace(sentence.begin(), sentence.end(), '\n', ' ');
    return sentence;
}

std::string helpText(const HelpPage& page, Check check, const std::vector<Edition>& editions) {
    std::string text = toText(page) + "\n## Sections\n\n";
    for (const Edition edition : editions) {
        text += editionLine(check, edition);
    }
    return text;
}

std::string checkTable(const std::map<Check, HelpPage>& pages, Edition edition) {
    std::string table = "| check | what it asks | sections in NFPA 70-" +
                        std::string(standards::editionText(edition)) + " |\n|---|---|---|\n";
    std::optional<Group> group;
    for (const Check check : allChecks()) {
        const auto page = pages.find(check);
        CONTRACT(page != pages.end());
        if (group != groupOf(check)) {
            group = groupOf(check);
            table += "| **" + std::string(groupTitle(*group)) + "** | | |\n";
        }
        table += "| `" + std::string(checkName(check)) + "` | " + firstSentence(page->second) +
                 " | " + tableCell(check, edition) + " |\n";
    }
    return table + "\nSections in italics are from memory.\n";
}

}  // namespace gw::checks
