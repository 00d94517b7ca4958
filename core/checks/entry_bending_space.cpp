#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "base/tolerance.h"
#include "checks/bending_need.h"
#include "checks/support.h"
#include "checks/units.h"

/// The gutter is wide enough where conductors are deflected after entering: its dimension in the
/// plane of the bend against Table 312.6(A), one wire per terminal, for the largest one deflected.
namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using layout::Wall;

using Bend = geometry::BuiltPath::Bend;

/// Which of the gutter's dimensions a bend needs.
enum class Dimension { height, depth };

struct Deflected {
    std::size_t conductor = 0;
    Dimension dimension = Dimension::height;
    SpaceNeed need;
};

/// How the first bend that turns changes the conductor's direction, looking into the gutter; empty
/// where it runs straight. Along the path for `from`, against it for `to`.
std::optional<Vec3> deflectionOf(const BuiltConductor& conductor, bool atFrom) {
    const BuiltEnd& end = atFrom ? conductor.from : conductor.to;
    const auto& path = conductor.built.path;
    if (end.kink > kLargestKink) {
        const Vec3 leaving = atFrom ? path.tangentAt(0.0) : -path.tangentAt(path.length().in());
        return leaving - end.axis;
    }
    const auto& bends = conductor.built.bends;
    for (std::size_t i = 0; i < bends.size(); ++i) {
        const Bend& bend = atFrom ? bends[i] : bends[bends.size() - 1 - i];
        if (bend.turn <= kSameDirection) {
            continue;
        }
        // A hair outside the bend: its ends may carry either tangent where it has no radius.
        const Vec3 before = path.tangentAt(bend.start - kSamePoint);
        const Vec3 after = path.tangentAt(bend.start + bend.radius * bend.turn + kSamePoint);
        return atFrom ? after - before : before - after;
    }
    return std::nullopt;
}

Dimension dimensionFor(Wall wall, const Vec3& deflection) {
    switch (wall) {
        case Wall::top:
        case Wall::bottom:
            return Dimension::height;
        case Wall::back:
            return Dimension::depth;
        case Wall::left:
        case Wall::right:
            break;
    }
    return std::abs(deflection.z) > std::abs(deflection.y) ? Dimension::depth : Dimension::height;
}

double sizeOf(const layout::Gutter& gutter, Dimension dimension) {
    switch (dimension) {
        case Dimension::height:
            return gutter.inside.y;
        case Dimension::depth:
            return gutter.inside.z;
    }
    return 0.0;
}

std::string_view wordFor(Dimension dimension) {
    switch (dimension) {
        case Dimension::height:
            return "high";
        case Dimension::depth:
            return "deep";
    }
    return {};
}

struct AtEntry {
    std::size_t conductors = 0;  ///< ends of conductors here
    std::vector<Deflected> deflected{};
};

void noteEnd(AtEntry& here, const BuiltLayout& built, std::size_t index, bool atFrom) {
    const BuiltConductor& conductor = built.conductors[index];
    ++here.conductors;
    if (const auto deflection = deflectionOf(conductor, atFrom)) {
        const std::size_t entry = given((atFrom ? conductor.from : conductor.to).entry);
        const Wall wall = built.layout.entries[entry].wall;
        here.deflected.push_back(
            {index, dimensionFor(wall, *deflection), needByTableA(built, index, 1)});
    }
}

AtEntry conductorsAt(const BuiltLayout& built, const Links& links, std::size_t entry) {
    auto users = links.atEntries[entry];
    // Alike conductors ask alike: the one to name must not hang on the order of the layout.
    links.sortById(users);
    users.erase(std::unique(users.begin(), users.end()), users.end());
    AtEntry here;
    for (const std::size_t i : users) {
        for (const bool atFrom : {true, false}) {
            const BuiltEnd& end = atFrom ? built.conductors[i].from : built.conductors[i].to;
            if (end.entry == entry) {
                noteEnd(here, built, i, atFrom);
            }
        }
    }
    return here;
}

const Deflected& worstOf(const BuiltLayout& built, const std::vector<Deflected>& deflected) {
    const Deflected* worst = &deflected.front();
    for (const Deflected& one : deflected) {
        if (isWorse(one.need,
                    sizeOf(built.gutter(), one.dimension),
                    worst->need,
                    sizeOf(built.gutter(), worst->dimension))) {
            worst = &one;
        }
    }
    return *worst;
}

std::string workingOf(const BuiltLayout& built, std::size_t entry, const AtEntry& here) {
    const Deflected& worst = worstOf(built, here.deflected);
    return sentence(counted(here.deflected.size(), "conductor", "conductors") + " of " +
                    entryName(built, entry) + " bend after entering; the most is asked by " +
                    conductorName(built, worst.conductor) + ": the gutter is " +
                    inText(sizeOf(built.gutter(), worst.dimension)) + " " +
                    std::string(wordFor(worst.dimension)) + " and " + worst.need.text);
}

Finding findingFor(const BuiltLayout& built, std::size_t entry, const AtEntry& here) {
    Finding finding;
    finding.check = Check::entryBendingSpace;
    finding.subjects = {built.layout.entries[entry].id};
    finding.place = built.entries[entry].centre;
    finding.citation = sectionFor(built, standards::Rule::deflectionSpace);
    if (here.deflected.empty()) {
        finding.working =
            sentence("no conductor of " + entryName(built, entry) + " is deflected (" +
                     std::to_string(here.conductors) + " straight), so no space is asked");
        return finding;
    }
    const Deflected& worst = worstOf(built, here.deflected);
    judgeSpace(finding, worst.need, sizeOf(built.gutter(), worst.dimension));
    finding.subjects.emplace_back(built.layout.conductors[worst.conductor].id);
    finding.working = workingOf(built, entry, here);
    return finding;
}

void ofEntry(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t entry) {
    const AtEntry here = conductorsAt(built, facts.links, entry);
    if (here.conductors > 0) {
        findings.push_back(findingFor(built, entry, here));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::entry, reads::kPaths, ofEntry}});

}  // namespace

std::span<const Section> entryBendingSpaceSections() {
    return kSections;
}

std::vector<Finding> checkEntryBendingSpace(const BuiltLayout& built) {
    return runChecks(built, {Check::entryBendingSpace});
}

}  // namespace gw::checks
