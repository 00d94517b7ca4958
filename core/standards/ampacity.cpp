#include <algorithm>
#include <cmath>

#include "standards/look_up.h"
#include "standards/rows/adjustment_more_than_three.h"
#include "standards/rows/ambient_correction.h"
#include "standards/rows/ampacity_30c.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

double columnOf(const rows::AmpacityRow& row, Metal metal, int celsius) {
    const bool copper = metal == Metal::copper;
    switch (celsius) {
        case 60:
            return copper ? row.copper60 : row.aluminium60;
        case 75:
            return copper ? row.copper75 : row.aluminium75;
        case 90:
            return copper ? row.copper90 : row.aluminium90;
        default:
            return rows::kBlank;
    }
}

std::string ampacityTable(Edition edition) {
    return edition == Edition::nec2017 ? "Table 310.15(B)(16)" : "Table 310.16";
}

std::string adjustmentTable(Edition edition) {
    return edition == Edition::nec2017 ? "Table 310.15(B)(3)(a)" : "Table 310.15(C)(1)";
}

std::string ambientTable(Edition edition) {
    switch (edition) {
        case Edition::nec2017:
            return "Table 310.15(B)(2)(a)";
        case Edition::nec2020:
            return "Table 310.15(B)(1)";
        case Edition::nec2023:
        case Edition::nec2026:
            return "Table 310.15(B)(1)(1)";
    }
    return {};
}

}  // namespace

Lookup<double> ampacity(units::WireSize size, Metal metal, int celsius, Edition edition) {
    for (const auto& row : rows::kAmpacityRows) {
        const double cell = row.size == size.label() ? columnOf(row, metal, celsius) : rows::kBlank;
        if (!isBlank(cell)) {
            return answer(cell, tableCitation(edition, ampacityTable(edition), row.basis));
        }
    }
    return noValue<double>("no ampacity for " + size.text() + " " + std::string(metalText(metal)) +
                               " at " + std::to_string(celsius) + " °C",
                           tableCitation(edition, ampacityTable(edition), Basis::seen));
}

Lookup<double> adjustmentFactor(int currentCarrying, Edition edition) {
    for (const auto& row : rows::kAdjustmentRows) {
        const bool below = isBlank(row.to) || currentCarrying <= row.to;
        if (currentCarrying >= row.from && below) {
            return answer(row.factor, tableCitation(edition, adjustmentTable(edition), row.basis));
        }
    }
    return noValue<double>("a count below one",
                           tableCitation(edition, adjustmentTable(edition), Basis::seenTwice));
}

Lookup<double> ambientFactor(double ambientCelsius, int insulationCelsius, Edition edition) {
    // Ranges are printed in whole degrees; what lies between two belongs to the hotter one.
    const double degrees = std::ceil(ambientCelsius - 1e-9);
    const auto citation = [&](Basis basis) {
        return tableCitation(edition, ambientTable(edition), basis);
    };
    for (const auto& row : rows::kAmbientRows) {
        const bool above = isBlank(row.fromCelsius) || degrees >= row.fromCelsius;
        if (!above || degrees > row.toCelsius) {
            continue;
        }
        const double cell = insulationCelsius == 60   ? row.factor60
                            : insulationCelsius == 75 ? row.factor75
                            : insulationCelsius == 90 ? row.factor90
                                                      : rows::kBlank;
        if (!isBlank(cell)) {
            return answer(cell, citation(row.basis));
        }
    }
    return noValue<double>("not permitted at that ambient for that insulation",
                           citation(Basis::seen));
}

}  // namespace gw::standards
