#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "editing/conductors.h"
#include "editing/field_forms.h"
#include "editing/settle.h"
#include "editing/shape.h"

namespace gw::editing {

using geometry::BuiltLayout;
using layout::Conductor;
using layout::Layout;

// ---- where it ends --------------------------------------------------------------------------

namespace {

const std::string kCapped = "capped";

/// "block A" and "2" of "block A, port 2"; `word` is what stands between.
struct Split {
    std::string_view thing;
    std::string_view part;  ///< empty: the word is not there
};

Split splitAt(std::string_view text, std::string_view word) {
    for (std::size_t i = text.size(); i-- > 0;) {
        if (i > 0 && text[i - 1] == ' ' && sameWord(text.substr(i, word.size()), word) &&
            i + word.size() < text.size() && text[i + word.size()] == ' ') {
            std::string_view thing = trimmed(text.substr(0, i));
            if (!thing.empty() && thing.back() == ',') {
                thing.remove_suffix(1);
            }
            return {trimmed(thing), trimmed(text.substr(i + word.size()))};
        }
    }
    return {text, {}};
}

std::vector<std::string> endChoices(const BuiltLayout& built) {
    std::vector<std::string> choices = {kCapped};
    const auto entries = distinctNames(built.layout, built.layout.entries);
    choices.insert(choices.end(), entries.begin(), entries.end());
    const auto blocks = distinctNames(built.layout, built.layout.blocks);
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        for (const auto& port : built.blocks[i].part->ports) {
            choices.push_back(blocks[i] + ", port " + port.name.text());
        }
    }
    return choices;
}

/// What the end becomes; an End with the entry's first free slot, or the port, or capped (empty).
Result<std::optional<layout::End>> readEnd(const BuiltLayout& built, std::string_view typed) {
    const std::string_view said = trimmed(typed);
    if (sameWord(said, kCapped)) {
        return std::optional<layout::End>();
    }
    const Layout& layout = built.layout;
    const Split atPort = splitAt(said, "port");
    if (const auto block = namedIn(layout, layout.blocks, atPort.thing);
        block && !atPort.part.empty()) {
        for (const auto& port : built.blocks[*block].part->ports) {
            if (sameWord(port.name.text(), atPort.part)) {
                auto end = endInPort(built, layout.blocks[*block].id, port.name);
                return end ? Result<std::optional<layout::End>>(*end) : fail(end.error());
            }
        }
    }
    const Split atSlot = splitAt(said, "slot");
    if (const auto entry = namedIn(layout, layout.entries, atSlot.thing)) {
        const auto& id = layout.entries[*entry].id;
        if (atSlot.part.empty()) {
            return std::optional<layout::End>(layout::AtEntry{id, freeSlot(layout, id)});
        }
        const auto slot = readCount(atSlot.part, {});
        return slot ? Result<std::optional<layout::End>>(layout::AtEntry{id, *slot})
                    : fail(slot.error());
    }
    return fail(notOneOf(typed, endChoices(built)));
}

layout::End& endOf(Conductor& conductor, ConductorEnd which) {
    return which == ConductorEnd::from ? conductor.from : conductor.to;
}

const layout::End& endOf(const Conductor& conductor, ConductorEnd which) {
    return which == ConductorEnd::from ? conductor.from : conductor.to;
}

Edit setEnd(const BuiltLayout& before,
            const layout::ConductorId& id,
            ConductorEnd which,
            std::string_view typed) {
    const auto& now = before.layout.conductors[*indexOf(before.layout, id)];
    if (sameWord(endText(before.layout, endOf(now, which)), trimmed(typed))) {
        return before.layout;
    }
    const auto end = readEnd(before, typed);
    if (!end) {
        return fail(end.error());
    }
    if (!*end) {
        return freeEnd(before, id, which);
    }
    if (const auto* at = std::get_if<layout::AtEntry>(&**end)) {
        return enterEnd(before, id, which, at->entry, at->slot);
    }
    const auto& port = std::get<layout::InPort>(**end);
    return landEnd(before, id, which, port.block, port.port);
}

// ---- fields of an end -----------------------------------------------------------------------

using Maker = FieldMaker<Conductor>;

void addTip(Maker& maker,
            const BuiltLayout& built,
            const Conductor& now,
            ConductorEnd which,
            const std::string& prefix) {
    const auto unit = built.layout.displayUnit;
    const Vec3 tip = std::get<layout::Spare>(endOf(now, which)).tip;
    const auto add = [&](const std::string& name, const std::string& label, double Vec3::*axis) {
        maker
            .add(prefix + name,
                 label,
                 FieldKind::length,
                 lengthText(units::Inches::of(tip.*axis), unit))
            .edit = [id = now.id, which, axis, unit](const BuiltLayout& before,
                                                     std::string_view typed) -> Edit {
            const auto length = units::parseLength(typed, unit);
            if (!length) {
                return fail(length.error());
            }
            const auto& one = before.layout.conductors[*indexOf(before.layout, id)];
            Vec3 to = std::get<layout::Spare>(endOf(one, which)).tip;
            to.*axis = length->in();
            return moveEnd(before, id, which, to);
        };
    };
    add(" x", "Tip along the gutter (x)", &Vec3::x);
    add(" y", "Tip height (y)", &Vec3::y);
    add(" z", "Tip depth (z)", &Vec3::z);
}

void addSlot(Maker& maker, const Conductor& now, ConductorEnd which, const std::string& prefix) {
    maker
        .add(prefix + " slot",
             "Slot",
             FieldKind::number,
             std::to_string(std::get<layout::AtEntry>(endOf(now, which)).slot))
        .write = [id = now.id, which](Layout& layout, std::string_view typed) -> Result<void> {
        const auto slot = readCount(typed, {});
        if (!slot) {
            return fail(slot.error());
        }
        auto& end = endOf(layout.conductors[*indexOf(layout, id)], which);
        if (auto* at = std::get_if<layout::AtEntry>(&end)) {
            at->slot = *slot;
        }
        return {};
    };
}

void addPort(Maker& maker, ConductorEnd which, const std::string& prefix) {
    const auto inPort = [which](Conductor& one) -> layout::InPort& {
        return std::get<layout::InPort>(endOf(one, which));
    };
    maker.openLength(
        prefix + " strip", "Strip", [inPort](Conductor & one) -> auto& {
            return inPort(one).strip;
        });
    maker.openLength(
        prefix + " inserted", "Pushed in", [inPort](Conductor & one) -> auto& {
            return inPort(one).inserted;
        });
}

void addEnd(Maker& maker, const BuiltLayout& built, const Conductor& now, ConductorEnd which) {
    const bool first = which == ConductorEnd::from;
    const std::string prefix = first ? "from" : "to";
    maker.group(first ? "First end" : "Second end");
    const layout::End& end = endOf(now, which);
    Field& field =
        maker.add(prefix, first ? "From" : "To", FieldKind::choice, endText(built.layout, end));
    // A choice is asked for while the layout is as it is here.
    field.choices = [&built] { return endChoices(built); };
    field.edit = [id = now.id, which](const BuiltLayout& before, std::string_view typed) {
        return setEnd(before, id, which, typed);
    };
    if (std::holds_alternative<layout::Spare>(end)) {
        addTip(maker, built, now, which, prefix);
    } else if (std::holds_alternative<layout::AtEntry>(end)) {
        addSlot(maker, now, which, prefix);
    } else {
        addPort(maker, which, prefix);
    }
}

// ---- bends and passes -----------------------------------------------------------------------

/// The bend at one corner: where its legs would meet.
Edit setCorner(const BuiltLayout& before,
               const layout::ConductorId& id,
               std::size_t corner,
               double Vec3::*axis,
               units::Inches at) {
    const auto index = *indexOf(before.layout, id);
    Vec3 by;
    by.*axis = at.in() - before.layout.conductors[index].corners[corner].at.*axis;
    auto moved = moveCorner(before, id, corner, by);
    if (moved &&
        std::abs(moved->conductors[index].corners[corner].at.*axis - at.in()) > kSamePoint) {
        return fail({ErrorCode::contradicts,
                     "this bend cannot go there: it stays in line with its raceway or port, and "
                     "the next one keeps its room"});
    }
    return moved;
}

void addBend(Maker& maker, const BuiltLayout& built, const Conductor& now, std::size_t corner) {
    const auto unit = built.layout.displayUnit;
    const std::string prefix = "bend " + std::to_string(corner + 1);
    maker.group("Bend " + std::to_string(corner + 1));
    const auto add = [&](const std::string& name, const std::string& label, double Vec3::*axis) {
        maker
            .add(prefix + name,
                 label,
                 FieldKind::length,
                 lengthText(units::Inches::of(now.corners[corner].at.*axis), unit))
            .edit = [id = now.id, corner, axis, unit](const BuiltLayout& before,
                                                      std::string_view typed) -> Edit {
            const auto length = units::parseLength(typed, unit);
            return length ? setCorner(before, id, corner, axis, *length) : fail(length.error());
        };
    };
    add(" x", "Along the gutter (x)", &Vec3::x);
    add(" y", "Height (y)", &Vec3::y);
    add(" z", "Depth (z)", &Vec3::z);
    maker
        .add(prefix + " radius",
             "Radius",
             FieldKind::length,
             lengthText(now.corners[corner].radius, unit))
        .edit = [id = now.id, corner, unit](const BuiltLayout& before,
                                            std::string_view typed) -> Edit {
        const auto length = units::parseLength(typed, unit);
        return length ? setBendRadius(before, id, corner, *length) : fail(length.error());
    };
}

void addPass(Maker& maker, const BuiltLayout& built, const Conductor& now, std::size_t pass) {
    const std::string prefix = "pass " + std::to_string(pass + 1);
    const auto& through = now.passes[pass];
    maker.group("Through " + itemName(built.layout, through.block) + ", port " +
                through.port.text());
    maker.openLength(
        prefix + " window start", "Window starts", [pass](Conductor & one) -> auto& {
            return one.passes[pass].windowStart;
        });
    maker.openLength(
        prefix + " window length", "Window length", [pass](Conductor & one) -> auto& {
            return one.passes[pass].windowLength;
        });
}

void addCircuit(Maker& maker, const BuiltLayout& built, const Conductor& now) {
    const auto names = distinctNames(built.layout, built.layout.circuits);
    const auto index = indexOf(built.layout, now.circuit);
    Field& field = maker.add("circuit", "Circuit", FieldKind::choice, index ? names[*index] : "");
    field.choices = [names] { return names; };
    field.write = [id = now.id, names](Layout& layout, std::string_view typed) -> Result<void> {
        const auto chosen = namedIn(layout, layout.circuits, trimmed(typed));
        if (!chosen) {
            return fail(notOneOf(typed, names));
        }
        layout.conductors[*indexOf(layout, id)].circuit = layout.circuits[*chosen].id;
        return {};
    };
}

}  // namespace

