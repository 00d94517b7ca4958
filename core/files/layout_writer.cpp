#include "base/json_writer.h"
#include "files/layout_file.h"
#include "parts/part_file.h"

namespace gw::files {
namespace {

using namespace layout;
using parts::writePoint;
using units::Inches;

void setText(JsonTree& tree, std::string_view name, const std::string& text) {
    if (!text.empty()) {
        tree.set(name, text);
    }
}

template <class T>
void setIf(JsonTree& tree, std::string_view name, const std::optional<T>& value) {
    if (value) {
        tree.set(name, *value);
    }
}

void setLength(JsonTree& tree, std::string_view name, const std::optional<Inches>& length) {
    if (length) {
        tree.set(name, length->in());
    }
}

template <class T, class Text>
void setKind(JsonTree& tree, std::string_view name, const std::optional<T>& kind, Text text) {
    if (kind) {
        tree.set(name, text(*kind));
    }
}

template <class Items, class Write>
void setList(JsonTree& tree, std::string_view name, const Items& items, Write write) {
    if (items.empty()) {
        return;
    }
    auto list = JsonTree::array();
    for (const auto& item : items) {
        list.push(write(item));
    }
    tree.set(name, std::move(list));
}

JsonTree writeGutter(const Gutter& gutter) {
    auto inside = JsonTree::object();
    inside.set("length", gutter.inside.x);
    inside.set("height", gutter.inside.y);
    inside.set("depth", gutter.inside.z);
    auto tree = JsonTree::object();
    tree.set("article", standards::articleText(gutter.article));
    tree.set("inside", std::move(inside));
    setLength(tree, "sheet", gutter.sheet);
    tree.set("material", materialText(gutter.material));
    setIf(tree, "enclosureType", gutter.enclosureType);
    tree.set("orientation", orientationText(gutter.orientation));
    setLength(tree, "supportSpacing", gutter.supportSpacing);
    setLength(tree, "beyondEquipment", gutter.beyondEquipment);
    setKind(tree, "largestConductor", gutter.largestConductor, [](const units::WireSize& size) {
        return size.label();
    });
    return tree;
}

JsonTree writeSurroundings(const Surroundings& surroundings) {
    auto tree = JsonTree::object();
    setKind(tree, "location", surroundings.location, standards::locationText);
    setIf(tree, "ambientCelsius", surroundings.ambientCelsius);
    setIf(tree, "floods", surroundings.floods);
    return tree;
}

JsonTree writeReadings(const Readings& readings) {
    auto tree = JsonTree::object();
    setKind(tree, "fillAtSplice", readings.fillAtSplice, fillAtSpliceText);
    setKind(tree, "terminalSpace", readings.terminalSpace, terminalSpaceText);
    setKind(tree, "insideWeatherproof", readings.insideWeatherproof, insideWeatherproofText);
    return tree;
}

JsonTree writeAmendments(const Amendments& amendments) {
    auto tree = JsonTree::object();
    setIf(tree, "conductorFillPercent", amendments.conductorFillPercent);
    setIf(tree, "spliceFillPercent", amendments.spliceFillPercent);
    setIf(tree, "bendRadiusMultiple", amendments.bendRadiusMultiple);
    setText(tree, "source", amendments.source);
    return tree;
}

JsonTree writeSystem(const System& system) {
    auto tree = JsonTree::object();
    tree.set("id", system.id.text());
    setText(tree, "name", system.name);
    setIf(tree, "voltsBetweenPhases", system.voltsBetweenPhases);
    setIf(tree, "voltsToGround", system.voltsToGround);
    setIf(tree, "faultKiloamperes", system.faultKiloamperes);
    return tree;
}

JsonTree writeCircuit(const Circuit& circuit) {
    auto tree = JsonTree::object();
    tree.set("id", circuit.id.text());
    setText(tree, "name", circuit.name);
    tree.set("role", roleText(circuit.role));
    tree.set("system", circuit.system.text());
    tree.set("sets", circuit.sets);
    auto phases = JsonTree::array();
    for (const auto phase : circuit.phases) {
        phases.push(phaseText(phase));
    }
    tree.set("phases", std::move(phases));
    if (circuit.joins) {
        tree.set("joins", circuit.joins->text());
    }
    setIf(tree, "bondsNeutral", circuit.bondsNeutral);
    setIf(tree, "deviceAmperes", circuit.deviceAmperes);
    setIf(tree, "loadAmperes", circuit.loadAmperes);
    setKind(tree, "tapRule", circuit.tapRule, tapRuleText);
    setIf(tree, "supplies", circuit.supplies);
    return tree;
}

JsonTree writeEntry(const Entry& entry) {
    auto tree = JsonTree::object();
    tree.set("id", entry.id.text());
    setText(tree, "name", entry.name);
    tree.set("wall", wallText(entry.wall));
    tree.set("u", entry.u);
    tree.set("v", entry.v);
    setKind(tree, "raceway", entry.raceway, standards::racewayText);
    setKind(
        tree, "tradeSize", entry.tradeSize, [](standards::TradeSize size) { return size.text(); });
    setLength(tree, "racewayLength", entry.racewayLength);
    setIf(tree, "insulatingBushing", entry.insulatingBushing);
    setKind(tree, "bondedBy", entry.bondedBy, bondedByText);
    setKind(tree, "bondingJumper", entry.bondingJumper, [](const units::WireSize& size) {
        return std::string(size.label());
    });
    setText(tree, "leadsTo", entry.leadsTo);
    return tree;
}

JsonTree writeOpenMouth(const OpenMouth& mouth) {
    auto tree = JsonTree::object();
    tree.set("port", mouth.port.text());
    tree.set("near", mouth.near);
    return tree;
}

JsonTree writeBlock(const Block& block) {
    auto tree = JsonTree::object();
    tree.set("id", block.id.text());
    setText(tree, "name", block.name);
    tree.set("part", block.part.text());
    tree.set("corner", writePoint(block.corner));
    tree.set("attitude", block.attitude.text());
    setIf(tree, "mounted", block.mounted);
    setList(tree, "openMouths", block.openMouths, writeOpenMouth);
    setKind(tree, "phase", block.phase, phaseText);
    return tree;
}

struct EndWriter {
    JsonTree operator()(const AtEntry& at) const {
        auto tree = JsonTree::object();
        tree.set("entry", at.entry.text());
        tree.set("slot", at.slot);
        return tree;
    }
    JsonTree operator()(const InPort& in) const {
        auto tree = JsonTree::object();
        tree.set("block", in.block.text());
        tree.set("port", in.port.text());
        setLength(tree, "strip", in.strip);
        setLength(tree, "inserted", in.inserted);
        return tree;
    }
    JsonTree operator()(const Spare& spare) const {
        auto tree = JsonTree::object();
        tree.set("spare", writePoint(spare.tip));
        return tree;
    }
};

JsonTree writeCorner(const Corner& corner) {
    auto tree = JsonTree::object();
    tree.set("at", writePoint(corner.at));
    tree.set("radius", corner.radius.in());
    return tree;
}

JsonTree writePass(const Pass& pass) {
    auto tree = JsonTree::object();
    tree.set("block", pass.block.text());
    tree.set("port", pass.port.text());
    setLength(tree, "windowStart", pass.windowStart);
    setLength(tree, "windowLength", pass.windowLength);
    return tree;
}

JsonTree writeConductor(const Conductor& conductor) {
    auto tree = JsonTree::object();
    tree.set("id", conductor.id.text());
    setText(tree, "tag", conductor.tag);
    tree.set("circuit", conductor.circuit.text());
    tree.set("set", conductor.set);
    tree.set("phase", phaseText(conductor.phase));
    tree.set("size", conductor.size.label());
    setKind(tree, "metal", conductor.metal, standards::metalText);
    setKind(tree, "insulation", conductor.insulation, standards::insulationText);
    setKind(tree, "stranding", conductor.stranding, standards::strandingText);
    setLength(tree, "outsideDiameter", conductor.outsideDiameter);
    setIf(tree, "colour", conductor.colour);
    tree.set("from", std::visit(EndWriter{}, conductor.from));
    tree.set("to", std::visit(EndWriter{}, conductor.to));
    setList(tree, "corners", conductor.corners, writeCorner);
    setList(tree, "passes", conductor.passes, writePass);
    return tree;
}

JsonTree writeRemark(const Remark& remark) {
    auto tree = JsonTree::object();
    tree.set("id", remark.id.text());
    setText(tree, "author", remark.author);
    tree.set("text", remark.text);
    if (remark.at) {
        tree.set("at", writePoint(*remark.at));
    }
    setIf(tree, "item", remark.item);
    if (remark.settled) {
        tree.set("settled", true);
    }
    return tree;
}

void setUnlessEmpty(JsonTree& tree, std::string_view name, JsonTree value) {
    if (!value.empty()) {
        tree.set(name, std::move(value));
    }
}

}  // namespace

std::string writeLayout(const Layout& layout) {
    auto tree = JsonTree::object();
    tree.set("format", "gutterwright-layout");
    tree.set("version", kLayoutVersion);
    tree.set("unit", "in");
    setText(tree, "title", layout.title);
    setText(tree, "project", layout.project);
    setText(tree, "drawnBy", layout.drawnBy);
    setText(tree, "date", layout.date);
    setText(tree, "revision", layout.revision);
    tree.set("edition", standards::editionText(layout.edition));
    if (layout.displayUnit == units::LengthUnit::millimetre) {
        tree.set("displayUnit", "mm");
    }
    tree.set("gutter", writeGutter(layout.gutter));
    setUnlessEmpty(tree, "surroundings", writeSurroundings(layout.surroundings));
    setUnlessEmpty(tree, "readings", writeReadings(layout.readings));
    setUnlessEmpty(tree, "amendments", writeAmendments(layout.amendments));
    setList(tree, "systems", layout.systems, writeSystem);
    setList(tree, "circuits", layout.circuits, writeCircuit);
    setList(tree, "entries", layout.entries, writeEntry);
    setList(tree, "blocks", layout.blocks, writeBlock);
    setList(tree, "conductors", layout.conductors, writeConductor);
    setList(tree, "remarks", layout.remarks, writeRemark);
    setList(tree, "parts", layout.parts, parts::writePart);
    return tree.text();
}

}  // namespace gw::files
