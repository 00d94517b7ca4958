#pragma once

#include <optional>
#include <string>

#include "geometry/built_layout.h"
#include "takeoff/table.h"

/// What hangs on the wall and what is lifted.
namespace gw::takeoff {

/// Pounds per 1,000 ft of an insulated conductor: metal by its circular mils with 2 % for the lay
/// of strands, insulation by the ring between the bare and the overall diameter. Within 1.5 % of
/// published weights of THHN copper from 1/0 to 250 kcmil; ±5 % in general.
/// Densities: copper 8.89 g/cm³ (ASTM B496), aluminium 2.703 (from memory), PVC 1.40 and
/// cross-linked polyethylene 0.93 (published ranges); copper-clad aluminium 3.32 (from memory).
/// Metal and insulation that are not stated count as copper and PVC, the heavier.
double poundsPerThousandFeet(const layout::Conductor& conductor,
                             units::Inches overall,
                             standards::Edition edition);

/// Walls, back and ends of the trough without the cover, and the cover, without flanges and laps.
/// Steel 41.82 lb/ft² for each inch of thickness (manufacturers' standard gage: 16 ga 2.500,
/// 14 ga 3.125 lb/ft²); stainless steel 42.0 and aluminium 14.1, both from memory. Empty: the sheet
/// is not stated, or the gutter is nonmetallic.
struct SheetWeight {
    double trough = 0.0;  ///< lb
    double cover = 0.0;
};
std::optional<SheetWeight> sheetWeight(const layout::Gutter& gutter);

Table weightTable(const geometry::BuiltLayout& built);

}  // namespace gw::takeoff
