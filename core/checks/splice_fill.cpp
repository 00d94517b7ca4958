#include "base/tolerance.h"
#include "checks/fill_support.h"
#include "checks/support.h"

/// Conductors, splices and taps together, at the fullest plane that holds a block.
namespace gw::checks {
namespace {

std::string workingOf(const geometry::BuiltLayout& built,
                      const geometry::FillProfile::Worst& worst,
                      const Quantity& limit,
                      const std::vector<std::size_t>& assumed) {
    return sentence(
        "blocks and the conductors beside them take " + toText(squareInches(worst.area)) + " of " +
        toText(squareInches(built.fill.interior)) + " " + stretchText(worst.from, worst.to) + ", " +
        toText(percent(worst.fraction * 100.0)) + ", where " + toText(limit) + " is allowed" +
        assumedClause(built, assumed));
}

}  // namespace

std::vector<Finding> checkSpliceFill(const geometry::BuiltLayout& built) {
    const auto worst = built.fill.worstSplice();
    if (worst.area <= 0.0) {
        return {};
    }
    const auto rule = spliceLimit(built);
    const Quantity limit = percent(rule.value);
    Finding finding;
    finding.check = Check::spliceFill;
    finding.citation = rule.source;
    judge(finding, percent(worst.fraction * 100.0), limit, Bound::atMost);
    placeAt(finding, built, worst.from, worst.to);
    const auto assumed = assumedBetween(built, worst.from, worst.to);
    finding.working = workingOf(built, worst, limit, assumed);
    const Quantity certain = percent(certainFill(built).worstSplice().fraction * 100.0);
    if (finding.verdict == Verdict::breach && holds(certain, limit, Bound::atMost)) {
        excuseAssumed(finding, built, assumed);
    }
    return {finding};
}

}  // namespace gw::checks
