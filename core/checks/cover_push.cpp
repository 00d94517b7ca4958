#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <limits>

#include "checks/bending_force.h"
#include "checks/support.h"

/// How hard bent conductors may push on the cover: an estimate, and never more than a caution.
///
/// A bend springs open when it is let go. The straight leg beyond it then swings in the bend's
/// plane, away from the middle of the bend, by its length times the angle. Where it swings toward
/// the cover and would stand out of the gutter, the cover presses it back.
namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltLayout;

/// lbf. What a standing person holds with arms stretched out (110 N, a published table of upper
/// force limits); as the limit for a foot of cover a judgement.
constexpr double kEasilyHeld = 24.0;
/// inches of cover that one pair of screws holds: a listed gutter has its cover fastened at most 12
/// in apart.
constexpr double kStretch = 12.0;

constexpr double kNoSupport = std::numeric_limits<double>::infinity();

// ---- where a conductor reaches --------------------------------------------------------------

/// Where the far end of a leg could spring to.
struct Spring {
    std::size_t conductor = 0;
    Vec3 at;
    double proud = 0.0;  ///< inches beyond the cover's plane; negative: short of it
    double free = 0.0;   ///< inches along the conductor to the nearest support
    Band push;           ///< lbf
};

/// Arc lengths at which a port or entry holds the conductor.
std::vector<double> supportsOf(const BuiltConductor& conductor) {
    using Kind = geometry::BuiltEnd::Kind;
    std::vector<double> supports;
    for (const auto* end : {&conductor.from, &conductor.to}) {
        if (end->kind != Kind::spare) {
            supports.push_back(end->mouthAt);
        }
    }
    for (const auto& pass : conductor.passes) {
        supports.push_back(pass.nearAt);
        supports.push_back(pass.farAt);
    }
    return supports;
}

double nearestSupport(const std::vector<double>& supports, double s) {
    double nearest = kNoSupport;
    for (const double support : supports) {
        nearest = std::min(nearest, std::abs(support - s));
    }
    return nearest;
}

/// A straight leg at a bend: from the bend to its far end.
struct Leg {
    double far = 0.0;     ///< arc length of its far end
    double length = 0.0;  ///< inches
    Vec3 swing;           ///< unit: the way its far end goes when the bend opens
};

double endOf(const geometry::BuiltPath::Bend& bend) {
    return bend.start + bend.radius * bend.turn;
}

/// The part of `other` across `along`, unit. REQUIRES that they are not parallel.
Vec3 across(const Vec3& other, const Vec3& along) {
    return unit(other - along * dot(other, along));
}

/// Only those that turn: at a corner that does not, two legs are one.
std::vector<geometry::BuiltPath::Bend> bendsOf(const BuiltConductor& conductor) {
    std::vector<geometry::BuiltPath::Bend> bends;
    std::copy_if(conductor.built.bends.begin(),
                 conductor.built.bends.end(),
                 std::back_inserter(bends),
                 [](const auto& bend) { return bend.radius > 0.0 && bend.turn > 0.0; });
    return bends;
}

/// The two legs at a bend.
std::array<Leg, 2> legsAt(const geometry::Path& path,
                          const std::vector<geometry::BuiltPath::Bend>& bends,
                          std::size_t index) {
    const auto& bend = bends[index];
    const double before = index == 0 ? 0.0 : endOf(bends[index - 1]);
    const double after = index + 1 == bends.size() ? path.length().in() : bends[index + 1].start;
    const Vec3 into = path.tangentAt(bend.start);
    const Vec3 out = path.tangentAt(endOf(bend));
    return {{{before, bend.start - before, across(-out, -into)},
             {after, after - endOf(bend), across(into, out)}}};
}

/// An end nearer to a support than the radius of the bend is held by it; without any support there
/// is nothing to push from.
bool isFree(const geometry::BuiltPath::Bend& bend, double free) {
    return free > bend.radius && free < kNoSupport;
}

/// Where the far end of a leg springs to when its bend opens by so many radians.
Spring springOf(const BuiltLayout& built, std::size_t index, const Leg& leg, double opened) {
    const BuiltConductor& conductor = built.conductors[index];
    const Vec3 at = conductor.built.path.pointAt(leg.far);
    const double top = at.z + conductor.radius() + opened * leg.length * leg.swing.z;
    return {index,
            at,
            top - built.gutter().inside.z,
            nearestSupport(supportsOf(conductor), leg.far),
            {}};
}

