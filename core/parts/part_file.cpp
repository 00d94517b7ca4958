#include "parts/part_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "base/tolerance.h"

namespace gw::parts {
namespace {

constexpr double kLargestBody = 100.0;  // inches: no connector is larger
constexpr double kLargestTorque = 2000.0;
constexpr std::size_t kMostPorts = 100;

using standards::Location;
using standards::Metal;
using standards::Stranding;

std::string_view openingText(PortOpening opening) {
    switch (opening) {
        case PortOpening::near:
            return "near";
        case PortOpening::both:
            return "both";
        case PortOpening::either:
            return "either";
    }
    return {};
}

std::optional<PortOpening> openingOf(std::string_view word) {
    for (const auto opening : {PortOpening::near, PortOpening::both, PortOpening::either}) {
        if (openingText(opening) == word) {
            return opening;
        }
    }
    return std::nullopt;
}

std::string_view kindText(ConnectorKind kind) {
    switch (kind) {
        case ConnectorKind::wireConnector:
            return "wire connector";
        case ConnectorKind::distributionBlock:
            return "distribution block";
    }
    return {};
}

std::optional<ConnectorKind> kindOf(std::string_view word) {
    for (const auto kind : {ConnectorKind::wireConnector, ConnectorKind::distributionBlock}) {
        if (kindText(kind) == word) {
            return kind;
        }
    }
    return std::nullopt;
}

/// The six directions by name.
struct NamedDirection {
    std::string_view name;
    Vec3 direction;
};
constexpr std::array<NamedDirection, 6> kDirections = {{{"+x", {1, 0, 0}},
                                                        {"-x", {-1, 0, 0}},
                                                        {"+y", {0, 1, 0}},
                                                        {"-y", {0, -1, 0}},
                                                        {"+z", {0, 0, 1}},
                                                        {"-z", {0, 0, -1}}}};

std::optional<Vec3> directionOf(std::string_view word) {
    for (const auto& named : kDirections) {
        if (named.name == word) {
            return named.direction;
        }
    }
    return std::nullopt;
}

std::string_view directionText(const Vec3& direction) {
    for (const auto& named : kDirections) {
        if (named.direction == direction) {
            return named.name;
        }
    }
    return {};
}

// ---- reading ---------------------------------------------------------------------------------

class PartReader {
public:
    explicit PartReader(double perInch) : perInch_(perInch) {}

    Part read(const JsonValue& value) const {
        auto object = value.object();
        Part part;
        part.id = PartId(object.required("id").idText());
        part.name = object.required("name").text();
        part.family = object.required("family").text();
        part.note = object.textIf("note").value_or("");
        part.body = extents(object.required("body"));
        part.insulated = object.flagIf("insulated").value_or(part.insulated);
        readPorts(object.required("ports"), part);
        readScrews(object.required("screws"), part);
        readHoles(object, part);
        if (const auto listing = object.optional("listing")) {
            part.listing = readListing(*listing);
        }
        if (const auto least = object.optional("leastEnclosure")) {
            part.leastEnclosure = extents(*least);
        }
        part.inhibitorIncluded = object.flagIf("inhibitorIncluded");
        part.weightPounds = object.numberIf("weightPounds", 0.0, 1000.0);
        part.priceDollars = object.numberIf("priceDollars", 0.0, 1e6);
        part.shipped = object.flagIf("shipped").value_or(part.shipped);
        object.done();
        return part;
    }

private:
    double length(const JsonValue& value, double least, double greatest) const {
        return value.number(least * perInch_, greatest * perInch_) / perInch_;
    }

    std::optional<units::Inches> lengthIf(JsonObject& object, std::string_view name) const {
        const auto value = object.optional(name);
        return value ? std::optional(units::Inches::of(length(*value, 0.0, kLargestBody)))
                     : std::nullopt;
    }

    Vec3 extents(const JsonValue& value) const {
        auto object = value.object();
        const double smallest = 0.01;
        const Vec3 size{length(object.required("length"), smallest, kLargestBody),
                        length(object.required("height"), smallest, kLargestBody),
                        length(object.required("depth"), smallest, kLargestBody)};
        object.done();
        return size;
    }

