#include "editing/copy.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <set>

#include "base/tolerance.h"
#include "editing/bounds.h"
#include "editing/move.h"
#include "editing/place.h"
#include "editing/places.h"
#include "editing/remove.h"
#include "editing/settle.h"
#include "layout/wall_plane.h"

namespace gw::editing {
namespace {

using geometry::Box;
using geometry::BuiltLayout;
using layout::Conductor;
using layout::Layout;

// ---- taking -------------------------------------------------------------------------------------

/// Circuits as their conductors; each thing once, and only those that are there.
Items thingsOf(const Layout& layout, const Items& items) {
    Items things;
    for (const auto& one : layout.entries) {
        if (holds(items, one.id)) {
            things.emplace_back(one.id);
        }
    }
    for (const auto& one : layout.blocks) {
        if (holds(items, one.id)) {
            things.emplace_back(one.id);
        }
    }
    for (const auto& one : layout.conductors) {
        if (holds(items, one.id) || holds(items, one.circuit)) {
            things.emplace_back(one.id);
        }
    }
    return things;
}

template <class T, class Keep>
void keepOnly(std::vector<T>& things, Keep keep) {
    std::erase_if(things, [&](const T& thing) { return !keep(thing); });
}

/// With nothing that the things do not need.
void dropTheRest(Layout& piece, const Items& things) {
    const auto isKept = [&](const auto& thing) { return holds(things, thing.id); };
    keepOnly(piece.entries, isKept);
    keepOnly(piece.blocks, isKept);
    keepOnly(piece.conductors, isKept);
    piece.remarks.clear();
    std::set<std::string> circuits;
    for (const auto& one : piece.conductors) {
        circuits.insert(one.circuit.text());
    }
    keepOnly(piece.circuits, [&](const auto& one) { return circuits.count(one.id.text()) > 0; });
    std::set<std::string> systems;
    for (auto& one : piece.circuits) {
        systems.insert(one.system.text());
        if (one.joins && circuits.count(one.joins->text()) == 0) {
            one.joins.reset();
        }
    }
    keepOnly(piece.systems, [&](const auto& one) { return systems.count(one.id.text()) > 0; });
    keepOnly(piece.parts, [&](const parts::Part& part) {
        return std::any_of(piece.blocks.begin(), piece.blocks.end(), [&](const auto& block) {
            return block.part == part.id;
        });
    });
}

/// Title, remarks and other things of the whole are no part of a piece.
void dropHead(Layout& piece) {
    piece.title.clear();
    piece.project.clear();
    piece.drawnBy.clear();
    piece.date.clear();
    piece.revision.clear();
    piece.readings = {};
    piece.amendments = {};
}

}  // namespace

Result<Layout> pieceOf(const BuiltLayout& built, const Items& items) {
    const Items things = thingsOf(built.layout, items);
    if (things.empty()) {
        return fail({ErrorCode::missing, "nothing is selected that could be copied"});
    }
    Layout freed = built.layout;
    for (std::size_t i = 0; i < freed.conductors.size(); ++i) {
        if (holds(things, freed.conductors[i].id)) {
            freeFromAllBut(freed.conductors[i], built.conductors[i], things);
        }
    }
    const BuiltLayout before = geometry::build(freed, built.shelf);
    Layout piece = std::move(freed);
    dropTheRest(piece, things);
    dropHead(piece);
    if (auto valid = accepted(piece, built.shelf); !valid) {
        return valid;
    }
    // Fewer conductors lie otherwise in their raceway.
    return accepted(settled(before, std::move(piece), built.shelf), built.shelf);
}

// ---- putting ------------------------------------------------------------------------------------

namespace {

/// The first of "S1-A", "S1-A-2", "S1-A-3", … that is free.
template <class Taken>
std::string freeTag(const std::string& tag, Taken taken) {
    std::string free = tag;
    for (int again = 2; !tag.empty() && taken(free); ++again) {
        free = tag + "-" + std::to_string(again);
    }
    return free;
}

/// "Service" -> "Service 2", "Entry 3" -> "Entry 4": the first that is free.
template <class Taken>
std::string freeName(const std::string& name, Taken taken) {
    if (name.empty() || !taken(name)) {
        return name;
    }
    std::size_t digits = name.size();
    while (digits > 0 && std::isdigit(static_cast<unsigned char>(name[digits - 1])) != 0) {
        --digits;
    }
    constexpr std::size_t kMostDigits = 6;
    const bool counts = digits < name.size() && digits > 0 && name[digits - 1] == ' ' &&
                        name.size() - digits <= kMostDigits;
    const std::string stem = counts ? name.substr(0, digits) : name + " ";
    int number = counts ? std::stoi(name.substr(digits)) + 1 : 2;
    while (taken(stem + std::to_string(number))) {
        ++number;
    }
    return stem + std::to_string(number);
}

/// Brings the things of a piece into a layout one kind after the other, each under a name of its
/// own.
class Putter {
public:
    Putter(Layout& layout, const parts::Shelf& shelf) : layout_(layout), shelf_(shelf) {}

