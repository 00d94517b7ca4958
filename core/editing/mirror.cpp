#include "editing/mirror.h"

#include <algorithm>
#include <limits>
#include <set>

#include "base/tolerance.h"
#include "editing/conductors.h"
#include "editing/plan.h"
#include "editing/settle.h"
#include "editing/way.h"
#include "geometry/built_pieces.h"

namespace gw::editing {
namespace {

using geometry::BuiltBlock;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using layout::Conductor;
using layout::Layout;
using layout::Wall;

/// A mirror square to the gutter's length.
struct Mirror {
    double length;
    Vec3 point(const Vec3& p) const { return {length - p.x, p.y, p.z}; }
    static Vec3 direction(const Vec3& d) { return {0.0 - d.x, d.y, d.z}; }
};

// ---- blocks -------------------------------------------------------------------------------------

/// inches; a direction that is another counts as so many.
constexpr double kOtherWay = 100.0;

double apart(const Vec3& place, const Vec3& way, const Vec3& otherPlace, const Vec3& otherWay) {
    return distance(place, otherPlace) + kOtherWay * distance(way, otherWay);
}

/// How far a placed block's ports and screws are from the mirror image of another's.
double unlikeness(const BuiltBlock& placed, const BuiltBlock& before, const Mirror& mirror) {
    double sum = 0.0;
    constexpr double kFar = std::numeric_limits<double>::infinity();
    for (const auto& port : before.ports) {
        const Vec3 way = Mirror::direction(port.direction);
        double least = kFar;
        for (const auto& there : placed.ports) {
            least =
                std::min({least,
                          apart(there.mouth, there.direction, mirror.point(port.mouth), way),
                          apart(there.farMouth, -there.direction, mirror.point(port.mouth), way)});
        }
        sum += least;
    }
    for (const auto& screw : before.screws) {
        double least = kFar;
        for (const auto& there : placed.screws) {
            least = std::min(least,
                             apart(there.head,
                                   there.outward,
                                   mirror.point(screw.head),
                                   Mirror::direction(screw.outward)));
        }
        sum += least;
    }
    return sum;
}

bool alike(const parts::Port& a, const parts::Port& b) {
    return a.opening == b.opening && a.boreDepth == b.boreDepth && a.accepts == b.accepts &&
           a.boreDiameter == b.boreDiameter && a.stripLength == b.stripLength;
}

/// The port that lies where this one's mirror image does.
std::optional<MirroredPort> portThere(const BuiltBlock& placed,
                                      const BuiltBlock& before,
                                      std::size_t port,
                                      const Mirror& mirror) {
    const Vec3 mouth = mirror.point(before.ports[port].mouth);
    const Vec3 far = mirror.point(before.ports[port].farMouth);
    const auto same = [](const Vec3& a, const Vec3& b) { return distance(a, b) < kSamePoint; };
    for (std::size_t i = 0; i < placed.ports.size(); ++i) {
        const auto& there = placed.ports[i];
        const auto& part = *placed.part;
        if (!alike(part.ports[i], part.ports[port])) {
            continue;
        }
        if (same(there.mouth, mouth) && same(there.farMouth, far)) {
            return MirroredPort{i, false};
        }
        const bool through = part.ports[i].opening != parts::PortOpening::near;
        if (through && same(there.mouth, far) && same(there.farMouth, mouth)) {
            return MirroredPort{i, true};
        }
    }
    return std::nullopt;
}

}  // namespace

MirroredBlock mirroredBlock(const BuiltLayout& built, std::size_t index) {
    const Mirror mirror{built.gutter().inside.x};
    const BuiltBlock& before = built.blocks[index];
    layout::Block block = built.layout.blocks[index];
    const Vec3 extents = block.attitude.turnedExtents(before.part->body);
    block.corner = mirror.point(before.body.least + Vec3{extents.x, 0.0, 0.0});
    MirroredBlock made{block.corner, block.attitude, {}, false};
    double least = std::numeric_limits<double>::infinity();
    BuiltBlock best;
    const auto tryIt = [&](const parts::Attitude& attitude) {
        if (attitude.turnedExtents(before.part->body) != extents) {
            return;
        }
        block.attitude = attitude;
        const BuiltBlock placed = geometry::buildBlock(block, *before.part);
        const double unlike = unlikeness(placed, before, mirror);
        if (unlike < least - kSamePoint) {
            least = unlike;
            made.attitude = attitude;
            best = placed;
        }
    };
    tryIt(made.attitude);  // as it is, where no other is better
    for (const auto& attitude : parts::Attitude::all()) {
        tryIt(attitude);
    }
    made.exact = !best.ports.empty();
    for (std::size_t i = 0; i < best.ports.size(); ++i) {
        const auto there = portThere(best, before, i, mirror);
        made.exact = made.exact && there.has_value();
        made.ports.push_back(there.value_or(MirroredPort{i, false}));
    }
    if (!made.exact) {
        for (std::size_t i = 0; i < made.ports.size(); ++i) {
            made.ports[i] = {i, false};
        }
    }
    return made;
}

namespace {

/// What becomes of the blocks that are mirrored, by block.
using MirroredBlocks = std::vector<std::optional<MirroredBlock>>;

std::size_t portIndex(const parts::Part& part, const parts::PortName& name) {
    const auto found = std::find_if(
        part.ports.begin(), part.ports.end(), [&](const auto& port) { return port.name == name; });
    return static_cast<std::size_t>(found - part.ports.begin());
}

MirroredBlocks mirrorBlocks(Layout& after, const BuiltLayout& built, const Items& items) {
    MirroredBlocks all(built.blocks.size());
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        layout::Block& block = after.blocks[i];
        if (!holds(items, block.id)) {
            continue;
        }
        all[i] = mirroredBlock(built, i);
        block.corner = all[i]->corner;
        block.attitude = all[i]->attitude;
        const auto& part = *built.blocks[i].part;
        for (auto& mouth : block.openMouths) {
            const MirroredPort& there = all[i]->ports[portIndex(part, mouth.port)];
            mouth.port = part.ports[there.port].name;
            mouth.near = mouth.near != there.turned;
        }
    }
    return all;
}

bool mirrorEntries(Layout& after, const Items& items) {
    bool any = false;
    for (auto& entry : after.entries) {
        if (!holds(items, entry.id)) {
            continue;
        }
        any = true;
        switch (entry.wall) {
            case Wall::left:
                entry.wall = Wall::right;
                break;
            case Wall::right:
                entry.wall = Wall::left;
                break;
            case Wall::top:
            case Wall::bottom:
            case Wall::back:
                entry.u = after.gutter.inside.x - entry.u;
                break;
        }
    }
    return any;
}

// ---- slots --------------------------------------------------------------------------------------

/// An end in a mirrored raceway.
struct SlotEnd {
    std::size_t conductor;
    ConductorEnd which;
    Vec3 wanted;  ///< where its slot lies in the mirror
    int slot;
};

struct SlotOffer {
    double away;
    std::size_t end;
    std::size_t slotOf;
};

std::vector<SlotEnd> endsThrough(const BuiltLayout& built,
                                 std::size_t entry,
                                 const Mirror& mirror) {
    std::vector<SlotEnd> ends;
    const auto& id = built.layout.entries[entry].id;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto add = [&](const layout::End& end, ConductorEnd which, const Vec3& mouth) {
            const auto* at = std::get_if<layout::AtEntry>(&end);
            if (at != nullptr && at->entry == id) {
                ends.push_back({i, which, mirror.point(mouth), at->slot});
            }
        };
        const auto& conductor = built.layout.conductors[i];
        add(conductor.from, ConductorEnd::from, built.conductors[i].from.mouth);
        add(conductor.to, ConductorEnd::to, built.conductors[i].to.mouth);
    }
    return ends;
}

