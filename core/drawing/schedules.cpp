#include "drawing/schedules.h"

#include <algorithm>
#include <array>

#include "drawing/dimensions.h"
#include "drawing/names.h"

namespace gw::drawing {
namespace {

using layout::Layout;

const std::string kNotStated = "not stated";

std::string printed(double inches, const Layout& layout) {
    return dimensionText(inches, layout.displayUnit);
}

/// "x 12", y 4""…: two or three places in the shown unit.
std::string placeText(const std::vector<std::pair<const char*, double>>& places,
                      const Layout& layout) {
    std::string text;
    for (const auto& [axis, inches] : places) {
        text += (text.empty() ? "" : ", ") + std::string(axis) + " " + printed(inches, layout);
    }
    return text;
}

template <class T, class Text>
std::string orNotStated(const std::optional<T>& value, Text text) {
    return value ? std::string(text(*value)) : kNotStated;
}

std::string endText(const layout::End& end, const Layout& layout) {
    struct Reader {
        const Layout& in;
        std::string operator()(const layout::AtEntry& at) const {
            return nameOf(in.entries, at.entry);
        }
        std::string operator()(const layout::InPort& port) const {
            return nameOf(in.blocks, port.block) + ", port " + port.port.text();
        }
        std::string operator()(const layout::Spare&) const { return "spare, capped"; }
    };
    return std::visit(Reader{layout}, end);
}

std::string passesText(const layout::Conductor& conductor, const Layout& layout) {
    std::string text;
    for (const auto& pass : conductor.passes) {
        text += (text.empty() ? "" : ", ") + nameOf(layout.blocks, pass.block) + " port " +
                pass.port.text();
    }
    return text.empty() ? "" : " uncut through " + text;
}

std::string racewayText(const layout::Entry& entry) {
    const auto size = entry.tradeSize ? std::string(entry.tradeSize->text()) + " in"
                                      : std::string("size not stated");
    const auto type = entry.raceway ? std::string(standards::racewayText(*entry.raceway))
                                    : std::string("raceway not stated");
    return size + " " + type;
}

std::string entryPlace(const layout::Entry& entry, const Layout& layout) {
    switch (entry.wall) {
        case layout::Wall::top:
        case layout::Wall::bottom:
            return placeText({{"x", entry.u}, {"z", entry.v}}, layout);
        case layout::Wall::left:
        case layout::Wall::right:
            return placeText({{"y", entry.u}, {"z", entry.v}}, layout);
        case layout::Wall::back:
            return placeText({{"x", entry.u}, {"y", entry.v}}, layout);
    }
    return "";
}

void addRow(Table& table, std::string name, std::string value) {
    table.rows.push_back({{std::move(name), std::move(value)}});
}

std::string surroundingsText(const layout::Surroundings& surroundings) {
    return "location " + orNotStated(surroundings.location, standards::locationText) +
           ", ambient " + orNotStated(surroundings.ambientCelsius, [](double celsius) {
               return units::formatDecimal(celsius, 1) + " °C";
           });
}

std::string circuitText(const layout::Circuit& circuit) {
    std::string phases;
    for (const auto phase : circuit.phases) {
        phases += layout::phaseText(phase);
    }
    return std::string(layout::roleText(circuit.role)) + ", " +
           counted(circuit.sets, "set", "sets") + " of " + phases + ", device " +
           orNotStated(circuit.deviceAmperes,
                       [](double amperes) { return units::formatDecimal(amperes, 1) + " A"; }) +
           (circuit.supplies ? ", to " + *circuit.supplies : "");
}

}  // namespace

Table conductorTable(const geometry::BuiltLayout& built) {
    const auto& layout = built.layout;
    Table table{"Conductors",
                "",
                {{"Tag"},
                 {"Size"},
                 {"Metal"},
                 {"Insulation"},
                 {"From", AnchorX::left, 1.0},
                 {"To", AnchorX::left, 1.0},
                 {"In gutter", AnchorX::right}},
                {},
                true,
                "No conductors."};
    for (std::size_t i = 0; i < layout.conductors.size(); ++i) {
        const auto& conductor = layout.conductors[i];
        const auto length = built.conductors[i].built.path.length();
        table.rows.push_back({{tagOf(conductor),
                               conductor.size.text(),
                               orNotStated(conductor.metal, standards::metalText),
                               orNotStated(conductor.insulation, standards::insulationText),
                               endText(conductor.from, layout),
                               endText(conductor.to, layout) + passesText(conductor, layout),
                               printed(length.in(), layout)}});
    }
    return table;
}

Table entryTable(const geometry::BuiltLayout& built) {
    const auto& layout = built.layout;
    Table table{"Entries",
                "centres on the walls' inner faces, from the interior corner left, bottom, back",
                {{"Entry"}, {"Wall"}, {"Raceway"}, {"Centre"}, {"Leads to", AnchorX::left, 1.0}},
                {},
                true,
                "No entries."};
    for (const auto& entry : layout.entries) {
        table.rows.push_back({{entryName(entry),
                               std::string(layout::wallText(entry.wall)),
                               racewayText(entry),
                               entryPlace(entry, layout),
                               entry.leadsTo.empty() ? kNotStated : entry.leadsTo}});
    }
    return table;
}

Table blockTable(const geometry::BuiltLayout& built) {
    const auto& layout = built.layout;
    Table table{
        "Tap blocks",
        "least corner of the body; all shipped parts are invented demonstration data: replace with "
        "the data of the connector you buy",
        {{"Block"}, {"Phase"}, {"Part", AnchorX::left, 1.0}, {"Least corner"}, {"Body"}},
        {},
        true,
        "No tap blocks."};
    for (std::size_t i = 0; i < layout.blocks.size(); ++i) {
        const auto& block = layout.blocks[i];
        const auto& body = built.blocks[i].body;
        const auto extents = body.extents();
        table.rows.push_back(
            {{blockName(block),
              orNotStated(block.phase, layout::phaseText),
              built.blocks[i].part->name,
              placeText({{"x", body.least.x}, {"y", body.least.y}, {"z", body.least.z}}, layout),
              printed(extents.x, layout) + " × " + printed(extents.y, layout) + " × " +
                  printed(extents.z, layout)}});
    }
    const bool shipped = std::any_of(
        built.blocks.begin(), built.blocks.end(), [](const geometry::BuiltBlock& block) {
            return block.part->shipped;
        });
    if (!shipped) {
        table.subtitle = "least corner of the body";
    }
    return table;
}

Table gutterTable(const geometry::BuiltLayout& built) {
    const auto& layout = built.layout;
    const auto& gutter = layout.gutter;
    Table table{"Gutter and circuits", "", {{"Item"}, {"Data", AnchorX::left, 1.0}}, {}, false, ""};
    addRow(table,
           "Gutter",
           std::string(standards::articleText(gutter.article)) + ", " +
               std::string(layout::materialText(gutter.material)) + ", clear inside " +
               printed(gutter.inside.x, layout) + " long, " + printed(gutter.inside.y, layout) +
               " high, " + printed(gutter.inside.z, layout) + " deep; runs " +
               std::string(layout::orientationText(gutter.orientation)));
    addRow(table, "Enclosure type", orNotStated(gutter.enclosureType, [](const std::string& type) {
               return type;
           }));
    addRow(table, "Surroundings", surroundingsText(layout.surroundings));
    for (const auto& system : layout.systems) {
        addRow(table,
               "System",
               system.name + ", available fault current " +
                   orNotStated(system.faultKiloamperes, [](double kiloamperes) {
                       return units::formatDecimal(kiloamperes, 1) + " kA";
                   }));
    }
    for (const auto& circuit : layout.circuits) {
        addRow(
            table, circuit.name.empty() ? circuit.id.text() : circuit.name, circuitText(circuit));
    }
    return table;
}

Table cautionTable() {
    // Work practice: OSHA 29 CFR 1910.333(a)(1), NFPA 70E; the rest common practice, no source.
    static constexpr std::array<const char*, 8> kCautions = {
        "This sheet is a planning aid. It does not see workmanship, damage, torque as applied, or "
        "local "
        "amendments. Where it differs, the adopted code, the authority having jurisdiction, the "
        "connector's "
        "own listing and instructions, and the judgement of a licensed electrician or engineer "
        "rule.",
        "“Cannot tell” is not “meets”: find the missing fact before relying on the layout.",
        "Work de-energised, in an electrically safe work condition: find every source, open, lock "
        "and tag, "
        "test for absence of voltage (OSHA 29 CFR 1910.333(a)(1); NFPA 70E).",
        "Service conductors stay live when every switch of the customer is off; only the utility "
        "can make "
        "them dead. No device upstream limits their arc energy quickly.",
        "Check every conductor for back-feed: generators, solar, ties.",
        "Torque every screw to the value of the connector's own instructions, by a means the "
        "inspector "
        "approves; strip by them too.",
        "Never measure or form conductors inside a gutter that is live.",
        "Walls are drawn thicker than they are. All places are of the clear interior."};
    Table table{"Cautions and notes",
                "",
                {{"No.", AnchorX::right}, {"Caution", AnchorX::left, 1.0}},
                {},
                false,
                ""};
    for (std::size_t i = 0; i < kCautions.size(); ++i) {
        addRow(table, std::to_string(i + 1), kCautions[i]);
    }
    return table;
}

std::string planningAidSentence() {
    return "Planning aid only: defers to the adopted code and local amendments, the authority "
           "having "
           "jurisdiction, the connector's listing and instructions, and licensed practice.";
}

}  // namespace gw::drawing
