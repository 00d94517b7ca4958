#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 250.122, minimum size equipment grounding conductors.
// Editions: 2014 and later; older prints differ in Al at 4000 A (800, later 750) and
//   5000/6000 A (1200, now 1250), and carried separate 30 A and 40 A rows (10 Cu / 8 Al).
//   2026 not checked.
// Units: ocpd_a = rating of the overcurrent device ahead, not exceeding (A): take the first
//   row not below the device; sizes AWG/kcmil, al = aluminium or copper-clad aluminium.
// Upsizing rule 250.122(B): enlarge in proportion when the ungrounded conductors are
//   enlarged. Never required larger than the circuit conductors (250.122(A)). Parallel
//   raceways: full size in each.
// Verified: one public engineering page with the whole current table; 15 to 1200 A also on a
//   field reference page; 1600 to 3000 A also on a print of the older table.
struct EquipmentRow {
    double deviceAmperes;
    std::string_view copper;
    std::string_view aluminium;
    Basis basis;
};

// clang-format off
inline constexpr std::array<EquipmentRow, 19> kEquipmentRows = {{
    {  15, "14" , "12"  , Basis::seenTwice},
    {  20, "12" , "10"  , Basis::seenTwice},
    {  60, "10" , "8"   , Basis::seenTwice},
    { 100, "8"  , "6"   , Basis::seenTwice},
    { 200, "6"  , "4"   , Basis::seenTwice},
    { 300, "4"  , "2"   , Basis::seenTwice},
    { 400, "3"  , "1"   , Basis::seenTwice},
    { 500, "2"  , "1/0" , Basis::seenTwice},
    { 600, "1"  , "2/0" , Basis::seenTwice},
    { 800, "1/0", "3/0" , Basis::seenTwice},
    {1000, "2/0", "4/0" , Basis::seenTwice},
    {1200, "3/0", "250" , Basis::seenTwice},
    {1600, "4/0", "350" , Basis::seenTwice},
    {2000, "250", "400" , Basis::seenTwice},
    {2500, "350", "600" , Basis::seenTwice},
    {3000, "400", "600" , Basis::seenTwice},
    {4000, "500", "750" , Basis::seen},
    {5000, "700", "1250", Basis::seen},
    {6000, "800", "1250", Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
