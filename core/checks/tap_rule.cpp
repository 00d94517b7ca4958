#include "checks/tap_rule.h"

#include <algorithm>
#include <array>

#include "base/tolerance.h"
#include "checks/circuit_ampacity.h"
#include "checks/support.h"
#include "checks/units.h"

/// The arithmetic of the tap rule every tap claims: its length, its ampacity against the device
/// ahead and against its own, and that it is not tapped from a tap.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Role;
using layout::TapRule;
using standards::Rule;

/// What a rule asks. Source: NFPA 70 240.21(B)(1), (2), (4) and (5).
struct Terms {
    Rule rule;
    std::optional<double> longest{};        ///< inches, lug to lug
    std::optional<double> fraction{};       ///< of the device ahead
    std::vector<std::string> unstatable{};  ///< asked too, and the layout cannot say it
};

Terms termsOf(TapRule rule) {
    constexpr double kFoot = 12.0;
    switch (rule) {
        case TapRule::none:
            return {Rule::tapDefinition};
        case TapRule::tenFoot:
            return {Rule::tenFootTap, 10.0 * kFoot, 1.0 / 10.0};
        case TapRule::twentyFiveFoot:
            return {Rule::twentyFiveFootTap, 25.0 * kFoot, 1.0 / 3.0};
        case TapRule::highBay:
            return {Rule::highBayTap,
                    100.0 * kFoot,
                    1.0 / 3.0,
                    {"whether the building is a high-bay manufacturing building",
                     "whether qualified persons alone service it",
                     "the horizontal part of the length and the height of the tap"}};
        case TapRule::outside:
            return {Rule::outsideTap,
                    std::nullopt,
                    std::nullopt,
                    {"whether the conductors are outdoors except at their end",
                     "where the disconnect is"}};
        case TapRule::serviceConductors:
            break;
    }
    return {Rule::tapDefinition};
}

/// A tap, with what it is tapped from.
struct Tap {
    const BuiltLayout& built;
    const Links& links;
    std::size_t circuit;
    std::optional<std::size_t> feeder;
    CircuitAmpacity ampacity;

    const layout::Circuit& meant() const { return built.layout.circuits[circuit]; }
    const layout::Circuit& ahead() const { return built.layout.circuits[given(feeder)]; }
    std::string name() const { return circuitName(built, circuit); }
};

Finding findingFor(const Tap& tap, Rule rule) {
    Finding finding;
    finding.check = Check::tapRule;
    finding.citation = sectionFor(tap.built, rule);
    finding.subjects = {tap.meant().id};
    const auto& path = tap.built.conductors[given(tap.ampacity.conductor)].built.path;
    finding.place = path.pointAt(path.length().in() / 2.0);
    return finding;
}

Finding cannotTell(Finding finding, std::string working, std::vector<std::string> missing) {
    finding.verdict = Verdict::cannotTell;
    finding.working = sentence(std::move(working));
    finding.missing = std::move(missing);
    return finding;
}

std::string ruleName(const Tap& tap) {
    return std::string(layout::tapRuleText(given(tap.meant().tapRule))) + " rule";
}

// ---- length ---------------------------------------------------------------------------------

Finding lengthFinding(const Tap& tap, const Terms& terms) {
    Finding finding = findingFor(tap, terms.rule);
    RunLength longest;
    std::vector<std::size_t> unstated;
    for (const PhaseRuns& runs : tap.links.runs[tap.circuit]) {
        for (const auto& pieces : runs.sets) {
            const RunLength run = runLength(tap.built, pieces);
            unstated.insert(unstated.end(), run.unstated.begin(), run.unstated.end());
            if (run.total() > longest.total()) {
                longest = run;
            }
        }
    }
    judge(finding, inches(longest.total()), inches(given(terms.longest)), Bound::atMost);
    finding.working =
        sentence(tap.name() + ": its longest conductor is " + inText(longest.drawn) +
                 " in the gutter and " + inText(longest.raceways) + " in raceways, together " +
                 inText(longest.total()) + ", where the " + ruleName(tap) + " allows " +
                 inText(given(terms.longest)) + "; inside the equipment not judged");
    if (finding.verdict == Verdict::meets && !unstated.empty()) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = racewayLengthsOf(tap.built, unstated);
    }
    return finding;
}

