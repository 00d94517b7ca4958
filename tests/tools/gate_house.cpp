#include "tools/samples.h"
#include "tools/yard.h"

namespace gw::tools {

using layout::Role;
using layout::TapRule;
using layout::Wall;
using standards::RacewayType;

layout::Layout gateHouse(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Gate house, one set", {36.0, 8.0, 8.0});
    maker.layout().project = "Riverside yard, gate";
    maker.addSystem("yard", "120/240 V, 1-phase, 3-wire", 240, 120, 10.0);
    maker.layout().readings.terminalSpace = layout::Readings::TerminalSpace::asForBlocks;

    auto service = circuit("service", "Service, one set", Role::service, kThreeWire, 1, 150, 96);
    service.tapRule = TapRule::serviceConductors;
    maker.addCircuit(service);
    maker.addEntry(
        entry("E1", "Service", Wall::top, 3.6, 2.2, {RacewayType::rmc, "1-1/2", 300}, "Meter"));
    for (std::size_t i = 0; i < kThreeWire.size(); ++i) {
        maker.addBlock("B" + letter(kThreeWire[i]),
                       "row-one-side-4-to-2-0",
                       {9.0 + 8.5 * static_cast<double>(i), 6.4, 0.0},
                       "+x+y",
                       kThreeWire[i]);
    }
    std::vector<std::size_t> mains;
    for (std::size_t i = 0; i < kThreeWire.size(); ++i) {
        const auto phase = letter(kThreeWire[i]);
        mains.push_back(maker.addConductor("S1-" + phase,
                                           "service",
                                           1,
                                           kThreeWire[i],
                                           {"1/0"},
                                           maker.atEntry("E1", static_cast<int>(i) + 1),
                                           maker.inPort("B" + phase, "1")));
    }
    LaneWishes lanes;
    lanes.perSlant = 0.5;
    lanes.y = steps(0.4, 3.0, 0.3);
    lanes.z = steps(0.4, 3.0, 0.3);
    laySet(maker, mains, "E1", {lanes});

    LaneWishes taps;
    taps.perSlant = 0.5;
    taps.y = steps(0.9, 4.5, 0.3);
    taps.z = steps(0.9, 7.0, 0.35);
    struct Disconnect {
        Tap tap;
        double x;
    };
    for (const auto& [tap, x] : {Disconnect{{"T1", "Gate house", "2", {"3"}}, 17.0},
                                 Disconnect{{"T2", "Slipway crane", "3", {"3"}}, 33.0}}) {
        maker.addCircuit(joining(circuit(tap.id, tap.name, Role::tap, kThreeWire, 1, 100, 60),
                                 "service",
                                 TapRule::serviceConductors,
                                 tap.name + " disconnect"));
        maker.addEntry(entry("E" + tap.id,
                             tap.name,
                             Wall::bottom,
                             x,
                             4.2,
                             {RacewayType::emt, "1-1/4", 12},
                             tap.name + " disconnect"));
        laySet(maker, addTapConductors(maker, tap, kThreeWire), "E" + tap.id, {taps});
    }
    return maker.layout();
}

}  // namespace gw::tools
