#include "tools/samples.h"
#include "tools/yard.h"

namespace gw::tools {

using layout::Phase;
using layout::Role;
using standards::RacewayType;

/// 3 x 0.1855 and 0.0507 sq in (NFPA 70 Chapter 9 Table 5) fill EMT 1-1/2 to 29.8 %; the entries
/// are 24 in apart where 8 x 1.5 = 12 in are asked of a straight pull.
layout::Layout ropeWalk(const parts::Shelf& shelf) {
    auto maker = straightWireway(shelf, "Rope walk, straight through");
    maker.layout().project = "Riverside yard, rope walk";
    Phases phases = kThreeWire;
    phases.push_back(Phase::g);
    maker.addCircuit(circuit("F", "Rope walk feeder", Role::feeder, phases, 1, 150, 96));
    addFacing(maker, {"E1", "E2"}, 2.5, {RacewayType::emt, "1-1/2", 120});
    addStraight(maker, "F", kThreeWire, "1/0", {"E1", "E2"});
    addStraight(maker, "F", {Phase::g}, "6", {"E1", "E2"}, 4);
    return maker.layout();
}

}  // namespace gw::tools
