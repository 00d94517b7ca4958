#include "tools/sample_builder.h"

#include <algorithm>
#include <cstdlib>
#include <iostream>

namespace gw::tools {
namespace {

[[noreturn]] void stop(const std::string& sentence) {
    std::cerr << "make_samples: " << sentence << "\n";
    std::exit(3);
}

/// As conductors are bought and marked in the yard: customary colours by voltage; a large neutral
/// is black with tape in white, or gray at 480 V.
std::string colourOf(const layout::System& system, layout::Phase phase, units::WireSize size) {
    const bool high = system.voltsBetweenPhases == 480;
    const bool large = size >= units::WireSize::of("4");
    const std::string neutral = high ? "gray" : "white";
    switch (phase) {
        case layout::Phase::a:
            return high ? "brown" : "black";
        case layout::Phase::b:
            return high ? "orange" : "red";
        case layout::Phase::c:
            return high ? "yellow" : "blue";
        case layout::Phase::n:
            return large ? "black with " + neutral + " tape" : neutral;
        case layout::Phase::g:
            return "green";
    }
    return {};
}

}  // namespace

SampleBuilder::SampleBuilder(const parts::Shelf& shelf, std::string title, const Vec3& inside)
    : shelf_(shelf) {
    layout_.title = std::move(title);
    layout_.project = "Riverside yard";
    layout_.drawnBy = "Yard office";
    layout_.date = "2026-11-25";
    layout_.revision = "A";
    layout_.gutter.inside = inside;
    layout_.gutter.sheet = units::Inches::of(inside.y > 6.0 ? 0.067 : 0.053);
    layout_.gutter.enclosureType = "1";
    layout_.gutter.supportSpacing = units::Inches::of(std::min(36.0, inside.x));
    layout_.surroundings.location = standards::Location::dry;
    layout_.surroundings.ambientCelsius = 30.0;
    layout_.surroundings.floods = false;
}

void SampleBuilder::asWireway(const std::string& largest) {
    layout_.gutter.article = standards::GutterArticle::metalWireway;
    layout_.gutter.largestConductor = units::WireSize::of(largest);
}

void SampleBuilder::addSystem(const std::string& id,
                              const std::string& name,
                              int voltsBetween,
                              int voltsToGround,
                              double faultKiloamperes) {
    layout_.systems.push_back(
        {layout::SystemId(id), name, voltsBetween, voltsToGround, faultKiloamperes});
}

void SampleBuilder::addBlock(const std::string& id,
                             const std::string& part,
                             const Vec3& corner,
                             const std::string& attitude,
                             layout::Phase phase) {
    const auto turned = parts::Attitude::fromText(attitude);
    if (!turned || shelf_.find(parts::PartId(part)) == shelf_.end()) {
        stop("block " + id + ": no part " + part + " or attitude " + attitude);
    }
    layout::Block block;
    block.id = layout::BlockId(id);
    block.name = "Block " + id.substr(1);
    block.part = parts::PartId(part);
    block.corner = corner;
    block.attitude = *turned;
    block.mounted = true;
    block.phase = phase;
    layout_.blocks.push_back(block);
}

Vec3 SampleBuilder::extents(const std::string& part, const std::string& attitude) const {
    const auto found = shelf_.find(parts::PartId(part));
    if (found == shelf_.end()) {
        stop("no part " + part);
    }
    return parts::Attitude::fromText(attitude)->turnedExtents(found->second.body);
}

const parts::Part& SampleBuilder::partOf(const std::string& block) const {
    for (const auto& candidate : layout_.blocks) {
        if (candidate.id.text() == block) {
            return shelf_.at(candidate.part);
        }
    }
    stop("no block " + block);
}

layout::End SampleBuilder::atEntry(const std::string& entry, int slot) const {
    return layout::AtEntry{layout::EntryId(entry), slot};
}

layout::End SampleBuilder::inPort(const std::string& block, const std::string& port) const {
    for (const auto& candidate : partOf(block).ports) {
        if (candidate.name.text() == port) {
            const bool through = candidate.opening == parts::PortOpening::both;
            return layout::InPort{layout::BlockId(block),
                                  candidate.name,
                                  candidate.stripLength,
                                  through ? candidate.stripLength : std::nullopt};
        }
    }
    stop("block " + block + " has no port " + port);
}

std::size_t SampleBuilder::addConductor(const std::string& tag,
                                        const std::string& circuit,
                                        int set,
                                        layout::Phase phase,
                                        const ConductorKind& kind,
                                        layout::End from,
                                        layout::End to) {
    layout::Conductor conductor;
    conductor.id = layout::ConductorId(tag);
    conductor.tag = tag;
    conductor.circuit = layout::CircuitId(circuit);
    conductor.set = set;
    conductor.phase = phase;
    conductor.size = units::WireSize::of(kind.size);
    conductor.metal = kind.metal;
    conductor.insulation = kind.insulation;
    conductor.stranding = kind.stranding;
    conductor.colour = colourOf(layout_.systems.front(), phase, conductor.size);
    conductor.from = std::move(from);
    conductor.to = std::move(to);
    layout_.conductors.push_back(std::move(conductor));
    return layout_.conductors.size() - 1;
}

void SampleBuilder::passThrough(std::size_t conductor,
                                const std::string& block,
                                const std::string& port,
                                const Offset& offset) {
    auto& laid = layout_.conductors[conductor];
    const auto built = geometry::build(layout_, shelf_);
    const auto& ends = built.conductors[conductor];
    const auto found = std::find_if(
        layout_.blocks.begin(), layout_.blocks.end(), [&](const layout::Block& candidate) {
            return candidate.id.text() == block;
        });
    const auto& placed = built.blocks[std::size_t(found - layout_.blocks.begin())];
    const auto& ports = placed.part->ports;
    const auto bore = std::find_if(ports.begin(), ports.end(), [&](const parts::Port& candidate) {
        return candidate.name.text() == port;
    });
    const Vec3 lane = placed.ports[std::size_t(bore - ports.begin())].mouth;
    const auto radius = units::Inches::of(trainingRadius(ends.diameter.in()));
    for (const auto* end : {&ends.from, &ends.to}) {
        const Vec3 first = end->mouth + end->axis * offset.out;
        const Vec3 second{first.x + end->axis.x * offset.run, lane.y, lane.z};
        const bool leaving = end == &ends.from;
        laid.corners.push_back({leaving ? first : second, radius});
        laid.corners.push_back({leaving ? second : first, radius});
    }
    constexpr double kMargin = 1.0 / 32.0;
    laid.passes.push_back({layout::BlockId(block),
                           bore->name,
                           units::Inches::of(kMargin),
                           units::Inches::of(bore->boreDepth.in() - 2.0 * kMargin)});
    laid_.push_back(conductor);
}

void SampleBuilder::elbow(std::size_t conductor) {
    const auto built = geometry::build(layout_, shelf_);
    const auto& ends = built.conductors[conductor];
    const Vec3& from = ends.from.axis;
    const Vec3 corner = ends.from.mouth + from * dot(ends.to.mouth - ends.from.mouth, from);
    layout_.conductors[conductor].corners = {
        {corner, units::Inches::of(trainingRadius(ends.diameter.in()))}};
    laid_.push_back(conductor);
}

bool SampleBuilder::tryLay(const std::vector<std::size_t>& order, const LaneWishes& wishes) {
    const auto before = laid_;
    for (const std::size_t index : order) {
        if (!layConductor(layout_, shelf_, index, laid_, wishes)) {
            laid_ = before;
            return false;
        }
        laid_.push_back(index);
    }
    return true;
}

void SampleBuilder::giveUp(std::size_t conductor) const {
    stop(layout_.title + ": no way found for " + layout_.conductors[conductor].tag);
}

void SampleBuilder::seat(std::size_t conductor, const std::string& entry, int slot) {
    for (auto* end : {&layout_.conductors[conductor].from, &layout_.conductors[conductor].to}) {
        if (auto* at = std::get_if<layout::AtEntry>(end);
            at != nullptr && at->entry.text() == entry) {
            at->slot = slot;
        }
    }
}

}  // namespace gw::tools
