#include <algorithm>
#include <array>
#include <limits>

#include "base/tolerance.h"
#include "checks/clearance_scene.h"
#include "checks/occupancy.h"
#include "checks/support.h"
#include "geometry/solids.h"

/// Nothing overlaps: conductors, blocks, walls and cover may touch. Every overlap is told once:
/// that of a pair on the pair, that with a wall on the conductor or block, that with the cover on
/// the gutter.
namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::Closest;
using layout::Wall;

/// One thing near another and how near.
struct Near {
    double gap = std::numeric_limits<double>::infinity();
    std::string name;
    Vec3 place;

    bool known() const { return gap < std::numeric_limits<double>::infinity(); }
};

void keepNearer(Near& nearest, const Near& other) {
    if (other.gap < nearest.gap) {
        nearest = other;
    }
}

bool clear(double gap) {
    return atLeast(gap, 0.0);
}

Finding startOf(const Quantity& gap) {
    Finding finding;
    finding.check = Check::clearance;
    finding.citation = geometryOnly();
    judge(finding, gap, inches(0.0), Bound::atLeast);
    return finding;
}

// ---- walls and cover ------------------------------------------------------------------------

constexpr std::array<Wall, 5> kWalls = {
    Wall::left, Wall::right, Wall::top, Wall::bottom, Wall::back};

/// Distance from the origin along the outward direction at which the wall stands.
double wallAt(const Vec3& inside, const Vec3& outward) {
    return std::max(0.0, dot(inside, outward));
}

bool entersBy(const BuiltLayout& built, const BuiltEnd& end, Wall wall) {
    return end.kind == BuiltEnd::Kind::entry && built.layout.entries[given(end.entry)].wall == wall;
}

/// The part of a conductor that is held against a wall: all of it, but not its first stretch where
/// it enters through that wall askew (the kink is told by the check of bends).
geometry::Tube tubeAgainst(const BuiltLayout& built, const BuiltConductor& conductor, Wall wall) {
    const double length = conductor.built.path.length().in();
    const double askew = kHeldRadii * conductor.radius();
    geometry::Tube tube{&conductor.built.path, conductor.radius(), 0.0, length};
    if (entersBy(built, conductor.from, wall) && conductor.from.kink > 0.0) {
        tube.from = std::min(askew, length);
    }
    if (entersBy(built, conductor.to, wall) && conductor.to.kink > 0.0) {
        tube.to = std::max(tube.from, length - askew);
    }
    return tube;
}

Near toWall(const BuiltLayout& built, const BuiltConductor& conductor, Wall wall) {
    const Vec3 outward = -layout::inwardNormal(wall);
    const auto reach = geometry::reach(tubeAgainst(built, conductor, wall), outward);
    return {wallAt(built.gutter().inside, outward) - reach.value,
            "the " + std::string(layout::wallText(wall)) + " wall",
            reach.at};
}

/// The nearest wall; one it enters by counts only where the conductor reaches into it.
Near nearestWall(const BuiltLayout& built, const BuiltConductor& conductor) {
    Near nearest;
    for (const Wall wall : kWalls) {
        const Near one = toWall(built, conductor, wall);
        const bool own =
            entersBy(built, conductor.from, wall) || entersBy(built, conductor.to, wall);
        if (!own || !clear(one.gap)) {
            keepNearer(nearest, one);
        }
    }
    return nearest;
}

double boxReach(const geometry::Box& box, const Vec3& outward) {
    return std::max(dot(box.least, outward), dot(box.greatest, outward));
}

Near nearestWall(const BuiltLayout& built, const geometry::Box& body) {
    Near nearest;
    for (const Wall wall : kWalls) {
        const Vec3 outward = -layout::inwardNormal(wall);
        keepNearer(nearest,
                   {wallAt(built.gutter().inside, outward) - boxReach(body, outward),
                    "the " + std::string(layout::wallText(wall)) + " wall",
                    body.centre()});
    }
    return nearest;
}

constexpr Vec3 kTowardCover{0, 0, 1};

