#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Chapter 9 Table 9, alternating-current resistance and reactance for 600 V
//   cables, 3-phase, 60 Hz, 75 C, three single conductors in conduit.
// Editions: 2008 print and later prints alike; 2026 not checked.
// Units: ohm to neutral per 1000 ft. x_pvc_al = reactance in PVC or aluminium conduit,
//   x_steel = in steel conduit; r_cu_* / r_al_* = AC resistance of uncoated copper /
//   aluminium conductors in PVC, aluminium, steel conduit.
// Effective impedance at power factor pf: Z = R pf + X sin(arccos(pf)). A sheet-steel gutter
//   is not a conduit: the steel columns are only an upper estimate there (judgement, not
//   code).
// Verified: two reprints with all rows, an engineering page (14 AWG to 350 kcmil) and the
//   head of a 2008 print with metric columns; all agree except the one cell noted.
struct ImpedanceRow {
    std::string_view size;
    double xPvc;
    double xSteel;
    double copperPvc;
    double copperAluminium;
    double copperSteel;
    double aluminiumPvc;
    double aluminiumAluminium;
    double aluminiumSteel;
    Basis basis;
};

// clang-format off
inline constexpr std::array<ImpedanceRow, 21> kImpedanceRows = {{
    {"14"  , 0.058, 0.073,   3.1,   3.1,   3.1, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"12"  , 0.054, 0.068,   2.0,   2.0,   2.0,    3.2,    3.2,    3.2, Basis::seenTwice},
    {"10"  , 0.050, 0.063,   1.2,   1.2,   1.2,    2.0,    2.0,    2.0, Basis::seenTwice},
    {"8"   , 0.052, 0.065,  0.78,  0.78,  0.78,    1.3,    1.3,    1.3, Basis::seenTwice},
    {"6"   , 0.051, 0.064,  0.49,  0.49,  0.49,   0.81,   0.81,   0.81, Basis::seenTwice},
    {"4"   , 0.048, 0.060,  0.31,  0.31,  0.31,   0.51,   0.51,   0.51, Basis::seenTwice},
    {"3"   , 0.047, 0.059,  0.25,  0.25,  0.25,   0.40,   0.41,   0.40, Basis::seenTwice},
    {"2"   , 0.045, 0.057,  0.19,  0.20,  0.20,   0.32,   0.32,   0.32, Basis::seenTwice},
    {"1"   , 0.046, 0.057,  0.15,  0.16,  0.16,   0.25,   0.26,   0.25, Basis::seenTwice},
    {"1/0" , 0.044, 0.055,  0.12,  0.13,  0.12,   0.20,   0.21,   0.20, Basis::seenTwice},
    {"2/0" , 0.043, 0.054,  0.10,  0.10,  0.10,   0.16,   0.16,   0.16, Basis::seenTwice},
    {"3/0" , 0.042, 0.052, 0.077, 0.082, 0.079,   0.13,   0.13,   0.13, Basis::seenTwice},
    {"4/0" , 0.041, 0.051, 0.062, 0.067, 0.063,   0.10,   0.11,   0.10, Basis::seenTwice},
    {"250" , 0.041, 0.052, 0.052, 0.057, 0.054,  0.085,  0.090,  0.086, Basis::seenTwice},
    {"300" , 0.041, 0.051, 0.044, 0.049, 0.045,  0.071,  0.076,  0.072, Basis::seenTwice},
    {"350" , 0.040, 0.050, 0.038, 0.043, 0.039,  0.061,  0.066,  0.063, Basis::seenTwice},
    {"400" , 0.040, 0.049, 0.033, 0.038, 0.035,  0.054,  0.059,  0.055, Basis::seenTwice},
    {"500" , 0.039, 0.048, 0.027, 0.032, 0.029,  0.043,  0.048,  0.045, Basis::seenTwice},
    {"600" , 0.039, 0.048, 0.023, 0.028, 0.025,  0.036,  0.041,  0.038, Basis::seenTwice},
    {"750" , 0.038, 0.048, 0.019, 0.024, 0.021,  0.029,  0.034,  0.031, Basis::seenTwice},
    {"1000", 0.037, 0.046, 0.015, 0.019, 0.018,  0.023,  0.027,  0.025, Basis::seenTwice},
}};
// clang-format on

}  // namespace gw::standards::rows
