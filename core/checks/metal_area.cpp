#include "checks/metal_area.h"

#include <algorithm>

#include "checks/support.h"
#include "standards/tables.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;

UngroundedArea areaOf(const BuiltLayout& built,
                      const std::vector<std::size_t>& conductors,
                      Phase phase) {
    UngroundedArea area;
    area.phase = phase;
    for (const std::size_t i : conductors) {
        const auto& conductor = built.layout.conductors[i];
        if (conductor.phase != phase) {
            continue;
        }
        ++area.conductors;
        area.circularMils += conductor.size.circularMils();
        area.metal = area.metal ? area.metal : conductor.metal;
        if (!conductor.metal) {
            area.missing.push_back("metal of " + conductorName(built, i));
        }
    }
    return area;
}

/// "750 kcmil in 3 conductors of phase A".
std::string areaText(const UngroundedArea& area) {
    constexpr double kMilsPerKcmil = 1000.0;
    return units::formatDecimal(area.circularMils / kMilsPerKcmil, 1) + " kcmil in " +
           counted(area.conductors, "conductor", "conductors") + " of phase " +
           std::string(layout::phaseText(area.phase));
}

}  // namespace

std::optional<UngroundedArea> ungroundedArea(const BuiltLayout& built,
                                             const std::vector<std::size_t>& conductors) {
    std::optional<UngroundedArea> largest;
    for (const Phase phase : {Phase::a, Phase::b, Phase::c}) {
        auto area = areaOf(built, conductors, phase);
        if (area.conductors > 0 && (!largest || area.circularMils > largest->circularMils)) {
            largest = std::move(area);
        }
    }
    return largest;
}

void judgeJumper(Finding& finding,
                 const Jumper& jumper,
                 const UngroundedArea& area,
                 standards::Edition edition) {
    finding.verdict = Verdict::cannotTell;
    finding.missing = area.missing;
    if (!area.missing.empty()) {
        return;
    }
    const auto needed =
        standards::bondingJumper(area.circularMils, given(area.metal), jumper.metal, edition);
    if (!needed) {
        finding.citation = needed.error().asked;
        finding.missing = {"conductors and jumper of the same metal: " + needed.error().why};
        return;
    }
    finding.citation = needed->source;
    // Beyond the table the share of the area itself is asked, and the jumper is of a standard size.
    const bool enough = jumper.size.circularMils() >= needed->value.circularMils;
    finding.verdict = enough ? Verdict::meets : Verdict::breach;
}

std::string neededText(const UngroundedArea& area,
                       standards::Metal jumper,
                       const BuiltLayout& built) {
    const auto needed =
        area.metal
            ? standards::bondingJumper(area.circularMils, *area.metal, jumper, built.layout.edition)
            : tl::unexpected(standards::NoValue{});
    const std::string size = !needed              ? "how much"
                             : needed->value.size ? needed->value.size->text()
                                                  : "more than 2000 kcmil";
    return size + " is needed" + (needed ? "" : " cannot be told") + " for " + areaText(area);
}

}  // namespace gw::checks
