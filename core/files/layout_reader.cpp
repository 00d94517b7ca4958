#include "files/layout_reader.h"

#include <limits>

#include "files/layout_file.h"
#include "parts/part_file.h"

namespace gw::files {
namespace {

using namespace layout;  // this file is about the members of a layout and nothing else
using parts::readPoint;
using parts::readSize;
using units::Inches;

// What a number may be is for layout::validate to say, once, and of every number here. Only a whole
// number has to fit the type that keeps it.
constexpr double kAny = std::numeric_limits<double>::infinity();
constexpr int kMostWhole = 1'000'000'000;

template <class T>
T idOf(const JsonValue& value) {
    return T(value.idText());
}

int integer(const JsonValue& value) {
    return value.integer(-kMostWhole, kMostWhole);
}

/// Reads the members of one kind after another, in the file's unit.
class LayoutReader {
public:
    explicit LayoutReader(double perInch) : perInch_(perInch) {}

    Gutter gutter(const JsonValue& value) const {
        auto object = value.object();
        Gutter gutter;
        gutter.article = object.required("article").oneOr(
            standards::articleFromText,
            "auxiliary gutter, metal wireway or nonmetallic wireway",
            gutter.article);
        gutter.inside = inside(object.required("inside"));
        gutter.sheet = lengthIf(object, "sheet");
        gutter.material = object.required("material")
                              .oneOr(materialFromText,
                                     "steel, stainless steel, aluminium or nonmetallic",
                                     gutter.material);
        gutter.enclosureType = object.textIf("enclosureType");
        gutter.orientation =
            object.required("orientation")
                .oneOr(orientationFromText, "horizontal or vertical", gutter.orientation);
        gutter.supportSpacing = lengthIf(object, "supportSpacing");
        gutter.beyondEquipment = lengthIf(object, "beyondEquipment");
        if (const auto largest = object.optional("largestConductor")) {
            gutter.largestConductor = readSize(*largest);
        }
        object.done();
        return gutter;
    }

    Entry entry(const JsonValue& value) const {
        auto object = value.object();
        Entry entry;
        entry.id = idOf<EntryId>(object.required("id"));
        entry.name = object.textIf("name").value_or("");
        entry.wall = object.required("wall").oneOr(
            wallFromText, "left, right, top, bottom or back", entry.wall);
        entry.u = length(object.required("u"));
        entry.v = length(object.required("v"));
        entry.raceway =
            object.oneIf("raceway", standards::racewayFromText, "EMT, RMC, PVC-40 or FMC");
        entry.tradeSize = object.oneIf("tradeSize", tradeSize, "1/2, 3/4, 1, 1-1/4 … 6");
        entry.racewayLength = lengthIf(object, "racewayLength");
        entry.insulatingBushing = object.flagIf("insulatingBushing");
        entry.bondedBy =
            object.oneIf("bondedBy",
                         bondedByFromText,
                         "standard locknuts, threaded hub, threadless fitting, bonding "
                         "locknut, bushing and jumper or grounded conductor");
        if (const auto jumper = object.optional("bondingJumper")) {
            entry.bondingJumper = readSize(*jumper);
        }
        entry.leadsTo = object.textIf("leadsTo").value_or("");
        object.done();
        return entry;
    }

    Block block(const JsonValue& value) const {
        auto object = value.object();
        Block block;
        block.id = idOf<BlockId>(object.required("id"));
        block.name = object.textIf("name").value_or("");
        block.part = idOf<parts::PartId>(object.required("part"));
        block.corner = point(object.required("corner"));
        block.attitude = object.required("attitude")
                             .oneOr(parts::Attitude::fromText,
                                    "length and height direction, such as +x+y",
                                    block.attitude);
        block.mounted = object.flagIf("mounted");
        for (const auto& item : object.itemsIf("openMouths")) {
            block.openMouths.push_back(openMouth(item));
        }
        block.phase = object.oneIf("phase", phaseFromText, "A, B, C, N or G");
        object.done();
        return block;
    }

    Conductor conductor(const JsonValue& value) const {
        auto object = value.object();
        Conductor conductor;
        conductor.id = idOf<ConductorId>(object.required("id"));
        conductor.tag = object.textIf("tag").value_or("");
        conductor.circuit = idOf<CircuitId>(object.required("circuit"));
        conductor.set = integer(object.required("set"));
        conductor.phase =
            object.required("phase").oneOr(phaseFromText, "A, B, C, N or G", conductor.phase);
        conductor.size = readSize(object.required("size"));
        conductor.metal = object.oneIf(
            "metal", standards::metalFromText, "copper, aluminium or copper-clad aluminium");
        conductor.insulation =
            object.oneIf("insulation", standards::insulationFromText, "THHN, XHHW-2, … or bare");
        conductor.stranding = object.oneIf(
            "stranding", standards::strandingFromText, "solid, B, C, compact, G, H, I, K or M");
        conductor.outsideDiameter = lengthIf(object, "outsideDiameter");
        conductor.colour = object.textIf("colour");
        conductor.from = end(object.required("from"));
        conductor.to = end(object.required("to"));
        for (const auto& item : object.itemsIf("corners")) {
            conductor.corners.push_back(corner(item));
        }
        for (const auto& item : object.itemsIf("passes")) {
            conductor.passes.push_back(pass(item));
        }
        object.done();
        return conductor;
    }