    Vec3 direction(const JsonValue& value) const {
        const auto found = value.one(directionOf, "+x, -x, +y, -y, +z or -z");
        return found.value_or(Vec3{1, 0, 0});
    }

    static void checkOrder(const JsonValue& at, units::WireSize smallest, units::WireSize largest) {
        if (largest < smallest) {
            at.complain(ErrorCode::contradicts,
                        "the largest size is below the smallest",
                        "at least " + std::string(smallest.label()),
                        std::string(largest.label()));
        }
    }

    /// A row that names none would take nothing: surely not what was meant.
    static std::vector<JsonValue> atLeastOne(const JsonValue& value, const char* what) {
        auto items = value.items();
        if (items.empty()) {
            value.complain(ErrorCode::missing, "an empty list", what, "none");
        }
        return items;
    }

    static PortRange readRange(const JsonValue& value) {
        auto object = value.object();
        PortRange range;
        for (const auto& item : atLeastOne(object.required("metals"), "at least one metal")) {
            range.metals.push_back(
                item.one(standards::metalFromText, "copper, aluminium or copper-clad aluminium")
                    .value_or(Metal::copper));
        }
        for (const auto& item :
             atLeastOne(object.required("strandings"), "at least one stranding")) {
            range.strandings.push_back(
                item.one(standards::strandingFromText, "solid, B, C, compact, G, H, I, K or M")
                    .value_or(Stranding::classB));
        }
        range.smallest = readSize(object.required("smallest"));
        const auto largest = object.required("largest");
        range.largest = readSize(largest);
        checkOrder(largest, range.smallest, range.largest);
        range.conductors = object.integerIf("conductors", 1, 20);
        object.done();
        return range;
    }

    Port readPort(const JsonValue& value) const {
        auto object = value.object();
        Port port;
        port.name = PortName(object.required("name").idText());
        port.mouth = readPoint(object.required("mouth"), perInch_, kLargestBody);
        port.direction = direction(object.required("direction"));
        port.opening = object.required("opening")
                           .one(openingOf, "near, both or either")
                           .value_or(PortOpening::near);
        port.boreDepth =
            units::Inches::of(length(object.required("boreDepth"), 0.01, kLargestBody));
        port.boreDiameter =
            units::Inches::of(length(object.required("boreDiameter"), 0.01, kLargestBody));
        for (const auto& row : object.itemsIf("accepts")) {
            port.accepts.push_back(readRange(row));
        }
        port.stripLength = lengthIf(object, "stripLength");
        port.stripTolerance = lengthIf(object, "stripTolerance");
        port.window = object.flagIf("window").value_or(port.window);
        object.done();
        return port;
    }

    void readPorts(const JsonValue& value, Part& part) const {
        const auto items = value.items();
        if (items.size() < 2 || items.size() > kMostPorts) {
            value.complain(ErrorCode::outOfRange,
                           "a connector joins conductors",
                           "2 to 100 ports",
                           std::to_string(items.size()));
            return;
        }
        std::set<PortName> names;
        for (const auto& item : items) {
            part.ports.push_back(readPort(item));
            const auto& port = part.ports.back();
            if (!names.insert(port.name).second) {
                item.complain(ErrorCode::duplicate,
                              "two ports of one name",
                              "a name not used before",
                              '"' + port.name.text() + '"');
            }
            checkPlace(item, port, part.body);
        }
    }

    /// The mouth lies on the face the bore goes in through, and the bore stays inside the body.
    static void checkPlace(const JsonValue& at, const Port& port, const Vec3& body) {
        if (!onFace(port.mouth, -port.direction, body)) {
            at.complain(ErrorCode::contradicts,
                        "the mouth is not on the face the bore goes in through",
                        "a mouth on the body's surface, the direction into the body",
                        "one elsewhere");
        } else if (!inside(boreEnd(port), body)) {
            at.complain(ErrorCode::contradicts,
                        "the bore is deeper than the body",
                        "a bore that ends inside the body",
                        "one that leaves it");
        } else if (const Vec3 reach = across(port);
                   !inside(port.mouth - reach, body) || !inside(port.mouth + reach, body)) {
            at.complain(ErrorCode::contradicts,
                        "the bore is wider than the body around it",
                        "a bore inside the body",
                        "one that breaks out at a side");
        }
    }

