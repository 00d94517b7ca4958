#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "checks/joint_graph.h"
#include "checks/support.h"

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

std::string namesOf(const JointGraph& graph, const std::vector<std::size_t>& conductors) {
    std::vector<std::string> names;
    names.reserve(conductors.size());
    for (const std::size_t i : conductors) {
        names.push_back(conductorName(graph.built, i));
    }
    return shortList(names);
}

// ---- circuits: has each its conductors? -----------------------------------------------------

/// One place for a conductor.
struct Slot {
    std::size_t circuit = 0;
    Phase phase = Phase::a;
    int set = 1;
    friend bool operator<(const Slot& a, const Slot& b) {
        return std::tie(a.circuit, a.phase, a.set) < std::tie(b.circuit, b.phase, b.set);
    }
};

/// A conductor that is missing in one circuit and one too many in another.
struct Swap {
    Slot missing;
    Slot extra;
};

struct Census {
    std::map<Slot, std::vector<std::size_t>> slots;
    std::map<Slot, int> off;  ///< conductors too many (positive) or too few, not explained yet
    std::vector<std::set<std::size_t>> toldAt;  ///< by block: circuits whose numbers it explains
    std::vector<bool> told;                     ///< by circuit: explained at a block
    std::map<std::size_t, Swap> swaps;          ///< by the circuit that misses one
    std::set<std::size_t> named;                ///< circuits told of with another
};

Census countedSlots(const JointGraph& graph) {
    Census census;
    const auto& layout = graph.built.layout;
    for (std::size_t i = 0; i < layout.circuits.size(); ++i) {
        for (const Phase phase : layout.circuits[i].phases) {
            for (int set = 1; set <= layout.circuits[i].sets; ++set) {
                census.slots[{i, phase, set}];
            }
        }
    }
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        const auto& one = layout.conductors[i];
        census.slots[{graph.circuitOf[i], one.phase, one.set}].push_back(i);
    }
    for (const auto& [slot, conductors] : census.slots) {
        if (conductors.size() != 1) {
            census.off[slot] = static_cast<int>(conductors.size()) - 1;
        }
    }
    census.toldAt.resize(layout.blocks.size());
    census.told.resize(layout.circuits.size());
    return census;
}

void settleOne(Census& census, const Slot& slot, int by) {
    const auto found = census.off.find(slot);
    found->second += by;
    if (found->second == 0) {
        census.off.erase(found);
    }
}

/// What is told must not hang on the order of the layout.
void sortByName(const JointGraph& graph, std::vector<Slot>& slots) {
    const auto& circuits = graph.built.layout.circuits;
    std::sort(slots.begin(), slots.end(), [&](const Slot& a, const Slot& b) {
        return std::tie(circuits[a.circuit].id, a.phase, a.set) <
               std::tie(circuits[b.circuit].id, b.phase, b.set);
    });
}

std::vector<std::size_t> blocksByName(const JointGraph& graph) {
    const auto& blocks = graph.built.layout.blocks;
    std::vector<std::size_t> order(blocks.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return blocks[a].id < blocks[b].id;
    });
    return order;
}

/// A conductor astray on a block that is one too many in its circuit and would be a missing one of
/// those the block is for: it is marked wrongly, and its block tells so.
void explainByBlocks(const JointGraph& graph, Census& census) {
    std::map<Net, std::vector<Slot>> missing;
    for (const auto& [slot, off] : census.off) {
        if (off < 0) {
            missing[graph.netFor(slot.circuit, slot.phase)].push_back(slot);
        }
    }
    for (auto& [net, slots] : missing) {
        sortByName(graph, slots);
    }
    for (const std::size_t block : blocksByName(graph)) {
        const auto& carries = graph.blocks[block].carries;
        for (const std::size_t i : graph.blocks[block].astray) {
            const auto& one = graph.built.layout.conductors[i];
            const Slot own{graph.circuitOf[i], one.phase, one.set};
            const auto extra = census.off.find(own);
            if (!carries || extra == census.off.end() || extra->second < 0 ||
                missing[*carries].empty()) {
                continue;
            }
            const Slot meant = missing[*carries].back();
            missing[*carries].pop_back();
            settleOne(census, own, -1);
            settleOne(census, meant, 1);
            census.toldAt[block].insert({own.circuit, meant.circuit});
            census.told[own.circuit] = census.told[meant.circuit] = true;
        }
    }
}

