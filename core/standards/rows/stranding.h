#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Chapter 9 Table 10 (classes B and C; table new in 2011), ASTM B8
//   (concentric), B172/B173/B174 (rope and bunch).
// Editions: 2011 through 2023 as far as known alike.
// Units: strands = number of wires; wire_diam_in = wire diameter inch where the class fixes
//   it.
// NFPA 110.14: conductors finer than class B and C (Table 10) may only go in terminals
//   identified for that class. This is why the planner needs the class.
// Verified: class B against Table 8 strand counts (all sizes) and, for 14 AWG to 2/0, a
//   public strand-class chart; class C 14 to 2/0 on that chart, 4/0, 500 and 750 kcmil on an
//   engineering page (which also gives G = 133, H = 259 for 4/0); K to 2/0 and M to 4 AWG on
//   the chart; I all memory.
// Held by a test: strands x wire diameter squared is within 4 percent of the circular
//   mils for I, K, M.
struct StrandingRow {
    std::string_view sizes;
    std::string_view stranding;
    double strands;
    double wireDiameter;
    Basis basis;
};

// clang-format off
inline constexpr std::array<StrandingRow, 66> kStrandingRows = {{
    {"14-2"     , "B"         ,    7, kBlank, Basis::seenTwice},
    {"14-2"     , "C"         ,   19, kBlank, Basis::seen},
    {"1-4/0"    , "B"         ,   19, kBlank, Basis::seenTwice},
    {"1-4/0"    , "C"         ,   37, kBlank, Basis::seen},
    {"250-500"  , "B"         ,   37, kBlank, Basis::seenTwice},
    {"250-500"  , "C"         ,   61, kBlank, Basis::seen},
    {"600-1000" , "B"         ,   61, kBlank, Basis::seenTwice},
    {"600-1000" , "C"         ,   91, kBlank, Basis::seen},
    {"1250-1500", "B"         ,   91, kBlank, Basis::seen},
    {"1250-1500", "C"         ,  127, kBlank, Basis::memory},
    {"1750-2000", "B"         ,  127, kBlank, Basis::seen},
    {"1750-2000", "C"         ,  271, kBlank, Basis::memory},
    {"14-12"    , "G"         ,   49, kBlank, Basis::seen},
    {"10-2"     , "G"         ,   49, kBlank, Basis::seen},
    {"10-2"     , "H"         ,  133, kBlank, Basis::seen},
    {"1-4/0"    , "G"         ,  133, kBlank, Basis::seen},
    {"1-4/0"    , "H"         ,  259, kBlank, Basis::seen},
    {"250-500"  , "G"         ,  259, kBlank, Basis::memory},
    {"250-500"  , "H"         ,  427, kBlank, Basis::memory},
    {"600-1000" , "G"         ,  427, kBlank, Basis::memory},
    {"600-1000" , "H"         ,  703, kBlank, Basis::memory},
    {"8"        , "I"         ,   41, 0.0201, Basis::memory},
    {"6"        , "I"         ,   63, 0.0201, Basis::memory},
    {"4"        , "I"         ,  105, 0.0201, Basis::memory},
    {"2"        , "I"         ,  161, 0.0201, Basis::memory},
    {"1"        , "I"         ,  210, 0.0201, Basis::memory},
    {"1/0"      , "I"         ,  266, 0.0201, Basis::memory},
    {"2/0"      , "I"         ,  342, 0.0201, Basis::memory},
    {"3/0"      , "I"         ,  418, 0.0201, Basis::memory},
    {"4/0"      , "I"         ,  532, 0.0201, Basis::memory},
    {"250"      , "I"         ,  637, 0.0201, Basis::memory},
    {"300"      , "I"         ,  735, 0.0201, Basis::memory},
    {"350"      , "I"         ,  882, 0.0201, Basis::memory},
    {"400"      , "I"         ,  980, 0.0201, Basis::memory},
    {"500"      , "I"         , 1225, 0.0201, Basis::memory},
    {"600"      , "I"         , 1470, 0.0201, Basis::memory},
    {"750"      , "I"         , 1862, 0.0201, Basis::memory},
    {"14"       , "K"         ,   41, 0.0100, Basis::seen},
    {"12"       , "K"         ,   65, 0.0100, Basis::seen},
    {"10"       , "K"         ,  104, 0.0100, Basis::seen},
    {"8"        , "K"         ,  168, 0.0100, Basis::seen},
    {"6"        , "K"         ,  266, 0.0100, Basis::seen},
    {"4"        , "K"         ,  420, 0.0100, Basis::seen},
    {"3"        , "K"         ,  532, 0.0100, Basis::seen},
    {"2"        , "K"         ,  665, 0.0100, Basis::seen},
    {"1"        , "K"         ,  836, 0.0100, Basis::seen},
    {"1/0"      , "K"         , 1064, 0.0100, Basis::seen},
    {"2/0"      , "K"         , 1323, 0.0100, Basis::seen},
    {"3/0"      , "K"         , 1666, 0.0100, Basis::memory},
    {"4/0"      , "K"         , 2107, 0.0100, Basis::memory},
    {"250"      , "K"         , 2499, 0.0100, Basis::memory},
    {"350"      , "K"         , 3458, 0.0100, Basis::memory},
    {"500"      , "K"         , 5054, 0.0100, Basis::memory},
    {"14"       , "M"         ,  104, 0.0063, Basis::seen},
    {"12"       , "M"         ,  168, 0.0063, Basis::seen},
    {"10"       , "M"         ,  259, 0.0063, Basis::seen},
    {"8"        , "M"         ,  420, 0.0063, Basis::seen},
    {"6"        , "M"         ,  665, 0.0063, Basis::seen},
    {"4"        , "M"         , 1064, 0.0063, Basis::seen},
    {"2"        , "M"         , 1666, 0.0063, Basis::memory},
    {"1/0"      , "M"         , 2646, 0.0063, Basis::memory},
    {"2/0"      , "M"         , 3325, 0.0063, Basis::memory},
    {"4/0"      , "M"         , 5320, 0.0063, Basis::memory},
    {"19-wire"  , "compact Al",   18, kBlank, Basis::seen},
    {"37-wire"  , "compact Al",   35, kBlank, Basis::seen},
    {"61-wire"  , "compact Al",   58, kBlank, Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
