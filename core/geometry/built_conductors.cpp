#include <algorithm>
#include <cmath>

#include "base/contract.h"
#include "base/tolerance.h"
#include "geometry/built_pieces.h"

namespace gw::geometry {
namespace {

using layout::AtEntry;
using layout::InPort;
using layout::Spare;

/// An end and the point where its conductor begins.
struct Placed {
    BuiltEnd end;
    Vec3 tip;
};

/// Roughly where an end is, to tell which mouth of a through port the conductor comes from.
struct WhereAbouts {
    const BuiltLayout& built;
    const Indices& indices;
    Vec3 operator()(const AtEntry& at) const {
        return built.entries[indices.entries.at(at.entry)].centre;
    }
    Vec3 operator()(const InPort& in) const {
        return built.blocks[indices.blocks.at(in.block)].body.centre();
    }
    Vec3 operator()(const Spare& spare) const { return spare.tip; }
};

struct Mouth {
    bool near = true;
    bool stated = true;  ///< false: an `either` port of which the layout does not say it
};

/// Which mouth is open to this conductor. Where both are, or it is not stated, the one on the side
/// the conductor comes from; the near one when it comes from neither.
Mouth mouthFor(const layout::Block& block,
               const parts::Port& port,
               const BuiltPort& bore,
               const Vec3& comesFrom) {
    if (port.opening == parts::PortOpening::near) {
        return {};
    }
    if (port.opening == parts::PortOpening::either) {
        for (const auto& open : block.openMouths) {
            if (open.port == port.name) {
                return {open.near, true};
            }
        }
    }
    const Vec3 middle = (bore.mouth + bore.farMouth) * 0.5;
    return {dot(comesFrom - middle, bore.direction) <= 0.0,
            port.opening != parts::PortOpening::either};
}

/// How far the tip goes beyond the mouth where the layout does not say: to the stop or to the cap;
/// half way where the bore is through, so that two conductors can meet in it.
double insertionOf(const InPort& in, const parts::Port& port) {
    const double share = port.opening == parts::PortOpening::both ? 0.5 : 1.0;
    return in.inserted ? in.inserted->in() : port.boreDepth.in() * share;
}

struct PlaceEnd {
    const BuiltLayout& built;
    const Indices& indices;
    Vec3 comesFrom;  ///< the next point of the conductor

    Placed operator()(const AtEntry& at) const {
        const std::size_t index = indices.entries.at(at.entry);
        const BuiltEntry& entry = built.entries[index];
        Placed placed;
        placed.end.kind = BuiltEnd::Kind::entry;
        placed.end.entry = index;
        placed.end.mouth = entry.slots.at(at.slot);
        placed.end.axis = entry.axis;
        placed.tip = placed.end.mouth;
        return placed;
    }

    Placed operator()(const InPort& in) const {
        const std::size_t index = indices.blocks.at(in.block);
        const BuiltBlock& block = built.blocks[index];
        const std::size_t portAt = portIndex(*block.part, in.port);
        const parts::Port& port = block.part->ports[portAt];
        const BuiltPort& bore = block.ports[portAt];
        const Mouth mouth = mouthFor(built.layout.blocks[index], port, bore, comesFrom);
        Placed placed;
        placed.end.kind = BuiltEnd::Kind::port;
        placed.end.block = index;
        placed.end.port = portAt;
        placed.end.intoClosedMouth = !mouth.stated;
        placed.end.mouth = mouth.near ? bore.mouth : bore.farMouth;
        placed.end.axis = mouth.near ? -bore.direction : bore.direction;
        placed.end.inserted = insertionOf(in, port);
        if (in.strip) {
            placed.end.strip = in.strip->in();
        }
        placed.tip = placed.end.mouth - placed.end.axis * placed.end.inserted;
        return placed;
    }

