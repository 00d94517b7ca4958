#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 312.6(B), minimum wire-bending space at terminals where the
//   conductor DOES enter or leave through the wall opposite its terminal. UL 891 / CSA C22.2
//   prints the same figures as its Table 30.
// Editions: inch values alike 2008 through 2023 (later books refer to it as the table of
//   312.6(B)(2)).
// Units: inches. wN_in = required space for N wires per terminal; wN_reduction_in = inches by
//   which it may be reduced under the condition below (0 = no reduction printed).
// Condition for the reduction: only for removable or lay-in wire terminals each meant for ONE
//   wire (removable = can be taken off without disturbing structural or electrical parts
//   other than a cover, and put back with the wire on). Otherwise use the full space.
// Printed reduction letters: a 0.5 in, b 1 in, c 1.5 in, d 2 in, e 3 in.
// Measured in a straight line from the end of the lug in the direction the wire leaves, to
//   the wall, barrier or obstruction.
// Column compact_aa8000: equivalent size of compact-stranded AA-8000 aluminium allowed to use
//   that row (up to 1000 kcmil). Seen on the reprint.
// w4 = four or more wires per terminal.
// Verified: w1 column with its letters and the compact column on a public reprint of NEC
//   Table 312.6(B); all four columns with reduced values in brackets in a public engineering
//   note quoting UL 891 Table 30 (4 AWG up). The two agree wherever both speak. The basis of
//   a row is that of its weakest column.
// Forum spot check: 4/0 = 7, 500 kcmil = 14 (one wire).
struct BendingBRow {
    std::string_view sizes;
    std::string_view compactSizes;
    double wires1;
    double reduction1;
    double wires2;
    double reduction2;
    double wires3;
    double reduction3;
    double wires4;
    double reduction4;
    Basis basis;
};

// clang-format off
inline constexpr std::array<BendingBRow, 26> kBendingBRows = {{
    {"14-10", "12-8"   , kNotSpecified, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"8"    , "6"      ,           1.5,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"6"    , "4"      ,             2,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seen},
    {"4"    , "2"      ,             3,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"3"    , "1"      ,             3,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"2"    , "1/0"    ,           3.5,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"1"    , "2/0"    ,           4.5,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"1/0"  , "3/0"    ,           5.5,      0,    5.5,      0,      7,      0, kBlank, kBlank, Basis::seen},
    {"2/0"  , "4/0"    ,             6,      0,      6,      0,    7.5,      0, kBlank, kBlank, Basis::seen},
    {"3/0"  , "250"    ,           6.5,    0.5,    6.5,    0.5,      8,      0, kBlank, kBlank, Basis::seen},
    {"4/0"  , "300"    ,             7,      1,    7.5,    1.5,    8.5,    0.5, kBlank, kBlank, Basis::seen},
    {"250"  , "350"    ,           8.5,      2,    8.5,      2,      9,      1,     10,      0, Basis::seen},
    {"300"  , "400"    ,            10,      3,     10,      2,     11,      1,     12,      0, Basis::seen},
    {"350"  , "500"    ,            12,      3,     12,      3,     13,      3,     14,      2, Basis::seen},
    {"400"  , "600"    ,            13,      3,     13,      3,     14,      3,     15,      3, Basis::seen},
    {"500"  , "700-750",            14,      3,     14,      3,     15,      3,     16,      3, Basis::seen},
    {"600"  , "800-900",            15,      3,     16,      3,     18,      3,     19,      3, Basis::seen},
    {"700"  , "1000"   ,            16,      3,     18,      3,     20,      3,     22,      3, Basis::seen},
    {"750"  , "-"      ,            17,      3,     19,      3,     22,      3,     24,      3, Basis::seen},
    {"800"  , "-"      ,            18,      0,     20,      0,     22,      0,     24,      0, Basis::seen},
    {"900"  , "-"      ,            19,      0,     22,      0,     24,      0,     24,      0, Basis::seen},
    {"1000" , "-"      ,            20,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"1250" , "-"      ,            22,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"1500" , "-"      ,            24,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"1750" , "-"      ,            24,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"2000" , "-"      ,            24,      0, kBlank, kBlank, kBlank, kBlank, kBlank, kBlank, Basis::seenTwice},
}};
// clang-format on

}  // namespace gw::standards::rows
