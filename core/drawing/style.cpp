#include "drawing/style.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace gw::drawing {
namespace {

using layout::Phase;

struct NamedColour {
    std::string_view name;
    Colour fill;
    Colour line;
};

// Tints light enough for black text and pattern to stand out, lines dark enough for a copy.
constexpr std::array<NamedColour, 10> kColours = {{
    {"black", {196, 196, 196}, {0, 0, 0}},
    {"red", {255, 196, 190}, {170, 0, 0}},
    {"blue", {190, 214, 255}, {0, 40, 150}},
    {"white", {255, 255, 255}, {90, 90, 90}},
    {"green", {196, 236, 196}, {0, 100, 20}},
    {"brown", {222, 196, 170}, {92, 50, 10}},
    {"orange", {255, 214, 160}, {180, 84, 0}},
    {"yellow", {255, 246, 170}, {130, 108, 0}},
    {"grey", {226, 226, 226}, {90, 90, 90}},
    {"gray", {226, 226, 226}, {90, 90, 90}},
}};

const NamedColour* find(std::string_view name) {
    const auto found = std::find_if(kColours.begin(), kColours.end(), [&](const NamedColour& row) {
        return std::equal(
            name.begin(), name.end(), row.name.begin(), row.name.end(), [](char a, char b) {
                return std::tolower(static_cast<unsigned char>(a)) == b;
            });
    });
    return found == kColours.end() ? nullptr : &*found;
}

std::string_view customaryColour(Phase phase, bool above250) {
    switch (phase) {
        case Phase::a:
            return above250 ? "brown" : "black";
        case Phase::b:
            return above250 ? "orange" : "red";
        case Phase::c:
            return above250 ? "yellow" : "blue";
        case Phase::n:
            return above250 ? "grey" : "white";
        case Phase::g:
            return "green";
    }
    return "black";
}

Dash dashOf(Phase phase) {
    switch (phase) {
        case Phase::a:
            return Dash::solid;
        case Phase::b:
            return Dash::dashed;
        case Phase::c:
            return Dash::dotted;
        case Phase::n:
            return Dash::chain;
        case Phase::g:
            return Dash::fine;
    }
    return Dash::solid;
}

PhaseStyle toStyle(const NamedColour& colour, Phase phase) {
    return {colour.fill, colour.line, dashOf(phase)};
}

bool above250Volts(const layout::Conductor& conductor, const layout::Layout& layout) {
    for (const auto& circuit : layout.circuits) {
        for (const auto& system : layout.systems) {
            if (circuit.id == conductor.circuit && system.id == circuit.system) {
                return system.voltsBetweenPhases.value_or(0) > 250;
            }
        }
    }
    return false;
}

}  // namespace

TextSizes textSizes(Paper paper) {
    switch (paper) {
        case Paper::letter:
        case Paper::legal:
        case Paper::a4:
            return {2.75, 3.2, 3.6, 4.6};
        case Paper::tabloid:
        case Paper::a3:
            return {2.75, 3.3, 3.9, 5.2};
        case Paper::archC:
        case Paper::a2:
            return {3.1, 3.7, 4.4, 6.0};
        case Paper::archD:
        case Paper::a1:
            return {3.5, 4.2, 5.0, 6.8};
    }
    return {};
}

PhaseStyle styleOf(Phase phase, bool above250) {
    return toStyle(*find(customaryColour(phase, above250)), phase);
}

PhaseStyle styleOf(const layout::Conductor& conductor, const layout::Layout& layout) {
    const auto* stated = conductor.colour ? find(*conductor.colour) : nullptr;
    return stated ? toStyle(*stated, conductor.phase)
                  : styleOf(conductor.phase, above250Volts(conductor, layout));
}

std::string patternText(Phase phase) {
    switch (phase) {
        case Phase::a:
            return "solid";
        case Phase::b:
            return "dashes";
        case Phase::c:
            return "dots";
        case Phase::n:
            return "dash and dot";
        case Phase::g:
            return "short dashes";
    }
    return "";
}

Pen inkPen(double width, Dash dash) {
    return {width, kInk, dash};
}

}  // namespace gw::drawing
