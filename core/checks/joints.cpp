#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "checks/support.h"
#include "checks/units.h"

/// What the blocks join: one phase a block, one system, whole parallel sets, and only circuits that
/// are meant to be joined.
///
/// One mistake is told once. A conductor that does not belong on a block is told at the block, and
/// then neither as missing where it should be nor as an odd number in its circuit; a conductor that
/// lies apart from what its circuit joins is told on the conductor.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Circuit;
using layout::Phase;
using Clash = JointBlock::Clash;

/// What the findings are made from.
struct Joined {
    const BuiltLayout& built;
    const Links& links;
    const JointGraph& graph;
    const Census& census;

    const layout::ConductorId& idOf(std::size_t conductor) const {
        return built.layout.conductors[conductor].id;
    }
};

Joined joinedIn(const BuiltLayout& built, const Facts& facts) {
    return {built, facts.links, facts.joints, facts.census};
}

standards::Citation stated() {
    return asStated("circuits and phases");
}

std::string phaseName(Phase phase) {
    return "phase " + std::string(layout::phaseText(phase));
}

/// "a, b, c and 4 more".
std::string shortList(std::vector<std::string> words) {
    constexpr std::size_t kShown = 4;
    if (words.size() > kShown) {
        const std::size_t more = words.size() - kShown + 1;
        words.resize(kShown - 1);
        words.push_back(std::to_string(more) + " more");
    }
    return listed(words);
}

std::string namesOf(const Joined& at, const std::vector<std::size_t>& conductors) {
    std::vector<std::string> names;
    names.reserve(conductors.size());
    for (const std::size_t i : conductors) {
        names.push_back(conductorName(at.built, i));
    }
    return shortList(names);
}

// ---- blocks ---------------------------------------------------------------------------------

template <class Name>
std::string namesIn(const JointBlock& block, Name name) {
    std::set<std::string> names;
    for (const auto& [net, conductors] : block.nets) {
        names.insert(name(net));
    }
    return listed({names.begin(), names.end()});
}

std::string clashText(const Joined& at, std::size_t index) {
    const JointBlock& block = at.graph.blocks[index];
    const auto& meant = at.built.layout.blocks[index].phase;
    switch (block.clash) {
        case Clash::label:
            return "it is meant for " + phaseName(given(meant)) + " and all it holds is " +
                   phaseName(given(block.carries).phase);
        case Clash::phases:
            return "it joins phases " + namesIn(block, [](const Net& net) {
                       return std::string(layout::phaseText(net.phase));
                   });
        case Clash::systems:
            return "it joins systems " +
                   namesIn(block, [](const Net& net) { return net.system.text(); });
        case Clash::circuits:
            return "it joins circuits " +
                   namesIn(block, [](const Net& net) { return net.family.text(); }) +
                   ", which are not said to be joined";
        case Clash::bondOnPhase:
            return namesOf(at, block.astray) + " joins N and G and lands on a live phase";
        case Clash::none:
            break;
    }
    return {};
}

std::string breachText(const Joined& at, std::size_t index) {
    const JointBlock& block = at.graph.blocks[index];
    std::string text = clashText(at, index);
    if (block.astray.empty() || block.clash == Clash::bondOnPhase) {
        return text;
    }
    return text + (block.carries ? "; astray here: " : "; it holds ") + namesOf(at, block.astray);
}

std::string unsureText(const Joined& at, const JointBlock& block) {
    std::vector<std::string> names;
    for (const std::size_t circuit : block.perhapsBonding) {
        names.push_back(circuitName(at.built, circuit));
    }
    return "it joins N and G, and whether " + listed(names) + " does so on purpose is not stated";
}

std::string fineText(const JointBlock& block) {
    const std::size_t landed = block.conductors.size();
    if (landed < 2) {
        return landed == 0 ? "nothing lands in it" : "only one conductor lands in it";
    }
    return "it joins " + counted(landed, "conductor", "conductors") + ", all of " +
           (block.carries ? phaseName(block.carries->phase) : std::string("bonding circuits"));
}

