#include <algorithm>
#include <cmath>
#include <limits>

#include "base/contract.h"
#include "base/tolerance.h"
#include "geometry/built_pieces.h"
#include "standards/tables.h"

namespace gw::geometry {
namespace {

using layout::AtEntry;
using layout::InPort;
using layout::Spare;

template <class Items, class TheId>
std::size_t indexOf(const Items& items, const TheId& id) {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.id == id; });
    CONTRACT(found != items.end());
    return std::size_t(found - items.begin());
}

std::size_t portIndex(const parts::Part& part, const parts::PortName& name) {
    const auto found = std::find_if(
        part.ports.begin(), part.ports.end(), [&](const auto& port) { return port.name == name; });
    CONTRACT(found != part.ports.end());
    return std::size_t(found - part.ports.begin());
}

/// An end and the point where its conductor begins.
struct Placed {
    BuiltEnd end;
    Vec3 tip;
};

/// Roughly where an end is, to tell which mouth of a through port the conductor comes from.
struct WhereAbouts {
    const BuiltLayout& built;
    Vec3 operator()(const AtEntry& at) const {
        return built.entries[indexOf(built.layout.entries, at.entry)].centre;
    }
    Vec3 operator()(const InPort& in) const {
        return built.blocks[indexOf(built.layout.blocks, in.block)].body.centre();
    }
    Vec3 operator()(const Spare& spare) const { return spare.tip; }
};

/// Which mouth is open to this conductor: true for the near one. A through port is entered from the
/// side the conductor comes from.
bool entersNear(const layout::Block& block,
                const parts::Port& port,
                const BuiltPort& bore,
                const Vec3& comesFrom,
                bool& closedMouth) {
    if (port.opening == parts::PortOpening::near) {
        return true;
    }
    if (port.opening == parts::PortOpening::either) {
        for (const auto& mouth : block.openMouths) {
            if (mouth.port == port.name) {
                return mouth.near;
            }
        }
        closedMouth = true;
    }
    const Vec3 middle = (bore.mouth + bore.farMouth) * 0.5;
    return dot(comesFrom - middle, bore.direction) <= 0.0;
}

struct PlaceEnd {
    const BuiltLayout& built;
    Vec3 comesFrom;  ///< the next point of the conductor

    Placed operator()(const AtEntry& at) const {
        const auto index = indexOf(built.layout.entries, at.entry);
        const auto& entry = built.entries[index];
        Placed placed;
        placed.end.kind = BuiltEnd::Kind::entry;
        placed.end.entry = index;
        placed.end.mouth = entry.slots.at(at.slot);
        placed.end.axis = entry.axis;
        placed.tip = placed.end.mouth;
        return placed;
    }

