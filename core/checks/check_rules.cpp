#include "checks/check_rules.h"

#include <algorithm>
#include <array>

#include "base/contract.h"
#include "standards/tables.h"

namespace gw::checks {
namespace {

using standards::Citation;
using standards::Edition;
using standards::GutterArticle;
using standards::Rule;

struct Row {
    Check check;
    Rule rule;
};

/// In the order of allChecks(); within a check the rule its findings cite most first.
// clang-format off
constexpr auto kRows = std::to_array<Row>({
    {Check::conductorFill,        Rule::conductorFill},
    {Check::conductorFill,        Rule::spliceFill},
    {Check::spliceFill,           Rule::spliceFill},
    {Check::entryBendingSpace,    Rule::deflectionSpace},
    {Check::terminalBendingSpace, Rule::terminalSpace},
    {Check::terminalBendingSpace, Rule::terminalSpaceOpposite},
    {Check::terminalBendingSpace, Rule::blocksBendingSpace},
    {Check::pullDistances,        Rule::pullDistances},
    {Check::supportSpacing,       Rule::support},
    {Check::lengthBeyond,         Rule::gutterLength},
    {Check::ampacity,             Rule::ampacity},
    {Check::ampacity,             Rule::adjustmentThreshold},
    {Check::ampacity,             Rule::adjustmentFactors},
    {Check::ampacity,             Rule::ambientFactors},
    {Check::ampacity,             Rule::terminalTemperature},
    {Check::ampacity,             Rule::nextSizeUp},
    {Check::ampacity,             Rule::smallConductors},
    {Check::ampacity,             Rule::tapNoNextSizeUp},
    {Check::ampacity,             Rule::serviceOverload},
    {Check::parallelSets,         Rule::parallelSize},
    {Check::parallelSets,         Rule::parallelSameness},
    {Check::parallelSets,         Rule::parallelGrouping},
    {Check::racewayFill,          Rule::racewayFill},
    {Check::racewayFill,          Rule::nippleFill},
    {Check::circuitTogether,      Rule::circuitTogether},
    {Check::circuitTogether,      Rule::induction},
    {Check::circuitTogether,      Rule::inductionOpenings},
    {Check::largestConductor,     Rule::largestConductor},
    {Check::mixedVoltages,        Rule::mixedVoltages},
    {Check::portSuitsConductor,   Rule::listingAndInstructions},
    {Check::portSuitsConductor,   Rule::oneConductorPerTerminal},
    {Check::portSuitsConductor,   Rule::dissimilarMetals},
    {Check::exposedCopper,        Rule::splicesInsulated},
    {Check::exposedCopper,        Rule::listingAndInstructions},
    {Check::joints,               Rule::tapsJoinWholeSet},
    {Check::joints,               Rule::splicesInsulated},
    {Check::joints,               Rule::neutralNotLoadSide},
    {Check::screwReach,           Rule::splicesAccessible},
    {Check::screwReach,           Rule::blocksUnobstructed},
    {Check::torqueKnown,          Rule::torque},
    {Check::connectorListing,     Rule::listingAndInstructions},
    {Check::connectorListing,     Rule::lineSideMarking},
    {Check::connectorListing,     Rule::shortCircuitRating},
    {Check::connectorListing,     Rule::blocksEnclosure},
    {Check::connectorListing,     Rule::blocksLiveParts},
    {Check::connectorListing,     Rule::splicesInsulated},
    {Check::location,             Rule::listingAndInstructions},
    {Check::location,             Rule::wetInsulation},
    {Check::location,             Rule::wetRaceway},
    {Check::location,             Rule::directBurial},
    {Check::tapRule,              Rule::taps},
    {Check::tapRule,              Rule::tapDefinition},
    {Check::tapRule,              Rule::tapFromTap},
    {Check::tapRule,              Rule::tapNoNextSizeUp},
    {Check::tapRule,              Rule::tenFootTap},
    {Check::tapRule,              Rule::twentyFiveFootTap},
    {Check::tapRule,              Rule::highBayTap},
    {Check::tapRule,              Rule::outsideTap},
    {Check::serviceDisconnects,   Rule::disconnectCount},
    {Check::serviceApart,         Rule::serviceConductorsApart},
    {Check::insulatingBushing,    Rule::insulatingBushing},
    {Check::groundingSize,        Rule::equipmentGrounding},
    {Check::groundingSize,        Rule::equipmentGroundingParallel},
    {Check::groundingSize,        Rule::equipmentGroundingTaps},
    {Check::groundingSize,        Rule::lineSideJumper},
    {Check::groundingSize,        Rule::mainBondingJumper},
    {Check::serviceBonding,       Rule::serviceBonding},
    {Check::colours,              Rule::ungroundedIdentification},
    {Check::colours,              Rule::groundedIdentification},
    {Check::colours,              Rule::groundedBySystem},
    {Check::colours,              Rule::groundingIdentification},
    {Check::colours,              Rule::highLeg},
    {Check::tapLabels,            Rule::tapsLabelled},
});
// clang-format on

constexpr std::array kArticles = {
    GutterArticle::auxiliaryGutter, GutterArticle::metalWireway, GutterArticle::nonmetallicWireway};

void addOnce(std::vector<Citation>& all, const Citation& one) {
    const bool known = std::any_of(all.begin(), all.end(), [&](const Citation& other) {
        return other.standard == one.standard && other.section == one.section;
    });
    if (!known) {
        all.push_back(one);
    }
}

/// Of conductors in general: the thickness steps its multiple, not its source.
Citation trainingRadius(Edition edition) {
    const auto found = standards::bendRadiusMultiple(
        units::Inches::of(1.0), units::Inches::of(0.0), standards::BendRule::training, edition);
    CONTRACT(found.has_value());
    return found->source;
}

}  // namespace

std::vector<Rule> rulesOf(Check check) {
    std::vector<Rule> rules;
    for (const Row& row : kRows) {
        if (row.check == check) {
            rules.push_back(row.rule);
        }
    }
    return rules;
}

std::vector<Citation> sourcesOf(Check check, Edition edition) {
    std::vector<Citation> sources;
    for (const Rule rule : rulesOf(check)) {
        for (const GutterArticle article : kArticles) {
            const Citation one = standards::section(rule, edition, article);
            if (!one.section.empty()) {
                addOnce(sources, one);
            }
        }
    }
    if (check == Check::bendRadius) {
        sources.push_back(trainingRadius(edition));
    }
    return sources;
}

}  // namespace gw::checks
