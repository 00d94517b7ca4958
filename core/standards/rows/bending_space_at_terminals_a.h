#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 312.6(A), minimum wire-bending space at terminals and minimum width
//   of wiring gutters (conductor does NOT enter or leave through the wall opposite its
//   terminal).
// Editions: inch values alike 2008 through 2023. The compact AA-8000 column was added to this
//   table in a later edition (2017 or 2020, memory); earlier editions had it only in table
//   (B).
// Units: inches. w1..w5 = wires per terminal. NS = not specified.
// Measured in a straight line from the end of the lug or connector, in the direction the wire
//   leaves, to the wall, barrier or obstruction.
// For a wireway or auxiliary gutter: where insulated conductors are deflected, or
//   enter/leave, by more than 30 degrees, the one-wire-per-terminal column sets the least
//   dimension (376.23(A), 366.58(A); the 376 rule seen on a trade-magazine code question
//   page, the angle from memory).
// Verified: inch columns w1..w5 on a public reprint of Table 312.6(A), except the one entry
//   noted; spot checks elsewhere: 2/0 Cu = 3.5, 4/0 = 4, 3 x 600 kcmil = 12 in forum threads,
//   3/0 = 4 on a gutter-fill page.
// The column compact_aa8000 is MEMORY for every row of this file (basis column speaks for the
//   inch values only).
struct BendingARow {
    std::string_view sizes;
    std::string_view compactSizes;
    double wires1;
    double wires2;
    double wires3;
    double wires4;
    double wires5;
    Basis basis;
};

// clang-format off
inline constexpr std::array<BendingARow, 14> kBendingARows = {{
    {"14-10"    , "12-8"    , kNotSpecified, kBlank, kBlank, kBlank, kBlank, Basis::seen},
    {"8-6"      , "6-4"     ,           1.5, kBlank, kBlank, kBlank, kBlank, Basis::seen},
    {"4-3"      , "2-1"     ,             2, kBlank, kBlank, kBlank, kBlank, Basis::seen},
    {"2"        , "1/0"     ,           2.5, kBlank, kBlank, kBlank, kBlank, Basis::seen},
    {"1"        , "2/0"     ,             3, kBlank, kBlank, kBlank, kBlank, Basis::seen},
    {"1/0-2/0"  , "3/0-4/0" ,           3.5,      5,      7, kBlank, kBlank, Basis::memory},
    {"3/0-4/0"  , "250-300" ,             4,      6,      8, kBlank, kBlank, Basis::seen},
    {"250"      , "350"     ,           4.5,      6,      8,     10, kBlank, Basis::seen},
    {"300-350"  , "400-500" ,             5,      8,     10,     12, kBlank, Basis::seen},
    {"400-500"  , "600-750" ,             6,      8,     10,     12,     14, Basis::seen},
    {"600-700"  , "800-1000",             8,     10,     12,     14,     16, Basis::seen},
    {"750-900"  , "-"       ,             8,     12,     14,     16,     18, Basis::seen},
    {"1000-1250", "-"       ,            10, kBlank, kBlank, kBlank, kBlank, Basis::seen},
    {"1500-2000", "-"       ,            12, kBlank, kBlank, kBlank, kBlank, Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
