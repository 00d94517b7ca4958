#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/vec3.h"
#include "geometry/built_layout.h"
#include "standards/citation.h"

/// One verdict of one check on one subject, with its working.
namespace gw::checks {

enum class Verdict {
    meets,
    breach,
    caution,     ///< good practice, not a rule; or the readings disagree
    cannotTell,  ///< an input is missing: `missing` names it
};
std::string_view verdictText(Verdict verdict);  ///< "meets", "breach", "caution", "cannot tell"

/// What people go through one after the other.
enum class Group { space, conductors, connections, tapsAndProtection, bonding, identification };
std::string_view groupTitle(Group group);  ///< "Space", "Taps and protection", …

enum class Check {
    // space
    conductorFill,
    spliceFill,
    entryBendingSpace,
    terminalBendingSpace,
    pullDistances,
    clearance,
    supportSpacing,
    lengthBeyond,
    coverPush,
    faultForces,
    // conductors
    bendRadius,
    ampacity,
    parallelSets,
    racewayFill,
    circuitTogether,
    largestConductor,
    mixedVoltages,
    // connections
    portSuitsConductor,
    exposedCopper,
    joints,
    screwReach,
    landingOrder,
    torqueKnown,
    connectorListing,
    location,
    // taps and protection
    tapRule,
    serviceDisconnects,
    serviceApart,
    // bonding
    insulatingBushing,
    groundingSize,
    serviceBonding,
    // identification
    colours,
    tapLabels,
};
std::string_view checkName(Check check);   ///< for the command line and JSON: "conductor-fill", …
std::string_view checkTitle(Check check);  ///< for people: "Conductor fill", …
Group groupOf(Check check);
/// Why the check has no finding on a layout, wherever it has none: "no circuit runs in parallel".
std::string_view whyNotConcerned(Check check);
/// In the order of the enum, group by group.
const std::vector<Check>& allChecks();

/// A number with its unit, as measured or as limit.
struct Quantity {
    enum class Unit {
        inches,
        squareInches,
        percent,
        count,
        degrees,
        amperes,
        volts,
        kiloamperes,
        poundsForce,
        poundsForcePerFoot,
    };
    double value = 0.0;
    Unit unit = Unit::inches;
};
/// "3.80 in", "21.3 %". Inches to three decimals, trailing zeros cut.
std::string toText(const Quantity& quantity);

/// What a finding is about.
using Subject =
    std::variant<layout::ConductorId, layout::BlockId, layout::EntryId, layout::CircuitId>;
std::string subjectText(const Subject& subject);

/// One way of reading a disputed rule, with the result it gives.
struct Reading {
    std::string name;  ///< "the 20 % still binds"
    Verdict verdict = Verdict::meets;
    std::optional<Quantity> measured;
    std::optional<Quantity> limit;
    std::string sentence;
    bool chosen = false;  ///< the layout records that the local authority takes this one
};

struct Finding {
    Check check = Check::conductorFill;
    Verdict verdict = Verdict::meets;
    std::vector<Subject> subjects;  ///< the first is the one to jump to; empty: the gutter
    std::optional<Vec3> place;      ///< gutter coordinates
    std::optional<std::pair<double, double>> interval;  ///< along x, where it holds over a stretch
    std::optional<Quantity> measured;
    std::optional<Quantity> limit;
    std::optional<Quantity> margin;  ///< positive: room to spare; negative: short by
    standards::Citation citation;
    std::string working;               ///< one sentence with the numbers
    std::vector<std::string> missing;  ///< inputs that would settle a cannotTell
    std::vector<Reading> readings;     ///< where the wording is disputed
};

struct Facts;  // of checks/facts.h

/// All findings of these checks, in the order given; within a check in the order of the layout.
/// Pure: the same layout gives the same findings. What a rule does not concern has no finding:
/// where a check has none at all, whyNotConcerned() tells the reason. How each check is made up of
/// the findings of single conductors, circuits, entries and blocks is in checks/units.h.
std::vector<Finding> runChecks(const geometry::BuiltLayout& built, const std::vector<Check>& which);
/// The same with the facts at hand. REQUIRES facts of this built layout.
std::vector<Finding> runChecks(const geometry::BuiltLayout& built,
                               const Facts& facts,
                               const std::vector<Check>& which);

/// All checks in the order of allChecks().
std::vector<Finding> checkAll(const geometry::BuiltLayout& built);

// One check alone.
std::vector<Finding> checkConductorFill(const geometry::BuiltLayout& built);
std::vector<Finding> checkSpliceFill(const geometry::BuiltLayout& built);
std::vector<Finding> checkEntryBendingSpace(const geometry::BuiltLayout& built);
std::vector<Finding> checkTerminalBendingSpace(const geometry::BuiltLayout& built);
std::vector<Finding> checkPullDistances(const geometry::BuiltLayout& built);
std::vector<Finding> checkClearance(const geometry::BuiltLayout& built);
std::vector<Finding> checkSupportSpacing(const geometry::BuiltLayout& built);
std::vector<Finding> checkLengthBeyond(const geometry::BuiltLayout& built);
std::vector<Finding> checkCoverPush(const geometry::BuiltLayout& built);
std::vector<Finding> checkFaultForces(const geometry::BuiltLayout& built);
std::vector<Finding> checkBendRadius(const geometry::BuiltLayout& built);
std::vector<Finding> checkAmpacity(const geometry::BuiltLayout& built);
std::vector<Finding> checkParallelSets(const geometry::BuiltLayout& built);
std::vector<Finding> checkRacewayFill(const geometry::BuiltLayout& built);
std::vector<Finding> checkCircuitTogether(const geometry::BuiltLayout& built);
std::vector<Finding> checkLargestConductor(const geometry::BuiltLayout& built);
std::vector<Finding> checkMixedVoltages(const geometry::BuiltLayout& built);
std::vector<Finding> checkPortSuitsConductor(const geometry::BuiltLayout& built);
std::vector<Finding> checkExposedCopper(const geometry::BuiltLayout& built);
std::vector<Finding> checkJoints(const geometry::BuiltLayout& built);
std::vector<Finding> checkScrewReach(const geometry::BuiltLayout& built);
std::vector<Finding> checkLandingOrder(const geometry::BuiltLayout& built);
std::vector<Finding> checkTorqueKnown(const geometry::BuiltLayout& built);
std::vector<Finding> checkConnectorListing(const geometry::BuiltLayout& built);
std::vector<Finding> checkLocation(const geometry::BuiltLayout& built);
std::vector<Finding> checkTapRule(const geometry::BuiltLayout& built);
std::vector<Finding> checkServiceDisconnects(const geometry::BuiltLayout& built);
std::vector<Finding> checkServiceApart(const geometry::BuiltLayout& built);
std::vector<Finding> checkInsulatingBushing(const geometry::BuiltLayout& built);
std::vector<Finding> checkGroundingSize(const geometry::BuiltLayout& built);
std::vector<Finding> checkServiceBonding(const geometry::BuiltLayout& built);
std::vector<Finding> checkColours(const geometry::BuiltLayout& built);
std::vector<Finding> checkTapLabels(const geometry::BuiltLayout& built);

/// The checks of `asked` that have no finding among these: they did not concern the layout.
std::vector<Check> notConcerned(const std::vector<Check>& asked,
                                const std::vector<Finding>& findings);

/// How many findings of each verdict.
struct Tally {
    int meets = 0;
    int breach = 0;
    int caution = 0;
    int cannotTell = 0;
};
Tally tally(const std::vector<Finding>& findings);

}  // namespace gw::checks
