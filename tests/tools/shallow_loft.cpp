#include "tools/samples.h"
#include "tools/yard.h"

namespace gw::tools {

using layout::Role;
using layout::TapRule;
using layout::Wall;
using standards::RacewayType;

/// The ports face along the gutter, where there is bending space; a row of six ports is longer than
/// the gutter is high, so only two-tier bodies can stand across it.
layout::Layout shallowLoft(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Net loft, shallow gutter", {64.0, 4.0, 4.0});
    maker.layout().project = "Riverside yard, net loft";
    maker.asWireway("4/0");
    maker.addSystem("yard", "120/240 V, 1-phase, 3-wire", 240, 120, 10.0);
    maker.layout().readings.terminalSpace = layout::Readings::TerminalSpace::asForBlocks;

    auto feeder = circuit("feeder", "Loft feeder", Role::feeder, kThreeWire, 1, 175, 120);
    maker.addCircuit(feeder);
    maker.addEntry(
        entry("E1", "Feeder", Wall::left, 3.0, 1.7, {RacewayType::rmc, "1-1/2", 300}, "Panel Y"));
    const std::vector<double> places = {27.0, 38.0, 49.0};
    for (std::size_t i = 0; i < kThreeWire.size(); ++i) {
        maker.addBlock("B" + letter(kThreeWire[i]),
                       "two-tier-6-to-2-0",
                       {places[i], 0.3, 0.0},
                       "-y+x",
                       kThreeWire[i]);
    }
    const auto mains = addMains(maker, "feeder", "F-", kThreeWire, "2/0");
    // High and in front of the blocks they pass; the taps keep below.
    std::vector<LaneWishes> lanes(3);
    lanes[0].furthest = 1.0;
    lanes[1] = {.y = {3.6}, .z = {2.4}, .furthest = 1.0, .lanesOnly = true};
    lanes[2] = {.y = {3.6}, .z = {3.1}, .furthest = 1.0, .lanesOnly = true};
    laySet(maker, mains, "E1", lanes);

    // The further away a tap enters, the higher its lane, so that no riser crosses a lane. Lanes of
    // those that land in the back tier lie behind those of the front tier, and phase B's behind the
    // neutral's, so that each reaches its port without passing round another.
    struct Lane {
        Tap tap;
        double y;
        bool back;
    };
    const Raceway down{RacewayType::emt, "1", 12};
    const std::vector<Lane> lanesOfTaps = {
        {{"T1", "Loft lights", "6", "6", 50, 35, 20.0, 1.9, down, "Loft lights disconnect"},
         2.0,
         false},
        {{"T2", "Net winch", "3", "6", 50, 35, 15.5, 1.9, down, "Net winch disconnect"},
         2.32,
         true},
        {{"T3", "Rope store", "5", "6", 50, 35, 11.0, 1.9, down, "Rope store disconnect"},
         2.64,
         false},
        {{"T4", "Drying room", "2", "6", 50, 35, 6.5, 1.9, down, "Drying room disconnect"},
         2.96,
         true},
    };
    for (const auto& [tap, y, back] : lanesOfTaps) {
        std::vector<LaneWishes> wishes(3);
        wishes[0].y = steps(1.4, 2.4, 0.2);
        wishes[0].z = steps(0.6, 2.0, 0.2);
        wishes[1] = {.y = {y}, .z = {back ? 2.25 : 2.6}, .lanesOnly = true};
        wishes[2] = {.y = {y}, .z = {back ? 2.95 : 3.3}, .lanesOnly = true};
        laySet(maker,
               addTap(maker, tap, kThreeWire, "feeder", TapRule::tenFoot),
               "E" + tap.id,
               wishes);
    }
    return maker.layout();
}

}  // namespace gw::tools
