#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "editing/field_forms.h"
#include "editing/move.h"
#include "editing/place.h"
#include "layout/wall_plane.h"

namespace gw::editing {

using geometry::BuiltLayout;
using layout::Block;
using layout::Entry;
using layout::Layout;
using layout::Wall;

// ---- entries --------------------------------------------------------------------------------

namespace {

/// What u and v of a wall are called.
struct WallAxes {
    std::string u;
    std::string v;
};

WallAxes axesOf(Wall wall) {
    const std::string along = "Along the gutter (x)";
    const std::string height = "Height (y)";
    const std::string depth = "Depth (z)";
    switch (wall) {
        case Wall::top:
        case Wall::bottom:
            return {along, depth};
        case Wall::left:
        case Wall::right:
            return {height, depth};
        case Wall::back:
            return {along, height};
    }
    return {along, height};
}

/// On another wall it keeps u and v as far as that wall goes.
Result<void> ontoWall(Layout& layout, const layout::EntryId& id) {
    Entry& entry = layout.entries[*indexOf(layout, id)];
    const auto room = layout::alongWall(entry.wall, layout.gutter.inside);
    entry.u = std::clamp(entry.u, 0.0, room.u);
    entry.v = std::clamp(entry.v, 0.0, room.v);
    return {};
}

}  // namespace

std::vector<Field> entryFields(const BuiltLayout& built, const layout::EntryId& id) {
    const Entry& now = built.layout.entries[*indexOf(built.layout, id)];
    FieldMaker<Entry> maker(built.layout, now, [id](Layout& layout) -> Entry& {
        return layout.entries[*indexOf(layout, id)];
    });
    maker.group("Entry");
    maker.text("name", "Name", &Entry::name);
    maker.text("leads to", "Leads to", &Entry::leadsTo);
    const WallAxes axes = axesOf(now.wall);
    maker.choice("wall", "Wall", layout::allWalls, layout::wallText, &Entry::wall);
    maker.place("u", axes.u, [](Entry& entry) -> double& { return entry.u; });
    maker.place("v", axes.v, [](Entry& entry) -> double& { return entry.v; });
    maker.group("Raceway");
    maker.choice(
        "raceway", "Raceway", standards::allRaceways, standards::racewayText, &Entry::raceway);
    maker.choice(
        "trade size",
        "Trade size",
        standards::TradeSize::all,
        [](const standards::TradeSize& size) { return size.text(); },
        &Entry::tradeSize);
    maker.length("raceway length", "Length beyond", &Entry::racewayLength);
    maker.truth("insulating bushing", "Insulating bushing", &Entry::insulatingBushing);
    maker.choice(
        "bonded by", "Bonded by", layout::allBondedBy, layout::bondedByText, &Entry::bondedBy);
    maker.choice(
        "bonding jumper",
        "Bonding jumper (copper)",
        units::WireSize::all,
        [](const units::WireSize& size) { return size.text(); },
        &Entry::bondingJumper);
    auto fields = std::move(maker).finish();
    for (Field& field : fields) {
        if (field.name == "wall") {
            field.write = [id, set = field.write](Layout& layout, std::string_view typed) {
                const auto written = set(layout, typed);
                return written ? ontoWall(layout, id) : written;
            };
        }
    }
    return fields;
}

// ---- blocks ---------------------------------------------------------------------------------

namespace {

Error outsideGutter(double most, units::LengthUnit unit, std::string_view found) {
    return {ErrorCode::outOfRange,
            "there it would not lie inside the gutter",
            {},
            {},
            "0 to " + lengthText(units::Inches::of(std::max(0.0, most)), unit),
            std::string(trimmed(found))};
}

/// One coordinate of the corner; conductors follow as they do in a drag.
void addCorner(FieldMaker<Block>& maker,
               const BuiltLayout& built,
               const Block& now,
               std::string name,
               std::string label,
               double Vec3::*axis) {
    const auto unit = built.layout.displayUnit;
    maker
        .add(std::move(name),
             std::move(label),
             FieldKind::length,
             lengthText(units::Inches::of(now.corner.*axis), unit))
        .edit = [id = now.id, axis, unit](const BuiltLayout& before,
                                          std::string_view typed) -> Edit {
        const auto length = units::parseLength(typed, unit);
        if (!length) {
            return fail(length.error());
        }
        const auto index = *indexOf(before.layout, id);
        Vec3 by;
        by.*axis = length->in() - before.layout.blocks[index].corner.*axis;
        auto moved = moveItems(before, {id}, by);
        if (moved && std::abs(moved->blocks[index].corner.*axis - length->in()) > kSamePoint) {
            const double extent = before.blocks[index].body.extents().*axis;
            return fail(outsideGutter(before.gutter().inside.*axis - extent, unit, typed));
        }
        return moved;
    };
}

std::vector<const parts::Part*> partsAtHand(const Layout& layout, const parts::Shelf& shelf) {
    std::vector<const parts::Part*> all;
    for (const auto& part : layout.parts) {
        all.push_back(&part);
    }
    for (const auto& [id, part] : shelf) {
        all.push_back(layout::findPart(layout, shelf, id));
    }
    return all;
}

/// By id, which are words for the shipped ones; conductors must find their ports again.
void addPart(FieldMaker<Block>& maker,
             const BuiltLayout& built,
             const parts::Shelf& shelf,
             const Block& now) {
    std::vector<std::string> ids;
    for (const auto* part : partsAtHand(built.layout, shelf)) {
        if (std::find(ids.begin(), ids.end(), part->id.text()) == ids.end()) {
            ids.push_back(part->id.text());
        }
    }
    Field& field = maker.add("part", "Part", FieldKind::choice, now.part.text());
    field.choices = [ids] { return ids; };
    field.write = [id = now.id, ids](Layout& layout, std::string_view typed) -> Result<void> {
        for (const auto& one : ids) {
            if (sameWord(one, trimmed(typed))) {
                Block& block = layout.blocks[*indexOf(layout, id)];
                block.part = parts::PartId(one);
                block.openMouths.clear();
                return {};
            }
        }
        return fail(notOneOf(typed, ids));
    };
}

void addAttitude(FieldMaker<Block>& maker, const Block& now) {
    std::vector<std::string> texts;
    for (const auto& one : parts::Attitude::all()) {
        texts.push_back(one.text());
    }
    Field& field =
        maker.add("attitude", "Turned (length, height)", FieldKind::choice, now.attitude.text());
    field.choices = [texts] { return texts; };
    field.edit = [id = now.id, texts](const BuiltLayout& before, std::string_view typed) -> Edit {
        const auto attitude = parts::Attitude::fromText(trimmed(typed));
        return attitude ? setAttitude(before, id, *attitude) : fail(notOneOf(typed, texts));
    };
}

/// Which mouth of a port with a movable cap is open.
void addMouth(FieldMaker<Block>& maker, const Block& now, const parts::PortName& port) {
    const auto stated = std::find_if(now.openMouths.begin(),
                                     now.openMouths.end(),
                                     [&](const auto& one) { return one.port == port; });
    const std::vector<std::string> choices = {"near", "far"};
    Field& field = maker.add("open mouth " + port.text(),
                             "Open mouth of port " + port.text(),
                             FieldKind::choice,
                             stated == now.openMouths.end() ? "" : choices[stated->near ? 0 : 1]);
    field.mayBeOpen = true;
    field.choices = [choices] { return choices; };
    field.write = [id = now.id, port, choices](Layout& layout,
                                               std::string_view typed) -> Result<void> {
        auto& mouths = layout.blocks[*indexOf(layout, id)].openMouths;
        const bool near = sameWord(trimmed(typed), choices[0]);
        if (!near && !saysNothing(typed) && !sameWord(trimmed(typed), choices[1])) {
            return fail(notOneOf(typed, choices));
        }
        const auto at = std::find_if(
            mouths.begin(), mouths.end(), [&](const auto& one) { return one.port == port; });
        if (saysNothing(typed)) {
            std::erase_if(mouths, [&](const auto& one) { return one.port == port; });
        } else if (at != mouths.end()) {
            at->near = near;
        } else {
            mouths.push_back({port, near});
        }
        return {};
    };
}

}  // namespace

std::vector<Field> blockFields(const BuiltLayout& built,
                               const parts::Shelf& shelf,
                               const layout::BlockId& id) {
    const auto index = *indexOf(built.layout, id);
    const Block& now = built.layout.blocks[index];
    FieldMaker<Block> maker(built.layout, now, [id](Layout& layout) -> Block& {
        return layout.blocks[*indexOf(layout, id)];
    });
    maker.group("Block");
    maker.text("name", "Name", &Block::name);
    maker.choice("phase", "Phase", layout::allPhases, layout::phaseText, &Block::phase);
    addPart(maker, built, shelf, now);
    maker.truth("mounted", "Bolted down", &Block::mounted);
    maker.group("Place of its corner");
    addCorner(maker, built, now, "x", "Along the gutter (x)", &Vec3::x);
    addCorner(maker, built, now, "y", "Height (y)", &Vec3::y);
    addCorner(maker, built, now, "z", "Depth (z)", &Vec3::z);
    addAttitude(maker, now);
    maker.group("Movable caps");
    for (const auto& port : built.blocks[index].part->ports) {
        if (port.opening == parts::PortOpening::either) {
            addMouth(maker, now, port.name);
        }
    }
    return std::move(maker).finish();
}

}  // namespace gw::editing
