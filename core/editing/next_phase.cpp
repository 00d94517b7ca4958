#include "editing/next_phase.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/tolerance.h"
#include "editing/conductors.h"
#include "editing/plan.h"
#include "editing/settle.h"
#include "editing/shape.h"
#include "editing/way.h"

namespace gw::editing {
namespace {

using geometry::BuiltEnd;
using geometry::BuiltLayout;
using layout::Conductor;
using layout::Layout;
using layout::Phase;

bool isThereAlready(const Layout& layout, const Conductor& like, Phase phase) {
    return std::any_of(layout.conductors.begin(), layout.conductors.end(), [&](const auto& one) {
        return one.circuit == like.circuit && one.set == like.set && one.phase == phase;
    });
}

/// The next in the circuit's order, round to the first.
std::optional<Phase> nextPhase(const Layout& layout, const Conductor& like) {
    const auto& phases = layout.circuits[*indexOf(layout, like.circuit)].phases;
    const auto own = std::find(phases.begin(), phases.end(), like.phase) - phases.begin();
    for (std::size_t step = 1; step < phases.size(); ++step) {
        const Phase phase = phases[(static_cast<std::size_t>(own) + step) % phases.size()];
        if (!isThereAlready(layout, like, phase)) {
            return phase;
        }
    }
    return std::nullopt;
}

// ---- ports --------------------------------------------------------------------------------------

bool uses(const Conductor& conductor, const layout::BlockId& block, const parts::PortName* port) {
    const auto endsThere = [&](const layout::End& end) {
        const auto* in = std::get_if<layout::InPort>(&end);
        return in != nullptr && in->block == block && (port == nullptr || in->port == *port);
    };
    return endsThere(conductor.from) || endsThere(conductor.to) ||
           std::any_of(conductor.passes.begin(), conductor.passes.end(), [&](const auto& pass) {
               return pass.block == block && (port == nullptr || pass.port == *port);
           });
}

/// 0 stated for the phase or with nothing but it, 1 empty, 2 another's.
int suits(const Layout& layout, const layout::Block& block, Phase phase) {
    if (block.phase) {
        return *block.phase == phase ? 0 : 2;
    }
    int worst = 1;
    for (const Conductor& one : layout.conductors) {
        if (uses(one, block.id, nullptr)) {
            if (one.phase != phase) {
                return 2;
            }
            worst = 0;
        }
    }
    return worst;
}

bool takes(const parts::Port& port, const Conductor& conductor) {
    return port.accepts.empty() ||
           std::any_of(port.accepts.begin(), port.accepts.end(), [&](const auto& range) {
               return range.smallest <= conductor.size && conductor.size <= range.largest &&
                      (!conductor.metal || range.metals.empty() ||
                       std::find(range.metals.begin(), range.metals.end(), *conductor.metal) !=
                           range.metals.end());
           });
}

/// The port of the same name where it is free, else the first free one.
std::optional<parts::PortName> freePort(const BuiltLayout& built,
                                        std::size_t block,
                                        const Conductor& conductor,
                                        const parts::PortName& wanted) {
    std::optional<parts::PortName> first;
    for (const auto& port : built.blocks[block].part->ports) {
        const auto& id = built.layout.blocks[block].id;
        const bool taken = std::any_of(built.layout.conductors.begin(),
                                       built.layout.conductors.end(),
                                       [&](const auto& one) { return uses(one, id, &port.name); });
        if (taken || !takes(port, conductor)) {
            continue;
        }
        if (port.name == wanted) {
            return port.name;
        }
        first = first.value_or(port.name);
    }
    return first;
}

Result<layout::End> portFor(const BuiltLayout& built,
                            const layout::InPort& like,
                            const Conductor& conductor) {
    const std::size_t from = *indexOf(built.layout, like.block);
    struct Offer {
        int suits = 2;
        double away = std::numeric_limits<double>::infinity();
        std::size_t block = 0;
        parts::PortName port;
    };
    Offer best;
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        const int how = suits(built.layout, built.layout.blocks[i], conductor.phase);
        const auto port = how < 2 ? freePort(built, i, conductor, like.port) : std::nullopt;
        const double away =
            distance(built.blocks[i].body.centre(), built.blocks[from].body.centre());
        if (port && (how < best.suits || (how == best.suits && away < best.away - kSamePoint))) {
            best = {how, away, i, *port};
        }
    }
    if (best.suits == 2) {
        return fail({ErrorCode::missing,
                     "no block has a port left for phase " +
                         std::string(layout::phaseText(conductor.phase))});
    }
    return endInPort(built, built.layout.blocks[best.block].id, best.port);
}

Result<layout::End> endFor(const BuiltLayout& built,
                           const layout::End& like,
                           const Conductor& conductor) {
    if (const auto* at = std::get_if<layout::AtEntry>(&like)) {
        return layout::AtEntry{at->entry, freeSlot(built.layout, at->entry)};
    }
    if (const auto* in = std::get_if<layout::InPort>(&like)) {
        return portFor(built, *in, conductor);
    }
    return like;
}

// ---- lanes --------------------------------------------------------------------------------------

bool isInside(const geometry::Box& box, const Vec3& inside) {
    return std::min({box.least.x, box.least.y, box.least.z}) > -kLimitSlack &&
           box.greatest.x < inside.x + kLimitSlack && box.greatest.y < inside.y + kLimitSlack &&
           box.greatest.z < inside.z + kLimitSlack;
}

geometry::Tube tubeOf(const geometry::BuiltConductor& one) {
    const auto& path = one.built.path;
    return {&path, one.radius(), 0.0, path.length().in()};
}

/// inches by which the last conductor overlaps what it overlaps most; 0 where it is clear of all.
double overlapOfLast(const BuiltLayout& built) {
    const auto& last = built.conductors.back();
    double worst = 0.0;
    for (std::size_t i = 0; i + 1 < built.conductors.size(); ++i) {
        const double gap = geometry::clearance(tubeOf(built.conductors[i]), tubeOf(last)).gap.in();
        worst = std::max(worst, -gap);
    }
    return worst < kLimitSlack ? 0.0 : worst;
}

/// The run at the corners, clear of the raceway's and the block's own room.
bool runIsInside(const BuiltLayout& built) {
    const auto& bends = built.conductors.back().built.bends;
    const double radius = built.conductors.back().radius();
    const Vec3 around{radius, radius, radius};
    return std::all_of(bends.begin(), bends.end(), [&](const auto& bend) {
        return isInside({bend.corner - around, bend.corner + around}, built.gutter().inside);
    });
}

bool sameAxis(const BuiltEnd& a, const BuiltEnd& b) {
    return a.kind == b.kind &&
           (a.kind == BuiltEnd::Kind::spare || angleBetween(a.axis, b.axis) < kLargestKink);
}

/// The last conductor of `after` on the way of another, led to its own ends.
Layout onTheSameWay(const BuiltLayout& built,
                    std::size_t like,
                    Layout after,
                    const BuiltLayout& builtAfter) {
    const auto& path = builtAfter.conductors.back().built.path;
    Way way = wayOf(built, like);
    const Vec3 first = path.start() - way.points.front();
    const Vec3 last = path.end() - way.points.back();
    way = withLastMoved(withFirstMoved(way, first), last);
    lay(after.conductors.back(), way);
    return after;
}

/// The last conductor's run on another lane, a capped end with it.
Edit onLane(const BuiltLayout& built, const Vec3& lane) {
    const std::size_t last = built.conductors.size() - 1;
    const auto& laid = built.conductors[last];
    if (laid.from.kind == BuiltEnd::Kind::spare && laid.to.kind == BuiltEnd::Kind::spare) {
        Layout moved = built.layout;
        lay(moved.conductors[last], shifted(wayOf(built, last), lane));
        return moved;
    }
    return moveLane(built, built.layout.conductors[last].id, lane);
}

/// Nearest first; of those equally near toward the cover, away from it, up, down.
std::vector<Vec3> lanesBeside(double pitch) {
    constexpr int kFurthest = 4;
    constexpr std::array<Vec3, 4> kWays{{{0, 0, 1}, {0, 0, -1}, {0, 1, 0}, {0, -1, 0}}};
    std::vector<Vec3> lanes;
    for (int i = 1; i <= kFurthest; ++i) {
        for (const Vec3& way : kWays) {
            lanes.push_back(way * (pitch * i));
        }
    }
    return lanes;
}

double lanePitch(double diameter) {
    constexpr double kGrid = 1.0 / 8.0;
    return std::ceil(diameter / kGrid) * kGrid;
}

Layout laidBeside(const BuiltLayout& built, std::size_t like, Layout after) {
    const BuiltLayout builtAfter = geometry::build(after, built.shelf);
    const auto& laid = builtAfter.conductors.back();
    std::optional<Layout> best;
    double least = std::numeric_limits<double>::infinity();
    if (sameAxis(built.conductors[like].from, laid.from) &&
        sameAxis(built.conductors[like].to, laid.to)) {
        const BuiltLayout same =
            geometry::build(onTheSameWay(built, like, after, builtAfter), built.shelf);
        for (const Vec3& lane : lanesBeside(lanePitch(laid.diameter.in()))) {
            auto tried = onLane(same, lane);
            if (!tried) {
                continue;
            }
            const BuiltLayout look = geometry::build(*tried, built.shelf);
            if (!isSound(wayOf(look, look.conductors.size() - 1)) || !runIsInside(look)) {
                continue;
            }
            const double overlap = overlapOfLast(look);
            if (overlap < least - kLimitSlack) {
                least = overlap;
                best = std::move(*tried);
            }
            if (least == 0.0) {
                break;
            }
        }
    }
    if (best) {
        return std::move(*best);
    }
    planPath(after, builtAfter, after.conductors.size() - 1);
    return after;
}

}  // namespace