/// Conductors of one thickness exchange their slots in a mirrored raceway, so that each comes
/// through the one nearest to its mirror image: nearest pairs first.
void exchangeSlots(Layout& after,
                   const BuiltLayout& built,
                   std::size_t entry,
                   const Mirror& mirror) {
    const auto ends = endsThrough(built, entry, mirror);
    const BuiltLayout builtAfter = geometry::build(after, built.shelf);
    const auto& slots = builtAfter.entries[entry].slots;
    std::vector<SlotOffer> offers;
    for (std::size_t i = 0; i < ends.size(); ++i) {
        for (std::size_t j = 0; j < ends.size(); ++j) {
            if (built.conductors[ends[i].conductor].diameter ==
                built.conductors[ends[j].conductor].diameter) {
                offers.push_back({distance(slots.at(ends[j].slot), ends[i].wanted), i, j});
            }
        }
    }
    std::stable_sort(
        offers.begin(), offers.end(), [](const auto& a, const auto& b) { return a.away < b.away; });
    std::vector<bool> placed(ends.size());
    std::vector<bool> taken(ends.size());
    for (const SlotOffer& offer : offers) {
        if (!placed[offer.end] && !taken[offer.slotOf]) {
            placed[offer.end] = true;
            taken[offer.slotOf] = true;
            Conductor& conductor = after.conductors[ends[offer.end].conductor];
            auto& end = ends[offer.end].which == ConductorEnd::from ? conductor.from : conductor.to;
            std::get<layout::AtEntry>(end).slot = ends[offer.slotOf].slot;
        }
    }
}

// ---- conductors ---------------------------------------------------------------------------------

/// One conductor as the mirror finds it.
struct Laid {
    bool mirrored = false;  ///< ends nowhere but in what is mirrored, and is selected
    bool touched = false;   ///< ends in, or passes, what is mirrored
};

class ConductorMirror {
public:
    ConductorMirror(const BuiltLayout& built, const Items& items, const MirroredBlocks& blocks)
        : built_(built), items_(items), blocks_(blocks), mirror_{built.gutter().inside.x} {}

