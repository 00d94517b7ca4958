#include "editing/place.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "base/tolerance.h"
#include "editing/plan.h"
#include "editing/settle.h"
#include "editing/way.h"
#include "geometry/solids.h"
#include "layout/wall_plane.h"
#include "standards/tables.h"

namespace gw::editing {

using geometry::BuiltLayout;
using layout::Block;
using layout::Entry;
using layout::Wall;

// ---- ids and names --------------------------------------------------------------------------

namespace {

std::set<std::string> idsOf(const layout::Layout& layout) {
    std::set<std::string> ids;
    const auto add = [&](const auto& things) {
        for (const auto& thing : things) {
            ids.insert(thing.id.text());
        }
    };
    add(layout.systems);
    add(layout.circuits);
    add(layout.entries);
    add(layout.blocks);
    add(layout.conductors);
    add(layout.remarks);
    return ids;
}

/// "A" … "Z", then "AA" … : the first that is not among the names.
std::string freeLetter(const layout::Layout& layout) {
    const auto taken = [&](const std::string& letter) {
        return std::any_of(layout.blocks.begin(), layout.blocks.end(), [&](const Block& block) {
            return block.name == letter || block.name == "Block " + letter;
        });
    };
    for (int i = 0;; ++i) {
        constexpr int kLetters = 26;
        const std::string last(1, static_cast<char>('A' + i % kLetters));
        const std::string letter =
            i < kLetters ? last : static_cast<char>('A' + (i / kLetters - 1) % kLetters) + last;
        if (!taken(letter) || i >= kLetters * (kLetters + 1)) {
            return letter;
        }
    }
}

}  // namespace

std::string nextId(const layout::Layout& layout, const std::string& prefix) {
    const auto ids = idsOf(layout);
    int number = 1;
    while (ids.count(prefix + std::to_string(number)) > 0) {
        ++number;
    }
    return prefix + std::to_string(number);
}

std::string freeBlockName(const layout::Layout& layout) {
    return "Block " + freeLetter(layout);
}

bool idTaken(const layout::Layout& layout, const std::string& id) {
    return idsOf(layout).count(id) > 0;
}

// ---- blocks ---------------------------------------------------------------------------------

Vec3 cornerInside(const layout::Gutter& gutter, const Vec3& corner, const Vec3& extents) {
    const auto inside = [](double at, double extent, double room) {
        return std::max(0.0, std::min(at, room - extent));
    };
    return {inside(corner.x, extents.x, gutter.inside.x),
            inside(corner.y, extents.y, gutter.inside.y),
            inside(corner.z, extents.z, gutter.inside.z)};
}

Result<Made> placeBlock(const BuiltLayout& built,
                        const parts::Shelf& shelf,
                        const parts::PartId& part,
                        const Vec3& corner,
                        const parts::Attitude& attitude,
                        std::optional<bool> mounted) {
    const parts::Part* found = layout::findPart(built.layout, shelf, part);
    if (found == nullptr) {
        return fail({ErrorCode::unknown, "no such part", {}, {}, {}, part.text()});
    }
    Block block;
    block.id = layout::BlockId(nextId(built.layout, "B"));
    block.name = freeBlockName(built.layout);
    block.part = part;
    block.attitude = attitude;
    block.corner = cornerInside(built.gutter(), corner, attitude.turnedExtents(found->body));
    block.mounted = mounted;
    Made made{built.layout, {block.id}};
    made.layout.blocks.push_back(std::move(block));
    auto valid = accepted(std::move(made.layout), shelf);
    if (!valid) {
        return fail(valid.error());
    }
    made.layout = std::move(*valid);
    return made;
}

namespace {

Edit noBlock(const layout::BlockId& id) {
    return fail(notThere("block", id.text()));
}

}  // namespace

Edit setAttitude(const BuiltLayout& built,
                 const layout::BlockId& block,
                 const parts::Attitude& attitude) {
    const auto index = indexOf(built.layout, block);
    if (!index) {
        return noBlock(block);
    }
    const auto& placed = built.blocks[*index];
    const Vec3 extents = attitude.turnedExtents(placed.part->body);
    layout::Layout after = built.layout;
    Block& turned = after.blocks[*index];
    turned.attitude = attitude;
    turned.corner = cornerInside(built.gutter(), placed.body.centre() - extents * 0.5, extents);
    return accepted(settled(built, std::move(after), built.shelf), built.shelf);
}

Edit turnBlock(const BuiltLayout& built, const layout::BlockId& block, int axis, int quarters) {
    const auto index = indexOf(built.layout, block);
    if (!index) {
        return noBlock(block);
    }
    constexpr int kWhole = 4;
    parts::Attitude attitude = built.layout.blocks[*index].attitude;
    const int turns = ((quarters % kWhole) + kWhole) % kWhole;
    for (int i = 0; i < turns; ++i) {
        attitude = attitude.quarterTurned(axis);
    }
    return setAttitude(built, block, attitude);
}

Edit setMounted(const BuiltLayout& built,
                const layout::BlockId& block,
                std::optional<bool> mounted) {
    const auto index = indexOf(built.layout, block);
    if (!index) {
        return noBlock(block);
    }
    layout::Layout after = built.layout;
    after.blocks[*index].mounted = mounted;
    return after;
}

Edit setPhase(const BuiltLayout& built,
              const layout::BlockId& block,
              std::optional<layout::Phase> phase) {
    const auto index = indexOf(built.layout, block);
    if (!index) {
        return noBlock(block);
    }
    layout::Layout after = built.layout;
    after.blocks[*index].phase = phase;
    return after;
}

// ---- entries --------------------------------------------------------------------------------

namespace {

double onto(double at, double room) {
    return std::clamp(at, 0.0, room);
}

}  // namespace

Result<Made> addEntry(const BuiltLayout& built, const EntryFacts& facts) {
    const auto room = layout::alongWall(facts.wall, built.gutter().inside);
    Entry entry;
    entry.id = layout::EntryId(nextId(built.layout, "E"));
    entry.name = "Entry " + entry.id.text().substr(1);
    entry.wall = facts.wall;
    entry.u = onto(facts.u, room.u);
    entry.v = onto(facts.v, room.v);
    entry.raceway = facts.raceway;
    entry.tradeSize = facts.tradeSize;
    Made made{built.layout, {entry.id}};
    made.layout.entries.push_back(std::move(entry));
    auto valid = accepted(std::move(made.layout), built.shelf);
    if (!valid) {
        return fail(valid.error());
    }
    made.layout = std::move(*valid);
    return made;
}

EntryFacts entryNear(const layout::Gutter& gutter, const Vec3& point) {
    struct Offer {
        Wall wall;
        double away;
    };
    const Vec3& in = gutter.inside;
    const std::array<Offer, 5> offers{{{Wall::top, std::abs(in.y - point.y)},
                                       {Wall::bottom, std::abs(point.y)},
                                       {Wall::left, std::abs(point.x)},
                                       {Wall::right, std::abs(in.x - point.x)},
                                       {Wall::back, std::abs(point.z)}}};
    const auto nearest =
        std::min_element(offers.begin(), offers.end(), [](const Offer& a, const Offer& b) {
            return a.away < b.away;
        });
    const auto at = layout::alongWall(nearest->wall, point);
    const auto room = layout::alongWall(nearest->wall, in);
    EntryFacts facts;
    facts.wall = nearest->wall;
    facts.u = onto(at.u, room.u);
    facts.v = onto(at.v, room.v);
    return facts;
}

namespace {

/// Radius of what lies on the wall around an entry: its locknut, or else its bore.
double nutRadius(const BuiltLayout& built, std::size_t entry) {
    const auto& size = built.layout.entries[entry].tradeSize;
    const auto row = size ? std::optional(standards::knockout(*size)) : std::nullopt;
    return row && *row ? (*row)->value.locknut.in() / 2.0 : built.entries[entry].bore / 2.0;
}

bool nutLeavesWall(const BuiltLayout& built, std::size_t index) {
    const Entry& entry = built.layout.entries[index];
    const auto room = layout::alongWall(entry.wall, built.gutter().inside);
    const double radius = nutRadius(built, index);
    return entry.u < radius - kLimitSlack || entry.v < radius - kLimitSlack ||
           entry.u > room.u - radius + kLimitSlack || entry.v > room.v - radius + kLimitSlack;
}

bool nutsMeet(const BuiltLayout& built, std::size_t a, std::size_t b) {
    const Entry& one = built.layout.entries[a];
    const Entry& other = built.layout.entries[b];
    return a != b && one.wall == other.wall &&
           distance(built.entries[a].centre, built.entries[b].centre) <
               nutRadius(built, a) + nutRadius(built, b) - kLimitSlack;
}

/// A block so near to the wall that the locknut has no room beside it.
bool nutMeets(const BuiltLayout& built, std::size_t entry, const geometry::Box& body) {
    constexpr double kThickness = 0.25;  // inches a locknut stands off the wall, from memory
    const auto& hole = built.entries[entry];
    const Vec3 inner = hole.centre + hole.axis * kThickness;
    const double radius = nutRadius(built, entry);
    const auto clampTo = [](double v, double low, double high) { return std::clamp(v, low, high); };
    const Vec3 near{clampTo(inner.x, body.least.x, body.greatest.x),
                    clampTo(inner.y, body.least.y, body.greatest.y),
                    clampTo(inner.z, body.least.z, body.greatest.z)};
    const Vec3 away = near - inner;
    const double out = dot(away, hole.axis);
    return out < kLimitSlack && norm(away - hole.axis * out) < radius - kLimitSlack;
}

}  // namespace

HoleRoom holeRoom(const BuiltLayout& built, const layout::EntryId& entry) {
    HoleRoom room;
    const auto index = indexOf(built.layout, entry);
    if (!index) {
        return room;
    }
    if (const auto& size = built.layout.entries[*index].tradeSize) {
        if (const auto row = standards::knockout(*size)) {
            room.knockout = row->value.nominal;
            room.locknut = row->value.locknut;
        }
    }
    if (nutLeavesWall(built, *index)) {
        room.collides.emplace_back("the edge of the wall");
    }
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        if (nutsMeet(built, *index, i)) {
            room.collides.push_back("the locknut of " +
                                    itemName(built.layout, built.layout.entries[i].id));
        }
    }
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        if (nutMeets(built, *index, built.blocks[i].body)) {
            room.collides.push_back(itemName(built.layout, built.layout.blocks[i].id));
        }
    }
    return room;
}

