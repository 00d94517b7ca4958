#pragma once

#include <compare>
#include <span>
#include <string>
#include <string_view>

#include "base/result.h"
#include "units/length.h"

namespace gw::units {

/// A conductor size as printed in the tables: `14` … `1`, `1/0` … `4/0`, `250` … `2000` kcmil.
/// Ordered by area of metal. Only the sizes of the published tables exist; there is no default.
class WireSize {
public:
    /// Reads `6`, `#6`, `6 AWG`, `1/0`, `1/0 AWG`, `4/0`, `250`, `250 kcmil`, `500MCM`, `500
    /// kcmil`. Upper or lower case, white space free. Error `unknown` for a size that no table has.
    static Result<WireSize> parse(std::string_view text);

    /// For sizes in our own source: CONTRACT that the label is one of all().
    static WireSize of(std::string_view label);

    /// Every size, smallest first.
    static std::span<const WireSize> all();

    /// `6`, `1/0`, `500`: as written in files and tables.
    std::string_view label() const;
    /// `6 AWG`, `1/0 AWG`, `500 kcmil`: as written on sheets.
    std::string text() const;
    /// Area of metal. Source: NFPA 70 Chapter 9 Table 8 (AWG) or the size itself (kcmil).
    double circularMils() const;
    bool isKcmil() const;
    /// Position in all(): 0 is 14 AWG. For tables and sorting, never for files.
    int rank() const { return rank_; }

    friend auto operator<=>(WireSize, WireSize) = default;

private:
    explicit constexpr WireSize(int rank) : rank_(rank) {}
    friend struct WireSizes;
    int rank_;
};

}  // namespace gw::units
