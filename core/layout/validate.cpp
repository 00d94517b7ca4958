#include <algorithm>
#include <map>
#include <set>
#include <string>

#include "base/tolerance.h"
#include "layout/layout.h"
#include "layout/problems.h"
#include "layout/wall_plane.h"

namespace gw::layout {
namespace {

// ---- what is there --------------------------------------------------------------------------

template <class Item>
using ById = std::map<decltype(Item::id), std::size_t>;

template <class Item>
ById<Item> byId(const std::vector<Item>& items) {
    ById<Item> found;
    for (std::size_t i = 0; i < items.size(); ++i) {
        found.emplace(items[i].id, i);
    }
    return found;
}

// The layout's things by id, and what was claimed so far on the way through it.
struct Known {
    const Layout& layout;
    const parts::Shelf& shelf;
    ById<System> systems = byId(layout.systems);
    ById<Circuit> circuits = byId(layout.circuits);
    ById<Entry> entries = byId(layout.entries);
    ById<Block> blocks = byId(layout.blocks);
    std::map<parts::PartId, const parts::Part*> partsById{};
    std::set<std::string> ids{};
    std::set<std::pair<EntryId, int>> slots{};

    const parts::Part* partOf(const parts::PartId& id) {
        const auto [at, fresh] = partsById.emplace(id, nullptr);
        if (fresh) {
            at->second = findPart(layout, shelf, id);
        }
        return at->second;
    }
};

template <class Map, class Id>
auto findIn(const Map& map, const Id& id) -> std::optional<std::size_t> {
    const auto found = map.find(id);
    return found == map.end() ? std::nullopt : std::optional(found->second);
}

void dangling(Problems& problems,
              const Place& place,
              const std::string& kind,
              const std::string& id) {
    problems.add(
        ErrorCode::dangling, place, "no such " + kind, "the id of one that is there", quoted(id));
}

const parts::Port* portNamed(const parts::Part& part, const parts::PortName& name) {
    for (const parts::Port& port : part.ports) {
        if (port.name == name) {
            return &port;
        }
    }
    return nullptr;
}

void checkId(Problems& problems, Known& known, const Place& place, const std::string& id) {
    if (!isValidId(id)) {
        problems.add(ErrorCode::syntax,
                     place,
                     "not an id",
                     "1 to 40 letters, digits, '-', '_' or '.', first a letter or digit",
                     quoted(id));
    }
    if (!known.ids.insert(id).second) {
        problems.add(ErrorCode::duplicate,
                     place,
                     "this id is taken",
                     "an id that nothing else in the layout has",
                     quoted(id));
    }
}

// ---- the gutter -----------------------------------------------------------------------------

void checkGutter(Problems& problems, const Place& place, const Gutter& gutter) {
    constexpr double kLeast = 1.0;
    constexpr double kGreatest = 1200.0;
    const Place inside = place / "inside";
    problems.range(inside / "length", gutter.inside.x, kLeast, kGreatest, "in");
    problems.range(inside / "height", gutter.inside.y, kLeast, kGreatest, "in");
    problems.range(inside / "depth", gutter.inside.z, kLeast, kGreatest, "in");
    if (gutter.sheet) {
        problems.range(place / "sheet", gutter.sheet->in(), 0.001, 1.0, "in");
    }
    problems.text(place / "enclosureType", gutter.enclosureType);
    if (gutter.supportSpacing) {
        problems.range(place / "supportSpacing", gutter.supportSpacing->in(), 0.0, kGreatest, "in");
    }
    if (gutter.beyondEquipment) {
        problems.range(
            place / "beyondEquipment", gutter.beyondEquipment->in(), 0.0, gutter.inside.x, "in");
    }
}

void checkAmendments(Problems& problems, const Place& place, const Amendments& amendments) {
    constexpr double kLeastPercent = 0.1;
    if (amendments.conductorFillPercent) {
        problems.range(place / "conductorFillPercent",
                       *amendments.conductorFillPercent,
                       kLeastPercent,
                       100.0,
                       "%");
    }
    if (amendments.spliceFillPercent) {
        problems.range(
            place / "spliceFillPercent", *amendments.spliceFillPercent, kLeastPercent, 100.0, "%");
    }
    if (amendments.bendRadiusMultiple) {
        problems.range(
            place / "bendRadiusMultiple", *amendments.bendRadiusMultiple, 1.0, 20.0, "diameters");
    }
    problems.text(place / "source", amendments.source);
}

// ---- what is connected ----------------------------------------------------------------------

void checkSystem(Problems& problems, Known& known, const Place& place, const System& system) {
    constexpr double kMostVolts = 35000.0;
    checkId(problems, known, place / "id", system.id.text());
    problems.text(place / "name", system.name);
    if (system.voltsBetweenPhases) {
        problems.range(
            place / "voltsBetweenPhases", *system.voltsBetweenPhases, 1.0, kMostVolts, "V");
    }
    if (system.voltsToGround) {
        problems.range(place / "voltsToGround", *system.voltsToGround, 1.0, kMostVolts, "V");
    }
    if (system.voltsBetweenPhases && system.voltsToGround &&
        *system.voltsToGround > *system.voltsBetweenPhases) {
        problems.add(ErrorCode::contradicts,
                     place / "voltsToGround",
                     "more volts to ground than between phases",
                     "at most " + std::to_string(*system.voltsBetweenPhases) + " V",
                     std::to_string(*system.voltsToGround) + " V");
    }
    if (system.faultKiloamperes) {
        problems.range(place / "faultKiloamperes", *system.faultKiloamperes, 0.0, 1000.0, "kA");
    }
}

void checkPhases(Problems& problems, const Place& place, const std::vector<Phase>& phases) {
    if (phases.empty()) {
        problems.add(
            ErrorCode::missing, place, "a circuit without phases", "at least one phase", "none");
    }
    std::set<Phase> seen;
    for (std::size_t i = 0; i < phases.size(); ++i) {
        if (!seen.insert(phases[i]).second) {
            problems.add(ErrorCode::duplicate,
                         place.at(i),
                         "this phase is there twice",
                         "each phase once",
                         quoted(std::string(phaseText(phases[i]))));
        }
    }
}

void checkCircuit(Problems& problems, Known& known, const Place& place, const Circuit& circuit) {
    constexpr double kMostAmperes = 100000.0;
    checkId(problems, known, place / "id", circuit.id.text());
    problems.text(place / "name", circuit.name);
    if (!known.systems.contains(circuit.system)) {
        dangling(problems, place / "system", "system", circuit.system.text());
    }
    problems.range(place / "sets", circuit.sets, 1.0, 20.0);
    checkPhases(problems, place / "phases", circuit.phases);
    if (circuit.joins && !known.circuits.contains(*circuit.joins)) {
        dangling(problems, place / "joins", "circuit", circuit.joins->text());
    }
    if (circuit.deviceAmperes) {
        problems.range(place / "deviceAmperes", *circuit.deviceAmperes, 0.0, kMostAmperes, "A");
    }
    if (circuit.loadAmperes) {
        problems.range(place / "loadAmperes", *circuit.loadAmperes, 0.0, kMostAmperes, "A");
    }
    problems.text(place / "supplies", circuit.supplies);
}

// Follows `joins` from every circuit, each circuit once: `walk` says in whose walk it was first
// met.
void checkJoinsEnd(Problems& problems, const Known& known, const Place& place) {
    const std::vector<Circuit>& circuits = known.layout.circuits;
    std::vector<std::size_t> walk(circuits.size(), circuits.size());
    for (std::size_t start = 0; start < circuits.size(); ++start) {
        std::optional<std::size_t> at = start;
        while (at && walk[*at] == circuits.size()) {
            walk[*at] = start;
            const auto& joins = circuits[*at].joins;
            at = joins ? findIn(known.circuits, *joins) : std::nullopt;
        }
        if (at && walk[*at] == start) {
            const Place circuit = place.at(*at);
            problems.add(ErrorCode::contradicts,
                         circuit / "joins",
                         "a circuit that in the end joins itself",
                         "circuits that lead back to a source",
                         quoted(circuits[*at].id.text()));
        }
    }
}

// ---- entries and blocks ---------------------------------------------------------------------

void checkEntry(Problems& problems, Known& known, const Place& place, const Entry& entry) {
    constexpr double kLongestRaceway = 120000.0;  // inches; 10 000 ft
    checkId(problems, known, place / "id", entry.id.text());
    problems.text(place / "name", entry.name);
    const auto [u, v] = alongWall(entry.wall, known.layout.gutter.inside);
    problems.range(place / "u", entry.u, 0.0, u, "in");
    problems.range(place / "v", entry.v, 0.0, v, "in");
    if (entry.racewayLength) {
        problems.range(
            place / "racewayLength", entry.racewayLength->in(), 0.0, kLongestRaceway, "in");
    }
    problems.text(place / "leadsTo", entry.leadsTo);
}

void checkOpenMouth(Problems& problems,
                    const Place& place,
                    const parts::Part& part,
                    const OpenMouth& open,
                    std::set<parts::PortName>& seen) {
    const parts::Port* port = portNamed(part, open.port);
    if (port == nullptr) {
        dangling(problems, place / "port", "port", open.port.text());
    } else if (port->opening != parts::PortOpening::either) {
        problems.add(ErrorCode::contradicts,
                     place / "port",
                     "this port's mouths are fixed by the part",
                     "a port of which either mouth can be opened",
                     quoted(open.port.text()));
    }
    if (!seen.insert(open.port).second) {
        problems.add(ErrorCode::duplicate,
                     place / "port",
                     "this port's open mouth is stated twice",
                     "each port once",
                     quoted(open.port.text()));
    }
}

void checkBlock(Problems& problems, Known& known, const Place& place, const Block& block) {
    checkId(problems, known, place / "id", block.id.text());
    problems.text(place / "name", block.name);
    problems.point(place / "corner", block.corner);
    const parts::Part* part = known.partOf(block.part);
    if (part == nullptr) {
        dangling(problems, place / "part", "part", block.part.text());
        return;
    }
    const Place mouths = place / "openMouths";
    std::set<parts::PortName> seen;
    for (std::size_t i = 0; i < block.openMouths.size(); ++i) {
        checkOpenMouth(problems, mouths.at(i), *part, block.openMouths[i], seen);
    }
}

// ---- conductors -----------------------------------------------------------------------------

// The port, if block, part and port are there. Their own problems are told where they stand.
const parts::Port* checkPort(Problems& problems,
                             Known& known,
                             const Place& place,
                             const BlockId& block,
                             const parts::PortName& name) {
    const auto index = findIn(known.blocks, block);
    if (!index) {
        dangling(problems, place / "block", "block", block.text());
        return nullptr;
    }
    const parts::Part* part = known.partOf(known.layout.blocks[*index].part);
    const parts::Port* port = part == nullptr ? nullptr : portNamed(*part, name);
    if (port == nullptr) {
        dangling(problems, place / "port", "port", name.text());
    }
    return port;
}

void checkEnd(Problems& problems, Known& known, const Place& place, const AtEntry& end) {
    if (!known.entries.contains(end.entry)) {
        dangling(problems, place / "entry", "entry", end.entry.text());
    }
    problems.range(place / "slot", end.slot, 1.0, 400.0);
    if (!known.slots.emplace(end.entry, end.slot).second) {
        problems.add(ErrorCode::duplicate,
                     place / "slot",
                     "this slot of the entry is taken",
                     "a slot of its own for every conductor",
                     std::to_string(end.slot));
    }
}

void checkEnd(Problems& problems, Known& known, const Place& place, const InPort& end) {
    constexpr double kLongestStrip = 100.0;
    const parts::Port* port = checkPort(problems, known, place, end.block, end.port);
    if (end.strip) {
        problems.range(place / "strip", end.strip->in(), 0.0, kLongestStrip, "in");
    }
    if (end.inserted && port != nullptr) {
        const double depth = port->boreDepth.in();
        const double inserted = end.inserted->in();
        if (!(inserted >= 0.0 && atMost(inserted, depth))) {
            problems.range(place / "inserted", inserted, 0.0, depth, "in");
        }
    }
}

void checkEnd(Problems& problems, Known& /*known*/, const Place& place, const Spare& end) {
    problems.point(place / "spare", end.tip);
}

void checkPass(Problems& problems, Known& known, const Place& place, const Pass& pass) {
    constexpr double kFar = 100.0;
    const parts::Port* port = checkPort(problems, known, place, pass.block, pass.port);
    if (port != nullptr && port->opening != parts::PortOpening::both) {
        problems.add(ErrorCode::contradicts,
                     place / "port",
                     "this port is not open at both mouths",
                     "a port that a conductor can pass through",
                     quoted(pass.port.text()));
    }
    if (pass.windowStart) {
        problems.range(place / "windowStart", pass.windowStart->in(), -kFar, kFar, "in");
    }
    if (pass.windowLength) {
        problems.range(place / "windowLength", pass.windowLength->in(), 0.0, kFar, "in");
    }
}

// Circuit, set and phase of one conductor agree.
void checkBelonging(Problems& problems,
                    const Known& known,
                    const Place& place,
                    const Conductor& conductor) {
    const auto index = findIn(known.circuits, conductor.circuit);
    if (!index) {
        dangling(problems, place / "circuit", "circuit", conductor.circuit.text());
        return;
    }
    const Circuit& circuit = known.layout.circuits[*index];
    problems.range(place / "set", conductor.set, 1.0, circuit.sets);
    const auto& phases = circuit.phases;
    if (std::find(phases.begin(), phases.end(), conductor.phase) == phases.end()) {
        problems.add(ErrorCode::contradicts,
                     place / "phase",
                     "its circuit has no such phase",
                     "a phase of circuit " + quoted(circuit.id.text()),
                     quoted(std::string(phaseText(conductor.phase))));
    }
}

void checkCorners(Problems& problems, const Place& place, const std::vector<Corner>& corners) {
    constexpr double kLargestRadius = 600.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Place corner = place.at(i);
        problems.point(corner / "at", corners[i].at);
        problems.range(corner / "radius", corners[i].radius.in(), 0.0, kLargestRadius, "in");
    }
}

void checkPasses(Problems& problems,
                 Known& known,
                 const Place& place,
                 const std::vector<Pass>& passes) {
    std::set<std::pair<BlockId, parts::PortName>> seen;
    for (std::size_t i = 0; i < passes.size(); ++i) {
        const Place pass = place.at(i);
        checkPass(problems, known, pass, passes[i]);
        if (!seen.emplace(passes[i].block, passes[i].port).second) {
            problems.add(ErrorCode::duplicate,
                         pass / "port",
                         "it passes this port twice",
                         "each port once",
                         quoted(passes[i].port.text()));
        }
    }
}

void checkConductor(Problems& problems,
                    Known& known,
                    const Place& place,
                    const Conductor& conductor) {
    checkId(problems, known, place / "id", conductor.id.text());
    problems.text(place / "tag", conductor.tag);
    checkBelonging(problems, known, place, conductor);
    if (conductor.outsideDiameter) {
        problems.range(place / "outsideDiameter", conductor.outsideDiameter->in(), 0.01, 6.0, "in");
    }
    problems.text(place / "colour", conductor.colour);
    const Place from = place / "from";
    const Place to = place / "to";
    std::visit([&](const auto& end) { checkEnd(problems, known, from, end); }, conductor.from);
    std::visit([&](const auto& end) { checkEnd(problems, known, to, end); }, conductor.to);
    checkCorners(problems, place / "corners", conductor.corners);
    checkPasses(problems, known, place / "passes", conductor.passes);
}

// ---- remarks, parts, and the whole ----------------------------------------------------------

void checkRemark(Problems& problems, Known& known, const Place& place, const Remark& remark) {
    checkId(problems, known, place / "id", remark.id.text());
    problems.text(place / "author", remark.author);
    problems.text(place / "text", remark.text);
    if (remark.at) {
        problems.point(place / "at", *remark.at);
    }
    // Everything that can be pinned stands before the remarks, so its id is known by now.
    if (remark.item && !known.ids.contains(*remark.item)) {
        dangling(problems, place / "item", "thing", *remark.item);
    }
}

void checkParts(Problems& problems, const Place& place, const std::vector<parts::Part>& parts) {
    std::set<parts::PartId> seen;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Place part = place.at(i);
        const std::string& id = parts[i].id.text();
        if (!isValidId(id)) {
            problems.add(ErrorCode::syntax, part / "id", "not an id", "an id", quoted(id));
        }
        if (!seen.insert(parts[i].id).second) {
            problems.add(ErrorCode::duplicate,
                         part / "id",
                         "this id is taken",
                         "an id that no other part of the layout has",
                         quoted(id));
        }
    }
}

