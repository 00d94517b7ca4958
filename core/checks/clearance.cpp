#include <algorithm>
#include <array>
#include <limits>

#include "base/tolerance.h"
#include "checks/clearance_scene.h"
#include "checks/diameters.h"
#include "checks/occupancy.h"
#include "checks/support.h"
#include "checks/units.h"
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

/// What is near, and how near. Named only where it is told.
struct Near {
    enum class Kind { conductor, block, wall, cover };
    double gap = std::numeric_limits<double>::infinity();
    Kind kind = Kind::cover;
    std::size_t index = 0;  ///< of the conductor or block; of a wall its Wall
    Vec3 place;

    bool known() const { return gap < std::numeric_limits<double>::infinity(); }
};

std::string nameOf(const BuiltLayout& built, const Near& near) {
    switch (near.kind) {
        case Near::Kind::conductor:
            return conductorName(built, near.index);
        case Near::Kind::block:
            return blockName(built, near.index);
        case Near::Kind::wall:
            return "the " + std::string(layout::wallText(static_cast<Wall>(near.index))) + " wall";
        case Near::Kind::cover:
            return "the cover";
    }
    return {};
}

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

/// An overlap that there may not be, were those diameters known that are not, cannot be told. Built
/// layouts carry the largest published ones.
void excuseDoubt(Finding& finding,
                 const BuiltLayout& built,
                 const std::vector<std::size_t>& conductors,
                 double gap) {
    double doubt = 0.0;
    for (const std::size_t i : conductors) {
        doubt += radiusInDoubt(built, i);
    }
    if (finding.verdict == Verdict::breach && doubt > 0.0 && clear(gap + doubt)) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = diametersUnknown(built, conductors);
        finding.working.insert(finding.working.size() - 1, ", by the largest published diameter");
    }
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
            Near::Kind::wall,
            static_cast<std::size_t>(wall),
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
                    Near::Kind::wall,
                    static_cast<std::size_t>(wall),
                    body.centre()});
    }
    return nearest;
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

void meet(Surroundings& one, Near Surroundings::*kind, const Near& near) {
    keepNearer(one.*kind, near);
    one.overlapToldElsewhere = one.overlapToldElsewhere || !clear(near.gap);
}

Surroundings surroundingsOf(const NearThings& near, const CoverGap& cover, const Near& wall) {
    Surroundings around;
    around.wall = wall;
    for (const auto& [other, closest] : near.conductors) {
        meet(around,
             &Surroundings::conductor,
             {closest.gap.in(), Near::Kind::conductor, other, closest.onA});
    }
    for (const auto& [other, closest] : near.blocks) {
        meet(around,
             &Surroundings::block,
             {closest.gap.in(), Near::Kind::block, other, closest.onA});
    }
    meet(around, &Surroundings::cover, {cover.gap, Near::Kind::cover, 0, cover.place});
    return around;
}

// ---- findings -------------------------------------------------------------------------------

std::string nearText(const BuiltLayout& built, const Near& near, std::string_view kind) {
    return near.known() ? nameOf(built, near) + " " + inText(near.gap)
                        : "any other " + std::string(kind) + " over " + inText(kNeighbourhood);
}

/// One conductor or block by itself.
struct Thing {
    Subject subject;
    std::string name;
    std::vector<std::size_t> conductors{};  ///< the one it is, if it is one
};

Thing conductorThing(const BuiltLayout& built, std::size_t index) {
    return {built.layout.conductors[index].id, conductorName(built, index), {index}};
}

Thing blockThing(const BuiltLayout& built, std::size_t index) {
    return {built.layout.blocks[index].id, blockName(built, index)};
}

/// Where the overlap is told elsewhere and the walls are clear there is nothing left to say.
void ownFinding(std::vector<Finding>& findings,
                const BuiltLayout& built,
                const Surroundings& around,
                const Thing& thing) {
    const bool throughWall = !clear(around.wall.gap);
    if (around.overlapToldElsewhere && !throughWall) {
        return;
    }
    const Near& nearest = throughWall ? around.wall : around.nearest();
    Finding finding = startOf(inches(nearest.gap));
    finding.subjects = {thing.subject};
    finding.place = nearest.place;
    const std::string distances = nearText(built, around.conductor, "conductor") + ", " +
                                  nearText(built, around.block, "block") + ", " +
                                  nearText(built, around.wall, "wall") + ", " +
                                  nearText(built, around.cover, "cover");
    finding.working = sentence(throughWall ? thing.name + " reaches " + inText(-around.wall.gap) +
                                                 " into " + nameOf(built, around.wall)
                                           : "distances from " + thing.name + ": " + distances);
    excuseDoubt(finding, built, thing.conductors, nearest.gap);
    findings.push_back(std::move(finding));
}

