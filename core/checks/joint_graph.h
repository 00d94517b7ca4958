#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "checks/finding.h"
#include "checks/links.h"
#include "geometry/built_layout.h"

/// Which conductors the blocks join, which of them should not be there, and which should be joined
/// and are not. Blocks and conductors are the nodes; an end in a port and a pass are the edges.
///
/// Equipment grounding conductors (phase G) are joined across circuits and systems on purpose
/// (250.148), so neither is held against them.
namespace gw::checks {

/// Groups of things that were joined, whichever way round.
class Groups {
public:
    explicit Groups(std::size_t things);
    void join(std::size_t a, std::size_t b);
    /// One member of the group: the same for all its members.
    std::size_t groupOf(std::size_t thing) const;
    bool together(std::size_t a, std::size_t b) const { return groupOf(a) == groupOf(b); }

private:
    std::vector<std::size_t> parent_;
    std::vector<std::size_t> sizes_;  ///< of the groups, at their roots
};

/// What must not meet anything else: one phase of the circuits that join one another.
struct Net {
    layout::Phase phase = layout::Phase::a;
    layout::SystemId system;  ///< empty for G
    layout::CircuitId
        family;  ///< the circuit all the others join; empty for G and bonding circuits
    friend bool operator==(const Net&, const Net&) = default;
    friend bool operator<(const Net& a, const Net& b) {
        return std::tie(a.phase, a.system, a.family) < std::tie(b.phase, b.system, b.family);
    }
};

/// One block and what lands in it.
struct JointBlock {
    enum class Clash { none, label, phases, systems, circuits, bondOnPhase };

    std::vector<std::size_t> conductors;  ///< each once, by id
    std::map<Net, std::vector<std::size_t>> nets;
    std::optional<Net> carries;  ///< what it is for; empty where nothing prevails
    Clash clash = Clash::none;
    /// Conductors that do not belong here: all where nothing prevails; none where only the label
    /// is wrong.
    std::vector<std::size_t> astray;
    /// Circuits whose unstated `bondsNeutral` decides about N and G here. Then nothing is astray.
    std::vector<std::size_t> perhapsBonding;
};

/// Conductors that belong together and lie on a piece of their own.
struct Apart {
    std::vector<std::size_t> conductors;  ///< by id
    std::vector<std::size_t> from;        ///< what they should be joined to, by id
    bool partly = false;  ///< every tap reaches some of the set it is tapped from, none reaches all
    bool parallel = false;  ///< it is about a parallel set
};

/// From the layout alone: what is attached to what, wherever it lies.
struct JointGraph {
    JointGraph(const geometry::BuiltLayout& built, const Links& links);

    std::vector<std::size_t> roots;  ///< by circuit: what it is tapped from at last
    std::vector<Net> netOf;          ///< by conductor
    std::vector<bool> bonds;         ///< conductors that join N and G on purpose
    /// By circuit and phase, by id.
    std::map<std::pair<std::size_t, layout::Phase>, std::vector<std::size_t>> members;
    std::vector<JointBlock> blocks;
    std::vector<bool> landed;          ///< conductors that touch any block
    std::vector<std::size_t> strayed;  ///< by conductor: at how many blocks it is astray
    /// Conductors, then blocks: joined where the conductor belongs on the block.
    Groups pieces;
    /// What lies apart and is not explained by a conductor that is astray at a block already: one
    /// each for every connection that has to be made.
    std::vector<Apart> apart;
    std::vector<bool> liesApart;  ///< by conductor

    const std::vector<std::size_t>& membersOf(std::size_t circuit, layout::Phase phase) const;
    std::size_t pieceOf(std::size_t conductor) const { return pieces.groupOf(conductor); }
};

/// roots: as in JointGraph.
Net netFor(const geometry::BuiltLayout& built,
           const std::vector<std::size_t>& roots,
           std::size_t circuit,
           layout::Phase phase);

}  // namespace gw::checks