Result<Made> routeForNextPhase(const BuiltLayout& built, const layout::ConductorId& conductor) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return fail(notThere("conductor", conductor.text()));
    }
    const Conductor& like = built.layout.conductors[*index];
    if (!like.passes.empty()) {
        return fail({ErrorCode::contradicts,
                     itemName(built.layout, conductor) +
                         " passes through ports, which no other phase may use"});
    }
    const auto phase = nextPhase(built.layout, like);
    if (!phase) {
        return fail({ErrorCode::missing,
                     "all phases of set " + std::to_string(like.set) + " of " +
                         itemName(built.layout, like.circuit) + " have a conductor"});
    }
    auto made = newConductor(built.layout,
                             {like.circuit,
                              like.set,
                              *phase,
                              {like.size, like.metal, like.insulation, like.stranding},
                              std::nullopt});
    if (!made) {
        return fail(made.error());
    }
    made->outsideDiameter = like.outsideDiameter;
    const auto from = endFor(built, like.from, *made);
    const auto to = endFor(built, like.to, *made);
    if (!from || !to) {
        return fail(from ? to.error() : from.error());
    }
    made->from = *from;
    made->to = *to;
    made->corners = like.corners;
    Made all{built.layout, {made->id}};
    all.layout.conductors.push_back(std::move(*made));
    for (const auto* end : {&*from, &*to}) {
        if (const auto* in = std::get_if<layout::InPort>(end)) {
            auto& stated = all.layout.blocks[*indexOf(all.layout, in->block)].phase;
            stated = stated.value_or(*phase);
        }
    }
    if (auto valid = accepted(all.layout, built.shelf); !valid) {
        return fail(valid.error());
    }
    // One conductor more lies otherwise in its raceway: the others follow.
    Layout after = settled(built, std::move(all.layout), built.shelf);
    auto valid = accepted(laidBeside(built, *index, std::move(after)), built.shelf);
    if (!valid) {
        return fail(valid.error());
    }
    all.layout = std::move(*valid);
    return all;
}

}  // namespace gw::editing
