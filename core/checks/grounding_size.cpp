#include <algorithm>
#include <array>

#include "checks/circuit_ampacity.h"
#include "checks/metal_area.h"
#include "checks/support.h"
#include "checks/units.h"
#include "standards/tables.h"

/// Grounding conductors and bonding jumpers are large enough: on the line side by the metal of the
/// ungrounded conductors, on the load side by the device ahead.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;
using layout::Role;
using standards::Rule;

/// A grounding conductor, and what belongs to its circuit.
struct Ground {
    const BuiltLayout& built;
    const Links& links;
    std::size_t conductor;
    std::size_t circuit;

    const layout::Conductor& drawn() const { return built.layout.conductors[conductor]; }
    const layout::Circuit& of() const { return built.layout.circuits[circuit]; }
};

Finding startOf(const Ground& ground, Rule rule) {
    Finding finding;
    finding.check = Check::groundingSize;
    finding.subjects = {ground.drawn().id};
    finding.place = ground.built.conductors[ground.conductor].built.path.start();
    finding.citation = sectionFor(ground.built, rule);
    return finding;
}

std::string nameOf(const Ground& ground) {
    return conductorName(ground.built, ground.conductor) + ", " + ground.drawn().size.text();
}

Finding unknown(const Ground& ground, Rule rule, const std::vector<std::string>& missing) {
    Finding finding = startOf(ground, rule);
    finding.verdict = Verdict::cannotTell;
    finding.missing = missing;
    finding.working =
        sentence("how large " + nameOf(ground) + ", has to be is not known: " + listed(missing) +
                 (missing.size() == 1 ? " is" : " are") + " not stated");
    return finding;
}

// ---- line side: by the metal of the ungrounded conductors -------------------------------------

bool shareOne(const std::vector<std::size_t>& some, const std::vector<std::size_t>& others) {
    return std::find_first_of(some.begin(), some.end(), others.begin(), others.end()) != some.end();
}

/// Of the circuits named, those that share an entry with the conductor; all where it has none.
std::vector<std::size_t> companions(const Ground& ground,
                                    const std::vector<std::size_t>& circuits) {
    std::vector<std::size_t> found;
    const auto entries = entriesOf(ground.built.conductors[ground.conductor]);
    for (const std::size_t circuit : circuits) {
        const auto& members = ground.links.members[circuit];
        std::copy_if(members.begin(), members.end(), std::back_inserter(found), [&](std::size_t i) {
            return entries.empty() || shareOne(entriesOf(ground.built.conductors[i]), entries);
        });
    }
    std::sort(found.begin(), found.end());  // as the layout has them
    return found;
}

Finding lineSide(const Ground& ground, const std::vector<std::size_t>& circuits, Rule rule) {
    const auto area = ungroundedArea(ground.built, companions(ground, circuits));
    if (!area) {
        return unknown(ground, rule, {"the ungrounded conductors of its circuit"});
    }
    if (!ground.drawn().metal) {
        return unknown(ground, rule, {"metal of " + conductorName(ground.built, ground.conductor)});
    }
    Finding finding = startOf(ground, rule);
    judgeJumper(
        finding, {ground.drawn().size, *ground.drawn().metal}, *area, ground.built.layout.edition);
    finding.working =
        sentence(nameOf(ground) + " " + std::string(standards::metalText(*ground.drawn().metal)) +
                 ": " + neededText(*area, *ground.drawn().metal, ground.built));
    return finding;
}

/// Service circuits that are not tapped from another.
std::vector<std::size_t> services(const BuiltLayout& built) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < built.layout.circuits.size(); ++i) {
        if (built.layout.circuits[i].role == Role::service && !built.layout.circuits[i].joins) {
            found.push_back(i);
        }
    }
    return found;
}

// ---- load side: by the device ahead -----------------------------------------------------------

bool isTapped(const layout::Circuit& circuit) {
    return circuit.role == Role::tap ||
           (circuit.joins && circuit.tapRule && *circuit.tapRule != layout::TapRule::none);
}

