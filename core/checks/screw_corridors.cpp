#include "checks/screw_corridors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <numbers>
#include <tuple>

#include "base/tolerance.h"
#include "checks/clearance_scene.h"
#include "checks/support.h"
#include "geometry/near_pairs.h"
#include "geometry/solids.h"

namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::Path;
using geometry::SceneItem;
using layout::Wall;

constexpr Vec3 kTowardCover{0, 0, 1};

/// A stretch of a conductor that a block holds: in its bore, and just beyond the mouths.
struct Held {
    double from = 0.0;
    double to = 0.0;
    std::size_t block = 0;
};

std::vector<Held> heldStretches(const BuiltConductor& conductor) {
    const double beyond = kHeldRadii * conductor.radius();
    const double length = conductor.built.path.length().in();
    std::vector<Held> held;
    if (conductor.from.kind == BuiltEnd::Kind::port) {
        held.push_back({0.0, conductor.from.mouthAt + beyond, given(conductor.from.block)});
    }
    for (const auto& pass : conductor.passes) {
        const auto [first, last] = std::minmax(pass.nearAt, pass.farAt);
        held.push_back({first - beyond, last + beyond, pass.block});
    }
    if (conductor.to.kind == BuiltEnd::Kind::port) {
        held.push_back({conductor.to.mouthAt - beyond, length, given(conductor.to.block)});
    }
    return held;
}

/// Where the held stretches begin and end, inside the path, in order.
std::vector<double> cutsOf(const std::vector<Held>& held, double length) {
    std::vector<double> cuts{0.0, length};
    for (const Held& one : held) {
        cuts.push_back(std::clamp(one.from, 0.0, length));
        cuts.push_back(std::clamp(one.to, 0.0, length));
    }
    std::sort(cuts.begin(), cuts.end());
    return cuts;
}

/// Corridors of some blocks, by block.
using SomeCorridors = std::vector<std::vector<ScrewCorridor>*>;

/// Conductors cut into stretches, blocks, and the corridors as tubes. Corridors come last.
class Scene {
public:
    Scene(const BuiltLayout& built, const SomeCorridors& corridors, const geometry::Things& things)
        : built_(built) {
        for (const std::size_t i : things.conductors) {
            addConductor(i);
        }
        for (const std::size_t i : things.blocks) {
            items_.push_back({.box = built.blocks[i].body, .group = kThings});
            owners_.push_back({NearCorridor::Kind::block, i, {i}});
        }
        firstCorridor_ = items_.size();
        for (auto* ofBlock : corridors) {
            for (ScrewCorridor& corridor : *ofBlock) {
                addCorridor(corridor);
            }
        }
    }

    void findNeighbours() {
        const auto counts = [&](std::uint32_t a, std::uint32_t b) {
            const auto& held = owners_[a].heldBy;
            const std::size_t own = corridorOf(b).block;
            return std::find(held.begin(), held.end(), own) == held.end();
        };
        for (const auto& pair : geometry::nearPairs(items_, kNeighbourhood, counts)) {
            keepNearest(corridorOf(pair.b).near, nearOf(pair));
        }
    }

private:
    /// Things are not held against things, nor corridors against corridors.
    static constexpr std::uint32_t kThings = 1;
    static constexpr std::uint32_t kCorridors = 2;

    struct Owner {
        NearCorridor::Kind kind;
        std::size_t index;
        std::vector<std::size_t> heldBy;  ///< blocks whose screws it cannot be in the way of
    };

    ScrewCorridor& corridorOf(std::size_t item) const {
        return *corridorOf_[item - firstCorridor_];
    }

