#include "checks/finding.h"

#include <array>

#include "base/contract.h"
#include "units/length.h"

namespace gw::checks {
namespace {

/// One row a check: its names and its function. In the order people read the findings.
struct Row {
    Check check;
    std::string_view name;
    std::string_view title;
    CheckFunction function;
};

constexpr auto kRows = std::to_array<Row>({
    {Check::conductorFill, "conductor-fill", "Conductor fill", checkConductorFill},
    {Check::spliceFill, "splice-fill", "Splice fill", checkSpliceFill},
    {Check::entryBendingSpace,
     "entry-bending-space",
     "Bending space at entries",
     checkEntryBendingSpace},
    {Check::terminalBendingSpace,
     "terminal-bending-space",
     "Bending space at ports",
     checkTerminalBendingSpace},
    {Check::bendRadius, "bend-radius", "Bend radius", checkBendRadius},
    {Check::exposedCopper, "exposed-copper", "Exposed copper", checkExposedCopper},
    {Check::portSuitsConductor,
     "port-suits-conductor",
     "Port suits conductor",
     checkPortSuitsConductor},
    {Check::joints, "joints", "Joints", checkJoints},
    {Check::clearance, "clearance", "Clearance", checkClearance},
    {Check::location, "location", "Location", checkLocation},
    {Check::racewayFill, "raceway-fill", "Raceway fill", checkRacewayFill},
    {Check::insulatingBushing,
     "insulating-bushing",
     "Insulating bushings",
     checkInsulatingBushing},
    {Check::circuitTogether, "circuit-together", "Circuits together", checkCircuitTogether},
    {Check::serviceApart, "service-apart", "Service apart", checkServiceApart},
    {Check::screwReach, "screw-reach", "Screws within reach", checkScrewReach},
    {Check::parallelSets, "parallel-sets", "Parallel sets", checkParallelSets},
    {Check::torqueKnown, "torque-known", "Torque stated", checkTorqueKnown},
    {Check::tapLabels, "tap-labels", "Tap labels", checkTapLabels},
    {Check::ampacity, "ampacity", "Ampacity", checkAmpacity},
    {Check::tapRule, "tap-rule", "Tap rules", checkTapRule},
    {Check::serviceDisconnects,
     "service-disconnects",
     "Service disconnects",
     checkServiceDisconnects},
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

std::string_view checkName(Check check) {
    return rowOf(check).name;
}

std::string_view checkTitle(Check check) {
    return rowOf(check).title;
}

CheckFunction functionOf(Check check) {
    return rowOf(check).function;
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
    }
    return {};
}

std::string subjectText(const Subject& subject) {
    return std::visit([](const auto& id) { return nameOf(id); }, subject);
}

std::vector<Finding> checkAll(const geometry::BuiltLayout& built) {
    std::vector<Finding> all;
    for (const Row& row : kRows) {
        auto found = row.function(built);
        all.insert(all.end(),
                   std::make_move_iterator(found.begin()),
                   std::make_move_iterator(found.end()));
    }
    return all;
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
