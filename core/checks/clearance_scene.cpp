#include "checks/clearance_scene.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <tuple>

#include "base/tolerance.h"
#include "checks/occupancy.h"
#include "checks/support.h"

namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::BuiltPass;
using geometry::Closest;
using geometry::SceneItem;

using PortOfBlock = std::pair<std::size_t, std::size_t>;

/// A stretch of a conductor that belongs to a port.
struct Held {
    enum class Kind {
        bore,    ///< inside the bore
        mouth,   ///< a little beyond, where the round end of a tube would touch the body
        shared,  ///< beyond, until conductors of one port have parted
    };
    double from = 0.0;
    double to = 0.0;
    PortOfBlock port;
    Kind kind = Kind::bore;
};

/// Whose item of the scene it is.
struct Owner {
    bool isBlock = false;
    std::size_t index = 0;
    std::set<std::size_t> heldBy{};    ///< blocks: in a bore or at its mouth
    std::set<std::size_t> inBoreOf{};  ///< blocks
    std::set<PortOfBlock> portsOf{};   ///< ports whose conductors have not parted here
};

/// How far a conductor runs from a mouth until it is `aside` from the axis it left on: its straight
/// leg, and as much of the first bend and the leg behind it as that takes.
double untilAside(const BuiltConductor& conductor, double mouth, bool forward, double aside) {
    const auto& bends = conductor.built.bends;
    double least = conductor.built.path.length().in();
    const geometry::BuiltPath::Bend* first = nullptr;
    for (const auto& bend : bends) {
        const double near =
            forward ? bend.start - mouth : mouth - (bend.start + bend.radius * bend.turn);
        if (bend.turn > kSameDirection && near >= -kLimitSlack && near < least) {
            least = near;
            first = &bend;
        }
    }
    if (first == nullptr) {
        return least;
    }
    const double after = first->radius * (1.0 - std::cos(first->turn));
    if (after >= aside) {
        return least + first->radius * std::acos(1.0 - aside / first->radius);
    }
    return least + first->radius * first->turn + (aside - after) / std::sin(first->turn);
}

/// How far from the port's axis an occupant has to be to be clear of the others: its own radius and
/// the thickest other's, and as much again for one that follows its turn. Empty where the port
/// holds one conductor.
std::optional<double> asideIn(const BuiltLayout& built,
                              const std::vector<Occupant>& occupants,
                              std::size_t conductor) {
    std::optional<double> widest;
    for (const Occupant& other : occupants) {
        if (other.conductor != conductor) {
            const double radius = built.conductors[other.conductor].radius();
            widest = std::max(widest.value_or(0.0), radius);
        }
    }
    const double own = built.conductors[conductor].radius();
    return widest ? std::optional(2.0 * (*widest + own)) : std::nullopt;
}

struct Holder {
    const BuiltLayout& built;
    const Occupancy& occupancy;
    std::size_t index;
    std::vector<Held> held{};

    const BuiltConductor& conductor() const { return built.conductors[index]; }

    /// The bore between two arc lengths, and the stretches beyond its mouths (cut off at the tips).
    void hold(double from, double to, const PortOfBlock& port) {
        const double beyond = kHeldRadii * conductor().radius();
        held.push_back({from, to, port, Held::Kind::bore});
        held.push_back({from - beyond, from, port, Held::Kind::mouth});
        held.push_back({to, to + beyond, port, Held::Kind::mouth});
        const auto aside = asideIn(built, occupancy[port.first][port.second], index);
        if (!aside) {
            return;
        }
        const double before = std::max(beyond, untilAside(conductor(), from, false, *aside));
        const double after = std::max(beyond, untilAside(conductor(), to, true, *aside));
        held.push_back({from - before, to + after, port, Held::Kind::shared});
    }
};

std::vector<Held> heldStretches(const BuiltLayout& built,
                                const Occupancy& occupancy,
                                std::size_t index) {
    Holder holder{built, occupancy, index};
    const BuiltConductor& conductor = holder.conductor();
    const double length = conductor.built.path.length().in();
    const auto& [from, to] = std::tie(conductor.from, conductor.to);
    if (from.kind == BuiltEnd::Kind::port) {
        holder.hold(0.0, from.mouthAt, {given(from.block), given(from.port)});
    }
    for (const BuiltPass& pass : conductor.passes) {
        const auto [first, last] = std::minmax(pass.nearAt, pass.farAt);
        holder.hold(first, last, {pass.block, pass.port});
    }
    if (to.kind == BuiltEnd::Kind::port) {
        holder.hold(to.mouthAt, length, {given(to.block), given(to.port)});
    }
    return holder.held;
}