// ---- ampacity -------------------------------------------------------------------------------

/// Whether the ampacity is at least `needed`, or what is missing to tell.
Finding atLeastFinding(const Tap& tap, Finding finding, double needed, const std::string& what) {
    judgeAmpacity(finding, tap.ampacity, [&](double carried) { return atLeast(carried, needed); });
    finding.measured = amperes(tap.ampacity.least);
    finding.limit = amperes(needed);
    finding.margin = marginOf(*finding.measured, *finding.limit, Bound::atLeast);
    finding.working =
        sentence(tap.name() + ": " + tap.ampacity.working + ": " + ampereText(tap.ampacity.least) +
                 ", where " + ampereText(needed) + " is asked, " + what);
    return finding;
}

/// Names of devices and of the facts of the conductors that are missing.
std::vector<std::string> missingWith(const Tap& tap,
                                     const layout::Circuit& circuit,
                                     const std::string& name) {
    auto missing = tap.ampacity.missing;
    if (!circuit.deviceAmperes) {
        missing.insert(missing.begin(), "device of " + name);
    }
    return missing;
}

Finding fractionFinding(const Tap& tap, const Terms& terms) {
    const std::string feeder = circuitName(tap.built, given(tap.feeder));
    Finding finding = findingFor(tap, terms.rule);
    auto missing = missingWith(tap, tap.ahead(), feeder);
    if (!missing.empty()) {
        return cannotTell(finding, tap.name() + ": " + missing.front() + " is not stated", missing);
    }
    const double ahead = given(tap.ahead().deviceAmperes);
    const double fraction = given(terms.fraction);
    return atLeastFinding(
        tap,
        std::move(finding),
        ahead * fraction,
        "1/" + units::formatDecimal(1.0 / fraction, 0) + " of the " + ampereText(ahead) + " ahead");
}

Finding deviceFinding(const Tap& tap) {
    Finding finding = findingFor(tap, Rule::tapNoNextSizeUp);
    auto missing = missingWith(tap, tap.meant(), tap.name());
    if (!missing.empty()) {
        return cannotTell(finding, tap.name() + ": " + missing.front() + " is not stated", missing);
    }
    return atLeastFinding(tap,
                          std::move(finding),
                          given(tap.meant().deviceAmperes),
                          "its device, without the next size up");
}

// ---- what it is tapped from -----------------------------------------------------------------

bool isTap(const layout::Circuit& circuit) {
    const bool claims = circuit.tapRule && *circuit.tapRule != TapRule::none &&
                        *circuit.tapRule != TapRule::serviceConductors;
    return circuit.role == Role::tap || claims;
}

Finding sourceFinding(const Tap& tap) {
    const std::string feeder = circuitName(tap.built, given(tap.feeder));
    Finding finding = findingFor(tap, Rule::tapFromTap);
    finding.subjects.emplace_back(tap.ahead().id);
    const bool service = tap.links.areServiceConductors(given(tap.feeder));
    if (service) {
        finding.verdict = Verdict::caution;
        finding.citation = sectionFor(tap.built, Rule::tapDefinition);
        finding.working =
            sentence(tap.name() + " claims the " + ruleName(tap) + " and is tapped from " + feeder +
                     ", whose conductors are service conductors: the rule for these applies");
        return finding;
    }
    finding.verdict = isTap(tap.ahead()) ? Verdict::breach : Verdict::meets;
    finding.working = sentence(
        tap.name() + " is tapped from " + feeder +
        (isTap(tap.ahead()) ? ", itself a tap: no tap from a tap" : ", which is not a tap itself"));
    return finding;
}

// ---- the rules ------------------------------------------------------------------------------

