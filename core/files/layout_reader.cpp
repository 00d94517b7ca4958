#include "files/layout_reader.h"

#include "files/layout_file.h"
#include "parts/part_file.h"

namespace gw::files {
namespace {

using namespace layout;  // this file is about the members of a layout and nothing else
using parts::readPoint;
using units::Inches;

// What a number may be is for layout::validate to say, once, and of every number here. This bound
// only keeps what is computed on the way there within reason, whatever the file's unit.
constexpr int kBound = 1'000'000'000;

template <class T>
T idOf(const JsonValue& value) {
    const auto text = value.text();
    if (!isValidId(text)) {
        value.complain(ErrorCode::syntax,
                       "not an id",
                       "1 to 40 letters, digits, '-', '_' or '.'",
                       value.excerpt());
    }
    return T(text);
}

std::string textOr(JsonObject& object, std::string_view name) {
    const auto value = object.optional(name);
    return value ? value->text() : std::string();
}

std::optional<std::string> textIf(JsonObject& object, std::string_view name) {
    const auto value = object.optional(name);
    return value ? std::optional(value->text()) : std::nullopt;
}

std::optional<bool> flagIf(JsonObject& object, std::string_view name) {
    const auto value = object.optional(name);
    return value ? std::optional(value->boolean()) : std::nullopt;
}

std::optional<double> numberIf(JsonObject& object, std::string_view name) {
    const auto value = object.optional(name);
    return value ? std::optional(value->number(-kBound, kBound)) : std::nullopt;
}

int integer(const JsonValue& value) {
    return value.integer(-kBound, kBound);
}

std::optional<int> integerIf(JsonObject& object, std::string_view name) {
    const auto value = object.optional(name);
    return value ? std::optional(integer(*value)) : std::nullopt;
}

template <class Read>
auto oneIf(JsonObject& object, std::string_view name, Read read, const std::string& expected)
    -> decltype(read(std::string_view())) {
    const auto value = object.optional(name);
    return value ? value->one(read, expected) : std::nullopt;
}

template <class T, class Read>
T oneOr(const JsonValue& value, Read read, const std::string& expected, T other) {
    return value.one(read, expected).value_or(other);
}

/// Reads the members of one kind after another, in the file's unit.
class LayoutReader {
public:
    explicit LayoutReader(double perInch) : perInch_(perInch) {}

    Gutter gutter(const JsonValue& value) const {
        auto object = value.object();
        Gutter gutter;
        gutter.article = oneOr(object.required("article"),
                               standards::articleFromText,
                               "auxiliary gutter, metal wireway or nonmetallic wireway",
                               gutter.article);
        gutter.inside = inside(object.required("inside"));
        gutter.sheet = lengthIf(object, "sheet");
        gutter.material = oneOr(object.required("material"),
                                materialFromText,
                                "steel, stainless steel, aluminium or nonmetallic",
                                gutter.material);
        gutter.enclosureType = textIf(object, "enclosureType");
        gutter.orientation = oneOr(object.required("orientation"),
                                   orientationFromText,
                                   "horizontal or vertical",
                                   gutter.orientation);
        object.done();
        return gutter;
    }

    Entry entry(const JsonValue& value) const {
        auto object = value.object();
        Entry entry;
        entry.id = idOf<EntryId>(object.required("id"));
        entry.name = textOr(object, "name");
        entry.wall = oneOr(
            object.required("wall"), wallFromText, "left, right, top, bottom or back", entry.wall);
        entry.u = length(object.required("u"));
        entry.v = length(object.required("v"));
        entry.raceway =
            oneIf(object, "raceway", standards::racewayFromText, "EMT, RMC, PVC-40 or FMC");
        entry.tradeSize = oneIf(object, "tradeSize", tradeSize, "1/2, 3/4, 1, 1-1/4 … 6");
        entry.racewayLength = lengthIf(object, "racewayLength");
        entry.insulatingBushing = flagIf(object, "insulatingBushing");
        entry.leadsTo = textOr(object, "leadsTo");
        object.done();
        return entry;
    }