/// The pair's own finding where they overlap.
void pairFinding(std::vector<Finding>& findings,
                 const BuiltLayout& built,
                 const Closest& closest,
                 const Thing& a,
                 const Thing& b) {
    const double gap = closest.gap.in();
    Finding finding = startOf(inches(gap));
    finding.subjects = {a.subject, b.subject};
    finding.place = (closest.onA + closest.onB) * 0.5;
    finding.working = sentence(a.name + " and " + b.name + " overlap by " + inText(-gap));
    auto conductors = a.conductors;
    conductors.insert(conductors.end(), b.conductors.begin(), b.conductors.end());
    excuseDoubt(finding, built, conductors, gap);
    findings.push_back(std::move(finding));
}

/// Whether the conductor misses the bore it is to pass through in that block.
bool strays(const BuiltConductor& conductor, std::size_t block) {
    return std::any_of(
        conductor.passes.begin(), conductor.passes.end(), [&](const geometry::BuiltPass& pass) {
            return pass.block == block && !pass.onAxis;
        });
}

bool overlaps(const Neighbour& neighbour) {
    return !clear(neighbour.closest.gap.in());
}

/// With conductors behind it in the layout.
void conductorPairs(std::vector<Finding>& findings,
                    const BuiltLayout& built,
                    const Facts& facts,
                    std::size_t index) {
    for (const Neighbour& near : facts.neighbours.ofConductors[index].conductors) {
        if (near.other > index && overlaps(near)) {
            pairFinding(findings,
                        built,
                        near.closest,
                        conductorThing(built, index),
                        conductorThing(built, near.other));
        }
    }
}

/// One that strays from its bore in the block is told as that.
void conductorAndBlockPairs(std::vector<Finding>& findings,
                            const BuiltLayout& built,
                            const Facts& facts,
                            std::size_t index) {
    for (const Neighbour& near : facts.neighbours.ofConductors[index].blocks) {
        if (overlaps(near) && !strays(built.conductors[index], near.other)) {
            pairFinding(findings,
                        built,
                        near.closest,
                        conductorThing(built, index),
                        blockThing(built, near.other));
        }
    }
}

