#include "tools/samples.h"
#include "tools/yard.h"

namespace gw::tools {

using layout::Role;
using layout::TapRule;
using layout::Wall;
using standards::RacewayType;

layout::Layout slipwayPumps(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Slipway pumps, wet wall", {48.0, 8.0, 8.0});
    auto& layout = maker.layout();
    layout.project = "Riverside yard, slipway";
    layout.gutter.orientation = layout::Orientation::vertical;
    layout.gutter.enclosureType = "3R";
    layout.surroundings.location = standards::Location::wet;
    layout.readings.terminalSpace = layout::Readings::TerminalSpace::asForBlocks;
    layout.readings.insideWeatherproof = layout::Readings::InsideWeatherproof::wet;
    maker.addSystem("yard", "480Y/277 V, 3-phase, pumps on three wires", 480, 277, 18.0);

    maker.addCircuit(circuit("feeder", "Pump feeder", Role::feeder, kDelta, 1, 175, 118));
    maker.addEntry(entry("E1",
                         "Feeder, from below",
                         Wall::left,
                         3.4,
                         2.4,
                         {RacewayType::rmc, "2", 480},
                         "Switchboard Y"));
    for (std::size_t i = 0; i < kDelta.size(); ++i) {
        maker.addBlock("B" + letter(kDelta[i]),
                       "sealed-4-to-2-0",
                       {13.0 + 10.0 * static_cast<double>(i), 6.45, 0.0},
                       "+x+y",
                       kDelta[i]);
    }
    std::vector<std::size_t> mains;
    for (std::size_t i = 0; i < kDelta.size(); ++i) {
        const auto phase = letter(kDelta[i]);
        mains.push_back(maker.addConductor("F-" + phase,
                                           "feeder",
                                           1,
                                           kDelta[i],
                                           {"2/0"},
                                           maker.atEntry("E1", static_cast<int>(i) + 1),
                                           maker.inPort("B" + phase, "1")));
    }
    LaneWishes lanes;
    lanes.perSlant = 0.5;
    lanes.y = steps(0.5, 3.5, 0.3);
    lanes.z = steps(0.4, 3.5, 0.3);
    laySet(maker, mains, "E1", {lanes});

    LaneWishes taps;
    taps.perSlant = 0.5;
    taps.y = steps(0.9, 4.5, 0.3);
    taps.z = steps(0.9, 7.0, 0.35);
    struct Pump {
        Tap tap;
        double x;
    };
    for (const auto& [tap, x] : {Pump{{"T1", "Bilge pump", "2", {"6"}}, 20.5},
                                 Pump{{"T2", "Wash pump", "3", {"6"}}, 30.5},
                                 Pump{{"T3", "Fire pump", "4", {"4"}}, 44.0}}) {
        maker.addCircuit(joining(circuit(tap.id, tap.name, Role::tap, kDelta, 1, 60, 34),
                                 "feeder",
                                 TapRule::tenFoot,
                                 tap.name + " controller"));
        maker.addEntry(entry("E" + tap.id,
                             tap.name,
                             Wall::bottom,
                             x,
                             4.2,
                             {RacewayType::rmc, "1", 24},
                             tap.name + " controller"));
        laySet(maker, addTapConductors(maker, tap, kDelta), "E" + tap.id, {taps});
    }
    return layout;
}

}  // namespace gw::tools
