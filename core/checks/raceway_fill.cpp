#include <algorithm>
#include <array>
#include <cmath>

#include "base/contract.h"
#include "base/tolerance.h"
#include "checks/diameters.h"
#include "checks/entry_users.h"
#include "checks/fill_support.h"
#include "checks/support.h"
#include "checks/units.h"
#include "standards/tables.h"

/// The area of the conductors that share a raceway, against the area inside it.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using standards::Cited;

/// inches. A raceway no longer than this is a nipple. Source: NFPA 70 Chapter 9 Table 1 note 4.
constexpr double kLongestNipple = 24.0;

/// The areas, in square inches, of the conductors in one raceway.
struct Wires {
    std::vector<double> areas;
    double total = 0.0;

    void add(double area) {
        areas.push_back(area);
        total += area;
    }
    bool alike() const {
        return std::all_of(areas.begin(), areas.end(), [&](double area) {
            return std::abs(area - areas.front()) <= kLimitSlack;
        });
    }
    int count() const { return static_cast<int>(areas.size()); }
};

/// What one raceway holds and may hold.
struct Raceway {
    std::size_t entry = 0;
    std::vector<std::size_t> assumed;  ///< users whose diameter is not known
    Wires most;                        ///< those by the largest published for their size
    Wires least;                       ///< those by their metal alone
    double inside = 0.0;               ///< square inches
    std::optional<bool> nipple;
};

Cited<double> allowedPercent(const BuiltLayout& built, const Wires& wires, bool nipple) {
    auto found = standards::racewayFillPercent(wires.count(), nipple, built.layout.edition);
    CONTRACT(found.has_value());
    return *found;
}

/// How many of one size the percentage makes room for, rounded up from 0.8 on. Source: NFPA 70
/// Chapter 9 Table 1 note 7, from memory.
int countAllowed(double fit) {
    const double whole = std::floor(fit);
    return static_cast<int>(whole) + (atLeast(fit - whole, 0.8) ? 1 : 0);
}

double howManyFit(const Wires& wires, double inside, double allowed) {
    return inside * allowed / 100.0 / wires.areas.front();
}

bool fitsByArea(const Wires& wires, double inside, double allowed) {
    return holds(percent(wires.total / inside * 100.0), percent(allowed), Bound::atMost);
}

/// Conductors of one size too many by area, and yet as many as the rounded count allows. A nipple
/// gets its 60 % and no rounding: note 4 names a share of the area, no number of conductors.
bool fitsByCountOnly(const Wires& wires, double inside, double allowed, bool nipple) {
    return !nipple && wires.count() > 2 && wires.alike() && !fitsByArea(wires, inside, allowed) &&
           wires.count() <= countAllowed(howManyFit(wires, inside, allowed));
}

bool fits(const BuiltLayout& built, const Wires& wires, double inside, bool nipple) {
    const double allowed = allowedPercent(built, wires, nipple).value;
    return fitsByArea(wires, inside, allowed) || fitsByCountOnly(wires, inside, allowed, nipple);
}

bool mayBeNipple(const Raceway& raceway) {
    return raceway.nipple.value_or(true);
}
bool isSurelyNipple(const Raceway& raceway) {
    return raceway.nipple.value_or(false);
}

Verdict verdictOf(const BuiltLayout& built, const Raceway& raceway) {
    if (fits(built, raceway.most, raceway.inside, isSurelyNipple(raceway))) {
        return Verdict::meets;
    }
    return fits(built, raceway.least, raceway.inside, mayBeNipple(raceway)) ? Verdict::cannotTell
                                                                            : Verdict::breach;
}

/// What would settle it: the length where a nipple's limit would do for the thickest or the
/// thinnest they may be, the insulation where their thickness makes the difference.
std::vector<std::string> missingFor(const BuiltLayout& built, const Raceway& raceway) {
    std::vector<std::string> missing;
    if (!raceway.nipple) {
        missing.push_back("length of the raceway at " + entryName(built, raceway.entry));
    }
    const auto inputs = assumedInputs(built, raceway.assumed);
    missing.insert(missing.end(), inputs.begin(), inputs.end());
    return missing;
}

Finding emptyFinding(const BuiltLayout& built, std::size_t entry) {
    Finding finding;
    finding.check = Check::racewayFill;
    finding.subjects = {built.layout.entries[entry].id};
    finding.place = built.entries[entry].centre;
    return finding;
}

Finding unstated(const BuiltLayout& built,
                 std::size_t entry,
                 std::size_t wires,
                 std::vector<std::string> missing) {
    Finding finding = emptyFinding(built, entry);
    finding.verdict = Verdict::cannotTell;
    finding.citation = sectionFor(built, standards::Rule::racewayFill);
    finding.working =
        sentence(entryName(built, entry) + " holds " + counted(wires, "conductor", "conductors") +
                 ", and how wide its raceway is inside is not known");
    finding.missing = std::move(missing);
    return finding;
}

std::string racewayText(const layout::Entry& entry) {
    return std::string(standards::racewayText(given(entry.raceway))) + " " +
           std::string(given(entry.tradeSize).text());
}

