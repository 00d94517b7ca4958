#include "support/long_gutter.h"

#include <algorithm>
#include <array>
#include <string>
#include <tuple>

#include "base/contract.h"
#include "geometry/built_layout.h"

namespace gw::test_support {

namespace {

using layout::Phase;
using layout::Wall;

constexpr double kStretch = 18.0;  // inches
constexpr std::size_t kInStretch = 12;
constexpr std::array<Phase, 4> kPhases{Phase::a, Phase::b, Phase::c, Phase::n};
constexpr double kSplicedZ = 3.0;
constexpr const char* kSplice = "splice-end-to-end-350";

/// 1/0 AWG THWN-2 is 0.486 in thick (NFPA 70 Chapter 9 Table 5); 4.5 diameters is 2.187 in.
constexpr double kBend = 2.25;

std::string named(const char* what, std::size_t stretch) {
    return what + std::to_string(stretch);
}

class Maker {
public:
    Maker(std::size_t conductors, const parts::Shelf& shelf) : shelf_(shelf), left_(conductors) {
        made_.title = "Long gutter";
        made_.project = "Riverside yard";
        made_.gutter.inside = {1.5 * static_cast<double>(conductors), 12.0, 12.0};
        made_.gutter.sheet = units::Inches::of(0.067);
        made_.gutter.enclosureType = "1";
        made_.surroundings.location = standards::Location::dry;
        made_.surroundings.ambientCelsius = 30.0;
        made_.surroundings.floods = false;
        made_.systems.push_back(
            {layout::SystemId("yard"), "208Y/120 V, 3-phase, 4-wire", 208, 120, 10.0});
    }

    layout::Layout run() {
        for (std::size_t stretch = 0; left_ > 0; ++stretch) {
            addThrough(stretch);
            addSpliced(stretch);
        }
        layRuns();
        return std::move(made_);
    }

private:
    /// Where the conductors of a stretch come in, and where they leave after so much of a run.
    double inAt(std::size_t stretch) const {
        return std::min(kStretch * static_cast<double>(stretch) + 3.0, made_.gutter.inside.x - 9.0);
    }
    double outAt(std::size_t stretch, double run) const {
        return std::min(inAt(stretch) + run, made_.gutter.inside.x - 1.5);
    }

    std::size_t take() {
        const std::size_t count = std::min<std::size_t>(left_, kPhases.size());
        left_ -= count;
        return count;
    }

    void addThrough(std::size_t stretch) {
        const std::size_t count = take();
        const double z = stretch % 2 == 0 ? 8.0 : 10.0;  // where two stretches overlap
        addCircuit(named("R", stretch), "");
        addEntry(named("RI", stretch), Wall::top, inAt(stretch), z);
        addEntry(named("RO", stretch), Wall::bottom, outAt(stretch, 26.0), z);
        for (std::size_t i = 0; i < count; ++i) {
            const int slot = static_cast<int>(i) + 1;
            addConductor(named("R", stretch),
                         i,
                         layout::AtEntry{layout::EntryId(named("RI", stretch)), slot},
                         layout::AtEntry{layout::EntryId(named("RO", stretch)), slot});
        }
    }

    void addSpliced(std::size_t stretch) {
        const std::size_t feeds = take();
        const std::size_t taps = take();
        if (feeds > 0) {
            addCircuit(named("F", stretch), "");
            addEntry(named("FI", stretch), Wall::top, inAt(stretch), kSplicedZ);
        }
        if (taps > 0) {
            addCircuit(named("T", stretch), named("F", stretch));
            addEntry(named("TO", stretch), Wall::bottom, outAt(stretch, 13.0), kSplicedZ);
        }
        for (std::size_t i = 0; i < feeds; ++i) {
            addSplice(stretch, i);
            const int slot = static_cast<int>(i) + 1;
            addConductor(named("F", stretch),
                         i,
                         layout::AtEntry{layout::EntryId(named("FI", stretch)), slot},
                         inSplice(stretch, i, "1"));
        }
        for (std::size_t i = 0; i < taps; ++i) {
            const int slot = static_cast<int>(i) + 1;
            addConductor(named("T", stretch),
                         i,
                         inSplice(stretch, i, "2"),
                         layout::AtEntry{layout::EntryId(named("TO", stretch)), slot});
        }
    }

    void addCircuit(const std::string& id, const std::string& joins) {
        layout::Circuit circuit;
        circuit.id = layout::CircuitId(id);
        circuit.name = id;
        circuit.role = joins.empty() ? layout::Role::feeder : layout::Role::tap;
        circuit.system = layout::SystemId("yard");
        circuit.phases.assign(kPhases.begin(), kPhases.end());
        circuit.deviceAmperes = 150.0;
        circuit.loadAmperes = 100.0;
        if (!joins.empty()) {
            circuit.joins = layout::CircuitId(joins);
            circuit.tapRule = layout::TapRule::tenFoot;
        }
        made_.circuits.push_back(circuit);
    }

