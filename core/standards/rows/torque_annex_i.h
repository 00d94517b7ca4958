#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 Informative Annex I, recommended tightening torque, from UL 486A-486B.
//   NOT mandatory: only for use where the connector or equipment gives no torque. (110.14(D):
//   from 2017 a stated torque must be met with an approved means.)
// Editions: annex present since 2011; 2017/2020/2023 as far as known alike.
// Units: lbf-in (multiply by 0.11298 for N-m). torque_A and torque_B = the two columns A and
//   B of the UL table (A lower, about 70 to 90 percent of B). The annex as quoted by exam and
//   field pages uses the B figures (2 AWG: split bolt 275, other 150), so take torque_B as
//   the recommended value.
// Where slot width or length falls between, UL notes: largest torque for the conductor size
//   for I.1; next shorter slot length for I.2. A screw with several drives (hex + slot): UL
//   takes the highest value for the drives given.
// Verified: I.1 on a public copy of the annex and a reprint of the UL 486A-486B table (agree
//   up to 400 kcmil; the first alone beyond, and its last B column was cut off); I.2 on a
//   public copy of the 2017 annex up to slot length 1/4; I.3: 3/16 on an exam-prep page, 1/4
//   to 1/2 in an equipment manual quoting the same figures, the rest memory.
// Two equipment manuals disagree for recessed drives (200/275/375/500 against
//   180/250/340/450): the lower set looks like column A.
struct TorqueRow {
    std::string_view table;
    std::string_view key;
    std::string_view screw;
    double columnA;
    double columnB;
    Basis basis;
};