Near toCover(const BuiltLayout& built, const BuiltConductor& conductor) {
    const geometry::Tube tube{
        &conductor.built.path, conductor.radius(), 0.0, conductor.built.path.length().in()};
    const auto reach = geometry::reach(tube, kTowardCover);
    return {built.gutter().inside.z - reach.value, "the cover", reach.at};
}

Near toCover(const BuiltLayout& built, const geometry::Box& body) {
    return {built.gutter().inside.z - body.greatest.z, "the cover", body.centre()};
}

// ---- what is nearest to whom ----------------------------------------------------------------

/// What is near one conductor or block.
struct Surroundings {
    Near conductor{};
    Near block{};
    Near wall{};
    Near cover{};
    bool overlapToldElsewhere = false;

    const Near& nearest() const {
        const std::array<const Near*, 4> all = {&conductor, &block, &wall, &cover};
        return **std::min_element(
            all.begin(), all.end(), [](const Near* a, const Near* b) { return a->gap < b->gap; });
    }
};

struct AllSurroundings {
    std::vector<Surroundings> conductors;
    std::vector<Surroundings> blocks;
};

void meet(Surroundings& one, Near Surroundings::*kind, const Near& near) {
    keepNearer(one.*kind, near);
    one.overlapToldElsewhere = one.overlapToldElsewhere || !clear(near.gap);
}

void meetNeighbours(AllSurroundings& all, const BuiltLayout& built, const Neighbours& near) {
    for (const auto& [pair, closest] : near.conductors) {
        const auto& [a, b] = pair;
        const double gap = closest.gap.in();
        meet(all.conductors[a],
             &Surroundings::conductor,
             {gap, conductorName(built, b), closest.onA});
        meet(all.conductors[b],
             &Surroundings::conductor,
             {gap, conductorName(built, a), closest.onB});
    }
    for (const auto& [pair, closest] : near.conductorsAndBlocks) {
        const auto& [a, b] = pair;
        const double gap = closest.gap.in();
        meet(all.conductors[a], &Surroundings::block, {gap, blockName(built, b), closest.onA});
        meet(all.blocks[b], &Surroundings::conductor, {gap, conductorName(built, a), closest.onB});
    }
    for (const auto& [pair, closest] : near.blocks) {
        const auto& [a, b] = pair;
        const double gap = closest.gap.in();
        meet(all.blocks[a], &Surroundings::block, {gap, blockName(built, b), closest.onA});
        meet(all.blocks[b], &Surroundings::block, {gap, blockName(built, a), closest.onB});
    }
}

AllSurroundings surroundingsOf(const BuiltLayout& built, const Neighbours& neighbours) {
    AllSurroundings all;
    all.conductors.resize(built.conductors.size());
    all.blocks.resize(built.blocks.size());
    meetNeighbours(all, built, neighbours);
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        all.conductors[i].wall = nearestWall(built, built.conductors[i]);
        meet(all.conductors[i], &Surroundings::cover, toCover(built, built.conductors[i]));
    }
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        all.blocks[i].wall = nearestWall(built, built.blocks[i].body);
        meet(all.blocks[i], &Surroundings::cover, toCover(built, built.blocks[i].body));
    }
    return all;
}

// ---- findings -------------------------------------------------------------------------------

std::string nearText(const Near& near, std::string_view kind) {
    return near.known() ? near.name + " " + inText(near.gap)
                        : "any other " + std::string(kind) + " over " + inText(kNeighbourhood);
}

/// Where the overlap is told elsewhere and the walls are clear there is nothing left to say.
void ownFinding(std::vector<Finding>& findings,
                const Surroundings& around,
                const Subject& subject,
                const std::string& name) {
    const bool throughWall = !clear(around.wall.gap);
    if (around.overlapToldElsewhere && !throughWall) {
        return;
    }
    const Near& nearest = throughWall ? around.wall : around.nearest();
    Finding finding = startOf(inches(nearest.gap));
    finding.subjects = {subject};
    finding.place = nearest.place;
    const std::string distances =
        nearText(around.conductor, "conductor") + ", " + nearText(around.block, "block") + ", " +
        nearText(around.wall, "wall") + ", " + nearText(around.cover, "cover");
    finding.working = sentence(throughWall ? name + " reaches " + inText(-around.wall.gap) +
                                                 " into " + around.wall.name
                                           : "distances from " + name + ": " + distances);
    findings.push_back(std::move(finding));
}

