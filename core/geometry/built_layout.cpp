#include "geometry/built_layout.h"

#include "base/contract.h"
#include "geometry/built_pieces.h"

namespace gw::geometry {
namespace {

parts::Shelf partsInUse(const layout::Layout& layout, const parts::Shelf& shelf) {
    parts::Shelf used;
    for (const auto& block : layout.blocks) {
        const auto* part = layout::findPart(layout, shelf, block.part);
        CONTRACT(part != nullptr);
        used.emplace(part->id, *part);
    }
    return used;
}

FillProfile profileOf(const BuiltLayout& built) {
    std::vector<FillConductor> conductors;
    for (const auto& conductor : built.conductors) {
        conductors.push_back(
            {&conductor.built.path, conductor.radius(), conductor.area.in2(), conductor.inBlocks});
    }
    std::vector<Box> bodies;
    for (const auto& block : built.blocks) {
        bodies.push_back(block.body);
    }
    return fillProfile(built.layout.gutter.inside, conductors, bodies);
}

}  // namespace

std::optional<std::size_t> BuiltLayout::circuitIndex(const layout::CircuitId& id) const {
    for (std::size_t i = 0; i < layout.circuits.size(); ++i) {
        if (layout.circuits[i].id == id) {
            return i;
        }
    }
    return std::nullopt;
}

Indices indicesOf(const layout::Layout& layout) {
    Indices indices;
    for (std::size_t i = 0; i < layout.entries.size(); ++i) {
        indices.entries.emplace(layout.entries[i].id, i);
    }
    for (std::size_t i = 0; i < layout.blocks.size(); ++i) {
        indices.blocks.emplace(layout.blocks[i].id, i);
    }
    return indices;
}

BuiltLayout build(const layout::Layout& layout, const parts::Shelf& shelf) {
    BuiltLayout built;
    built.layout = layout;
    built.shelf = partsInUse(layout, shelf);
    std::vector<Thickness> thicknesses;
    for (const auto& conductor : layout.conductors) {
        thicknesses.push_back(thicknessOf(conductor, layout.edition));
    }
    const Indices indices = indicesOf(layout);
    built.entries = buildEntries(layout, indices, thicknesses);
    for (const auto& block : layout.blocks) {
        built.blocks.push_back(buildBlock(block, built.shelf.at(block.part)));
    }
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        built.conductors.push_back(
            buildConductor(built, indices, layout.conductors[i], thicknesses[i]));
    }
    built.fill = profileOf(built);
    return built;
}

}  // namespace gw::geometry