    Items put(const Layout& piece) {
        for (const auto& one : piece.parts) {
            putPart(one);
        }
        for (const auto& one : piece.systems) {
            putSystem(one);
        }
        for (const auto& one : piece.circuits) {
            putCircuit(one, piece);
        }
        joinCircuits(piece);
        for (const auto& one : piece.entries) {
            putEntry(one);
        }
        for (const auto& one : piece.blocks) {
            putBlock(one);
        }
        for (const auto& one : piece.conductors) {
            putConductor(one);
        }
        return std::move(items_);
    }

private:
    template <class Id>
    using Names = std::map<Id, Id>;

    template <class Id>
    static Id renamed(const Names<Id>& names, const Id& id) {
        const auto found = names.find(id);
        return found == names.end() ? id : found->second;
    }

    /// Its own id where that is free, else the next with the prefix.
    template <class Id>
    Id freeId(const Id& id, const std::string& prefix) const {
        return idTaken(layout_, id.text()) ? Id(nextId(layout_, prefix)) : id;
    }

    void putPart(const parts::Part& part) {
        const auto* there = layout::findPart(layout_, shelf_, part.id);
        if (there != nullptr && *there == part) {
            return;
        }
        parts::Part added = part;
        for (int number = 1; layout::findPart(layout_, shelf_, added.id) != nullptr; ++number) {
            added.id = parts::PartId("part-" + std::to_string(number));
        }
        parts_[part.id] = added.id;
        layout_.parts.push_back(std::move(added));
    }

    void putSystem(const layout::System& system) {
        if (indexOf(layout_, system.id)) {
            return;
        }
        layout::System added = system;
        added.id = freeId(system.id, "system");
        systems_[system.id] = added.id;
        layout_.systems.push_back(std::move(added));
    }

    /// Whether the layout's circuit of this id can take all of the piece's conductors of it.
    bool canTake(const layout::CircuitId& id, const Layout& piece) const {
        const auto index = indexOf(layout_, id);
        if (!index) {
            return false;
        }
        const auto& there = layout_.circuits[*index];
        return std::all_of(piece.conductors.begin(), piece.conductors.end(), [&](const auto& one) {
            return one.circuit != id ||
                   (one.set <= there.sets &&
                    std::find(there.phases.begin(), there.phases.end(), one.phase) !=
                        there.phases.end());
        });
    }

    void putCircuit(const layout::Circuit& circuit, const Layout& piece) {
        if (canTake(circuit.id, piece)) {
            return;
        }
        layout::Circuit added = circuit;
        const bool tap = circuit.role == layout::Role::tap;
        added.id = freeId(circuit.id, tap ? "T" : "C");
        added.system = renamed(systems_, circuit.system);
        added.joins.reset();
        circuits_[circuit.id] = added.id;
        layout_.circuits.push_back(std::move(added));
    }

    void joinCircuits(const Layout& piece) {
        for (const auto& circuit : piece.circuits) {
            const auto added = circuits_.find(circuit.id);
            if (added != circuits_.end() && circuit.joins) {
                layout_.circuits[*indexOf(layout_, added->second)].joins =
                    renamed(circuits_, *circuit.joins);
            }
        }
    }

    void putEntry(layout::Entry entry) {
        const auto id = freeId(entry.id, "E");
        entries_[entry.id] = id;
        entry.id = id;
        entry.name = freeName(entry.name, [&](const std::string& name) {
            return std::any_of(layout_.entries.begin(),
                               layout_.entries.end(),
                               [&](const auto& one) { return one.name == name; });
        });
        items_.emplace_back(id);
        layout_.entries.push_back(std::move(entry));
    }

    void putBlock(layout::Block block) {
        const auto id = freeId(block.id, "B");
        blocks_[block.id] = id;
        block.id = id;
        block.part = renamed(parts_, block.part);
        const bool taken = std::any_of(
            layout_.blocks.begin(), layout_.blocks.end(), [&](const layout::Block& one) {
                return !one.name.empty() && one.name == block.name;
            });
        if (taken) {
            block.name = freeBlockName(layout_);
        }
        items_.emplace_back(id);
        layout_.blocks.push_back(std::move(block));
    }

