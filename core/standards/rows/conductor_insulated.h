#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 (NEC) Chapter 9 Table 5, approximate dimensions of insulated conductors
//   (class B copper or non-compact aluminium). Sizes in AWG up to 4/0, then kcmil.
// Editions: values taken to hold for 2008 through 2023; 2026 not checked. The code calls
//   these approximate; actual maker dimensions are permitted where known.
// Units: diameter_in inch, area_in2 square inch (as printed); diameter_mm and area_mm2 are
//   COMPUTED here (inch x 25.4, square inch x 645.16, 4 significant figures), which is how
//   the printed metric columns behave.
// Verified: THHN, XHHW, TW/THW families, all sizes: a public print of NEC 2008 Ch. 9 Table 5.
//   THHN second places: a trade-forum gutter-fill post (3/0, 4/0, 500, 600) and a conduit-
//   size reference page (14 to 1/0, even sizes).
// Further support, not counted in basis: published 2023 Annex C counts of THHN in rigid
//   conduit agree with the THHN areas (see raceway_dimensions).
// RHH with outer covering: from memory. Agrees with public transcriptions, seen as excerpts
//   only, of NOM-001-SEDE Table 5, the
//   Mexican code that reprints this table in mm: all 28 RHH rows and the four small RHH-
//   without rows agree with the values here to 4 figures.
// Known printing slip elsewhere: that Mexican code reportedly prints 55.68 mm2 for 10 AWG
//   TW/THW; the right value is 15.68.
// RHH with covering, 14 to 2/0: also consistent with the conductor counts in EMT of a 2018
//   residential code print (Table C.1), held by a test.
// Last-digit oddity kept as printed: XHHW 1500 kcmil area 2.0157 where pi/4 d^2 gives
//   2.01565.
// THHN/THWN-2 has no Table 5 row above 1000 kcmil.
struct InsulatedRow {
    std::string_view size;
    std::string_view family;
    double diameter;
    double area;
    Basis basis;
};

