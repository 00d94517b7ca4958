#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "base/contract.h"
#include "checks/pieces.h"
#include "checks/support.h"

/// What the blocks join: one phase a block, one system, whole parallel sets, and only circuits that
/// are meant to be joined.
///
/// Equipment grounding conductors (phase G) are joined across circuits and systems on purpose
/// (250.148), so neither is held against them.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Circuit;
using layout::Conductor;
using layout::Phase;
using layout::Role;

/// Something that is not as it should be.
struct Problem {
    Verdict verdict = Verdict::breach;
    std::string text;
    standards::Citation citation;
    std::vector<std::string> missing{};
};

/// The layout with what this check asks of it again and again.
struct Graph {
    const BuiltLayout& built;
    std::vector<std::size_t> circuitOf;  ///< by conductor
    std::vector<bool> bonds;             ///< conductors that join N and G on purpose
    Groups pieces;                       ///< without those
    Groups related;                      ///< circuits, by joins

    const Conductor& conductor(std::size_t i) const { return built.layout.conductors[i]; }
    const Circuit& circuit(std::size_t i) const { return built.layout.circuits[i]; }
    const Circuit& circuitOfConductor(std::size_t i) const { return circuit(circuitOf[i]); }
    std::string name(std::size_t i) const { return conductorName(built, i); }
};

std::vector<std::size_t> circuitsOfConductors(const BuiltLayout& built) {
    std::vector<std::size_t> circuits;
    for (const Conductor& conductor : built.layout.conductors) {
        const auto index = built.circuitIndex(conductor.circuit);
        CONTRACT(index.has_value());
        circuits.push_back(*index);
    }
    return circuits;
}

std::vector<bool> bondingConductors(const BuiltLayout& built,
                                    const std::vector<std::size_t>& circuitOf) {
    std::vector<bool> bonds;
    for (const std::size_t circuit : circuitOf) {
        const Circuit& one = built.layout.circuits[circuit];
        bonds.push_back(one.role == Role::bonding && one.bondsNeutral == true);
    }
    return bonds;
}

Groups relatedCircuits(const BuiltLayout& built) {
    Groups related(built.layout.circuits.size());
    for (std::size_t i = 0; i < built.layout.circuits.size(); ++i) {
        if (const auto& joins = built.layout.circuits[i].joins) {
            related.join(i, given(built.circuitIndex(*joins)));
        }
    }
    return related;
}

Graph graphOf(const BuiltLayout& built) {
    auto circuitOf = circuitsOfConductors(built);
    auto bonds = bondingConductors(built, circuitOf);
    auto pieces = piecesOf(built, bonds);
    return {
        built, std::move(circuitOf), std::move(bonds), std::move(pieces), relatedCircuits(built)};
}

std::string phaseName(Phase phase) {
    return "phase " + std::string(layout::phaseText(phase));
}

std::string phaseNames(const std::set<Phase>& phases) {
    std::vector<std::string> names;
    for (const Phase phase : phases) {
        names.emplace_back(layout::phaseText(phase));
    }
    return listed(names);
}

standards::Citation stated() {
    return asStated("circuits and phases");
}

// ---- blocks ---------------------------------------------------------------------------------

std::vector<std::size_t> conductorsIn(const BuiltLayout& built, std::size_t block) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto blocks = blocksOf(built.conductors[i]);
        if (std::binary_search(blocks.begin(), blocks.end(), block)) {
            found.push_back(i);
        }
    }
    return found;
}

std::set<Phase> phasesOf(const Graph& graph, const std::vector<std::size_t>& conductors) {
    std::set<Phase> phases;
    for (const std::size_t i : conductors) {
        if (!graph.bonds[i]) {
            phases.insert(graph.conductor(i).phase);
        }
    }
    return phases;
}

/// Bonding circuits of which it is not said whether they join N and G, where that alone decides.
std::vector<std::string> bondsNotStated(const Graph& graph,
                                        const std::vector<std::size_t>& conductors) {
    std::vector<std::size_t> others;
    std::vector<std::string> missing;
    for (const std::size_t i : conductors) {
        const Circuit& circuit = graph.circuitOfConductor(i);
        if (circuit.role == Role::bonding && !circuit.bondsNeutral) {
            missing.push_back("whether " + circuitName(graph.built, graph.circuitOf[i]) +
                              " joins N and G on purpose");
        } else {
            others.push_back(i);
        }
    }
    const bool onlyNeutralAndGround =
        phasesOf(graph, conductors) == std::set<Phase>{Phase::n, Phase::g};
    const bool wouldDo = onlyNeutralAndGround && phasesOf(graph, others).size() <= 1;
    return wouldDo ? missing : std::vector<std::string>{};
}

