#include <algorithm>
#include <array>
#include <span>

#include "base/tolerance.h"
#include "checks/clearance_scene.h"
#include "checks/diameters.h"
#include "checks/screw_corridors.h"
#include "checks/support.h"
#include "checks/units.h"

/// A driver goes straight from the open cover side to every screw that clamps a conductor. One
/// finding a port, of its worst screw.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using parts::ConnectorKind;
using standards::Rule;

/// How much it matters that a screw cannot be reached, and by which rule.
struct Weight {
    Verdict verdict = Verdict::breach;
    Rule rule = Rule::splicesAccessible;
    std::vector<std::string> missing{};
};

/// A conductor over the screws of a power distribution block is what the code forbids. Over those
/// of a wire connector it is poor practice: it can be laid in after the screw is tight.
Weight weightOfConductor(const BuiltLayout& built, std::size_t block) {
    const auto& kind = built.blocks[block].part->listing.kind;
    if (!kind) {
        return {Verdict::cannotTell, Rule::splicesAccessible, {kindMissing(built, block)}};
    }
    return *kind == ConnectorKind::distributionBlock
               ? Weight{Verdict::breach, Rule::blocksUnobstructed}
               : Weight{Verdict::caution};
}

/// What stays where it is, block, wall or the way the screw looks, cannot be laid in later. Only a
/// connector that floats on its conductors can be turned in the hand while its screws are
/// tightened.
Weight weightOfFixed(const BuiltLayout& built, std::size_t block) {
    const auto& kind = built.blocks[block].part->listing.kind;
    const auto& mounted = built.layout.blocks[block].mounted;
    if (kind == ConnectorKind::distributionBlock) {
        return {Verdict::breach, Rule::blocksUnobstructed};
    }
    if (mounted == true) {
        return {Verdict::breach, Rule::splicesAccessible};
    }
    if (kind && mounted) {
        return {Verdict::caution};
    }
    Weight unknown{Verdict::cannotTell};
    if (!kind) {
        unknown.missing.push_back(kindMissing(built, block));
    }
    if (!mounted) {
        unknown.missing.push_back("whether " + blockName(built, block) + " is mounted");
    }
    return unknown;
}

standards::Citation citationOf(const BuiltLayout& built, const Weight& weight) {
    return weight.verdict == Verdict::caution
               ? standards::Citation{"", {}, standards::Basis::commonPractice}
               : sectionFor(built, weight.rule);
}

std::string screwName(const BuiltLayout& built, const ScrewCorridor& corridor) {
    const auto& screws = built.blocks[corridor.block].part->screws;
    const auto& screw = screws[corridor.screw];
    const auto inPort = std::count_if(screws.begin(), screws.end(), [&](const parts::Screw& one) {
        return one.port == screw.port;
    });
    return (inPort == 1 ? "the screw" : "screw " + screw.name.text()) + " in " +
           portName(built, corridor.block, corridor.port);
}

Finding startOf(const BuiltLayout& built, const ScrewCorridor& corridor) {
    Finding finding;
    finding.check = Check::screwReach;
    finding.subjects = {built.layout.blocks[corridor.block].id};
    finding.place = built.blocks[corridor.block].screws[corridor.screw].head;
    finding.citation = sectionFor(
        built,
        built.blocks[corridor.block].part->listing.kind == ConnectorKind::distributionBlock
            ? Rule::blocksUnobstructed
            : Rule::splicesAccessible);
    return finding;
}

Finding turnedAway(const BuiltLayout& built, const ScrewCorridor& corridor) {
    const Weight weight = weightOfFixed(built, corridor.block);
    Finding finding = startOf(built, corridor);
    finding.verdict = weight.verdict;
    finding.citation = citationOf(built, weight);
    finding.missing = weight.missing;
    finding.working =
        sentence(screwName(built, corridor) +
                 " does not look at the cover, so no driver reaches it straight from there");
    return finding;
}

Finding driveMissing(const BuiltLayout& built, const ScrewCorridor& corridor) {
    const auto& part = *built.blocks[corridor.block].part;
    const std::string& drive = part.screws[corridor.screw].drive;
    Finding finding = startOf(built, corridor);
    finding.verdict = Verdict::cannotTell;
    finding.missing = {"drive of screw " + part.screws[corridor.screw].name.text() + " of part " +
                       part.id.text()};
    finding.working = sentence(
        "how wide a way the driver needs to " + screwName(built, corridor) + " cannot be told: " +
        (drive.empty() ? "its drive is not stated" : "its drive is stated as \"" + drive + "\""));
    return finding;
}

/// A conductor that would not stand there, were its diameter known and small, cannot be told.
Weight weightOf(const BuiltLayout& built,
                const ScrewCorridor& corridor,
                const NearCorridor& thing) {
    if (thing.kind != NearCorridor::Kind::conductor) {
        return weightOfFixed(built, corridor.block);
    }
    const double doubt = radiusInDoubt(built, thing.index);
    if (doubt > 0.0 && atLeast(thing.gap + doubt, 0.0)) {
        return {
            Verdict::cannotTell, Rule::splicesAccessible, diametersUnknown(built, {thing.index})};
    }
    return weightOfConductor(built, corridor.block);
}

