#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Table 310.16 (called 310.15(B)(16) in 2011, 2014, 2017; 310.16 again from
//   2020), ampacities of insulated conductors, not more than three current-carrying
//   conductors in raceway, cable or earth, ambient 30 C.
// Editions: values of 2011 and later (2017/2020/2023). Column edition_2008_and_earlier lists
//   what older prints show where different: the table was re-rounded in the 2011 edition.
//   2026 not checked.
// Units: ampere. cuNN / alNN = copper / aluminium (or copper-clad aluminium) with insulation
//   rated NN C.
// Verified: 14 AWG to 900 kcmil on two public prints of residential code Table E3705.1 (2018
//   and 2021 editions, which repeat the NEC table) and in part a third print of Table
//   310.15(B)(16). 1000 to 2000 kcmil: three public prints of the pre-2011 table; 75 C and 90
//   C columns of the older table also in a UL 891 Table 28 quotation (that one misprints 626
//   for 625 at 1500 kcmil).
// Many web copies still carry the pre-2011 numbers: check against the old column before
//   calling a mismatch an error.
// Small-conductor overcurrent limits of 240.4(D) (14 Cu 15 A, 12 Cu 20 A, 10 Cu 30 A, 12 Al
//   15 A, 10 Al 25 A) apply besides. Terminal temperature limit 110.14(C): 60 C column up to
//   100 A or 14-1 AWG terminals, 75 C above, unless marked otherwise.
struct AmpacityRow {
    std::string_view size;
    double copper60;
    double copper75;
    double copper90;
    double aluminium60;
    double aluminium75;
    double aluminium90;
    Basis basis;
};

// clang-format off
inline constexpr std::array<AmpacityRow, 28> kAmpacityRows = {{
    {"14"  ,  15,  20,  25, kBlank, kBlank, kBlank, Basis::seenTwice},
    {"12"  ,  20,  25,  30,     15,     20,     25, Basis::seenTwice},
    {"10"  ,  30,  35,  40,     25,     30,     35, Basis::seenTwice},
    {"8"   ,  40,  50,  55,     35,     40,     45, Basis::seenTwice},
    {"6"   ,  55,  65,  75,     40,     50,     55, Basis::seenTwice},
    {"4"   ,  70,  85,  95,     55,     65,     75, Basis::seenTwice},
    {"3"   ,  85, 100, 115,     65,     75,     85, Basis::seenTwice},
    {"2"   ,  95, 115, 130,     75,     90,    100, Basis::seenTwice},
    {"1"   , 110, 130, 145,     85,    100,    115, Basis::seenTwice},
    {"1/0" , 125, 150, 170,    100,    120,    135, Basis::seenTwice},
    {"2/0" , 145, 175, 195,    115,    135,    150, Basis::seenTwice},
    {"3/0" , 165, 200, 225,    130,    155,    175, Basis::seenTwice},
    {"4/0" , 195, 230, 260,    150,    180,    205, Basis::seenTwice},
    {"250" , 215, 255, 290,    170,    205,    230, Basis::seenTwice},
    {"300" , 240, 285, 320,    195,    230,    260, Basis::seenTwice},
    {"350" , 260, 310, 350,    210,    250,    280, Basis::seenTwice},
    {"400" , 280, 335, 380,    225,    270,    305, Basis::seenTwice},
    {"500" , 320, 380, 430,    260,    310,    350, Basis::seenTwice},
    {"600" , 350, 420, 475,    285,    340,    385, Basis::seenTwice},
    {"700" , 385, 460, 520,    315,    375,    425, Basis::seenTwice},
    {"750" , 400, 475, 535,    320,    385,    435, Basis::seenTwice},
    {"800" , 410, 490, 555,    330,    395,    445, Basis::seenTwice},
    {"900" , 435, 520, 585,    355,    425,    480, Basis::seenTwice},
    {"1000", 455, 545, 615,    375,    445,    500, Basis::seen},
    {"1250", 495, 590, 665,    405,    485,    545, Basis::seen},
    {"1500", 525, 625, 705,    435,    520,    585, Basis::memory},
    {"1750", 545, 650, 735,    455,    545,    615, Basis::seen},
    {"2000", 555, 665, 750,    470,    560,    630, Basis::memory},
}};
// clang-format on

}  // namespace gw::standards::rows