void judgePhases(std::vector<Problem>& problems,
                 const Graph& graph,
                 const std::vector<std::size_t>& conductors) {
    const auto phases = phasesOf(graph, conductors);
    if (phases.size() > 1) {
        const auto missing = bondsNotStated(graph, conductors);
        problems.push_back({missing.empty() ? Verdict::breach : Verdict::cannotTell,
                            "it joins phases " + phaseNames(phases),
                            stated(),
                            missing});
    }
    for (const std::size_t i : conductors) {
        const bool live = std::any_of(phases.begin(), phases.end(), [](Phase phase) {
            return phase != Phase::n && phase != Phase::g;
        });
        if (graph.bonds[i] && live) {
            problems.push_back(
                {Verdict::breach,
                 graph.name(i) + " joins N and G and lands on phase " + phaseNames(phases),
                 stated()});
        }
    }
}

void judgeStatedPhase(std::vector<Problem>& problems,
                      const Graph& graph,
                      std::size_t block,
                      const std::vector<std::size_t>& conductors) {
    const auto& meant = graph.built.layout.blocks[block].phase;
    if (!meant) {
        return;
    }
    for (const std::size_t i : conductors) {
        const Phase phase = graph.conductor(i).phase;
        const bool bondFits = graph.bonds[i] && (*meant == Phase::n || *meant == Phase::g);
        if (phase != *meant && !bondFits) {
            problems.push_back({Verdict::breach,
                                "it is meant for " + phaseName(*meant) + " and " + graph.name(i) +
                                    " is " + phaseName(phase),
                                stated()});
        }
    }
}

void judgeSystems(std::vector<Problem>& problems,
                  const Graph& graph,
                  const std::vector<std::size_t>& conductors) {
    std::set<layout::SystemId> systems;
    for (const std::size_t i : conductors) {
        if (!graph.bonds[i] && graph.conductor(i).phase != Phase::g) {
            systems.insert(graph.circuitOfConductor(i).system);
        }
    }
    if (systems.size() > 1) {
        std::vector<std::string> names;
        for (const auto& system : systems) {
            names.push_back(system.text());
        }
        problems.push_back(
            {Verdict::breach, "it joins systems " + listed(names), asStated("systems")});
    }
}

void judgeUse(std::vector<Problem>& problems,
              const Graph& graph,
              const std::vector<std::size_t>& conductors) {
    if (conductors.size() < 2) {
        problems.push_back({Verdict::caution,
                            conductors.empty()
                                ? "nothing lands in it"
                                : "only " + graph.name(conductors.front()) + " lands in it",
                            stated()});
    }
}

Verdict worstOf(const std::vector<Problem>& problems) {
    Verdict worst = Verdict::meets;
    for (const Problem& problem : problems) {
        worst = graver(problem.verdict, worst);
    }
    return worst;
}

/// Writes verdict, citation, missing and working; `fine` is said where there is no problem.
void tell(Finding& finding,
          const std::string& head,
          const std::vector<Problem>& problems,
          const std::string& fine,
          const standards::Citation& usual) {
    finding.verdict = worstOf(problems);
    finding.citation = usual;
    const auto decisive =
        std::find_if(problems.begin(), problems.end(), [&](const Problem& problem) {
            return problem.verdict == finding.verdict;
        });
    if (decisive != problems.end()) {
        finding.citation = decisive->citation;
    }
    std::string text;
    for (const Problem& problem : problems) {
        text += (text.empty() ? "" : "; ") + problem.text;
        finding.missing.insert(
            finding.missing.end(), problem.missing.begin(), problem.missing.end());
    }
    finding.working = sentence(head + ": " + (problems.empty() ? fine : text));
}

Finding blockFinding(const Graph& graph, std::size_t block) {
    const auto conductors = conductorsIn(graph.built, block);
    const auto phases = phasesOf(graph, conductors);
    std::vector<Problem> problems;
    judgePhases(problems, graph, conductors);
    judgeStatedPhase(problems, graph, block, conductors);
    judgeSystems(problems, graph, conductors);
    judgeUse(problems, graph, conductors);
    Finding finding;
    finding.check = Check::joints;
    finding.subjects = {graph.built.layout.blocks[block].id};
    finding.place = graph.built.blocks[block].body.centre();
    judge(finding, count(phases.size()), count(1), Bound::atMost);
    tell(finding,
         blockName(graph.built, block),
         problems,
         "it joins " + counted(conductors.size(), "conductor", "conductors") + ", all of " +
             (phases.empty() ? std::string("bonding circuits") : "phase " + phaseNames(phases)),
         stated());
    return finding;
}

