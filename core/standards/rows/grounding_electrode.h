#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 250.66, grounding electrode conductor for alternating-current
//   systems.
// Editions: sizes alike 2008 through 2023; the 2020 edition dropped the words service-
//   entrance, the table also serving feeders and separately derived systems (seen).
// Units: sizes AWG/kcmil; bounds in circular mils (over = exclusive, through = inclusive;
//   parallel sets added).
// Caps when the conductor goes only to that electrode kind: rod, pipe or plate 6 Cu / 4 Al;
//   concrete-encased 4 Cu; ground ring not larger than the ring (seen).
// Verified: four public pages agree on all rows.
struct ElectrodeRow {
    double copperOver;
    double copperThrough;
    double aluminiumOver;
    double aluminiumThrough;
    std::string_view copper;
    std::string_view aluminium;
    Basis basis;
};

// clang-format off
inline constexpr std::array<ElectrodeRow, 7> kElectrodeRows = {{
    {      0,   66360,       0,  105600, "8"  , "6"  , Basis::seenTwice},
    {  66360,  105600,  105600,  167800, "6"  , "4"  , Basis::seenTwice},
    { 105600,  167800,  167800,  250000, "4"  , "2"  , Basis::seenTwice},
    { 167800,  350000,  250000,  500000, "2"  , "1/0", Basis::seenTwice},
    { 350000,  600000,  500000,  900000, "1/0", "3/0", Basis::seenTwice},
    { 600000, 1100000,  900000, 1750000, "2/0", "4/0", Basis::seenTwice},
    {1100000,  kBlank, 1750000,  kBlank, "3/0", "250", Basis::seenTwice},
}};
// clang-format on

}  // namespace gw::standards::rows
