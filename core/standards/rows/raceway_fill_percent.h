#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Chapter 9 Table 1 and its notes 4 and 7; Articles 366 and 376 for gutters
//   and wireways.
// Editions: 2008 through 2023.
// Units: percent of the internal cross-sectional area (rounding row: a decimal fraction).
// Verified: Table 1 and the nipple note on three public copies of Chapter 9 (2017, 2020 and a
//   later one); gutter 20 percent on an exam drill page, a gutter-fill page and a forum
//   example, 75 percent on the drill page; 312.8(A) on a course page for the 2023 code.
struct FillRow {
    std::string_view situation;
    double percent;
    std::string_view rule;
    Basis basis;
};

// clang-format off
inline constexpr std::array<FillRow, 9> kFillRows = {{
    {"1 conductor"                                                                                       ,  53, "Ch. 9 Table 1"                                                                                                                                               , Basis::seenTwice},
    {"2 conductors"                                                                                      ,  31, "Ch. 9 Table 1"                                                                                                                                               , Basis::seenTwice},
    {"over 2 conductors"                                                                                 ,  40, "Ch. 9 Table 1"                                                                                                                                               , Basis::seenTwice},
    {"nipple not over 24 in between boxes, cabinets and similar enclosures"                              ,  60, "Ch. 9 note 4; adjustment for more than three conductors need not apply"                                                                                      , Basis::seenTwice},
    {"same-size count rounding"                                                                          , 0.8, "Ch. 9 note 7: a decimal of 0.8 or more counts as the next whole conductor (conductors all one size); Annex C counts show it applied at 31 and 53 percent too", Basis::seenTwice},
    {"auxiliary gutter or metal wireway, conductors at any cross section"                                ,  20, "366.22(A), 376.22(A)"                                                                                                                                        , Basis::seenTwice},
    {"auxiliary gutter or metal wireway, conductors plus splices and taps at any cross section"          ,  75, "366.56(A), 376.56(A)"                                                                                                                                        , Basis::seen},
    {"wiring space of an enclosure for switches or overcurrent devices, conductors"                      ,  40, "312.8(A)"                                                                                                                                                    , Basis::seen},
    {"wiring space of an enclosure for switches or overcurrent devices, conductors plus splices and taps",  75, "312.8(A)"                                                                                                                                                    , Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