    void addEntry(const std::string& id, Wall wall, double x, double z) {
        layout::Entry entry;
        entry.id = layout::EntryId(id);
        entry.name = id;
        entry.wall = wall;
        entry.u = x;
        entry.v = z;
        entry.raceway = standards::RacewayType::emt;
        entry.tradeSize = standards::TradeSize::of("2");
        entry.racewayLength = units::Inches::of(120.0);
        entry.insulatingBushing = true;
        made_.entries.push_back(entry);
    }

    /// Its corner comes later, when it is known where the conductors come in.
    void addSplice(std::size_t stretch, std::size_t i) {
        layout::Block block;
        block.id = layout::BlockId(spliceId(stretch, i));
        block.name = block.id.text();
        block.part = parts::PartId(kSplice);
        block.mounted = false;
        block.phase = kPhases[i];
        made_.blocks.push_back(block);
    }

    static std::string spliceId(std::size_t stretch, std::size_t i) {
        return "B" + std::to_string(stretch) + "-" + std::to_string(i);
    }

    layout::InPort inSplice(std::size_t stretch, std::size_t i, const std::string& port) const {
        for (const auto& candidate : shelf_.at(parts::PartId(kSplice)).ports) {
            if (candidate.name.text() == port) {
                return {layout::BlockId(spliceId(stretch, i)),
                        candidate.name,
                        candidate.stripLength,
                        std::nullopt};
            }
        }
        CONTRACT(false);
    }

    void addConductor(const std::string& circuit,
                      std::size_t i,
                      const layout::End& from,
                      const layout::End& to) {
        layout::Conductor conductor;
        conductor.id = layout::ConductorId(circuit + "-" + std::to_string(i + 1));
        conductor.tag = conductor.id.text();
        conductor.circuit = layout::CircuitId(circuit);
        conductor.phase = kPhases[i];
        conductor.size = units::WireSize::of("1/0");
        conductor.metal = standards::Metal::copper;
        conductor.insulation = standards::Insulation::thwn2;
        conductor.stranding = standards::Stranding::classB;
        conductor.from = from;
        conductor.to = to;
        made_.conductors.push_back(conductor);
    }

    // ---- once it is known where in its raceway each conductor lies ----

    void layRuns() {
        const geometry::BuiltLayout built = geometry::build(made_, shelf_);
        for (std::size_t i = 0; i < made_.conductors.size(); ++i) {
            layout::Conductor& conductor = made_.conductors[i];
            const bool through = conductor.tag.front() == 'R';
            const double y = through ? 3.0 + 0.6 * laneOf(built, i) : 2.6 + 1.7 * laneOf(built, i);
            for (const geometry::BuiltEnd* end :
                 {&built.conductors[i].from, &built.conductors[i].to}) {
                if (end->kind == geometry::BuiltEnd::Kind::entry) {
                    conductor.corners.push_back(
                        {{end->mouth.x, y, end->mouth.z}, units::Inches::of(kBend)});
                }
            }
            if (const auto* into = std::get_if<layout::InPort>(&conductor.to)) {
                placeSplice(
                    into->block,
                    {built.conductors[i].from.mouth.x + 4.5, y, built.conductors[i].from.mouth.z});
            }
        }
    }

    /// Of those that come through one raceway, the one furthest along lies highest: then none has
    /// to pass another where it comes in or leaves.
    static double laneOf(const geometry::BuiltLayout& built, std::size_t conductor) {
        const geometry::BuiltConductor& own = built.conductors[conductor];
        const geometry::BuiltEnd& end = own.from.entry ? own.from : own.to;
        CONTRACT(end.entry.has_value());
        int lower = 0;
        for (const auto& [slot, place] : built.entries[*end.entry].slots) {
            lower += std::tie(place.x, place.z) < std::tie(end.mouth.x, end.mouth.z) ? 1 : 0;
        }
        return lower;
    }

    /// With its first mouth there.
    void placeSplice(const layout::BlockId& id, const Vec3& mouth) {
        for (layout::Block& block : made_.blocks) {
            if (block.id == id) {
                block.corner = mouth - shelf_.at(block.part).ports.front().mouth;
            }
        }
    }

    layout::Layout made_;
    const parts::Shelf& shelf_;
    std::size_t left_;
};

}  // namespace

layout::Layout longGutter(std::size_t conductors, const parts::Shelf& shelf) {
    CONTRACT(conductors >= kInStretch && conductors <= 800);
    return Maker(conductors, shelf).run();
}

Scene sceneOf(const geometry::BuiltLayout& built) {
    Scene scene{built.layout.gutter.inside, {}, {}};
    for (const geometry::BuiltConductor& conductor : built.conductors) {
        scene.tubes.push_back({conductor.built.path, conductor.radius()});
    }
    for (const geometry::BuiltBlock& block : built.blocks) {
        scene.blocks.push_back(block.body);
    }
    return scene;
}

}  // namespace gw::test_support
