#include "checks/clearance_scene.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "base/tolerance.h"
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

/// A stretch of a conductor that counts as held by a port: in the bore, and a little beyond.
struct Held {
    double from = 0.0;
    double to = 0.0;
    PortOfBlock port;
    bool inBore = false;
};

/// Whose item of the scene it is.
struct Owner {
    bool isBlock = false;
    std::size_t index = 0;
    std::set<PortOfBlock> heldBy{};
    std::set<std::size_t> inBoreOf{};  ///< blocks
};

/// The bore between two arc lengths, and the stretches beyond its mouths (cut off at the tips).
void hold(std::vector<Held>& held, double from, double to, double beyond, const PortOfBlock& port) {
    held.push_back({from, to, port, true});
    held.push_back({from - beyond, from, port, false});
    held.push_back({to, to + beyond, port, false});
}

std::vector<Held> heldStretches(const BuiltConductor& conductor) {
    const double beyond = kHeldRadii * conductor.radius();
    const double length = conductor.built.path.length().in();
    const auto& [from, to] = std::tie(conductor.from, conductor.to);
    std::vector<Held> held;
    if (from.kind == BuiltEnd::Kind::port) {
        hold(held, 0.0, from.mouthAt, beyond, {given(from.block), given(from.port)});
    }
    for (const BuiltPass& pass : conductor.passes) {
        const auto [first, last] = std::minmax(pass.nearAt, pass.farAt);
        hold(held, first, last, beyond, {pass.block, pass.port});
    }
    if (to.kind == BuiltEnd::Kind::port) {
        hold(held, to.mouthAt, length, beyond, {given(to.block), given(to.port)});
    }
    return held;
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
        owner.heldBy.insert(one.port);
        if (one.inBore) {
            owner.inBoreOf.insert(one.port.first);
        }
    }
}

struct Scene {
    std::vector<SceneItem> items;
    std::vector<Owner> owners;  ///< as the items
};

void addConductor(Scene& scene, const BuiltConductor& conductor, std::size_t index) {
    const double length = conductor.built.path.length().in();
    const auto held = heldStretches(conductor);
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
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        addConductor(scene, built.conductors[i], i);
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
    return std::any_of(conductor.heldBy.begin(), conductor.heldBy.end(), [&](const auto& port) {
        return port.first == block.index;
    });
}

/// Whether a lies in a bore of a block that holds b: the block's body is between them.
bool blockParts(const Owner& a, const Owner& b) {
    return std::any_of(a.inBoreOf.begin(), a.inBoreOf.end(), [&](std::size_t block) {
        return std::any_of(b.heldBy.begin(), b.heldBy.end(), [&](const PortOfBlock& port) {
            return port.first == block;
        });
    });
}

bool shareAPort(const Owner& a, const Owner& b) {
    return std::any_of(a.heldBy.begin(), a.heldBy.end(), [&](const PortOfBlock& port) {
        return b.heldBy.contains(port);
    });
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
