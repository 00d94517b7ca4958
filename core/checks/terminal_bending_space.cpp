#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/tolerance.h"
#include "checks/bending_need.h"
#include "checks/support.h"
#include "checks/units.h"

/// Room in front of every port a conductor leaves by: the free distance to the first wall or block
/// against Table 312.6(A), or (B) where the conductor leaves through the wall the port faces.
namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using layout::Wall;
using standards::Rule;

/// One open mouth with the conductors that leave by it.
struct Mouth {
    std::size_t block = 0;
    std::size_t port = 0;
    bool far = false;
    std::vector<Occupant> leaving{};
    std::size_t wires = 0;  ///< conductors in the whole port
};

Vec3 placeOf(const BuiltLayout& built, const Mouth& mouth) {
    const auto& port = built.blocks[mouth.block].ports[mouth.port];
    return mouth.far ? port.farMouth : port.mouth;
}

Vec3 outwardOf(const BuiltLayout& built, const Mouth& mouth) {
    const Vec3& direction = built.blocks[mouth.block].ports[mouth.port].direction;
    return mouth.far ? direction : -direction;
}

bool leavesBy(const BuiltLayout& built, const Occupant& occupant, bool far) {
    const BuiltEnd* end = endOf(built, occupant);
    return end == nullptr || entersFar(built, *end) == far;
}

std::vector<Mouth> mouthsOf(const BuiltLayout& built,
                            const Occupancy& occupancy,
                            std::size_t block) {
    std::vector<Mouth> mouths;
    for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
        const auto occupants = occupancy.of(block, port);
        for (const bool far : {false, true}) {
            Mouth mouth{block, port, far};
            mouth.wires = occupants.size();
            std::copy_if(occupants.begin(),
                         occupants.end(),
                         std::back_inserter(mouth.leaving),
                         [&](const Occupant& one) { return leavesBy(built, one, far); });
            if (!mouth.leaving.empty()) {
                mouths.push_back(std::move(mouth));
            }
        }
    }
    return mouths;
}

// ---- the free distance ----------------------------------------------------------------------

struct Free {
    double distance = 0.0;
    std::string obstacle;
};

/// The cover stands across the way as a wall does.
Free toWall(const BuiltLayout& built, const Vec3& from, const Vec3& outward) {
    const Vec3& inside = built.gutter().inside;
    const double wall = std::max(0.0, dot(inside, outward));
    std::string name = "the cover";
    for (const Wall one : {Wall::left, Wall::right, Wall::top, Wall::bottom, Wall::back}) {
        if (dot(layout::inwardNormal(one), outward) < -0.5) {
            name = "the " + std::string(layout::wallText(one)) + " wall";
        }
    }
    return {std::max(0.0, wall - dot(from, outward)), name};
}

/// How far a point lies from the shadow of a box looking along an axis of the gutter.
double asideOf(const geometry::Box& box, const Vec3& point, const Vec3& along) {
    const auto gap = [](double least, double value, double greatest) {
        return std::max({0.0, least - value, value - greatest});
    };
    const Vec3 apart{gap(box.least.x, point.x, box.greatest.x),
                     gap(box.least.y, point.y, box.greatest.y),
                     gap(box.least.z, point.z, box.greatest.z)};
    const Vec3 beside = apart - along * dot(apart, along);
    return norm(beside);
}

/// Distance to a block standing in the way of a conductor of this radius; infinite where none does.
double toBlock(const geometry::Box& box, const Vec3& from, const Vec3& outward, double radius) {
    constexpr double kNever = std::numeric_limits<double>::infinity();
    const double nearFace = std::min(dot(box.least, outward), dot(box.greatest, outward));
    const double farFace = std::max(dot(box.least, outward), dot(box.greatest, outward));
    const double start = dot(from, outward);
    const bool behind = farFace <= start + kSamePoint;
    if (behind || asideOf(box, from, outward) >= radius - kSamePoint) {
        return kNever;
    }
    return std::max(0.0, nearFace - start);
}

double widestRadius(const BuiltLayout& built, const Mouth& mouth) {
    double radius = 0.0;
    for (const Occupant& one : mouth.leaving) {
        radius = std::max(radius, built.conductors[one.conductor].radius());
    }
    return radius;
}

Free freeDistance(const BuiltLayout& built, const BlockRow& row, const Mouth& mouth) {
    const Vec3 from = placeOf(built, mouth);
    const Vec3 outward = outwardOf(built, mouth);
    const double radius = widestRadius(built, mouth);
    Free free = toWall(built, from, outward);
    const double reach = outward.x * free.distance;
    row.between(built,
                from.x - radius + std::min(0.0, reach),
                from.x + radius + std::max(0.0, reach),
                [&](std::size_t block) {
                    if (block == mouth.block) {
                        return;
                    }
                    const double distance =
                        toBlock(built.blocks[block].body, from, outward, radius);
                    if (distance < free.distance) {
                        free = {distance, blockName(built, block)};
                    }
                });
    return free;
}

// ---- which table ----------------------------------------------------------------------------

/// The end to which the conductor runs on from this mouth.
const BuiltEnd& endBeyond(const BuiltLayout& built, const Occupant& occupant, bool far) {
    const BuiltConductor& conductor = built.conductors[occupant.conductor];
    switch (occupant.how) {
        case Occupant::How::from:
            return conductor.to;
        case Occupant::How::to:
            return conductor.from;
        case Occupant::How::pass:
            break;
    }
    const auto& pass = conductor.passes[occupant.pass];
    const bool towardEnd = (pass.farAt > pass.nearAt) == far;
    return towardEnd ? conductor.to : conductor.from;
}