/// Tapped from service conductors: no length, no fraction. The rest is judged with the ampacity.
Finding serviceFinding(const Tap& tap) {
    Finding finding = findingFor(tap, Rule::tapDefinition);
    if (!tap.feeder && tap.meant().role != Role::service) {
        return cannotTell(finding,
                          tap.name() + ": what it is tapped from is not stated",
                          {"what " + tap.name() + " is tapped from"});
    }
    const bool service = tap.links.areServiceConductors(tap.circuit) ||
                         (tap.feeder && tap.links.areServiceConductors(*tap.feeder));
    finding.verdict = service ? Verdict::meets : Verdict::breach;
    finding.working =
        sentence(tap.name() + " claims to be of service conductors and is" +
                 (service ? ": no tap rule binds it, its ampacity is judged by load and device"
                          : " not: it is tapped behind an overcurrent device"));
    return finding;
}

/// Claims no rule: then the device ahead has to protect it.
Finding noRuleFinding(const Tap& tap) {
    Finding finding = findingFor(tap, Rule::tapDefinition);
    auto missing = missingWith(tap, tap.ahead(), circuitName(tap.built, given(tap.feeder)));
    if (!missing.empty()) {
        return cannotTell(finding, tap.name() + ": " + missing.front() + " is not stated", missing);
    }
    return atLeastFinding(tap,
                          std::move(finding),
                          given(tap.ahead().deviceAmperes),
                          "the device ahead, as it claims no tap rule");
}

void addRule(std::vector<Finding>& findings, const Tap& tap) {
    const Terms terms = termsOf(given(tap.meant().tapRule));
    findings.push_back(sourceFinding(tap));
    if (terms.longest) {
        findings.push_back(lengthFinding(tap, terms));
    }
    if (terms.fraction) {
        findings.push_back(fractionFinding(tap, terms));
    }
    findings.push_back(deviceFinding(tap));
    if (!terms.unstatable.empty()) {
        findings.push_back(cannotTell(
            findingFor(tap, terms.rule),
            tap.name() + ": the " + ruleName(tap) + " asks for more than a layout can state",
            terms.unstatable));
    }
}

void addTap(std::vector<Finding>& findings, const Tap& tap) {
    const auto& rule = tap.meant().tapRule;
    if (!rule) {
        findings.push_back(cannotTell(findingFor(tap, Rule::taps),
                                      tap.name() + " is a tap, and by which rule is not stated",
                                      {"tap rule of " + tap.name()}));
        return;
    }
    if (*rule == TapRule::serviceConductors) {
        findings.push_back(serviceFinding(tap));
        return;
    }
    if (!tap.feeder) {
        findings.push_back(cannotTell(findingFor(tap, Rule::taps),
                                      tap.name() + ": what it is tapped from is not stated",
                                      {"what " + tap.name() + " is tapped from"}));
        return;
    }
    if (*rule == TapRule::none) {
        findings.push_back(noRuleFinding(tap));
        return;
    }
    addRule(findings, tap);
}

/// A tap by its role, or whatever claims a rule.
bool concerns(const layout::Circuit& circuit) {
    return circuit.role == Role::tap ||
           (circuit.tapRule && *circuit.tapRule != TapRule::none && circuit.role != Role::service);
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t circuit) {
    if (!concerns(built.layout.circuits[circuit])) {
        return;
    }
    const Tap tap{built,
                  facts.links,
                  circuit,
                  facts.links.joins[circuit],
                  circuitAmpacity(built, facts, circuit)};
    if (tap.ampacity.conductor) {
        addTap(findings, tap);
    }
}

constexpr auto kSections =
    std::to_array<Section>({{Unit::circuit, reads::kPaths | reads::kCarrying, ofCircuit}});

}  // namespace

bool isJudgedByTapRule(const layout::Circuit& circuit) {
    const auto& rule = circuit.tapRule;
    return concerns(circuit) && circuit.joins && rule && *rule != TapRule::none &&
           *rule != TapRule::serviceConductors;
}

std::span<const Section> tapRuleSections() {
    return kSections;
}

std::vector<Finding> checkTapRule(const BuiltLayout& built) {
    return runChecks(built, {Check::tapRule});
}

}  // namespace gw::checks