    /// How far the bore reaches from its axis, along the two axes across it.
    static Vec3 across(const Port& port) {
        const double radius = port.boreDiameter.in() / 2.0;
        const auto part = [&](double along) { return along == 0.0 ? radius : 0.0; };
        return {part(port.direction.x), part(port.direction.y), part(port.direction.z)};
    }

    /// Whether a point lies on the face of the body that looks in an axis direction.
    static bool onFace(const Vec3& point, const Vec3& outward, const Vec3& body) {
        const bool upward = dot(outward, Vec3{1, 1, 1}) > 0.0;
        const double face = upward ? dot(outward, body) : 0.0;
        return std::abs(dot(outward, point) - face) <= kLimitSlack && inside(point, body);
    }

    static bool inside(const Vec3& p, const Vec3& body) {
        const auto within = [](double value, double most) {
            return atLeast(value, 0.0) && atMost(value, most);
        };
        return within(p.x, body.x) && within(p.y, body.y) && within(p.z, body.z);
    }

    Screw readScrew(const JsonValue& value, const Part& part) const {
        auto object = value.object();
        Screw screw;
        screw.name = ScrewName(object.required("name").idText());
        const auto port = object.required("port");
        screw.port = PortName(port.text());
        const auto named = [&](const Port& candidate) { return candidate.name == screw.port; };
        if (std::none_of(part.ports.begin(), part.ports.end(), named)) {
            port.complain(
                ErrorCode::dangling, "no such port", "a port of this part", port.excerpt());
        }
        const auto head = object.required("head");
        screw.head = readPoint(head, perInch_, kLargestBody);
        screw.outward = direction(object.required("outward"));
        if (!onFace(screw.head, screw.outward, part.body)) {
            head.complain(ErrorCode::contradicts,
                          "the screw's head is not on the face it looks out of",
                          "a point on that face of the body",
                          "one elsewhere");
        }
        screw.drive = object.textIf("drive").value_or("");
        for (const auto& row : object.itemsIf("torque")) {
            screw.torque.push_back(readTorque(row));
        }
        object.done();
        return screw;
    }

    static TorqueRow readTorque(const JsonValue& value) {
        auto object = value.object();
        const auto smallest = readSize(object.required("smallest"));
        const auto at = object.required("largest");
        const auto largest = readSize(at);
        checkOrder(at, smallest, largest);
        const double torque = object.required("poundInches").number(1.0, kLargestTorque);
        object.done();
        return {smallest, largest, torque};
    }

    void readScrews(const JsonValue& value, Part& part) const {
        std::set<ScrewName> names;
        for (const auto& item : value.items()) {
            part.screws.push_back(readScrew(item, part));
            const auto& name = part.screws.back().name;
            if (!names.insert(name).second) {
                item.complain(ErrorCode::duplicate,
                              "two screws of one name",
                              "a name not used before",
                              '"' + name.text() + '"');
            }
        }
    }

    void readHoles(JsonObject& object, Part& part) const {
        for (const auto& item : object.itemsIf("mountingHoles")) {
            auto hole = item.object();
            MountingHole read;
            const auto centre = hole.required("centre");
            read.centre = readPoint(centre, perInch_, kLargestBody);
            if (!onFace(read.centre, {0, 0, -1}, part.body)) {
                centre.complain(ErrorCode::contradicts,
                                "the mounting hole is not on the mounting face",
                                "a point of the body with z 0",
                                "one elsewhere");
            }
            read.diameter = units::Inches::of(length(hole.required("diameter"), 0.01, 2.0));
            hole.done();
            part.mountingHoles.push_back(read);
        }
    }