// ---- systems and circuits -------------------------------------------------------------------

Edit addSystem(const BuiltLayout& built, layout::System system) {
    if (system.id.empty()) {
        system.id = layout::SystemId(nextId(built.layout, "system"));
    }
    layout::Layout after = built.layout;
    after.systems.push_back(std::move(system));
    return accepted(std::move(after), built.shelf);
}

Result<Made> addCircuit(const BuiltLayout& built, layout::Circuit circuit) {
    layout::Layout after = built.layout;
    if (circuit.system.empty()) {
        if (after.systems.empty()) {
            layout::System system;
            system.id = layout::SystemId(nextId(after, "system"));
            after.systems.push_back(std::move(system));
        }
        circuit.system = after.systems.front().id;
    }
    if (circuit.id.empty()) {
        const bool tap = circuit.role == layout::Role::tap;
        circuit.id = layout::CircuitId(nextId(after, tap ? "T" : "C"));
    }
    Made made{{}, {circuit.id}};
    after.circuits.push_back(std::move(circuit));
    auto valid = accepted(std::move(after), built.shelf);
    if (!valid) {
        return fail(valid.error());
    }
    made.layout = std::move(*valid);
    return made;
}

// ---- the gutter -----------------------------------------------------------------------------

Edit setGutterSize(const BuiltLayout& built, const Vec3& inside) {
    layout::Layout after = built.layout;
    after.gutter.inside = inside;
    if (after.gutter.beyondEquipment && after.gutter.beyondEquipment->in() > inside.x) {
        after.gutter.beyondEquipment = units::Inches::of(inside.x);
    }
    for (Entry& entry : after.entries) {
        const auto room = layout::alongWall(entry.wall, inside);
        entry.u = onto(entry.u, room.u);
        entry.v = onto(entry.v, room.v);
    }
    for (std::size_t i = 0; i < after.blocks.size(); ++i) {
        Block& block = after.blocks[i];
        block.corner = cornerInside(after.gutter, block.corner, built.blocks[i].body.extents());
    }
    if (auto valid = accepted(after, built.shelf); !valid) {
        return valid;
    }
    return accepted(settled(built, std::move(after), built.shelf), built.shelf);
}

}  // namespace gw::editing
