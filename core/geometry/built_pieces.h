#pragma once

#include <vector>

#include "geometry/built_layout.h"

/// The steps of build(), each from what stands before it.
namespace gw::geometry {

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
                                     const std::vector<Thickness>& thicknesses);

/// REQUIRES the built layout's blocks and entries.
BuiltConductor buildConductor(const BuiltLayout& built,
                              const layout::Conductor& conductor,
                              const Thickness& thickness);

}  // namespace gw::geometry