/// A conductor too few in one circuit and one too many of that phase in another: one is marked with
/// the wrong circuit.
void pairSwaps(const JointGraph& graph, Census& census) {
    std::map<Phase, std::vector<Slot>> extras;
    std::vector<Slot> missing;
    for (const auto& [slot, off] : census.off) {
        if (off < 0) {
            missing.push_back(slot);
        }
        for (int i = 0; i < off; ++i) {
            extras[slot.phase].push_back(slot);
        }
    }
    sortByName(graph, missing);
    for (auto& [phase, slots] : extras) {
        sortByName(graph, slots);
    }
    for (const Slot& slot : missing) {
        auto& slots = extras[slot.phase];
        const auto extra = std::find_if(slots.begin(), slots.end(), [&](const Slot& other) {
            return other.circuit != slot.circuit;
        });
        if (extra == slots.end() ||
            !census.swaps.emplace(slot.circuit, Swap{slot, *extra}).second) {
            continue;
        }
        settleOne(census, slot, 1);
        settleOne(census, *extra, -1);
        census.named.insert(extra->circuit);
        slots.erase(extra);
    }
}

Census censusOf(const JointGraph& graph) {
    Census census = countedSlots(graph);
    explainByBlocks(graph, census);
    pairSwaps(graph, census);
    return census;
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

std::string clashText(const JointGraph& graph, std::size_t index) {
    const JointBlock& block = graph.blocks[index];
    const auto& meant = graph.built.layout.blocks[index].phase;
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
            return namesOf(graph, block.astray) + " joins N and G and lands on a live phase";
        case Clash::none:
            break;
    }
    return {};
}

std::string breachText(const JointGraph& graph, std::size_t index) {
    const JointBlock& block = graph.blocks[index];
    std::string text = clashText(graph, index);
    if (block.astray.empty() || block.clash == Clash::bondOnPhase) {
        return text;
    }
    return text + (block.carries ? "; astray here: " : "; it holds ") +
           namesOf(graph, block.astray);
}

