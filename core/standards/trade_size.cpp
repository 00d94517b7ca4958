#include "standards/trade_size.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/contract.h"

namespace gw::standards {

struct TradeSizes {
    struct Row {
        std::string_view text;
        std::string_view blank;    ///< "2 1/2"
        std::string_view decimal;  ///< "2.5"
        double nominal;
    };
    static constexpr std::array<Row, 13> kRows = {{{"3/8", "3/8", "0.375", 0.375},
                                                   {"1/2", "1/2", "0.5", 0.5},
                                                   {"3/4", "3/4", "0.75", 0.75},
                                                   {"1", "1", "1", 1.0},
                                                   {"1-1/4", "1 1/4", "1.25", 1.25},
                                                   {"1-1/2", "1 1/2", "1.5", 1.5},
                                                   {"2", "2", "2", 2.0},
                                                   {"2-1/2", "2 1/2", "2.5", 2.5},
                                                   {"3", "3", "3", 3.0},
                                                   {"3-1/2", "3 1/2", "3.5", 3.5},
                                                   {"4", "4", "4", 4.0},
                                                   {"5", "5", "5", 5.0},
                                                   {"6", "6", "6", 6.0}}};
    static constexpr TradeSize at(int rank) { return TradeSize(rank); }
};

namespace {

constexpr auto makeAll() {
    return []<std::size_t... kRanks>(std::index_sequence<kRanks...>) {
        return std::array{TradeSizes::at(static_cast<int>(kRanks))...};
    }
    (std::make_index_sequence<TradeSizes::kRows.size()>());
}
constexpr auto kAll = makeAll();

const TradeSizes::Row& rowOf(TradeSize size) {
    return TradeSizes::kRows.at(static_cast<std::size_t>(size.rank()));
}

}  // namespace

std::optional<TradeSize> TradeSize::parse(std::string_view text) {
    for (const auto size : kAll) {
        const auto& row = rowOf(size);
        if (text == row.text || text == row.blank || text == row.decimal) {
            return size;
        }
    }
    return std::nullopt;
}

TradeSize TradeSize::of(std::string_view text) {
    const auto size = parse(text);
    CONTRACT(size.has_value());
    return *size;
}

std::span<const TradeSize> TradeSize::all() {
    return kAll;
}
std::string_view TradeSize::text() const {
    return rowOf(*this).text;
}
double TradeSize::nominal() const {
    return rowOf(*this).nominal;
}

}  // namespace gw::standards
