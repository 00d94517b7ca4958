#include "checks/joint_graph.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "checks/support.h"

namespace gw::checks {
namespace {

using Clash = JointBlock::Clash;
using geometry::BuiltLayout;
using layout::Circuit;
using layout::Phase;
using layout::Role;

std::map<layout::CircuitId, std::size_t> circuitIndices(const BuiltLayout& built) {
    std::map<layout::CircuitId, std::size_t> indices;
    for (std::size_t i = 0; i < built.layout.circuits.size(); ++i) {
        indices.emplace(built.layout.circuits[i].id, i);
    }
    return indices;
}

void readCircuits(JointGraph& graph) {
    const auto indices = circuitIndices(graph.built);
    for (const Circuit& circuit : graph.built.layout.circuits) {
        graph.joins.push_back(circuit.joins ? std::optional(indices.at(*circuit.joins))
                                            : std::nullopt);
    }
    for (const layout::Conductor& conductor : graph.built.layout.conductors) {
        graph.circuitOf.push_back(indices.at(conductor.circuit));
    }
}

/// The circuit each circuit is tapped from in the end, itself if from none.
void readRoots(JointGraph& graph) {
    graph.roots.resize(graph.joins.size());
    std::iota(graph.roots.begin(), graph.roots.end(), std::size_t{0});
    for (std::size_t& root : graph.roots) {
        while (graph.joins[root]) {
            root = *graph.joins[root];
        }
    }
}

void sortById(const JointGraph& graph, std::vector<std::size_t>& conductors) {
    std::sort(conductors.begin(), conductors.end(), [&](std::size_t a, std::size_t b) {
        return graph.idOf(a) < graph.idOf(b);
    });
    conductors.erase(std::unique(conductors.begin(), conductors.end()), conductors.end());
}

void readConductors(JointGraph& graph) {
    const auto& layout = graph.built.layout;
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        const Phase phase = layout.conductors[i].phase;
        const Circuit& circuit = layout.circuits[graph.circuitOf[i]];
        graph.netOf.push_back(graph.netFor(graph.circuitOf[i], phase));
        graph.bonds.push_back(circuit.role == Role::bonding && circuit.bondsNeutral == true);
        graph.members[{graph.circuitOf[i], phase}].push_back(i);
    }
    for (auto& [key, conductors] : graph.members) {
        sortById(graph, conductors);
    }
}

std::vector<std::size_t> blocksOf(const geometry::BuiltConductor& conductor) {
    std::vector<std::size_t> blocks;
    for (const geometry::BuiltEnd* end : {&conductor.from, &conductor.to}) {
        if (end->block) {
            blocks.push_back(*end->block);
        }
    }
    for (const geometry::BuiltPass& pass : conductor.passes) {
        blocks.push_back(pass.block);
    }
    std::sort(blocks.begin(), blocks.end());
    blocks.erase(std::unique(blocks.begin(), blocks.end()), blocks.end());
    return blocks;
}

void readLandings(JointGraph& graph) {
    graph.blocks.resize(graph.built.blocks.size());
    for (std::size_t i = 0; i < graph.built.conductors.size(); ++i) {
        const auto blocks = blocksOf(graph.built.conductors[i]);
        graph.landed.push_back(!blocks.empty());
        for (const std::size_t block : blocks) {
            graph.blocks[block].conductors.push_back(i);
        }
    }
    for (JointBlock& block : graph.blocks) {
        sortById(graph, block.conductors);
    }
}

// ---- one block ------------------------------------------------------------------------------

bool isAlike(const Net& bonding, const Net& other) {
    return bonding.phase == other.phase && bonding.system == other.system;
}

/// Conductors by net; those of bonding circuits go with any circuits of their phase and system.
std::map<Net, std::vector<std::size_t>> netsIn(const JointGraph& graph,
                                               const std::vector<std::size_t>& conductors) {
    std::map<Net, std::vector<std::size_t>> nets;
    for (const std::size_t i : conductors) {
        if (!graph.bonds[i]) {
            nets[graph.netOf[i]].push_back(i);
        }
    }
    for (auto one = nets.begin(); one != nets.end();) {
        const bool bonding = one->first.family.empty() && one->first.phase != Phase::g;
        const auto host = std::find_if(nets.begin(), nets.end(), [&](const auto& other) {
            return bonding && !other.first.family.empty() && isAlike(one->first, other.first);
        });
        if (host == nets.end()) {
            ++one;
            continue;
        }
        host->second.insert(host->second.end(), one->second.begin(), one->second.end());
        one = nets.erase(one);
    }
    return nets;
}

/// What a block is for: among the nets of the phase it states, if it has any, the one with the most
/// conductors; none where two have the most.
std::optional<Net> prevailing(const JointBlock& block, const std::optional<Phase>& stated) {
    const bool hasStated = std::any_of(block.nets.begin(), block.nets.end(), [&](const auto& net) {
        return net.first.phase == stated;
    });
    std::optional<Net> best;
    std::size_t most = 0;
    for (const auto& [net, conductors] : block.nets) {
        if (hasStated && net.phase != stated) {
            continue;
        }
        if (conductors.size() > most) {
            best = net;
            most = conductors.size();
        } else if (conductors.size() == most) {
            best.reset();
        }
    }
    return best;
}

template <class Part>
std::size_t countOf(const JointBlock& block, Part part) {
    std::set<std::decay_t<decltype(part(block.nets.begin()->first))>> all;
    for (const auto& [net, conductors] : block.nets) {
        all.insert(part(net));
    }
    return all.size();
}

Clash clashOf(const JointBlock& block) {
    if (block.nets.size() < 2) {
        return Clash::none;
    }
    if (countOf(block, [](const Net& net) { return net.phase; }) > 1) {
        return Clash::phases;
    }
    return countOf(block, [](const Net& net) { return net.system; }) > 1 ? Clash::systems
                                                                         : Clash::circuits;
}

bool isNeutralOrGround(Phase phase) {
    return phase == Phase::n || phase == Phase::g;
}

/// Whether N and G meet here and no longer would, were the conductors of bonding circuits that do
/// not say whether they join them left out.
std::vector<std::size_t> perhapsBonding(const JointGraph& graph, const JointBlock& block) {
    const bool onlyNeutralAndGround =
        std::all_of(block.nets.begin(), block.nets.end(), [](const auto& net) {
            return isNeutralOrGround(net.first.phase);
        });
    if (block.clash != Clash::phases || !onlyNeutralAndGround) {
        return {};
    }
    std::vector<std::size_t> others;
    std::set<std::size_t> unsure;
    for (const std::size_t i : block.conductors) {
        const Circuit& circuit = graph.built.layout.circuits[graph.circuitOf[i]];
        if (circuit.role == Role::bonding && !circuit.bondsNeutral) {
            unsure.insert(graph.circuitOf[i]);
        } else {
            others.push_back(i);
        }
    }
    return netsIn(graph, others).size() <= 1 ? std::vector(unsure.begin(), unsure.end())
                                             : std::vector<std::size_t>{};
}

void findAstray(const JointGraph& graph, JointBlock& block) {
    for (const auto& [net, conductors] : block.nets) {
        if (block.nets.size() > 1 && (!block.carries || net != *block.carries)) {
            block.astray.insert(block.astray.end(), conductors.begin(), conductors.end());
        }
    }
    const bool live = std::any_of(block.nets.begin(), block.nets.end(), [](const auto& net) {
        return !isNeutralOrGround(net.first.phase);
    });
    for (const std::size_t i : block.conductors) {
        if (graph.bonds[i] && live) {
            block.astray.push_back(i);
            block.clash = block.clash == Clash::none ? Clash::bondOnPhase : block.clash;
        }
    }
}

void judgeBlock(const JointGraph& graph, JointBlock& block, const std::optional<Phase>& stated) {
    block.nets = netsIn(graph, block.conductors);
    block.carries = prevailing(block, stated);
    block.clash = clashOf(block);
    block.perhapsBonding = perhapsBonding(graph, block);
    if (block.perhapsBonding.empty()) {
        findAstray(graph, block);
    }
    if (block.clash == Clash::none && stated && block.carries && block.carries->phase != *stated) {
        block.clash = Clash::label;
    }
}

void joinPieces(JointGraph& graph) {
    const std::size_t conductors = graph.built.conductors.size();
    graph.strayed.assign(conductors, 0);
    for (std::size_t block = 0; block < graph.blocks.size(); ++block) {
        const std::set<std::size_t> astray(graph.blocks[block].astray.begin(),
                                           graph.blocks[block].astray.end());
        for (const std::size_t i : graph.blocks[block].conductors) {
            if (astray.count(i) > 0) {
                ++graph.strayed[i];
            } else if (!graph.bonds[i]) {
                graph.pieces.join(i, conductors + block);
            }
        }
    }
}

// ---- what lies apart ------------------------------------------------------------------------

/// Groups of conductors that belong together: all of one phase of circuits that join one another.
std::vector<std::vector<std::size_t>> belongingTogether(const JointGraph& graph) {
    Groups wanted(graph.built.conductors.size());
    std::set<std::size_t> concerned;
    for (const auto& [key, conductors] : graph.members) {
        const auto& joined = graph.joins[key.first];
        if (!joined || graph.bonds[conductors.front()] ||
            graph.membersOf(*joined, key.second).empty()) {
            continue;
        }
        const auto& others = graph.membersOf(*joined, key.second);
        for (const auto* list : {&conductors, &others}) {
            for (const std::size_t i : *list) {
                wanted.join(i, others.front());
                concerned.insert(i);
            }
        }
    }
    std::map<std::size_t, std::vector<std::size_t>> groups;
    for (const std::size_t i : concerned) {
        groups[wanted.groupOf(i)].push_back(i);
    }
    std::vector<std::vector<std::size_t>> lists;
    for (auto& [root, list] : groups) {
        lists.push_back(std::move(list));
    }
    return lists;
}

using Piece = std::vector<std::size_t>;

/// The pieces a group lies in; the main one first: on a block, with the most conductors, and by id
/// where two are alike. Then those that are astray, which a block tells of; then the others by id.
std::vector<Piece> piecesOfGroup(const JointGraph& graph, Piece group) {
    sortById(graph, group);
    std::map<std::size_t, Piece> byRoot;
    for (const std::size_t i : group) {
        byRoot[graph.pieceOf(i)].push_back(i);
    }
    std::vector<Piece> pieces;
    for (auto& [root, piece] : byRoot) {
        pieces.push_back(std::move(piece));
    }
    const auto rank = [&](const Piece& piece) {
        const bool blockless = !graph.landed[piece.front()];
        return std::tuple(blockless, -std::ptrdiff_t(piece.size()), graph.idOf(piece.front()));
    };
    const auto main = std::min_element(
        pieces.begin(), pieces.end(), [&](auto& a, auto& b) { return rank(a) < rank(b); });
    std::iter_swap(pieces.begin(), main);
    const auto order = [&](const Piece& piece) {
        const bool astray = std::all_of(
            piece.begin(), piece.end(), [&](std::size_t i) { return graph.strayed[i] > 0; });
        return std::tuple(!astray, graph.idOf(piece.front()));
    };
    std::sort(pieces.begin() + 1, pieces.end(), [&](const Piece& a, const Piece& b) {
        return order(a) < order(b);
    });
    return pieces;
}

/// The pieces of a group that are told of, by the piece's root.
using Told = std::map<std::size_t, Apart>;

Told toldOf(const JointGraph& graph, const std::vector<Piece>& pieces, const Piece& group) {
    // Every conductor that is astray at a block leaves one connection open there.
    std::size_t explained = 0;
    for (const std::size_t i : group) {
        explained += graph.strayed[i];
    }
    Told told;
    for (std::size_t i = 1 + explained; i < pieces.size(); ++i) {
        Apart& apart = told[graph.pieceOf(pieces[i].front())];
        apart.conductors = pieces[i];
        apart.partly = true;
    }
    return told;
}

/// Notes at both pieces that a tap does not reach one of the conductors it is tapped from.
void noteGap(const JointGraph& graph, Told& told, std::size_t tap, std::size_t other, bool partly) {
    const bool parallel = graph.built.layout.circuits[graph.circuitOf[other]].sets > 1;
    for (const auto& [here, there] : {std::pair(tap, other), std::pair(other, tap)}) {
        const auto apart = told.find(graph.pieceOf(here));
        if (apart != told.end()) {
            apart->second.from.push_back(there);
            apart->second.partly = apart->second.partly && partly;
            apart->second.parallel = apart->second.parallel || parallel;
        }
    }
}

void noteGaps(const JointGraph& graph, Told& told, std::size_t tap) {
    const auto& joined = graph.joins[graph.circuitOf[tap]];
    if (!joined) {
        return;
    }
    const auto& set = graph.membersOf(*joined, graph.netOf[tap].phase);
    const auto reached = [&](std::size_t other) {
        return graph.pieceOf(other) == graph.pieceOf(tap);
    };
    const bool partly = std::any_of(set.begin(), set.end(), reached);
    for (const std::size_t other : set) {
        if (!reached(other)) {
            noteGap(graph, told, tap, other, partly);
        }
    }
}

}  // namespace

