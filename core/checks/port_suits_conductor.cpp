#include <algorithm>
#include <array>

#include "checks/support.h"
#include "checks/units.h"

/// Every occupied port takes its conductors: size, metal, stranding and number within one row of
/// the connector's wire table.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Conductor;
using parts::PortRange;
using standards::Rule;

enum class Fit { no, unknown, yes };

struct RowFit {
    Fit fit = Fit::yes;
    std::vector<std::string> missing;  ///< what would settle an unknown

    void require(bool fits) { fit = fits ? fit : Fit::no; }
    void lack(std::string input) {
        fit = fit == Fit::yes ? Fit::unknown : fit;
        if (std::find(missing.begin(), missing.end(), input) == missing.end()) {
            missing.push_back(std::move(input));
        }
    }
};

template <class T>
bool contains(const std::vector<T>& list, const T& value) {
    return std::find(list.begin(), list.end(), value) != list.end();
}

void fitMetal(RowFit& row, const PortRange& range, const Conductor& one, const std::string& name) {
    if (!one.metal) {
        row.lack("metal of " + name);
    } else {
        row.require(contains(range.metals, *one.metal));
    }
}

void fitStranding(RowFit& row,
                  const PortRange& range,
                  const Conductor& one,
                  const std::string& name) {
    if (!one.stranding) {
        row.lack("stranding of " + name);
    } else {
        row.require(contains(range.strandings, *one.stranding));
    }
}

std::size_t mostOf(const PortRange& range) {
    return static_cast<std::size_t>(range.conductors.value_or(1));
}

/// What to leave aside, to find out which fact it is that does not fit.
enum class Aside { nothing, metal, stranding };

/// One row of the wire table against all conductors in the port.
RowFit fitOf(const BuiltLayout& built,
             const PortRange& range,
             std::span<const Occupant> occupants,
             Aside aside = Aside::nothing) {
    RowFit row;
    row.require(occupants.size() <= mostOf(range));
    for (const Occupant& occupant : occupants) {
        const Conductor& one = built.layout.conductors[occupant.conductor];
        const std::string name = conductorName(built, occupant.conductor);
        row.require(range.smallest <= one.size && one.size <= range.largest);
        if (aside != Aside::metal) {
            fitMetal(row, range, one, name);
        }
        if (aside != Aside::stranding) {
            fitStranding(row, range, one, name);
        }
    }
    return row;
}

/// "class B", "solid", "compact", "fine class K".
std::string strandingName(standards::Stranding stranding) {
    const std::string text(standards::strandingText(stranding));
    const std::string name = text.size() == 1 ? "class " + text : text;
    return standards::isFine(stranding) ? "fine " + name : name;
}

std::string describe(const BuiltLayout& built, std::size_t conductor) {
    const Conductor& one = built.layout.conductors[conductor];
    std::string text = conductorName(built, conductor) + ", " + one.size.text();
    text +=
        one.metal ? " " + std::string(standards::metalText(*one.metal)) : " of metal not stated";
    return text + " " + (one.stranding ? strandingName(*one.stranding) : "of stranding not stated");
}

std::string describe(const PortRange& range) {
    std::vector<std::string> metals;
    metals.reserve(range.metals.size());
    for (const auto metal : range.metals) {
        metals.emplace_back(standards::metalText(metal));
    }
    std::vector<std::string> strandings;
    strandings.reserve(range.strandings.size());
    for (const auto stranding : range.strandings) {
        strandings.push_back(strandingName(stranding));
    }
    const std::size_t most = mostOf(range);
    const std::string number = !range.conductors ? ", number not stated, so 1 conductor"
                               : most > 1        ? ", up to " + std::to_string(most) + " conductors"
                                                 : "";
    return range.smallest.text() + " to " + range.largest.text() + " " + listed(metals) + " " +
           listed(strandings) + number;
}

/// The most conductors any row allows that each conductor fits alone; 0 where one fits no row.
std::size_t mostAllowed(const BuiltLayout& built,
                        const parts::Port& port,
                        std::span<const Occupant> occupants) {
    std::size_t most = 0;
    bool first = true;
    for (const Occupant& occupant : occupants) {
        std::size_t forThis = 0;
        for (const PortRange& range : port.accepts) {
            if (fitOf(built, range, {&occupant, 1}).fit != Fit::no) {
                forThis = std::max(forThis, mostOf(range));
            }
        }
        most = first ? forThis : std::min(most, forThis);
        first = false;
    }
    return most;
}

struct Outcome {
    Verdict verdict = Verdict::breach;
    const PortRange* row = nullptr;
    std::vector<std::string> missing;
};

