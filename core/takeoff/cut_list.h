#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/built_layout.h"
#include "takeoff/table.h"

/// How long each conductor is cut.
namespace gw::takeoff {

struct CutOptions {
    /// What is added to the length in the gutter and the raceways. Empty: by its bends, see
    /// allowanceFor(). REQUIRES >= 0.
    std::optional<units::Inches> allowance;
};

/// 1/2 in for a straight piece, 1 in for one or two bends, 1 1/2 in for more: what the radii as
/// bent, the cut, the strip and the seating may come to, to be trimmed at fitting. Judgement from
/// the stacked tolerances of bench work; common practice, no source.
units::Inches allowanceFor(std::size_t bends);

/// The next multiple of 1/8 in that is not shorter.
units::Inches roundedUpToCut(units::Inches length);

/// Insulation removed in the middle, from the same end as bend marks are measured.
struct Window {
    units::Inches from;
    units::Inches length;
};

struct CutLine {
    std::size_t conductor = 0;  ///< index in the layout
    units::Inches inGutter;     ///< along the bends, tip to tip or to the wall
    /// Of the raceways at its ends. Empty: it comes from a raceway whose length is not stated.
    std::optional<units::Inches> beyond;
    units::Inches allowance;
    units::Inches cut;  ///< the three together, rounded up; without `beyond` where it is not known
    /// Of the longest of its set's members: all of a phase's parallel conductors are cut alike.
    /// Empty: no parallel conductors, or what lies beyond the gutter is not known of all of them.
    std::optional<units::Inches> cutAlike;
    std::optional<units::Inches> stripFrom;  ///< in a port; empty: none, or not stated
    std::optional<units::Inches> stripTo;
    std::vector<Window> windows;
};

/// In the order of the layout. Strip as the layout states it, else as the part asks.
std::vector<CutLine> cutLines(const geometry::BuiltLayout& built, const CutOptions& options = {});

Table cutListTable(const geometry::BuiltLayout& built, const CutOptions& options = {});
/// What to take from each reel: sums by size, metal, insulation, strand and colour.
Table reelTable(const geometry::BuiltLayout& built, const CutOptions& options = {});

/// The strip at an end: stated, else the part's. Empty: neither, or not in a port.
std::optional<units::Inches> stripOf(const geometry::BuiltLayout& built,
                                     const layout::End& end,
                                     const geometry::BuiltEnd& at);

}  // namespace gw::takeoff
