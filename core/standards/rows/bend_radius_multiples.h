#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: ICEA S-95-658/NEMA WC 70 (600 V and up to 2 kV nonshielded) and cable handbooks;
//   NFPA 70 for over 1000 V.
// Editions: NFPA rule moved from 300.34 to new Article 305 in 2023 (section number from
//   memory).
// Units: multiple = least inside bend radius (to the inner surface of the cable, not its
//   axis) divided by overall diameter; insulation_in = insulation thickness, overall_diam_in
//   = overall diameter, inch.
// For permanent training only; pulling round sheaves or conduit bends needs larger radii
//   (sidewall pressure).
// NFPA 70 sets NO bend radius for single conductors of 1000 V and less in a gutter or
//   enclosure: there the wire-bending space (Tables 312.6(A), (B)) governs. The 4/5/6
//   multiples are good practice for those.
// All THHN/XHHW/THW/RHH 600 V insulations up to 2000 kcmil are not over 0.156 in thick
//   (memory), so their row is 4 / 5 / 6 by overall diameter.
// Verified: the 4-5-6 / 5-6-7 / 7-8 table on two public copies (one origin); 8x, 12x and 7x
//   rules on three public pages; portable 6x/8x on one.
// Some newer handbooks draw the thickness steps at 0.169 and 0.310 in instead of 0.156 and
//   0.315 (memory).
struct BendRadiusRow {
    std::string_view cable;
    std::string_view insulation;
    std::string_view diameter;
    std::string_view multiple;
    std::string_view rule;
    Basis basis;
};

// clang-format off
inline constexpr std::array<BendRadiusRow, 16> kBendRadiusRows = {{
    {"power/control cable or single conductor, no metallic shield or armour"    , "<= 0.156"   , "<= 1.000"   , "4"                                          , "ICEA S-95-658/NEMA WC 70 handbook table"                                                            , Basis::seen},
    {"same"                                                                     , "<= 0.156"   , "1.001-2.000", "5"                                          , "same"                                                                                               , Basis::seen},
    {"same"                                                                     , "<= 0.156"   , "> 2.000"    , "6"                                          , "same"                                                                                               , Basis::seen},
    {"same"                                                                     , "0.157-0.315", "<= 1.000"   , "5"                                          , "same"                                                                                               , Basis::seen},
    {"same"                                                                     , "0.157-0.315", "1.001-2.000", "6"                                          , "same"                                                                                               , Basis::seen},
    {"same"                                                                     , "0.157-0.315", "> 2.000"    , "7"                                          , "same"                                                                                               , Basis::seen},
    {"same"                                                                     , "> 0.315"    , "1.001-2.000", "7"                                          , "same"                                                                                               , Basis::seen},
    {"same"                                                                     , "> 0.315"    , "> 2.000"    , "8"                                          , "same"                                                                                               , Basis::seen},
    {"over 1000 V nominal, nonshielded, during and after installation"          , "any"        , "any"        , "8"                                          , "NFPA 70 300.34 (to 2020), 305.5 (2023)"                                                             , Basis::seenTwice},
    {"over 1000 V nominal, shielded or lead-covered"                            , "any"        , "any"        , "12"                                         , "NFPA 70 300.34 (to 2020), 305.5 (2023)"                                                             , Basis::seenTwice},
    {"over 1000 V nominal, multiconductor with individually shielded conductors", "any"        , "any"        , "12 (individual) or 7 (overall), the greater", "NFPA 70 300.34 / 305.5"                                                                             , Basis::seenTwice},
    {"interlocked or corrugated armour (MC), inner edge"                        , "any"        , "any"        , "7"                                          , "NFPA 70 330.24(B)"                                                                                  , Basis::seen},
    {"portable/flexible rubber cable, 5 kV and less"                            , "any"        , "any"        , "6"                                          , "ICEA practice"                                                                                      , Basis::seen},
    {"portable/flexible rubber cable, over 5 kV"                                , "any"        , "any"        , "8"                                          , "ICEA practice"                                                                                      , Basis::seen},
    {"fine-strand (class G/H/I/K/M) 600 V single conductor, fixed"              , "any"        , "any"        , "4"                                          , "common practice: treat as nonshielded row by thickness and diameter unless the maker says otherwise", Basis::memory},
    {"fine-strand 600 V single conductor, flexed in service"                    , "any"        , "any"        , "6"                                          , "common practice"                                                                                    , Basis::memory},
}};
// clang-format on

}  // namespace gw::standards::rows
