#pragma once

#include <span>

#include "standards/citation.h"
#include "standards/kinds.h"

/// Section numbers of NFPA 70 by edition, for every rule a gutter is judged by.
namespace gw::standards {

enum class Rule {
    // which article applies
    articleDefinition,  ///< what is an auxiliary gutter or a wireway
    noSwitchesInside,   ///< no switches or overcurrent devices in a gutter
    gutterLength,       ///< length beyond the equipment, 30 ft
    environments,       ///< permitted and prohibited places
    // fill
    conductorFill,        ///< 20 % at every cross-section
    spliceFill,           ///< 75 % with splices and taps
    adjustmentThreshold,  ///< adjustment from 31 current-carrying conductors, or always in
                          ///< nonmetallic
    adjustmentFactors,    ///< factors for more than three current-carrying conductors
    ambientFactors,       ///< factors for the ambient
    shortZoneRelief,      ///< two ampacities: the higher may hold on for 10 ft or 10 %
    bareBusCurrent,       ///< current density of bare bars
    largestConductor,     ///< no conductor larger than the design size
    // bending and deflection space
    deflectionSpace,  ///< width where conductors are deflected
    terminalSpace,    ///< bending space at a terminal, conductor not through the opposite wall
    terminalSpaceOpposite,  ///< bending space at a terminal, conductor through the opposite wall
    parallelByNumber,       ///< conductors in parallel judged by their number
    pullDistances,          ///< distances where conductors are pulled through
    boxPullDistances,       ///< box dimensions for pulls
    straightPull,           ///< 8 times the trade size
    anglePull,              ///< 6 times the trade size and the others of the row
    smallerMarkedBox,       ///< smaller boxes marked for their conductors
    racking,                ///< conductors cabled or racked over 6 ft
    bendRadiusOver1000V,    ///< least bend radius over 1000 V
    // splices and taps
    splicesAccessible,  ///< splices and taps accessible
    tapsLabelled,       ///< each tap identified
    tapsFromBare,       ///< taps from bare conductors
    tapsProtected,      ///< taps protected against overcurrent
    splicesInsulated,   ///< splices identified and insulated
    noSpliceInRaceway,  ///< no splice inside a conduit or nipple
    bareLiveParts,      ///< clearance of bare live parts
    construction,       ///< a complete, continuous, smooth enclosure
    deadEndsClosed,     ///< dead ends closed
    unusedOpenings,     ///< unused openings closed
    cabinetSplices,     ///< splices in cabinets: 40 % and 75 %
    handholeSplices,    ///< splices in handholes listed for wet
    tapsJoinWholeSet,   ///< a tap joins every conductor of the set
    // power distribution blocks
    blocksListed,        ///< power distribution blocks listed
    blocksEnclosure,     ///< the block's own least enclosure
    blocksBendingSpace,  ///< bending space at blocks
    blocksLiveParts,     ///< no uninsulated live part at blocks
    blocksUnobstructed,  ///< block terminals unobstructed
    shortCircuitRating,  ///< short-circuit rating
    // listing, location, marking of connectors
    listingAndInstructions,  ///< use as listed and instructed
    lineSideMarking,         ///< connectors on service conductors marked for the line side
    lineSideListing,         ///< connectors on service conductors listed
    directBurial,            ///< splices in direct burial listed for it
    wetRaceway,              ///< inside of a raceway in a wet location is wet
    wetInsulation,           ///< insulation for wet locations
    enclosureType,           ///< enclosure type for the place
    deterioratingAgents,     ///< equipment fit for what surrounds it
    racewaySeal,             ///< raceways between temperatures sealed
    mountingAirSpace,        ///< air space behind in damp and wet places
    // terminations
    oneConductorPerTerminal,  ///< one conductor a terminal unless identified; stranding and metal
                              ///< identified
    dissimilarMetals,         ///< connector identified for its metals
    fineStranding,            ///< connector identified for fine strands
    torque,                   ///< tightening torque
    terminalTemperature,      ///< temperature rating of terminations
    connectorTemperature,     ///< temperature rating of separately installed connectors
    // overcurrent protection of what leaves the trough
    tapDefinition,           ///< what is a tap
    taps,                    ///< feeder taps
    tapNoNextSizeUp,         ///< no next size up for taps
    tapFromTap,              ///< no tap from a tap
    tenFootTap,              ///< 10 ft tap
    twentyFiveFootTap,       ///< 25 ft tap
    highBayTap,              ///< tap over 25 ft in high bays
    outsideTap,              ///< outside tap
    transformerSecondary,    ///< transformer secondary conductors
    supervisedIndustrial,    ///< supervised industrial installations
    nextSizeUp,              ///< next size of device up
    smallConductors,         ///< devices for 14 to 10 AWG
    serviceOverload,         ///< overload protection of service conductors
    disconnectCount,         ///< number of service disconnects
    serviceBarriers,         ///< barriers in service equipment
    serviceConductorsApart,  ///< service conductors apart from others
    arcFlashLabel,           ///< arc-flash label
    faultCurrentLabel,       ///< fault-current label
    // conductors
    ampacity,           ///< ampacity of the conductors
    parallelSize,       ///< parallel conductors 1/0 or larger
    parallelSameness,   ///< parallel conductors alike
    neutralCounting,    ///< which neutrals count
    parallelGrouping,   ///< parallel sets grouped
    circuitTogether,    ///< conductors of a circuit together
    induction,          ///< no heating of steel by induction
    inductionOpenings,  ///< single conductors through openings in steel
    mixedVoltages,      ///< mixed voltages
    racewayFill,        ///< fill of conduit and tubing
    nippleFill,         ///< fill of nipples
    // grounding and bonding
    gutterBonded,                ///< metal gutter connected to ground
    serviceBonding,              ///< bonding at service entries
    lineSideJumper,              ///< supply-side bonding jumper
    loadSideJumper,              ///< equipment bonding jumper on the load side
    equipmentGrounding,          ///< equipment grounding conductor
    equipmentGroundingParallel,  ///< equipment grounding conductors of parallel runs
    equipmentGroundingTaps,      ///< equipment grounding conductors of taps
    mainBondingJumper,           ///< main and system bonding jumper
    groundedConductor,           ///< grounded conductor size
    neutralBondedLineSide,       ///< neutral may bond metal on the line side
    neutralNotLoadSide,          ///< neutral must not bond metal on the load side
    bondingOver250V,             ///< bonding over 250 V to ground
    groundingSplices,            ///< grounding conductors joined to the enclosure
    groundingElectrode,          ///< grounding electrode conductor
    // entries and mechanical protection
    insulatingBushing,  ///< insulating bushing at 4 AWG and larger
    support,            ///< support spacing
    expansion,          ///< expansion of nonmetallic troughs
    verticalSupport,    ///< support of long vertical conductors
    extensions,         ///< extensions from wireways
    fastening,          ///< equipment fastened
    // space in front and access
    workingSpace,      ///< working space
    protrusion,        ///< not more than 6 in past the panel front
    dedicatedSpace,    ///< dedicated space
    coverFastened,     ///< covers fastened
    disconnectAccess,  ///< disconnects within reach
    // identification
    groundedIdentification,    ///< grounded conductor identified
    groundedBySystem,          ///< grounded conductors of two systems told apart
    groundingIdentification,   ///< equipment grounding conductor identified
    ungroundedIdentification,  ///< ungrounded conductors identified
    highLeg,                   ///< high leg orange
    phaseOrder,                ///< phases in order
    fieldMarking,              ///< labels in the field; stays the last: allRules() ends with it
};

/// The section that carries the rule in that edition, for the article the gutter falls under where
/// the articles have sections of their own. Where none is recorded for that article or edition
/// (taps are labelled by article 366 only; joining every conductor of a set is written from 2020
/// on), the standard and section are empty, the basis is common practice and the note says so. 2026
/// numbers that were inferred, not read, say so in the note.
Citation section(Rule rule, Edition edition, GutterArticle article);

std::span<const Rule> allRules();

}  // namespace gw::standards