std::string depthsText(const BuiltLayout& built, std::span<const NearCorridor> things) {
    constexpr std::size_t kMostNamed = 3;
    std::vector<std::string> words;
    for (const NearCorridor& thing : things.first(std::min(things.size(), kMostNamed))) {
        words.push_back(nearName(built, thing) + " by " + inText(-thing.gap));
    }
    if (things.size() > kMostNamed) {
        words.push_back(std::to_string(things.size() - kMostNamed) + " more");
    }
    return listed(words);
}

void addSubjects(Finding& finding, const BuiltLayout& built, std::span<const NearCorridor> things) {
    for (const NearCorridor& thing : things) {
        switch (thing.kind) {
            case NearCorridor::Kind::conductor:
                finding.subjects.emplace_back(built.layout.conductors[thing.index].id);
                break;
            case NearCorridor::Kind::block:
                finding.subjects.emplace_back(built.layout.blocks[thing.index].id);
                break;
            case NearCorridor::Kind::wall:
                break;
        }
    }
}

Finding obstructed(const BuiltLayout& built,
                   const ScrewCorridor& corridor,
                   std::span<const NearCorridor> things) {
    Finding finding = startOf(built, corridor);
    judge(finding, inches(things.front().gap), inches(0.0), Bound::atLeast);
    finding.place = things.front().place;
    finding.verdict = Verdict::meets;
    for (const NearCorridor& thing : things) {
        const Weight weight = weightOf(built, corridor, thing);
        if (gravity(weight.verdict) > gravity(finding.verdict)) {
            finding.verdict = weight.verdict;
            finding.citation = citationOf(built, weight);
            finding.missing = weight.missing;
        }
    }
    addSubjects(finding, built, things);
    finding.working =
        sentence("in the driver's straight way to " + screwName(built, corridor) + ", " +
                 inText(given(corridor.diameter)) + " wide, stand " + depthsText(built, things));
    return finding;
}

Finding unobstructed(const BuiltLayout& built, const ScrewCorridor& corridor) {
    Finding finding = startOf(built, corridor);
    finding.verdict = Verdict::meets;
    std::string nearest = "nothing is within " + inText(kNeighbourhood);
    if (!corridor.near.empty()) {
        const NearCorridor& thing = corridor.near.front();
        judge(finding, inches(thing.gap), inches(0.0), Bound::atLeast);
        nearest = "the nearest is " + nearName(built, thing) + ", " + inText(thing.gap) + " aside";
    }
    const std::string& drive = built.blocks[corridor.block].part->screws[corridor.screw].drive;
    finding.working =
        sentence("the way from the cover to " + screwName(built, corridor) + " is free for a " +
                 drive + " driver, " + inText(given(corridor.diameter)) + " wide: " + nearest);
    return finding;
}

Finding findingOf(const BuiltLayout& built, const ScrewCorridor& corridor) {
    if (!corridor.facesCover) {
        return turnedAway(built, corridor);
    }
    if (!corridor.diameter) {
        return driveMissing(built, corridor);
    }
    const auto things = standingIn(corridor);
    return things.empty() ? unobstructed(built, corridor) : obstructed(built, corridor, things);
}

Finding noScrews(const BuiltLayout& built, std::size_t block, std::size_t port) {
    Finding finding;
    finding.check = Check::screwReach;
    finding.verdict = Verdict::cannotTell;
    finding.subjects = {built.layout.blocks[block].id};
    finding.place = built.blocks[block].ports[port].mouth;
    finding.citation = sectionFor(built, Rule::splicesAccessible);
    finding.missing = {"screws of " + portName(built, block, port)};
    finding.working =
        sentence("where the screws of " + portName(built, block, port) + " are is not stated");
    return finding;
}

/// Graver first, then less room.
bool isWorse(const Finding& a, const Finding& b) {
    if (a.verdict != b.verdict) {
        return gravity(a.verdict) > gravity(b.verdict);
    }
    return a.margin && (!b.margin || a.margin->value < b.margin->value);
}

/// The worst of a port's screws, with everything that is missing for the others.
Finding worstOf(const BuiltLayout& built, std::span<const ScrewCorridor> screws) {
    Finding worst = findingOf(built, screws.front());
    for (const ScrewCorridor& corridor : screws.subspan(1)) {
        Finding other = findingOf(built, corridor);
        if (isWorse(other, worst)) {
            std::swap(worst, other);
        }
        if (worst.verdict == Verdict::cannotTell && other.missing != worst.missing) {
            worst.missing.insert(worst.missing.end(), other.missing.begin(), other.missing.end());
        }
    }
    return worst;
}

/// One finding for every port that holds a conductor.
void findReach(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t block) {
    const std::span corridors(facts.corridors[block]);
    std::size_t next = 0;
    for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
        const std::size_t first = next;
        while (next < corridors.size() && corridors[next].port == port) {
            ++next;
        }
        if (next > first) {
            findings.push_back(worstOf(built, corridors.subspan(first, next - first)));
        } else if (!facts.occupancy.of(block, port).empty()) {
            findings.push_back(noScrews(built, block, port));
        }
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::block, reads::kCorridors, findReach}});

}  // namespace

std::span<const Section> screwReachSections() {
    return kSections;
}

std::vector<Finding> checkScrewReach(const geometry::BuiltLayout& built) {
    return runChecks(built, {Check::screwReach});
}

}  // namespace gw::checks
