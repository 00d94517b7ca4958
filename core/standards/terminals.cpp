#include "standards/look_up.h"
#include "standards/rows/impedance_table_9.h"
#include "standards/rows/phase_colours.h"
#include "standards/rows/torque_annex_i.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

std::string_view headText(ScrewHead head) {
    switch (head) {
        case ScrewHead::smallSlot:
            return "slotted No. 10 and larger, slot width <= 0.047 in and length <= 0.25 in";
        case ScrewHead::largeSlot:
            return "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in";
        case ScrewHead::splitBoltHex:
            return "hex head external wrench, split-bolt connector";
        case ScrewHead::otherHex:
            return "hex head external wrench, other connector";
    }
    return {};
}

/// "30-10" reaches below the sizes we know; it covers 14 to 10.
bool coversFromSmallest(std::string_view range, units::WireSize size) {
    return range == "30-10" ? size <= units::WireSize::of("10") : covers(range, size);
}

Citation annex(Edition edition, std::string_view table, Basis basis) {
    return tableCitation(edition,
                         "Informative Annex I Table " + std::string(table),
                         basis,
                         "informative: the connector's own torque comes first");
}

template <class Fits>
Lookup<double> annexRow(std::string_view table, Edition edition, Fits fits) {
    for (const auto& row : rows::kTorqueRows) {
        if (row.table == table && fits(row)) {
            return answer(row.columnB, annex(edition, table, row.basis));
        }
    }
    return noValue<double>("the annex has no such row", annex(edition, table, Basis::seen));
}

}  // namespace

Lookup<double> annexTorqueByConductor(units::WireSize size, ScrewHead head, Edition edition) {
    return annexRow("I.1", edition, [&](const rows::TorqueRow& row) {
        return row.screw == headText(head) && coversFromSmallest(row.key, size);
    });
}

Lookup<double> annexTorqueByRecess(std::string_view acrossFlats, Edition edition) {
    return annexRow(
        "I.3", edition, [&](const rows::TorqueRow& row) { return row.key == acrossFlats; });
}

Lookup<double> annexTorqueBySlot(std::string_view slotLength, bool wideSlot, Edition edition) {
    return annexRow("I.2", edition, [&](const rows::TorqueRow& row) {
        const bool wide = row.screw.find(">=") != std::string_view::npos;
        return row.key == slotLength && wide == wideSlot;
    });
}

Lookup<Impedance> impedance(units::WireSize size,
                            Metal metal,
                            ConduitMaterial conduit,
                            Edition edition) {
    const std::string table = "Chapter 9 Table 9";
    const bool copper = metal == Metal::copper;
    for (const auto& row : rows::kImpedanceRows) {
        if (row.size != size.label()) {
            continue;
        }
        const double ohms = conduit == ConduitMaterial::pvc
                                ? (copper ? row.copperPvc : row.aluminiumPvc)
                            : conduit == ConduitMaterial::steel
                                ? (copper ? row.copperSteel : row.aluminiumSteel)
                                : (copper ? row.copperAluminium : row.aluminiumAluminium);
        if (!isBlank(ohms)) {
            const double reactance = conduit == ConduitMaterial::steel ? row.xSteel : row.xPvc;
            return answer(Impedance{ohms, reactance}, tableCitation(edition, table, row.basis));
        }
    }
    return noValue<Impedance>(
        "Table 9 has no value for " + size.text() + " " + std::string(metalText(metal)),
        tableCitation(edition, table, Basis::seenTwice));
}

std::vector<Cited<ColourCustom>> colourCustoms(Edition edition) {
    std::vector<Cited<ColourCustom>> customs;
    for (const auto& row : rows::kColourRows) {
        const bool code = row.status == "code";
        customs.push_back({{row.system, row.conductor, row.colour, code},
                           code ? tableCitation(edition, std::string(row.note), row.basis)
                                : Citation{"trade custom", {}, row.basis, std::string(row.note)}});
    }
    return customs;
}

}  // namespace gw::standards