    void putConductor(Conductor conductor) {
        conductor.circuit = renamed(circuits_, conductor.circuit);
        conductor.tag = freeTag(conductor.tag, [&](const std::string& tag) {
            return std::any_of(layout_.conductors.begin(),
                               layout_.conductors.end(),
                               [&](const auto& one) { return one.tag == tag; });
        });
        const auto id = freeId(conductor.id, "W");
        conductor.id = id;
        for (auto* end : {&conductor.from, &conductor.to}) {
            if (auto* at = std::get_if<layout::AtEntry>(end)) {
                at->entry = renamed(entries_, at->entry);
            } else if (auto* in = std::get_if<layout::InPort>(end)) {
                in->block = renamed(blocks_, in->block);
            }
        }
        for (auto& pass : conductor.passes) {
            pass.block = renamed(blocks_, pass.block);
        }
        items_.emplace_back(id);
        layout_.conductors.push_back(std::move(conductor));
    }

    Layout& layout_;
    const parts::Shelf& shelf_;
    Names<parts::PartId> parts_;
    Names<layout::SystemId> systems_;
    Names<layout::CircuitId> circuits_;
    Names<layout::EntryId> entries_;
    Names<layout::BlockId> blocks_;
    Items items_;
};

/// As it lies in a gutter of this inside.
Edit fitted(const Layout& piece, const parts::Shelf& shelf, const Vec3& inside) {
    if (piece.gutter.inside == inside) {
        return piece;
    }
    return setGutterSize(geometry::build(piece, shelf), inside);
}

}  // namespace

Result<Made> putPiece(const BuiltLayout& built,
                      const parts::Shelf& shelf,
                      const Layout& piece,
                      const Vec3& by) {
    const auto fits = fitted(piece, shelf, built.gutter().inside);
    if (!fits) {
        return fail(fits.error());
    }
    Made made{built.layout, {}};
    made.items = Putter(made.layout, shelf).put(*fits);
    auto valid = accepted(std::move(made.layout), shelf);
    if (!valid) {
        return fail(valid.error());
    }
    if (by == Vec3{}) {  // not even rounded
        made.layout = std::move(*valid);
        return made;
    }
    auto moved = moveItems(geometry::build(*valid, shelf), made.items, by);
    if (!moved) {
        return fail(moved.error());
    }
    made.layout = std::move(*moved);
    return made;
}

// ---- where to -----------------------------------------------------------------------------------

namespace {

Box movedBy(const Box& box, const Vec3& by) {
    return {box.least + by, box.greatest + by};
}

bool isInside(const Box& box, const Vec3& inside) {
    const auto within = [](double least, double greatest, double room) {
        return least > -kLimitSlack && greatest < room + kLimitSlack;
    };
    return within(box.least.x, box.greatest.x, inside.x) &&
           within(box.least.y, box.greatest.y, inside.y) &&
           within(box.least.z, box.greatest.z, inside.z);
}

bool isOnWall(const layout::Gutter& gutter, const layout::Entry& entry, const Vec3& by) {
    const auto step = layout::alongWall(entry.wall, by);
    const auto room = layout::alongWall(entry.wall, gutter.inside);
    const double u = entry.u + step.u;
    const double v = entry.v + step.v;
    return u >= 0.0 && u <= room.u && v >= 0.0 && v <= room.v;
}

/// Whether blocks stay in the gutter and entries on their walls.
bool hasRoom(const BuiltLayout& piece, const Vec3& by) {
    const auto& entries = piece.layout.entries;
    return std::all_of(piece.blocks.begin(),
                       piece.blocks.end(),
                       [&](const auto& block) {
                           return isInside(movedBy(block.body, by), piece.gutter().inside);
                       }) &&
           std::all_of(entries.begin(), entries.end(), [&](const auto& entry) {
               return isOnWall(piece.gutter(), entry, by);
           });
}

bool blockIsFree(const BuiltLayout& built, const Box& body) {
    return std::all_of(built.blocks.begin(), built.blocks.end(), [&](const auto& there) {
        return geometry::clearance(there.body, body).in() > -kLimitSlack;
    });
}

bool entryIsFree(const BuiltLayout& built, layout::Wall wall, const Vec3& centre, double bore) {
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        const auto& there = built.entries[i];
        if (built.layout.entries[i].wall == wall &&
            distance(there.centre, centre) < (there.bore + bore) / 2.0) {
            return false;
        }
    }
    return true;
}

bool pathIsFree(const BuiltLayout& built, const geometry::BuiltConductor& one, const Vec3& by) {
    const auto& path = one.built.path;
    const Vec3 middle = path.pointAt(path.length().in() / 2.0) + by;
    return isInside({middle, middle}, built.gutter().inside) &&
           std::all_of(built.conductors.begin(), built.conductors.end(), [&](const auto& there) {
               return nearestInSpace(there.built.path, middle).distance >=
                      one.radius() + there.radius() - kLimitSlack;
           });
}

bool isFree(const BuiltLayout& built, const BuiltLayout& piece, const Vec3& by) {
    if (piece.blocks.empty() && piece.entries.empty()) {
        return std::all_of(piece.conductors.begin(), piece.conductors.end(), [&](const auto& one) {
            return pathIsFree(built, one, by);
        });
    }
    bool free = hasRoom(piece, by);
    for (std::size_t i = 0; free && i < piece.blocks.size(); ++i) {
        free = blockIsFree(built, movedBy(piece.blocks[i].body, by));
    }
    for (std::size_t i = 0; free && i < piece.entries.size(); ++i) {
        const auto& entry = piece.entries[i];
        free = entryIsFree(built, piece.layout.entries[i].wall, entry.centre + by, entry.bore);
    }
    return free;
}

/// A step from one copy to the next: past its blocks and entries, or a lane of its conductors.
Vec3 stepOf(const BuiltLayout& piece) {
    constexpr double kGrid = 0.25;
    constexpr double kBetween = 0.5;
    const auto upToGrid = [](double inches) { return std::ceil(inches / kGrid) * kGrid; };
    Items held;
    for (const auto& one : piece.layout.entries) {
        held.emplace_back(one.id);
    }
    for (const auto& one : piece.layout.blocks) {
        held.emplace_back(one.id);
    }
    if (!held.empty()) {
        return {upToGrid(boundsOf(piece, held).extents().x + kBetween), 0.0, 0.0};
    }
    double thickest = 0.0;
    for (const auto& one : piece.conductors) {
        thickest = std::max(thickest, one.diameter.in());
    }
    return {0.0, 0.0, upToGrid(thickest)};
}

}  // namespace

