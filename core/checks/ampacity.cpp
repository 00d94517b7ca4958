#include <algorithm>
#include <array>

#include "base/tolerance.h"
#include "checks/circuit_ampacity.h"
#include "checks/support.h"
#include "checks/tap_rule.h"
#include "checks/units.h"

/// What the conductors of every circuit may carry, against its device and its load.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Role;
using standards::Rule;

/// Standard ratings of devices, amperes. Source: NFPA 70 240.6(A), from memory.
constexpr std::array kRatings = {15.0,   20.0,   25.0,   30.0,   35.0,   40.0,   45.0,   50.0,
                                 60.0,   70.0,   80.0,   90.0,   100.0,  110.0,  125.0,  150.0,
                                 175.0,  200.0,  225.0,  250.0,  300.0,  350.0,  400.0,  450.0,
                                 500.0,  600.0,  700.0,  800.0,  1000.0, 1200.0, 1600.0, 2000.0,
                                 2500.0, 3000.0, 4000.0, 5000.0, 6000.0};

/// Source: NFPA 70 240.4(B)(3).
constexpr double kLastRoundedUp = 800.0;

bool mayRoundUp(const BuiltLayout& built, const Links& links, std::size_t circuit) {
    return built.layout.circuits[circuit].role == Role::feeder ||
           links.areServiceConductors(circuit);
}

/// The largest device for so many amperes.
double largestDevice(double amperes, bool roundUp) {
    if (!roundUp) {
        return amperes;
    }
    const auto next = std::find_if(
        kRatings.begin(), kRatings.end(), [&](double rating) { return atMost(amperes, rating); });
    return next != kRatings.end() && *next <= kLastRoundedUp ? std::max(*next, amperes) : amperes;
}

Finding findingFor(const BuiltLayout& built, std::size_t circuit, const CircuitAmpacity& ampacity) {
    Finding finding;
    finding.check = Check::ampacity;
    finding.citation = sectionFor(built, Rule::ampacity);
    finding.subjects = {built.layout.circuits[circuit].id,
                        built.layout.conductors[given(ampacity.conductor)].id};
    const auto& path = built.conductors[given(ampacity.conductor)].built.path;
    finding.place = path.pointAt(path.length().in() / 2.0);
    return finding;
}

/// What is left to tell where a number is not stated.
void cannotTell(Finding& finding,
                const BuiltLayout& built,
                std::size_t circuit,
                std::vector<std::string> missing) {
    finding.verdict = Verdict::cannotTell;
    finding.working =
        sentence(circuitName(built, circuit) + ": " + listed(missing) + " not stated");
    constexpr std::size_t kTold = 3;
    if (missing.size() > kTold) {
        finding.working =
            sentence(circuitName(built, circuit) + ": " + counted(missing.size(), "fact", "facts") +
                     " not stated, " + missing.front() + " first");
    }
    finding.missing = std::move(missing);
}

/// Writes the numbers; the verdict is that of judgeAmpacity.
void tell(Finding& finding, double measured, double limit, std::string working) {
    finding.measured = amperes(measured);
    finding.limit = amperes(limit);
    finding.margin = marginOf(*finding.measured, *finding.limit, Bound::atMost);
    finding.working = sentence(std::move(working));
}

// ---- load -----------------------------------------------------------------------------------

Finding loadFinding(const BuiltLayout& built,
                    std::size_t circuit,
                    const CircuitAmpacity& ampacity) {
    Finding finding = findingFor(built, circuit, ampacity);
    const auto& load = built.layout.circuits[circuit].loadAmperes;
    auto missing = ampacity.missing;
    if (!load) {
        missing.insert(missing.begin(), "load of " + circuitName(built, circuit));
    }
    if (!missing.empty()) {
        cannotTell(finding, built, circuit, missing);
        return finding;
    }
    judgeAmpacity(finding, ampacity, [&](double carried) { return atMost(*load, carried); });
    tell(finding,
         *load,
         ampacity.least,
         circuitName(built, circuit) + ": " + ampacity.working + ": " + ampereText(ampacity.least) +
             " for a load of " + ampereText(*load));
    return finding;
}

// ---- device ---------------------------------------------------------------------------------

/// Two to six disconnects together may protect service conductors where the load fits them. Source:
/// NFPA 70 230.90(A) Exception 3.
bool protectedByDisconnects(const BuiltLayout& built, const Links& links, std::size_t circuit) {
    const auto& circuits = built.layout.circuits;
    const auto& fed = links.joinedBy[circuit];
    const auto disconnects = std::count_if(fed.begin(), fed.end(), [&](std::size_t other) {
        return circuits[other].role != Role::bonding;
    });
    return circuits[circuit].role == Role::service && disconnects >= 2;
}

/// Devices for small conductors, amperes. Source: NFPA 70 240.4(D).
std::optional<double> smallLimit(const layout::Conductor& conductor) {
    const bool copper = conductor.metal == standards::Metal::copper;
    const std::string_view size = conductor.size.label();
    if (size == "14") {
        return 15.0;
    }
    if (size == "12") {
        return copper ? 20.0 : 15.0;
    }
    if (size == "10") {
        return copper ? 30.0 : 25.0;
    }
    return std::nullopt;
}