Finding blockFinding(const Joined& at, std::size_t index) {
    const JointBlock& block = at.graph.blocks[index];
    Finding finding;
    finding.check = Check::joints;
    finding.subjects = {at.built.layout.blocks[index].id};
    finding.place = at.built.blocks[index].body.centre();
    finding.citation = block.clash == Clash::systems ? asStated("systems") : stated();
    const bool besides = block.clash == Clash::label || block.clash == Clash::bondOnPhase;
    judge(finding, count(block.nets.size() + (besides ? 1 : 0)), count(1), Bound::atMost);
    std::string text = fineText(block);
    if (!block.perhapsBonding.empty()) {
        finding.verdict = Verdict::cannotTell;
        text = unsureText(at, block);
        for (const std::size_t circuit : block.perhapsBonding) {
            finding.missing.push_back("whether " + circuitName(at.built, circuit) +
                                      " joins N and G on purpose");
        }
    } else if (block.clash != Clash::none) {
        text = breachText(at, index);
    } else if (block.conductors.size() < 2) {
        finding.verdict = Verdict::caution;
    }
    for (const std::size_t i : block.astray) {
        finding.subjects.emplace_back(at.idOf(i));
    }
    for (const std::size_t circuit : at.census.toldAt[index]) {
        finding.subjects.emplace_back(at.built.layout.circuits[circuit].id);
    }
    finding.working = sentence(blockName(at.built, index) + ": " + text);
    return finding;
}

// ---- circuits -------------------------------------------------------------------------------

/// What is wrong with a circuit by itself.
std::vector<std::string> problemsOf(const Joined& at, std::size_t circuit) {
    std::vector<std::string> problems;
    const auto numberText = [&](const Slot& slot) {
        const auto found = at.census.slots.find(slot);
        return counted(found->second.size(), "conductor", "conductors") + " of " +
               phaseName(slot.phase) + " in set " + std::to_string(slot.set);
    };
    if (const auto swap = at.census.swaps.find(circuit); swap != at.census.swaps.end()) {
        problems.push_back(numberText(swap->second.missing) + ", and " +
                           circuitName(at.built, swap->second.extra.circuit) + " has " +
                           numberText(swap->second.extra));
    }
    const Slot first{circuit, Phase::a, 0};
    for (auto one = at.census.off.lower_bound(first);
         one != at.census.off.end() && one->first.circuit == circuit;
         ++one) {
        problems.push_back(numberText(one->first));
    }
    return problems;
}

/// Phases of the circuit that the one it joins does not have. Grounding conductors may meet others
/// than those.
std::vector<std::string> phasesNotThere(const Joined& at, std::size_t circuit) {
    const auto& joined = at.links.joins[circuit];
    const Circuit& one = at.built.layout.circuits[circuit];
    std::vector<std::string> names;
    if (!joined || one.role == layout::Role::bonding) {
        return names;
    }
    const auto& there = at.built.layout.circuits[*joined].phases;
    for (const Phase phase : one.phases) {
        if (phase != Phase::g && std::find(there.begin(), there.end(), phase) == there.end()) {
            names.push_back(phaseName(phase));
        }
    }
    return names;
}

struct Connections {
    std::size_t wanted = 0;
    std::size_t made = 0;
};

Connections connectionsOf(const Joined& at, std::size_t circuit) {
    Connections all;
    const std::size_t joined = given(at.links.joins[circuit]);
    for (const Phase phase : at.built.layout.circuits[circuit].phases) {
        const auto& own = at.graph.membersOf(circuit, phase);
        const auto& others = at.graph.membersOf(joined, phase);
        std::map<std::size_t, std::size_t> onPiece;
        for (const std::size_t other : others) {
            ++onPiece[at.graph.pieceOf(other)];
        }
        for (const std::size_t i : own) {
            const auto here = onPiece.find(at.graph.pieceOf(i));
            all.made += here == onPiece.end() ? 0 : here->second;
        }
        all.wanted += own.size() * others.size();
    }
    return all;
}

std::size_t presentIn(const Joined& at, std::size_t circuit) {
    std::size_t present = 0;
    for (const Phase phase : at.built.layout.circuits[circuit].phases) {
        present += at.graph.membersOf(circuit, phase).size();
    }
    return present;
}

std::optional<Vec3> placeOfFirst(const Joined& at, std::size_t circuit) {
    for (const Phase phase : at.built.layout.circuits[circuit].phases) {
        const auto& members = at.graph.membersOf(circuit, phase);
        if (!members.empty()) {
            return at.built.conductors[members.front()].built.path.start();
        }
    }
    return std::nullopt;
}

