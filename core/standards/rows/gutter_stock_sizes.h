#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: none for the sizes (ordinary trade practice); UL 870 and NFPA 70 for the
//   construction rows.
// Editions: UL 870 clauses as quoted from the 2008 edition.
// Units: value in inch or inch x inch; area_in2 nominal; fill20_in2 = 20 percent of it
//   (conductors), fill75_in2 = 75 percent (conductors plus splices and taps), square inch.
// Verified: sections and lengths in a trade-forum post quoting a product-neutral description;
//   cover clauses on a public excerpt of UL 870; cabinet thickness on a public summary of
//   Article 312. A forum worked example takes a 12 x 12 gutter as 144 square inch.
// Actual inside size is a little under nominal and the cover opening is narrower by the
//   return flanges: measure the real one.
struct StockRow {
    std::string_view item;
    std::string_view value;
    Basis basis;
};

// clang-format off
inline constexpr std::array<StockRow, 27> kStockRows = {{
    {"cross section"      , "2 x 2"    , Basis::seen},
    {"cross section"      , "2.5 x 2.5", Basis::seen},
    {"cross section"      , "3 x 3"    , Basis::seen},
    {"cross section"      , "4 x 4"    , Basis::seen},
    {"cross section"      , "6 x 6"    , Basis::seen},
    {"cross section"      , "8 x 8"    , Basis::seen},
    {"cross section"      , "10 x 10"  , Basis::seen},
    {"cross section"      , "12 x 6"   , Basis::seen},
    {"cross section"      , "12 x 12"  , Basis::seen},
    {"stock length"       , "6"        , Basis::seen},
    {"stock length"       , "12"       , Basis::seen},
    {"stock length"       , "18"       , Basis::seen},
    {"stock length"       , "24"       , Basis::seen},
    {"stock length"       , "30"       , Basis::seen},
    {"stock length"       , "36"       , Basis::seen},
    {"stock length"       , "48"       , Basis::seen},
    {"stock length"       , "60"       , Basis::seen},
    {"stock length"       , "72"       , Basis::seen},
    {"stock length"       , "120"      , Basis::seen},
    {"sheet thickness"    , "0.053"    , Basis::memory},
    {"sheet thickness"    , "0.067"    , Basis::memory},
    {"sheet thickness"    , "0.053"    , Basis::seen},
    {"length limit"       , "360"      , Basis::memory},
    {"support spacing"    , "60"       , Basis::memory},
    {"clearance"          , "1"        , Basis::memory},
    {"cover overlap"      , "0.4375"   , Basis::seen},
    {"cover screw spacing", "12"       , Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