// clang-format off
inline constexpr std::array<InsulatedRow, 136> kInsulatedRows = {{
    {"14"  , "THHN/THWN/THWN-2"                    , 0.111, 0.0097, Basis::seenTwice},
    {"12"  , "THHN/THWN/THWN-2"                    , 0.130, 0.0133, Basis::seenTwice},
    {"10"  , "THHN/THWN/THWN-2"                    , 0.164, 0.0211, Basis::seenTwice},
    {"8"   , "THHN/THWN/THWN-2"                    , 0.216, 0.0366, Basis::seenTwice},
    {"6"   , "THHN/THWN/THWN-2"                    , 0.254, 0.0507, Basis::seenTwice},
    {"4"   , "THHN/THWN/THWN-2"                    , 0.324, 0.0824, Basis::seenTwice},
    {"3"   , "THHN/THWN/THWN-2"                    , 0.352, 0.0973, Basis::seen},
    {"2"   , "THHN/THWN/THWN-2"                    , 0.384, 0.1158, Basis::seenTwice},
    {"1"   , "THHN/THWN/THWN-2"                    , 0.446, 0.1562, Basis::seen},
    {"1/0" , "THHN/THWN/THWN-2"                    , 0.486, 0.1855, Basis::seenTwice},
    {"2/0" , "THHN/THWN/THWN-2"                    , 0.532, 0.2223, Basis::seen},
    {"3/0" , "THHN/THWN/THWN-2"                    , 0.584, 0.2679, Basis::seenTwice},
    {"4/0" , "THHN/THWN/THWN-2"                    , 0.642, 0.3237, Basis::seenTwice},
    {"250" , "THHN/THWN/THWN-2"                    , 0.711, 0.3970, Basis::seen},
    {"300" , "THHN/THWN/THWN-2"                    , 0.766, 0.4608, Basis::seen},
    {"350" , "THHN/THWN/THWN-2"                    , 0.817, 0.5242, Basis::seen},
    {"400" , "THHN/THWN/THWN-2"                    , 0.864, 0.5863, Basis::seen},
    {"500" , "THHN/THWN/THWN-2"                    , 0.949, 0.7073, Basis::seenTwice},
    {"600" , "THHN/THWN/THWN-2"                    , 1.051, 0.8676, Basis::seenTwice},
    {"700" , "THHN/THWN/THWN-2"                    , 1.122, 0.9887, Basis::seen},
    {"750" , "THHN/THWN/THWN-2"                    , 1.156, 1.0496, Basis::seen},
    {"800" , "THHN/THWN/THWN-2"                    , 1.188, 1.1085, Basis::seen},
    {"900" , "THHN/THWN/THWN-2"                    , 1.252, 1.2311, Basis::seen},
    {"1000", "THHN/THWN/THWN-2"                    , 1.310, 1.3478, Basis::seen},
    {"14"  , "XHHW/XHHW-2/XHH"                     , 0.133, 0.0139, Basis::seen},
    {"12"  , "XHHW/XHHW-2/XHH"                     , 0.152, 0.0181, Basis::seen},
    {"10"  , "XHHW/XHHW-2/XHH"                     , 0.176, 0.0243, Basis::seen},
    {"8"   , "XHHW/XHHW-2/XHH"                     , 0.236, 0.0437, Basis::seen},
    {"6"   , "XHHW/XHHW-2/XHH"                     , 0.274, 0.0590, Basis::seen},
    {"4"   , "XHHW/XHHW-2/XHH"                     , 0.322, 0.0814, Basis::seen},
    {"3"   , "XHHW/XHHW-2/XHH"                     , 0.350, 0.0962, Basis::seen},
    {"2"   , "XHHW/XHHW-2/XHH"                     , 0.382, 0.1146, Basis::seen},
    {"1"   , "XHHW/XHHW-2/XHH"                     , 0.442, 0.1534, Basis::seen},
    {"1/0" , "XHHW/XHHW-2/XHH"                     , 0.482, 0.1825, Basis::seen},
    {"2/0" , "XHHW/XHHW-2/XHH"                     , 0.528, 0.2190, Basis::seen},
    {"3/0" , "XHHW/XHHW-2/XHH"                     , 0.580, 0.2642, Basis::seen},
    {"4/0" , "XHHW/XHHW-2/XHH"                     , 0.638, 0.3197, Basis::seen},
    {"250" , "XHHW/XHHW-2/XHH"                     , 0.705, 0.3904, Basis::seen},
    {"300" , "XHHW/XHHW-2/XHH"                     , 0.760, 0.4536, Basis::seen},
    {"350" , "XHHW/XHHW-2/XHH"                     , 0.811, 0.5166, Basis::seen},
    {"400" , "XHHW/XHHW-2/XHH"                     , 0.858, 0.5782, Basis::seen},
    {"500" , "XHHW/XHHW-2/XHH"                     , 0.943, 0.6984, Basis::seen},
    {"600" , "XHHW/XHHW-2/XHH"                     , 1.053, 0.8709, Basis::seen},
    {"700" , "XHHW/XHHW-2/XHH"                     , 1.124, 0.9923, Basis::seen},
    {"750" , "XHHW/XHHW-2/XHH"                     , 1.158, 1.0532, Basis::seen},
    {"800" , "XHHW/XHHW-2/XHH"                     , 1.190, 1.1122, Basis::seen},
    {"900" , "XHHW/XHHW-2/XHH"                     , 1.254, 1.2351, Basis::seen},
    {"1000", "XHHW/XHHW-2/XHH"                     , 1.312, 1.3519, Basis::seen},
    {"1250", "XHHW/XHHW-2/XHH"                     , 1.479, 1.7180, Basis::seen},
    {"1500", "XHHW/XHHW-2/XHH"                     , 1.602, 2.0157, Basis::seen},
    {"1750", "XHHW/XHHW-2/XHH"                     , 1.716, 2.3127, Basis::seen},
    {"2000", "XHHW/XHHW-2/XHH"                     , 1.822, 2.6073, Basis::seen},
    {"14"  , "TW/THW/THHW/THW-2"                   , 0.133, 0.0139, Basis::seen},
    {"12"  , "TW/THW/THHW/THW-2"                   , 0.152, 0.0181, Basis::seen},
    {"10"  , "TW/THW/THHW/THW-2"                   , 0.176, 0.0243, Basis::seen},
    {"8"   , "TW/THW/THHW/THW-2"                   , 0.236, 0.0437, Basis::seen},
    {"6"   , "TW/THW/THHW/THW-2"                   , 0.304, 0.0726, Basis::seen},
    {"4"   , "TW/THW/THHW/THW-2"                   , 0.352, 0.0973, Basis::seen},
    {"3"   , "TW/THW/THHW/THW-2"                   , 0.380, 0.1134, Basis::seen},
    {"2"   , "TW/THW/THHW/THW-2"                   , 0.412, 0.1333, Basis::seen},
    {"1"   , "TW/THW/THHW/THW-2"                   , 0.492, 0.1901, Basis::seen},
    {"1/0" , "TW/THW/THHW/THW-2"                   , 0.532, 0.2223, Basis::seen},
    {"2/0" , "TW/THW/THHW/THW-2"                   , 0.578, 0.2624, Basis::seen},
    {"3/0" , "TW/THW/THHW/THW-2"                   , 0.630, 0.3117, Basis::seen},
    {"4/0" , "TW/THW/THHW/THW-2"                   , 0.688, 0.3718, Basis::seen},
    {"250" , "TW/THW/THHW/THW-2"                   , 0.765, 0.4596, Basis::seen},
    {"300" , "TW/THW/THHW/THW-2"                   , 0.820, 0.5281, Basis::seen},
    {"350" , "TW/THW/THHW/THW-2"                   , 0.871, 0.5958, Basis::seen},
    {"400" , "TW/THW/THHW/THW-2"                   , 0.918, 0.6619, Basis::seen},
    {"500" , "TW/THW/THHW/THW-2"                   , 1.003, 0.7901, Basis::seen},
    {"600" , "TW/THW/THHW/THW-2"                   , 1.113, 0.9729, Basis::seen},
    {"700" , "TW/THW/THHW/THW-2"                   , 1.184, 1.1010, Basis::seen},
    {"750" , "TW/THW/THHW/THW-2"                   , 1.218, 1.1652, Basis::seen},
    {"800" , "TW/THW/THHW/THW-2"                   , 1.250, 1.2272, Basis::seen},
    {"900" , "TW/THW/THHW/THW-2"                   , 1.314, 1.3561, Basis::seen},
    {"1000", "TW/THW/THHW/THW-2"                   , 1.372, 1.4784, Basis::seen},
    {"1250", "TW/THW/THHW/THW-2"                   , 1.539, 1.8602, Basis::seen},
    {"1500", "TW/THW/THHW/THW-2"                   , 1.662, 2.1695, Basis::seen},
    {"1750", "TW/THW/THHW/THW-2"                   , 1.776, 2.4773, Basis::seen},
    {"2000", "TW/THW/THHW/THW-2"                   , 1.882, 2.7818, Basis::seen},
    {"14"  , "RHH/RHW/RHW-2 with outer covering"   , 0.193, 0.0293, Basis::memory},
    {"12"  , "RHH/RHW/RHW-2 with outer covering"   , 0.212, 0.0353, Basis::memory},
    {"10"  , "RHH/RHW/RHW-2 with outer covering"   , 0.236, 0.0437, Basis::memory},
    {"8"   , "RHH/RHW/RHW-2 with outer covering"   , 0.326, 0.0835, Basis::memory},
    {"6"   , "RHH/RHW/RHW-2 with outer covering"   , 0.364, 0.1041, Basis::memory},
    {"4"   , "RHH/RHW/RHW-2 with outer covering"   , 0.412, 0.1333, Basis::memory},
    {"3"   , "RHH/RHW/RHW-2 with outer covering"   , 0.440, 0.1521, Basis::memory},
    {"2"   , "RHH/RHW/RHW-2 with outer covering"   , 0.472, 0.1750, Basis::memory},
    {"1"   , "RHH/RHW/RHW-2 with outer covering"   , 0.582, 0.2660, Basis::memory},
    {"1/0" , "RHH/RHW/RHW-2 with outer covering"   , 0.622, 0.3039, Basis::memory},
    {"2/0" , "RHH/RHW/RHW-2 with outer covering"   , 0.668, 0.3505, Basis::memory},
    {"3/0" , "RHH/RHW/RHW-2 with outer covering"   , 0.720, 0.4072, Basis::memory},
    {"4/0" , "RHH/RHW/RHW-2 with outer covering"   , 0.778, 0.4754, Basis::memory},
    {"250" , "RHH/RHW/RHW-2 with outer covering"   , 0.895, 0.6291, Basis::memory},
    {"300" , "RHH/RHW/RHW-2 with outer covering"   , 0.950, 0.7088, Basis::memory},
    {"350" , "RHH/RHW/RHW-2 with outer covering"   , 1.001, 0.7870, Basis::memory},
    {"400" , "RHH/RHW/RHW-2 with outer covering"   , 1.048, 0.8626, Basis::memory},
    {"500" , "RHH/RHW/RHW-2 with outer covering"   , 1.133, 1.0082, Basis::memory},
    {"600" , "RHH/RHW/RHW-2 with outer covering"   , 1.243, 1.2135, Basis::memory},
    {"700" , "RHH/RHW/RHW-2 with outer covering"   , 1.314, 1.3561, Basis::memory},
    {"750" , "RHH/RHW/RHW-2 with outer covering"   , 1.348, 1.4272, Basis::memory},
    {"800" , "RHH/RHW/RHW-2 with outer covering"   , 1.380, 1.4957, Basis::memory},
    {"900" , "RHH/RHW/RHW-2 with outer covering"   , 1.444, 1.6377, Basis::memory},
    {"1000", "RHH/RHW/RHW-2 with outer covering"   , 1.502, 1.7719, Basis::memory},
    {"1250", "RHH/RHW/RHW-2 with outer covering"   , 1.729, 2.3479, Basis::memory},
    {"1500", "RHH/RHW/RHW-2 with outer covering"   , 1.852, 2.6938, Basis::memory},
    {"1750", "RHH/RHW/RHW-2 with outer covering"   , 1.966, 3.0357, Basis::memory},
    {"2000", "RHH/RHW/RHW-2 with outer covering"   , 2.072, 3.3719, Basis::memory},
    {"14"  , "RHH/RHW/RHW-2 without outer covering", 0.163, 0.0209, Basis::memory},
    {"12"  , "RHH/RHW/RHW-2 without outer covering", 0.182, 0.0260, Basis::memory},
    {"10"  , "RHH/RHW/RHW-2 without outer covering", 0.206, 0.0333, Basis::memory},
    {"8"   , "RHH/RHW/RHW-2 without outer covering", 0.266, 0.0556, Basis::memory},
    {"6"   , "RHH/RHW/RHW-2 without outer covering", 0.304, 0.0726, Basis::seen},
    {"4"   , "RHH/RHW/RHW-2 without outer covering", 0.352, 0.0973, Basis::seen},
    {"3"   , "RHH/RHW/RHW-2 without outer covering", 0.380, 0.1134, Basis::seen},
    {"2"   , "RHH/RHW/RHW-2 without outer covering", 0.412, 0.1333, Basis::seen},
    {"1"   , "RHH/RHW/RHW-2 without outer covering", 0.492, 0.1901, Basis::seen},
    {"1/0" , "RHH/RHW/RHW-2 without outer covering", 0.532, 0.2223, Basis::seen},
    {"2/0" , "RHH/RHW/RHW-2 without outer covering", 0.578, 0.2624, Basis::seen},
    {"3/0" , "RHH/RHW/RHW-2 without outer covering", 0.630, 0.3117, Basis::seen},
    {"4/0" , "RHH/RHW/RHW-2 without outer covering", 0.688, 0.3718, Basis::seen},
    {"250" , "RHH/RHW/RHW-2 without outer covering", 0.765, 0.4596, Basis::seen},
    {"300" , "RHH/RHW/RHW-2 without outer covering", 0.820, 0.5281, Basis::seen},
    {"350" , "RHH/RHW/RHW-2 without outer covering", 0.871, 0.5958, Basis::seen},
    {"400" , "RHH/RHW/RHW-2 without outer covering", 0.918, 0.6619, Basis::seen},
    {"500" , "RHH/RHW/RHW-2 without outer covering", 1.003, 0.7901, Basis::seen},
    {"600" , "RHH/RHW/RHW-2 without outer covering", 1.113, 0.9729, Basis::seen},
    {"700" , "RHH/RHW/RHW-2 without outer covering", 1.184, 1.1010, Basis::seen},
    {"750" , "RHH/RHW/RHW-2 without outer covering", 1.218, 1.1652, Basis::seen},
    {"800" , "RHH/RHW/RHW-2 without outer covering", 1.250, 1.2272, Basis::seen},
    {"900" , "RHH/RHW/RHW-2 without outer covering", 1.314, 1.3561, Basis::seen},
    {"1000", "RHH/RHW/RHW-2 without outer covering", 1.372, 1.4784, Basis::seen},
    {"1250", "RHH/RHW/RHW-2 without outer covering", 1.539, 1.8602, Basis::seen},
    {"1500", "RHH/RHW/RHW-2 without outer covering", 1.662, 2.1695, Basis::seen},
    {"1750", "RHH/RHW/RHW-2 without outer covering", 1.776, 2.4773, Basis::seen},
    {"2000", "RHH/RHW/RHW-2 without outer covering", 1.882, 2.7818, Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
