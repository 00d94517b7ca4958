#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// A drawing as plain values, to be painted alike on a canvas, a PDF and an SVG (ui/paint).
/// Coordinates are millimetres on the paper, x right, y down from the top left corner.
namespace gw::drawing {

struct Point {
    double x = 0.0;
    double y = 0.0;
    friend bool operator==(const Point&, const Point&) = default;
};

struct Rect {
    double x = 0.0;
    double y = 0.0;
    double width = 0.0;
    double height = 0.0;
    double right() const { return x + width; }
    double bottom() const { return y + height; }
};

struct Colour {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    friend bool operator==(const Colour&, const Colour&) = default;
};

enum class Dash { solid, dashed, dotted, chain, fine };  ///< chain: centre lines

struct Pen {
    double width = 0.25;  ///< mm, >= 0.05
    Colour colour = {};
    Dash dash = Dash::solid;
    bool roundCaps = false;
    double dashOffset = 0.0;  ///< mm into the dash pattern at the first point
};

/// A chain of straight lines; closed ones may be filled. Pen or fill, or both.
struct Polyline {
    std::vector<Point> points;
    bool closed = false;
    std::optional<Pen> pen;
    std::optional<Colour> fill;
};

/// A circular arc. Angles in degrees, anticlockwise as seen on the paper, 0 to the right.
struct Arc {
    Point centre;
    double radius = 0.0;
    double startDegrees = 0.0;
    double sweepDegrees = 0.0;
    Pen pen;
};

struct Circle {
    Point centre;
    double radius = 0.0;
    std::optional<Pen> pen;
    std::optional<Colour> fill;
};

enum class Face { regular, bold, condensed, condensedBold };
enum class AnchorX { left, middle, right };
enum class AnchorY { baseline, middle, top, bottom };

struct Text {
    Point at;
    std::string text;     ///< UTF-8, one line
    double height = 2.5;  ///< mm: the font's size (em); capitals are about 0.73 of it
    Face face = Face::regular;
    AnchorX anchorX = AnchorX::left;
    AnchorY anchorY = AnchorY::baseline;
    double rotationDegrees = 0.0;  ///< anticlockwise on the paper
    Colour colour = {};
};

using Element = std::variant<Polyline, Arc, Circle, Text>;

struct Layer {
    std::string name;  ///< "conductors", "dimensions", …; painted in order
    std::vector<Element> elements;
};

struct Drawing {
    double width = 0.0;  ///< mm
    double height = 0.0;
    std::string title;
    std::vector<Layer> layers;
};

/// How wide text is, so that core can lay it out without a toolkit. Implemented over the shipped
/// font by ui/paint; tests may use a fixed-width one. Same text, same width on every machine.
class TextMetrics {
public:
    TextMetrics() = default;
    TextMetrics(const TextMetrics&) = delete;
    TextMetrics& operator=(const TextMetrics&) = delete;
    virtual ~TextMetrics() = default;
    /// Advance width in mm of one line at a font size in mm.
    virtual double width(std::string_view text, double height, Face face) const = 0;
};

/// Where the baseline begins: every painter puts the text there, so that what is laid out is what
/// is seen. AnchorY::top is the top of capitals, middle half their height, bottom the descenders'.
Point baselineStart(const Text& text, const TextMetrics& metrics);

/// The upright rectangle that holds a text, from descenders to the top of capitals and ascenders.
Rect extent(const Text& text, const TextMetrics& metrics);

/// The rectangle of the ink alone: down to the baseline where no letter goes below it.
Rect inkOf(const Text& text, const TextMetrics& metrics);

bool overlap(const Rect& a, const Rect& b);
/// Whether `inner` lies in `outer`, edges touching allowed.
bool holds(const Rect& outer, const Rect& inner);
Rect grown(const Rect& rect, double by);
/// The least rectangle around both.
Rect united(const Rect& a, const Rect& b);

}  // namespace gw::drawing