// ---- circuits -------------------------------------------------------------------------------

std::vector<std::size_t> conductorsOf(const Graph& graph, std::size_t circuit, Phase phase) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < graph.circuitOf.size(); ++i) {
        if (graph.circuitOf[i] == circuit && graph.conductor(i).phase == phase) {
            found.push_back(i);
        }
    }
    return found;
}

bool has(const Circuit& circuit, Phase phase) {
    return std::find(circuit.phases.begin(), circuit.phases.end(), phase) != circuit.phases.end();
}

void judgeSets(std::vector<Problem>& problems, const Graph& graph, std::size_t circuit) {
    const Circuit& one = graph.circuit(circuit);
    for (const Phase phase : one.phases) {
        std::map<int, std::size_t> sets;
        for (const std::size_t i : conductorsOf(graph, circuit, phase)) {
            ++sets[graph.conductor(i).set];
        }
        for (int set = 1; set <= one.sets; ++set) {
            if (sets[set] != 1) {
                problems.push_back({Verdict::breach,
                                    phaseName(phase) + " has " +
                                        counted(sets[set], "conductor", "conductors") + " in set " +
                                        std::to_string(set) + ", where 1 belongs",
                                    stated()});
            }
        }
    }
}

struct Connections {
    std::size_t wanted = 0;
    std::size_t made = 0;
    std::vector<std::string> absent{};
};

Connections connectionsOf(const Graph& graph, std::size_t conductor, std::size_t joined) {
    Connections connections;
    for (const std::size_t other : conductorsOf(graph, joined, graph.conductor(conductor).phase)) {
        ++connections.wanted;
        if (graph.pieces.together(conductor, other)) {
            ++connections.made;
        } else {
            connections.absent.push_back(graph.name(other));
        }
    }
    return connections;
}

/// A tap from part of a parallel set: the code says so from 2020 on; before, good practice.
Problem notJoined(const Graph& graph,
                  std::size_t conductor,
                  std::size_t joined,
                  const Connections& connections) {
    const bool partly = connections.made > 0;
    const bool written = graph.built.layout.edition != standards::Edition::nec2017;
    const bool parallel = graph.circuit(joined).sets > 1;
    return {partly && !written ? Verdict::caution : Verdict::breach,
            graph.name(conductor) + " is not joined to " + listed(connections.absent) + " of " +
                circuitName(graph.built, joined),
            parallel ? sectionFor(graph.built, standards::Rule::tapsJoinWholeSet) : stated()};
}

/// Every conductor of a circuit that joins another; counts connections wanted and made.
Connections judgeJoins(std::vector<Problem>& problems, const Graph& graph, std::size_t circuit) {
    const Circuit& one = graph.circuit(circuit);
    Connections all;
    if (!one.joins) {
        return all;
    }
    const std::size_t joined = given(graph.built.circuitIndex(given(one.joins)));
    for (std::size_t i = 0; i < graph.circuitOf.size(); ++i) {
        if (graph.circuitOf[i] != circuit) {
            continue;
        }
        const Connections own = connectionsOf(graph, i, joined);
        all.wanted += own.wanted;
        all.made += own.made;
        if (blocksOf(graph.built.conductors[i]).empty()) {
            problems.push_back({Verdict::breach,
                                graph.name(i) + " is tapped from " +
                                    circuitName(graph.built, joined) + " and ends in no block",
                                stated()});
        } else if (own.made < own.wanted) {
            problems.push_back(notJoined(graph, i, joined, own));
        } else if (own.wanted == 0 && has(graph.circuit(joined), graph.conductor(i).phase)) {
            problems.push_back({Verdict::breach,
                                circuitName(graph.built, joined) + " has no conductor of " +
                                    phaseName(graph.conductor(i).phase) + " to join",
                                stated()});
        }
    }
    return all;
}

