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
    const auto mains = addMains(maker, "service", "S1-", kThreeWire, "1/0");
    LaneWishes lanes;
    lanes.perSlant = 4.0;
    lanes.y = steps(0.4, 3.0, 0.3);
    lanes.z = steps(0.4, 3.0, 0.3);
    laySet(maker, mains, "E1", {lanes});

    LaneWishes taps;
    taps.perSlant = 4.0;
    taps.y = steps(0.9, 4.5, 0.3);
    taps.z = steps(0.9, 7.0, 0.35);
    const Raceway down{RacewayType::emt, "1-1/4", 12};
    for (const Tap& tap :
         {Tap{"T1", "Gate house", "2", "3", 90, 60, 17.0, 4.2, down, "Gate house disconnect"},
          Tap{"T2",
              "Slipway crane",
              "3",
              "3",
              90,
              60,
              33.0,
              4.2,
              down,
              "Slipway crane disconnect"}}) {
        const auto conductors =
            addTap(maker, tap, kThreeWire, "service", TapRule::serviceConductors);
        laySet(maker, conductors, "E" + tap.id, {taps});
    }
    return maker.layout();
}

}  // namespace gw::tools
