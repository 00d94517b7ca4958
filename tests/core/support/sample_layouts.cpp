#include "core/support/sample_layouts.h"

#include <stdexcept>

namespace gw::test {
namespace {

using units::Inches;
using units::WireSize;

template <class Item>
Item& named(std::vector<Item>& items, const std::string& id) {
    for (Item& item : items) {
        if (item.id.text() == id) {
            return item;
        }
    }
    throw std::invalid_argument("the sample has no " + id);
}

parts::PortRange upTo2_0() {
    parts::PortRange range;
    range.metals = {standards::Metal::copper, standards::Metal::aluminium};
    range.strandings = {standards::Stranding::classB, standards::Stranding::classC};
    range.smallest = WireSize::of("14");
    range.largest = WireSize::of("2/0");
    range.conductors = 1;
    return range;
}

parts::Port port(const std::string& name, const Vec3& mouth, const Vec3& direction, double depth) {
    parts::Port port;
    port.name = parts::PortName(name);
    port.mouth = mouth;
    port.direction = direction;
    port.boreDepth = Inches::of(depth);
    port.boreDiameter = Inches::of(0.75);
    port.accepts = {upTo2_0()};
    return port;
}

parts::Screw screw(const std::string& name, const std::string& port, const Vec3& head) {
    parts::Screw screw;
    screw.name = parts::ScrewName(name);
    screw.port = parts::PortName(port);
    screw.head = head;
    screw.outward = {0, 0, 1};
    screw.drive = "hex 3/16 in";
    screw.torque = {{WireSize::of("14"), WireSize::of("2/0"), 120.0}};
    return screw;
}

parts::Part named(const std::string& id, const std::string& name, const Vec3& body) {
    parts::Part part;
    part.id = parts::PartId(id);
    part.name = name;
    part.body = body;
    return part;
}

}  // namespace

layout::System& Sample::addSystem(const std::string& id) {
    layout::System system;
    system.id = layout::SystemId(id);
    system.name = "208Y/120 V, 3-phase, 4-wire";
    system.voltsBetweenPhases = 208;
    system.voltsToGround = 120;
    return layout.systems.emplace_back(system);
}

layout::Circuit& Sample::addCircuit(const std::string& id) {
    layout::Circuit circuit;
    circuit.id = layout::CircuitId(id);
    circuit.name = id;
    circuit.system = layout::SystemId("sys");
    circuit.phases = {layout::Phase::a, layout::Phase::b, layout::Phase::c, layout::Phase::n};
    return layout.circuits.emplace_back(circuit);
}

layout::Entry& Sample::addEntry(const std::string& id, layout::Wall wall, double u, double v) {
    layout::Entry entry;
    entry.id = layout::EntryId(id);
    entry.name = id;
    entry.wall = wall;
    entry.u = u;
    entry.v = v;
    return layout.entries.emplace_back(entry);
}

layout::Block& Sample::addBlock(const std::string& id,
                                const std::string& part,
                                const Vec3& corner,
                                const std::string& attitude) {
    layout::Block block;
    block.id = layout::BlockId(id);
    block.name = id;
    block.part = parts::PartId(part);
    block.corner = corner;
    block.attitude = parts::Attitude::fromText(attitude).value();
    return layout.blocks.emplace_back(block);
}

layout::Conductor& Sample::addConductor(const std::string& id,
                                        const layout::End& from,
                                        const layout::End& to,
                                        const std::vector<Vec3>& corners) {
    layout::Conductor conductor;
    conductor.id = layout::ConductorId(id);
    conductor.tag = id;
    conductor.circuit = layout::CircuitId("feed");
    conductor.size = WireSize::of("6");
    conductor.metal = standards::Metal::copper;
    conductor.insulation = standards::Insulation::thhn;
    conductor.stranding = standards::Stranding::classB;
    conductor.from = from;
    conductor.to = to;
    for (const Vec3& corner : corners) {
        conductor.corners.push_back({corner, Inches::of(1.25)});
    }
    return layout.conductors.emplace_back(conductor);
}

layout::Entry& Sample::entry(const std::string& id) {
    return named(layout.entries, id);
}
layout::Block& Sample::block(const std::string& id) {
    return named(layout.blocks, id);
}
layout::Circuit& Sample::circuit(const std::string& id) {
    return named(layout.circuits, id);
}
layout::Conductor& Sample::conductor(const std::string& id) {
    return named(layout.conductors, id);
}
parts::Part& Sample::part(const std::string& id) {
    return shelf.at(parts::PartId(id));
}

layout::End atEntry(const std::string& entry, int slot) {
    return layout::AtEntry{layout::EntryId(entry), slot};
}

layout::End inPort(const std::string& block, const std::string& port) {
    layout::InPort end;
    end.block = layout::BlockId(block);
    end.port = parts::PortName(port);
    return end;
}

layout::End spare(const Vec3& tip) {
    return layout::Spare{tip};
}

parts::Part rowPart() {
    parts::Part part = named("row", "row of three", {6, 2, 2});
    for (int i = 0; i < 3; ++i) {
        const std::string name = std::to_string(i + 1);
        const double x = 1.0 + 2.0 * i;
        parts::Port bore = port(name, {x, 0, 1}, {0, 1, 0}, 1.5);
        bore.stripLength = Inches::of(1.5);
        bore.stripTolerance = Inches::of(0.125);
        part.ports.push_back(bore);
        part.screws.push_back(screw("s" + name, name, {x, 0.75, 2}));
    }
    part.mountingHoles = {{{0.5, 1.75, 0}, Inches::of(0.25)}, {{5.5, 1.75, 0}, Inches::of(0.25)}};
    return part;
}

parts::Part throughPart() {
    parts::Part part = named("through", "run and tap", {4, 2, 2});
    part.ports = {port("run", {0, 1, 1}, {1, 0, 0}, 4.0), port("tap", {2, 0, 1}, {0, 1, 0}, 0.75)};
    part.ports.front().opening = parts::PortOpening::both;
    part.screws = {screw("s1", "run", {1, 1, 2}), screw("s2", "tap", {2, 0.5, 2})};
    return part;
}

parts::Part eitherPart() {
    parts::Part part = named("either", "one bore, caps to move", {2, 3, 2});
    part.ports = {port("e", {1, 0, 1}, {0, 1, 0}, 3.0), port("f", {0, 0.5, 1}, {1, 0, 0}, 0.5)};
    part.ports.front().opening = parts::PortOpening::either;
    part.screws = {screw("s1", "e", {1, 1.5, 2})};
    return part;
}

Sample emptyGutter() {
    Sample sample;
    sample.layout.title = "Gutter of the sail loft";
    sample.layout.gutter.inside = {48, 8, 8};
    for (const parts::Part& part : {rowPart(), throughPart(), eitherPart()}) {
        sample.shelf.emplace(part.id, part);
    }
    sample.addSystem("sys");
    sample.addCircuit("feed");
    return sample;
}

Sample oneTap() {
    Sample sample = emptyGutter();
    sample.addEntry("in", layout::Wall::top, 12, 2);
    sample.addBlock("A", "row", {30, 4, 1});
    sample.addConductor("c1", atEntry("in"), inPort("A", "1"), {{12, 2, 2}, {31, 2, 2}});
    return sample;
}

}  // namespace gw::test