bool leavesThroughFacedWall(const BuiltLayout& built, const Mouth& mouth, const Occupant& one) {
    const BuiltEnd& end = endBeyond(built, one, mouth.far);
    if (end.kind != BuiltEnd::Kind::entry) {
        return false;
    }
    const Vec3 inward = layout::inwardNormal(built.layout.entries[given(end.entry)].wall);
    return dot(inward, outwardOf(built, mouth)) < -0.5;
}

struct Asked {
    std::size_t conductor = 0;
    bool opposite = false;  ///< Table (B)
    SpaceNeed need;
};

Asked mostAsked(const BuiltLayout& built, const Mouth& mouth, double space) {
    std::optional<Asked> most;
    for (const Occupant& one : mouth.leaving) {
        const bool opposite = leavesThroughFacedWall(built, mouth, one);
        Asked asked{one.conductor,
                    opposite,
                    opposite ? needByTableB(built, one.conductor, mouth.wires)
                             : needByTableA(built, one.conductor, mouth.wires)};
        if (!most || isWorse(asked.need, space, most->need, space)) {
            most = std::move(asked);
        }
    }
    return *most;
}

// ---- which rule binds -----------------------------------------------------------------------

bool isMetalWireway(const BuiltLayout& built) {
    return built.gutter().article == standards::GutterArticle::metalWireway;
}

std::vector<Reading> readingsOf(const BuiltLayout& built, const Finding& byTable) {
    using TerminalSpace = layout::Readings::TerminalSpace;
    const auto recorded = built.layout.readings.terminalSpace;
    Reading asForBlocks;
    asForBlocks.name = "the tables for terminals hold here as for power distribution blocks";
    asForBlocks.verdict = byTable.verdict;
    asForBlocks.measured = byTable.measured;
    asForBlocks.limit = byTable.limit;
    asForBlocks.sentence = byTable.working;
    asForBlocks.chosen = recorded == TerminalSpace::asForBlocks;
    Reading widthOnly;
    widthOnly.name = "only the gutter's width where conductors bend is asked";
    widthOnly.measured = byTable.measured;
    widthOnly.sentence = "No space is asked at the port itself.";
    widthOnly.chosen = recorded == TerminalSpace::gutterWidthOnly;
    return {asForBlocks, widthOnly};
}

/// The code names the tables for power distribution blocks in metal wireways only; anywhere else
/// and for other connectors inspectors differ.
void applyRule(Finding& finding, const BuiltLayout& built, std::size_t block, bool opposite) {
    const auto& kind = built.blocks[block].part->listing.kind;
    const bool mayBind = isMetalWireway(built) && kind != parts::ConnectorKind::wireConnector;
    finding.citation =
        sectionFor(built, opposite ? Rule::terminalSpaceOpposite : Rule::terminalSpace);
    if (mayBind && kind) {
        finding.citation = sectionFor(built, Rule::blocksBendingSpace);
        return;
    }
    if (finding.verdict == Verdict::meets) {
        return;
    }
    const Verdict ifBinding = finding.verdict;
    finding.readings = readingsOf(built, finding);
    finding.verdict = settle(finding.readings);
    if (mayBind && finding.verdict != ifBinding) {
        finding.verdict = Verdict::cannotTell;
        finding.missing.push_back("kind of the connector of " + blockName(built, block) +
                                  " (wire connector or distribution block)");
    }
    if (finding.verdict != Verdict::cannotTell) {
        finding.missing.clear();
    }
}

bool mouthNotStated(const BuiltLayout& built, const Mouth& mouth) {
    return std::any_of(mouth.leaving.begin(), mouth.leaving.end(), [&](const Occupant& one) {
        const BuiltEnd* end = endOf(built, one);
        return end != nullptr && end->intoClosedMouth;
    });
}

Finding findingFor(const BuiltLayout& built, const BlockRow& row, const Mouth& mouth) {
    Finding finding;
    finding.check = Check::terminalBendingSpace;
    finding.subjects = {built.layout.blocks[mouth.block].id};
    for (const Occupant& one : mouth.leaving) {
        finding.subjects.emplace_back(built.layout.conductors[one.conductor].id);
    }
    finding.place = placeOf(built, mouth);
    const std::string port = portName(built, mouth.block, mouth.port);
    if (mouthNotStated(built, mouth)) {
        finding.verdict = Verdict::cannotTell;
        finding.citation = sectionFor(built, Rule::terminalSpace);
        finding.missing = {"open mouth of " + port};
        finding.working = sentence("which mouth of " + port + " is open is not stated");
        return finding;
    }
    const Free free = freeDistance(built, row, mouth);
    const Asked asked = mostAsked(built, mouth, free.distance);
    judgeSpace(finding, asked.need, free.distance);
    finding.working =
        sentence(conductorName(built, asked.conductor) + " leaves " + port + " with " +
                 inText(free.distance) + " free to " + free.obstacle + ", " +
                 (asked.opposite ? "goes out through the wall the port faces" : "and turns aside") +
                 ", and " + asked.need.text);
    applyRule(finding, built, mouth.block, asked.opposite);
    return finding;
}

void ofBlock(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t block) {
    for (const Mouth& mouth : mouthsOf(built, facts.occupancy, block)) {
        findings.push_back(findingFor(built, facts.blockRow, mouth));
    }
}

constexpr auto kSections =
    std::to_array<Section>({{Unit::block, reads::kPaths | reads::kBlockRow, ofBlock}});

}  // namespace

std::span<const Section> terminalBendingSpaceSections() {
    return kSections;
}

std::vector<Finding> checkTerminalBendingSpace(const BuiltLayout& built) {
    return runChecks(built, {Check::terminalBendingSpace});
}

}  // namespace gw::checks