std::string endText(const Layout& layout, const layout::End& end) {
    if (const auto* at = std::get_if<layout::AtEntry>(&end)) {
        return distinctNames(layout, layout.entries)[*indexOf(layout, at->entry)];
    }
    if (const auto* in = std::get_if<layout::InPort>(&end)) {
        return distinctNames(layout, layout.blocks)[*indexOf(layout, in->block)] + ", port " +
               in->port.text();
    }
    return kCapped;
}

std::vector<Field> conductorFields(const BuiltLayout& built, const layout::ConductorId& id) {
    const Conductor& now = built.layout.conductors[*indexOf(built.layout, id)];
    Maker maker(built.layout, now, [id](Layout& layout) -> Conductor& {
        return layout.conductors[*indexOf(layout, id)];
    });
    maker.group("Conductor");
    maker.text("tag", "Tag", &Conductor::tag);
    addCircuit(maker, built, now);
    maker.count("set", "Set", &Conductor::set);
    maker.choice("phase", "Phase", layout::allPhases, layout::phaseText, &Conductor::phase);
    maker.choice(
        "size",
        "Size",
        units::WireSize::all,
        [](const units::WireSize& size) { return size.text(); },
        &Conductor::size);
    maker.choice("metal", "Metal", standards::allMetals, standards::metalText, &Conductor::metal);
    maker.choice("insulation",
                 "Insulation",
                 standards::allInsulations,
                 standards::insulationText,
                 &Conductor::insulation);
    maker.choice("strand",
                 "Strand",
                 standards::allStrandings,
                 standards::strandingText,
                 &Conductor::stranding);
    maker.length("outside diameter", "Outside diameter", &Conductor::outsideDiameter);
    maker.text("colour", "Colour", &Conductor::colour);
    addEnd(maker, built, now, ConductorEnd::from);
    addEnd(maker, built, now, ConductorEnd::to);
    for (std::size_t pass = 0; pass < now.passes.size(); ++pass) {
        addPass(maker, built, now, pass);
    }
    for (std::size_t corner = 0; corner < now.corners.size(); ++corner) {
        addBend(maker, built, now, corner);
    }
    return std::move(maker).finish();
}

}  // namespace gw::editing
