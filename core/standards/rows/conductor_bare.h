#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Chapter 9 Table 8, conductor properties (bare conductor, class B
//   stranding).
// Editions: 2008 through 2023 alike as far as known; 2026 not checked.
// Units: area_cmil circular mils; strand_diam_in and overall_diam_in inch; area_in2 square
//   inch over the overall diameter (NOT metal area); resistances in ohm per 1000 ft, DC, 75
//   C. cu = uncoated copper, cu_coated = coated (tinned) copper, al = aluminium.
// Verified: whole table on a public reprint of Table 8; rows 14 and 12 AWG also on a second
//   public transcription of a later edition of Chapter 9. Copper and aluminium columns
//   checked by resistance x circular mils being constant.
// Printing oddity kept: 12 AWG 7-strand area printed 0.006 (both prints) where 0.092 in
//   diameter gives 0.0066.
// Compressed or compact conductors are smaller: see conductor_compact_al.
struct BareRow {
    std::string_view size;
    double circularMils;
    double strands;
    double strandDiameter;
    double diameter;
    double area;
    double copperOhms;
    double coatedCopperOhms;
    double aluminiumOhms;
    Basis basis;
};

// clang-format off
inline constexpr std::array<BareRow, 32> kBareRows = {{
    {"14"  ,    4110,   1, kBlank, 0.064, 0.003,    3.07,    3.19,   5.06, Basis::seenTwice},
    {"14"  ,    4110,   7,  0.024, 0.073, 0.004,    3.14,    3.26,   5.17, Basis::seenTwice},
    {"12"  ,    6530,   1, kBlank, 0.081, 0.005,    1.93,    2.01,   3.18, Basis::seenTwice},
    {"12"  ,    6530,   7,  0.030, 0.092, 0.006,    1.98,    2.05,   3.25, Basis::seenTwice},
    {"10"  ,   10380,   1, kBlank, 0.102, 0.008,    1.21,    1.26,   2.00, Basis::seen},
    {"10"  ,   10380,   7,  0.038, 0.116, 0.011,    1.24,    1.29,   2.04, Basis::seen},
    {"8"   ,   16510,   1, kBlank, 0.128, 0.013,   0.764,   0.786,   1.26, Basis::seen},
    {"8"   ,   16510,   7,  0.049, 0.146, 0.017,   0.778,   0.809,   1.28, Basis::seen},
    {"6"   ,   26240,   7,  0.061, 0.184, 0.027,   0.491,   0.510,  0.808, Basis::seen},
    {"4"   ,   41740,   7,  0.077, 0.232, 0.042,   0.308,   0.321,  0.508, Basis::seen},
    {"3"   ,   52620,   7,  0.087, 0.260, 0.053,   0.245,   0.254,  0.403, Basis::seen},
    {"2"   ,   66360,   7,  0.097, 0.292, 0.067,   0.194,   0.201,  0.319, Basis::seen},
    {"1"   ,   83690,  19,  0.066, 0.332, 0.087,   0.154,   0.160,  0.253, Basis::seen},
    {"1/0" ,  105600,  19,  0.074, 0.372, 0.109,   0.122,   0.127,  0.201, Basis::seen},
    {"2/0" ,  133100,  19,  0.084, 0.418, 0.137,  0.0967,   0.101,  0.159, Basis::seen},
    {"3/0" ,  167800,  19,  0.094, 0.470, 0.173,  0.0766,  0.0797,  0.126, Basis::seen},
    {"4/0" ,  211600,  19,  0.106, 0.528, 0.219,  0.0608,  0.0626,  0.100, Basis::seen},
    {"250" ,  250000,  37,  0.082, 0.575, 0.260,  0.0515,  0.0535, 0.0847, Basis::seen},
    {"300" ,  300000,  37,  0.090, 0.630, 0.312,  0.0429,  0.0446, 0.0707, Basis::seen},
    {"350" ,  350000,  37,  0.097, 0.681, 0.364,  0.0367,  0.0382, 0.0605, Basis::seen},
    {"400" ,  400000,  37,  0.104, 0.728, 0.416,  0.0321,  0.0331, 0.0529, Basis::seen},
    {"500" ,  500000,  37,  0.116, 0.813, 0.519,  0.0258,  0.0265, 0.0424, Basis::seen},
    {"600" ,  600000,  61,  0.099, 0.893, 0.626,  0.0214,  0.0223, 0.0353, Basis::seen},
    {"700" ,  700000,  61,  0.107, 0.964, 0.730,  0.0184,  0.0189, 0.0303, Basis::seen},
    {"750" ,  750000,  61,  0.111, 0.998, 0.782,  0.0171,  0.0176, 0.0282, Basis::seen},
    {"800" ,  800000,  61,  0.114, 1.030, 0.834,  0.0161,  0.0166, 0.0265, Basis::seen},
    {"900" ,  900000,  61,  0.122, 1.094, 0.940,  0.0143,  0.0147, 0.0235, Basis::seen},
    {"1000", 1000000,  61,  0.128, 1.152, 1.042,  0.0129,  0.0132, 0.0212, Basis::seen},
    {"1250", 1250000,  91,  0.117, 1.289, 1.305,  0.0103,  0.0106, 0.0169, Basis::seen},
    {"1500", 1500000,  91,  0.128, 1.412, 1.566, 0.00858, 0.00883, 0.0141, Basis::seen},
    {"1750", 1750000, 127,  0.117, 1.526, 1.829, 0.00735, 0.00756, 0.0121, Basis::seen},
    {"2000", 2000000, 127,  0.126, 1.632, 2.092, 0.00643, 0.00662, 0.0106, Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
