#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "checks/finding.h"
#include "standards/citation.h"

/// The help pages of the checks, and the table of all checks that is made from them.
namespace gw::checks {

/// A page for an electrician, each part in Markdown without its heading.
struct HelpPage {
    std::string title;      ///< that of the check
    std::string asks;       ///< what the check asks; its first sentence stands in the table
    std::string why;        ///< what goes wrong otherwise
    std::string measured;   ///< how the program finds out
    std::string notJudged;  ///< what remains for people
};

/// Characters, the most a first sentence may have as a row of a table.
inline constexpr std::size_t kLongestFirstSentence = 110;

/// Reads a page: "# Title", then the sections "## What it asks", "## Why", "## How it is measured
/// here" and "## What it does not judge", in this order, each with text. What it asks begins with a
/// sentence of at most kLongestFirstSentence characters, without a bar or a full stop inside; it
/// ends with a full stop or with its paragraph. Error: the first thing that is not so, with its
/// line as `place`; `file` is the name to say.
Result<HelpPage> parseHelpPage(std::string_view text, const std::string& file);

/// The page as parseHelpPage() reads it.
std::string toText(const HelpPage& page);

/// The first sentence of what it asks, on one line, without its full stop.
std::string firstSentence(const HelpPage& page);

/// The page, and where its rules stand in each of these editions.
std::string helpText(const HelpPage& page,
                     Check check,
                     const std::vector<standards::Edition>& editions);

/// A Markdown table of all checks, group by group: name, what it asks, its sections in that
/// edition, those from memory in italics. REQUIRES a page for every check.
std::string checkTable(const std::map<Check, HelpPage>& pages, standards::Edition edition);

}  // namespace gw::checks
