#include "units/length.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <optional>

#include "base/contract.h"

namespace gw::units {
namespace {

// --- reading ---------------------------------------------------------------------------------

struct Spelling {
    std::string_view typed;
    std::string_view plain;
};

// What word processors, phones and drawings write for the plain characters (UTF-8 bytes). The
// fraction characters get a space in front, so that 5½ reads as 5 1/2.
// clang-format off
constexpr std::array kSpellings = {
    Spelling{"\xC2\xBC", " 1/4"},      // ¼
    Spelling{"\xC2\xBD", " 1/2"},      // ½
    Spelling{"\xC2\xBE", " 3/4"},      // ¾
    Spelling{"\xE2\x85\x93", " 1/3"},  // ⅓
    Spelling{"\xE2\x85\x94", " 2/3"},  // ⅔
    Spelling{"\xE2\x85\x9B", " 1/8"},  // ⅛
    Spelling{"\xE2\x85\x9C", " 3/8"},  // ⅜
    Spelling{"\xE2\x85\x9D", " 5/8"},  // ⅝
    Spelling{"\xE2\x85\x9E", " 7/8"},  // ⅞
    Spelling{"\xE2\x81\x84", "/"},     // fraction slash
    Spelling{"\xE2\x80\xB2", "'"},     // prime
    Spelling{"\xE2\x80\xB3", "\""},    // double prime
    Spelling{"\xE2\x80\x98", "'"},     // curly single quotes
    Spelling{"\xE2\x80\x99", "'"},
    Spelling{"\xE2\x80\x9C", "\""},    // curly double quotes
    Spelling{"\xE2\x80\x9D", "\""},
    Spelling{"''", "\""},
    Spelling{"\xE2\x88\x92", "-"},     // minus sign
    Spelling{"\xE2\x80\x91", "-"},     // non-breaking hyphen
    Spelling{"\xE2\x80\x93", "-"},     // en dash
    Spelling{"\xC2\xA0", " "},         // non-breaking space
    Spelling{"\xE2\x80\x89", " "},     // thin space
    Spelling{"\xE2\x80\xAF", " "},     // narrow non-breaking space
    Spelling{"\t", " "},
    Spelling{"\n", " "},
    Spelling{"\r", " "},
};
// clang-format on

std::string plainSpelling(std::string_view typed) {
    std::string plain;
    while (!typed.empty()) {
        std::size_t used = 1;
        std::string_view replacement = typed.substr(0, 1);
        for (const Spelling& spelling : kSpellings) {
            if (typed.substr(0, spelling.typed.size()) == spelling.typed) {
                used = spelling.typed.size();
                replacement = spelling.plain;
                break;
            }
        }
        plain += replacement;
        typed.remove_prefix(used);
    }
    return plain;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// The text not yet read.
class Scanner {
public:
    explicit Scanner(std::string_view text) : rest_(text) {}

    bool atEnd() const { return rest_.empty(); }
    char peek() const { return rest_.empty() ? '\0' : rest_.front(); }
    std::string_view mark() const { return rest_; }
    void back(std::string_view mark) { rest_ = mark; }

    void skipSpace() {
        takeWhile([](char c) { return c == ' '; });
    }
    bool take(char wanted) {
        if (peek() != wanted) {
            return false;
        }
        rest_.remove_prefix(1);
        return true;
    }
    std::string_view digits() { return takeWhile(isDigit); }
    std::string_view letters() { return takeWhile(isLetter); }

private:
    template <class Wanted>
    std::string_view takeWhile(Wanted wanted) {
        std::size_t count = 0;
        while (count < rest_.size() && wanted(rest_[count])) {
            ++count;
        }
        const std::string_view taken = rest_.substr(0, count);
        rest_.remove_prefix(count);
        return taken;
    }

    std::string_view rest_;
};

// Longer digit strings are not lengths anybody types, and could overflow a double.
constexpr std::size_t kMostDigits = 40;

std::optional<double> toNumber(const std::string& text) {
    if (text.size() > kMostDigits) {
        return std::nullopt;
    }
    double value = 0.0;
    const char* end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value, std::chars_format::fixed);
    if (error != std::errc() || stop != end) {
        return std::nullopt;
    }
    return value;
}

// What a quantity can go wrong with, as a sentence for the reader.
template <class T>
using Read = tl::expected<T, std::string_view>;
using Wrong = tl::unexpected<std::string_view>;

Read<double> readRatio(std::string_view top, std::string_view bottom) {
    const auto numerator = toNumber(std::string(top));
    const auto denominator = toNumber(std::string(bottom));
    if (!numerator || !denominator) {
        return Wrong("a fraction lacks a whole number on one side of its slash");
    }
    if (*denominator == 0.0) {
        return Wrong("a fraction has a zero denominator");
    }
    return *numerator / *denominator;
}

// The fraction of `5 1/2` or `5-1/2`, once the 5 is read: 0 if there is none, and then nothing is
// taken. A hyphen joins only without space about it: `5 - 1/2` could mean a subtraction.
Read<double> readTrailingFraction(Scanner& in) {
    const std::string_view start = in.mark();
    if (!in.take('-')) {
        in.skipSpace();
    }
    const std::string_view top = in.digits();
    if (top.empty() || !in.take('/')) {
        in.back(start);
        return 0.0;
    }
    const auto ratio = readRatio(top, in.digits());
    if (ratio && *ratio >= 1.0) {
        return Wrong("the fraction after a whole number is not less than one");
    }
    return ratio;
}

Read<double> readDecimal(std::string_view whole, Scanner& in) {
    const std::string_view decimals = in.digits();
    if (whole.empty() && decimals.empty()) {
        return Wrong("a point stands without digits");
    }
    const auto value = toNumber("0" + std::string(whole) + "." + std::string(decimals) + "0");
    return value ? Read<double>(*value) : Wrong("a number has too many digits");
}

// `5`, `5.5`, `.5`, `1/2`, `5 1/2`, `5-1/2`.
Read<double> readMixed(Scanner& in) {
    const std::string_view whole = in.digits();
    if (in.take('.')) {
        return readDecimal(whole, in);
    }
    if (whole.empty()) {
        return Wrong("a number is missing");
    }
    if (in.take('/')) {
        return readRatio(whole, in.digits());
    }
    const auto number = toNumber(std::string(whole));
    if (!number) {
        return Wrong("a number has too many digits");
    }
    const auto fraction = readTrailingFraction(in);
    return fraction ? Read<double>(*number + *fraction) : fraction;
}

enum class TypedUnit { none, feet, inches, millimetres, centimetres };

struct UnitName {
    std::string_view name;
    TypedUnit unit;
};

constexpr std::array kUnitNames = {
    UnitName{"ft", TypedUnit::feet},
    UnitName{"foot", TypedUnit::feet},
    UnitName{"feet", TypedUnit::feet},
    UnitName{"in", TypedUnit::inches},
    UnitName{"inch", TypedUnit::inches},
    UnitName{"inches", TypedUnit::inches},
    UnitName{"mm", TypedUnit::millimetres},
    UnitName{"cm", TypedUnit::centimetres},
};

std::string lowerCase(std::string_view text) {
    std::string lower(text);
    for (char& c : lower) {
        if (c >= 'A' && c <= 'Z') {
            c = static_cast<char>(c - 'A' + 'a');
        }
    }
    return lower;
}

Read<TypedUnit> readUnit(Scanner& in) {
    in.skipSpace();
    if (in.take('\'')) {
        return TypedUnit::feet;
    }
    if (in.take('"')) {
        return TypedUnit::inches;
    }
    const std::string name = lowerCase(in.letters());
    if (name.empty()) {
        return TypedUnit::none;
    }
    for (const UnitName& known : kUnitNames) {
        if (known.name == name) {
            in.take('.');  // "in." and "ft." are abbreviations
            return known.unit;
        }
    }
    return Wrong("the unit is not one of in, ft, mm, cm");
}

double inInches(double value, TypedUnit unit, LengthUnit unitless) {
    switch (unit) {
        case TypedUnit::none:
            return unitless == LengthUnit::inch ? value : Inches::fromMillimetres(value).in();
        case TypedUnit::feet:
            return Inches::fromFeet(value).in();
        case TypedUnit::inches:
            return value;
        case TypedUnit::millimetres:
            return Inches::fromMillimetres(value).in();
        case TypedUnit::centimetres:
            return Inches::fromMillimetres(10.0 * value).in();
    }
    return value;
}

// The `3 1/4"` of `1' 3 1/4"`, with or without the mark; 0 if the text ends after the feet.
Read<double> readInchesAfterFeet(Scanner& in) {
    in.skipSpace();
    if (in.atEnd()) {
        return 0.0;
    }
    in.take('-');
    in.skipSpace();
    const auto value = readMixed(in);
    if (!value) {
        return value;
    }
    const auto unit = readUnit(in);
    if (!unit) {
        return Wrong(unit.error());
    }
    if (*unit != TypedUnit::none && *unit != TypedUnit::inches) {
        return Wrong("after feet only inches can follow");
    }
    return value;
}

Read<double> readLength(Scanner& in, LengthUnit unitless) {
    in.skipSpace();
    const double sign = in.take('-') ? -1.0 : 1.0;
    in.skipSpace();
    const auto value = readMixed(in);
    if (!value) {
        return value;
    }
    const auto unit = readUnit(in);
    if (!unit) {
        return Wrong(unit.error());
    }
    double inches = inInches(*value, *unit, unitless);
    if (*unit == TypedUnit::feet) {
        const auto more = readInchesAfterFeet(in);
        if (!more) {
            return more;
        }
        inches += *more;
    }
    in.skipSpace();
    if (!in.atEnd()) {
        return Wrong("something follows the length");
    }
    return sign * inches + 0.0;  // + 0.0: never minus zero
}

// The text as typed, cut to a length that fits a line, never inside a UTF-8 character.
std::string shown(std::string_view text) {
    constexpr std::size_t kLongest = 60;
    if (text.size() <= kLongest) {
        return std::string(text);
    }
    std::size_t end = kLongest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end;
    }
    return std::string(text.substr(0, end)) + "...";
}

constexpr double kLongestLength = 1200.0;

// --- printing --------------------------------------------------------------------------------

// A number this near a multiple of the last printed place is that multiple, whatever the rounding:
// a length computed as 5.5 + 1e-12 must not print as 5 9/16 because it rounds up. Inches.
constexpr double kSameAsMultiple = 1e-6;

// value in units of the last printed place, as a whole number held in a double.
double inSteps(double steps, double slack, Rounding rounding) {
    const double nearest = std::round(steps);
    if (std::abs(steps - nearest) <= slack) {
        return nearest;
    }
    switch (rounding) {
        case Rounding::nearest:
            return nearest;
        case Rounding::up:
            return std::ceil(steps);
        case Rounding::down:
            return std::floor(steps);
    }
    return nearest;
}

std::string mixedNumber(Inches length, Rounding rounding, int denominator) {
    CONTRACT(denominator == 2 || denominator == 4 || denominator == 8 || denominator == 16 ||
             denominator == 32 || denominator == 64);
    constexpr double kMostSteps = 9.0e15;  // above, doubles skip whole numbers
    const double steps =
        inSteps(length.in() * denominator, kSameAsMultiple * denominator, rounding);
    if (std::abs(steps) > kMostSteps) {
        return formatDecimal(length.in(), 0);
    }
    const auto count = static_cast<std::int64_t>(std::abs(steps));
    const std::int64_t whole = count / denominator;
    const std::int64_t rest = count % denominator;
    std::string text = steps < 0.0 ? "-" : "";
    if (whole != 0 || rest == 0) {
        text += std::to_string(whole);
    }
    if (rest != 0) {
        const std::int64_t common = std::gcd(rest, std::int64_t{denominator});
        text += whole != 0 ? " " : "";
        text += std::to_string(rest / common) + "/" + std::to_string(denominator / common);
    }
    return text;
}

}  // namespace

