#pragma once

#include <optional>
#include <string_view>

/// What the free text of a conductor's colour says.
namespace gw::checks {

enum class Hue { black, red, blue, brown, orange, yellow, white, gray, green, purple, pink, bare };
std::string_view hueText(Hue hue);  ///< "black", …, "gray", "bare"

/// Along the whole length.
struct Stripes {
    Hue hue = Hue::white;
    std::optional<int> count;  ///< empty: not said
    friend bool operator==(const Stripes&, const Stripes&) = default;
};

struct ColourText {
    Hue base = Hue::black;
    std::optional<Stripes> stripes;
    std::optional<Hue> marking;  ///< tape, bands or sleeves put on at the ends
    friend bool operator==(const ColourText&, const ColourText&) = default;
};

/// In small or large letters, words parted by spaces, commas, hyphens or slashes:
/// - the colour of the insulation first: black, red, blue, brown, orange, yellow, white, gray (or
///   grey), green, purple (or violet), pink, bare; light and dark say nothing more;
/// - a second colour with stripe, stripes, striped or tracer, before or after it, and one, two or
///   three (1, 2, 3) for how many; a second colour by itself is a stripe: "green/yellow";
/// - a colour with tape, taped, mark, marked, marking, band, banded or sleeve, before or after it:
///   what is put on at the ends.
/// Small words (with, and, at, both ends, …) are passed over. Empty where any other word is found,
/// or the words do not fit together: then nothing is known.
std::optional<ColourText> readColour(std::string_view text);

}  // namespace gw::checks
