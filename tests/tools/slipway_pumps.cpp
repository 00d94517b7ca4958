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
    const auto mains = addMains(maker, "feeder", "F-", kDelta, "2/0");
    LaneWishes lanes;
    lanes.perSlant = 0.5;
    lanes.y = steps(0.5, 3.5, 0.3);
    lanes.z = steps(0.4, 3.5, 0.3);
    laySet(maker, mains, "E1", {lanes});

    LaneWishes taps;
    taps.perSlant = 0.5;
    taps.y = steps(0.9, 4.5, 0.3);
    taps.z = steps(0.9, 7.0, 0.35);
    const Raceway down{RacewayType::rmc, "1", 24};
    for (const Tap& tap :
         {Tap{"T1", "Bilge pump", "2", "6", 50, 34, 20.5, 4.2, down, "Bilge pump controller"},
          Tap{"T2", "Wash pump", "3", "6", 50, 34, 30.5, 4.2, down, "Wash pump controller"},
          Tap{"T3", "Fire pump", "4", "4", 60, 34, 44.0, 4.2, down, "Fire pump controller"}}) {
        const auto conductors = addTap(maker, tap, kDelta, "feeder", TapRule::tenFoot);
        laySet(maker, conductors, "E" + tap.id, {taps});
    }
    return layout;
}

}  // namespace gw::tools
