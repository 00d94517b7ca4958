#include "drawing/key.h"

#include <algorithm>
#include <array>

#include "drawing/tubes.h"

namespace gw::drawing {
namespace {

using layout::Phase;

constexpr std::array<Phase, 5> kPhases = {Phase::a, Phase::b, Phase::c, Phase::n, Phase::g};
constexpr double kSwatch = 16.0;  // mm

struct KeyRow {
    std::string text;
    PhaseStyle style;
    bool bare = false;
};

std::string phaseRowText(Phase phase) {
    switch (phase) {
        case Phase::a:
        case Phase::b:
        case Phase::c:
            return "phase " + std::string(layout::phaseText(phase)) + ": " + patternText(phase);
        case Phase::n:
            return "neutral N: " + patternText(phase);
        case Phase::g:
            return "grounding G: " + patternText(phase);
    }
    return "";
}

/// The first conductor of each phase in use shows its style.
std::vector<KeyRow> rowsOf(const geometry::BuiltLayout& built) {
    std::vector<KeyRow> rows;
    for (const auto phase : kPhases) {
        const auto& conductors = built.layout.conductors;
        const auto found =
            std::find_if(conductors.begin(), conductors.end(), [&](const auto& conductor) {
                return conductor.phase == phase;
            });
        if (found != conductors.end()) {
            rows.push_back({phaseRowText(phase), styleOf(*found, built.layout), false});
        }
    }
    rows.push_back({"bare copper", styleOf(Phase::g), true});
    return rows;
}

double rowHeight(const TextSizes& sizes) {
    return sizes.body * 1.9;
}

}  // namespace

Rect keySize(const geometry::BuiltLayout& built, const TextSizes& sizes) {
    const auto count = static_cast<double>(rowsOf(built).size()) + 1.0;
    return {0, 0, kSwatch + 3.0 + 16.5 * sizes.body, count * rowHeight(sizes)};
}

void drawKey(Sketch& sketch,
             const geometry::BuiltLayout& built,
             const TextSizes& sizes,
             Point corner) {
    double y = corner.y + 0.5 * rowHeight(sizes);
    Text text;
    text.height = sizes.body;
    text.face = Face::condensed;
    text.anchorY = AnchorY::middle;
    for (const auto& row : rowsOf(built)) {
        for (auto& element : tubeSample(
                 {corner.x, y}, {corner.x + kSwatch, y}, 1.15 * sizes.body, row.style, row.bare)) {
            sketch.add(Stratum::objects, std::move(element));
        }
        text.at = {corner.x + kSwatch + 2.5, y};
        text.text = row.text;
        sketch.text(text);
        y += rowHeight(sizes);
    }
    const Point centre{corner.x + 0.5 * kSwatch, y};
    sketch.add(Stratum::dimensions, Circle{centre, 0.8 * sizes.body, inkPen(kObject), kPaper});
    auto number = text;
    number.at = centre;
    number.text = "1";
    number.face = Face::condensedBold;
    number.anchorX = AnchorX::middle;
    sketch.text(number);
    text.at = {corner.x + kSwatch + 2.5, y};
    text.text = "place of finding no. 1";
    sketch.text(text);
}

}  // namespace gw::drawing