/// Conductors of circuits that have no business with this one, on one piece with it.
void judgeStrangers(std::vector<Problem>& problems, const Graph& graph, std::size_t circuit) {
    std::set<std::size_t> told;
    for (std::size_t i = 0; i < graph.circuitOf.size(); ++i) {
        if (graph.circuitOf[i] != circuit || graph.conductor(i).phase == Phase::g) {
            continue;
        }
        for (std::size_t j = 0; j < graph.circuitOf.size(); ++j) {
            const std::size_t other = graph.circuitOf[j];
            const bool bonding = graph.circuit(circuit).role == Role::bonding ||
                                 graph.circuit(other).role == Role::bonding;
            if (bonding || graph.related.together(circuit, other) ||
                graph.conductor(j).phase == Phase::g || !graph.pieces.together(i, j) ||
                !told.insert(other).second) {
                continue;
            }
            problems.push_back({Verdict::breach,
                                graph.name(i) + " is joined to " + graph.name(j) + " of " +
                                    circuitName(graph.built, other) +
                                    ", which it is not said to join",
                                stated()});
        }
    }
}

std::optional<Vec3> placeOfFirst(const Graph& graph, std::size_t circuit) {
    for (std::size_t i = 0; i < graph.circuitOf.size(); ++i) {
        if (graph.circuitOf[i] == circuit) {
            return graph.built.conductors[i].built.path.start();
        }
    }
    return std::nullopt;
}

std::size_t conductorCount(const Graph& graph, std::size_t circuit) {
    return static_cast<std::size_t>(
        std::count(graph.circuitOf.begin(), graph.circuitOf.end(), circuit));
}

std::string fineText(const Graph& graph,
                     const Circuit& circuit,
                     std::size_t conductors,
                     const Connections& connections) {
    std::string text = "it has its " + counted(conductors, "conductor", "conductors");
    if (circuit.joins) {
        text += ", and all " + counted(connections.wanted, "connection", "connections") + " to " +
                circuitName(graph.built, given(graph.built.circuitIndex(given(circuit.joins)))) +
                " are made";
    }
    return text;
}

Finding circuitFinding(const Graph& graph, std::size_t circuit) {
    const Circuit& one = graph.circuit(circuit);
    std::vector<Problem> problems;
    judgeSets(problems, graph, circuit);
    const bool setsComplete = problems.empty();
    const Connections connections = judgeJoins(problems, graph, circuit);
    judgeStrangers(problems, graph, circuit);
    Finding finding;
    finding.check = Check::joints;
    finding.subjects = {one.id};
    finding.place = placeOfFirst(graph, circuit);
    const std::size_t present = conductorCount(graph, circuit);
    const bool byConnections = setsComplete && one.joins;
    judge(finding,
          count(byConnections ? connections.made : present),
          count(byConnections ? connections.wanted
                              : static_cast<std::size_t>(one.sets) * one.phases.size()),
          Bound::atLeast);
    finding.margin->value = -std::abs(finding.margin->value);  // one too many is no room to spare
    const bool parallel =
        one.joins && graph.circuit(given(graph.built.circuitIndex(given(one.joins)))).sets > 1;
    tell(finding,
         circuitName(graph.built, circuit),
         problems,
         fineText(graph, one, present, connections),
         parallel ? sectionFor(graph.built, standards::Rule::tapsJoinWholeSet) : stated());
    return finding;
}

// ---- spare ends -----------------------------------------------------------------------------

void spareFindings(std::vector<Finding>& findings, const Graph& graph, std::size_t conductor) {
    const auto& built = graph.built.conductors[conductor];
    for (const geometry::BuiltEnd* end : {&built.from, &built.to}) {
        if (end->kind != geometry::BuiltEnd::Kind::spare) {
            continue;
        }
        Finding finding;
        finding.check = Check::joints;
        finding.verdict = Verdict::caution;
        finding.subjects = {graph.conductor(conductor).id};
        finding.place = end->mouth;
        finding.citation = sectionFor(graph.built, standards::Rule::splicesInsulated);
        finding.working = sentence("one end of " + graph.name(conductor) +
                                   " lands nowhere; if it is left open on purpose its end has to "
                                   "be insulated as the conductor is");
        findings.push_back(std::move(finding));
    }
}

}  // namespace

std::vector<Finding> checkJoints(const BuiltLayout& built) {
    const Graph graph = graphOf(built);
    std::vector<Finding> findings;
    for (std::size_t block = 0; block < built.blocks.size(); ++block) {
        findings.push_back(blockFinding(graph, block));
    }
    for (std::size_t circuit = 0; circuit < built.layout.circuits.size(); ++circuit) {
        findings.push_back(circuitFinding(graph, circuit));
    }
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        spareFindings(findings, graph, i);
    }
    return findings;
}

}  // namespace gw::checks