std::string unsureText(const JointGraph& graph, const JointBlock& block) {
    std::vector<std::string> names;
    for (const std::size_t circuit : block.perhapsBonding) {
        names.push_back(circuitName(graph.built, circuit));
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

Finding blockFinding(const JointGraph& graph, const Census& census, std::size_t index) {
    const JointBlock& block = graph.blocks[index];
    Finding finding;
    finding.check = Check::joints;
    finding.subjects = {graph.built.layout.blocks[index].id};
    finding.place = graph.built.blocks[index].body.centre();
    finding.citation = block.clash == Clash::systems ? asStated("systems") : stated();
    const bool besides = block.clash == Clash::label || block.clash == Clash::bondOnPhase;
    judge(finding, count(block.nets.size() + (besides ? 1 : 0)), count(1), Bound::atMost);
    std::string text = fineText(block);
    if (!block.perhapsBonding.empty()) {
        finding.verdict = Verdict::cannotTell;
        text = unsureText(graph, block);
        for (const std::size_t circuit : block.perhapsBonding) {
            finding.missing.push_back("whether " + circuitName(graph.built, circuit) +
                                      " joins N and G on purpose");
        }
    } else if (block.clash != Clash::none) {
        text = breachText(graph, index);
    } else if (block.conductors.size() < 2) {
        finding.verdict = Verdict::caution;
    }
    for (const std::size_t i : block.astray) {
        finding.subjects.emplace_back(graph.idOf(i));
    }
    for (const std::size_t circuit : census.toldAt[index]) {
        finding.subjects.emplace_back(graph.built.layout.circuits[circuit].id);
    }
    finding.working = sentence(blockName(graph.built, index) + ": " + text);
    return finding;
}

// ---- circuits -------------------------------------------------------------------------------

/// What is wrong with a circuit by itself.
std::vector<std::string> problemsOf(const JointGraph& graph,
                                    const Census& census,
                                    std::size_t circuit) {
    std::vector<std::string> problems;
    const auto numberText = [&](const Slot& slot) {
        const auto found = census.slots.find(slot);
        return counted(found->second.size(), "conductor", "conductors") + " of " +
               phaseName(slot.phase) + " in set " + std::to_string(slot.set);
    };
    if (const auto swap = census.swaps.find(circuit); swap != census.swaps.end()) {
        problems.push_back(numberText(swap->second.missing) + ", and " +
                           circuitName(graph.built, swap->second.extra.circuit) + " has " +
                           numberText(swap->second.extra));
    }
    const Slot first{circuit, Phase::a, 0};
    for (auto one = census.off.lower_bound(first);
         one != census.off.end() && one->first.circuit == circuit;
         ++one) {
        problems.push_back(numberText(one->first));
    }
    return problems;
}

/// Phases of the circuit that the one it joins does not have. Grounding conductors may meet others
/// than those.
std::vector<std::string> phasesNotThere(const JointGraph& graph, std::size_t circuit) {
    const auto& joined = graph.joins[circuit];
    const Circuit& one = graph.built.layout.circuits[circuit];
    std::vector<std::string> names;
    if (!joined || one.role == layout::Role::bonding) {
        return names;
    }
    const auto& there = graph.built.layout.circuits[*joined].phases;
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

Connections connectionsOf(const JointGraph& graph, std::size_t circuit) {
    Connections all;
    const std::size_t joined = given(graph.joins[circuit]);
    for (const Phase phase : graph.built.layout.circuits[circuit].phases) {
        const auto& own = graph.membersOf(circuit, phase);
        const auto& others = graph.membersOf(joined, phase);
        std::map<std::size_t, std::size_t> onPiece;
        for (const std::size_t other : others) {
            ++onPiece[graph.pieceOf(other)];
        }
        for (const std::size_t i : own) {
            const auto here = onPiece.find(graph.pieceOf(i));
            all.made += here == onPiece.end() ? 0 : here->second;
        }
        all.wanted += own.size() * others.size();
    }
    return all;
}

std::size_t presentIn(const JointGraph& graph, std::size_t circuit) {
    std::size_t present = 0;
    for (const Phase phase : graph.built.layout.circuits[circuit].phases) {
        present += graph.membersOf(circuit, phase).size();
    }
    return present;
}

std::optional<Vec3> placeOfFirst(const JointGraph& graph, std::size_t circuit) {
    for (const Phase phase : graph.built.layout.circuits[circuit].phases) {
        const auto& members = graph.membersOf(circuit, phase);
        if (!members.empty()) {
            return graph.built.conductors[members.front()].built.path.start();
        }
    }
    return std::nullopt;
}

/// The circuit has its conductors; says also whether they are joined, where nothing is told of that
/// elsewhere.
void tellFine(Finding& finding, const JointGraph& graph, std::size_t circuit) {
    const std::size_t present = presentIn(graph, circuit);
    const std::string head = circuitName(graph.built, circuit) + " has its " +
                             counted(present, "conductor", "conductors");
    judge(finding, count(present), count(present), Bound::atLeast);
    finding.working = sentence(head);
    if (!graph.joins[circuit]) {
        return;
    }
    const std::size_t joined = *graph.joins[circuit];
    const std::string name = circuitName(graph.built, joined);
    const auto [wanted, made] = connectionsOf(graph, circuit);
    if (made < wanted) {
        finding.working = sentence(head + "; what keeps " + std::to_string(wanted - made) + " of " +
                                   counted(wanted, "connection", "connections") + " to " + name +
                                   " from being made is told by itself");
        return;
    }
    judge(finding, count(made), count(wanted), Bound::atLeast);
    finding.working = sentence(head + ", and all " + counted(wanted, "connection", "connections") +
                               " to " + name + " are made");
    if (graph.built.layout.circuits[joined].sets > 1) {
        finding.citation = sectionFor(graph.built, standards::Rule::tapsJoinWholeSet);
    }
}

void nameSwap(Finding& finding, const JointGraph& graph, const Census& census, std::size_t index) {
    const auto swap = census.swaps.find(index);
    if (swap == census.swaps.end()) {
        return;
    }
    finding.subjects.emplace_back(graph.built.layout.circuits[swap->second.extra.circuit].id);
    for (const std::size_t i : census.slots.at(swap->second.extra)) {
        finding.subjects.emplace_back(graph.idOf(i));
    }
}

void circuitFinding(std::vector<Finding>& findings,
                    const JointGraph& graph,
                    const Census& census,
                    std::size_t circuit) {
    const Circuit& one = graph.built.layout.circuits[circuit];
    const auto problems = problemsOf(graph, census, circuit);
    const auto notThere = phasesNotThere(graph, circuit);
    const bool fine = problems.empty() && notThere.empty();
    if (fine && (census.told[circuit] || census.named.count(circuit) > 0)) {
        return;  // told at a block, or with the circuit that misses what this has too many
    }
    Finding finding;
    finding.check = Check::joints;
    finding.subjects = {one.id};
    finding.place = placeOfFirst(graph, circuit);
    finding.citation = stated();
    if (fine) {
        tellFine(finding, graph, circuit);
        findings.push_back(std::move(finding));
        return;
    }
    judge(finding,
          count(presentIn(graph, circuit)),
          count(static_cast<std::size_t>(one.sets) * one.phases.size()),
          Bound::atLeast);
    finding.margin->value = -std::abs(finding.margin->value);  // one too many is no room to spare
    finding.verdict = Verdict::breach;
    std::string text = problems.empty() ? "" : " has " + shortList(problems) + ", where 1 belongs";
    if (!notThere.empty()) {
        text += (text.empty() ? " has " : "; it has ") + listed(notThere) + ", which " +
                circuitName(graph.built, given(graph.joins[circuit])) + " it joins has not";
    }
    finding.working = sentence(circuitName(graph.built, circuit) + text);
    nameSwap(finding, graph, census, circuit);
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
Finding apartFinding(const JointGraph& graph, const Apart& apart) {
    const bool written = graph.built.layout.edition != standards::Edition::nec2017;
    const std::size_t first = apart.conductors.front();
    const auto& conductor = graph.built.conductors[first];
    const geometry::BuiltEnd* loose = spareEnd(conductor);
    Finding finding;
    finding.check = Check::joints;
    finding.verdict = apart.partly && !written ? Verdict::caution : Verdict::breach;
    for (const std::size_t i : apart.conductors) {
        finding.subjects.emplace_back(graph.idOf(i));
    }
    finding.place = loose != nullptr ? loose->mouth : conductor.built.path.start();
    finding.citation =
        apart.parallel ? sectionFor(graph.built, standards::Rule::tapsJoinWholeSet) : stated();
    const bool one = apart.conductors.size() == 1;
    finding.working =
        sentence(namesOf(graph, apart.conductors) +
                 (!graph.landed[first] ? " ends in no block, and"
                  : one                ? " is on a block by itself, and"
                                       : " are joined, and") +
                 (one ? " has" : " have") + " to be joined to " + namesOf(graph, apart.from));
    return finding;
}

void spareFindings(std::vector<Finding>& findings, const JointGraph& graph, std::size_t conductor) {
    const auto& built = graph.built.conductors[conductor];
    for (const geometry::BuiltEnd* end : {&built.from, &built.to}) {
        if (end->kind != geometry::BuiltEnd::Kind::spare) {
            continue;
        }
        Finding finding;
        finding.check = Check::joints;
        finding.verdict = Verdict::caution;
        finding.subjects = {graph.idOf(conductor)};
        finding.place = end->mouth;
        finding.citation = sectionFor(graph.built, standards::Rule::splicesInsulated);
        finding.working = sentence("one end of " + conductorName(graph.built, conductor) +
                                   " lands nowhere; left so on purpose, it has to be insulated as "
                                   "the conductor is");
        findings.push_back(std::move(finding));
    }
}

}  // namespace

std::vector<Finding> checkJoints(const BuiltLayout& built) {
    const JointGraph graph(built);
    const Census census = censusOf(graph);
    std::vector<Finding> findings;
    for (std::size_t block = 0; block < graph.blocks.size(); ++block) {
        findings.push_back(blockFinding(graph, census, block));
    }
    for (std::size_t circuit = 0; circuit < built.layout.circuits.size(); ++circuit) {
        circuitFinding(findings, graph, census, circuit);
    }
    std::vector<bool> told(built.conductors.size());
    for (const Apart& apart : whatLiesApart(graph)) {
        findings.push_back(apartFinding(graph, apart));
        for (const std::size_t i : apart.conductors) {
            told[i] = !graph.landed[i];
        }
    }
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        if (!told[i]) {
            spareFindings(findings, graph, i);
        }
    }
    return findings;
}

}  // namespace gw::checks