Vec3 shiftToFreePlace(const BuiltLayout& built, const Layout& piece) {
    parts::Shelf shelf = built.shelf;
    for (const auto& part : piece.parts) {
        shelf[part.id] = part;
    }
    const BuiltLayout laid = geometry::build(piece, shelf);
    const Vec3 step = stepOf(laid);
    constexpr int kTries = 24;
    for (int i = 0; i <= kTries; ++i) {
        for (const double way : {1.0, -1.0}) {
            const Vec3 by = step * (way * i) + Vec3{};
            if (isFree(built, laid, by)) {
                return by;
            }
        }
    }
    return step;
}

Result<Made> duplicated(const BuiltLayout& built, const parts::Shelf& shelf, const Items& items) {
    const auto piece = pieceOf(built, items);
    if (!piece) {
        return fail(piece.error());
    }
    return putPiece(built, shelf, *piece, shiftToFreePlace(built, *piece));
}

// ---- arrays -------------------------------------------------------------------------------------

namespace {

Error noRoom(int fits, int copies) {
    return {ErrorCode::outOfRange,
            "there is room for " + std::to_string(fits) + (fits == 1 ? " copy" : " copies") +
                " at this pitch, not for " + std::to_string(copies)};
}

}  // namespace

Result<Made> arrayed(const BuiltLayout& built,
                     const parts::Shelf& shelf,
                     const Items& items,
                     int copies,
                     const Vec3& pitch) {
    if (copies < 1 || copies > kMostCopies) {
        return fail({ErrorCode::outOfRange,
                     "so many copies cannot be made",
                     {},
                     {},
                     "1 to " + std::to_string(kMostCopies),
                     std::to_string(copies)});
    }
    const auto piece = pieceOf(built, items);
    if (!piece) {
        return fail(piece.error());
    }
    const BuiltLayout laid = geometry::build(*piece, shelf);
    for (int i = 1; i <= copies; ++i) {
        if (!hasRoom(laid, pitch * i)) {
            return fail(noRoom(i - 1, copies));
        }
    }
    Made all{built.layout, {}};
    for (int i = 1; i <= copies; ++i) {
        auto made = putPiece(geometry::build(all.layout, shelf), shelf, *piece, pitch * i);
        if (!made) {
            return made;
        }
        all.layout = std::move(made->layout);
        all.items.insert(all.items.end(), made->items.begin(), made->items.end());
    }
    return all;
}

}  // namespace gw::editing
