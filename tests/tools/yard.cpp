#include "tools/yard.h"

#include <algorithm>
#include <numeric>

namespace gw::tools {

using layout::Circuit;
using layout::CircuitId;
using layout::Entry;
using layout::EntryId;
using layout::Role;
using layout::SystemId;
using layout::TapRule;
using layout::Wall;
using standards::TradeSize;
using units::Inches;

std::string letter(layout::Phase phase) {
    return std::string(layout::phaseText(phase));
}

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
    made.bondedBy = raceway.type == standards::RacewayType::rmc
                        ? layout::BondedBy::threadedHub
                        : layout::BondedBy::threadlessFitting;
    made.leadsTo = leadsTo;
    return made;
}

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
    made.phases = phases;
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

std::vector<double> steps(double first, double last, double step) {
    std::vector<double> values;
    for (double value = first; value <= last + 1e-9; value += step) {
        values.push_back(value);
    }
    return values;
}

void laySet(SampleBuilder& maker,
            const std::vector<std::size_t>& conductors,
            const std::string& entry,
            const std::vector<LaneWishes>& wishes) {
    std::vector<int> slots(conductors.size());
    std::size_t furthest = 0;
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
        furthest = std::max(furthest, laid);
        maker.unlay();
    } while (std::next_permutation(slots.begin(), slots.end()));
    maker.giveUp(conductors[conductors.size() - 1 - furthest]);
}

std::vector<std::size_t> addMains(SampleBuilder& maker,
                                  const std::string& circuit,
                                  const std::string& tagPrefix,
                                  const Phases& phases,
                                  const std::string& size) {
    std::vector<std::size_t> made;
    for (std::size_t i = 0; i < phases.size(); ++i) {
        made.push_back(maker.addConductor(tagPrefix + letter(phases[i]),
                                          circuit,
                                          1,
                                          phases[i],
                                          {size},
                                          maker.atEntry("E1", static_cast<int>(i) + 1),
                                          maker.inPort("B" + letter(phases[i]), "1")));
    }
    return made;
}

std::vector<std::size_t> addTap(SampleBuilder& maker,
                                const Tap& tap,
                                const Phases& phases,
                                const std::string& joins,
                                TapRule rule) {
    maker.addCircuit(joining(circuit(tap.id, tap.name, Role::tap, phases, 1, tap.device, tap.load),
                             joins,
                             rule,
                             tap.leadsTo));
    maker.addEntry(
        entry("E" + tap.id, tap.name, Wall::bottom, tap.x, tap.z, tap.raceway, tap.leadsTo));
    std::vector<std::size_t> made;
    for (std::size_t i = 0; i < phases.size(); ++i) {
        made.push_back(maker.addConductor(tap.id + "-" + letter(phases[i]),
                                          tap.id,
                                          1,
                                          phases[i],
                                          {tap.size},
                                          maker.inPort("B" + letter(phases[i]), tap.port),
                                          maker.atEntry("E" + tap.id, static_cast<int>(i) + 1)));
    }
    return made;
}

void addStraight(SampleBuilder& maker,
                 const std::string& circuit,
                 const Phases& phases,
                 const std::string& size,
                 const std::pair<std::string, std::string>& entries,
                 int firstSlot) {
    int slot = firstSlot;
    for (const auto phase : phases) {
        maker.addConductor(circuit + "-" + letter(phase),
                           circuit,
                           1,
                           phase,
                           {size},
                           maker.atEntry(entries.first, slot),
                           maker.atEntry(entries.second, slot));
        ++slot;
    }
}

void addFacing(SampleBuilder& maker,
               const std::pair<std::string, std::string>& entries,
               double height,
               const Raceway& raceway) {
    maker.addEntry(
        entry(entries.first, "From " + entries.first, Wall::left, height, 3.0, raceway, "Panel Y"));
    maker.addEntry(
        entry(entries.second, "To " + entries.second, Wall::right, height, 3.0, raceway, "Shed"));
}

SampleBuilder straightWireway(const parts::Shelf& shelf, const std::string& title) {
    SampleBuilder maker(shelf, title, {24, 8, 6});
    maker.asWireway("4/0");
    maker.addSystem("yard", "120/240 V, 1-phase, 3-wire", 240, 120, 10.0);
    return maker;
}

}  // namespace gw::tools
