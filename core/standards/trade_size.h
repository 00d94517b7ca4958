#pragma once

#include <compare>
#include <optional>
#include <span>
#include <string_view>

namespace gw::standards {

/// A raceway's trade size: `3/8`, `1/2`, `3/4`, `1`, `1-1/4` … `6`. A name, not a measure.
/// Only sizes of NFPA 70 Chapter 9 Table 4 exist; `3/8` is one of flexible metal conduit alone.
class TradeSize {
public:
    /// Reads `2`, `2-1/2`, `2 1/2`, `2.5`; empty for anything else.
    static std::optional<TradeSize> parse(std::string_view text);
    /// CONTRACT that the text is one of all().
    static TradeSize of(std::string_view text);
    static std::span<const TradeSize> all();

    std::string_view text() const;  ///< "2-1/2"
    double nominal() const;         ///< 2.5: for the multiples of 314.28 only
    int rank() const { return rank_; }

    friend auto operator<=>(TradeSize, TradeSize) = default;

private:
    explicit constexpr TradeSize(int rank) : rank_(rank) {}
    friend struct TradeSizes;
    int rank_;
};

}  // namespace gw::standards
