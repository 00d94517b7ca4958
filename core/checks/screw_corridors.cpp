#include "checks/screw_corridors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "checks/clearance_scene.h"
#include "checks/occupancy.h"
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

/// Conductors cut into stretches, blocks, and the corridors as tubes. Corridors come last.
class Scene {
public:
    Scene(const BuiltLayout& built, std::vector<ScrewCorridor>& corridors)
        : built_(built), corridors_(corridors) {
        for (std::size_t i = 0; i < built.conductors.size(); ++i) {
            addConductor(i);
        }
        for (std::size_t i = 0; i < built.blocks.size(); ++i) {
            items_.push_back({.box = built.blocks[i].body, .group = kThings});
            owners_.push_back({NearCorridor::Kind::block, i, {i}});
        }
        firstCorridor_ = items_.size();
        axes_.reserve(corridors.size());  // the items hold pointers into it
        for (std::size_t i = 0; i < corridors.size(); ++i) {
            addCorridor(i);
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
        return corridors_[corridorOf_[item - firstCorridor_]];
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
    void addCorridor(std::size_t index) {
        const ScrewCorridor& corridor = corridors_[index];
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
        corridorOf_.push_back(index);
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
    std::vector<ScrewCorridor>& corridors_;
    std::vector<SceneItem> items_;
    std::vector<Owner> owners_;  ///< of the items that are no corridors
    std::vector<Path> axes_;
    std::vector<std::size_t> corridorOf_;  ///< [item - firstCorridor_]
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

std::vector<ScrewCorridor> emptyCorridors(const BuiltLayout& built) {
    const Occupancy occupancy(built);
    std::vector<ScrewCorridor> corridors;
    for (std::size_t block = 0; block < built.blocks.size(); ++block) {
        const parts::Part& part = *built.blocks[block].part;
        for (std::size_t port = 0; port < part.ports.size(); ++port) {
            for (std::size_t screw = 0; screw < part.screws.size(); ++screw) {
                if (part.screws[screw].port != part.ports[port].name ||
                    occupancy.of(block, port).empty()) {
                    continue;
                }
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

std::vector<ScrewCorridor> screwCorridors(const BuiltLayout& built) {
    std::vector<ScrewCorridor> corridors = emptyCorridors(built);
    Scene(built, corridors).findNeighbours();
    for (ScrewCorridor& corridor : corridors) {
        addWalls(corridor, built);
        std::stable_sort(corridor.near.begin(),
                         corridor.near.end(),
                         [](const auto& a, const auto& b) { return a.gap < b.gap; });
    }
    return corridors;
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