Outcome outcomeOf(const BuiltLayout& built,
                  const parts::Port& port,
                  std::span<const Occupant> occupants) {
    Outcome outcome;
    for (const PortRange& range : port.accepts) {
        const RowFit row = fitOf(built, range, occupants);
        if (row.fit == Fit::yes) {
            return {Verdict::meets, &range, {}};
        }
        if (row.fit == Fit::unknown && outcome.row == nullptr) {
            outcome = {Verdict::cannotTell, &range, row.missing};
        }
    }
    return outcome;
}

std::string occupantsText(const BuiltLayout& built, std::span<const Occupant> occupants) {
    std::vector<std::string> words;
    words.reserve(occupants.size());
    for (const Occupant& occupant : occupants) {
        words.push_back(describe(built, occupant.conductor));
    }
    return listed(words);
}

std::string tableText(const parts::Port& port) {
    std::string text;
    for (const PortRange& range : port.accepts) {
        text += (text.empty() ? "" : "; ") + describe(range);
    }
    return text;
}

/// The rule behind the outcome: the code's own where number, metal or stranding decide, else that
/// the connector is used as listed.
Rule ruleFor(const BuiltLayout& built,
             const parts::Port& port,
             std::size_t allowed,
             std::span<const Occupant> occupants) {
    const auto fitsWithout = [&](Aside aside) {
        return std::any_of(port.accepts.begin(), port.accepts.end(), [&](const PortRange& range) {
            return fitOf(built, range, occupants, aside).fit == Fit::yes;
        });
    };
    if (fitsWithout(Aside::nothing)) {
        return Rule::listingAndInstructions;
    }
    if (fitsWithout(Aside::metal)) {
        return Rule::dissimilarMetals;
    }
    const bool tooMany = allowed > 0 && occupants.size() > allowed;
    return tooMany || fitsWithout(Aside::stranding) ? Rule::oneConductorPerTerminal
                                                    : Rule::listingAndInstructions;
}

void tellOutcome(Finding& finding,
                 const BuiltLayout& built,
                 const parts::Port& port,
                 std::span<const Occupant> occupants,
                 const std::string& head) {
    const Outcome outcome = outcomeOf(built, port, occupants);
    const std::size_t allowed = outcome.row != nullptr && outcome.verdict == Verdict::meets
                                    ? mostOf(*outcome.row)
                                    : mostAllowed(built, port, occupants);
    judge(finding, count(occupants.size()), count(allowed), Bound::atMost);
    finding.verdict = outcome.verdict;
    finding.missing = outcome.missing;
    finding.citation = sectionFor(built, ruleFor(built, port, allowed, occupants));
    const std::string holding = head + " holds " + occupantsText(built, occupants);
    switch (outcome.verdict) {
        case Verdict::meets:
            finding.working = sentence(holding + ", within its range of " + describe(*outcome.row));
            break;
        case Verdict::cannotTell:
            finding.working = sentence(holding + ", which may or may not be within its range of " +
                                       describe(*outcome.row) + ": not stated are the " +
                                       listed(outcome.missing));
            break;
        case Verdict::breach:
        case Verdict::caution:
            finding.working = sentence(holding + ", and no row of its wire table takes " +
                                       (occupants.size() > 1 ? "them together" : "it") + " (" +
                                       tableText(port) + ")");
            break;
    }
}

Finding findingFor(const BuiltLayout& built,
                   std::size_t block,
                   std::size_t portIndex,
                   std::span<const Occupant> occupants) {
    const parts::Port& port = built.blocks[block].part->ports[portIndex];
    const std::string head = portName(built, block, portIndex);
    Finding finding;
    finding.check = Check::portSuitsConductor;
    finding.subjects = {built.layout.blocks[block].id};
    for (const Occupant& occupant : occupants) {
        const Subject subject = built.layout.conductors[occupant.conductor].id;
        if (std::find(finding.subjects.begin(), finding.subjects.end(), subject) ==
            finding.subjects.end()) {
            finding.subjects.push_back(subject);
        }
    }
    finding.place = built.blocks[block].ports[portIndex].mouth;
    if (port.accepts.empty()) {
        finding.verdict = Verdict::cannotTell;
        finding.citation = sectionFor(built, Rule::listingAndInstructions);
        finding.missing = {"wire range of " + head};
        finding.working = sentence(head + " holds " + occupantsText(built, occupants) +
                                   ", and what it takes is not stated");
        return finding;
    }
    tellOutcome(finding, built, port, occupants, head);
    return finding;
}

void ofBlock(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t block) {
    for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
        const auto occupants = facts.occupancy.of(block, port);
        if (!occupants.empty()) {
            findings.push_back(findingFor(built, block, port, occupants));
        }
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::block, reads::kBlocks, ofBlock}});

}  // namespace

std::span<const Section> portSuitsConductorSections() {
    return kSections;
}

std::vector<Finding> checkPortSuitsConductor(const BuiltLayout& built) {
    return runChecks(built, {Check::portSuitsConductor});
}

}  // namespace gw::checks
