#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/contract.h"
#include "checks/finding.h"
#include "standards/sections.h"

/// What the checks share: names as people at the gutter use them, numbers as text, and how a
/// verdict follows from a number, a limit and the readings of a disputed rule.
namespace gw::checks {

Quantity inches(double value);
Quantity squareInches(double value);
Quantity percent(double value);
Quantity count(std::size_t value);
Quantity degrees(double radians);

/// What an optional holds. REQUIRES that it holds something (a bug otherwise).
template <class T>
const T& given(const std::optional<T>& value) {
    CONTRACT(value.has_value());
    return *value;
}

/// "3.8 in".
std::string inText(double inches);
/// "3.8 in" and "4 in", with as many decimals as it takes to tell two different lengths apart.
std::pair<std::string, std::string> inTexts(double measured, double limit);
/// "1 conductor", "2 conductors".
std::string counted(std::size_t count, const std::string& one, const std::string& many);
/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& words);
/// The sentence with its first letter large and a full stop.
std::string sentence(std::string text);

/// "conductor S1-A" by its tag, "block A" and "entry Main" by their names; by the id where those
/// are empty. A name that already begins with the kind is not said twice.
std::string conductorName(const geometry::BuiltLayout& built, std::size_t conductor);
std::string blockName(const geometry::BuiltLayout& built, std::size_t block);
std::string entryName(const geometry::BuiltLayout& built, std::size_t entry);
std::string circuitName(const geometry::BuiltLayout& built, std::size_t circuit);
/// "port 1 of block A".
std::string portName(const geometry::BuiltLayout& built, std::size_t block, std::size_t port);

/// "kind of connector of part row-4", where a part does not state it.
std::string kindMissing(const geometry::BuiltLayout& built, std::size_t block);

/// Which side of the limit is allowed.
enum class Bound { atMost, atLeast };

/// Whether the limit holds, by atMost or atLeast of base/tolerance.h.
bool holds(const Quantity& measured, const Quantity& limit, Bound bound);
/// Positive: room to spare.
Quantity marginOf(const Quantity& measured, const Quantity& limit, Bound bound);

/// How bad a verdict is: meets, caution, cannotTell, breach in this order.
int gravity(Verdict verdict);
Verdict graver(Verdict a, Verdict b);

/// Writes measured, limit and margin into the finding; meets or breach.
void judge(Finding& finding, const Quantity& measured, const Quantity& limit, Bound bound);

/// The verdict of a disputed rule: the one both readings give, else the recorded reading's; else
/// cannotTell where one of them cannot tell, else caution. REQUIRES two readings.
Verdict settle(const std::vector<Reading>& readings);

/// The section that carries the rule for the layout's edition and article.
standards::Citation sectionFor(const geometry::BuiltLayout& built, standards::Rule rule);

/// The rule's limit, or what the layout states that the local authority has put in its place.
standards::Cited<double> amended(standards::Cited<double> rule,
                                 const std::optional<double>& amendment,
                                 const layout::Layout& layout);
standards::Cited<double> amended(standards::Cited<double> rule,
                                 const std::optional<double>& amendment,
                                 const geometry::BuiltLayout& built);

/// What no standard states: it follows from the shapes, or from what the layout says of itself.
standards::Citation geometryOnly();
standards::Citation asStated(std::string_view what);

}  // namespace gw::checks
