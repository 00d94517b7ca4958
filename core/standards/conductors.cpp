#include <algorithm>

#include "standards/look_up.h"
#include "standards/rows/conductor_bare.h"
#include "standards/rows/conductor_compact_al.h"
#include "standards/rows/conductor_insulated.h"
#include "standards/rows/stranding.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using units::Inches;
using units::SquareInches;
using units::WireSize;

std::string_view familyOf(Insulation insulation) {
    switch (insulation) {
        case Insulation::thhn:
        case Insulation::thwn:
        case Insulation::thwn2:
            return "THHN/THWN/THWN-2";
        case Insulation::xhhw:
        case Insulation::xhhw2:
        case Insulation::xhh:
            return "XHHW/XHHW-2/XHH";
        case Insulation::tw:
        case Insulation::thw:
        case Insulation::thhw:
        case Insulation::thw2:
            return "TW/THW/THHW/THW-2";
        case Insulation::rhh:
        case Insulation::rhw:
        case Insulation::rhw2:
            return "RHH/RHW/RHW-2 with outer covering";
        case Insulation::rhhNoCover:
        case Insulation::rhwNoCover:
        case Insulation::rhw2NoCover:
            return "RHH/RHW/RHW-2 without outer covering";
        case Insulation::bare:
            return {};
    }
    return {};
}

Lookup<ConductorDimensions> fromTable5(WireSize size, Insulation insulation, Edition edition) {
    const std::string table = "Chapter 9 Table 5";
    for (const auto& row : rows::kInsulatedRows) {
        if (row.family == familyOf(insulation) && row.size == size.label()) {
            return answer(ConductorDimensions{Inches::of(row.diameter), SquareInches::of(row.area)},
                          tableCitation(edition, table, row.basis));
        }
    }
    return noValue<ConductorDimensions>(
        "Table 5 has no row for " + size.text() + " " + std::string(insulationText(insulation)),
        tableCitation(edition, table, Basis::seen));
}

struct Pair {
    double diameter;
    double area;
};

Pair compactPair(const rows::CompactRow& row, Insulation insulation) {
    const auto family = familyOf(insulation);
    if (family == familyOf(Insulation::thhn)) {
        return {row.thhnDiameter, row.thhnArea};
    }
    if (family == familyOf(Insulation::xhhw)) {
        return {row.xhhwDiameter, row.xhhwArea};
    }
    const bool thw = insulation == Insulation::thw || insulation == Insulation::thhw ||
                     insulation == Insulation::thw2;
    return thw ? Pair{row.thwDiameter, row.thwArea} : Pair{rows::kBlank, rows::kBlank};
}

Lookup<ConductorDimensions> fromTable5A(WireSize size, Insulation insulation, Edition edition) {
    const std::string table = "Chapter 9 Table 5A";
    for (const auto& row : rows::kCompactRows) {
        if (row.size != size.label()) {
            continue;
        }
        if (insulation == Insulation::bare) {
            const auto diameter = Inches::of(row.bareDiameter);
            return answer(ConductorDimensions{diameter, SquareInches::ofCircle(diameter)},
                          tableCitation(edition, table, row.basis));
        }
        const auto pair = compactPair(row, insulation);
        if (!isBlank(pair.diameter)) {
            return answer(
                ConductorDimensions{Inches::of(pair.diameter), SquareInches::of(pair.area)},
                tableCitation(edition, table, row.basis));
        }
    }
    return noValue<ConductorDimensions>("Table 5A has no value for compact " + size.text() + " " +
                                            std::string(insulationText(insulation)),
                                        tableCitation(edition, table, Basis::memory));
}

/// What to know of an answer of Table 8, which is printed for class B.
std::string classNote(Stranding stranding) {
    if (isFine(stranding)) {
        return "for class B; finer strands are a little larger";
    }
    return stranding == Stranding::classC ? "for class B" : "";
}

/// The class B row with the diameter of compact stranding.
Lookup<BareConductor> compacted(BareConductor bare, WireSize size, Edition edition) {
    return fromTable5A(size, Insulation::bare, edition)
        .map([&](const Cited<ConductorDimensions>& compact) {
            bare.diameter = compact.value.diameter;
            bare.area = compact.value.area;
            return Cited<BareConductor>{bare, compact.source};
        });
}

