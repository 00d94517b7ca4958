#include <algorithm>
#include <cmath>

#include "base/contract.h"
#include "base/tolerance.h"
#include "checks/support.h"
#include "standards/tables.h"

/// No bend tighter than the training radius, every bend fits on its legs, and no kink where a
/// conductor enters or meets a port.
namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::PathFault;
using Bend = geometry::BuiltPath::Bend;

/// The insulation of all 600 V building wire up to 2000 kcmil is no thicker (from memory), which is
/// the training rule's first group.
constexpr auto kThinInsulation = units::Inches::of(0.156);

/// The training rule steps at 1 in; within this fraction of it a maker's difference moves the
/// conductor to the other row. Source: engineering judgement, real diameters differ by a few
/// percent.
constexpr double kNearStep = 0.03;
constexpr double kStep = 1.0;

constexpr std::string_view kNote =
    "a training radius for installed cable; the code has no number for 1000 V or less";

standards::Cited<double> multipleFor(const BuiltConductor& conductor, standards::Edition edition) {
    auto rule = standards::bendRadiusMultiple(
        conductor.diameter, kThinInsulation, standards::BendRule::training, edition);
    CONTRACT(rule.has_value());
    rule->source.note = kNote;
    return *rule;
}

/// Radius at the inner surface; none where the corner is sharper than the conductor is thick.
double innerRadius(const BuiltConductor& conductor, const Bend& bend) {
    return std::max(0.0, bend.radius - conductor.radius());
}

const Bend* tightestOf(const BuiltConductor& conductor) {
    const Bend* tightest = nullptr;
    for (const Bend& bend : conductor.built.bends) {
        if (bend.turn > kSameDirection && (tightest == nullptr || bend.radius < tightest->radius)) {
            tightest = &bend;
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
    if (std::abs(diameter - kStep) > kNearStep * kStep) {
        return {};
    }
    return "; its diameter is within 3 % of 1 in, where the rule steps from 4 to 5 diameters: "
           "measure the conductor";
}

Finding startOf(const BuiltLayout& built, std::size_t index) {
    Finding finding;
    finding.check = Check::bendRadius;
    finding.subjects = {built.layout.conductors[index].id};
    finding.citation = multipleFor(built.conductors[index], built.layout.edition).source;
    return finding;
}

std::string workingOf(const BuiltLayout& built, std::size_t index, const Finding& finding) {
    const auto& conductor = built.conductors[index];
    const auto [measured, limit] =
        inTexts(given(finding.measured).value, given(finding.limit).value);
    const double multiple = multipleFor(conductor, built.layout.edition).value;
    return sentence(
        "the tightest of " + counted(countTurns(conductor), "bend", "bends") + " of " +
        conductorName(built, index) + " has " + measured + " at its inner surface, and " + limit +
        " is needed, " + units::formatDecimal(multiple, 0) + " times the diameter of " +
        inText(conductor.diameter.in()) +
        (conductor.assumed.empty()
             ? std::string()
             : " (the largest published, as its " + conductor.assumed + " is not stated)") +
        nearStepClause(conductor));
}

Finding tightestFinding(const BuiltLayout& built, std::size_t index) {
    const auto& conductor = built.conductors[index];
    Finding finding = startOf(built, index);
    const Bend* bend = tightestOf(conductor);
    if (bend == nullptr) {
        finding.place = conductor.built.path.pointAt(conductor.built.path.length().in() / 2.0);
        finding.working = sentence(conductorName(built, index) + " runs straight");
        return finding;
    }
    const double multiple = multipleFor(conductor, built.layout.edition).value;
    judge(finding,
          inches(innerRadius(conductor, *bend)),
          inches(multiple * conductor.diameter.in()),
          Bound::atLeast);
    finding.place = conductor.built.path.pointAt(bend->start + bend->radius * bend->turn / 2.0);
    finding.working = workingOf(built, index, finding);
    // The largest diameter was taken: a radius that suffices for it suffices for any.
    if (finding.verdict == Verdict::breach && !conductor.assumed.empty()) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {conductor.assumed + " of " + conductorName(built, index)};
    }
    return finding;
}

std::string faultText(const PathFault& fault) {
    switch (fault.kind) {
        case PathFault::Kind::legTooShort: {
            const auto [available, needed] = inTexts(fault.available.in(), fault.needed.in());
            return "has " + available + " of straight for its bends on leg " +
                   std::to_string(fault.index + 1) + " where they need " + needed;
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

}  // namespace

std::vector<Finding> checkBendRadius(const BuiltLayout& built) {
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& conductor = built.conductors[i];
        findings.push_back(tightestFinding(built, i));
        for (const PathFault& fault : conductor.built.faults) {
            findings.push_back(faultFinding(built, i, fault));
        }
        for (const BuiltEnd* end : {&conductor.from, &conductor.to}) {
            if (end->kink > kLargestKink) {
                findings.push_back(kinkFinding(built, i, *end));
            }
        }
    }
    return findings;
}

}  // namespace gw::checks