void pairFinding(std::vector<Finding>& findings,
                 const Closest& closest,
                 std::vector<Subject> subjects,
                 const std::string& a,
                 const std::string& b) {
    Finding finding = startOf(inches(closest.gap.in()));
    if (finding.verdict == Verdict::meets) {
        return;
    }
    finding.subjects = std::move(subjects);
    finding.place = (closest.onA + closest.onB) * 0.5;
    finding.working = sentence(a + " and " + b + " overlap by " + inText(-closest.gap.in()));
    findings.push_back(std::move(finding));
}

/// Whether the conductor misses the bore it is to pass through in that block.
bool strays(const BuiltConductor& conductor, std::size_t block) {
    return std::any_of(
        conductor.passes.begin(), conductor.passes.end(), [&](const geometry::BuiltPass& pass) {
            return pass.block == block && !pass.onAxis;
        });
}

void pairFindings(std::vector<Finding>& findings,
                  const BuiltLayout& built,
                  const Neighbours& neighbours) {
    const auto& conductors = built.layout.conductors;
    const auto& blocks = built.layout.blocks;
    for (const auto& [pair, closest] : neighbours.conductors) {
        pairFinding(findings,
                    closest,
                    {conductors[pair.first].id, conductors[pair.second].id},
                    conductorName(built, pair.first),
                    conductorName(built, pair.second));
    }
    for (const auto& [pair, closest] : neighbours.conductorsAndBlocks) {
        if (strays(built.conductors[pair.first], pair.second)) {
            continue;  // told as that
        }
        pairFinding(findings,
                    closest,
                    {conductors[pair.first].id, blocks[pair.second].id},
                    conductorName(built, pair.first),
                    blockName(built, pair.second));
    }
    for (const auto& [pair, closest] : neighbours.blocks) {
        pairFinding(findings,
                    closest,
                    {blocks[pair.first].id, blocks[pair.second].id},
                    blockName(built, pair.first),
                    blockName(built, pair.second));
    }
}

/// "conductor S-B in port 1 of block A", of those whose insertion is not known.
std::vector<std::string> insertionsUnknown(const BuiltLayout& built,
                                           const std::array<Occupant, 2>& ends) {
    std::vector<std::string> missing;
    for (const Occupant& occupant : ends) {
        const BuiltEnd& end = *endOf(built, occupant);
        if (!insertionKnown(built, occupant.conductor, end)) {
            missing.push_back("insertion of " + conductorName(built, occupant.conductor) + " in " +
                              portName(built, given(end.block), given(end.port)));
        }
    }
    return missing;
}

/// Conductors coming from both mouths of one bore must not meet in it. Where it is not known how
/// far they are pushed in, it is asked for.
void tipsFinding(std::vector<Finding>& findings,
                 const BuiltLayout& built,
                 const Occupant& a,
                 const Occupant& b) {
    const BuiltEnd* one = endOf(built, a);
    const BuiltEnd* other = endOf(built, b);
    if (one == nullptr || other == nullptr || entersFar(built, *one) == entersFar(built, *other)) {
        return;
    }
    const double depth = boreDepth(built, given(one->block), given(one->port));
    const std::string names =
        conductorName(built, a.conductor) + " and " + conductorName(built, b.conductor);
    const std::string port = portName(built, given(one->block), given(one->port));
    Finding finding = startOf(inches(depth - one->inserted - other->inserted));
    if (const auto missing = insertionsUnknown(built, {a, b}); !missing.empty()) {
        finding = Finding{};
        finding.check = Check::clearance;
        finding.citation = geometryOnly();
        finding.verdict = Verdict::cannotTell;
        finding.missing = missing;
        finding.working = sentence(names + " come from both mouths of " + port +
                                   ", and how far they are pushed in is not stated");
    } else if (finding.verdict != Verdict::meets) {
        finding.working =
            sentence(names + " are " + inText(one->inserted) + " and " + inText(other->inserted) +
                     " into " + port + ", which is only " + inText(depth) + " through");
    } else {
        return;
    }
    finding.subjects = {built.layout.conductors[a.conductor].id,
                        built.layout.conductors[b.conductor].id};
    finding.place = one->mouth;
    findings.push_back(std::move(finding));
}