    void addConductor(std::size_t index) {
        const BuiltConductor& conductor = built_.conductors[index];
        const auto held = heldStretches(conductor);
        const auto cuts = cutsOf(held, conductor.built.path.length().in());
        for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
            if (cuts[i + 1] - cuts[i] <= kSamePoint) {
                continue;
            }
            const double middle = (cuts[i] + cuts[i + 1]) / 2.0;
            Owner owner{NearCorridor::Kind::conductor, index, {}};
            for (const Held& one : held) {
                if (one.from <= middle && middle <= one.to) {
                    owner.heldBy.push_back(one.block);
                }
            }
            items_.push_back({.path = &conductor.built.path,
                              .radius = conductor.radius(),
                              .from = cuts[i],
                              .to = cuts[i + 1],
                              .box = {},
                              .group = kThings});
            owners_.push_back(std::move(owner));
        }
    }

    /// None where the head stands in the plane of the cover or beyond: nothing is in between.
    void addCorridor(ScrewCorridor& corridor) {
        const Vec3 head = built_.blocks[corridor.block].screws[corridor.screw].head;
        const double length = built_.gutter().inside.z - head.z;
        if (!corridor.facesCover || !corridor.diameter || length <= kSamePoint) {
            return;
        }
        axes_.emplace_back(std::vector<geometry::Piece>{
            {.origin = head, .u = kTowardCover, .v = {}, .radius = 0.0, .length = length}});
        items_.push_back({.path = &axes_.back(),
                          .radius = *corridor.diameter / 2.0,
                          .from = 0.0,
                          .to = length,
                          .box = {},
                          .group = kCorridors});
        corridorOf_.push_back(&corridor);
    }

    /// The least box around the cylinder, to cut the round ends off the tube.
    geometry::Box slabOf(const SceneItem& corridor) const {
        const Vec3 aside{corridor.radius, corridor.radius, 0.0};
        return {corridor.path->start() - aside, corridor.path->end() + aside};
    }

    /// What is in the cylinder is in the tube with round ends and in the slab. So the greater of
    /// the two gaps is never too large, and exact where the thing is wholly in front of the head
    /// (the tube's) or behind it (the slab's face).
    NearCorridor nearOf(const geometry::NearPair& pair) const {
        const double toTube = pair.closest.gap.in();
        return {owners_[pair.a].kind,
                owners_[pair.a].index,
                std::max(toTube, toSlabUnlessInFront(items_[pair.a], items_[pair.b], toTube)),
                pair.closest.onA};
    }

    double toSlabUnlessInFront(const SceneItem& thing,
                               const SceneItem& corridor,
                               double toTube) const {
        if (thing.path == nullptr) {
            return geometry::clearance(thing.box, slabOf(corridor)).in();
        }
        const geometry::Tube tube{thing.path, thing.radius, thing.from, thing.to};
        if (geometry::bounds(tube).least.z >= corridor.path->start().z) {
            return toTube;
        }
        return geometry::clearance(tube, geometry::toOriented(slabOf(corridor))).gap.in();
    }

    static void keepNearest(std::vector<NearCorridor>& near, const NearCorridor& found) {
        const auto same = std::find_if(near.begin(), near.end(), [&](const NearCorridor& one) {
            return one.kind == found.kind && one.index == found.index;
        });
        if (same == near.end()) {
            near.push_back(found);
        } else if (found.gap < same->gap) {
            *same = found;
        }
    }

    const BuiltLayout& built_;
    std::vector<SceneItem> items_;
    std::vector<Owner> owners_;               ///< of the items that are no corridors
    std::deque<Path> axes_;                   ///< the items hold pointers into it
    std::vector<ScrewCorridor*> corridorOf_;  ///< [item - firstCorridor_]
    std::size_t firstCorridor_ = 0;
};

constexpr std::array<Wall, 4> kSides = {Wall::left, Wall::right, Wall::top, Wall::bottom};

