#include <algorithm>
#include <array>
#include <cmath>

#include "base/contract.h"
#include "base/tolerance.h"
#include "checks/diameters.h"
#include "checks/least_radius.h"
#include "checks/support.h"
#include "checks/units.h"

/// No bend tighter than the training radius, every bend fits on its legs, and no kink where a
/// conductor enters or meets a port.
namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::PathFault;
using Bend = geometry::BuiltPath::Bend;

/// The training rule steps at 1 in; within this fraction of it a maker's difference moves the
/// conductor to the other row. Source: engineering judgement, real diameters differ by a few
/// percent.
constexpr double kNearStep = 0.03;
constexpr double kStep = 1.0;

/// Radius at the inner surface; none where the corner is sharper than the conductor is thick.
double innerRadius(double centreline, double diameter) {
    return std::max(0.0, centreline - diameter / 2.0);
}

/// One way to apply the rule to a bend.
struct Applied {
    double inner = 0.0;  ///< inches, what the bend has
    double least = 0.0;  ///< inches, what it needs
    double multiple = 0.0;
    double diameter = 0.0;
    bool meets() const { return atLeast(inner, least); }
};

Applied applied(double radius, double diameter, double covering, const BuiltLayout& built) {
    const auto insulation = units::Inches::of(std::max(0.0, covering));
    const double multiple =
        bendMultiple(units::Inches::of(diameter), insulation, built.layout).value;
    return {innerRadius(radius, diameter), multiple * diameter, multiple, diameter};
}

/// The rule at its mildest and at its hardest for what is not known.
struct Range {
    Applied mildest;
    Applied hardest;
};

/// Hardest: all that covers the metal, jacket and all, taken for insulation. Mildest: the thin
/// group; where the diameter is assumed, the metal alone.
Range rangeOf(const BuiltLayout& built, std::size_t index, double radius) {
    const auto& conductor = built.conductors[index];
    const auto edition = built.layout.edition;
    const double diameter = conductor.diameter.in();
    const double bare = leastBareDiameter(built.layout.conductors[index], edition);
    return {conductor.assumed.empty() ? applied(radius, diameter, kThinInsulation.in(), built)
                                      : applied(radius, bare, 0.0, built),
            applied(radius, diameter, (diameter - bare) / 2.0, built)};
}

struct Tightest {
    const Bend* bend = nullptr;
    double radius = 0.0;  ///< of the centreline, as the layout asks for it
};

/// By the radii asked for: a bend that was shrunk because it does not fit is told as that.
Tightest tightestOf(const BuiltLayout& built, std::size_t index) {
    Tightest tightest;
    const auto& bends = built.conductors[index].built.bends;
    const auto& corners = built.layout.conductors[index].corners;
    CONTRACT(bends.size() == corners.size());
    for (std::size_t i = 0; i < bends.size(); ++i) {
        const double radius = corners[i].radius.in();
        if (bends[i].turn > kSameDirection &&
            (tightest.bend == nullptr || radius < tightest.radius)) {
            tightest = {&bends[i], radius};
        }
    }
    return tightest;
}

std::size_t countTurns(const BuiltConductor& conductor) {
    const auto& bends = conductor.built.bends;
    return static_cast<std::size_t>(std::count_if(
        bends.begin(), bends.end(), [](const Bend& bend) { return bend.turn > kSameDirection; }));
}

std::string nearStepClause(const BuiltConductor& conductor) {
    const double diameter = conductor.diameter.in();
    return std::abs(diameter - kStep) > kNearStep * kStep
               ? std::string()
               : "; the rule steps to 5 diameters over 1 in: measure the conductor";
}

Finding startOf(const BuiltLayout& built, std::size_t index) {
    Finding finding;
    finding.check = Check::bendRadius;
    finding.subjects = {built.layout.conductors[index].id};
    finding.citation =
        bendMultiple(built.conductors[index].diameter, kThinInsulation, built.layout).source;
    return finding;
}

std::string workingOf(const BuiltLayout& built, std::size_t index, const Applied& rule) {
    const auto& conductor = built.conductors[index];
    const auto [measured, limit] = inTexts(rule.inner, rule.least);
    const bool metalAlone = rule.diameter < conductor.diameter.in();
    return sentence("the tightest of " + counted(countTurns(conductor), "bend", "bends") + " of " +
                    conductorName(built, index) + " has " + measured + " inside and needs " +
                    limit + ", " + units::formatDecimal(rule.multiple, 0) + " × " +
                    inText(rule.diameter) +
                    (metalAlone ? " of bare metal alone"
                     : conductor.assumed.empty()
                         ? std::string()
                         : " (the largest published: " + conductor.assumed + " not stated)") +
                    nearStepClause(conductor));
}

/// The verdict that holds at the mildest and at the hardest.
Applied judgeRadius(Finding& finding, const BuiltLayout& built, std::size_t index, double radius) {
    const auto& conductor = built.conductors[index];
    const auto [mildest, hardest] = rangeOf(built, index, radius);
    const Applied shown = mildest.meets() ? hardest : mildest;
    judge(finding, inches(shown.inner), inches(shown.least), Bound::atLeast);
    if (mildest.meets() && !hardest.meets()) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {conductor.assumed.empty()
                               ? "insulation thickness of " + conductorName(built, index) +
                                     " without its covering"
                               : conductor.assumed + " of " + conductorName(built, index)};
    }
    return shown;
}

