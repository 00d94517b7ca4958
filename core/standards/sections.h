#pragma once

#include <span>

#include "standards/citation.h"
#include "standards/kinds.h"

/// Section numbers of NFPA 70 by edition, for every rule a gutter is judged by.
namespace gw::standards {

enum class Rule {
    articleDefinition,    ///< what is an auxiliary gutter or a wireway
    noSwitchesInside,     ///< no switches or overcurrent devices in a gutter
    gutterLength,         ///< length beyond the equipment, 30 ft
    environments,         ///< permitted and prohibited places
    conductorFill,        ///< 20 % at every cross-section
    spliceFill,           ///< 75 % with splices and taps
    adjustmentThreshold,  ///< adjustment from 31 current-carrying conductors, or always in
                          ///< nonmetallic
    largestConductor,     ///< no conductor larger than the design size
    deflectionSpace,      ///< width where conductors are deflected
    terminalSpace,        ///< bending space at a terminal, conductor not through the opposite wall
    terminalSpaceOpposite,     ///< bending space at a terminal, conductor through the opposite wall
    pullDistances,             ///< distances where conductors are pulled through
    boxPullDistances,          ///< box dimensions for pulls
    splicesAccessible,         ///< splices and taps accessible
    tapsLabelled,              ///< each tap identified
    tapsProtected,             ///< taps protected against overcurrent
    splicesInsulated,          ///< splices identified and insulated
    bareLiveParts,             ///< clearance of bare live parts
    tapsJoinWholeSet,          ///< a tap joins every conductor of the set
    blocksListed,              ///< power distribution blocks listed
    blocksEnclosure,           ///< the block's own least enclosure
    blocksBendingSpace,        ///< bending space at blocks
    blocksLiveParts,           ///< no uninsulated live part at blocks
    blocksUnobstructed,        ///< block terminals unobstructed
    shortCircuitRating,        ///< short-circuit rating
    listingAndInstructions,    ///< use as listed and instructed
    lineSideMarking,           ///< connectors on service conductors marked for the line side
    directBurial,              ///< splices in direct burial listed for it
    wetRaceway,                ///< inside of a raceway in a wet location is wet
    wetInsulation,             ///< insulation for wet locations
    enclosureType,             ///< enclosure type for the place
    oneConductorPerTerminal,   ///< one conductor a terminal unless identified; stranding and metal
                               ///< identified
    dissimilarMetals,          ///< connector identified for its metals
    torque,                    ///< tightening torque
    terminalTemperature,       ///< temperature rating of terminations
    taps,                      ///< feeder taps
    tenFootTap,                ///< 10 ft tap
    twentyFiveFootTap,         ///< 25 ft tap
    highBayTap,                ///< tap over 25 ft in high bays
    outsideTap,                ///< outside tap
    serviceOverload,           ///< overload protection of service conductors
    disconnectCount,           ///< number of service disconnects
    serviceConductorsApart,    ///< service conductors apart from others
    parallelSize,              ///< parallel conductors 1/0 or larger
    parallelSameness,          ///< parallel conductors alike
    neutralCounting,           ///< which neutrals count
    parallelGrouping,          ///< parallel sets grouped
    circuitTogether,           ///< conductors of a circuit together
    induction,                 ///< no heating of steel by induction
    mixedVoltages,             ///< mixed voltages
    gutterBonded,              ///< metal gutter connected to ground
    serviceBonding,            ///< bonding at service entries
    lineSideJumper,            ///< supply-side bonding jumper
    equipmentGrounding,        ///< equipment grounding conductor
    groundedConductor,         ///< grounded conductor size
    insulatingBushing,         ///< insulating bushing at 4 AWG and larger
    support,                   ///< support spacing
    workingSpace,              ///< working space
    groundedIdentification,    ///< grounded conductor identified
    groundingIdentification,   ///< equipment grounding conductor identified
    ungroundedIdentification,  ///< ungrounded conductors identified
    highLeg,                   ///< high leg orange
};

/// The section that carries the rule in that edition, for the article the gutter falls under where
/// the articles have sections of their own. The section is empty where the edition has no such rule
/// (the note says so). 2026 numbers that were inferred, not read, say so in the note.
Citation section(Rule rule, Edition edition, GutterArticle article);

std::span<const Rule> allRules();

}  // namespace gw::standards
