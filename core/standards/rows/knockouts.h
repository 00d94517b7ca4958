#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: knockout diameters as in NEMA practice (NEMA Bulletin 71, NEMA MG 1 for terminal
//   boxes, OS 1) and UL 514 family.
// Editions: long unchanged (bulletin of 1965, reaffirmed 2011).
// Units: inch. ko_* = knockout or clearance hole, nominal / least / greatest (tolerance about
//   +0.031/-0.016 up to 3 in trade size, +/-0.031 above). locknut_od_in = typical widest
//   dimension of an ordinary steel locknut, for spacing sketches only.
// Verified: knockout columns on an engineering reference page quoting NEMA; 1/2 to 1-1/4
//   nominal also on a shop punch list. The column basis speaks for the knockout columns.
// locknut_od_in: no public non-brand source could be read (NEMA Bulletin 71 has a fitting-
//   dimension table; only its opening text was readable), so memory / common practice, good
//   to about 1/8 in. Not for a compliance check.
struct KnockoutRow {
    std::string_view tradeSize;
    double nominal;
    double least;
    double greatest;
    double locknut;
    Basis basis;
};

// clang-format off
inline constexpr std::array<KnockoutRow, 12> kKnockoutRows = {{
    {"1/2"  , 0.875, 0.859, 0.906, 1.13, Basis::seenTwice},
    {"3/4"  , 1.109, 1.094, 1.141, 1.38, Basis::seenTwice},
    {"1"    , 1.375, 1.359, 1.406, 1.69, Basis::seenTwice},
    {"1-1/4", 1.734, 1.719, 1.766, 2.13, Basis::seenTwice},
    {"1-1/2", 1.984, 1.969, 2.016, 2.44, Basis::seen},
    {"2"    , 2.469, 2.453, 2.500, 2.94, Basis::seen},
    {"2-1/2", 2.969, 2.953, 3.000, 3.44, Basis::seen},
    {"3"    , 3.594, 3.578, 3.625, 4.19, Basis::seen},
    {"3-1/2", 4.125, 4.094, 4.156, 4.69, Basis::seen},
    {"4"    , 4.641, 4.609, 4.672, 5.25, Basis::seen},
    {"5"    , 5.719, 5.688, 5.750, 6.50, Basis::seen},
    {"6"    , 6.813, 6.781, 6.844, 7.63, Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
