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

/// The graph while it is made.
struct Making {
    const BuiltLayout& built;
    const Links& links;
    JointGraph& graph;
};

/// The circuit each circuit is tapped from in the end, itself if from none.
void readRoots(const Making& at) {
    at.graph.roots.resize(at.links.joins.size());
    std::iota(at.graph.roots.begin(), at.graph.roots.end(), std::size_t{0});
    for (std::size_t& root : at.graph.roots) {
        while (at.links.joins[root]) {
            root = *at.links.joins[root];
        }
    }
}

void sortById(const Making& at, std::vector<std::size_t>& conductors) {
    std::sort(conductors.begin(), conductors.end(), [&](std::size_t a, std::size_t b) {
        return at.links.rank[a] < at.links.rank[b];
    });
    conductors.erase(std::unique(conductors.begin(), conductors.end()), conductors.end());
}

void readConductors(const Making& at) {
    const auto& layout = at.built.layout;
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        const Phase phase = layout.conductors[i].phase;
        const Circuit& circuit = layout.circuits[at.links.circuitOf[i]];
        at.graph.netOf.push_back(netFor(at.built, at.graph.roots, at.links.circuitOf[i], phase));
        at.graph.bonds.push_back(circuit.role == Role::bonding && circuit.bondsNeutral == true);
        at.graph.members[{at.links.circuitOf[i], phase}].push_back(i);
    }
    for (auto& [key, conductors] : at.graph.members) {
        sortById(at, conductors);
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

void readLandings(const Making& at) {
    at.graph.blocks.resize(at.built.blocks.size());
    for (std::size_t i = 0; i < at.built.conductors.size(); ++i) {
        const auto blocks = blocksOf(at.built.conductors[i]);
        at.graph.landed.push_back(!blocks.empty());
        for (const std::size_t block : blocks) {
            at.graph.blocks[block].conductors.push_back(i);
        }
    }
    for (JointBlock& block : at.graph.blocks) {
        sortById(at, block.conductors);
    }
}

// ---- one block ------------------------------------------------------------------------------

bool isAlike(const Net& bonding, const Net& other) {
    return bonding.phase == other.phase && bonding.system == other.system;
}

/// Conductors by net; those of bonding circuits go with any circuits of their phase and system.
std::map<Net, std::vector<std::size_t>> netsIn(const Making& at,
                                               const std::vector<std::size_t>& conductors) {
    std::map<Net, std::vector<std::size_t>> nets;
    for (const std::size_t i : conductors) {
        if (!at.graph.bonds[i]) {
            nets[at.graph.netOf[i]].push_back(i);
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
std::vector<std::size_t> perhapsBonding(const Making& at, const JointBlock& block) {
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
        const Circuit& circuit = at.built.layout.circuits[at.links.circuitOf[i]];
        if (circuit.role == Role::bonding && !circuit.bondsNeutral) {
            unsure.insert(at.links.circuitOf[i]);
        } else {
            others.push_back(i);
        }
    }
    return netsIn(at, others).size() <= 1 ? std::vector(unsure.begin(), unsure.end())
                                          : std::vector<std::size_t>{};
}

void findAstray(const Making& at, JointBlock& block) {
    for (const auto& [net, conductors] : block.nets) {
        if (block.nets.size() > 1 && (!block.carries || net != *block.carries)) {
            block.astray.insert(block.astray.end(), conductors.begin(), conductors.end());
        }
    }
    const bool live = std::any_of(block.nets.begin(), block.nets.end(), [](const auto& net) {
        return !isNeutralOrGround(net.first.phase);
    });
    for (const std::size_t i : block.conductors) {
        if (at.graph.bonds[i] && live) {
            block.astray.push_back(i);
            block.clash = block.clash == Clash::none ? Clash::bondOnPhase : block.clash;
        }
    }
}

void judgeBlock(const Making& at, JointBlock& block, const std::optional<Phase>& stated) {
    block.nets = netsIn(at, block.conductors);
    block.carries = prevailing(block, stated);
    block.clash = clashOf(block);
    block.perhapsBonding = perhapsBonding(at, block);
    if (block.perhapsBonding.empty()) {
        findAstray(at, block);
    }
    if (block.clash == Clash::none && stated && block.carries && block.carries->phase != *stated) {
        block.clash = Clash::label;
    }
}

void joinPieces(const Making& at) {
    const std::size_t conductors = at.built.conductors.size();
    at.graph.strayed.assign(conductors, 0);
    for (std::size_t block = 0; block < at.graph.blocks.size(); ++block) {
        const std::set<std::size_t> astray(at.graph.blocks[block].astray.begin(),
                                           at.graph.blocks[block].astray.end());
        for (const std::size_t i : at.graph.blocks[block].conductors) {
            if (astray.count(i) > 0) {
                ++at.graph.strayed[i];
            } else if (!at.graph.bonds[i]) {
                at.graph.pieces.join(i, conductors + block);
            }
        }
    }
}

// ---- what lies apart ------------------------------------------------------------------------

/// Groups of conductors that belong together: all of one phase of circuits that join one another.
std::vector<std::vector<std::size_t>> belongingTogether(const Making& at) {
    Groups wanted(at.built.conductors.size());
    std::set<std::size_t> concerned;
    for (const auto& [key, conductors] : at.graph.members) {
        const auto& joined = at.links.joins[key.first];
        if (!joined || at.graph.bonds[conductors.front()] ||
            at.graph.membersOf(*joined, key.second).empty()) {
            continue;
        }
        const auto& others = at.graph.membersOf(*joined, key.second);
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
std::vector<Piece> piecesOfGroup(const Making& at, Piece group) {
    sortById(at, group);
    std::map<std::size_t, Piece> byRoot;
    for (const std::size_t i : group) {
        byRoot[at.graph.pieceOf(i)].push_back(i);
    }
    std::vector<Piece> pieces;
    for (auto& [root, piece] : byRoot) {
        pieces.push_back(std::move(piece));
    }
    const auto rank = [&](const Piece& piece) {
        const bool blockless = !at.graph.landed[piece.front()];
        return std::tuple(blockless, -std::ptrdiff_t(piece.size()), at.links.rank[piece.front()]);
    };
    const auto main = std::min_element(
        pieces.begin(), pieces.end(), [&](auto& a, auto& b) { return rank(a) < rank(b); });
    std::iter_swap(pieces.begin(), main);
    const auto order = [&](const Piece& piece) {
        const bool astray = std::all_of(
            piece.begin(), piece.end(), [&](std::size_t i) { return at.graph.strayed[i] > 0; });
        return std::tuple(!astray, at.links.rank[piece.front()]);
    };
    std::sort(pieces.begin() + 1, pieces.end(), [&](const Piece& a, const Piece& b) {
        return order(a) < order(b);
    });
    return pieces;
}

/// The pieces of a group that are told of, by the piece's root.
using Told = std::map<std::size_t, Apart>;

Told toldOf(const Making& at, const std::vector<Piece>& pieces, const Piece& group) {
    // Every conductor that is astray at a block leaves one connection open there.
    std::size_t explained = 0;
    for (const std::size_t i : group) {
        explained += at.graph.strayed[i];
    }
    Told told;
    for (std::size_t i = 1 + explained; i < pieces.size(); ++i) {
        Apart& apart = told[at.graph.pieceOf(pieces[i].front())];
        apart.conductors = pieces[i];
        apart.partly = true;
    }
    return told;
}

/// Notes at both pieces that a tap does not reach one of the conductors it is tapped from.
void noteGap(const Making& at, Told& told, std::size_t tap, std::size_t other, bool partly) {
    const bool parallel = at.built.layout.circuits[at.links.circuitOf[other]].sets > 1;
    for (const auto& [here, there] : {std::pair(tap, other), std::pair(other, tap)}) {
        const auto apart = told.find(at.graph.pieceOf(here));
        if (apart != told.end()) {
            apart->second.from.push_back(there);
            apart->second.partly = apart->second.partly && partly;
            apart->second.parallel = apart->second.parallel || parallel;
        }
    }
}

void noteGaps(const Making& at, Told& told, std::size_t tap) {
    const auto& joined = at.links.joins[at.links.circuitOf[tap]];
    if (!joined) {
        return;
    }
    const auto& set = at.graph.membersOf(*joined, at.graph.netOf[tap].phase);
    const auto reached = [&](std::size_t other) {
        return at.graph.pieceOf(other) == at.graph.pieceOf(tap);
    };
    const bool partly = std::any_of(set.begin(), set.end(), reached);
    for (const std::size_t other : set) {
        if (!reached(other)) {
            noteGap(at, told, tap, other, partly);
        }
    }
}

std::vector<Apart> whatLiesApart(const Making& at) {
    std::vector<Apart> all;
    for (const auto& group : belongingTogether(at)) {
        auto told = toldOf(at, piecesOfGroup(at, group), group);
        for (const std::size_t tap : told.empty() ? Piece() : group) {
            noteGaps(at, told, tap);
        }
        for (auto& [root, apart] : told) {
            sortById(at, apart.from);
            all.push_back(std::move(apart));
        }
    }
    std::sort(all.begin(), all.end(), [&](const Apart& a, const Apart& b) {
        return at.links.rank[a.conductors.front()] < at.links.rank[b.conductors.front()];
    });
    return all;
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

JointGraph::JointGraph(const BuiltLayout& built, const Links& links)
    : pieces(built.layout.conductors.size() + built.layout.blocks.size()) {
    const Making at{built, links, *this};
    readRoots(at);
    readConductors(at);
    readLandings(at);
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        judgeBlock(at, blocks[i], built.layout.blocks[i].phase);
    }
    joinPieces(at);
    apart = whatLiesApart(at);
    liesApart.resize(built.conductors.size());
    for (const Apart& one : apart) {
        for (const std::size_t i : one.conductors) {
            liesApart[i] = true;
        }
    }
}

const std::vector<std::size_t>& JointGraph::membersOf(std::size_t circuit, Phase phase) const {
    static const std::vector<std::size_t> kNone;
    const auto found = members.find({circuit, phase});
    return found == members.end() ? kNone : found->second;
}

Net netFor(const BuiltLayout& built,
           const std::vector<std::size_t>& roots,
           std::size_t circuit,
           Phase phase) {
    const Circuit& one = built.layout.circuits[circuit];
    if (phase == Phase::g) {
        return {phase, {}, {}};
    }
    return {
        phase,
        one.system,
        one.role == Role::bonding ? layout::CircuitId() : built.layout.circuits[roots[circuit]].id};
}

}  // namespace gw::checks
