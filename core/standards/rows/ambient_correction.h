#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 310.15(B)(1)(1) (2023); 310.15(B)(1) in 2020; 310.15(B)(2)(a) in
//   2011 to 2017; based on 30 C ambient. Use with ampacity_30C only (the tables based on 40 C
//   have their own factors).
// Editions: 2011 through 2023 alike. Prints of 2008 and earlier had coarser steps above 60 C.
// Units: ambient range in C and F; factor_NN = multiplier for conductor insulation rated NN
//   C; "-" = not permitted, or open end of range.
// Verified: state residential code print (2021) and 2018 residential code print agree in all
//   rows up to 75 C; above that the first alone.
// The factors follow sqrt((Tc - Ta)/(Tc - 30)) with Ta the top of the range; a test
//   holds them to it.
struct AmbientRow {
    double fromCelsius;
    double toCelsius;
    double factor60;
    double factor75;
    double factor90;
    Basis basis;
};

// clang-format off
inline constexpr std::array<AmbientRow, 16> kAmbientRows = {{
    {kBlank, 10,   1.29,   1.20, 1.15, Basis::seenTwice},
    {    11, 15,   1.22,   1.15, 1.12, Basis::seenTwice},
    {    16, 20,   1.15,   1.11, 1.08, Basis::seenTwice},
    {    21, 25,   1.08,   1.05, 1.04, Basis::seenTwice},
    {    26, 30,   1.00,   1.00, 1.00, Basis::seenTwice},
    {    31, 35,   0.91,   0.94, 0.96, Basis::seenTwice},
    {    36, 40,   0.82,   0.88, 0.91, Basis::seenTwice},
    {    41, 45,   0.71,   0.82, 0.87, Basis::seenTwice},
    {    46, 50,   0.58,   0.75, 0.82, Basis::seenTwice},
    {    51, 55,   0.41,   0.67, 0.76, Basis::seenTwice},
    {    56, 60, kBlank,   0.58, 0.71, Basis::seenTwice},
    {    61, 65, kBlank,   0.47, 0.65, Basis::seenTwice},
    {    66, 70, kBlank,   0.33, 0.58, Basis::seenTwice},
    {    71, 75, kBlank, kBlank, 0.50, Basis::seenTwice},
    {    76, 80, kBlank, kBlank, 0.41, Basis::seen},
    {    81, 85, kBlank, kBlank, 0.29, Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
