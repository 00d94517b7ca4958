#include <algorithm>
#include <array>

#include "base/contract.h"
#include "checks/fill_support.h"
#include "checks/support.h"
#include "checks/units.h"
#include "standards/tables.h"

/// The area of all conductors at every plane: once for the planes without a block, once for those
/// with one, where inspectors read the rule in two ways.
namespace gw::checks {
namespace {

using Worst = geometry::FillProfile::Worst;
using FillAtSplice = layout::Readings::FillAtSplice;

bool hasPlane(const geometry::FillProfile& fill, bool withBlock) {
    return std::any_of(fill.slices.begin(), fill.slices.end(), [&](const auto& slice) {
        return (slice.blocks > 0.0) == withBlock;
    });
}

standards::Cited<double> conductorLimit(const geometry::BuiltLayout& built) {
    const auto rule = standards::gutterFillPercent(built.gutter().article, built.layout.edition);
    CONTRACT(rule.has_value());
    return amended(*rule, built.layout.amendments.conductorFillPercent, built);
}

/// The fullest splice total among planes with a block whose conductors alone exceed the limit.
double spliceWhereOver(const geometry::FillProfile& fill, double limitPercent) {
    double worst = 0.0;
    for (const auto& slice : fill.slices) {
        const double conductors = slice.conductors / fill.interior * 100.0;
        if (slice.blocks > 0.0 &&
            !holds(percent(conductors), percent(limitPercent), Bound::atMost)) {
            worst = std::max(worst, slice.splice() / fill.interior * 100.0);
        }
    }
    return worst;
}

Reading readingOf(std::string name, const Quantity& measured, const Quantity& limit, bool chosen) {
    Reading reading;
    reading.name = std::move(name);
    reading.measured = measured;
    reading.limit = limit;
    reading.chosen = chosen;
    const bool fits = holds(measured, limit, Bound::atMost);
    reading.verdict = fits ? Verdict::meets : Verdict::breach;
    reading.sentence =
        sentence(toText(measured) + (fits ? " is within " : " is over ") + toText(limit));
    return reading;
}

/// Both readings beside a block, for whichever conductors the profile counts.
std::vector<Reading> readingsAtSplice(const geometry::BuiltLayout& built,
                                      const geometry::FillProfile& fill) {
    const auto recorded = built.layout.readings.fillAtSplice;
    const double limit = conductorLimit(built).value;
    return {readingOf("the limit for conductors still binds beside a block",
                      percent(fill.worstConductors(true).fraction * 100.0),
                      percent(limit),
                      recorded == FillAtSplice::twentyStillBinds),
            readingOf("the limit for conductors and splices together takes its place",
                      percent(spliceWhereOver(fill, limit)),
                      percent(spliceLimit(built).value),
                      recorded == FillAtSplice::seventyFiveReplaces)};
}

bool isOver(const geometry::BuiltLayout& built, const geometry::FillProfile& fill, bool withBlock) {
    const double taken = fill.worstConductors(withBlock).fraction * 100.0;
    return !holds(percent(taken), percent(conductorLimit(built).value), Bound::atMost);
}

Verdict verdictOf(const geometry::BuiltLayout& built,
                  const geometry::FillProfile& fill,
                  bool withBlock) {
    if (!isOver(built, fill, withBlock)) {
        return Verdict::meets;
    }
    return withBlock ? settle(readingsAtSplice(built, fill)) : Verdict::breach;
}

std::string workingOf(const geometry::BuiltLayout& built,
                      const Worst& worst,
                      bool withBlock,
                      const std::vector<std::size_t>& assumed) {
    const std::string where = withBlock ? "beside a block" : "where there is no block";
    if (worst.area <= 0.0) {
        return sentence("no conductor is cut by any plane " + where +
                        ": 0 % of the inside, where " +
                        toText(percent(conductorLimit(built).value)) + " is allowed");
    }
    return sentence("conductors take " + toText(squareInches(worst.area)) + " of " +
                    toText(squareInches(built.fill.interior)) + " at the fullest plane " + where +
                    ", " + stretchText(worst.from, worst.to) + ", " +
                    toText(percent(worst.fraction * 100.0)) + ", where " +
                    toText(percent(conductorLimit(built).value)) + " is allowed" +
                    assumedClause(built, assumed));
}

Finding findingFor(const geometry::BuiltLayout& built, bool withBlock) {
    const auto rule = conductorLimit(built);
    const Worst worst = built.fill.worstConductors(withBlock);
    Finding finding;
    finding.check = Check::conductorFill;
    finding.citation = rule.source;
    judge(finding, percent(worst.fraction * 100.0), percent(rule.value), Bound::atMost);
    std::vector<std::size_t> assumed;
    if (worst.area > 0.0) {
        placeAt(finding, built, worst.from, worst.to);
        assumed = assumedBetween(built, worst.from, worst.to);
    }
    finding.working = workingOf(built, worst, withBlock, assumed);
    if (withBlock && isOver(built, built.fill, withBlock)) {
        finding.readings = readingsAtSplice(built, built.fill);
    }
    finding.verdict = verdictOf(built, built.fill, withBlock);
    if (finding.verdict != Verdict::meets &&
        finding.verdict != verdictOf(built, certainFill(built), withBlock)) {
        excuseAssumed(finding,
                      built,
                      assumed.empty() ? assumedBetween(built, 0.0, built.fill.length) : assumed);
    }
    return finding;
}

void findFill(std::vector<Finding>& findings,
              const geometry::BuiltLayout& built,
              const Facts& /*facts*/,
              std::size_t /*gutter*/) {
    for (const bool withBlock : {false, true}) {
        if (hasPlane(built.fill, withBlock)) {
            findings.push_back(findingFor(built, withBlock));
        }
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kFill, findFill}});

}  // namespace

std::span<const Section> conductorFillSections() {
    return kSections;
}

std::vector<Finding> checkConductorFill(const geometry::BuiltLayout& built) {
    return runChecks(built, {Check::conductorFill});
}

}  // namespace gw::checks