template <class Item>
void checkEach(Problems& problems,
               Known& known,
               const Place& place,
               const std::vector<Item>& items,
               void (*check)(Problems&, Known&, const Place&, const Item&)) {
    for (std::size_t i = 0; i < items.size(); ++i) {
        check(problems, known, place.at(i), items[i]);
    }
}

void checkHead(Problems& problems, const Place& place, const Layout& layout) {
    problems.text(place / "title", layout.title);
    problems.text(place / "project", layout.project);
    problems.text(place / "drawnBy", layout.drawnBy);
    problems.text(place / "date", layout.date);
    problems.text(place / "revision", layout.revision);
    checkGutter(problems, place / "gutter", layout.gutter);
    if (layout.surroundings.ambientCelsius) {
        const Place surroundings = place / "surroundings";
        problems.range(surroundings / "ambientCelsius",
                       *layout.surroundings.ambientCelsius,
                       -60.0,
                       100.0,
                       "degrees C");
    }
    checkAmendments(problems, place / "amendments", layout.amendments);
}

}  // namespace

Result<void> validate(const Layout& layout, const parts::Shelf& shelf) {
    Problems problems;
    Known known{layout, shelf};
    const Place whole;
    checkHead(problems, whole, layout);
    checkEach(problems, known, whole / "systems", layout.systems, checkSystem);
    checkEach(problems, known, whole / "circuits", layout.circuits, checkCircuit);
    checkJoinsEnd(problems, known, whole / "circuits");
    checkEach(problems, known, whole / "entries", layout.entries, checkEntry);
    checkEach(problems, known, whole / "blocks", layout.blocks, checkBlock);
    checkEach(problems, known, whole / "conductors", layout.conductors, checkConductor);
    checkEach(problems, known, whole / "remarks", layout.remarks, checkRemark);
    checkParts(problems, whole / "parts", layout.parts);
    return problems.result();
}

}  // namespace gw::layout
