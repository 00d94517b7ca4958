#include "tools/samples.h"
#include "tools/yard.h"

namespace gw::tools {

using layout::Role;
using layout::TapRule;
using layout::Wall;
using standards::RacewayType;

layout::Layout boatHall(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Boat hall, uncut feeder", {60.0, 12.0, 6.0});
    auto& layout = maker.layout();
    layout.project = "Riverside yard, boat hall";
    maker.asWireway("500");
    layout.readings.terminalSpace = layout::Readings::TerminalSpace::asForBlocks;
    maker.addSystem("yard", "120/240 V, 1-phase, 3-wire", 240, 120, 10.0);

    maker.addCircuit(circuit("feeder", "Hall feeder", Role::feeder, kThreeWire, 1, 175, 130));
    const Raceway two{RacewayType::rmc, "2", 240};
    maker.addEntry(entry("E1", "Feeder in", Wall::left, 6.0, 2.2, two, "Panel Y"));
    maker.addEntry(entry("E2", "Feeder on", Wall::right, 6.0, 2.2, two, "Hall panel"));
    for (std::size_t i = 0; i < kThreeWire.size(); ++i) {
        maker.addBlock("B" + letter(kThreeWire[i]),
                       "row-through-3-to-2-0",
                       {30.0, 8.3 - 4.0 * static_cast<double>(i), 0.0},
                       "-y+x",
                       kThreeWire[i]);
    }
    // Three lie in a triangle: slot 3 highest, slot 2 lowest.
    const std::vector<int> slots = {3, 1, 2};
    std::vector<std::size_t> mains;
    for (std::size_t i = 0; i < kThreeWire.size(); ++i) {
        mains.push_back(maker.addConductor("F-" + letter(kThreeWire[i]),
                                           "feeder",
                                           1,
                                           kThreeWire[i],
                                           {"2/0"},
                                           maker.atEntry("E1", slots[i]),
                                           maker.atEntry("E2", slots[i])));
    }
    for (std::size_t i = 0; i < mains.size(); ++i) {
        maker.passThrough(mains[i], "B" + letter(kThreeWire[i]), "1", {3.0, 8.0});
    }

    LaneWishes taps;
    taps.perSlant = 0.5;
    taps.y = steps(0.9, 10.5, 0.6);
    taps.z = steps(0.5, 4.5, 0.4);
    const Raceway down{RacewayType::emt, "1-1/4", 18};
    for (const Tap& tap :
         {Tap{"T1", "Paint shop", "3", "4", 70, 40, 18.0, 3.2, down, "Paint shop disconnect"},
          Tap{"T2", "Spar bench", "2", "4", 70, 40, 43.0, 3.2, down, "Spar bench disconnect"}}) {
        const auto conductors = addTap(maker, tap, kThreeWire, "feeder", TapRule::tenFoot);
        laySet(maker, conductors, "E" + tap.id, {taps});
    }
    return layout;
}

}  // namespace gw::tools
