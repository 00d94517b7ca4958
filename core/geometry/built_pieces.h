#pragma once

#include <map>
#include <vector>

#include "geometry/built_layout.h"

/// The steps of build(), each from what stands before it.
namespace gw::geometry {

/// Where things are in the layout's vectors, by id.
struct Indices {
    std::map<layout::EntryId, std::size_t> entries;
    std::map<layout::BlockId, std::size_t> blocks;
};
Indices indicesOf(const layout::Layout& layout);

/// REQUIRES that the part has such a port.
std::size_t portIndex(const parts::Part& part, const parts::PortName& name);

/// Over the insulation, with where it comes from. A stated diameter comes first; then the tables;
/// where the insulation or the stranding is not stated, or no table has it, the largest published.
struct Thickness {
    units::Inches diameter;
    units::SquareInches area;
    standards::Citation source;
    std::string assumed;
};
Thickness thicknessOf(const layout::Conductor& conductor, standards::Edition edition);

BuiltBlock buildBlock(const layout::Block& block, const parts::Part& part);

/// thicknesses: one a conductor, in the layout's order.
std::vector<BuiltEntry> buildEntries(const layout::Layout& layout,
                                     const Indices& indices,
                                     const std::vector<Thickness>& thicknesses);

/// REQUIRES the built layout's blocks and entries.
BuiltConductor buildConductor(const BuiltLayout& built,
                              const Indices& indices,
                              const layout::Conductor& conductor,
                              const Thickness& thickness);

BuiltPass buildPass(const BuiltBlock& block,
                    std::size_t blockIndex,
                    const layout::Pass& pass,
                    const Path& path);

/// Fills `inBlocks` and `bare` from the ends and passes: in order, none touching another.
void markStretches(const std::vector<BuiltBlock>& blocks, BuiltConductor& conductor);

}  // namespace gw::geometry