/// Of the legs that swing toward the cover, of a conductor that anything holds.
std::vector<Spring> springsOf(const BuiltLayout& built, std::size_t index) {
    const BuiltConductor& conductor = built.conductors[index];
    const auto& one = built.layout.conductors[index];
    const auto force = bendingForce(one.size, one.metal, built.layout.edition);
    const auto bends = bendsOf(conductor);
    std::vector<Spring> springs;
    for (std::size_t i = 0; i < bends.size(); ++i) {
        const double opened = force.opening * bends[i].radius * bends[i].turn;
        for (const Leg& leg : legsAt(conductor.built.path, bends, i)) {
            Spring spring = springOf(built, index, leg, opened);
            if (leg.swing.z > 0.0 && isFree(bends[i], spring.free)) {
                spring.push = pushOf(force, std::max(0.0, spring.proud), spring.free);
                springs.push_back(spring);
            }
        }
    }
    return springs;
}

/// The hardest push of a conductor; of one that reaches nowhere, the nearest to the cover.
std::optional<Spring> hardestOf(const BuiltLayout& built, std::size_t index) {
    const auto springs = springsOf(built, index);
    const auto hardest =
        std::max_element(springs.begin(), springs.end(), [](const Spring& a, const Spring& b) {
            return std::pair(a.push.greatest, a.proud) < std::pair(b.push.greatest, b.proud);
        });
    return hardest == springs.end() ? std::nullopt : std::optional(*hardest);
}

// ---- what the cover has to hold -------------------------------------------------------------

/// The pushes in one stretch of the cover.
struct Stretch {
    std::vector<Spring> springs;  ///< in order of x
    Band push;
};

std::vector<Spring> sortedSprings(const BuiltLayout& built) {
    std::vector<Spring> springs;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        if (auto spring = hardestOf(built, i)) {
            springs.push_back(*spring);
        }
    }
    std::sort(springs.begin(), springs.end(), [&](const Spring& a, const Spring& b) {
        const auto& conductors = built.layout.conductors;
        return std::pair(a.at.x, conductors[a.conductor].id) <
               std::pair(b.at.x, conductors[b.conductor].id);
    });
    return springs;
}

/// The stretch that begins at a spring and holds what lies within it.
Stretch stretchFrom(const std::vector<Spring>& springs, std::size_t first) {
    Stretch stretch;
    for (std::size_t i = first;
         i < springs.size() && springs[i].at.x - springs[first].at.x <= kStretch;
         ++i) {
        if (springs[i].proud > 0.0) {
            stretch.springs.push_back(springs[i]);
            stretch.push.least += springs[i].push.least;
            stretch.push.greatest += springs[i].push.greatest;
        }
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

/// The one that comes nearest to the cover.
const Spring& nearestOf(const std::vector<Spring>& springs) {
    return *std::max_element(springs.begin(), springs.end(), [](const Spring& a, const Spring& b) {
        return a.proud < b.proud;
    });
}

std::string workingNone(const BuiltLayout& built, const std::vector<Spring>& springs) {
    if (springs.empty()) {
        return "no bent conductor tends toward the cover";
    }
    const Spring& nearest = nearestOf(springs);
    return "no bent conductor springs out as far as the cover; " +
           conductorName(built, nearest.conductor) + " comes nearest, to " +
           inText(-nearest.proud) + " below it";
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
Finding findingFor(const BuiltLayout& built) {
    const auto springs = sortedSprings(built);
    const Stretch hardest = hardestStretch(springs);
    Finding finding;
    finding.check = Check::coverPush;
    finding.citation = estimate();
    judge(finding, poundsForce(hardest.push.greatest), poundsForce(kEasilyHeld), Bound::atMost);
    finding.verdict = finding.verdict == Verdict::meets ? Verdict::meets : Verdict::caution;
    if (hardest.springs.empty()) {
        finding.working = sentence(workingNone(built, springs));
        return finding;
    }
    finding.working = sentence(workingOf(built, hardest));
    finding.place = hardest.springs.front().at;
    finding.interval = {hardest.springs.front().at.x, hardest.springs.back().at.x};
    return finding;
}

bool isBent(const BuiltConductor& conductor) {
    return !bendsOf(conductor).empty();
}

}  // namespace

std::vector<Finding> checkCoverPush(const BuiltLayout& built) {
    if (std::none_of(built.conductors.begin(), built.conductors.end(), isBent)) {
        return {};
    }
    return {findingFor(built)};
}

}  // namespace gw::checks