/// With blocks behind it in the layout.
void blockPairs(std::vector<Finding>& findings,
                const BuiltLayout& built,
                const Facts& facts,
                std::size_t index) {
    for (const Neighbour& near : facts.neighbours.ofBlocks[index].blocks) {
        if (near.other > index && overlaps(near)) {
            pairFinding(findings,
                        built,
                        near.closest,
                        blockThing(built, index),
                        blockThing(built, near.other));
        }
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

void boreFindings(std::vector<Finding>& findings,
                  const BuiltLayout& built,
                  const Facts& facts,
                  std::size_t block) {
    for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
        const auto occupants = facts.occupancy.of(block, port);
        for (std::size_t i = 0; i < occupants.size(); ++i) {
            for (std::size_t j = i + 1; j < occupants.size(); ++j) {
                tipsFinding(findings, built, occupants[i], occupants[j]);
            }
        }
    }
}

void passFindings(std::vector<Finding>& findings,
                  const BuiltLayout& built,
                  const Facts&,
                  std::size_t index) {
    for (const geometry::BuiltPass& pass : built.conductors[index].passes) {
        if (pass.onAxis) {
            continue;
        }
        Finding finding = startOf(inches(-pass.offAxis));
        judge(finding, inches(pass.offAxis), inches(0.0), Bound::atMost);
        finding.verdict = Verdict::breach;
        finding.subjects = {built.layout.conductors[index].id, built.layout.blocks[pass.block].id};
        finding.place = built.blocks[pass.block].ports[pass.port].mouth;
        finding.working = sentence(conductorName(built, index) + " strays " + inText(pass.offAxis) +
                                   " from the axis of " + portName(built, pass.block, pass.port) +
                                   ", through which it has to run straight");
        findings.push_back(std::move(finding));
    }
}

void ownOfConductor(std::vector<Finding>& findings,
                    const BuiltLayout& built,
                    const Facts& facts,
                    std::size_t index) {
    ownFinding(findings,
               built,
               surroundingsOf(facts.neighbours.ofConductors[index],
                              facts.coverGaps.conductors[index],
                              nearestWall(built, built.conductors[index])),
               conductorThing(built, index));
}

void ownOfBlock(std::vector<Finding>& findings,
                const BuiltLayout& built,
                const Facts& facts,
                std::size_t index) {
    ownFinding(findings,
               built,
               surroundingsOf(facts.neighbours.ofBlocks[index],
                              facts.coverGaps.blocks[index],
                              nearestWall(built, built.blocks[index].body)),
               blockThing(built, index));
}

/// What stands out of the open side, and what is nearest to it.
struct Proud {
    std::vector<Subject> subjects;
    std::vector<std::size_t> unsure;  ///< conductors that stand out by an assumed diameter only
    bool certain = false;
    Near nearest;
};

void keepConductor(Proud& proud, const BuiltLayout& built, const CoverGap& cover, std::size_t i) {
    keepNearer(proud.nearest, {cover.gap, Near::Kind::conductor, i, cover.place});
    if (clear(cover.gap)) {
        return;
    }
    const double doubt = radiusInDoubt(built, i);
    const bool perhapsNot = doubt > 0.0 && clear(cover.gap + doubt);
    proud.certain = proud.certain || !perhapsNot;
    proud.subjects.emplace_back(built.layout.conductors[i].id);
    if (perhapsNot) {
        proud.unsure.push_back(i);
    }
}

void keepBlock(Proud& proud, const BuiltLayout& built, const CoverGap& cover, std::size_t i) {
    keepNearer(proud.nearest, {cover.gap, Near::Kind::block, i, cover.place});
    if (!clear(cover.gap)) {
        proud.certain = true;
        proud.subjects.emplace_back(built.layout.blocks[i].id);
    }
}

Proud proudOf(const BuiltLayout& built, const CoverGaps& gaps) {
    Proud proud;
    for (std::size_t i = 0; i < gaps.conductors.size(); ++i) {
        keepConductor(proud, built, gaps.conductors[i], i);
    }
    for (std::size_t i = 0; i < gaps.blocks.size(); ++i) {
        keepBlock(proud, built, gaps.blocks[i], i);
    }
    return proud;
}

void coverFinding(std::vector<Finding>& findings,
                  const BuiltLayout& built,
                  const Facts& facts,
                  std::size_t /*gutter*/) {
    const Proud proud = proudOf(built, facts.coverGaps);
    const Near& nearest = proud.nearest;
    if (!nearest.known()) {
        Finding empty = startOf(inches(built.gutter().inside.z));
        empty.working = "The cover goes on: the gutter is empty.";
        findings.push_back(std::move(empty));
        return;
    }
    Finding finding = startOf(inches(nearest.gap));
    finding.subjects = proud.subjects;
    finding.place = nearest.place;
    if (finding.verdict == Verdict::breach && !proud.certain) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = diametersUnknown(built, proud.unsure);
    }
    const std::string name = nameOf(built, nearest);
    const std::string more =
        proud.subjects.size() > 1 ? ", the most of " + std::to_string(proud.subjects.size()) : "";
    finding.working = sentence(
        finding.verdict == Verdict::meets ? "the cover goes on: the nearest to it is " + name +
                                                ", " + inText(nearest.gap) + " away"
        : finding.verdict == Verdict::breach
            ? "the cover does not go on: " + name + " stands out by " + inText(-nearest.gap) + more
            : "the cover may not go on: " + name + " stands out by " + inText(-nearest.gap) +
                  " by the largest published diameter" + more);
    findings.push_back(std::move(finding));
}

constexpr auto kSections = std::to_array<Section>({
    {Unit::conductor, reads::kNeighbours, ownOfConductor},
    {Unit::conductor, reads::kNeighbours, conductorPairs},
    {Unit::conductor, reads::kNeighbours, conductorAndBlockPairs},
    {Unit::block, reads::kNeighbours, blockPairs},
    {Unit::block, reads::kPaths | reads::kBlocks, boreFindings},
    {Unit::conductor, reads::kPaths, passFindings},
    {Unit::block, reads::kNeighbours, ownOfBlock},
    {Unit::gutter, reads::kCoverGaps, coverFinding},
});

}  // namespace

std::span<const Section> clearanceSections() {
    return kSections;
}

std::vector<Finding> checkClearance(const geometry::BuiltLayout& built) {
    return runChecks(built, {Check::clearance});
}

}  // namespace gw::checks