/// The circuit has its conductors; says also whether they are joined, where nothing is told of that
/// elsewhere.
void tellFine(Finding& finding, const Joined& at, std::size_t circuit) {
    const std::size_t present = presentIn(at, circuit);
    const std::string head =
        circuitName(at.built, circuit) + " has its " + counted(present, "conductor", "conductors");
    judge(finding, count(present), count(present), Bound::atLeast);
    finding.working = sentence(head);
    if (!at.links.joins[circuit]) {
        return;
    }
    const std::size_t joined = *at.links.joins[circuit];
    const std::string name = circuitName(at.built, joined);
    const auto [wanted, made] = connectionsOf(at, circuit);
    if (made < wanted) {
        finding.working = sentence(head + "; what keeps " + std::to_string(wanted - made) + " of " +
                                   counted(wanted, "connection", "connections") + " to " + name +
                                   " from being made is told by itself");
        return;
    }
    judge(finding, count(made), count(wanted), Bound::atLeast);
    finding.working = sentence(head + ", and all " + counted(wanted, "connection", "connections") +
                               " to " + name + " are made");
    if (at.built.layout.circuits[joined].sets > 1) {
        finding.citation = sectionFor(at.built, standards::Rule::tapsJoinWholeSet);
    }
}

void nameSwap(Finding& finding, const Joined& at, std::size_t index) {
    const auto swap = at.census.swaps.find(index);
    if (swap == at.census.swaps.end()) {
        return;
    }
    finding.subjects.emplace_back(at.built.layout.circuits[swap->second.extra.circuit].id);
    for (const std::size_t i : at.census.slots.at(swap->second.extra)) {
        finding.subjects.emplace_back(at.idOf(i));
    }
}

void circuitFinding(std::vector<Finding>& findings, const Joined& at, std::size_t circuit) {
    const Circuit& one = at.built.layout.circuits[circuit];
    const auto problems = problemsOf(at, circuit);
    const auto notThere = phasesNotThere(at, circuit);
    const bool fine = problems.empty() && notThere.empty();
    if (fine && (at.census.told[circuit] || at.census.named.count(circuit) > 0)) {
        return;  // told at a block, or with the circuit that misses what this has too many
    }
    Finding finding;
    finding.check = Check::joints;
    finding.subjects = {one.id};
    finding.place = placeOfFirst(at, circuit);
    finding.citation = stated();
    if (fine) {
        tellFine(finding, at, circuit);
        findings.push_back(std::move(finding));
        return;
    }
    judge(finding,
          count(presentIn(at, circuit)),
          count(static_cast<std::size_t>(one.sets) * one.phases.size()),
          Bound::atLeast);
    finding.margin->value = -std::abs(finding.margin->value);  // one too many is no room to spare
    finding.verdict = Verdict::breach;
    std::string text = problems.empty() ? "" : " has " + shortList(problems) + ", where 1 belongs";
    if (!notThere.empty()) {
        text += (text.empty() ? " has " : "; it has ") + listed(notThere) + ", which " +
                circuitName(at.built, given(at.links.joins[circuit])) + " it joins has not";
    }
    finding.working = sentence(circuitName(at.built, circuit) + text);
    nameSwap(finding, at, circuit);
    findings.push_back(std::move(finding));
}

// ---- where neutral and ground may meet ------------------------------------------------------

/// The circuits of a bonding circuit's system, by their side of the service disconnects.
struct SidesOfSystem {
    std::optional<std::size_t> service;
    std::optional<std::size_t> beyond;
    std::vector<std::size_t> unknown;
};

SidesOfSystem sidesAround(const Joined& at, std::size_t circuit) {
    SidesOfSystem found;
    for (std::size_t other = 0; other < at.links.sides.size(); ++other) {
        if (at.links.systemOf[other] != at.links.systemOf[circuit]) {
            continue;
        }
        switch (at.links.sides[other]) {
            case Side::service:
                found.service = found.service.value_or(other);
                break;
            case Side::other:
                found.beyond = found.beyond.value_or(other);
                break;
            case Side::unknown:
                found.unknown.push_back(other);
                break;
            case Side::exempt:
                break;
        }
    }
    return found;
}

/// A neutral is joined to ground ahead of the service disconnects or at them, not beyond; or where
/// a system begins, which the layout cannot state. Nothing is said where service conductors of the
/// system are in the gutter, or none of its circuits is.
void bondFinding(std::vector<Finding>& findings, const Joined& at, std::size_t circuit) {
    const Circuit& one = at.built.layout.circuits[circuit];
    const SidesOfSystem sides = sidesAround(at, circuit);
    const bool bonds = one.role == layout::Role::bonding && one.bondsNeutral == true;
    if (!bonds || sides.service || (!sides.beyond && sides.unknown.empty())) {
        return;
    }
    Finding finding;
    finding.check = Check::joints;
    finding.verdict = Verdict::cannotTell;
    finding.subjects = {one.id};
    finding.place = placeOfFirst(at, circuit);
    finding.citation = sectionFor(at.built, standards::Rule::neutralNotLoadSide);
    for (const std::size_t other : sides.unknown) {
        finding.missing.push_back("what " + circuitName(at.built, other) + " joins");
    }
    finding.missing.push_back("whether system " + one.system.text() +
                              " begins here, at a source of its own");
    finding.working = sentence(
        circuitName(at.built, circuit) + " joins N and G of system " + one.system.text() +
        ", of which no service conductor is known to be here; beyond the service disconnects they "
        "are joined only where a system begins");
    findings.push_back(std::move(finding));
}

