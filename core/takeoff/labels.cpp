#include "takeoff/labels.h"

#include "editing/fields.h"
#include "takeoff/words.h"

namespace gw::takeoff {
namespace {

using geometry::BuiltLayout;

std::string nameOf(const layout::Circuit& circuit) {
    return circuit.name.empty() ? circuit.id.text() : circuit.name;
}

const layout::Circuit& circuitOf(const BuiltLayout& built, const layout::Conductor& conductor) {
    return built.layout.circuits[*built.circuitIndex(conductor.circuit)];
}

std::vector<Cell> conductorRow(const BuiltLayout& built, const layout::Conductor& conductor) {
    const auto& circuit = circuitOf(built, conductor);
    return {tagOf(conductor),
            std::string(layout::phaseText(conductor.phase)),
            nameOf(circuit),
            circuit.supplies.value_or(""),
            "conductor, " + editing::endText(built.layout, conductor.from) + " and " +
                editing::endText(built.layout, conductor.to),
            2.0};
}

std::vector<Cell> blockRow(const layout::Block& block) {
    return {takeoff::nameOf(block),
            orNotStated(block.phase, layout::phaseText),
            std::string(),
            std::string(),
            std::string("block"),
            1.0};
}

}  // namespace

Table labelTable(const BuiltLayout& built) {
    Table table{"labels",
                "Labels",
                "A tag at each end of each conductor and a label on each block, of a kind that "
                "stays readable where it hangs.",
                {{"Text"}, {"Phase"}, {"Circuit"}, {"Supplies"}, {"On"}, {"Pieces", Kind::count}},
                {}};
    for (const auto& conductor : built.layout.conductors) {
        table.rows.push_back(conductorRow(built, conductor));
    }
    for (const auto& block : built.layout.blocks) {
        table.rows.push_back(blockRow(block));
    }
    for (const auto& circuit : built.layout.circuits) {
        if (circuit.joins && !circuit.supplies) {
            table.notes.push_back("What " + nameOf(circuit) +
                                  " supplies is not stated: its labels cannot say it.");
        }
    }
    return table;
}

}  // namespace gw::takeoff