    Placed operator()(const InPort& in) const {
        const auto index = indexOf(built.layout.blocks, in.block);
        const auto& block = built.blocks[index];
        const auto port = portIndex(*block.part, in.port);
        const auto& bore = block.ports[port];
        Placed placed;
        placed.end.kind = BuiltEnd::Kind::port;
        placed.end.block = index;
        placed.end.port = port;
        const bool near = entersNear(built.layout.blocks[index],
                                     block.part->ports[port],
                                     bore,
                                     comesFrom,
                                     placed.end.intoClosedMouth);
        placed.end.mouth = near ? bore.mouth : bore.farMouth;
        placed.end.axis = near ? -bore.direction : bore.direction;
        placed.end.inserted = in.inserted.value_or(block.part->ports[port].boreDepth).in();
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
    const auto& path = conductor.built.path;
    if (path.empty()) {
        return;
    }
    const double length = path.length().in();
    const auto straights = straightsOf(conductor.built);
    auto& from = conductor.from;
    auto& to = conductor.to;
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

// ---- passing through ports -------------------------------------------------------------------

/// Arc length within a piece of its point nearest to p.
double nearestWithin(const Piece& piece, const Vec3& p) {
    const Vec3 out = p - piece.origin;
    if (!piece.isArc()) {
        return std::clamp(dot(out, piece.u), 0.0, piece.length);
    }
    double angle = std::atan2(dot(out, piece.v), dot(out, piece.u));
    if (angle < 0.0) {
        angle += 2.0 * 3.14159265358979323846;
    }
    if (angle <= piece.angle()) {
        return angle * piece.radius;
    }
    return distance(piece.pointAt(0.0), p) <= distance(piece.pointAt(piece.length), p)
               ? 0.0
               : piece.length;
}

double nearestOn(const Path& path, const Vec3& p) {
    double best = 0.0;
    double least = std::numeric_limits<double>::infinity();
    const auto pieces = path.pieces();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const double s = nearestWithin(pieces[i], p);
        const double away = distance(pieces[i].pointAt(s), p);
        if (away < least) {
            least = away;
            best = path.startOf(i) + s;
        }
    }
    return best;
}

double strayFromAxis(const Path& path, double s, const BuiltPort& bore) {
    const Vec3 out = path.pointAt(s) - bore.mouth;
    return norm(out - bore.direction * dot(out, bore.direction));
}

BuiltPass buildPass(const BuiltLayout& built, const layout::Pass& pass, const Path& path) {
    BuiltPass through;
    through.block = indexOf(built.layout.blocks, pass.block);
    const auto& block = built.blocks[through.block];
    through.port = portIndex(*block.part, pass.port);
    const auto& bore = block.ports[through.port];
    through.nearAt = nearestOn(path, bore.mouth);
    through.farAt = nearestOn(path, bore.farMouth);
    through.offAxis = std::max(distance(path.pointAt(through.nearAt), bore.mouth),
                               distance(path.pointAt(through.farAt), bore.farMouth));
    constexpr int kLooks = 8;  // a bend inside the bore strays most near its middle
    for (int i = 1; i < kLooks; ++i) {
        const double s = through.nearAt + (through.farAt - through.nearAt) * i / kLooks;
        through.offAxis = std::max(through.offAxis, strayFromAxis(path, s, bore));
    }
    through.onAxis = through.offAxis <= kOnAxis;
    if (pass.windowStart && pass.windowLength) {
        through.window = {pass.windowStart->in(), pass.windowStart->in() + pass.windowLength->in()};
    }
    return through;
}

// ---- what is inside blocks, what is bare -----------------------------------------------------

using Stretch = std::pair<double, double>;

void addStretch(std::vector<Stretch>& stretches, double from, double to, double length) {
    from = std::clamp(from, 0.0, length);
    to = std::clamp(to, 0.0, length);
    if (to > from) {
        stretches.emplace_back(from, to);
    }
}

void markEnds(BuiltConductor& conductor) {
    const double length = conductor.built.path.length().in();
    const auto& from = conductor.from;
    const auto& to = conductor.to;
    addStretch(conductor.inBlocks, 0.0, from.inserted, length);
    addStretch(conductor.inBlocks, length - to.inserted, length, length);
    addStretch(conductor.bare, 0.0, from.strip.value_or(0.0), length);
    addStretch(conductor.bare, length - to.strip.value_or(0.0), length, length);
}

void markPasses(BuiltConductor& conductor) {
    const double length = conductor.built.path.length().in();
    for (const auto& pass : conductor.passes) {
        addStretch(conductor.inBlocks,
                   std::min(pass.nearAt, pass.farAt),
                   std::max(pass.nearAt, pass.farAt),
                   length);
        if (!pass.window) {
            continue;
        }
        const double way = pass.farAt >= pass.nearAt ? 1.0 : -1.0;
        const double a = pass.nearAt + way * pass.window->first;
        const double b = pass.nearAt + way * pass.window->second;
        addStretch(conductor.bare, std::min(a, b), std::max(a, b), length);
    }
    std::sort(conductor.inBlocks.begin(), conductor.inBlocks.end());
    std::sort(conductor.bare.begin(), conductor.bare.end());
}

}  // namespace

Thickness thicknessOf(const layout::Conductor& conductor, standards::Edition edition) {
    using standards::Basis;
    if (conductor.outsideDiameter) {
        return {*conductor.outsideDiameter,
                units::SquareInches::ofCircle(*conductor.outsideDiameter),
                {"stated outside diameter", {}, Basis::layoutData, {}},
                {}};
    }
    std::string missing;
    if (!conductor.insulation) {
        missing = "insulation";
    } else if (!conductor.stranding) {
        missing = "stranding";
    } else if (const auto found = standards::insulatedConductor(
                   conductor.size, *conductor.insulation, *conductor.stranding, edition)) {
        return {found->value.diameter, found->value.area, found->source, {}};
    } else {
        missing = "outside diameter";
    }
    const auto largest = standards::largestInsulatedConductor(conductor.size, edition);
    CONTRACT(largest.has_value());
    return {largest->value.diameter, largest->value.area, largest->source, missing};
}

BuiltConductor buildConductor(const BuiltLayout& built,
                              const layout::Conductor& conductor,
                              const Thickness& thickness) {
    std::vector<CornerInput> corners;
    for (const auto& corner : conductor.corners) {
        corners.push_back({corner.at, corner.radius.in()});
    }
    const Vec3 afterFrom =
        corners.empty() ? std::visit(WhereAbouts{built}, conductor.to) : corners.front().at;
    const Vec3 beforeTo =
        corners.empty() ? std::visit(WhereAbouts{built}, conductor.from) : corners.back().at;
    const auto from = std::visit(PlaceEnd{built, afterFrom}, conductor.from);
    const auto to = std::visit(PlaceEnd{built, beforeTo}, conductor.to);

    BuiltConductor result;
    result.diameter = thickness.diameter;
    result.area = thickness.area;
    result.diameterSource = thickness.source;
    result.assumed = thickness.assumed;
    result.built = buildPath(from.tip, corners, to.tip);
    result.from = from.end;
    result.to = to.end;
    measureEnds(result);
    if (!result.built.path.empty()) {
        for (const auto& pass : conductor.passes) {
            result.passes.push_back(buildPass(built, pass, result.built.path));
        }
    }
    markEnds(result);
    markPasses(result);
    return result;
}

}  // namespace gw::geometry