    Laid look(std::size_t index) const {
        const auto& laid = built_.conductors[index];
        const auto& conductor = built_.layout.conductors[index];
        const bool own = holds(items_, conductor.id) || holds(items_, conductor.circuit);
        bool all = goes(laid.from) != Goes::stays && goes(laid.to) != Goes::stays;
        Laid found;
        found.touched = goes(laid.from) == Goes::along || goes(laid.to) == Goes::along;
        for (const auto& pass : laid.passes) {
            all = all && blocks_[pass.block].has_value();
            found.touched = found.touched || blocks_[pass.block].has_value();
        }
        found.mirrored = own && all;
        return found;
    }

    /// Its ends and passes in the ports that lie there then; capped tips where it is mirrored.
    void rename(Conductor& conductor, const Laid& laid) const {
        for (auto* end : {&conductor.from, &conductor.to}) {
            if (auto* in = std::get_if<layout::InPort>(end)) {
                rename(in->block, in->port);
            } else if (auto* spare = std::get_if<layout::Spare>(end); spare && laid.mirrored) {
                spare->tip = mirror_.point(spare->tip);
            }
        }
        for (auto& pass : conductor.passes) {
            renamePass(pass);
        }
    }

    /// The mirror image of its path, its ends where they are after: a packing of conductors in a
    /// raceway is not always its own mirror image. A new path where it cannot be bent like that.
    void layMirrored(Layout& after, const BuiltLayout& builtAfter, std::size_t index) const {
        Way way = wayOf(built_, index);
        for (Vec3& point : way.points) {
            point = mirror_.point(point);
        }
        way.first.axis = Mirror::direction(way.first.axis);
        way.last.axis = Mirror::direction(way.last.axis);
        const auto& path = builtAfter.conductors[index].built.path;
        const Vec3 first = path.start() - way.points.front();
        const Vec3 last = path.end() - way.points.back();
        if (norm(first) > kSamePoint) {
            way = withFirstMoved(way, first);
        }
        if (norm(last) > kSamePoint) {
            way = withLastMoved(way, last);
        }
        if (isSound(way) || !isSound(wayOf(built_, index))) {
            lay(after.conductors[index], way);
        } else {
            planPath(after, builtAfter, index);
        }
    }

private:
    enum class Goes { along, stays, free };

    Goes goes(const BuiltEnd& end) const {
        if (end.entry) {
            return holds(items_, built_.layout.entries[*end.entry].id) ? Goes::along : Goes::stays;
        }
        if (end.block) {
            return blocks_[*end.block] ? Goes::along : Goes::stays;
        }
        return Goes::free;
    }

    /// Whether the port lies the other way round now.
    bool rename(const layout::BlockId& block, parts::PortName& port) const {
        const std::size_t at = *indexOf(built_.layout, block);
        if (!blocks_[at]) {
            return false;
        }
        const auto& part = *built_.blocks[at].part;
        const MirroredPort& there = blocks_[at]->ports[portIndex(part, port)];
        port = part.ports[there.port].name;
        return there.turned;
    }

    void renamePass(layout::Pass& pass) const {
        const auto& part = *built_.blocks[*indexOf(built_.layout, pass.block)].part;
        const units::Inches depth = part.ports[portIndex(part, pass.port)].boreDepth;
        if (rename(pass.block, pass.port) && pass.windowStart && pass.windowLength) {
            pass.windowStart = depth - *pass.windowStart - *pass.windowLength;
        }
    }

    const BuiltLayout& built_;
    const Items& items_;
    const MirroredBlocks& blocks_;
    Mirror mirror_;
};

}  // namespace

Edit mirrorItems(const BuiltLayout& built, const Items& items) {
    Layout after = built.layout;
    const MirroredBlocks blocks = mirrorBlocks(after, built, items);
    bool any = mirrorEntries(after, items) ||
               std::any_of(blocks.begin(), blocks.end(), [](const auto& one) { return !!one; });
    const ConductorMirror conductors(built, items, blocks);
    std::vector<Laid> laid;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        laid.push_back(conductors.look(i));
        conductors.rename(after.conductors[i], laid[i]);
        any = any || laid[i].mirrored;
    }
    if (!any) {
        return fail({ErrorCode::missing,
                     "nothing of it can be mirrored: its conductors end in what stays"});
    }
    if (auto valid = accepted(after, built.shelf); !valid) {
        return valid;
    }
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        if (holds(items, built.layout.entries[i].id)) {
            exchangeSlots(after, built, i, {built.gutter().inside.x});
        }
    }
    const BuiltLayout builtAfter = geometry::build(after, built.shelf);
    for (std::size_t i = 0; i < laid.size(); ++i) {
        if (laid[i].mirrored) {
            conductors.layMirrored(after, builtAfter, i);
        } else if (laid[i].touched) {
            planPath(after, builtAfter, i);
        }
    }
    return accepted(std::move(after), built.shelf);
}

}  // namespace gw::editing