double deviceLimit(const BuiltLayout& built,
                   const Links& links,
                   std::size_t circuit,
                   const CircuitAmpacity& ampacity) {
    const double largest = largestDevice(ampacity.least, mayRoundUp(built, links, circuit));
    const Role role = built.layout.circuits[circuit].role;
    const auto small = smallLimit(built.layout.conductors[given(ampacity.conductor)]);
    const bool bound = role == Role::feeder || role == Role::branch;
    return bound && small ? std::min(largest, *small) : largest;
}

/// A branch circuit may be rounded up too, but not where it feeds several receptacles.
void doubtBranch(Finding& finding,
                 const BuiltLayout& built,
                 std::size_t circuit,
                 const CircuitAmpacity& ampacity) {
    const auto& one = built.layout.circuits[circuit];
    if (finding.verdict == Verdict::breach && one.role == Role::branch &&
        !smallLimit(built.layout.conductors[given(ampacity.conductor)]) &&
        atMost(given(one.deviceAmperes), largestDevice(ampacity.most, true))) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {"whether " + circuitName(built, circuit) +
                           " feeds more than one receptacle"};
    }
}

void judgeDevice(Finding& finding,
                 const BuiltLayout& built,
                 const Links& links,
                 std::size_t circuit,
                 const CircuitAmpacity& ampacity) {
    const double device = given(built.layout.circuits[circuit].deviceAmperes);
    const double limit = deviceLimit(built, links, circuit, ampacity);
    judgeAmpacity(finding, ampacity, [&](double carried) {
        CircuitAmpacity assumed = ampacity;
        assumed.least = carried;
        return atMost(device, deviceLimit(built, links, circuit, assumed));
    });
    doubtBranch(finding, built, circuit, ampacity);
    const bool rounded = limit > ampacity.least;
    tell(finding,
         device,
         limit,
         circuitName(built, circuit) + ": " + ampacity.working + ": " + ampereText(ampacity.least) +
             " for a device of " + ampereText(device) +
             (rounded ? ", " + ampereText(limit) + " being the next size up" : ""));
}

Finding deviceFinding(const BuiltLayout& built,
                      const Links& links,
                      std::size_t circuit,
                      const CircuitAmpacity& ampacity) {
    Finding finding = findingFor(built, circuit, ampacity);
    const bool service = links.areServiceConductors(circuit);
    finding.citation = sectionFor(built, service ? Rule::serviceOverload : Rule::nextSizeUp);
    if (built.layout.circuits[circuit].role == Role::tap && !service) {
        finding.citation = sectionFor(built, Rule::tapNoNextSizeUp);
    }
    const auto& one = built.layout.circuits[circuit];
    auto missing = ampacity.missing;
    if (!one.deviceAmperes) {
        missing.insert(missing.begin(), "device of " + circuitName(built, circuit));
    }
    if (missing.empty()) {
        judgeDevice(finding, built, links, circuit, ampacity);
    } else {
        cannotTell(finding, built, circuit, missing);
    }
    const bool loadFits =
        ampacity.missing.empty() && one.loadAmperes && atMost(*one.loadAmperes, ampacity.least);
    if (finding.verdict != Verdict::meets && loadFits &&
        protectedByDisconnects(built, links, circuit)) {
        finding.verdict = Verdict::meets;
        finding.missing.clear();
        tell(finding,
             *one.loadAmperes,
             ampacity.least,
             circuitName(built, circuit) +
                 ": its disconnects together protect it, as its load of " +
                 ampereText(*one.loadAmperes) + " is within " + ampereText(ampacity.least));
    }
    return finding;
}

/// A tap is compared with its device by its tap rule, in the same way.
bool isJudgedAsTap(const BuiltLayout& built, const Links& links, std::size_t circuit) {
    const auto& one = built.layout.circuits[circuit];
    return one.role == Role::tap && !links.areServiceConductors(circuit) && isJudgedByTapRule(one);
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t circuit) {
    if (built.layout.circuits[circuit].role == Role::bonding) {
        return;
    }
    const auto ampacity = circuitAmpacity(built, facts, circuit);
    if (ampacity.conductor) {
        if (!isJudgedAsTap(built, facts.links, circuit)) {
            findings.push_back(deviceFinding(built, facts.links, circuit, ampacity));
        }
        findings.push_back(loadFinding(built, circuit, ampacity));
    }
}

constexpr auto kSections =
    std::to_array<Section>({{Unit::circuit, reads::kPaths | reads::kCarrying, ofCircuit}});

}  // namespace

std::span<const Section> ampacitySections() {
    return kSections;
}

std::vector<Finding> checkAmpacity(const BuiltLayout& built) {
    return runChecks(built, {Check::ampacity});
}

}  // namespace gw::checks