Citation strandSource(Stranding stranding, Basis basis, Edition edition) {
    switch (stranding) {
        case Stranding::solid:
        case Stranding::classB:
        case Stranding::classC:
            return tableCitation(edition, "Chapter 9 Table 10", basis, "with ASTM B8");
        case Stranding::compact:
            return {"ASTM B801", {}, basis, "the least number permitted"};
        case Stranding::classG:
        case Stranding::classH:
            return {"ASTM B173", {}, basis, {}};
        case Stranding::classI:
        case Stranding::classK:
        case Stranding::classM:
            return {"ASTM B172/B174", {}, basis, {}};
    }
    return {};
}

Lookup<int> noStrandCount(WireSize size, Stranding stranding, Edition edition) {
    return noValue<int>(
        "no strand count for " + size.text() + " of class " + std::string(strandingText(stranding)),
        strandSource(stranding, Basis::seen, edition));
}

/// The rows for compact conductors are printed by nominal count: "19-wire".
Lookup<int> compactStrands(WireSize size, Edition edition) {
    const auto nominal = strandCount(size, Stranding::classB, edition);
    for (const auto& row : rows::kStrandingRows) {
        if (nominal && row.sizes == std::to_string(nominal->value) + "-wire") {
            return answer(int(row.strands), strandSource(Stranding::compact, row.basis, edition));
        }
    }
    return noStrandCount(size, Stranding::compact, edition);
}

}  // namespace

Lookup<ConductorDimensions> insulatedConductor(WireSize size,
                                               Insulation insulation,
                                               Stranding stranding,
                                               Edition edition) {
    if (stranding == Stranding::compact) {
        return fromTable5A(size, insulation, edition);
    }
    if (insulation == Insulation::bare) {
        return bareConductor(size, stranding, edition).map([](const Cited<BareConductor>& bare) {
            return Cited<ConductorDimensions>{{bare.value.diameter, bare.value.area}, bare.source};
        });
    }
    auto found = fromTable5(size, insulation, edition);
    if (found && isFine(stranding)) {
        found->source.note = noteFor(edition, "for class B; finer strands are a little larger");
    }
    return found;
}

Lookup<ConductorDimensions> largestInsulatedConductor(WireSize size, Edition edition) {
    const rows::InsulatedRow* largest = nullptr;
    for (const auto& row : rows::kInsulatedRows) {
        if (row.size == size.label() && (largest == nullptr || row.area > largest->area)) {
            largest = &row;
        }
    }
    const auto source = [&](Basis basis) {
        return tableCitation(edition, "Chapter 9 Table 5", basis, "the largest type of that size");
    };
    if (largest == nullptr) {
        return noValue<ConductorDimensions>("Table 5 has no row for " + size.text(),
                                            source(Basis::seen));
    }
    return answer(
        ConductorDimensions{Inches::of(largest->diameter), SquareInches::of(largest->area)},
        source(largest->basis));
}

Lookup<BareConductor> bareConductor(WireSize size, Stranding stranding, Edition edition) {
    const std::string table = "Chapter 9 Table 8";
    const bool solid = stranding == Stranding::solid;
    for (const auto& row : rows::kBareRows) {
        if (row.size != size.label() || solid != (row.strands == 1.0)) {
            continue;
        }
        const BareConductor bare{int(row.strands),
                                 Inches::of(row.diameter),
                                 SquareInches::of(row.area),
                                 row.copperOhms,
                                 row.aluminiumOhms};
        return stranding == Stranding::compact
                   ? compacted(bare, size, edition)
                   : answer(bare, tableCitation(edition, table, row.basis, classNote(stranding)));
    }
    return noValue<BareConductor>(
        "Table 8 has no " + std::string(solid ? "solid" : "stranded") + " row for " + size.text(),
        tableCitation(edition, table, Basis::seen));
}

Lookup<int> strandCount(WireSize size, Stranding stranding, Edition edition) {
    if (stranding == Stranding::solid) {
        return answer(1, strandSource(stranding, Basis::seen, edition));
    }
    if (stranding == Stranding::compact) {
        return compactStrands(size, edition);
    }
    for (const auto& row : rows::kStrandingRows) {
        if (row.stranding == strandingText(stranding) && covers(row.sizes, size)) {
            return answer(int(row.strands), strandSource(stranding, row.basis, edition));
        }
    }
    return noStrandCount(size, stranding, edition);
}

}  // namespace gw::standards
