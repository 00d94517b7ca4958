#include <map>

#include "geometry/built_pieces.h"
#include "geometry/packing.h"
#include "standards/tables.h"

namespace gw::geometry {
namespace {

using SlotDiameters = std::map<int, double>;  // slot number -> inches

/// Who comes through each entry, in one pass over the conductors.
std::vector<SlotDiameters> slotDiameters(const layout::Layout& layout,
                                         const Indices& indices,
                                         const std::vector<Thickness>& thicknesses) {
    std::vector<SlotDiameters> diameters(layout.entries.size());
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        for (const auto* end : {&layout.conductors[i].from, &layout.conductors[i].to}) {
            if (const auto* at = std::get_if<layout::AtEntry>(end)) {
                const std::size_t entry = indices.entries.at(at->entry);
                diameters[entry][at->slot] = thicknesses[i].diameter.in();
            }
        }
    }
    return diameters;
}

std::optional<double> statedBore(const layout::Entry& entry, standards::Edition edition) {
    if (!entry.raceway || !entry.tradeSize) {
        return std::nullopt;
    }
    const auto found = standards::racewayDimensions(*entry.raceway, *entry.tradeSize, edition);
    return found ? std::optional(found->value.insideDiameter.in()) : std::nullopt;
}

BuiltEntry buildEntry(const layout::Layout& layout,
                      const layout::Entry& entry,
                      const SlotDiameters& slots) {
    std::vector<double> diameters;
    for (const auto& [slot, diameter] : slots) {
        diameters.push_back(diameter);
    }
    const TightPacking packing = packTightly(diameters);
    const auto stated = statedBore(entry, layout.edition);
    BuiltEntry built;
    built.centre = layout::entryCentre(layout.gutter, entry);
    built.axis = layout::inwardNormal(entry.wall);
    built.bore = stated.value_or(packing.bore);
    built.boreStated = stated.has_value();
    built.packed = fits(packing, built.bore);
    std::size_t i = 0;
    for (const auto& [slot, diameter] : slots) {
        const SlotPlace& place = packing.places[i++];
        built.slots[slot] =
            layout::onWall(layout.gutter, entry.wall, entry.u + place.u, entry.v + place.v);
    }
    return built;
}

}  // namespace

std::vector<BuiltEntry> buildEntries(const layout::Layout& layout,
                                     const Indices& indices,
                                     const std::vector<Thickness>& thicknesses) {
    const auto slots = slotDiameters(layout, indices, thicknesses);
    std::vector<BuiltEntry> entries;
    for (std::size_t i = 0; i < slots.size(); ++i) {
        entries.push_back(buildEntry(layout, layout.entries[i], slots[i]));
    }
    return entries;
}

}  // namespace gw::geometry