    Remark remark(const JsonValue& value) const {
        auto object = value.object();
        Remark remark;
        remark.id = idOf<RemarkId>(object.required("id"));
        remark.author = object.textIf("author").value_or("");
        remark.text = object.required("text").text();
        if (const auto at = object.optional("at")) {
            remark.at = point(*at);
        }
        remark.item = object.textIf("item");
        remark.settled = object.flagIf("settled").value_or(false);
        object.done();
        return remark;
    }

    parts::Part part(const JsonValue& value) const { return parts::readPart(value, perInch_); }

private:
    double length(const JsonValue& value) const { return value.number(-kAny, kAny) / perInch_; }

    std::optional<Inches> lengthIf(JsonObject& object, std::string_view name) const {
        const auto value = object.optional(name);
        return value ? std::optional(Inches::of(length(*value))) : std::nullopt;
    }

    Vec3 point(const JsonValue& value) const { return readPoint(value, perInch_, kAny); }

    Vec3 inside(const JsonValue& value) const {
        auto object = value.object();
        const double along = length(object.required("length"));
        const double height = length(object.required("height"));
        const double depth = length(object.required("depth"));
        object.done();
        return {along, height, depth};
    }

    static std::optional<standards::TradeSize> tradeSize(std::string_view text) {
        const auto found = standards::TradeSize::parse(text);
        return found && found->text() == text ? found : std::nullopt;
    }

    static OpenMouth openMouth(const JsonValue& value) {
        auto object = value.object();
        OpenMouth mouth;
        mouth.port = idOf<parts::PortName>(object.required("port"));
        mouth.near = object.required("near").boolean();
        object.done();
        return mouth;
    }

    /// Told apart by their first member: {"entry", "slot"}, {"block", "port", …} or {"spare"}.
    End end(const JsonValue& value) const {
        auto object = value.object();
        End read;
        if (const auto entry = object.optional("entry")) {
            read = AtEntry{idOf<EntryId>(*entry), integer(object.required("slot"))};
        } else if (const auto spare = object.optional("spare")) {
            read = Spare{point(*spare)};
        } else if (const auto block = object.optional("block")) {
            InPort in;
            in.block = idOf<BlockId>(*block);
            in.port = idOf<parts::PortName>(object.required("port"));
            in.strip = lengthIf(object, "strip");
            in.inserted = lengthIf(object, "inserted");
            read = in;
        } else {
            value.complain(ErrorCode::missing,
                           "an end says where it is",
                           "\"entry\", \"block\" or \"spare\"",
                           value.excerpt());
        }
        object.done();
        return read;
    }

    Corner corner(const JsonValue& value) const {
        auto object = value.object();
        Corner corner;
        corner.at = point(object.required("at"));
        corner.radius = Inches::of(length(object.required("radius")));
        object.done();
        return corner;
    }

    Pass pass(const JsonValue& value) const {
        auto object = value.object();
        Pass pass;
        pass.block = idOf<BlockId>(object.required("block"));
        pass.port = idOf<parts::PortName>(object.required("port"));
        pass.windowStart = lengthIf(object, "windowStart");
        pass.windowLength = lengthIf(object, "windowLength");
        object.done();
        return pass;
    }