void addWalls(ScrewCorridor& corridor, const BuiltLayout& built) {
    if (!corridor.facesCover || !corridor.diameter) {
        return;
    }
    const Vec3 head = built.blocks[corridor.block].screws[corridor.screw].head;
    for (const Wall wall : kSides) {
        const Vec3 inward = layout::inwardNormal(wall);
        const double wallAt = std::min(0.0, dot(built.gutter().inside, inward));
        const double toAxis = dot(head, inward) - wallAt;
        const double gap = toAxis - *corridor.diameter / 2.0;
        if (gap <= kNeighbourhood) {
            corridor.near.push_back({NearCorridor::Kind::wall,
                                     static_cast<std::size_t>(wall),
                                     gap,
                                     head - inward * toAxis});
        }
    }
}

std::vector<ScrewCorridor> emptyCorridors(const BuiltLayout& built,
                                          const Occupancy& occupancy,
                                          std::size_t block) {
    const parts::Part& part = *built.blocks[block].part;
    std::vector<ScrewCorridor> corridors;
    for (std::size_t port = 0; port < part.ports.size(); ++port) {
        if (occupancy.of(block, port).empty()) {
            continue;
        }
        for (std::size_t screw = 0; screw < part.screws.size(); ++screw) {
            if (part.screws[screw].port == part.ports[port].name) {
                corridors.push_back({block,
                                     port,
                                     screw,
                                     facesCover(built.blocks[block].screws[screw]),
                                     driverDiameter(part.screws[screw].drive),
                                     {}});
            }
        }
    }
    return corridors;
}

/// Nearest first; on a tie conductors, blocks, walls, each in order.
void sortNear(ScrewCorridor& corridor) {
    std::sort(corridor.near.begin(), corridor.near.end(), [](const auto& a, const auto& b) {
        return std::tie(a.gap, a.kind, a.index) < std::tie(b.gap, b.kind, b.index);
    });
}

bool isOneOf(const NearCorridor& near, const geometry::Things& things) {
    const auto holds = [&](const std::vector<std::size_t>& indices) {
        return std::binary_search(indices.begin(), indices.end(), near.index);
    };
    switch (near.kind) {
        case NearCorridor::Kind::conductor:
            return holds(things.conductors);
        case NearCorridor::Kind::block:
            return holds(things.blocks);
        case NearCorridor::Kind::wall:
            break;
    }
    return false;
}

void forget(ScrewCorridor& corridor, const geometry::Things& things) {
    auto& near = corridor.near;
    near.erase(std::remove_if(near.begin(),
                              near.end(),
                              [&](const NearCorridor& one) { return isOneOf(one, things); }),
               near.end());
}

bool sameNear(const std::vector<ScrewCorridor>& a, const std::vector<ScrewCorridor>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& one, const auto& two) {
        return one.near == two.near;
    });
}

/// Writes what is near of these things.
void write(const BuiltLayout& built,
           const SomeCorridors& corridors,
           const geometry::Things& things) {
    Scene(built, corridors, things).findNeighbours();
    for (auto* ofBlock : corridors) {
        for (ScrewCorridor& corridor : *ofBlock) {
            sortNear(corridor);
        }
    }
}

/// Without the things near them.
std::vector<ScrewCorridor> withWalls(const BuiltLayout& built,
                                     const Occupancy& occupancy,
                                     std::size_t block) {
    auto corridors = emptyCorridors(built, occupancy, block);
    for (ScrewCorridor& corridor : corridors) {
        addWalls(corridor, built);
    }
    return corridors;
}

}  // namespace

std::optional<double> driverDiameter(std::string_view drive) {
    const std::size_t space = drive.find(' ');
    if (space == std::string_view::npos) {
        return std::nullopt;
    }
    const auto width = units::parseLength(drive.substr(space + 1));
    if (!width || !(width->in() > 0.0)) {
        return std::nullopt;
    }
    const std::string_view kind = drive.substr(0, space);
    const double across = kind == "hex"      ? width->in() * 2.0 / std::numbers::sqrt3
                          : kind == "square" ? width->in() * std::numbers::sqrt2
                          : kind == "slot"   ? width->in()
                                             : 0.0;
    return across > 0.0 ? std::optional(across + 2.0 * kRoundDriver) : std::nullopt;
}

