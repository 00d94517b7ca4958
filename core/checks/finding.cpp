#include "checks/finding.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "base/contract.h"
#include "checks/units.h"
#include "units/length.h"

namespace gw::checks {
namespace {

/// One row a check: its names, why it may have nothing to say, and its sections. In the order
/// people read the findings.
struct Row {
    Check check;
    Group group;
    std::string_view name;
    std::string_view title;
    std::string_view whyNot;
    std::span<const Section> (*sections)();
};

constexpr auto kRows = std::to_array<Row>({
    {Check::conductorFill,
     Group::space,
     "conductor-fill",
     "Conductor fill",
     "no conductor runs along the gutter",
     conductorFillSections},
    {Check::spliceFill,
     Group::space,
     "splice-fill",
     "Splice fill",
     "no block is in the gutter",
     spliceFillSections},
    {Check::entryBendingSpace,
     Group::space,
     "entry-bending-space",
     "Bending space at entries",
     "no conductor comes in by an entry",
     entryBendingSpaceSections},
    {Check::terminalBendingSpace,
     Group::space,
     "terminal-bending-space",
     "Bending space at ports",
     "no conductor ends in a port",
     terminalBendingSpaceSections},
    {Check::pullDistances,
     Group::space,
     "pull-distances",
     "Pull distances",
     "no insulated conductor of 4 AWG or larger goes uncut from one entry to another",
     pullDistancesSections},
    {Check::clearance,
     Group::space,
     "clearance",
     "Clearance",
     "nothing is in the gutter",
     clearanceSections},
    {Check::supportSpacing,
     Group::space,
     "support-spacing",
     "Distance between supports",
     "every gutter is supported",
     supportSpacingSections},
    {Check::lengthBeyond,
     Group::space,
     "length-beyond",
     "Length beyond the equipment",
     "it is a wireway, whose length has no limit",
     lengthBeyondSections},
    {Check::coverPush,
     Group::space,
     "cover-push",
     "Push on the cover",
     "no conductor bends",
     coverPushSections},
    {Check::faultForces,
     Group::space,
     "fault-forces",
     "Fault forces",
     "no available fault current is stated for two conductors of one circuit",
     faultForcesSections},
    {Check::bendRadius,
     Group::conductors,
     "bend-radius",
     "Bend radius",
     "no conductor bends",
     bendRadiusSections},
    {Check::ampacity,
     Group::conductors,
     "ampacity",
     "Ampacity",
     "no circuit has a conductor that carries current",
     ampacitySections},
    {Check::parallelSets,
     Group::conductors,
     "parallel-sets",
     "Parallel sets",
     "no circuit runs in parallel conductors",
     parallelSetsSections},
    {Check::racewayFill,
     Group::conductors,
     "raceway-fill",
     "Raceway fill",
     "no conductor comes in by an entry",
     racewayFillSections},
    {Check::circuitTogether,
     Group::conductors,
     "circuit-together",
     "Circuits together",
     "no circuit comes in by an entry",
     circuitTogetherSections},
    {Check::largestConductor,
     Group::conductors,
     "largest-conductor",
     "Largest conductor",
     "an auxiliary gutter is marked for no largest conductor, or no conductor is in the wireway",
     largestConductorSections},
    {Check::mixedVoltages,
     Group::conductors,
     "mixed-voltages",
     "Insulation for the highest voltage",
     "no insulated conductor is in the gutter",
     mixedVoltagesSections},
    {Check::portSuitsConductor,
     Group::connections,
     "port-suits-conductor",
     "Port suits conductor",
     "no conductor is in a port",
     portSuitsConductorSections},
    {Check::exposedCopper,
     Group::connections,
     "exposed-copper",
     "Exposed copper",
     "no conductor is in a port",
     exposedCopperSections},
    {Check::joints,
     Group::connections,
     "joints",
     "Joints",
     "there is neither block nor conductor",
     jointsSections},
    {Check::screwReach,
     Group::connections,
     "screw-reach",
     "Screws within reach",
     "no conductor is in a port",
     screwReachSections},
    {Check::landingOrder,
     Group::connections,
     "landing-order",
     "Landing order",
     "no conductor is in the gutter",
     landingOrderSections},
    {Check::torqueKnown,
     Group::connections,
     "torque-known",
     "Torque stated",
     "no conductor is in a port",
     torqueKnownSections},
    {Check::connectorListing,
     Group::connections,
     "connector-listing",
     "Listing of connectors",
     "no conductor is in a port",
     connectorListingSections},
    {Check::location,
     Group::connections,
     "location",
     "Location",
     "there is neither block nor conductor",
     locationSections},
    {Check::tapRule,
     Group::tapsAndProtection,
     "tap-rule",
     "Tap rules",
     "no circuit is a tap of a feeder",
     tapRuleSections},
    {Check::serviceDisconnects,
     Group::tapsAndProtection,
     "service-disconnects",
     "Service disconnects",
     "no service supplies disconnects from here",
     serviceDisconnectsSections},
    {Check::serviceApart,
     Group::tapsAndProtection,
     "service-apart",
     "Service apart",
     "no service conductor shares a raceway or wireway",
     serviceApartSections},
    {Check::insulatingBushing,
     Group::bonding,
     "insulating-bushing",
     "Insulating bushings",
     "no conductor of 4 AWG or larger comes in by an entry",
     insulatingBushingSections},
    {Check::groundingSize,
     Group::bonding,
     "grounding-size",
     "Size of grounding conductors",
     "no grounding conductor is in the gutter, and no bonding jumper of a service",
     groundingSizeSections},
    {Check::serviceBonding,
     Group::bonding,
     "service-bonding",
     "Bonding at service entries",
     "no service conductor comes into a metal gutter by a metal raceway",
     serviceBondingSections},
    {Check::colours,
     Group::identification,
     "colours",
     "Colours",
     "no circuit has a conductor in the gutter",
     coloursSections},
    {Check::tapLabels,
     Group::identification,
     "tap-labels",
     "Tap labels",
     "no circuit is a tap",
     tapLabelsSections},
});

const Row& rowOf(Check check) {
    for (const Row& row : kRows) {
        if (row.check == check) {
            return row;
        }
    }
    CONTRACT(false);
    return kRows.front();
}

std::string nameOf(const layout::ConductorId& id) {
    return "conductor " + id.text();
}
std::string nameOf(const layout::BlockId& id) {
    return "block " + id.text();
}
std::string nameOf(const layout::EntryId& id) {
    return "entry " + id.text();
}
std::string nameOf(const layout::CircuitId& id) {
    return "circuit " + id.text();
}

}  // namespace

std::string_view verdictText(Verdict verdict) {
    switch (verdict) {
        case Verdict::meets:
            return "meets";
        case Verdict::breach:
            return "breach";
        case Verdict::caution:
            return "caution";
        case Verdict::cannotTell:
            return "cannot tell";
    }
    return {};
}

std::string_view groupTitle(Group group) {
    switch (group) {
        case Group::space:
            return "Space";
        case Group::conductors:
            return "Conductors";
        case Group::connections:
            return "Connections";
        case Group::tapsAndProtection:
            return "Taps and protection";
        case Group::bonding:
            return "Bonding";
        case Group::identification:
            return "Identification";
    }
    return {};
}

std::string_view checkName(Check check) {
    return rowOf(check).name;
}

std::string_view checkTitle(Check check) {
    return rowOf(check).title;
}

Group groupOf(Check check) {
    return rowOf(check).group;
}

std::string_view whyNotConcerned(Check check) {
    return rowOf(check).whyNot;
}

std::span<const Section> sectionsOf(Check check) {
    return rowOf(check).sections();
}

const std::vector<Check>& allChecks() {
    static const std::vector<Check> kAll = [] {
        std::vector<Check> all;
        for (const Row& row : kRows) {
            all.push_back(row.check);
        }
        return all;
    }();
    return kAll;
}

std::string toText(const Quantity& quantity) {
    switch (quantity.unit) {
        case Quantity::Unit::inches:
            return units::formatDecimal(quantity.value, 3) + " in";
        case Quantity::Unit::squareInches:
            return units::formatDecimal(quantity.value, 3) + " sq in";
        case Quantity::Unit::percent:
            return units::formatDecimal(quantity.value, 2) + " %";
        case Quantity::Unit::count:
            return units::formatDecimal(quantity.value, 0);
        case Quantity::Unit::degrees:
            return units::formatDecimal(quantity.value, 1) + "°";
        case Quantity::Unit::amperes:
            return units::formatDecimal(quantity.value, 1) + " A";
        case Quantity::Unit::volts:
            return units::formatDecimal(quantity.value, 0) + " V";
        case Quantity::Unit::kiloamperes:
            return units::formatDecimal(quantity.value, 1) + " kA";
        case Quantity::Unit::poundsForce:
            return units::formatDecimal(quantity.value, 1) + " lbf";
        case Quantity::Unit::poundsForcePerFoot:
            return units::formatDecimal(quantity.value, 0) + " lbf/ft";
    }
    return {};
}

std::string subjectText(const Subject& subject) {
    return std::visit([](const auto& id) { return nameOf(id); }, subject);
}

namespace {

/// About as many findings as there will be: one a unit. Findings are large, and to move them all
/// each time there is no more room costs more than room that stays empty.
std::size_t roughCount(const geometry::BuiltLayout& built, const std::vector<Check>& which) {
    std::size_t units = 0;
    for (const Check check : which) {
        for (const Section& section : sectionsOf(check)) {
            units += countOf(section.unit, built);
        }
    }
    return units;
}

}  // namespace

std::size_t countOf(Unit unit, const geometry::BuiltLayout& built) {
    switch (unit) {
        case Unit::gutter:
            return 1;
        case Unit::conductor:
            return built.conductors.size();
        case Unit::circuit:
            return built.layout.circuits.size();
        case Unit::entry:
            return built.entries.size();
        case Unit::block:
            return built.blocks.size();
    }
    return 0;
}

void runSection(std::vector<Finding>& findings,
                const Section& section,
                const geometry::BuiltLayout& built,
                const Facts& facts) {
    const std::size_t units = countOf(section.unit, built);
    for (std::size_t i = 0; i < units; ++i) {
        section.find(findings, built, facts, i);
    }
}

std::vector<Finding> runChecks(const geometry::BuiltLayout& built,
                               const Facts& facts,
                               const std::vector<Check>& which) {
    std::vector<Finding> all;
    all.reserve(roughCount(built, which));
    for (const Check check : which) {
        for (const Section& section : sectionsOf(check)) {
            runSection(all, section, built, facts);
        }
    }
    return all;
}

std::vector<Finding> runChecks(const geometry::BuiltLayout& built,
                               const std::vector<Check>& which) {
    return runChecks(built, factsOf(built), which);
}

std::vector<Finding> checkAll(const geometry::BuiltLayout& built) {
    return runChecks(built, allChecks());
}

std::vector<Check> notConcerned(const std::vector<Check>& asked,
                                const std::vector<Finding>& findings) {
    std::vector<Check> silent;
    std::copy_if(asked.begin(), asked.end(), std::back_inserter(silent), [&](Check check) {
        return std::none_of(findings.begin(), findings.end(), [&](const Finding& finding) {
            return finding.check == check;
        });
    });
    return silent;
}

Tally tally(const std::vector<Finding>& findings) {
    Tally counts;
    for (const Finding& finding : findings) {
        switch (finding.verdict) {
            case Verdict::meets:
                ++counts.meets;
                break;
            case Verdict::breach:
                ++counts.breach;
                break;
            case Verdict::caution:
                ++counts.caution;
                break;
            case Verdict::cannotTell:
                ++counts.cannotTell;
                break;
        }
    }
    return counts;
}

}  // namespace gw::checks
