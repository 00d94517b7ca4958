#include <algorithm>
#include <array>
#include <string>
#include <tuple>

#include "checks/springs.h"
#include "checks/support.h"
#include "checks/units.h"

/// How hard bent conductors may push on the cover: an estimate, and never more than a caution.
///
/// Where bent conductors would spring out of the gutter, the cover presses them back.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;

/// lbf. What a standing person holds with arms stretched out (110 N, a published table of upper
/// force limits); as the limit for a foot of cover a judgement.
constexpr double kEasilyHeld = 24.0;
/// inches of cover that one pair of screws holds: a listed gutter has its cover fastened at most 12
/// in apart.
constexpr double kStretch = 12.0;

// ---- what the cover has to hold -------------------------------------------------------------

/// The pushes in one stretch of the cover.
struct Stretch {
    std::vector<Spring> springs;  ///< in order of x
    Band push;
};

/// Of springs along the gutter: which comes first.
bool isBefore(const BuiltLayout& built, const Spring& a, const Spring& b) {
    const auto& conductors = built.layout.conductors;
    return std::tie(a.at.x, conductors[a.conductor].id) <
           std::tie(b.at.x, conductors[b.conductor].id);
}

/// Those that would stand out, in order along the gutter.
std::vector<Spring> proudSprings(const BuiltLayout& built, const Springs& all) {
    std::vector<Spring> springs;
    for (const BentConductor& one : all) {
        if (one.hardest && one.hardest->proud > 0.0) {
            springs.push_back(*one.hardest);
        }
    }
    std::sort(springs.begin(), springs.end(), [&](const Spring& a, const Spring& b) {
        return isBefore(built, a, b);
    });
    return springs;
}

/// The stretch that begins at a spring and holds what lies within it.
Stretch stretchFrom(const std::vector<Spring>& springs, std::size_t first) {
    Stretch stretch;
    for (std::size_t i = first;
         i < springs.size() && springs[i].at.x - springs[first].at.x <= kStretch;
         ++i) {
        stretch.springs.push_back(springs[i]);
        stretch.push.least += springs[i].push.least;
        stretch.push.greatest += springs[i].push.greatest;
    }
    return stretch;
}

Stretch hardestStretch(const std::vector<Spring>& springs) {
    Stretch hardest;
    for (std::size_t i = 0; i < springs.size(); ++i) {
        Stretch one = stretchFrom(springs, i);
        if (one.push.greatest > hardest.push.greatest) {
            hardest = std::move(one);
        }
    }
    return hardest;
}

Quantity poundsForce(double value) {
    return {value, Quantity::Unit::poundsForce};
}

std::string pushText(const Band& push) {
    return units::formatDecimal(push.least, 1) + " to " + toText(poundsForce(push.greatest));
}

bool isEasilyHeld(double push) {
    return holds(poundsForce(push), poundsForce(kEasilyHeld), Bound::atMost);
}

/// The one that comes nearest to the cover; nullptr where none springs toward it.
const Spring* nearestOf(const BuiltLayout& built, const Springs& all) {
    const Spring* nearest = nullptr;
    for (const BentConductor& one : all) {
        if (!one.hardest) {
            continue;
        }
        const Spring& spring = *one.hardest;
        if (nearest == nullptr || spring.proud > nearest->proud ||
            (spring.proud == nearest->proud && isBefore(built, spring, *nearest))) {
            nearest = &spring;
        }
    }
    return nearest;
}

std::string workingNone(const BuiltLayout& built, const Springs& all) {
    const Spring* nearest = nearestOf(built, all);
    if (nearest == nullptr) {
        return "no bent conductor tends toward the cover";
    }
    return "no bent conductor springs out as far as the cover; " +
           conductorName(built, nearest->conductor) + " comes nearest, to " +
           inText(-nearest->proud) + " below it";
}

std::string advice(const Band& push) {
    if (isEasilyHeld(push.greatest)) {
        return {};
    }
    return isEasilyHeld(push.least) ? ": if it will not close easily, strap the bends"
                                    : ": strap the bends";
}

std::string workingOf(const BuiltLayout& built, const Stretch& hardest) {
    const std::size_t many = hardest.springs.size();
    const std::string name = conductorName(built, hardest.springs.front().conductor);
    const std::string who =
        many == 1 ? "bent " + name : std::to_string(many) + " bent conductors such as " + name;
    return who + " may spring out to the cover and push with an estimated " +
           pushText(hardest.push) + " on 12 in of it, where " + toText(poundsForce(kEasilyHeld)) +
           " is easily held" + advice(hardest.push);
}

standards::Citation estimate() {
    return {{},
            {},
            standards::Basis::commonPractice,
            "an estimate from how bends spring open and beams bend; no rule sets a limit"};
}

/// On the gutter: it is its cover that has to be held.
Finding findingFor(const BuiltLayout& built, const Springs& all) {
    const Stretch hardest = hardestStretch(proudSprings(built, all));
    Finding finding;
    finding.check = Check::coverPush;
    finding.citation = estimate();
    judge(finding, poundsForce(hardest.push.greatest), poundsForce(kEasilyHeld), Bound::atMost);
    finding.verdict = finding.verdict == Verdict::meets ? Verdict::meets : Verdict::caution;
    if (hardest.springs.empty()) {
        finding.working = sentence(workingNone(built, all));
        return finding;
    }
    finding.working = sentence(workingOf(built, hardest));
    finding.place = hardest.springs.front().at;
    finding.interval = {hardest.springs.front().at.x, hardest.springs.back().at.x};
    return finding;
}

void findPush(std::vector<Finding>& findings,
              const BuiltLayout& built,
              const Facts& facts,
              std::size_t /*gutter*/) {
    const bool anyBent = std::any_of(facts.springs.begin(),
                                     facts.springs.end(),
                                     [](const BentConductor& one) { return one.bent; });
    if (anyBent) {
        findings.push_back(findingFor(built, facts.springs));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kSprings, findPush}});

}  // namespace

std::span<const Section> coverPushSections() {
    return kSections;
}

std::vector<Finding> checkCoverPush(const geometry::BuiltLayout& built) {
    return runChecks(built, {Check::coverPush});
}

}  // namespace gw::checks
