#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 310.15(C)(1) (2020, 2023); called 310.15(B)(3)(a) in 2011, 2014,
//   2017 and 310.15(B)(2)(a) before. Same factors in all of them.
// Units: n_from, n_to = number of current-carrying conductors (spares counted; conductors
//   that cannot be live together not counted); factor = multiplier on the ampacity after any
//   ambient correction.
// Does not apply to raceway nipples of 24 in or less, nor to wireways and auxiliary gutters
//   until MORE THAN 30 current-carrying conductors are at one cross section (376.22(B),
//   366.23(A)); the 30-conductor rule was seen on a public gutter page, the section numbers
//   are from memory.
// Verified: three or more public pages agree (a NEC 2014 print, a NEC 2011 print, two
//   reference pages).
struct AdjustmentRow {
    double from;
    double to;
    double percent;
    double factor;
    Basis basis;
};

// clang-format off
inline constexpr std::array<AdjustmentRow, 7> kAdjustmentRows = {{
    { 1,      3, 100, 1.00, Basis::seenTwice},
    { 4,      6,  80, 0.80, Basis::seenTwice},
    { 7,      9,  70, 0.70, Basis::seenTwice},
    {10,     20,  50, 0.50, Basis::seenTwice},
    {21,     30,  45, 0.45, Basis::seenTwice},
    {31,     40,  40, 0.40, Basis::seenTwice},
    {41, kBlank,  35, 0.35, Basis::seenTwice},
}};
// clang-format on

}  // namespace gw::standards::rows