/// Nothing where the radius asked for would do and only does not fit: that is told by itself.
void tightestFinding(std::vector<Finding>& findings, const BuiltLayout& built, std::size_t index) {
    const auto& conductor = built.conductors[index];
    const Tightest tightest = tightestOf(built, index);
    Finding finding = startOf(built, index);
    if (tightest.bend == nullptr) {
        finding.place = conductor.built.path.pointAt(conductor.built.path.length().in() / 2.0);
        finding.working =
            sentence(conductorName(built, index) + " runs straight, so no radius is asked");
        findings.push_back(std::move(finding));
        return;
    }
    const Applied rule = judgeRadius(finding, built, index, tightest.radius);
    if (finding.verdict == Verdict::meets && !conductor.built.faults.empty()) {
        return;
    }
    const Bend& bend = *tightest.bend;
    finding.place = conductor.built.path.pointAt(bend.start + bend.radius * bend.turn / 2.0);
    finding.working = workingOf(built, index, rule);
    findings.push_back(std::move(finding));
}

/// Legs next to each other that are too short for the bends they share: one mistake.
struct FaultRun {
    const PathFault* worst = nullptr;
    std::size_t last = 0;
};

std::vector<FaultRun> faultRuns(const BuiltConductor& conductor) {
    std::vector<FaultRun> runs;
    for (const PathFault& fault : conductor.built.faults) {
        const bool isShort = fault.kind == PathFault::Kind::legTooShort;
        const bool follows = isShort && !runs.empty() &&
                             runs.back().worst->kind == PathFault::Kind::legTooShort &&
                             fault.index == runs.back().last + 1;
        if (!follows) {
            runs.push_back({&fault, fault.index});
            continue;
        }
        FaultRun& run = runs.back();
        run.last = fault.index;
        if (fault.needed - fault.available > run.worst->needed - run.worst->available) {
            run.worst = &fault;
        }
    }
    return runs;
}

std::string faultText(const PathFault& fault) {
    switch (fault.kind) {
        case PathFault::Kind::legTooShort: {
            const auto [available, needed] = inTexts(fault.available.in(), fault.needed.in());
            return "has " + available + " on leg " + std::to_string(fault.index + 1) +
                   ", and its bends there need " + needed;
        }
        case PathFault::Kind::turnTooSharp:
            return "turns back on itself at corner " + std::to_string(fault.index + 1);
        case PathFault::Kind::emptyLeg:
            return "has two corners in one place at leg " + std::to_string(fault.index + 1);
    }
    return {};
}

Finding faultFinding(const BuiltLayout& built, std::size_t index, const PathFault& fault) {
    Finding finding = startOf(built, index);
    finding.citation = geometryOnly();
    if (fault.kind == PathFault::Kind::legTooShort) {
        judge(finding, inches(fault.available.in()), inches(fault.needed.in()), Bound::atLeast);
    }
    finding.verdict = Verdict::breach;
    finding.place = fault.at;
    finding.working = sentence(conductorName(built, index) + " " + faultText(fault));
    return finding;
}

std::string endText(const BuiltLayout& built, const BuiltEnd& end) {
    switch (end.kind) {
        case BuiltEnd::Kind::entry:
            return entryName(built, given(end.entry));
        case BuiltEnd::Kind::port:
            return portName(built, given(end.block), given(end.port));
        case BuiltEnd::Kind::spare:
            return "its capped end";
    }
    return {};
}

Finding kinkFinding(const BuiltLayout& built, std::size_t index, const BuiltEnd& end) {
    Finding finding = startOf(built, index);
    finding.citation = {"common practice",
                        "straight at entries and ports",
                        standards::Basis::commonPractice,
                        "no source"};
    judge(finding, degrees(end.kink), degrees(kLargestKink), Bound::atMost);
    finding.place = end.mouth;
    finding.working =
        sentence(conductorName(built, index) + " leaves " + endText(built, end) + " at " +
                 toText(given(finding.measured)) + " to its axis, a bend without a radius; " +
                 toText(given(finding.limit)) + " counts as straight");
    return finding;
}

void ofConductor(std::vector<Finding>& findings,
                 const BuiltLayout& built,
                 const Facts&,
                 std::size_t index) {
    const auto& conductor = built.conductors[index];
    tightestFinding(findings, built, index);
    for (const FaultRun& run : faultRuns(conductor)) {
        findings.push_back(faultFinding(built, index, *run.worst));
    }
    for (const BuiltEnd* end : {&conductor.from, &conductor.to}) {
        if (end->kink > kLargestKink) {
            findings.push_back(kinkFinding(built, index, *end));
        }
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::conductor, reads::kPaths, ofConductor}});

}  // namespace

std::span<const Section> bendRadiusSections() {
    return kSections;
}

std::vector<Finding> checkBendRadius(const BuiltLayout& built) {
    return runChecks(built, {Check::bendRadius});
}

}  // namespace gw::checks
