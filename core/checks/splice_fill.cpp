#include <array>

#include "base/tolerance.h"
#include "checks/fill_support.h"
#include "checks/support.h"
#include "checks/units.h"

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

/// A breach that is none by what is certain alone.
bool isDoubtful(const Finding& finding, const geometry::BuiltLayout& built, const Quantity& limit) {
    if (finding.verdict != Verdict::breach) {
        return false;
    }
    const Quantity certain = percent(certainFill(built).worstSplice().fraction * 100.0);
    return holds(certain, limit, Bound::atMost);
}

void findFill(std::vector<Finding>& findings,
              const geometry::BuiltLayout& built,
              const Facts& /*facts*/,
              std::size_t /*gutter*/) {
    const auto worst = built.fill.worstSplice();
    if (worst.area <= 0.0) {
        return;
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
    if (isDoubtful(finding, built, limit)) {
        excuseAssumed(finding, built, assumed);
    }
    findings.push_back(std::move(finding));
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kFill, findFill}});

}  // namespace

std::span<const Section> spliceFillSections() {
    return kSections;
}

std::vector<Finding> checkSpliceFill(const geometry::BuiltLayout& built) {
    return runChecks(built, {Check::spliceFill});
}

}  // namespace gw::checks
