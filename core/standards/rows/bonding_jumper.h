#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 250.102(C)(1): grounded conductor, main bonding jumper, system
//   bonding jumper and supply-side bonding jumper for alternating-current systems.
// Editions: table created in 2014 (before that the same sizes came from Table 250.66 plus the
//   12.5 percent rule); 2014 through 2023 alike. 2026 not checked.
// Units: ungrounded sizes AWG/kcmil as text; *_over_cmil exclusive and *_through_cmil
//   inclusive bounds in circular mils (parallel sets: add the areas of one phase); cu_jumper
//   / al_jumper in AWG or kcmil.
// Above 1100 kcmil Cu or 1750 kcmil Al: 12.5 percent of the largest phase area. Where
//   ungrounded conductors and jumper are of different metals, size as if the ungrounded
//   conductors were of the jumper metal with equivalent ampacity. Never required larger than
//   the largest ungrounded conductor when used as grounded conductor or supply-side jumper
//   inside one enclosure (note of the table, memory).
// Verified: 12.5 percent rule with both limits on a trade-forum quotation of the rule with
//   worked examples (4 x 500 Cu = 2000 kcmil gives 250 kcmil; 5 x 600 gives 375, next size
//   400); three rows by worked examples on a code forum and in a trade magazine; the
//   remaining rows rest on being the same as Table 250.66 (grounding_electrode, verified).
struct JumperRow {
    double copperOver;
    double copperThrough;
    double aluminiumOver;
    double aluminiumThrough;
    std::string_view copper;
    std::string_view aluminium;
    Basis basis;
};

// clang-format off
inline constexpr std::array<JumperRow, 7> kJumperRows = {{
    {      0,   66360,       0,  105600, "8"    , "6"    , Basis::memory},
    {  66360,  105600,  105600,  167800, "6"    , "4"    , Basis::memory},
    { 105600,  167800,  167800,  250000, "4"    , "2"    , Basis::seen},
    { 167800,  350000,  250000,  500000, "2"    , "1/0"  , Basis::seen},
    { 350000,  600000,  500000,  900000, "1/0"  , "3/0"  , Basis::memory},
    { 600000, 1100000,  900000, 1750000, "2/0"  , "4/0"  , Basis::seen},
    {1100000,  kBlank, 1750000,  kBlank, "12.5%", "12.5%", Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
