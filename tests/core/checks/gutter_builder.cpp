#include "core/checks/gutter_builder.h"

#include <algorithm>
#include <ostream>
#include <stdexcept>

namespace gw::check_test {
namespace {

/// A text such as "3/0-7" as an id.
std::string asId(std::string text) {
    std::replace(text.begin(), text.end(), '/', '-');
    return text;
}

using units::Inches;

parts::PortRange copperRange() {
    parts::PortRange range;
    range.metals = {standards::Metal::copper};
    range.strandings = {standards::Stranding::classB};
    range.smallest = units::WireSize::of("1/0");
    range.largest = units::WireSize::of("600");
    range.conductors = 1;
    return range;
}

parts::Port port(const std::string& name, const Vec3& mouth, const Vec3& direction, double depth) {
    parts::Port made;
    made.name = parts::PortName(name);
    made.mouth = mouth;
    made.direction = direction;
    made.boreDepth = Inches::of(depth);
    made.boreDiameter = Inches::of(1.0);
    made.accepts = {copperRange()};
    made.stripLength = Inches::of(1.375);
    made.stripTolerance = Inches::of(0.0625);
    return made;
}

parts::Screw screw(const std::string& name, const std::string& port, const Vec3& head) {
    return {parts::ScrewName(name), parts::PortName(port), head, {0, 0, 1}, "hex 3/8 in", {}};
}

parts::Part emptyPart(const std::string& id, const Vec3& body) {
    parts::Part part;
    part.id = parts::PartId(id);
    part.name = id;
    part.body = body;
    part.listing.kind = parts::ConnectorKind::wireConnector;
    part.listing.locations = {standards::Location::dry, standards::Location::damp};
    part.listing.temporarySubmersion = false;
    part.listing.lineSideOfService = true;
    part.listing.volts = 600;
    return part;
}

template <class Items>
auto& named(Items& items, const std::string& id) {
    const auto found = std::find_if(
        items.begin(), items.end(), [&](const auto& item) { return item.id.text() == id; });
    if (found == items.end()) {
        throw std::logic_error("no " + id + " in the test's layout");
    }
    return *found;
}

}  // namespace

parts::Part splicePart() {
    parts::Part part = emptyPart("splice", {2.0, 4.0, 2.0});
    part.ports = {port("1", {1.0, 4.0, 1.0}, {0, -1, 0}, 1.5),
                  port("2", {1.0, 0.0, 1.0}, {0, 1, 0}, 1.5)};
    part.screws = {screw("1", "1", {1.0, 3.25, 2.0}), screw("2", "2", {1.0, 0.75, 2.0})};
    return part;
}

parts::Part throughPart() {
    parts::Part part = emptyPart("through", {4.0, 3.0, 2.0});
    for (const auto& [name, x] : {std::pair<std::string, double>{"1", 1.0}, {"2", 3.0}}) {
        part.ports.push_back(port(name, {x, 0.0, 1.0}, {0, 1, 0}, 3.0));
        part.ports.back().opening = parts::PortOpening::both;
        part.screws.push_back(screw(name + "a", name, {x, 0.75, 2.0}));
        part.screws.push_back(screw(name + "b", name, {x, 2.25, 2.0}));
    }
    return part;
}

parts::Part rowPart(int count) {
    parts::Part part = emptyPart("row", {1.5 * count + 0.5, 2.0, 2.0});
    for (int i = 0; i < count; ++i) {
        const std::string name = std::to_string(i + 1);
        const double x = 1.0 + 1.5 * i;
        part.ports.push_back(port(name, {x, 2.0, 1.0}, {0, -1, 0}, 1.5));
        part.screws.push_back(screw(name, name, {x, 1.25, 2.0}));
    }
    return part;
}

GutterBuilder::GutterBuilder(const Vec3& inside) {
    using layout::Phase;
    layout_.title = "test";
    layout_.gutter.inside = inside;
    layout_.gutter.enclosureType = "1";
    layout_.surroundings.location = standards::Location::dry;
    layout_.surroundings.floods = false;
    layout::System system;
    system.id = layout::SystemId("utility");
    system.voltsBetweenPhases = 208;
    system.voltsToGround = 120;
    layout_.systems = {system};
    circuit("S", {Phase::a, Phase::b, Phase::c, Phase::n, Phase::g});
    circuitNamed("S").role = layout::Role::service;
}

GutterBuilder& GutterBuilder::add(const parts::Part& part) {
    shelf_.insert_or_assign(part.id, part);
    return *this;
}

GutterBuilder& GutterBuilder::circuit(const std::string& id,
                                      const std::vector<layout::Phase>& phases,
                                      int sets,
                                      const std::string& joins) {
    layout::Circuit circuit;
    circuit.id = layout::CircuitId(id);
    circuit.name = id;
    circuit.system = layout_.systems.front().id;
    circuit.sets = sets;
    circuit.phases = phases;
    if (!joins.empty()) {
        circuit.joins = layout::CircuitId(joins);
    }
    layout_.circuits.push_back(circuit);
    return *this;
}

GutterBuilder& GutterBuilder::entry(const std::string& id, layout::Wall wall, double u, double v) {
    layout::Entry entry;
    entry.id = layout::EntryId(id);
    entry.name = id;
    entry.wall = wall;
    entry.u = u;
    entry.v = v;
    layout_.entries.push_back(entry);
    return *this;
}

GutterBuilder& GutterBuilder::block(const std::string& id,
                                    const std::string& part,
                                    const Vec3& corner) {
    layout::Block block;
    block.id = layout::BlockId(id);
    block.name = id;
    block.part = parts::PartId(part);
    block.corner = corner;
    layout_.blocks.push_back(block);
    return *this;
}

layout::Conductor& GutterBuilder::conductor(const std::string& id,
                                            const layout::End& from,
                                            const layout::End& to,
                                            const std::vector<layout::Corner>& corners) {
    layout::Conductor conductor;
    conductor.id = layout::ConductorId(asId(id));
    conductor.tag = id;
    conductor.circuit = layout::CircuitId("S");
    conductor.size = units::WireSize::of("500");
    conductor.metal = standards::Metal::copper;
    conductor.insulation = standards::Insulation::thwn2;
    conductor.stranding = standards::Stranding::classB;
    conductor.colour = "black";
    conductor.from = from;
    conductor.to = to;
    conductor.corners = corners;
    layout_.conductors.push_back(conductor);
    return layout_.conductors.back();
}

layout::Conductor& GutterBuilder::conductorNamed(const std::string& id) {
    return named(layout_.conductors, id);
}

layout::Block& GutterBuilder::blockNamed(const std::string& id) {
    return named(layout_.blocks, id);
}

layout::Circuit& GutterBuilder::circuitNamed(const std::string& id) {
    return named(layout_.circuits, id);
}

geometry::BuiltLayout GutterBuilder::build() const {
    const auto valid = layout::validate(layout_, shelf_);
    if (!valid) {
        throw std::logic_error(toLine(valid.error()));
    }
    return geometry::build(layout_, shelf_);
}

layout::End atEntry(const std::string& entry, int slot) {
    return layout::AtEntry{layout::EntryId(entry), slot};
}

layout::End inPort(const std::string& block, const std::string& port, double strip) {
    return layout::InPort{
        layout::BlockId(block), parts::PortName(port), Inches::of(strip), std::nullopt};
}

layout::End spare(const Vec3& tip) {
    return layout::Spare{tip};
}

layout::Corner corner(const Vec3& at, double radius) {
    return {at, Inches::of(radius)};
}

GutterBuilder straightSplice() {
    GutterBuilder builder;
    builder.add(splicePart());
    builder.circuitNamed("S").phases = {layout::Phase::a};
    builder.circuit("T", {layout::Phase::a}, 1, "S");
    builder.entry("above", layout::Wall::top, 10.0, 3.0);
    builder.entry("below", layout::Wall::bottom, 10.0, 3.0);
    builder.block("A", "splice", {9.0, 4.0, 2.0});
    builder.conductor("S-A", atEntry("above"), inPort("A", "1"));
    builder.conductor("T-A", inPort("A", "2"), atEntry("below")).circuit = layout::CircuitId("T");
    return builder;
}

std::vector<checks::Finding> withVerdict(const std::vector<checks::Finding>& findings,
                                         checks::Verdict verdict) {
    std::vector<checks::Finding> found;
    std::copy_if(findings.begin(), findings.end(), std::back_inserter(found), [&](const auto& one) {
        return one.verdict == verdict;
    });
    return found;
}

std::vector<checks::Finding> about(const std::vector<checks::Finding>& findings,
                                   const checks::Subject& subject) {
    std::vector<checks::Finding> found;
    std::copy_if(findings.begin(), findings.end(), std::back_inserter(found), [&](const auto& one) {
        return std::find(one.subjects.begin(), one.subjects.end(), subject) != one.subjects.end();
    });
    return found;
}

namespace {

std::string textOf(const checks::Finding& finding) {
    std::vector<std::string> subjects;
    for (const auto& subject : finding.subjects) {
        subjects.push_back(checks::subjectText(subject));
    }
    std::sort(subjects.begin(), subjects.end());
    std::string text(checks::checkName(finding.check));
    text += ": " + std::string(checks::verdictText(finding.verdict));
    for (const auto& subject : subjects) {
        text += ", " + subject;
    }
    for (const auto* number : {&finding.measured, &finding.limit, &finding.margin}) {
        text += *number ? "; " + checks::toText(**number) : "; -";
    }
    return text;
}

}  // namespace

std::vector<std::string> sortedTexts(const std::vector<checks::Finding>& findings) {
    std::vector<std::string> texts;
    for (const auto& finding : findings) {
        texts.push_back(textOf(finding));
    }
    std::sort(texts.begin(), texts.end());
    return texts;
}

}  // namespace gw::check_test

namespace gw::checks {

void PrintTo(const Finding& finding, std::ostream* out) {
    *out << checkName(finding.check) << ": " << verdictText(finding.verdict) << ": "
         << finding.working << " [" << standards::toText(finding.citation) << "]";
    for (const auto& missing : finding.missing) {
        *out << " missing: " << missing;
    }
}

}  // namespace gw::checks