std::string lengthText(const BuiltLayout& built, const Raceway& raceway) {
    if (!raceway.nipple) {
        return ", its length not stated";
    }
    return *raceway.nipple
               ? " in a nipple of " +
                     inText(given(built.layout.entries[raceway.entry].racewayLength).in())
               : "";
}

std::string workingOf(const BuiltLayout& built, const Raceway& raceway, double allowed) {
    const Wires& wires = raceway.most;
    return entryName(built, raceway.entry) + ": " +
           counted(wires.areas.size(), "conductor takes ", "conductors take ") +
           toText(squareInches(wires.total)) + " of " + toText(squareInches(raceway.inside)) +
           " in " + racewayText(built.layout.entries[raceway.entry]) + ", " +
           toText(percent(wires.total / raceway.inside * 100.0)) + ", where " +
           toText(percent(allowed)) + " is allowed" + lengthText(built, raceway) +
           assumedClause(built, raceway.assumed);
}

/// As many of one size as the rounded count allows: counted, not measured.
void judgeByCount(Finding& finding, const BuiltLayout& built, const Raceway& raceway, double fit) {
    judge(finding,
          count(raceway.most.areas.size()),
          count(static_cast<std::size_t>(countAllowed(fit))),
          Bound::atMost);
    finding.citation = standards::necCitation(
        built.layout.edition, "Chapter 9 Table 1 note 7", standards::Basis::memory);
}

Finding findingFor(const BuiltLayout& built, const Raceway& raceway) {
    const bool nipple = isSurelyNipple(raceway);
    const auto allowed = allowedPercent(built, raceway.most, nipple);
    Finding finding = emptyFinding(built, raceway.entry);
    finding.citation = allowed.source;
    finding.working = workingOf(built, raceway, allowed.value);
    judge(finding,
          percent(raceway.most.total / raceway.inside * 100.0),
          percent(allowed.value),
          Bound::atMost);
    if (fitsByCountOnly(raceway.most, raceway.inside, allowed.value, nipple)) {
        const double fit = howManyFit(raceway.most, raceway.inside, allowed.value);
        judgeByCount(finding, built, raceway, fit);
        finding.working += "; " + units::formatDecimal(fit, 2) + " of one size count as " +
                           std::to_string(countAllowed(fit));
    }
    finding.working = sentence(finding.working);
    finding.verdict = verdictOf(built, raceway);
    if (finding.verdict == Verdict::cannotTell) {
        finding.missing = missingFor(built, raceway);
    }
    return finding;
}

std::vector<std::string> racewayMissing(const BuiltLayout& built, std::size_t entry) {
    const auto& one = built.layout.entries[entry];
    std::vector<std::string> missing;
    if (!one.raceway) {
        missing.push_back("raceway type of " + entryName(built, entry));
    }
    if (!one.tradeSize) {
        missing.push_back("trade size of " + entryName(built, entry));
    }
    return missing;
}

Raceway racewayOf(const BuiltLayout& built,
                  std::size_t entry,
                  const std::vector<std::size_t>& users,
                  double inside) {
    Raceway raceway;
    raceway.entry = entry;
    raceway.inside = inside;
    for (const std::size_t i : users) {
        const auto& conductor = built.conductors[i];
        raceway.most.add(conductor.area.in2());
        if (conductor.assumed.empty()) {
            raceway.least.add(conductor.area.in2());
            continue;
        }
        raceway.assumed.push_back(i);
        raceway.least.add(
            units::SquareInches::ofCircle(units::Inches::of(leastBareDiameter(
                                              built.layout.conductors[i], built.layout.edition)))
                .in2());
    }
    if (const auto& length = built.layout.entries[entry].racewayLength) {
        raceway.nipple = atMost(length->in(), kLongestNipple);
    }
    return raceway;
}

Finding findingAt(const BuiltLayout& built,
                  std::size_t entry,
                  const std::vector<std::size_t>& users) {
    auto missing = racewayMissing(built, entry);
    if (!missing.empty()) {
        return unstated(built, entry, users.size(), std::move(missing));
    }
    const auto& one = built.layout.entries[entry];
    const auto dimensions = standards::racewayDimensions(
        given(one.raceway), given(one.tradeSize), built.layout.edition);
    if (!dimensions) {
        return unstated(
            built,
            entry,
            users.size(),
            {"a published area for " + racewayText(one) + " at " + entryName(built, entry)});
    }
    return findingFor(built, racewayOf(built, entry, users, dimensions->value.area.in2()));
}

void ofEntry(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t entry) {
    const auto& users = facts.links.atEntries[entry];
    if (!users.empty()) {
        findings.push_back(findingAt(built, entry, users));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::entry, reads::kNothing, ofEntry}});

}  // namespace

std::span<const Section> racewayFillSections() {
    return kSections;
}

std::vector<Finding> checkRacewayFill(const BuiltLayout& built) {
    return runChecks(built, {Check::racewayFill});
}

}  // namespace gw::checks
