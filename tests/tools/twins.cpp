#include <algorithm>
#include <cstdlib>
#include <functional>

#include "tools/samples.h"
#include "tools/yard.h"

namespace gw::tools {
namespace {

using layout::Role;
using layout::Wall;
using standards::RacewayType;
using units::Inches;

const Sample& sampleOf(const std::vector<Sample>& good, const std::string& name) {
    const auto found = std::find_if(
        good.begin(), good.end(), [&](const Sample& sample) { return sample.name == name; });
    if (found == good.end()) {
        std::abort();
    }
    return *found;
}

layout::Conductor& conductorOf(layout::Layout& layout, const std::string& tag) {
    const auto found =
        std::find_if(layout.conductors.begin(),
                     layout.conductors.end(),
                     [&](const layout::Conductor& conductor) { return conductor.tag == tag; });
    if (found == layout.conductors.end()) {
        std::abort();
    }
    return *found;
}

// ---- one thing done wrong in a good sample --------------------------------------------------

struct Twin {
    std::string check;
    std::string of;
    std::function<void(layout::Layout&)> spoil;
};

/// 3 AWG THWN-2 is 0.352 in thick (NFPA 70 Chapter 9 Table 5): it wants 4.5 x 0.352 = 1.584 in at
/// the centreline, and gets 1 in.
void bendTooTight(layout::Layout& layout) {
    conductorOf(layout, "T2-A").corners.front().radius = Inches::of(1.0);
}

/// Stripped a quarter inch too far.
void stripTooLong(layout::Layout& layout) {
    auto& in = std::get<layout::InPort>(conductorOf(layout, "T3-A").from);
    in.strip = Inches::of(in.strip->in() + 0.25);
}

/// Fine strands in a port that does not list them.
void fineStrands(layout::Layout& layout) {
    conductorOf(layout, "T1-B").stranding = standards::Stranding::classK;
}

/// THHN is for dry and damp places (NFPA 70 Table 310.4(A)); it is as thick as THWN-2.
void dryInsulation(layout::Layout& layout) {
    conductorOf(layout, "T2-B").insulation = standards::Insulation::thhn;
}

layout::Entry& entryOf(layout::Layout& layout, const std::string& id) {
    const auto found =
        std::find_if(layout.entries.begin(), layout.entries.end(), [&](const layout::Entry& entry) {
            return entry.id == layout::EntryId(id);
        });
    if (found == layout.entries.end()) {
        std::abort();
    }
    return *found;
}

/// Three 3 AWG THWN-2, 3 x 0.0973 (NFPA 70 Chapter 9 Table 5), are 0.292 sq in: of the 0.533 sq in
/// of FMC 3/4 (Table 4) 54.8 %. Longer than a nipple, it may hold 40 %.
void thinRaceway(layout::Layout& layout) {
    auto& entry = entryOf(layout, "ET1");
    entry.raceway = RacewayType::fmc;
    entry.tradeSize = standards::TradeSize::of("3/4");
    entry.racewayLength = Inches::of(60.0);
}

void withoutBushing(layout::Layout& layout) {
    entryOf(layout, "E1").insulatingBushing = false;
}

/// THWN and THWN-2 are equally thick (NFPA 70 Chapter 9 Table 5), and two types all the same.
void oddInsulation(layout::Layout& layout) {
    conductorOf(layout, "S2-A").insulation = standards::Insulation::thwn;
}

layout::Circuit& circuitOf(layout::Layout& layout, const std::string& id) {
    const auto found = std::find_if(
        layout.circuits.begin(), layout.circuits.end(), [&](const layout::Circuit& circuit) {
            return circuit.id == layout::CircuitId(id);
        });
    if (found == layout.circuits.end()) {
        std::abort();
    }
    return *found;
}

/// 2/0 AWG copper carries 175 A at 75 °C (NFPA 70 Table 310.16).
void deviceTooLarge(layout::Layout& layout) {
    circuitOf(layout, "feeder").deviceAmperes = 200.0;
}

/// 130 in of raceway alone are more than 10 ft.
void tapTooLong(layout::Layout& layout) {
    entryOf(layout, "ET1").racewayLength = Inches::of(130.0);
}

/// Phases B and C of a tap to a disconnect of their own.
void splitTap(layout::Layout& layout, const std::string& id) {
    using layout::Phase;
    layout::Circuit second = circuitOf(layout, id);
    second.id = layout::CircuitId(id + "b");
    second.name += ", second";
    second.supplies = second.name + " disconnect";
    second.phases = {Phase::b, Phase::c};
    circuitOf(layout, id).phases = {Phase::a, Phase::n};
    for (const char* letter : {"-B", "-C"}) {
        conductorOf(layout, id + letter).circuit = second.id;
    }
    layout.circuits.push_back(std::move(second));
}

/// Five taps, two of them to two disconnects each: seven.
void sevenDisconnects(layout::Layout& layout) {
    splitTap(layout, "T1");
    splitTap(layout, "T2");
}

/// 8 AWG where a device of 150 A asks 6 AWG of copper (NFPA 70 Table 250.122).
void thinGround(layout::Layout& layout) {
    conductorOf(layout, "F-G").size = units::WireSize::of("8");
}

/// By nothing but its locknuts.
void onlyLocknuts(layout::Layout& layout) {
    entryOf(layout, "E1").bondedBy = layout::BondedBy::standardLocknuts;
}

/// A gutter of sheet metal is supported every 5 ft (NFPA 70 366.30).
void supportsFarApart(layout::Layout& layout) {
    layout.gutter.supportSpacing = Inches::of(66.0);
}

void addSpareBlock(layout::Layout& layout,
                   const std::string& part,
                   const Vec3& corner,
                   const std::string& attitude) {
    layout::Block block;
    block.id = layout::BlockId("spare");
    block.name = "Spare";
    block.part = parts::PartId(part);
    block.corner = corner;
    block.attitude = *parts::Attitude::fromText(attitude);
    block.mounted = false;
    layout.blocks.push_back(block);
}

/// A spare block of 3.4 x 2 in parked half in front of its like, beside the screws: where both are,
/// 2 x 6.8 of 16 sq in are 85 %.
void parkedInFront(layout::Layout& layout) {
    addSpareBlock(layout, "two-tier-6-to-2-0", {50.95, 0.3, 2.0}, "-y+x");
}

/// A spare block parked before the screw of port 3 of a block that is bolted down.
void parkedBeforeScrew(layout::Layout& layout) {
    addSpareBlock(layout, "row-one-side-2-to-2", {28.3, 6.75, 1.6}, "+x+y");
}

/// A spare block hung before a port: less than the 3 in that 3 AWG asks (Table 312.6(B)).
void hungBeforePort(layout::Layout& layout) {
    addSpareBlock(layout, "row-one-side-2-to-2", {28.0, 2.6, 0.0}, "+x+y");
}

/// A tap left capped before its port.
void leftCapped(layout::Layout& layout) {
    auto& conductor = conductorOf(layout, "T5-C");
    const auto& corner = conductor.corners.front().at;
    conductor.from = layout::Spare{{corner.x, 9.0, corner.z}};
}

/// A conductor laid nearly half an inch too low: against that of another tap.
void againstATap(layout::Layout& layout) {
    auto& corners = conductorOf(layout, "T2-A").corners;
    for (const std::size_t i : {std::size_t{1}, std::size_t{2}}) {
        corners[i].at.y -= 0.45;
    }
}

/// 3 AWG is large enough for tape at the ends; this neutral has none.
void untapedNeutral(layout::Layout& layout) {
    conductorOf(layout, "T1-N").colour = "black";
}

/// One block of a part like the others that does not carry the mark for the line side.
void unmarkedConnector(layout::Layout& layout, const parts::Shelf& shelf) {
    auto& block = layout.blocks.front();
    parts::Part part = shelf.at(block.part);
    part.id = parts::PartId(block.part.text() + "-load-side");
    part.name += ", load side only";
    part.listing.lineSideOfService = false;
    part.shipped = false;
    block.part = part.id;
    layout.parts.push_back(std::move(part));
}

// ---- layouts of their own -------------------------------------------------------------------

/// Three sets of four 3/0 AWG THWN-2: 12 x 0.2679 (NFPA 70 Chapter 9 Table 5) are 3.215 sq in, of
/// 16 sq in 20.1 %.
layout::Layout crowdedNipple(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Twelve through a 4 x 4, spoilt: conductor-fill", {24, 4, 4});
    maker.asWireway("4/0");
    maker.addSystem("yard", "208Y/120 V, 3-phase, 4-wire", 208, 120, 22.0);
    maker.addCircuit(circuit("feeder", "Hall feeder", Role::feeder, kFourWire, 3, 600, 480));
    const Raceway nipple{RacewayType::emt, "3", 20};
    maker.addEntry(entry("E1", "From panel Y", Wall::left, 2.0, 2.0, nipple, "Panel Y"));
    maker.addEntry(entry("E2", "To hall panel", Wall::right, 2.0, 2.0, nipple, "Hall panel"));
    int slot = 0;
    for (int set = 1; set <= 3; ++set) {
        for (const auto phase : kFourWire) {
            ++slot;
            maker.addConductor("F" + std::to_string(set) + "-" + letter(phase),
                               "feeder",
                               set,
                               phase,
                               {"3/0"},
                               maker.atEntry("E1", slot),
                               maker.atEntry("E2", slot));
        }
    }
    return maker.layout();
}

struct Opening {
    Wall wall = Wall::bottom;
    double u = 0.0;
    double v = 0.0;
};

/// Two 1/0 AWG in by one opening and out by the other, each with one bend.
layout::Layout winchElbow(const parts::Shelf& shelf,
                          const std::string& title,
                          const Vec3& inside,
                          const Opening& in,
                          const Opening& out) {
    SampleBuilder maker(shelf, title, inside);
    const Phases twoWire = {layout::Phase::a, layout::Phase::b};
    maker.addSystem("yard", "240 V, 1-phase, 2-wire", 240, 120, 10.0);
    maker.addCircuit(circuit("feeder", "Winch feeder", Role::feeder, twoWire, 1, 150, 96));
    const Raceway raceway{RacewayType::emt, "1-1/4", 120};
    maker.addEntry(entry("E1", "From panel Y", in.wall, in.u, in.v, raceway, "Panel Y"));
    maker.addEntry(entry("E2", "To winch", out.wall, out.u, out.v, raceway, "Winch"));
    for (std::size_t i = 0; i < twoWire.size(); ++i) {
        const int slot = static_cast<int>(i) + 1;
        maker.addConductor("F-" + letter(twoWire[i]),
                           "feeder",
                           1,
                           twoWire[i],
                           {"1/0"},
                           maker.atEntry("E1", slot),
                           maker.atEntry("E2", slot));
    }
    for (std::size_t i = 0; i < twoWire.size(); ++i) {
        maker.elbow(i);
    }
    return maker.layout();
}

/// From the back wall down through the bottom: 1/0 AWG is deflected in a gutter 3 in deep, where
/// NFPA 70 Table 312.6(A) asks 3.5 in. The height of 12 in does for the other entry, and the
/// raceways are far enough apart.
layout::Layout shallowElbow(const parts::Shelf& shelf) {
    return winchElbow(shelf,
                      "Elbow in 3 in, spoilt: entry-bending-space",
                      {24, 12, 3},
                      {Wall::back, 12.0, 9.0},
                      {Wall::bottom, 12.0, 2.22});
}

/// EMT 1-1/4 is 1.510 in outside (trade size chart): its edges are 4.2 in apart both ways, 5.94 in
/// in a straight line, where six times the trade size are 7.5 in.
layout::Layout entriesTooNear(const parts::Shelf& shelf) {
    return winchElbow(shelf,
                      "Entries too near, spoilt: pull-distances",
                      {24, 10, 6},
                      {Wall::left, 4.955, 3.0},
                      {Wall::bottom, 4.955, 3.0});
}

/// The grounding conductor comes and goes by holes of its own.
layout::Layout groundByItself(const parts::Shelf& shelf) {
    auto maker = straightWireway(shelf, "Ground by itself, spoilt: circuit-together");
    Phases phases = kThreeWire;
    phases.push_back(layout::Phase::g);
    maker.addCircuit(circuit("F", "Shed feeder", Role::feeder, phases, 1, 150, 96));
    addFacing(maker, {"E1", "E2"}, 2.5, {RacewayType::emt, "1-1/2", 120});
    addFacing(maker, {"E3", "E4"}, 6.0, {RacewayType::emt, "1/2", 120});
    addStraight(maker, "F", kThreeWire, "1/0", {"E1", "E2"});
    addStraight(maker, "F", {layout::Phase::g}, "6", {"E3", "E4"});
    return maker.layout();
}

/// Service and branch circuit in one wireway, each in raceways of its own.
layout::Layout serviceWithOthers(const parts::Shelf& shelf) {
    auto maker = straightWireway(shelf, "Service and others, spoilt: service-apart");
    const Phases twoWire = {layout::Phase::a, layout::Phase::n};
    maker.addCircuit(circuit("S", "Service", Role::service, kThreeWire, 1, 150, 96));
    maker.addCircuit(circuit("L", "Yard light", Role::branch, twoWire, 1, 30, 16));
    addFacing(maker, {"E1", "E2"}, 2.5, {RacewayType::rmc, "1-1/2", 120});
    addFacing(maker, {"E3", "E4"}, 6.0, {RacewayType::emt, "3/4", 120});
    addStraight(maker, "S", kThreeWire, "1/0", {"E1", "E2"});
    addStraight(maker, "L", twoWire, "10", {"E3", "E4"});
    return maker.layout();
}

/// An auxiliary gutter of 32 ft, all of it beyond the equipment: 30 ft are allowed (NFPA 70
/// 366.12(2)).
layout::Layout farBeyond(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Far beyond its switchboard, spoilt: length-beyond", {384, 8, 6});
    maker.layout().gutter.beyondEquipment = Inches::of(384.0);
    maker.addSystem("yard", "120/240 V, 1-phase, 3-wire", 240, 120, 10.0);
    maker.addCircuit(circuit("F", "Shed feeder", Role::feeder, kThreeWire, 1, 150, 96));
    addFacing(maker, {"E1", "E2"}, 2.5, {RacewayType::emt, "1-1/2", 120});
    addStraight(maker, "F", kThreeWire, "1/0", {"E1", "E2"});
    return maker.layout();
}

/// Marked for conductors up to 1 AWG, and fed with 1/0 (NFPA 70 376.21).
layout::Layout markedForLess(const parts::Shelf& shelf) {
    auto maker = straightWireway(shelf, "Marked for less, spoilt: largest-conductor");
    maker.asWireway("1");
    maker.addCircuit(circuit("F", "Shed feeder", Role::feeder, kThreeWire, 1, 150, 96));
    addFacing(maker, {"E1", "E2"}, 2.5, {RacewayType::emt, "1-1/2", 120});
    addStraight(maker, "F", kThreeWire, "1/0", {"E1", "E2"});
    return maker.layout();
}

/// A 4160 V pump line beside 240 V, all in insulation for at most 2000 V (NFPA 70 300.3(C)).
layout::Layout pumpLineBeside(const parts::Shelf& shelf) {
    auto maker = straightWireway(shelf, "Pump line beside, spoilt: mixed-voltages");
    maker.addSystem("pumps", "4160 V, 3-phase, 3-wire", 4160, 2400, 5.0);
    maker.addCircuit(circuit("F", "Shed feeder", Role::feeder, kThreeWire, 1, 150, 96));
    auto pumps = circuit("P", "Pump line", Role::feeder, kThreePhase, 1, 150, 96);
    pumps.system = layout::SystemId("pumps");
    maker.addCircuit(pumps);
    addFacing(maker, {"E1", "E2"}, 2.5, {RacewayType::emt, "1-1/2", 120});
    addFacing(maker, {"E3", "E4"}, 6.0, {RacewayType::emt, "1-1/2", 120});
    addStraight(maker, "F", kThreeWire, "1/0", {"E1", "E2"});
    addStraight(maker, "P", kThreePhase, "1/0", {"E3", "E4"});
    return maker.layout();
}

}  // namespace

std::vector<Sample> brokenTwins(const std::vector<Sample>& good, const parts::Shelf& shelf) {
    const std::vector<Twin> twins = {{"splice-fill", "shallow-loft", parkedInFront},
                                     {"terminal-bending-space", "gate-house", hungBeforePort},
                                     {"bend-radius", "five-tenants", bendTooTight},
                                     {"exposed-copper", "five-tenants", stripTooLong},
                                     {"port-suits-conductor", "five-tenants", fineStrands},
                                     {"joints", "five-tenants", leftCapped},
                                     {"clearance", "gate-house", againstATap},
                                     {"location", "slipway-pumps", dryInsulation},
                                     {"raceway-fill", "gate-house", thinRaceway},
                                     {"insulating-bushing", "gate-house", withoutBushing},
                                     {"parallel-sets", "five-tenants", oddInsulation},
                                     {"ampacity", "shallow-loft", deviceTooLarge},
                                     {"tap-rule", "shallow-loft", tapTooLong},
                                     {"service-disconnects", "five-tenants", sevenDisconnects},
                                     {"screw-reach", "gate-house", parkedBeforeScrew},
                                     {"grounding-size", "rope-walk", thinGround},
                                     {"service-bonding", "five-tenants", onlyLocknuts},
                                     {"support-spacing", "five-tenants", supportsFarApart},
                                     {"colours", "gate-house", untapedNeutral},
                                     {"connector-listing", "gate-house", [&](auto& layout) {
                                          unmarkedConnector(layout, shelf);
                                      }}};
    std::vector<Sample> samples{{"broken-conductor-fill", crowdedNipple(shelf)},
                                {"broken-entry-bending-space", shallowElbow(shelf)},
                                {"broken-pull-distances", entriesTooNear(shelf)},
                                {"broken-circuit-together", groundByItself(shelf)},
                                {"broken-service-apart", serviceWithOthers(shelf)},
                                {"broken-length-beyond", farBeyond(shelf)},
                                {"broken-largest-conductor", markedForLess(shelf)},
                                {"broken-mixed-voltages", pumpLineBeside(shelf)}};
    for (const auto& twin : twins) {
        auto layout = sampleOf(good, twin.of).layout;
        layout.title += ", spoilt: " + twin.check;
        twin.spoil(layout);
        samples.push_back({"broken-" + twin.check, std::move(layout)});
    }
    return samples;
}

}  // namespace gw::tools