    double perInch_;
};

Surroundings readSurroundings(const JsonValue& value) {
    auto object = value.object();
    Surroundings surroundings;
    surroundings.location =
        object.oneIf("location", standards::locationFromText, "dry, damp, wet or buried");
    surroundings.ambientCelsius = object.numberIf("ambientCelsius", -kAny, kAny);
    surroundings.floods = object.flagIf("floods");
    object.done();
    return surroundings;
}

Readings readReadings(const JsonValue& value) {
    auto object = value.object();
    Readings readings;
    readings.fillAtSplice = object.oneIf(
        "fillAtSplice", fillAtSpliceFromText, "20 % still binds or 75 % takes its place");
    readings.terminalSpace = object.oneIf(
        "terminalSpace", terminalSpaceFromText, "as for distribution blocks or gutter width only");
    readings.insideWeatherproof =
        object.oneIf("insideWeatherproof", insideWeatherproofFromText, "wet or not wet");
    object.done();
    return readings;
}

Amendments readAmendments(const JsonValue& value) {
    auto object = value.object();
    Amendments amendments;
    amendments.conductorFillPercent = object.numberIf("conductorFillPercent", -kAny, kAny);
    amendments.spliceFillPercent = object.numberIf("spliceFillPercent", -kAny, kAny);
    amendments.bendRadiusMultiple = object.numberIf("bendRadiusMultiple", -kAny, kAny);
    amendments.source = object.textIf("source").value_or("");
    object.done();
    return amendments;
}

System readSystem(const JsonValue& value) {
    auto object = value.object();
    System system;
    system.id = idOf<SystemId>(object.required("id"));
    system.name = object.textIf("name").value_or("");
    system.voltsBetweenPhases = object.integerIf("voltsBetweenPhases", -kMostWhole, kMostWhole);
    system.voltsToGround = object.integerIf("voltsToGround", -kMostWhole, kMostWhole);
    system.faultKiloamperes = object.numberIf("faultKiloamperes", -kAny, kAny);
    object.done();
    return system;
}

Circuit readCircuit(const JsonValue& value) {
    auto object = value.object();
    Circuit circuit;
    circuit.id = idOf<CircuitId>(object.required("id"));
    circuit.name = object.textIf("name").value_or("");
    circuit.role = object.required("role").oneOr(
        roleFromText, "service, feeder, tap, branch or bonding", circuit.role);
    circuit.system = idOf<SystemId>(object.required("system"));
    circuit.sets = integer(object.required("sets"));
    for (const auto& item : object.required("phases").items()) {
        circuit.phases.push_back(item.oneOr(phaseFromText, "A, B, C, N or G", Phase::a));
    }
    if (const auto joins = object.optional("joins")) {
        circuit.joins = idOf<CircuitId>(*joins);
    }
    circuit.bondsNeutral = object.flagIf("bondsNeutral");
    circuit.deviceAmperes = object.numberIf("deviceAmperes", -kAny, kAny);
    circuit.loadAmperes = object.numberIf("loadAmperes", -kAny, kAny);
    circuit.tapRule = object.oneIf(
        "tapRule", tapRuleFromText, "none, 10 ft, 25 ft, high bay, outside or service conductors");
    circuit.supplies = object.textIf("supplies");
    object.done();
    return circuit;
}

void readHead(JsonObject& object, Layout& layout) {
    layout.title = object.textIf("title").value_or("");
    layout.project = object.textIf("project").value_or("");
    layout.drawnBy = object.textIf("drawnBy").value_or("");
    layout.date = object.textIf("date").value_or("");
    layout.revision = object.textIf("revision").value_or("");
    layout.edition = object.required("edition").oneOr(
        standards::editionFromText, "2017, 2020, 2023 or 2026", layout.edition);
    const auto unit = [](std::string_view word) -> std::optional<units::LengthUnit> {
        if (word == "in") {
            return units::LengthUnit::inch;
        }
        return word == "mm" ? std::optional(units::LengthUnit::millimetre) : std::nullopt;
    };
    layout.displayUnit =
        object.oneIf("displayUnit", unit, "in or mm").value_or(units::LengthUnit::inch);
}

template <class T, class Read>
void readList(JsonObject& object, std::string_view name, std::vector<T>& list, Read read) {
    for (const auto& item : object.itemsIf(name)) {
        list.push_back(read(item));
    }
}

}  // namespace

Layout readLayoutObject(const JsonValue& value) {
    auto object = value.object();
    Layout layout;
    readFormat(object, "gutterwright-layout", kLayoutVersion, "a layout file");
    const LayoutReader reader(parts::readUnit(object.required("unit")));
    readHead(object, layout);
    layout.gutter = reader.gutter(object.required("gutter"));
    if (const auto surroundings = object.optional("surroundings")) {
        layout.surroundings = readSurroundings(*surroundings);
    }
    if (const auto readings = object.optional("readings")) {
        layout.readings = readReadings(*readings);
    }
    if (const auto amendments = object.optional("amendments")) {
        layout.amendments = readAmendments(*amendments);
    }
    const auto read = [&](auto member) {
        return [&reader, member](const JsonValue& item) { return (reader.*member)(item); };
    };
    readList(object, "systems", layout.systems, readSystem);
    readList(object, "circuits", layout.circuits, readCircuit);
    readList(object, "entries", layout.entries, read(&LayoutReader::entry));
    readList(object, "blocks", layout.blocks, read(&LayoutReader::block));
    readList(object, "conductors", layout.conductors, read(&LayoutReader::conductor));
    readList(object, "remarks", layout.remarks, read(&LayoutReader::remark));
    readList(object, "parts", layout.parts, read(&LayoutReader::part));
    object.done();
    return layout;
}

}  // namespace gw::files
