#include "units/wire_size.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "base/contract.h"

namespace gw::units {
namespace {

struct Row {
    std::string_view label;
    double circularMils;
    bool kcmil;
};

// Source: NFPA 70 Chapter 9 Table 8, circular mils of the AWG sizes (seen on a public reprint);
// the kcmil sizes are named by their area.
// clang-format off
constexpr std::array kRows = {
    Row{"14",   4110.0,   false},
    Row{"12",   6530.0,   false},
    Row{"10",   10380.0,  false},
    Row{"8",    16510.0,  false},
    Row{"6",    26240.0,  false},
    Row{"4",    41740.0,  false},
    Row{"3",    52620.0,  false},
    Row{"2",    66360.0,  false},
    Row{"1",    83690.0,  false},
    Row{"1/0",  105600.0, false},
    Row{"2/0",  133100.0, false},
    Row{"3/0",  167800.0, false},
    Row{"4/0",  211600.0, false},
    Row{"250",  250e3,    true},
    Row{"300",  300e3,    true},
    Row{"350",  350e3,    true},
    Row{"400",  400e3,    true},
    Row{"500",  500e3,    true},
    Row{"600",  600e3,    true},
    Row{"700",  700e3,    true},
    Row{"750",  750e3,    true},
    Row{"800",  800e3,    true},
    Row{"900",  900e3,    true},
    Row{"1000", 1000e3,   true},
    Row{"1250", 1250e3,   true},
    Row{"1500", 1500e3,   true},
    Row{"1750", 1750e3,   true},
    Row{"2000", 2000e3,   true},
};
// clang-format on

const Row& rowOf(int rank) {
    return kRows.at(static_cast<std::size_t>(rank));
}

std::optional<int> rankOf(std::string_view label) {
    const auto* row =
        std::find_if(kRows.begin(), kRows.end(), [&](const Row& r) { return r.label == label; });
    if (row == kRows.end()) {
        return std::nullopt;
    }
    return static_cast<int>(row - kRows.begin());
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

// Lower case, without white space; empty where white space splits a number (`2 50`).
std::string compacted(std::string_view text) {
    std::string out;
    bool gap = false;
    for (const char c : text) {
        if (isSpace(c)) {
            gap = true;
            continue;
        }
        if (gap && !out.empty() && isDigit(out.back()) && isDigit(c)) {
            return {};
        }
        gap = false;
        out += (c >= 'A' && c <= 'Z') ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return out;
}

bool cutSuffix(std::string_view& text, std::string_view suffix) {
    if (text.size() < suffix.size() || text.substr(text.size() - suffix.size()) != suffix) {
        return false;
    }
    text.remove_suffix(suffix.size());
    return true;
}

bool cutPrefix(std::string_view& text, char prefix) {
    if (text.empty() || text.front() != prefix) {
        return false;
    }
    text.remove_prefix(1);
    return true;
}

// `#` and `AWG` go with the AWG sizes only, `kcmil` and `MCM` with the others only.
std::optional<int> rankOfTyped(std::string_view text) {
    const bool startsWithSign = cutPrefix(text, '#');
    const bool saysAwg = cutSuffix(text, "awg") || startsWithSign;
    const bool saysKcmil = cutSuffix(text, "kcmil") || cutSuffix(text, "mcm");
    const auto rank = rankOf(text);
    if (!rank || (saysAwg && rowOf(*rank).kcmil) || (saysKcmil && !rowOf(*rank).kcmil)) {
        return std::nullopt;
    }
    return rank;
}

}  // namespace

struct WireSizes {
    static constexpr std::array<WireSize, kRows.size()> make() {
        return []<std::size_t... kRanks>(std::index_sequence<kRanks...>) {
            return std::array{WireSize(static_cast<int>(kRanks))...};
        }
        (std::make_index_sequence<kRows.size()>());
    }
};

std::span<const WireSize> WireSize::all() {
    static constexpr auto kAll = WireSizes::make();
    return kAll;
}

Result<WireSize> WireSize::parse(std::string_view text) {
    const std::string typed = compacted(text);
    if (const auto rank = rankOfTyped(typed)) {
        return WireSize(*rank);
    }
    constexpr std::size_t kLongestShown = 30;
    return fail({.code = ErrorCode::unknown,
                 .sentence = "not a conductor size of the tables",
                 .expected = "14 to 1, 1/0 to 4/0 AWG, or 250 to 2000 kcmil as printed",
                 .found = text.empty()                  ? "nothing"
                          : text.size() > kLongestShown ? "a longer text"
                                                        : std::string(text)});
}

WireSize WireSize::of(std::string_view label) {
    const auto rank = rankOf(label);
    CONTRACT(rank.has_value());
    return WireSize(*rank);
}

std::string_view WireSize::label() const {
    return rowOf(rank_).label;
}

std::string WireSize::text() const {
    return std::string(label()) + (isKcmil() ? " kcmil" : " AWG");
}

double WireSize::circularMils() const {
    return rowOf(rank_).circularMils;
}

bool WireSize::isKcmil() const {
    return rowOf(rank_).kcmil;
}

}  // namespace gw::units
