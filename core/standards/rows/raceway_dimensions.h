#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Chapter 9 Table 4, dimensions and percent area of conduit and tubing: EMT
//   (Art. 358), RMC (344), PVC schedule 40 (352), flexible metal conduit FMC (348).
// Editions: 2011 through 2023 as far as known alike.
// Units: id_in nominal internal diameter inch; area_in2 total area, area40_in2 over two wires
//   (40 percent), area60_in2 nipples (60 percent), square inch; od_in nominal outside
//   diameter inch (ANSI/NEMA/UL product standards, not Table 4). metric_designator as
//   printed.
// area40 of EMT and FMC as printed; area40 of the others and all area60 computed from the
//   internal diameter (the printed 60 percent column behaves that way: EMT 1/2 to 2 checked).
// Verified: EMT 1/2 to 2 on a 2011 handbook print and a reprint, 2-1/2 to 4 on the reprint;
//   FMC on the same reprint; PVC-40 sizes 2 and 2-1/2 in a forum answer. RMC: no readable
//   print; instead every RMC area was tested against a public 2023 Annex C chart of THHN
//   counts in RMC: the count is floor(0.40 area / wire area, 0.8 rounds up), which pins the
//   areas to about 0.1 percent (2 in and larger) to 3 percent; all 156 counts of 14 AWG to
//   4/0 fit. Reference pages also show RMC 0.314/0.549/0.887 and PVC-40 0.285/0.508/0.832 for
//   1/2, 3/4, 1.
// od_in: EMT 0.706 to 2.197 and RMC 0.840 to 4.500 on public size charts; those of 5 and 6
//   from memory.
// Percent fill and nipple rule: see raceway_fill_percent. Knockouts: see knockouts.
struct RacewayRow {
    std::string_view type;
    std::string_view tradeSize;
    double metricDesignator;
    double insideDiameter;
    double area;
    double area40;
    double area60;
    double outsideDiameter;
    Basis basis;
};

