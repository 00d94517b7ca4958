#include "checks/support.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "base/contract.h"
#include "base/tolerance.h"
#include "units/length.h"

namespace gw::checks {
namespace {

char lower(char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

bool beginsWith(const std::string& text, std::string_view word) {
    return text.size() >= word.size() &&
           std::equal(word.begin(), word.end(), text.begin(), [](char a, char b) {
               return a == lower(b);
           });
}

/// kind: in small letters.
std::string called(std::string_view kind, const std::string& name, const std::string& id) {
    const std::string& shown = name.empty() ? id : name;
    if (beginsWith(shown, kind)) {
        return std::string(kind) + shown.substr(kind.size());
    }
    return std::string(kind) + " " + shown;
}

}  // namespace

Quantity inches(double value) {
    return {value, Quantity::Unit::inches};
}
Quantity squareInches(double value) {
    return {value, Quantity::Unit::squareInches};
}
Quantity percent(double value) {
    return {value, Quantity::Unit::percent};
}
Quantity count(std::size_t value) {
    return {static_cast<double>(value), Quantity::Unit::count};
}
Quantity degrees(double radians) {
    return {units::Radians::of(radians).degrees(), Quantity::Unit::degrees};
}

std::string inText(double inches) {
    return units::formatDecimal(inches, 3) + " in";
}

std::pair<std::string, std::string> inTexts(double measured, double limit) {
    constexpr int kUsual = 3;
    constexpr int kMost = 7;
    for (int decimals = kUsual;; ++decimals) {
        auto one = units::formatDecimal(measured, decimals);
        auto other = units::formatDecimal(limit, decimals);
        const bool alike = std::abs(measured - limit) <= kLimitSlack;
        if (one != other || alike || decimals == kMost) {
            return {one + " in", other + " in"};
        }
    }
}

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool last = i + 1 == words.size();
        text += (i == 0 ? "" : last ? " and " : ", ") + words[i];
    }
    return text;
}

std::string sentence(std::string text) {
    if (!text.empty()) {
        text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
        text += ".";
    }
    return text;
}

std::string conductorName(const geometry::BuiltLayout& built, std::size_t conductor) {
    const auto& one = built.layout.conductors[conductor];
    return called("conductor", one.tag, one.id.text());
}

std::string blockName(const geometry::BuiltLayout& built, std::size_t block) {
    const auto& one = built.layout.blocks[block];
    return called("block", one.name, one.id.text());
}

std::string entryName(const geometry::BuiltLayout& built, std::size_t entry) {
    const auto& one = built.layout.entries[entry];
    return called("entry", one.name, one.id.text());
}

std::string circuitName(const geometry::BuiltLayout& built, std::size_t circuit) {
    const auto& one = built.layout.circuits[circuit];
    return called("circuit", one.name, one.id.text());
}

std::string portName(const geometry::BuiltLayout& built, std::size_t block, std::size_t port) {
    return "port " + built.blocks[block].part->ports[port].name.text() + " of " +
           blockName(built, block);
}

std::string kindMissing(const geometry::BuiltLayout& built, std::size_t block) {
    return "kind of connector of part " + built.blocks[block].part->id.text();
}

bool holds(const Quantity& measured, const Quantity& limit, Bound bound) {
    CONTRACT(measured.unit == limit.unit);
    switch (bound) {
        case Bound::atMost:
            return atMost(measured.value, limit.value);
        case Bound::atLeast:
            return atLeast(measured.value, limit.value);
    }
    return false;
}

Quantity marginOf(const Quantity& measured, const Quantity& limit, Bound bound) {
    const double over = measured.value - limit.value;
    return {bound == Bound::atLeast ? over : -over, measured.unit};
}

void judge(Finding& finding, const Quantity& measured, const Quantity& limit, Bound bound) {
    finding.measured = measured;
    finding.limit = limit;
    finding.margin = marginOf(measured, limit, bound);
    finding.verdict = holds(measured, limit, bound) ? Verdict::meets : Verdict::breach;
}

Verdict settle(const std::vector<Reading>& readings) {
    CONTRACT(readings.size() == 2);
    if (readings[0].verdict == readings[1].verdict) {
        return readings[0].verdict;
    }
    for (const Reading& reading : readings) {
        if (reading.chosen) {
            return reading.verdict;
        }
    }
    const bool unsure =
        readings[0].verdict == Verdict::cannotTell || readings[1].verdict == Verdict::cannotTell;
    return unsure ? Verdict::cannotTell : Verdict::caution;
}

int gravity(Verdict verdict) {
    switch (verdict) {
        case Verdict::meets:
            return 0;
        case Verdict::caution:
            return 1;
        case Verdict::cannotTell:
            return 2;
        case Verdict::breach:
            return 3;
    }
    return 0;
}

Verdict graver(Verdict a, Verdict b) {
    return gravity(a) >= gravity(b) ? a : b;
}

standards::Citation sectionFor(const geometry::BuiltLayout& built, standards::Rule rule) {
    return standards::section(rule, built.layout.edition, built.gutter().article);
}

standards::Citation geometryOnly() {
    return {"geometry of the layout", "", standards::Basis::geometry, {}};
}

standards::Cited<double> amended(standards::Cited<double> rule,
                                 const std::optional<double>& amendment,
                                 const layout::Layout& layout) {
    if (!amendment) {
        return rule;
    }
    const std::string& source = layout.amendments.source;
    return {*amendment,
            {"local amendment",
             source,
             standards::Basis::layoutData,
             "in place of " + rule.source.standard + " " + rule.source.section}};
}

standards::Cited<double> amended(standards::Cited<double> rule,
                                 const std::optional<double>& amendment,
                                 const geometry::BuiltLayout& built) {
    return amended(std::move(rule), amendment, built.layout);
}

standards::Citation asStated(std::string_view what) {
    return {std::string(what) + " as the layout states them", "", standards::Basis::layoutData, {}};
}

}  // namespace gw::checks
