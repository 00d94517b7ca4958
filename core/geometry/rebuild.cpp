#include "geometry/rebuild.h"

#include <utility>

namespace gw::geometry {
namespace {

FillConductor countedFor(const BuiltConductor& conductor) {
    return {&conductor.built.path, conductor.radius(), conductor.area.in2(), conductor.inBlocks};
}

/// How thick a conductor is does not hang on where it runs.
Thickness thicknessAsBuilt(const BuiltConductor& conductor) {
    return {conductor.diameter, conductor.area, conductor.diameterSource, conductor.assumed};
}

/// What counted in the fill before, and counts now.
struct Exchange {
    std::vector<BuiltConductor> gone{};  // what `out` has loans of
    std::vector<FillConductor> out{};
    std::vector<FillConductor> in{};
    std::vector<Box> outOfBlocks{};
    std::vector<Box> inOfBlocks{};
};

}  // namespace

void Rebuilder::rebuild(BuiltLayout& built, const Things& moved) const {
    Exchange exchanged;
    exchanged.gone.reserve(moved.conductors.size());
    for (const std::size_t i : moved.blocks) {
        BuiltBlock& block = built.blocks[i];
        exchanged.outOfBlocks.push_back(block.body);
        block = buildBlock(built.layout.blocks[i], *block.part);
        exchanged.inOfBlocks.push_back(block.body);
    }
    for (const std::size_t i : moved.conductors) {
        BuiltConductor& conductor = built.conductors[i];
        BuiltConductor now = buildConductor(
            built, indices_, built.layout.conductors[i], thicknessAsBuilt(conductor));
        exchanged.gone.push_back(std::exchange(conductor, std::move(now)));
        exchanged.out.push_back(countedFor(exchanged.gone.back()));
        exchanged.in.push_back(countedFor(conductor));
    }
    exchange(
        built.fill, {exchanged.out, exchanged.outOfBlocks}, {exchanged.in, exchanged.inOfBlocks});
}

}  // namespace gw::geometry