// clang-format off
inline constexpr std::array<TorqueRow, 67> kTorqueRows = {{
    {"I.1", "30-10"    , "slotted No. 10 and larger, slot width <= 0.047 in and length <= 0.25 in",     15,   20, Basis::seenTwice},
    {"I.1", "30-10"    , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     25,   35, Basis::seenTwice},
    {"I.1", "30-10"    , "hex head external wrench, split-bolt connector"                         ,     65,   80, Basis::seenTwice},
    {"I.1", "30-10"    , "hex head external wrench, other connector"                              ,     60,   75, Basis::seenTwice},
    {"I.1", "8"        , "slotted No. 10 and larger, slot width <= 0.047 in and length <= 0.25 in",     20,   25, Basis::seenTwice},
    {"I.1", "8"        , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     30,   40, Basis::seenTwice},
    {"I.1", "8"        , "hex head external wrench, split-bolt connector"                         ,     65,   80, Basis::seenTwice},
    {"I.1", "8"        , "hex head external wrench, other connector"                              ,     60,   75, Basis::seenTwice},
    {"I.1", "6-4"      , "slotted No. 10 and larger, slot width <= 0.047 in and length <= 0.25 in",     25,   35, Basis::seenTwice},
    {"I.1", "6-4"      , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     35,   45, Basis::seenTwice},
    {"I.1", "6-4"      , "hex head external wrench, split-bolt connector"                         ,    135,  165, Basis::seenTwice},
    {"I.1", "6-4"      , "hex head external wrench, other connector"                              ,     90,  110, Basis::seenTwice},
    {"I.1", "3"        , "slotted No. 10 and larger, slot width <= 0.047 in and length <= 0.25 in",     25,   35, Basis::seenTwice},
    {"I.1", "3"        , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seenTwice},
    {"I.1", "3"        , "hex head external wrench, split-bolt connector"                         ,    225,  275, Basis::seenTwice},
    {"I.1", "3"        , "hex head external wrench, other connector"                              ,    125,  150, Basis::seenTwice},
    {"I.1", "2"        , "slotted No. 10 and larger, slot width <= 0.047 in and length <= 0.25 in",     30,   40, Basis::seenTwice},
    {"I.1", "2"        , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seenTwice},
    {"I.1", "2"        , "hex head external wrench, split-bolt connector"                         ,    225,  275, Basis::seenTwice},
    {"I.1", "2"        , "hex head external wrench, other connector"                              ,    125,  150, Basis::seenTwice},
    {"I.1", "1"        , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seenTwice},
    {"I.1", "1"        , "hex head external wrench, split-bolt connector"                         ,    225,  275, Basis::seenTwice},
    {"I.1", "1"        , "hex head external wrench, other connector"                              ,    125,  150, Basis::seenTwice},
    {"I.1", "1/0-2/0"  , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seenTwice},
    {"I.1", "1/0-2/0"  , "hex head external wrench, split-bolt connector"                         ,    315,  385, Basis::seenTwice},
    {"I.1", "1/0-2/0"  , "hex head external wrench, other connector"                              ,    150,  180, Basis::seenTwice},
    {"I.1", "3/0-4/0"  , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seenTwice},
    {"I.1", "3/0-4/0"  , "hex head external wrench, split-bolt connector"                         ,    400,  500, Basis::seenTwice},
    {"I.1", "3/0-4/0"  , "hex head external wrench, other connector"                              ,    200,  250, Basis::seenTwice},
    {"I.1", "250-350"  , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seenTwice},
    {"I.1", "250-350"  , "hex head external wrench, split-bolt connector"                         ,    550,  650, Basis::seenTwice},
    {"I.1", "250-350"  , "hex head external wrench, other connector"                              ,    250,  325, Basis::seenTwice},
    {"I.1", "400"      , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seenTwice},
    {"I.1", "400"      , "hex head external wrench, split-bolt connector"                         ,    675,  825, Basis::seenTwice},
    {"I.1", "400"      , "hex head external wrench, other connector"                              ,    250,  325, Basis::seen},
    {"I.1", "500"      , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seen},
    {"I.1", "500"      , "hex head external wrench, split-bolt connector"                         ,    675,  825, Basis::seen},
    {"I.1", "500"      , "hex head external wrench, other connector"                              ,    300,  375, Basis::memory},
    {"I.1", "600-750"  , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seen},
    {"I.1", "600-750"  , "hex head external wrench, split-bolt connector"                         ,    800, 1000, Basis::seen},
    {"I.1", "600-750"  , "hex head external wrench, other connector"                              ,    300,  375, Basis::memory},
    {"I.1", "800-1000" , "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"   ,     40,   50, Basis::seen},
    {"I.1", "800-1000" , "hex head external wrench, split-bolt connector"                         ,    900, 1100, Basis::seen},
    {"I.1", "800-1000" , "hex head external wrench, other connector"                              ,    400,  500, Basis::memory},
    {"I.1", "1250-2000", "hex head external wrench, split-bolt connector"                         ,    900, 1100, Basis::seen},
    {"I.1", "1250-2000", "hex head external wrench, other connector"                              ,    500,  600, Basis::memory},
    {"I.2", "< 5/32"   , "slotted smaller than No. 10, slot width < 0.047 in"                     , kBlank,    7, Basis::seen},
    {"I.2", "< 5/32"   , "slotted smaller than No. 10, slot width >= 0.047 in"                    , kBlank,    9, Basis::seen},
    {"I.2", "5/32"     , "slotted smaller than No. 10, slot width < 0.047 in"                     , kBlank,    7, Basis::seen},
    {"I.2", "5/32"     , "slotted smaller than No. 10, slot width >= 0.047 in"                    , kBlank,   12, Basis::seen},
    {"I.2", "3/16"     , "slotted smaller than No. 10, slot width < 0.047 in"                     , kBlank,    7, Basis::seen},
    {"I.2", "3/16"     , "slotted smaller than No. 10, slot width >= 0.047 in"                    , kBlank,   12, Basis::seen},
    {"I.2", "7/32"     , "slotted smaller than No. 10, slot width < 0.047 in"                     , kBlank,    7, Basis::seen},
    {"I.2", "7/32"     , "slotted smaller than No. 10, slot width >= 0.047 in"                    , kBlank,   12, Basis::seen},
    {"I.2", "1/4"      , "slotted smaller than No. 10, slot width < 0.047 in"                     , kBlank,    9, Basis::seen},
    {"I.2", "1/4"      , "slotted smaller than No. 10, slot width >= 0.047 in"                    , kBlank,   12, Basis::seen},
    {"I.2", "9/32"     , "slotted smaller than No. 10, slot width >= 0.047 in"                    , kBlank,   15, Basis::memory},
    {"I.2", "> 9/32"   , "slotted smaller than No. 10, slot width >= 0.047 in"                    , kBlank,   20, Basis::memory},
    {"I.3", "1/8"      , "recessed Allen or square drive"                                         , kBlank,   45, Basis::memory},
    {"I.3", "5/32"     , "recessed Allen or square drive"                                         , kBlank,  100, Basis::memory},
    {"I.3", "3/16"     , "recessed Allen or square drive"                                         , kBlank,  120, Basis::seen},
    {"I.3", "7/32"     , "recessed Allen or square drive"                                         , kBlank,  150, Basis::memory},
    {"I.3", "1/4"      , "recessed Allen or square drive"                                         , kBlank,  200, Basis::seen},
    {"I.3", "5/16"     , "recessed Allen or square drive"                                         , kBlank,  275, Basis::seen},
    {"I.3", "3/8"      , "recessed Allen or square drive"                                         , kBlank,  375, Basis::seen},
    {"I.3", "1/2"      , "recessed Allen or square drive"                                         , kBlank,  500, Basis::seen},
    {"I.3", "9/16"     , "recessed Allen or square drive"                                         , kBlank,  600, Basis::memory},
}};
// clang-format on

}  // namespace gw::standards::rows
