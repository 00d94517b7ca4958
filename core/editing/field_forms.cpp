#include "editing/field_forms.h"

#include <charconv>
#include <cmath>

namespace gw::editing {
namespace {

bool isSpace(char c) {
    return std::isspace(static_cast<unsigned char>(c)) != 0;
}

char lower(char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

/// Without the unit that may follow a number.
std::string_view withoutUnit(std::string_view text, std::string_view unit) {
    if (!unit.empty() && text.size() > unit.size() &&
        sameWord(text.substr(text.size() - unit.size()), unit)) {
        return trimmed(text.substr(0, text.size() - unit.size()));
    }
    return text;
}

template <class Number>
std::optional<Number> parsed(std::string_view text) {
    Number number{};
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc{} && end == text.data() + text.size() ? std::optional(number)
                                                                    : std::nullopt;
}

Error noNumber(std::string sentence, std::string expected, std::string_view found) {
    return {ErrorCode::syntax,
            std::move(sentence),
            {},
            {},
            std::move(expected),
            found.empty() ? "nothing" : std::string(found)};
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && isSpace(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && isSpace(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

bool sameWord(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) {
        return lower(x) == lower(y);
    });
}

bool saysNothing(std::string_view text) {
    const auto said = trimmed(text);
    return said.empty() || said == "-" || sameWord(said, "not stated");
}

std::string lengthText(units::Inches length, units::LengthUnit unit) {
    constexpr double kSixtyFourths = 64.0;
    constexpr double kExact = 1e-9;
    constexpr int kInchDecimals = 4;
    constexpr int kMillimetreDecimals = 3;
    if (unit == units::LengthUnit::millimetre) {
        return units::formatDecimal(length.mm(), kMillimetreDecimals) + " mm";
    }
    const double steps = length.in() * kSixtyFourths;
    if (std::abs(steps - std::round(steps)) < kExact * kSixtyFourths) {
        return units::formatInches(length, units::Rounding::nearest, 64);
    }
    return units::formatDecimal(length.in(), kInchDecimals) + " in";
}

std::string numberText(double value) {
    constexpr int kDecimals = 6;
    return units::formatDecimal(value, kDecimals);
}

Result<double> readNumber(std::string_view text, std::string_view unit) {
    const auto number = parsed<double>(withoutUnit(trimmed(text), unit));
    if (!number || !std::isfinite(*number)) {
        return fail(noNumber("not a number", "digits, with a point for decimals", trimmed(text)));
    }
    return *number;
}

Result<int> readCount(std::string_view text, std::string_view unit) {
    const auto number = parsed<int>(withoutUnit(trimmed(text), unit));
    if (!number) {
        return fail(noNumber("not a whole number", "digits", trimmed(text)));
    }
    return *number;
}

std::optional<standards::Metal> metalAbbreviated(std::string_view text) {
    if (sameWord(text, "cu")) {
        return standards::Metal::copper;
    }
    if (sameWord(text, "al") || sameWord(text, "aluminum")) {
        return standards::Metal::aluminium;
    }
    return sameWord(text, "cca") ? std::optional(standards::Metal::copperCladAluminium)
                                 : std::nullopt;
}

Error notOneOf(std::string_view found, const std::vector<std::string>& choices) {
    constexpr std::size_t kShown = 8;
    std::string expected;
    for (std::size_t i = 0; i < choices.size() && i < kShown; ++i) {
        expected += (i == 0 ? "" : ", ") + choices[i];
    }
    if (choices.size() > kShown) {
        expected += ", …";
    }
    return {ErrorCode::unknown,
            "not one of what can be chosen",
            {},
            {},
            expected.empty() ? "nothing: there is none yet" : expected,
            trimmed(found).empty() ? "nothing" : std::string(trimmed(found))};
}

}  // namespace gw::editing
