#include "checks/set_grouping.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/tolerance.h"
#include "checks/support.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;

/// cos 45°: a leg nearer to the gutter's length than this runs along it.
constexpr double kAlong = 0.70710678118654752;

/// A stretch of the gutter, inches along x.
struct Stretch {
    double from = 0.0;
    double to = 0.0;
    double length() const { return to - from; }
    bool empty() const { return length() <= kSamePoint; }
};

Stretch common(const Stretch& a, const Stretch& b) {
    return {std::max(a.from, b.from), std::min(a.to, b.to)};
}

/// The longest leg of a conductor along the gutter.
struct Lane {
    std::size_t conductor = 0;
    geometry::Piece leg;
    Stretch stretch;
};

std::optional<Lane> laneOf(const BuiltLayout& built, std::size_t conductor) {
    std::optional<Lane> longest;
    for (const auto& piece : built.conductors[conductor].built.path.pieces()) {
        if (piece.isArc() || std::abs(piece.u.x) < kAlong) {
            continue;
        }
        const double end = piece.pointAt(piece.length).x;
        const Stretch stretch{std::min(piece.origin.x, end), std::max(piece.origin.x, end)};
        if (!longest || stretch.length() > longest->stretch.length()) {
            longest = Lane{conductor, piece, stretch};
        }
    }
    return longest;
}

/// The conductors of one set that run along the gutter, and where all of them do.
struct Group {
    std::vector<Lane> lanes;
    Stretch stretch{-std::numeric_limits<double>::infinity(),
                    std::numeric_limits<double>::infinity()};
};

/// One group a set that runs as a whole: two or more conductors, each along the gutter.
std::vector<Group> groupsOf(const BuiltLayout& built, const Facts& facts, std::size_t circuit) {
    std::vector<Group> groups(static_cast<std::size_t>(built.layout.circuits[circuit].sets));
    std::vector<bool> whole(groups.size(), true);
    for (const std::size_t i : facts.links.members[circuit]) {
        const auto& conductor = built.layout.conductors[i];
        if (conductor.phase == layout::Phase::g) {
            continue;
        }
        const auto set = static_cast<std::size_t>(conductor.set - 1);
        if (const auto lane = laneOf(built, i)) {
            groups[set].lanes.push_back(*lane);
            groups[set].stretch = common(groups[set].stretch, lane->stretch);
        } else {
            whole[set] = false;
        }
    }
    std::vector<Group> running;
    for (std::size_t set = 0; set < groups.size(); ++set) {
        if (whole[set] && groups[set].lanes.size() > 1 && !groups[set].stretch.empty()) {
            running.push_back(std::move(groups[set]));
        }
    }
    return running;
}

/// The longest stretch that two of them share; the first such.
std::optional<Stretch> sharedBy(const std::vector<Group>& groups) {
    std::optional<Stretch> longest;
    for (std::size_t a = 0; a < groups.size(); ++a) {
        for (std::size_t b = a + 1; b < groups.size(); ++b) {
            const Stretch shared = common(groups[a].stretch, groups[b].stretch);
            if (!shared.empty() && (!longest || shared.length() > longest->length())) {
                longest = shared;
            }
        }
    }
    return longest;
}

/// A conductor as cut square to the gutter's length.
struct Disc {
    std::size_t conductor = 0;
    std::size_t group = 0;
    Vec3 centre;
    double radius = 0.0;
};

Vec3 cutAt(const Lane& lane, double x) {
    const double along = (x - lane.leg.origin.x) / lane.leg.u.x;
    return lane.leg.pointAt(std::clamp(along, 0.0, lane.leg.length));
}

std::vector<Disc> discsAt(const BuiltLayout& built, const std::vector<Group>& groups, double x) {
    std::vector<Disc> discs;
    for (std::size_t group = 0; group < groups.size(); ++group) {
        if (groups[group].stretch.from > x || groups[group].stretch.to < x) {
            continue;
        }
        for (const Lane& lane : groups[group].lanes) {
            discs.push_back(
                {lane.conductor, group, cutAt(lane, x), built.conductors[lane.conductor].radius()});
        }
    }
    return discs;
}

/// Surface to surface, from one disc to the nearest of its own group and of the others.
struct Nearest {
    double own = std::numeric_limits<double>::infinity();
    double other = std::numeric_limits<double>::infinity();
};

Nearest nearestTo(const std::vector<Disc>& discs, std::size_t i) {
    Nearest nearest;
    for (std::size_t j = 0; j < discs.size(); ++j) {
        if (j == i) {
            continue;
        }
        const double gap =
            distance(discs[j].centre, discs[i].centre) - discs[i].radius - discs[j].radius;
        double& least = discs[j].group == discs[i].group ? nearest.own : nearest.other;
        least = std::min(least, gap);
    }
    return nearest;
}

/// Conductors nearer to another set than to their own, by more than geometry may err.
std::vector<std::size_t> strayed(const std::vector<Disc>& discs) {
    std::vector<std::size_t> stray;
    for (std::size_t i = 0; i < discs.size(); ++i) {
        const Nearest nearest = nearestTo(discs, i);
        if (nearest.other + kClearanceError < nearest.own) {
            stray.push_back(discs[i].conductor);
        }
    }
    return stray;
}

std::string workingOf(const BuiltLayout& built,
                      std::size_t circuit,
                      const std::vector<Disc>& discs,
                      const std::vector<std::size_t>& stray,
                      double x) {
    const std::string where = circuitName(built, circuit) + ", " + inText(x) + " from the left: ";
    if (stray.empty()) {
        return where + "each of " + counted(discs.size(), "conductor", "conductors") +
               " lies no nearer to another set than to its own";
    }
    return where + std::to_string(stray.size()) + " of " +
           counted(discs.size(), "conductor", "conductors") +
           (stray.size() == 1 ? " lies" : " lie") +
           " nearer to another set than to the own, where each set runs as a group";
}

}  // namespace

std::optional<Finding> setGroupingFinding(const BuiltLayout& built,
                                          const Facts& facts,
                                          std::size_t circuit) {
    const auto groups = groupsOf(built, facts, circuit);
    const auto shared = sharedBy(groups);
    if (!shared) {
        return std::nullopt;
    }
    const double x = (shared->from + shared->to) / 2.0;
    const auto discs = discsAt(built, groups, x);
    auto stray = strayed(discs);
    facts.links.sortById(stray);
    Finding finding;
    finding.check = Check::parallelSets;
    finding.citation = sectionFor(built, standards::Rule::parallelGrouping);
    finding.subjects.emplace_back(built.layout.circuits[circuit].id);
    for (const std::size_t i : stray) {
        finding.subjects.emplace_back(built.layout.conductors[i].id);
    }
    finding.place = discs.front().centre;
    finding.interval = {shared->from, shared->to};
    judge(finding, count(stray.size()), count(0), Bound::atMost);
    if (finding.verdict == Verdict::breach) {
        finding.verdict = Verdict::caution;
    }
    finding.working = sentence(workingOf(built, circuit, discs, stray, x));
    return finding;
}

}  // namespace gw::checks