// ---- conductors -----------------------------------------------------------------------------

const geometry::BuiltEnd* spareEnd(const geometry::BuiltConductor& conductor) {
    for (const geometry::BuiltEnd* end : {&conductor.from, &conductor.to}) {
        if (end->kind == geometry::BuiltEnd::Kind::spare) {
            return end;
        }
    }
    return nullptr;
}

/// A tap from part of a parallel set: the code says so from 2020 on; before, good practice.
Finding apartFinding(const Joined& at, const Apart& apart) {
    const bool written = at.built.layout.edition != standards::Edition::nec2017;
    const std::size_t first = apart.conductors.front();
    const auto& conductor = at.built.conductors[first];
    const geometry::BuiltEnd* loose = spareEnd(conductor);
    Finding finding;
    finding.check = Check::joints;
    finding.verdict = apart.partly && !written ? Verdict::caution : Verdict::breach;
    for (const std::size_t i : apart.conductors) {
        finding.subjects.emplace_back(at.idOf(i));
    }
    finding.place = loose != nullptr ? loose->mouth : conductor.built.path.start();
    finding.citation =
        apart.parallel ? sectionFor(at.built, standards::Rule::tapsJoinWholeSet) : stated();
    const bool one = apart.conductors.size() == 1;
    finding.working =
        sentence(namesOf(at, apart.conductors) +
                 (!at.graph.landed[first] ? " ends in no block, and"
                  : one                   ? " is on a block by itself, and"
                                          : " are joined, and") +
                 (one ? " has" : " have") + " to be joined to " + namesOf(at, apart.from));
    return finding;
}

void spareFindings(std::vector<Finding>& findings, const Joined& at, std::size_t conductor) {
    const auto& built = at.built.conductors[conductor];
    for (const geometry::BuiltEnd* end : {&built.from, &built.to}) {
        if (end->kind != geometry::BuiltEnd::Kind::spare) {
            continue;
        }
        Finding finding;
        finding.check = Check::joints;
        finding.verdict = Verdict::caution;
        finding.subjects = {at.idOf(conductor)};
        finding.place = end->mouth;
        finding.citation = sectionFor(at.built, standards::Rule::splicesInsulated);
        finding.working = sentence("one end of " + conductorName(at.built, conductor) +
                                   " lands nowhere; left so on purpose, it has to be insulated as "
                                   "the conductor is");
        findings.push_back(std::move(finding));
    }
}

// ---- the sections ---------------------------------------------------------------------------

void ofBlock(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t block) {
    findings.push_back(blockFinding(joinedIn(built, facts), block));
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t circuit) {
    circuitFinding(findings, joinedIn(built, facts), circuit);
    bondFinding(findings, joinedIn(built, facts), circuit);
}

void ofGutter(std::vector<Finding>& findings,
              const BuiltLayout& built,
              const Facts& facts,
              std::size_t) {
    for (const Apart& apart : facts.joints.apart) {
        findings.push_back(apartFinding(joinedIn(built, facts), apart));
    }
}

void ofConductor(std::vector<Finding>& findings,
                 const BuiltLayout& built,
                 const Facts& facts,
                 std::size_t conductor) {
    // On no block and apart: told with those it has to be joined to.
    if (facts.joints.landed[conductor] || !facts.joints.liesApart[conductor]) {
        spareFindings(findings, joinedIn(built, facts), conductor);
    }
}

constexpr auto kSections =
    std::to_array<Section>({{Unit::block, reads::kPaths | reads::kBlocks, ofBlock},
                            {Unit::circuit, reads::kPaths | reads::kBlocks, ofCircuit},
                            {Unit::gutter, reads::kPaths | reads::kBlocks, ofGutter},
                            {Unit::conductor, reads::kPaths | reads::kBlocks, ofConductor}});

}  // namespace

std::span<const Section> jointsSections() {
    return kSections;
}

std::vector<Finding> checkJoints(const BuiltLayout& built) {
    return runChecks(built, {Check::joints});
}

}  // namespace gw::checks
