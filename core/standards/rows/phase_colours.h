#pragma once

#include <array>
#include <string_view>

#include "standards/rows/row.h"

namespace gw::standards::rows {

// Standard: NFPA 70 110.15, 200.6, 200.7, 210.5, 215.12, 250.119, 408.3(E) for what the code
//   demands; the rest is US trade custom.
// Editions: 2011 through 2023.
// Units: none. status = code (required), practice (custom only), practice within code (custom
//   choice among what the code allows).
// NFPA 70 requires NO particular colours for ordinary ungrounded phases; black-red-blue and
//   brown-orange-yellow are custom (local rules may make them mandatory).
// Verified: custom colours on several public pages (a code-class page, a trade magazine
//   column of Dec. 2025, a forum); 210.5(C) wording on a forum quotation; 110.15 and 250.119
//   on public pages, the latter an NFPA fact sheet.
struct ColourRow {
    std::string_view system;
    std::string_view conductor;
    std::string_view colour;
    std::string_view status;
    std::string_view note;
    Basis basis;
};

// clang-format off
inline constexpr std::array<ColourRow, 22> kColourRows = {{
    {"208Y/120 V 3-phase"                                  , "phase A"                                     , "black"                                                                                                                   , "practice"            , "-"                                                                                                                                                                             , Basis::seenTwice},
    {"208Y/120 V 3-phase"                                  , "phase B"                                     , "red"                                                                                                                     , "practice"            , "-"                                                                                                                                                                             , Basis::seenTwice},
    {"208Y/120 V 3-phase"                                  , "phase C"                                     , "blue"                                                                                                                    , "practice"            , "-"                                                                                                                                                                             , Basis::seenTwice},
    {"208Y/120 V 3-phase"                                  , "grounded (neutral)"                          , "white"                                                                                                                   , "practice within code", "code allows white or gray (200.6)"                                                                                                                                             , Basis::seenTwice},
    {"480Y/277 V 3-phase"                                  , "phase A"                                     , "brown"                                                                                                                   , "practice"            , "-"                                                                                                                                                                             , Basis::seenTwice},
    {"480Y/277 V 3-phase"                                  , "phase B"                                     , "orange"                                                                                                                  , "practice"            , "clashes with high-leg orange if both systems are on the premises"                                                                                                              , Basis::seenTwice},
    {"480Y/277 V 3-phase"                                  , "phase C"                                     , "yellow"                                                                                                                  , "practice"            , "-"                                                                                                                                                                             , Basis::seenTwice},
    {"480Y/277 V 3-phase"                                  , "grounded (neutral)"                          , "gray"                                                                                                                    , "practice within code", "code allows white or gray; two systems in one enclosure must differ (200.6(D))"                                                                                                , Basis::seenTwice},
    {"120/240 V 1-phase"                                   , "line 1"                                      , "black"                                                                                                                   , "practice"            , "-"                                                                                                                                                                             , Basis::seen},
    {"120/240 V 1-phase"                                   , "line 2"                                      , "red"                                                                                                                     , "practice"            , "-"                                                                                                                                                                             , Basis::seen},
    {"120/240 V 1-phase"                                   , "grounded (neutral)"                          , "white"                                                                                                                   , "practice within code", "code allows white or gray"                                                                                                                                                     , Basis::seen},
    {"240/120 V 3-phase 4-wire delta"                      , "phase A"                                     , "black"                                                                                                                   , "practice"            , "-"                                                                                                                                                                             , Basis::memory},
    {"240/120 V 3-phase 4-wire delta"                      , "phase B (high leg, higher voltage to ground)", "orange"                                                                                                                  , "code"                , "110.15: orange outer finish or other effective means, wherever a connection is made with the grounded conductor present; position B in switchboards and panelboards (408.3(E))", Basis::seenTwice},
    {"240/120 V 3-phase 4-wire delta"                      , "phase C"                                     , "blue or red"                                                                                                             , "practice"            , "varies by region"                                                                                                                                                              , Basis::memory},
    {"240/120 V 3-phase 4-wire delta"                      , "grounded (neutral)"                          , "white"                                                                                                                   , "practice within code", "-"                                                                                                                                                                             , Basis::memory},
    {"any"                                                 , "equipment grounding"                         , "bare, green, or green with yellow stripe(s)"                                                                             , "code"                , "250.119"                                                                                                                                                                       , Basis::seenTwice},
    {"any"                                                 , "equipment grounding 4 AWG and larger"        , "may be re-marked green at ends and accessible points"                                                                    , "code"                , "250.119(A) to (B)"                                                                                                                                                             , Basis::memory},
    {"any"                                                 , "grounded 6 AWG and smaller"                  , "white, gray, or three white or gray stripes along the whole length"                                                      , "code"                , "200.6(A)"                                                                                                                                                                      , Basis::memory},
    {"any"                                                 , "grounded 4 AWG and larger"                   , "as above, or white or gray marking at terminations all round"                                                            , "code"                , "200.6(B)"                                                                                                                                                                      , Basis::memory},
    {"any"                                                 , "ungrounded"                                  , "any colour except white, gray, green (and green/yellow)"                                                                 , "code"                , "310.6(C), 200.7, 250.119"                                                                                                                                                      , Basis::seen},
    {"more than one nominal voltage system on the premises", "ungrounded branch-circuit and feeder"        , "identify by phase/line and system at terminations, connections, splices; colour, tape, tag or other means; method posted", "code"                , "210.5(C), 215.12(C)"                                                                                                                                                           , Basis::seenTwice},
    {"isolated power system"                               , "conductor 1 / 2 / 3"                         , "orange / brown / yellow, each with a distinctive stripe"                                                                 , "code"                , "517.160(A)(5)"                                                                                                                                                                 , Basis::memory},
}};
// clang-format on

}  // namespace gw::standards::rows
