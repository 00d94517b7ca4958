#include "support/small_gutter.h"

namespace gw::test_support {

SmallGutter::SmallGutter(const Vec3& inside) {
    layout.title = "Small gutter";
    layout.project = "Riverside yard";
    layout.gutter.inside = inside;
    layout.systems.push_back(
        {layout::SystemId("yard"), "208Y/120 V, 3-phase, 4-wire", 208, 120, 10.0});
    layout::Circuit circuit;
    circuit.id = layout::CircuitId("F");
    circuit.name = "Feeder";
    circuit.system = layout::SystemId("yard");
    circuit.sets = 20;
    circuit.phases = {layout::Phase::a};
    layout.circuits.push_back(circuit);
}

void SmallGutter::addEntry(const std::string& id, layout::Wall wall, double u, double v) {
    layout::Entry entry;
    entry.id = layout::EntryId(id);
    entry.name = id;
    entry.wall = wall;
    entry.u = u;
    entry.v = v;
    layout.entries.push_back(entry);
}

void SmallGutter::addBlock(const std::string& id, const std::string& part, const Vec3& corner) {
    layout::Block block;
    block.id = layout::BlockId(id);
    block.name = id;
    block.part = parts::PartId(part);
    block.corner = corner;
    layout.blocks.push_back(block);
}

void SmallGutter::addConductor(const std::string& id,
                               const layout::End& from,
                               const layout::End& to) {
    layout::Conductor conductor;
    conductor.id = layout::ConductorId(id);
    conductor.tag = id;
    conductor.circuit = layout::CircuitId("F");
    conductor.set = static_cast<int>(layout.conductors.size() % 20) + 1;
    conductor.size = units::WireSize::of(size);
    conductor.metal = standards::Metal::copper;
    conductor.insulation = standards::Insulation::thwn2;
    conductor.stranding = standards::Stranding::classB;
    conductor.from = from;
    conductor.to = to;
    layout.conductors.push_back(conductor);
}

layout::End SmallGutter::atEntry(const std::string& entry, int slot) {
    return layout::AtEntry{layout::EntryId(entry), slot};
}

layout::End SmallGutter::inPort(const std::string& block, const std::string& port) {
    return layout::InPort{layout::BlockId(block), parts::PortName(port), {}, {}};
}

}  // namespace gw::test_support