bool facesCover(const geometry::BuiltBlock::Screw& screw) {
    return angleBetween(screw.outward, kTowardCover) < kSameDirection;
}

Corridors corridorsOf(const BuiltLayout& built, const Occupancy& occupancy) {
    Corridors corridors;
    for (std::size_t block = 0; block < built.blocks.size(); ++block) {
        corridors.push_back(withWalls(built, occupancy, block));
    }
    SomeCorridors all;
    for (auto& ofBlock : corridors) {
        all.push_back(&ofBlock);
    }
    write(built, all, geometry::allThings(built));
    return corridors;
}

std::vector<std::size_t> updateCorridors(Corridors& corridors,
                                         const BuiltLayout& built,
                                         const Occupancy& occupancy,
                                         const geometry::Things& moved,
                                         const std::vector<std::size_t>& near,
                                         const geometry::Things& around) {
    std::vector<std::size_t> changed = moved.blocks;
    SomeCorridors own;
    for (const std::size_t block : moved.blocks) {
        corridors[block] = withWalls(built, occupancy, block);
        own.push_back(&corridors[block]);
    }
    if (!own.empty()) {
        write(built, own, around);
    }
    SomeCorridors others;
    std::vector<std::vector<ScrewCorridor>> before;
    for (const std::size_t block : near) {
        if (!std::binary_search(moved.blocks.begin(), moved.blocks.end(), block)) {
            before.push_back(corridors[block]);
            others.push_back(&corridors[block]);
            for (ScrewCorridor& corridor : corridors[block]) {
                forget(corridor, moved);
            }
        }
    }
    if (!others.empty()) {
        write(built, others, moved);
    }
    for (std::size_t i = 0; i < others.size(); ++i) {
        if (!sameNear(before[i], *others[i])) {
            changed.push_back(static_cast<std::size_t>(others[i] - corridors.data()));
        }
    }
    std::sort(changed.begin(), changed.end());
    return changed;
}

geometry::Box reachOfScrews(const BuiltLayout& built, std::size_t block) {
    geometry::Box reach = built.blocks[block].body;
    double widest = 0.0;
    for (const parts::Screw& screw : built.blocks[block].part->screws) {
        widest = std::max(widest, driverDiameter(screw.drive).value_or(0.0));
    }
    for (const auto& screw : built.blocks[block].screws) {
        const auto& [least, greatest, head] = std::tie(reach.least, reach.greatest, screw.head);
        reach = {{std::min(least.x, head.x), std::min(least.y, head.y), std::min(least.z, head.z)},
                 {std::max(greatest.x, head.x), std::max(greatest.y, head.y), greatest.z}};
    }
    const Vec3 aside{1.0, 1.0, 1.0};
    const double by = widest / 2.0 + kNeighbourhood;
    reach = {reach.least - aside * by, reach.greatest + aside * by};
    reach.greatest.z = std::max(reach.greatest.z, built.gutter().inside.z + by);
    return reach;
}

std::span<const NearCorridor> standingIn(const ScrewCorridor& corridor) {
    const auto end = std::find_if(corridor.near.begin(), corridor.near.end(), [](const auto& one) {
        return atLeast(one.gap, 0.0);
    });
    return {corridor.near.data(), static_cast<std::size_t>(end - corridor.near.begin())};
}

std::string nearName(const BuiltLayout& built, const NearCorridor& thing) {
    switch (thing.kind) {
        case NearCorridor::Kind::conductor:
            return conductorName(built, thing.index);
        case NearCorridor::Kind::block:
            return blockName(built, thing.index);
        case NearCorridor::Kind::wall:
            return "the " + std::string(layout::wallText(static_cast<Wall>(thing.index))) + " wall";
    }
    return {};
}

}  // namespace gw::checks