void boreFindings(std::vector<Finding>& findings, const BuiltLayout& built) {
    for (const auto& ports : occupancyOf(built)) {
        for (const auto& occupants : ports) {
            for (std::size_t i = 0; i < occupants.size(); ++i) {
                for (std::size_t j = i + 1; j < occupants.size(); ++j) {
                    tipsFinding(findings, built, occupants[i], occupants[j]);
                }
            }
        }
    }
}

void passFindings(std::vector<Finding>& findings, const BuiltLayout& built) {
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        for (const geometry::BuiltPass& pass : built.conductors[i].passes) {
            if (pass.onAxis) {
                continue;
            }
            Finding finding = startOf(inches(-pass.offAxis));
            judge(finding, inches(pass.offAxis), inches(0.0), Bound::atMost);
            finding.verdict = Verdict::breach;
            finding.subjects = {built.layout.conductors[i].id, built.layout.blocks[pass.block].id};
            finding.place = built.blocks[pass.block].ports[pass.port].mouth;
            finding.working = sentence(
                conductorName(built, i) + " strays " + inText(pass.offAxis) + " from the axis of " +
                portName(built, pass.block, pass.port) + ", through which it has to run straight");
            findings.push_back(std::move(finding));
        }
    }
}

void keepProud(Finding& finding, Near& nearest, const Near& cover, Near named, const Subject& who) {
    if (!clear(cover.gap)) {
        finding.subjects.push_back(who);
    }
    named.gap = cover.gap;
    named.place = cover.place;
    keepNearer(nearest, named);
}

Finding coverFinding(const BuiltLayout& built, const AllSurroundings& all) {
    Finding stands;
    Near nearest;
    for (std::size_t i = 0; i < all.conductors.size(); ++i) {
        keepProud(stands,
                  nearest,
                  all.conductors[i].cover,
                  {0.0, conductorName(built, i), {}},
                  built.layout.conductors[i].id);
    }
    for (std::size_t i = 0; i < all.blocks.size(); ++i) {
        keepProud(stands,
                  nearest,
                  all.blocks[i].cover,
                  {0.0, blockName(built, i), {}},
                  built.layout.blocks[i].id);
    }
    if (!nearest.known()) {
        Finding empty = startOf(inches(built.gutter().inside.z));
        empty.working = "The cover goes on: the gutter is empty.";
        return empty;
    }
    Finding finding = startOf(inches(nearest.gap));
    finding.subjects = stands.subjects;
    finding.place = nearest.place;
    finding.working = sentence(
        clear(nearest.gap) ? "the cover goes on: the nearest to it is " + nearest.name + ", " +
                                 inText(nearest.gap) + " away"
                           : "the cover does not go on: " + nearest.name + " stands out by " +
                                 inText(-nearest.gap) +
                                 (finding.subjects.size() > 1
                                      ? ", the most of " + std::to_string(finding.subjects.size())
                                      : std::string()));
    return finding;
}

}  // namespace

std::vector<Finding> checkClearance(const BuiltLayout& built) {
    const Neighbours neighbours = neighboursOf(built);
    const AllSurroundings all = surroundingsOf(built, neighbours);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < all.conductors.size(); ++i) {
        ownFinding(
            findings, all.conductors[i], built.layout.conductors[i].id, conductorName(built, i));
    }
    pairFindings(findings, built, neighbours);
    boreFindings(findings, built);
    passFindings(findings, built);
    for (std::size_t i = 0; i < all.blocks.size(); ++i) {
        ownFinding(findings, all.blocks[i], built.layout.blocks[i].id, blockName(built, i));
    }
    findings.push_back(coverFinding(built, all));
    return findings;
}

}  // namespace gw::checks
