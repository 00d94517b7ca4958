#include "layout/problems.h"

#include <algorithm>
#include <cmath>

#include "units/length.h"

namespace gw::layout {
namespace {

constexpr double kFarthest = 1200.0;  // inches; also the longest length that can be typed
constexpr std::size_t kLongestText = 400;

std::string numberText(double value) {
    constexpr double kPrintable = 1e15;
    if (std::isnan(value)) {
        return "not a number";
    }
    if (std::abs(value) > kPrintable) {
        return value > 0 ? "more than 1e15" : "less than -1e15";
    }
    return units::formatDecimal(value, 6);
}

std::string withUnit(const std::string& text, std::string_view unit) {
    return unit.empty() ? text : text + " " + std::string(unit);
}

bool isControl(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7F;
}

}  // namespace

std::string Place::pointer() const {
    if (above_ == nullptr) {
        return {};
    }
    return above_->pointer() + "/" +
           (member_.empty() ? std::to_string(index_) : std::string(member_));
}

Result<void> Problems::result() const {
    if (first_) {
        return fail(*first_);
    }
    return {};
}

void Problems::add(ErrorCode code,
                   const Place& place,
                   std::string sentence,
                   std::string expected,
                   std::string found) {
    if (!first_) {
        first_ = Error{.code = code,
                       .sentence = std::move(sentence),
                       .file = {},
                       .place = place.pointer(),
                       .expected = std::move(expected),
                       .found = std::move(found)};
    }
}

void Problems::range(
    const Place& place, double value, double least, double greatest, std::string_view unit) {
    // Written so that NaN is out of range.
    if (value >= least && value <= greatest) {
        return;
    }
    add(ErrorCode::outOfRange,
        place,
        "number out of range",
        withUnit(numberText(least) + " to " + numberText(greatest), unit),
        withUnit(numberText(value), unit));
}

void Problems::point(const Place& place, const Vec3& value) {
    range(place / "x", value.x, -kFarthest, kFarthest, "in");
    range(place / "y", value.y, -kFarthest, kFarthest, "in");
    range(place / "z", value.z, -kFarthest, kFarthest, "in");
}

void Problems::text(const Place& place, const std::string& value) {
    if (value.size() > kLongestText) {
        add(ErrorCode::outOfRange,
            place,
            "text too long",
            "at most " + std::to_string(kLongestText) + " bytes",
            std::to_string(value.size()) + " bytes");
    }
    if (std::any_of(value.begin(), value.end(), isControl)) {
        add(ErrorCode::syntax,
            place,
            "a control character in the text",
            "printable text",
            quoted(value));
    }
}

void Problems::text(const Place& place, const std::optional<std::string>& value) {
    if (value) {
        text(place, *value);
    }
}

std::string quoted(const std::string& text) {
    constexpr std::size_t kShown = 40;
    if (text.size() <= kShown) {
        return '"' + text + '"';
    }
    std::size_t cut = kShown;
    while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0U) == 0x80U) {
        --cut;  // not inside a UTF-8 character
    }
    return '"' + text.substr(0, cut) + "…\"";
}

}  // namespace gw::layout
