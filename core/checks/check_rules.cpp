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
    switch (check) {
        case Check::conductorFill:
            return {Rule::conductorFill, Rule::spliceFill};
        case Check::spliceFill:
            return {Rule::spliceFill};
        case Check::entryBendingSpace:
            return {Rule::deflectionSpace};
        case Check::terminalBendingSpace:
            return {Rule::terminalSpace, Rule::terminalSpaceOpposite, Rule::blocksBendingSpace};
        case Check::clearance:
        case Check::bendRadius:
            return {};
        case Check::ampacity:
            return {Rule::ampacity,
                    Rule::adjustmentThreshold,
                    Rule::adjustmentFactors,
                    Rule::ambientFactors,
                    Rule::terminalTemperature,
                    Rule::nextSizeUp,
                    Rule::smallConductors,
                    Rule::tapNoNextSizeUp,
                    Rule::serviceOverload};
        case Check::parallelSets:
            return {Rule::parallelSize, Rule::parallelSameness};
        case Check::racewayFill:
            return {Rule::racewayFill, Rule::nippleFill};
        case Check::circuitTogether:
            return {Rule::circuitTogether, Rule::induction};
        case Check::portSuitsConductor:
            return {Rule::listingAndInstructions,
                    Rule::oneConductorPerTerminal,
                    Rule::dissimilarMetals};
        case Check::exposedCopper:
            return {Rule::splicesInsulated, Rule::listingAndInstructions};
        case Check::joints:
            return {Rule::tapsJoinWholeSet, Rule::splicesInsulated};
        case Check::screwReach:
            return {Rule::splicesAccessible, Rule::blocksUnobstructed};
        case Check::torqueKnown:
            return {Rule::torque};
        case Check::location:
            return {Rule::listingAndInstructions,
                    Rule::wetInsulation,
                    Rule::wetRaceway,
                    Rule::directBurial};
        case Check::tapRule:
            return {Rule::taps,
                    Rule::tapDefinition,
                    Rule::tapFromTap,
                    Rule::tapNoNextSizeUp,
                    Rule::tenFootTap,
                    Rule::twentyFiveFootTap,
                    Rule::highBayTap,
                    Rule::outsideTap};
        case Check::serviceDisconnects:
            return {Rule::disconnectCount};
        case Check::serviceApart:
            return {Rule::serviceConductorsApart};
        case Check::insulatingBushing:
            return {Rule::insulatingBushing};
        case Check::tapLabels:
            return {Rule::tapsLabelled};
    }
    return {};
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
