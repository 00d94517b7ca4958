#include <map>

#include "base/contract.h"
#include "geometry/built_pieces.h"
#include "geometry/packing.h"
#include "standards/tables.h"

namespace gw::geometry {
namespace {

/// Slot number -> diameter of the conductor in it, for one entry.
std::map<int, double> slotDiameters(const layout::Layout& layout,
                                    const layout::EntryId& entry,
                                    const std::vector<Thickness>& thicknesses) {
    std::map<int, double> diameters;
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        for (const auto* end : {&layout.conductors[i].from, &layout.conductors[i].to}) {
            const auto* at = std::get_if<layout::AtEntry>(end);
            if (at != nullptr && at->entry == entry) {
                diameters[at->slot] = thicknesses[i].diameter.in();
            }
        }
    }
    return diameters;
}

Vec3 onWall(layout::Wall wall, const SlotPlace& place) {
    switch (wall) {
        case layout::Wall::top:
        case layout::Wall::bottom:
            return {place.u, 0.0, place.v};
        case layout::Wall::left:
        case layout::Wall::right:
            return {0.0, place.u, place.v};
        case layout::Wall::back:
            return {place.u, place.v, 0.0};
    }
    return {};
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
                      const std::map<int, double>& slots) {
    BuiltEntry built;
    built.centre = layout::entryCentre(layout.gutter, entry);
    built.axis = layout::inwardNormal(entry.wall);
    std::vector<double> diameters;
    for (const auto& [slot, diameter] : slots) {
        diameters.push_back(diameter);
    }
    const auto stated = statedBore(entry, layout.edition);
    built.boreStated = stated.has_value();
    const double needed = diameters.empty() ? 0.0 : boreNeeded(diameters);
    built.bore = stated.value_or(needed);
    auto places = packCircles(diameters, built.bore);
    if (!places) {
        built.packed = false;
        places = packCircles(diameters, needed);
    }
    CONTRACT(places.has_value());
    std::size_t i = 0;
    for (const auto& [slot, diameter] : slots) {
        built.slots[slot] = built.centre + onWall(entry.wall, (*places)[i++]);
    }
    return built;
}

}  // namespace

std::vector<BuiltEntry> buildEntries(const layout::Layout& layout,
                                     const std::vector<Thickness>& thicknesses) {
    std::vector<BuiltEntry> entries;
    for (const auto& entry : layout.entries) {
        entries.push_back(buildEntry(layout, entry, slotDiameters(layout, entry.id, thicknesses)));
    }
    return entries;
}

}  // namespace gw::geometry
