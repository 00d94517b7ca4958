#include <array>

#include "base/contract.h"
#include "standards/look_up.h"
#include "standards/rows/gutter_stock_sizes.h"
#include "standards/rows/knockouts.h"
#include "standards/rows/raceway_dimensions.h"
#include "standards/rows/raceway_fill_percent.h"
#include "standards/sections.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using units::Inches;

const rows::FillRow& fillRow(std::string_view situation) {
    for (const auto& row : rows::kFillRows) {
        if (row.situation.substr(0, situation.size()) == situation) {
            return row;
        }
    }
    CONTRACT(false);
}

Citation stockCitation(Basis basis) {
    return {"ordinary trade sizes", {}, basis, "no standard"};
}

double numberIn(std::string_view text) {
    return units::parseLength(text)->in();
}

}  // namespace

Lookup<RacewayDimensions> racewayDimensions(RacewayType type, TradeSize size, Edition edition) {
    const std::string table = "Chapter 9 Table 4";
    for (const auto& row : rows::kRacewayRows) {
        if (row.type == racewayText(type) && row.tradeSize == size.text()) {
            return answer(RacewayDimensions{Inches::of(row.insideDiameter),
                                            units::SquareInches::of(row.area),
                                            isBlank(row.outsideDiameter)
                                                ? std::nullopt
                                                : std::optional(Inches::of(row.outsideDiameter)),
                                            int(row.metricDesignator)},
                          tableCitation(edition, table, row.basis));
        }
    }
    return noValue<RacewayDimensions>(
        std::string(racewayText(type)) + " is not made in trade size " + std::string(size.text()),
        tableCitation(edition, table, Basis::seen));
}

Lookup<double> racewayFillPercent(int conductors, bool nipple, Edition edition) {
    if (conductors < 1) {
        return noValue<double>("no conductor",
                               tableCitation(edition, "Chapter 9 Table 1", Basis::seen));
    }
    const auto& row = fillRow(nipple            ? "nipple"
                              : conductors == 1 ? "1 conductor"
                              : conductors == 2 ? "2 conductors"
                                                : "over 2");
    return answer(
        row.percent,
        tableCitation(
            edition, nipple ? "Chapter 9 Table 1 note 4" : "Chapter 9 Table 1", row.basis));
}

Lookup<double> gutterFillPercent(GutterArticle article, Edition edition) {
    return answer(fillRow("auxiliary gutter or metal wireway, conductors at any").percent,
                  section(Rule::conductorFill, edition, article));
}

Lookup<double> gutterSpliceFillPercent(GutterArticle article, Edition edition) {
    return answer(fillRow("auxiliary gutter or metal wireway, conductors plus").percent,
                  section(Rule::spliceFill, edition, article));
}

Lookup<Knockout> knockout(TradeSize size) {
    const auto citation = [](Basis basis) {
        return Citation{"NEMA practice", "knockouts", basis, "locknut from memory"};
    };
    for (const auto& row : rows::kKnockoutRows) {
        if (row.tradeSize == size.text()) {
            return answer(Knockout{Inches::of(row.nominal),
                                   Inches::of(row.least),
                                   Inches::of(row.greatest),
                                   Inches::of(row.locknut)},
                          citation(row.basis));
        }
    }
    return noValue<Knockout>("no knockout of that size", citation(Basis::seen));
}

std::vector<Cited<StockSection>> stockSections() {
    std::vector<Cited<StockSection>> sections;
    for (const auto& row : rows::kStockRows) {
        if (row.item == "cross section") {
            const auto by = row.value.find(" x ");
            sections.push_back({{Inches::of(numberIn(row.value.substr(0, by))),
                                 Inches::of(numberIn(row.value.substr(by + 3)))},
                                stockCitation(row.basis)});
        }
    }
    return sections;
}

std::vector<Cited<Inches>> stockLengths() {
    std::vector<Cited<Inches>> lengths;
    for (const auto& row : rows::kStockRows) {
        if (row.item == "stock length") {
            lengths.push_back({Inches::of(numberIn(row.value)), stockCitation(row.basis)});
        }
    }
    return lengths;
}

}  // namespace gw::standards