    Block block(const JsonValue& value) const {
        auto object = value.object();
        Block block;
        block.id = idOf<BlockId>(object.required("id"));
        block.name = textOr(object, "name");
        block.part = idOf<parts::PartId>(object.required("part"));
        block.corner = point(object.required("corner"));
        block.attitude = oneOr(object.required("attitude"),
                               parts::Attitude::fromText,
                               "length and height direction, such as +x+y",
                               block.attitude);
        block.mounted = flagIf(object, "mounted");
        if (const auto mouths = object.optional("openMouths")) {
            for (const auto& item : mouths->items()) {
                block.openMouths.push_back(openMouth(item));
            }
        }
        block.phase = oneIf(object, "phase", phaseFromText, "A, B, C, N or G");
        object.done();
        return block;
    }

    Conductor conductor(const JsonValue& value) const {
        auto object = value.object();
        Conductor conductor;
        conductor.id = idOf<ConductorId>(object.required("id"));
        conductor.tag = textOr(object, "tag");
        conductor.circuit = idOf<CircuitId>(object.required("circuit"));
        conductor.set = integer(object.required("set"));
        conductor.phase =
            oneOr(object.required("phase"), phaseFromText, "A, B, C, N or G", conductor.phase);
        conductor.size = size(object.required("size"));
        conductor.metal = oneIf(object,
                                "metal",
                                standards::metalFromText,
                                "copper, aluminium or copper-clad aluminium");
        conductor.insulation =
            oneIf(object, "insulation", standards::insulationFromText, "THHN, XHHW-2, … or bare");
        conductor.stranding = oneIf(object,
                                    "stranding",
                                    standards::strandingFromText,
                                    "solid, B, C, compact, G, H, I, K or M");
        conductor.outsideDiameter = lengthIf(object, "outsideDiameter");
        conductor.colour = textIf(object, "colour");
        conductor.from = end(object.required("from"));
        conductor.to = end(object.required("to"));
        for (const auto& item : itemsIf(object, "corners")) {
            conductor.corners.push_back(corner(item));
        }
        for (const auto& item : itemsIf(object, "passes")) {
            conductor.passes.push_back(pass(item));
        }
        object.done();
        return conductor;
    }

    Remark remark(const JsonValue& value) const {
        auto object = value.object();
        Remark remark;
        remark.id = idOf<RemarkId>(object.required("id"));
        remark.author = textOr(object, "author");
        remark.text = object.required("text").text();
        if (const auto at = object.optional("at")) {
            remark.at = point(*at);
        }
        remark.item = textIf(object, "item");
        remark.settled = flagIf(object, "settled").value_or(false);
        object.done();
        return remark;
    }

    parts::Part part(const JsonValue& value) const { return parts::readPart(value, perInch_); }

private:
    static std::vector<JsonValue> itemsIf(JsonObject& object, std::string_view name) {
        const auto value = object.optional(name);
        return value ? value->items() : std::vector<JsonValue>();
    }

    double length(const JsonValue& value) const { return value.number(-kBound, kBound) / perInch_; }

    std::optional<Inches> lengthIf(JsonObject& object, std::string_view name) const {
        const auto value = object.optional(name);
        return value ? std::optional(Inches::of(length(*value))) : std::nullopt;
    }

    Vec3 point(const JsonValue& value) const { return readPoint(value, perInch_, kBound); }

    Vec3 inside(const JsonValue& value) const {
        auto object = value.object();
        const double along = length(object.required("length"));
        const double height = length(object.required("height"));
        const double depth = length(object.required("depth"));
        object.done();
        return {along, height, depth};
    }