    Placed operator()(const Spare& spare) const {
        Placed placed;
        placed.end.mouth = spare.tip;
        placed.tip = spare.tip;
        placed.end.axis = distance(spare.tip, comesFrom) > kSamePoint ? unit(comesFrom - spare.tip)
                                                                      : Vec3{1.0, 0.0, 0.0};
        return placed;
    }
};

/// Straight conductor before the first bend and behind the last, in arc length from either tip.
struct Straights {
    double first = 0.0;
    double last = 0.0;
};

Straights straightsOf(const BuiltPath& built) {
    const double length = built.path.length().in();
    Straights straights{length, length};
    const auto turns = [](const BuiltPath::Bend& bend) { return bend.turn > kSameDirection; };
    const auto first = std::find_if(built.bends.begin(), built.bends.end(), turns);
    const auto last = std::find_if(built.bends.rbegin(), built.bends.rend(), turns);
    if (first != built.bends.end()) {
        straights.first = first->start;
        straights.last = length - last->start - last->radius * last->turn;
    }
    return straights;
}

void measureEnds(BuiltConductor& conductor) {
    const Path& path = conductor.built.path;
    const double length = path.length().in();
    const Straights straights = straightsOf(conductor.built);
    BuiltEnd& from = conductor.from;
    BuiltEnd& to = conductor.to;
    from.mouthAt = std::min(from.inserted, length);
    to.mouthAt = std::max(length - to.inserted, 0.0);
    // A conductor without a bend lies straight from mouth to mouth.
    const double across = std::max(to.mouthAt - from.mouthAt, 0.0);
    from.leadIn = std::clamp(straights.first - from.inserted, 0.0, across);
    to.leadIn = std::clamp(straights.last - to.inserted, 0.0, across);
    if (from.kind != BuiltEnd::Kind::spare) {
        from.kink = angleBetween(path.tangentAt(0.0), from.axis);
    }
    if (to.kind != BuiltEnd::Kind::spare) {
        to.kink = angleBetween(-path.tangentAt(length), to.axis);
    }
}

/// Both ends in place, each seen from the conductor's next point.
std::pair<Placed, Placed> placeEnds(const BuiltLayout& built,
                                    const Indices& indices,
                                    const layout::Conductor& conductor) {
    const WhereAbouts where{built, indices};
    const auto& corners = conductor.corners;
    const Vec3 afterFrom = corners.empty() ? std::visit(where, conductor.to) : corners.front().at;
    const Vec3 beforeTo = corners.empty() ? std::visit(where, conductor.from) : corners.back().at;
    return {std::visit(PlaceEnd{built, indices, afterFrom}, conductor.from),
            std::visit(PlaceEnd{built, indices, beforeTo}, conductor.to)};
}

BuiltPath pathBetween(const Vec3& from,
                      const std::vector<layout::Corner>& corners,
                      const Vec3& to) {
    std::vector<CornerInput> inputs;
    inputs.reserve(corners.size());
    for (const auto& corner : corners) {
        inputs.push_back({corner.at, corner.radius.in()});
    }
    return buildPath(from, inputs, to);
}

}  // namespace

std::size_t portIndex(const parts::Part& part, const parts::PortName& name) {
    const auto found = std::find_if(
        part.ports.begin(), part.ports.end(), [&](const auto& port) { return port.name == name; });
    CONTRACT(found != part.ports.end());
    return static_cast<std::size_t>(found - part.ports.begin());
}

BuiltConductor buildConductor(const BuiltLayout& built,
                              const Indices& indices,
                              const layout::Conductor& conductor,
                              const Thickness& thickness) {
    const auto [from, to] = placeEnds(built, indices, conductor);
    BuiltConductor result;
    result.diameter = thickness.diameter;
    result.area = thickness.area;
    result.diameterSource = thickness.source;
    result.assumed = thickness.assumed;
    result.built = pathBetween(from.tip, conductor.corners, to.tip);
    result.from = from.end;
    result.to = to.end;
    measureEnds(result);
    for (const auto& pass : conductor.passes) {
        const std::size_t block = indices.blocks.at(pass.block);
        result.passes.push_back(buildPass(built.blocks[block], block, pass, result.built.path));
    }
    markStretches(built.blocks, result);
    return result;
}

}  // namespace gw::geometry