Groups::Groups(std::size_t things) : parent_(things), sizes_(things, 1) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
}

std::size_t Groups::groupOf(std::size_t thing) const {
    while (parent_[thing] != thing) {
        thing = parent_[thing];
    }
    return thing;
}

void Groups::join(std::size_t a, std::size_t b) {
    a = groupOf(a);
    b = groupOf(b);
    if (a == b) {
        return;
    }
    // The smaller under the larger, so that chains stay short.
    const auto [small, large] = sizes_[a] < sizes_[b] ? std::pair(a, b) : std::pair(b, a);
    parent_[small] = large;
    sizes_[large] += sizes_[small];
}

JointGraph::JointGraph(const BuiltLayout& layout)
    : built(layout), pieces(layout.conductors.size() + layout.blocks.size()) {
    readCircuits(*this);
    readRoots(*this);
    readConductors(*this);
    readLandings(*this);
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        judgeBlock(*this, blocks[i], built.layout.blocks[i].phase);
    }
    joinPieces(*this);
}

Net JointGraph::netFor(std::size_t circuit, Phase phase) const {
    const Circuit& one = built.layout.circuits[circuit];
    if (phase == Phase::g) {
        return {phase, {}, {}};
    }
    return {
        phase,
        one.system,
        one.role == Role::bonding ? layout::CircuitId() : built.layout.circuits[roots[circuit]].id};
}

const std::vector<std::size_t>& JointGraph::membersOf(std::size_t circuit, Phase phase) const {
    static const std::vector<std::size_t> kNone;
    const auto found = members.find({circuit, phase});
    return found == members.end() ? kNone : found->second;
}

const layout::ConductorId& JointGraph::idOf(std::size_t conductor) const {
    return built.layout.conductors[conductor].id;
}

std::vector<Apart> whatLiesApart(const JointGraph& graph) {
    std::vector<Apart> all;
    for (const auto& group : belongingTogether(graph)) {
        auto told = toldOf(graph, piecesOfGroup(graph, group), group);
        for (const std::size_t tap : told.empty() ? Piece() : group) {
            noteGaps(graph, told, tap);
        }
        for (auto& [root, apart] : told) {
            sortById(graph, apart.from);
            all.push_back(std::move(apart));
        }
    }
    const auto byId = [&](const Apart& a, const Apart& b) {
        return graph.idOf(a.conductors.front()) < graph.idOf(b.conductors.front());
    };
    std::sort(all.begin(), all.end(), byId);
    return all;
}

}  // namespace gw::checks
