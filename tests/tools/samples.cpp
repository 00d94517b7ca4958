#include "tools/samples.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <functional>
#include <map>
#include <numeric>

#include "tools/sample_builder.h"

namespace gw::tools {
namespace {

using layout::Circuit;
using layout::CircuitId;
using layout::Entry;
using layout::EntryId;
using layout::Phase;
using layout::Role;
using layout::SystemId;
using layout::TapRule;
using layout::Wall;
using standards::RacewayType;
using standards::TradeSize;
using units::Inches;

const std::array<Phase, 4> kThreePhase = {Phase::a, Phase::b, Phase::c, Phase::n};
const std::array<Phase, 3> kSinglePhase = {Phase::a, Phase::b, Phase::n};

std::string letter(Phase phase) {
    return std::string(layout::phaseText(phase));
}

struct Raceway {
    RacewayType type;
    std::string size;
    double length;  ///< inches beyond the gutter
};

Entry entry(const std::string& id,
            const std::string& name,
            Wall wall,
            double u,
            double v,
            const Raceway& raceway,
            const std::string& leadsTo) {
    Entry made;
    made.id = EntryId(id);
    made.name = name;
    made.wall = wall;
    made.u = u;
    made.v = v;
    made.raceway = raceway.type;
    made.tradeSize = TradeSize::of(raceway.size);
    made.racewayLength = Inches::of(raceway.length);
    made.insulatingBushing = true;
    made.leadsTo = leadsTo;
    return made;
}

template <class Phases>
Circuit circuit(const std::string& id,
                const std::string& name,
                Role role,
                const Phases& phases,
                int sets,
                double device,
                double load) {
    Circuit made;
    made.id = CircuitId(id);
    made.name = name;
    made.role = role;
    made.system = SystemId("yard");
    made.sets = sets;
    made.phases.assign(phases.begin(), phases.end());
    made.deviceAmperes = device;
    made.loadAmperes = load;
    return made;
}

Circuit joining(Circuit made, const std::string& joins, TapRule rule, const std::string& supplies) {
    made.joins = CircuitId(joins);
    made.tapRule = rule;
    made.supplies = supplies;
    return made;
}

/// Evenly spaced values from `first` to `last`.
std::vector<double> steps(double first, double last, double step) {
    std::vector<double> values;
    for (double value = first; value <= last + 1e-9; value += step) {
        values.push_back(value);
    }
    return values;
}

struct Tenant {
    std::string id;
    std::string name;
    std::string size;
    double amperes;
    double x;  ///< of its entry in the bottom wall
    double z;
    std::string raceway;
};

/// Lays a circuit's conductors, the last first, in the first order of slots that lets all pass.
void laySet(SampleBuilder& maker,
            const std::vector<std::size_t>& conductors,
            const std::string& entry,
            const std::vector<LaneWishes>& wishes) {
    std::vector<int> slots(conductors.size());
    std::iota(slots.begin(), slots.end(), 1);
    do {
        for (std::size_t i = 0; i < conductors.size(); ++i) {
            maker.seat(conductors[i], entry, slots[i]);
        }
        std::size_t laid = 0;
        maker.mark();
        while (laid < conductors.size()) {
            const auto i = conductors.size() - 1 - laid;
            if (!maker.tryLay({conductors[i]}, wishes[std::min(i, wishes.size() - 1)])) {
                break;
            }
            ++laid;
        }
        if (laid == conductors.size()) {
            return;
        }
        maker.unlay();
    } while (std::next_permutation(slots.begin(), slots.end()));
    maker.giveUp(conductors.front());
}

/// A twin of the first sample with one thing done wrong.
void addBrokenTwin(std::vector<Sample>& samples,
                   const std::string& name,
                   const std::function<void(layout::Layout&)>& spoil) {
    auto layout = samples.front().layout;
    layout.title += ", spoilt: " + name;
    spoil(layout);
    samples.push_back({"broken-" + name, std::move(layout)});
}

layout::Conductor& conductorOf(layout::Layout& layout, const std::string& tag) {
    for (auto& conductor : layout.conductors) {
        if (conductor.tag == tag) {
            return conductor;
        }
    }
    std::abort();
}

void addBroken(std::vector<Sample>& samples) {
    // 3 AWG THWN-2 is 0.352 in thick (Chapter 9 Table 5): it wants 4.5 x 0.352 = 1.584 in at the
    // centreline, and gets 1 in.
    addBrokenTwin(samples, "bend-radius", [](layout::Layout& layout) {
        conductorOf(layout, "T2-A").corners.front().radius = Inches::of(1.0);
    });
    // Stripped a quarter inch too far.
    addBrokenTwin(samples, "exposed-copper", [](layout::Layout& layout) {
        auto& in = std::get<layout::InPort>(conductorOf(layout, "T3-A").from);
        in.strip = Inches::of(in.strip->in() + 0.25);
    });
    // Fine strands in a port that does not list them.
    addBrokenTwin(samples, "port-suits-conductor", [](layout::Layout& layout) {
        auto& conductor = conductorOf(layout, "T1-B");
        conductor.stranding = standards::Stranding::classK;
    });
}

}  // namespace

layout::Layout fiveTenants(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Five workshops on one service", {72.0, 12.0, 12.0});
    auto& layout = maker.layout();
    layout.project = "Riverside yard, building 4";
    maker.addSystem("yard", "208Y/120 V, 3-phase, 4-wire", 208, 120, 22.0);
    layout.readings.terminalSpace = layout::Readings::TerminalSpace::asForBlocks;

    auto service = circuit(
        "service", "Service, two sets in parallel", Role::service, kThreePhase, 2, 600, 470);
    service.tapRule = TapRule::serviceConductors;
    maker.addCircuit(service);
    maker.addEntry(entry(
        "E1", "Service set 1", Wall::top, 3.0, 2.4, {RacewayType::rmc, "3", 360}, "Meter, set 1"));
    maker.addEntry(entry(
        "E2", "Service set 2", Wall::top, 7.7, 4.0, {RacewayType::rmc, "3", 360}, "Meter, set 2"));

    const std::array<Tenant, 5> tenants = {{
        {"T1", "Boat repair", "3", 100, 20.0, 5.4, "1-1/4"},
        {"T2", "Sail loft", "3", 100, 31.0, 5.4, "1-1/4"},
        {"T3", "Bakery", "3/0", 200, 40.8, 5.8, "2"},
        {"T4", "Print shop", "3", 100, 53.0, 5.4, "1-1/4"},
        {"T5", "Joinery", "3/0", 200, 68.5, 5.8, "2"},
    }};
    for (std::size_t i = 0; i < kThreePhase.size(); ++i) {
        maker.addBlock("B" + letter(kThreePhase[i]),
                       "row-one-side-8-to-350",
                       {15.5 + 12.5 * double(i), 10.1, 0.0},
                       "+x+y",
                       kThreePhase[i]);
    }
    // The neutral's lane lies lowest and phase A's highest, so that no riser crosses a lane.
    for (int set = 1; set <= 2; ++set) {
        std::vector<std::size_t> conductors;
        for (int i = 0; i < 4; ++i) {
            const auto phase = kThreePhase[std::size_t(i)];
            conductors.push_back(
                maker.addConductor("S" + std::to_string(set) + "-" + letter(phase),
                                   "service",
                                   set,
                                   phase,
                                   {"350"},
                                   maker.atEntry("E" + std::to_string(set), i + 1),
                                   maker.inPort("B" + letter(phase), std::to_string(set))));
        }
        std::vector<LaneWishes> wishes(4);
        for (int i = 0; i < 4; ++i) {
            wishes[std::size_t(i)].y = {i < 2 ? 1.8 : 0.9};
            wishes[std::size_t(i)].z = {(set == 1 ? 0.79 : 2.61) + (i % 2 == 0 ? 0.91 : 0.0)};
            wishes[std::size_t(i)].lanesOnly = true;
        }
        laySet(maker, conductors, "E" + std::to_string(set), wishes);
    }

    LaneWishes taps;
    taps.y = steps(1.8, 7.2, 0.45);
    taps.z = steps(2.8, 11.2, 0.42);
    std::map<std::string, std::vector<std::size_t>> conductors;
    int port = 4;
    for (const auto& tenant : tenants) {
        maker.addCircuit(joining(circuit(tenant.id,
                                         tenant.name,
                                         Role::tap,
                                         kThreePhase,
                                         1,
                                         tenant.amperes,
                                         tenant.amperes * 0.75),
                                 "service",
                                 TapRule::serviceConductors,
                                 tenant.name + " disconnect"));
        maker.addEntry(entry("E" + tenant.id,
                             tenant.name,
                             Wall::bottom,
                             tenant.x,
                             tenant.z,
                             {RacewayType::emt, tenant.raceway, 12},
                             tenant.name + " disconnect"));
        for (int i = 0; i < 4; ++i) {
            const auto phase = kThreePhase[std::size_t(i)];
            conductors[tenant.id].push_back(
                maker.addConductor(tenant.id + "-" + letter(phase),
                                   tenant.id,
                                   1,
                                   phase,
                                   {tenant.size},
                                   maker.inPort("B" + letter(phase), std::to_string(port)),
                                   maker.atEntry("E" + tenant.id, i + 1)));
        }
        ++port;
    }
    // The thick ones first: they have the least choice.
    for (const char* id : {"T3", "T5", "T2", "T1", "T4"}) {
        laySet(maker, conductors[id], "E" + std::string(id), {taps});
    }
    return layout;
}

std::vector<Sample> allSamples(const parts::Shelf& shelf) {
    std::vector<Sample> samples{{"five-tenants", fiveTenants(shelf)}};
    addBroken(samples);
    return samples;
}

}  // namespace gw::tools