/// The circuit whose device is ahead: of a tap, that which it is tapped from, and so on up; of any
/// other its own. Empty where a tap does not say what it is tapped from.
std::optional<std::size_t> aheadOf(const Ground& ground, std::size_t circuit) {
    if (!isTapped(ground.built.layout.circuits[circuit])) {
        return circuit;
    }
    const auto& joined = ground.links.joins[circuit];
    return joined ? aheadOf(ground, *joined) : std::nullopt;
}

/// The largest ungrounded conductor of the circuit: a grounding conductor need not be larger.
std::optional<units::WireSize> largestPhase(const Ground& ground) {
    std::optional<units::WireSize> largest;
    for (const std::size_t i : ground.links.members[ground.circuit]) {
        const auto& conductor = ground.built.layout.conductors[i];
        const bool counts = conductor.phase != Phase::n && conductor.phase != Phase::g;
        if (counts && (!largest || conductor.size > *largest)) {
            largest = conductor.size;
        }
    }
    return largest;
}

Finding loadSide(const Ground& ground) {
    const auto& built = ground.built;
    const auto ahead = aheadOf(ground, ground.circuit);
    const Rule rule = ahead != ground.circuit ? Rule::equipmentGroundingTaps
                      : ground.of().sets > 1  ? Rule::equipmentGroundingParallel
                                              : Rule::equipmentGrounding;
    if (!ahead) {
        return unknown(
            ground, rule, {"what " + circuitName(built, ground.circuit) + " is tapped from"});
    }
    const auto& device = built.layout.circuits[*ahead].deviceAmperes;
    std::vector<std::string> missing;
    if (!device) {
        missing.push_back("device of " + circuitName(built, *ahead));
    }
    if (!ground.drawn().metal) {
        missing.push_back("metal of " + conductorName(built, ground.conductor));
    }
    if (!missing.empty()) {
        return unknown(ground, rule, missing);
    }
    const auto table = standards::equipmentGroundingConductor(
        *device, *ground.drawn().metal, built.layout.edition);
    if (!table) {
        return unknown(
            ground, rule, {"what " + ampereText(*device) + " ask: " + table.error().why});
    }
    const auto phase = largestPhase(ground);
    const bool capped = phase && *phase < table->value;
    const auto needed = capped ? *phase : table->value;
    Finding finding = startOf(ground, rule);
    finding.verdict = ground.drawn().size >= needed ? Verdict::meets : Verdict::breach;
    finding.working = sentence(
        nameOf(ground) + " " + std::string(standards::metalText(*ground.drawn().metal)) +
        ": the device of " + ampereText(*device) + " ahead asks " + table->value.text() +
        (capped ? ", and no more than the circuit's own conductors, " + needed.text() : ""));
    return finding;
}

Finding findingFor(const Ground& ground) {
    if (ground.of().role == Role::bonding) {
        return lineSide(ground, services(ground.built), Rule::mainBondingJumper);
    }
    return ground.links.areServiceConductors(ground.circuit)
               ? lineSide(ground, {ground.circuit}, Rule::lineSideJumper)
               : loadSide(ground);
}

/// A jumper between neutral and grounding conductors where no service is: none of this check's.
bool concerns(const Ground& ground) {
    return ground.drawn().phase == Phase::g &&
           (ground.of().role != Role::bonding || !services(ground.built).empty());
}

void ofConductor(std::vector<Finding>& findings,
                 const BuiltLayout& built,
                 const Facts& facts,
                 std::size_t conductor) {
    const Ground ground{built, facts.links, conductor, facts.links.circuitOf[conductor]};
    if (concerns(ground)) {
        findings.push_back(findingFor(ground));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::conductor, reads::kBlocks, ofConductor}});

}  // namespace

std::span<const Section> groundingSizeSections() {
    return kSections;
}

std::vector<Finding> checkGroundingSize(const BuiltLayout& built) {
    return runChecks(built, {Check::groundingSize});
}

}  // namespace gw::checks