Result<Inches> parseLength(std::string_view text, LengthUnit unitless) {
    const std::string plain = plainSpelling(text);
    Scanner scanner(plain);
    const auto inches = readLength(scanner, unitless);
    if (!inches) {
        return fail({.code = ErrorCode::syntax,
                     .sentence = "not a length: " + std::string(inches.error()),
                     .expected = "a length such as 5 1/2, 1' 3 1/4\" or 140 mm",
                     .found = text.empty() ? "nothing" : shown(text)});
    }
    if (std::abs(*inches) > kLongestLength) {
        return fail({.code = ErrorCode::outOfRange,
                     .sentence = "the length is beyond what a gutter can be",
                     .expected = "-1200 in to 1200 in",
                     .found = shown(text)});
    }
    return Inches::of(*inches);
}

std::string formatInches(Inches length, Rounding rounding, int denominator) {
    return mixedNumber(length, rounding, denominator) + " in";
}

std::string formatInchMark(Inches length, Rounding rounding, int denominator) {
    return mixedNumber(length, rounding, denominator) + "\"";
}

std::string formatMillimetres(Inches length, Rounding rounding) {
    constexpr double kStepsPerMillimetre = 10.0;
    const double slack = kSameAsMultiple * Inches::kMillimetresPerInch * kStepsPerMillimetre;
    const double steps = inSteps(length.mm() * kStepsPerMillimetre, slack, rounding);
    return formatDecimal(steps / kStepsPerMillimetre, 1) + " mm";
}