    /// As printed in the tables; the other spellings are for people who type.
    static units::WireSize size(const JsonValue& value) {
        const auto text = value.text();
        const auto found = units::WireSize::parse(text);
        if (!found || found->label() != text) {
            value.complain(ErrorCode::unknown,
                           "not a conductor size",
                           "14 to 1, 1/0 to 4/0 or 250 to 2000 as printed in the tables",
                           value.excerpt());
        }
        return found.value_or(units::WireSize::all().front());
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
        oneIf(object, "location", standards::locationFromText, "dry, damp, wet or buried");
    surroundings.ambientCelsius = numberIf(object, "ambientCelsius");
    surroundings.floods = flagIf(object, "floods");
    object.done();
    return surroundings;
}

Readings readReadings(const JsonValue& value) {
    auto object = value.object();
    Readings readings;
    readings.fillAtSplice = oneIf(
        object, "fillAtSplice", fillAtSpliceFromText, "20 % still binds or 75 % takes its place");
    readings.terminalSpace = oneIf(object,
                                   "terminalSpace",
                                   terminalSpaceFromText,
                                   "as for distribution blocks or gutter width only");
    readings.insideWeatherproof =
        oneIf(object, "insideWeatherproof", insideWeatherproofFromText, "wet or not wet");
    object.done();
    return readings;
}

System readSystem(const JsonValue& value) {
    auto object = value.object();
    System system;
    system.id = idOf<SystemId>(object.required("id"));
    system.name = textOr(object, "name");
    system.voltsBetweenPhases = integerIf(object, "voltsBetweenPhases");
    system.voltsToGround = integerIf(object, "voltsToGround");
    system.faultKiloamperes = numberIf(object, "faultKiloamperes");
    object.done();
    return system;
}

Circuit readCircuit(const JsonValue& value) {
    auto object = value.object();
    Circuit circuit;
    circuit.id = idOf<CircuitId>(object.required("id"));
    circuit.name = textOr(object, "name");
    circuit.role = oneOr(object.required("role"),
                         roleFromText,
                         "service, feeder, tap, branch or bonding",
                         circuit.role);
    circuit.system = idOf<SystemId>(object.required("system"));
    circuit.sets = integer(object.required("sets"));
    for (const auto& item : object.required("phases").items()) {
        circuit.phases.push_back(oneOr(item, phaseFromText, "A, B, C, N or G", Phase::a));
    }
    if (const auto joins = object.optional("joins")) {
        circuit.joins = idOf<CircuitId>(*joins);
    }
    circuit.bondsNeutral = flagIf(object, "bondsNeutral");
    circuit.deviceAmperes = numberIf(object, "deviceAmperes");
    circuit.loadAmperes = numberIf(object, "loadAmperes");
    circuit.tapRule = oneIf(object,
                            "tapRule",
                            tapRuleFromText,
                            "none, 10 ft, 25 ft, high bay, outside or service conductors");
    circuit.supplies = textIf(object, "supplies");
    object.done();
    return circuit;
}

void readHead(JsonObject& object, Layout& layout) {
    layout.title = textOr(object, "title");
    layout.project = textOr(object, "project");
    layout.drawnBy = textOr(object, "drawnBy");
    layout.date = textOr(object, "date");
    layout.revision = textOr(object, "revision");
    layout.edition = oneOr(object.required("edition"),
                           standards::editionFromText,
                           "2017, 2020, 2023 or 2026",
                           layout.edition);
    const auto unit = [](std::string_view word) -> std::optional<units::LengthUnit> {
        if (word == "in") {
            return units::LengthUnit::inch;
        }
        return word == "mm" ? std::optional(units::LengthUnit::millimetre) : std::nullopt;
    };
    layout.displayUnit =
        oneIf(object, "displayUnit", unit, "in or mm").value_or(units::LengthUnit::inch);
}

template <class T, class Read>
void readList(JsonObject& object, std::string_view name, std::vector<T>& list, Read read) {
    const auto value = object.optional(name);
    if (!value) {
        return;
    }
    for (const auto& item : value->items()) {
        list.push_back(read(item));
    }
}

double readFormat(JsonObject& object) {
    const auto format = object.required("format");
    if (format.text() != "gutterwright-layout") {
        format.complain(
            ErrorCode::unknown, "not a layout file", "\"gutterwright-layout\"", format.excerpt());
    }
    const auto version = object.required("version");
    if (const int number = version.integer(1, 1'000'000); number > kLayoutVersion) {
        version.complain(ErrorCode::unknown,
                         "the file was written by a later version of the program",
                         "version " + std::to_string(kLayoutVersion),
                         "version " + std::to_string(number));
    }
    return parts::readUnit(object.required("unit"));
}

}  // namespace

Layout readLayoutObject(const JsonValue& value) {
    auto object = value.object();
    Layout layout;
    const LayoutReader reader(readFormat(object));
    readHead(object, layout);
    layout.gutter = reader.gutter(object.required("gutter"));
    if (const auto surroundings = object.optional("surroundings")) {
        layout.surroundings = readSurroundings(*surroundings);
    }
    if (const auto readings = object.optional("readings")) {
        layout.readings = readReadings(*readings);
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
