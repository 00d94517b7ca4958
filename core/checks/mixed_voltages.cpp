#include <algorithm>
#include <array>
#include <set>

#include "checks/support.h"
#include "checks/units.h"

/// Every insulated conductor in the gutter is insulated for the highest voltage in it.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using standards::Insulation;

/// Volts. Every type of insulation here is rated for these at least. Source: NFPA 70 Table 310.4
/// (310.104(A) in 2017), from memory.
constexpr int kEveryInsulation = 600;
/// Volts. None of them is rated for more, whatever its print says. Source: the same table, from
/// memory.
constexpr int kNoInsulation = 2000;

/// The highest voltage of the systems that have a conductor in the gutter, and those of which it is
/// not stated. A grounding conductor brings no voltage.
struct Highest {
    std::optional<int> volts;
    std::set<std::string> missing;
};

Highest highestIn(const BuiltLayout& built, const Facts& facts) {
    Highest highest;
    for (std::size_t i = 0; i < built.layout.conductors.size(); ++i) {
        if (built.layout.conductors[i].phase == layout::Phase::g) {
            continue;
        }
        const auto& system = built.layout.systems[facts.links.systemOf[facts.links.circuitOf[i]]];
        if (system.voltsBetweenPhases) {
            highest.volts = std::max(highest.volts.value_or(0), *system.voltsBetweenPhases);
        } else {
            highest.missing.insert("volts between phases of system " + system.id.text());
        }
    }
    return highest;
}

/// What is known of the insulation in the gutter, in the order of ids.
struct Insulated {
    std::vector<std::size_t> stated;
    std::vector<std::size_t> notStated;
    bool none() const { return stated.empty() && notStated.empty(); }
};

Insulated insulatedIn(const BuiltLayout& built, const Facts& facts) {
    Insulated found;
    for (std::size_t i = 0; i < built.layout.conductors.size(); ++i) {
        const auto& insulation = built.layout.conductors[i].insulation;
        if (!insulation) {
            found.notStated.push_back(i);
        } else if (*insulation != Insulation::bare) {
            found.stated.push_back(i);
        }
    }
    facts.links.sortById(found.stated);
    facts.links.sortById(found.notStated);
    return found;
}

void addSubjects(Finding& finding, const BuiltLayout& built, const std::vector<std::size_t>& all) {
    for (const std::size_t i : all) {
        finding.subjects.emplace_back(built.layout.conductors[i].id);
    }
}

Quantity volts(int value) {
    return {static_cast<double>(value), Quantity::Unit::volts};
}

/// Above what every insulation is rated for the print on each conductor has to tell.
void judgeInsulation(Finding& finding,
                     const BuiltLayout& built,
                     const Insulated& insulated,
                     int highest) {
    const bool beyondAll = highest > kNoInsulation;
    judge(finding,
          volts(highest),
          volts(beyondAll ? kNoInsulation : kEveryInsulation),
          Bound::atMost);
    if (finding.verdict == Verdict::breach) {
        addSubjects(finding, built, insulated.stated);
    }
    if (finding.verdict == Verdict::breach && !beyondAll) {
        finding.verdict = Verdict::cannotTell;
        for (const std::size_t i : insulated.stated) {
            finding.missing.push_back("volts that " + conductorName(built, i) + " is marked for");
        }
    }
    for (const std::size_t i : insulated.notStated) {
        finding.missing.push_back("insulation of " + conductorName(built, i));
    }
}

std::string workingOf(const std::optional<int>& highest) {
    if (!highest) {
        return "no voltage between phases is stated of what is in the gutter";
    }
    const std::string said = "the highest voltage in it is " + toText(volts(*highest));
    if (*highest > kNoInsulation) {
        return said + ", and no insulation of these types is rated for more than " +
               toText(volts(kNoInsulation));
    }
    return said + ", where every insulation of these types is rated for " +
           toText(volts(kEveryInsulation)) +
           (*highest > kEveryInsulation ? ", and for more only as marked" : "");
}

void ofGutter(std::vector<Finding>& findings,
              const BuiltLayout& built,
              const Facts& facts,
              std::size_t) {
    const Insulated insulated = insulatedIn(built, facts);
    Highest highest = highestIn(built, facts);
    if (insulated.none() || (!highest.volts && highest.missing.empty())) {
        return;
    }
    Finding finding;
    finding.check = Check::mixedVoltages;
    finding.citation = sectionFor(built, standards::Rule::mixedVoltages);
    if (highest.volts) {
        judgeInsulation(finding, built, insulated, *highest.volts);
    }
    finding.missing.insert(finding.missing.end(), highest.missing.begin(), highest.missing.end());
    if (finding.verdict == Verdict::breach) {
        finding.missing.clear();
    } else if (!finding.missing.empty()) {
        finding.verdict = Verdict::cannotTell;
    }
    finding.working = sentence(workingOf(highest.volts));
    findings.push_back(std::move(finding));
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kNothing, ofGutter}});

}  // namespace

std::span<const Section> mixedVoltagesSections() {
    return kSections;
}

std::vector<Finding> checkMixedVoltages(const BuiltLayout& built) {
    return runChecks(built, {Check::mixedVoltages});
}

}  // namespace gw::checks