/// Where the conductor is cut into items: at the ends of held stretches, inside the path.
std::vector<double> cutsOf(const std::vector<Held>& held, double length) {
    std::vector<double> cuts = {0.0, length};
    for (const Held& one : held) {
        cuts.push_back(std::clamp(one.from, 0.0, length));
        cuts.push_back(std::clamp(one.to, 0.0, length));
    }
    std::sort(cuts.begin(), cuts.end());
    return cuts;
}

void noteHolders(Owner& owner, const std::vector<Held>& held, double s) {
    for (const Held& one : held) {
        if (s < one.from || one.to < s) {
            continue;
        }
        switch (one.kind) {
            case Held::Kind::bore:
                owner.inBoreOf.insert(one.port.first);
                owner.heldBy.insert(one.port.first);
                break;
            case Held::Kind::mouth:
                owner.heldBy.insert(one.port.first);
                break;
            case Held::Kind::shared:
                owner.portsOf.insert(one.port);
                break;
        }
    }
}

struct Scene {
    std::vector<SceneItem> items;
    std::vector<Owner> owners;  ///< as the items
};

void addConductor(Scene& scene,
                  const BuiltLayout& built,
                  const Occupancy& occupancy,
                  std::size_t index) {
    const BuiltConductor& conductor = built.conductors[index];
    const double length = conductor.built.path.length().in();
    const auto held = heldStretches(built, occupancy, index);
    const auto cuts = cutsOf(held, length);
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        if (cuts[i + 1] - cuts[i] <= kSamePoint) {
            continue;
        }
        SceneItem item;
        item.path = &conductor.built.path;
        item.radius = conductor.radius();
        item.from = cuts[i];
        item.to = cuts[i + 1];
        item.group = static_cast<std::uint32_t>(index + 1);
        scene.items.push_back(item);
        scene.owners.push_back({false, index});
        noteHolders(scene.owners.back(), held, (item.from + item.to) / 2.0);
    }
}

Scene sceneOf(const BuiltLayout& built) {
    Scene scene;
    const Occupancy occupancy = occupancyOf(built);
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        addConductor(scene, built, occupancy, i);
    }
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        SceneItem item;
        item.box = built.blocks[i].body;
        scene.items.push_back(item);
        scene.owners.push_back({true, i});
    }
    return scene;
}

bool holds(const Owner& block, const Owner& conductor) {
    return conductor.heldBy.count(block.index) > 0;
}

template <class T>
bool meet(const std::set<T>& a, const std::set<T>& b) {
    return std::any_of(a.begin(), a.end(), [&](const T& one) { return b.count(one) > 0; });
}

/// Whether a lies in a bore of a block that holds b: the block's body is between them.
bool blockParts(const Owner& a, const Owner& b) {
    return meet(a.inBoreOf, b.heldBy);
}

bool shareAPort(const Owner& a, const Owner& b) {
    return meet(a.portsOf, b.portsOf);
}

void keepLeast(std::map<Pair, Closest>& nearest, const Pair& pair, const Closest& closest) {
    const auto [at, fresh] = nearest.emplace(pair, closest);
    if (!fresh && closest.gap < at->second.gap) {
        at->second = closest;
    }
}

Closest swapped(const Closest& closest) {
    return {closest.gap, closest.onB, closest.onA, closest.sB, closest.sA};
}

/// a, b in any order of kinds; the pair is kept as Neighbours says.
void keep(Neighbours& neighbours, const Owner& a, const Owner& b, const Closest& closest) {
    if (a.isBlock && !b.isBlock) {
        keep(neighbours, b, a, swapped(closest));
    } else if (a.isBlock) {
        keepLeast(neighbours.blocks, {a.index, b.index}, closest);
    } else if (b.isBlock) {
        if (!holds(b, a)) {
            keepLeast(neighbours.conductorsAndBlocks, {a.index, b.index}, closest);
        }
    } else if (!shareAPort(a, b) && !blockParts(a, b) && !blockParts(b, a)) {
        keepLeast(neighbours.conductors, {a.index, b.index}, closest);
    }
}

}  // namespace

Neighbours neighboursOf(const BuiltLayout& built) {
    const Scene scene = sceneOf(built);
    Neighbours neighbours;
    for (const auto& pair : geometry::nearPairs(scene.items, kNeighbourhood)) {
        keep(neighbours, scene.owners[pair.a], scene.owners[pair.b], pair.closest);
    }
    return neighbours;
}

}  // namespace gw::checks
