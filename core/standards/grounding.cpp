#include "standards/look_up.h"
#include "standards/rows/bonding_jumper.h"
#include "standards/rows/equipment_grounding.h"
#include "standards/rows/grounding_electrode.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using units::WireSize;

/// Lower bound exclusive, upper inclusive, as the tables are printed.
template <class Row>
bool holds(const Row& row, double circularMils, Metal metal) {
    const bool copper = metal == Metal::copper;
    const double over = copper ? row.copperOver : row.aluminiumOver;
    const double through = copper ? row.copperThrough : row.aluminiumThrough;
    return circularMils > over && (isBlank(through) || circularMils <= through);
}

SizeNeeded atLeastThat(double circularMils) {
    for (const auto size : WireSize::all()) {
        if (size.circularMils() >= circularMils) {
            return {size, circularMils};
        }
    }
    return {std::nullopt, circularMils};
}

}  // namespace

Lookup<SizeNeeded> bondingJumper(double ungroundedCircularMils,
                                 Metal ungrounded,
                                 Metal jumper,
                                 Edition edition) {
    const auto citation = [&](Basis basis) {
        return tableCitation(edition, "Table 250.102(C)(1)", basis);
    };
    constexpr double kShare = 0.125;  // "12.5 percent", the table's last row
    for (const auto& row : rows::kJumperRows) {
        if (!holds(row, ungroundedCircularMils, ungrounded)) {
            continue;
        }
        const auto cell = jumper == Metal::copper ? row.copper : row.aluminium;
        if (cell == "12.5%") {
            if ((ungrounded == Metal::copper) != (jumper == Metal::copper)) {
                return noValue<SizeNeeded>("beyond the table, and of two metals",
                                           citation(row.basis));
            }
            return answer(atLeastThat(ungroundedCircularMils * kShare), citation(row.basis));
        }
        const auto size = WireSize::of(cell);
        return answer(SizeNeeded{size, size.circularMils()}, citation(row.basis));
    }
    return noValue<SizeNeeded>("no ungrounded conductor", citation(Basis::seen));
}

Lookup<WireSize> groundingElectrodeConductor(double ungroundedCircularMils,
                                             Metal metal,
                                             Edition edition) {
    const auto citation = [&](Basis basis) {
        return tableCitation(edition, "Table 250.66", basis);
    };
    for (const auto& row : rows::kElectrodeRows) {
        if (holds(row, ungroundedCircularMils, metal)) {
            return answer(WireSize::of(metal == Metal::copper ? row.copper : row.aluminium),
                          citation(row.basis));
        }
    }
    return noValue<WireSize>("no ungrounded conductor", citation(Basis::seenTwice));
}

Lookup<WireSize> equipmentGroundingConductor(double deviceAmperes, Metal metal, Edition edition) {
    const auto citation = [&](Basis basis) {
        return tableCitation(edition, "Table 250.122", basis);
    };
    for (const auto& row : rows::kEquipmentRows) {
        if (deviceAmperes > 0.0 && deviceAmperes <= row.deviceAmperes) {
            return answer(WireSize::of(metal == Metal::copper ? row.copper : row.aluminium),
                          citation(row.basis));
        }
    }
    return noValue<WireSize>(deviceAmperes > 0.0 ? "the table ends at 6000 A" : "no device ahead",
                             citation(Basis::seen));
}

}  // namespace gw::standards
