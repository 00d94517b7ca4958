#include "checks/springs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <limits>
#include <utility>

namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltLayout;

constexpr double kNoSupport = std::numeric_limits<double>::infinity();

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
std::vector<Spring> springsOfLegs(const BuiltLayout& built, std::size_t index) {
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

}  // namespace

BentConductor springOfConductor(const BuiltLayout& built, std::size_t conductor) {
    const auto springs = springsOfLegs(built, conductor);
    const auto hardest =
        std::max_element(springs.begin(), springs.end(), [](const Spring& a, const Spring& b) {
            return std::pair(a.push.greatest, a.proud) < std::pair(b.push.greatest, b.proud);
        });
    return {!bendsOf(built.conductors[conductor]).empty(),
            hardest == springs.end() ? std::nullopt : std::optional(*hardest)};
}

Springs springsOf(const BuiltLayout& built) {
    Springs springs;
    springs.reserve(built.conductors.size());
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        springs.push_back(springOfConductor(built, i));
    }
    return springs;
}

}  // namespace gw::checks