std::string formatLength(Inches length, LengthUnit unit, Rounding rounding) {
    switch (unit) {
        case LengthUnit::inch:
            return formatInches(length, rounding);
        case LengthUnit::millimetre:
            return formatMillimetres(length, rounding);
    }
    return formatInches(length, rounding);
}

namespace {

/// Few decimals of a number that is not large and not near the middle between two of them: then
/// rounding the product tells the same as rounding the number, and is done sooner. Empty: else.
std::optional<std::string> shortDecimal(double value, int decimals) {
    constexpr std::array<std::int64_t, 5> kPowers = {1, 10, 100, 1000, 10000};
    constexpr double kLargest = 1e9;   // products are exact to 1e-7 up to here
    constexpr double kTooNear = 1e-6;  // to the middle
    const auto places = static_cast<std::size_t>(decimals);
    if (places >= kPowers.size()) {
        return std::nullopt;
    }
    const std::int64_t power = kPowers[places];
    const double steps = std::abs(value) * static_cast<double>(power);
    if (!(steps < kLargest)) {
        return std::nullopt;
    }
    auto count = static_cast<std::int64_t>(steps);
    const double rest = steps - static_cast<double>(count);
    if (std::abs(rest - 0.5) < kTooNear) {
        return std::nullopt;
    }
    count += rest > 0.5 ? 1 : 0;
    std::string text = value < 0.0 && count > 0 ? "-" : "";
    text += std::to_string(count / power);
    std::int64_t fraction = count % power;
    if (fraction > 0) {
        text += '.';
        for (std::int64_t place = power / 10; fraction > 0; place /= 10) {
            text += static_cast<char>('0' + fraction / place);
            fraction %= place;
        }
    }
    return text;
}

}  // namespace

std::string formatDecimal(double value, int decimals) {
    CONTRACT(std::isfinite(value));
    CONTRACT(decimals >= 0 && decimals <= 17);
    if (auto text = shortDecimal(value, decimals)) {
        return std::move(*text);
    }
    std::array<char, 400> buffer{};  // the longest double has 309 digits before its point
    const auto [end, error] = std::to_chars(
        buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
    CONTRACT(error == std::errc());
    std::string text(buffer.data(), end);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text == "-0" ? "0" : text;
}

}  // namespace gw::units