// clang-format off
inline constexpr std::array<RacewayRow, 45> kRacewayRows = {{
    {"EMT"   , "1/2"  ,  16, 0.622,  0.304,  0.122,  0.182,  0.706, Basis::seenTwice},
    {"EMT"   , "3/4"  ,  21, 0.824,  0.533,  0.213,  0.320,  0.922, Basis::seenTwice},
    {"EMT"   , "1"    ,  27, 1.049,  0.864,  0.346,  0.519,  1.163, Basis::seenTwice},
    {"EMT"   , "1-1/4",  35, 1.380,  1.496,  0.598,  0.897,  1.510, Basis::seenTwice},
    {"EMT"   , "1-1/2",  41, 1.610,  2.036,  0.814,  1.221,  1.740, Basis::seenTwice},
    {"EMT"   , "2"    ,  53, 2.067,  3.356,  1.342,  2.013,  2.197, Basis::seenTwice},
    {"EMT"   , "2-1/2",  63, 2.731,  5.858,  2.343,  3.515,  2.875, Basis::seen},
    {"EMT"   , "3"    ,  78, 3.356,  8.846,  3.538,  5.307,  3.500, Basis::seen},
    {"EMT"   , "3-1/2",  91, 3.834, 11.545,  4.618,  6.927,  4.000, Basis::seen},
    {"EMT"   , "4"    , 103, 4.334, 14.753,  5.901,  8.852,  4.500, Basis::seen},
    {"RMC"   , "1/2"  ,  16, 0.632,  0.314,  0.125,  0.188,  0.840, Basis::memory},
    {"RMC"   , "3/4"  ,  21, 0.836,  0.549,  0.220,  0.329,  1.050, Basis::memory},
    {"RMC"   , "1"    ,  27, 1.063,  0.887,  0.355,  0.532,  1.315, Basis::memory},
    {"RMC"   , "1-1/4",  35, 1.394,  1.526,  0.610,  0.916,  1.660, Basis::memory},
    {"RMC"   , "1-1/2",  41, 1.624,  2.071,  0.829,  1.243,  1.900, Basis::memory},
    {"RMC"   , "2"    ,  53, 2.083,  3.408,  1.363,  2.045,  2.375, Basis::memory},
    {"RMC"   , "2-1/2",  63, 2.489,  4.866,  1.946,  2.919,  2.875, Basis::memory},
    {"RMC"   , "3"    ,  78, 3.090,  7.499,  3.000,  4.499,  3.500, Basis::memory},
    {"RMC"   , "3-1/2",  91, 3.570, 10.010,  4.004,  6.006,  4.000, Basis::memory},
    {"RMC"   , "4"    , 103, 4.050, 12.882,  5.153,  7.729,  4.500, Basis::memory},
    {"RMC"   , "5"    , 129, 5.073, 20.212,  8.085, 12.127,  5.563, Basis::memory},
    {"RMC"   , "6"    , 155, 6.093, 29.158, 11.663, 17.495,  6.625, Basis::memory},
    {"PVC-40", "1/2"  ,  16, 0.602,  0.285,  0.114,  0.171,  0.840, Basis::memory},
    {"PVC-40", "3/4"  ,  21, 0.804,  0.508,  0.203,  0.305,  1.050, Basis::memory},
    {"PVC-40", "1"    ,  27, 1.029,  0.832,  0.333,  0.499,  1.315, Basis::memory},
    {"PVC-40", "1-1/4",  35, 1.360,  1.453,  0.581,  0.872,  1.660, Basis::memory},
    {"PVC-40", "1-1/2",  41, 1.590,  1.986,  0.794,  1.191,  1.900, Basis::memory},
    {"PVC-40", "2"    ,  53, 2.047,  3.291,  1.316,  1.975,  2.375, Basis::seen},
    {"PVC-40", "2-1/2",  63, 2.445,  4.695,  1.878,  2.817,  2.875, Basis::seen},
    {"PVC-40", "3"    ,  78, 3.042,  7.268,  2.907,  4.361,  3.500, Basis::memory},
    {"PVC-40", "3-1/2",  91, 3.521,  9.737,  3.895,  5.842,  4.000, Basis::memory},
    {"PVC-40", "4"    , 103, 3.998, 12.554,  5.022,  7.532,  4.500, Basis::memory},
    {"PVC-40", "5"    , 129, 5.016, 19.761,  7.904, 11.856,  5.563, Basis::memory},
    {"PVC-40", "6"    , 155, 6.031, 28.567, 11.427, 17.140,  6.625, Basis::memory},
    {"FMC"   , "3/8"  ,  12, 0.384,  0.116,  0.046,  0.069, kBlank, Basis::seen},
    {"FMC"   , "1/2"  ,  16, 0.635,  0.317,  0.127,  0.190, kBlank, Basis::seen},
    {"FMC"   , "3/4"  ,  21, 0.824,  0.533,  0.213,  0.320, kBlank, Basis::seen},
    {"FMC"   , "1"    ,  27, 1.020,  0.817,  0.327,  0.490, kBlank, Basis::seen},
    {"FMC"   , "1-1/4",  35, 1.275,  1.277,  0.511,  0.766, kBlank, Basis::seen},
    {"FMC"   , "1-1/2",  41, 1.538,  1.857,  0.743,  1.115, kBlank, Basis::seen},
    {"FMC"   , "2"    ,  53, 2.040,  3.269,  1.307,  1.961, kBlank, Basis::seen},
    {"FMC"   , "2-1/2",  63, 2.500,  4.909,  1.964,  2.945, kBlank, Basis::seen},
    {"FMC"   , "3"    ,  78, 3.000,  7.069,  2.827,  4.241, kBlank, Basis::seen},
    {"FMC"   , "3-1/2",  91, 3.500,  9.621,  3.848,  5.773, kBlank, Basis::seen},
    {"FMC"   , "4"    , 103, 4.000, 12.566,  5.027,  7.540, kBlank, Basis::seen},
}};
// clang-format on

}  // namespace gw::standards::rows