    static Listing readListing(const JsonValue& value) {
        auto object = value.object();
        Listing listing;
        listing.kind = object.oneIf("kind", kindOf, "wire connector or distribution block");
        for (const auto& item : object.itemsIf("locations")) {
            listing.locations.push_back(
                item.oneOr(standards::locationFromText, "dry, damp, wet or buried", Location::dry));
        }
        listing.temporarySubmersion = object.flagIf("temporarySubmersion");
        listing.lineSideOfService = object.flagIf("lineSideOfService");
        listing.celsius = object.integerIf("celsius", 60, 250);
        listing.volts = object.integerIf("volts", 1, 35000);
        listing.shortCircuitKiloamperes = object.numberIf("shortCircuitKiloamperes", 0.1, 1000.0);
        object.done();
        return listing;
    }

    double perInch_;
};

// ---- writing ---------------------------------------------------------------------------------

JsonTree writeExtents(const Vec3& size) {
    auto tree = JsonTree::object();
    tree.set("length", size.x).set("height", size.y).set("depth", size.z);
    return tree;
}

JsonTree writeRange(const PortRange& range) {
    auto metals = JsonTree::array();
    for (const auto metal : range.metals) {
        metals.push(standards::metalText(metal));
    }
    auto strandings = JsonTree::array();
    for (const auto stranding : range.strandings) {
        strandings.push(standards::strandingText(stranding));
    }
    auto tree = JsonTree::object();
    tree.set("metals", std::move(metals)).set("strandings", std::move(strandings));
    tree.set("smallest", range.smallest.label()).set("largest", range.largest.label());
    if (range.conductors) {
        tree.set("conductors", *range.conductors);
    }
    return tree;
}

JsonTree writePort(const Port& port) {
    auto tree = JsonTree::object();
    tree.set("name", port.name.text()).set("mouth", writePoint(port.mouth));
    tree.set("direction", directionText(port.direction));
    tree.set("opening", openingText(port.opening));
    tree.set("boreDepth", port.boreDepth.in()).set("boreDiameter", port.boreDiameter.in());
    if (!port.accepts.empty()) {
        auto rows = JsonTree::array();
        for (const auto& range : port.accepts) {
            rows.push(writeRange(range));
        }
        tree.set("accepts", std::move(rows));
    }
    if (port.stripLength) {
        tree.set("stripLength", port.stripLength->in());
    }
    if (port.stripTolerance) {
        tree.set("stripTolerance", port.stripTolerance->in());
    }
    if (port.window) {
        tree.set("window", true);
    }
    return tree;
}

JsonTree writeScrew(const Screw& screw) {
    auto tree = JsonTree::object();
    tree.set("name", screw.name.text()).set("port", screw.port.text());
    tree.set("head", writePoint(screw.head)).set("outward", directionText(screw.outward));
    if (!screw.drive.empty()) {
        tree.set("drive", screw.drive);
    }
    if (!screw.torque.empty()) {
        auto rows = JsonTree::array();
        for (const auto& row : screw.torque) {
            auto written = JsonTree::object();
            written.set("smallest", row.smallest.label()).set("largest", row.largest.label());
            written.set("poundInches", row.poundInches);
            rows.push(std::move(written));
        }
        tree.set("torque", std::move(rows));
    }
    return tree;
}

JsonTree writeListing(const Listing& listing) {
    auto tree = JsonTree::object();
    if (listing.kind) {
        tree.set("kind", kindText(*listing.kind));
    }
    if (!listing.locations.empty()) {
        auto locations = JsonTree::array();
        for (const auto location : listing.locations) {
            locations.push(standards::locationText(location));
        }
        tree.set("locations", std::move(locations));
    }
    const auto flag = [&](std::string_view name, const std::optional<bool>& value) {
        if (value) {
            tree.set(name, *value);
        }
    };
    flag("temporarySubmersion", listing.temporarySubmersion);
    flag("lineSideOfService", listing.lineSideOfService);
    if (listing.celsius) {
        tree.set("celsius", *listing.celsius);
    }
    if (listing.volts) {
        tree.set("volts", *listing.volts);
    }
    if (listing.shortCircuitKiloamperes) {
        tree.set("shortCircuitKiloamperes", *listing.shortCircuitKiloamperes);
    }
    return tree;
}

template <class Items, class Write>
JsonTree listOf(const Items& items, Write write) {
    auto list = JsonTree::array();
    for (const auto& item : items) {
        list.push(write(item));
    }
    return list;
}

JsonTree writeHole(const MountingHole& hole) {
    auto tree = JsonTree::object();
    tree.set("centre", writePoint(hole.centre)).set("diameter", hole.diameter.in());
    return tree;
}

}  // namespace

double readUnit(const JsonValue& value) {
    const auto perInch = value.one(
        [](std::string_view word) -> std::optional<double> {
            if (word == "in") {
                return 1.0;
            }
            return word == "mm" ? std::optional(units::Inches::kMillimetresPerInch) : std::nullopt;
        },
        "in or mm");
    return perInch.value_or(1.0);
}

units::WireSize readSize(const JsonValue& value) {
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

Vec3 readPoint(const JsonValue& value, double perInch, double bound) {
    auto object = value.object();
    const auto coordinate = [&](std::string_view name) {
        return object.required(name).number(-bound * perInch, bound * perInch) / perInch;
    };
    // Named in order: a braced list would do, but the order of evaluation must be plain.
    const double x = coordinate("x");
    const double y = coordinate("y");
    const double z = coordinate("z");
    object.done();
    return {x, y, z};
}

JsonTree writePoint(const Vec3& point) {
    auto tree = JsonTree::object();
    tree.set("x", point.x).set("y", point.y).set("z", point.z);
    return tree;
}

Part readPart(const JsonValue& value, double perInch) {
    return PartReader(perInch).read(value);
}

Result<std::vector<Part>> readParts(std::string_view bytes, const std::string& fileName) {
    const auto document = JsonDocument::parse(bytes, fileName);
    if (!document) {
        return fail(document.error());
    }
    auto object = document->root().object();
    readFormat(object, "gutterwright-parts", kPartsVersion, "a part file");
    const double perInch = readUnit(object.required("unit"));
    std::vector<Part> parts;
    std::set<PartId> ids;
    for (const auto& item : object.required("parts").items()) {
        parts.push_back(readPart(item, perInch));
        if (!ids.insert(parts.back().id).second) {
            item.complain(ErrorCode::duplicate,
                          "two parts of one id",
                          "an id not used before",
                          '"' + parts.back().id.text() + '"');
        }
    }
    object.done();
    return document->finish(std::move(parts));
}

JsonTree writePart(const Part& part) {
    auto tree = JsonTree::object();
    tree.set("id", part.id.text()).set("name", part.name).set("family", part.family);
    if (!part.note.empty()) {
        tree.set("note", part.note);
    }
    tree.set("body", writeExtents(part.body));
    if (!part.insulated) {
        tree.set("insulated", false);
    }
    tree.set("ports", listOf(part.ports, writePort));
    tree.set("screws", listOf(part.screws, writeScrew));
    if (!part.mountingHoles.empty()) {
        tree.set("mountingHoles", listOf(part.mountingHoles, writeHole));
    }
    if (auto listing = writeListing(part.listing); !listing.empty()) {
        tree.set("listing", std::move(listing));
    }
    if (part.leastEnclosure) {
        tree.set("leastEnclosure", writeExtents(*part.leastEnclosure));
    }
    if (part.inhibitorIncluded) {
        tree.set("inhibitorIncluded", *part.inhibitorIncluded);
    }
    if (part.weightPounds) {
        tree.set("weightPounds", *part.weightPounds);
    }
    if (part.priceDollars) {
        tree.set("priceDollars", *part.priceDollars);
    }
    if (part.shipped) {
        tree.set("shipped", true);
    }
    return tree;
}

std::string writeParts(const std::vector<Part>& parts) {
    auto tree = JsonTree::object();
    tree.set("format", "gutterwright-parts").set("version", kPartsVersion);
    tree.set("unit", "in");
    tree.set("parts", listOf(parts, writePart));
    return tree.text();
}

}  // namespace gw::parts
