#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Chapter 9 Table 5A, compact copper and aluminium building wire, nominal
//   dimensions and areas.
// Editions: 2008 through 2023 as remembered (title widened from aluminium to copper and
//   aluminium some editions ago); 2026 not checked.
// Units: diameters inch (bare_ = over the bare compact conductor), areas square inch.
// Verified: NO full public print of Table 5A could be read, so every row is memory.
//   Supporting evidence only: 8 AWG bare 0.134 and XHHW 0.224, and 350 kcmil bare 0.615,
//   stand on public cable data sheets; published compact XHHW-2 outside diameters 6 AWG to
//   4/0 lie within 0.004 in of the XHHW column; the areas of all pairs equal pi/4 d^2 CUT
//   (not rounded) at four decimals, a printing habit of this table, with one exception (900
//   XHHW, where cutting gives 1.0732).
// Do not treat as verified until one row per size has been checked against a printed code
//   book.
// 8 AWG has no THHN entry in Table 5A.
struct CompactRow {
    std::string_view size;
    double bareDiameter;
    double thwDiameter;
    double thwArea;
    double thhnDiameter;
    double thhnArea;
    double xhhwDiameter;
    double xhhwArea;
    Basis basis;
};

// clang-format off
inline constexpr std::array<CompactRow, 19> kCompactRows = {{
    {"8"   , 0.134, 0.255, 0.0510, kBlank, kBlank, 0.224, 0.0394, Basis::memory},
    {"6"   , 0.169, 0.290, 0.0660,  0.240, 0.0452, 0.260, 0.0530, Basis::memory},
    {"4"   , 0.213, 0.335, 0.0881,  0.305, 0.0730, 0.305, 0.0730, Basis::memory},
    {"2"   , 0.268, 0.390, 0.1194,  0.360, 0.1017, 0.360, 0.1017, Basis::memory},
    {"1"   , 0.299, 0.465, 0.1698,  0.415, 0.1352, 0.415, 0.1352, Basis::memory},
    {"1/0" , 0.336, 0.500, 0.1963,  0.450, 0.1590, 0.450, 0.1590, Basis::memory},
    {"2/0" , 0.376, 0.545, 0.2332,  0.495, 0.1924, 0.490, 0.1885, Basis::memory},
    {"3/0" , 0.423, 0.590, 0.2733,  0.540, 0.2290, 0.540, 0.2290, Basis::memory},
    {"4/0" , 0.475, 0.645, 0.3267,  0.595, 0.2780, 0.590, 0.2733, Basis::memory},
    {"250" , 0.520, 0.725, 0.4128,  0.670, 0.3525, 0.660, 0.3421, Basis::memory},
    {"300" , 0.570, 0.775, 0.4717,  0.720, 0.4071, 0.715, 0.4015, Basis::memory},
    {"350" , 0.616, 0.820, 0.5281,  0.770, 0.4656, 0.760, 0.4536, Basis::memory},
    {"400" , 0.659, 0.865, 0.5876,  0.815, 0.5216, 0.800, 0.5026, Basis::memory},
    {"500" , 0.736, 0.940, 0.6939,  0.885, 0.6151, 0.880, 0.6082, Basis::memory},
    {"600" , 0.813, 1.050, 0.8659,  0.985, 0.7620, 0.980, 0.7542, Basis::memory},
    {"700" , 0.877, 1.110, 0.9676,  1.050, 0.8659, 1.050, 0.8659, Basis::memory},
    {"750" , 0.908, 1.150, 1.0386,  1.075, 0.9076, 1.090, 0.9331, Basis::memory},
    {"900" , 0.999, 1.224, 1.1766,  1.194, 1.1196, 1.169, 1.0733, Basis::memory},
    {"1000", 1.060, 1.285, 1.2968,  1.255, 1.2370, 1.230, 1.1882, Basis::memory},
}};
// clang-format on

}  // namespace gw::standards::rows
