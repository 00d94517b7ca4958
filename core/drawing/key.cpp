#include "drawing/key.h"

#include <algorithm>
#include <array>

#include "drawing/finding_tables.h"
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
                return conductor.phase == phase &&
                       conductor.insulation != standards::Insulation::bare;
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

bool hasMarks(const Subject& subject) {
    return std::any_of(subject.findings->begin(), subject.findings->end(), isMarked);
}

void drawWords(Sketch& sketch, Point row, const std::string& words, const TextSizes& sizes) {
    Text text;
    text.at = {row.x + kSwatch + 2.5, row.y};
    text.text = words;
    text.height = sizes.body;
    text.face = Face::condensed;
    text.anchorY = AnchorY::middle;
    sketch.text(text);
}

void drawMark(Sketch& sketch, Point centre, const TextSizes& sizes) {
    sketch.add(Stratum::dimensions, Circle{centre, 0.8 * sizes.body, inkPen(kObject), kPaper});
    Text text;
    text.at = centre;
    text.text = "1";
    text.height = sizes.body;
    text.face = Face::condensedBold;
    text.anchorX = AnchorX::middle;
    text.anchorY = AnchorY::middle;
    sketch.text(text);
}

}  // namespace

Rect keySize(const Subject& subject) {
    const auto rows = rowsOf(*subject.built).size() + (hasMarks(subject) ? 1U : 0U);
    return {0,
            0,
            kSwatch + 3.0 + 16.5 * subject.sizes.body,
            static_cast<double>(rows) * rowHeight(subject.sizes)};
}

void drawKey(Sketch& sketch, const Subject& subject, Point corner) {
    const double height = rowHeight(subject.sizes);
    Point at{corner.x, corner.y + 0.5 * height};
    for (const auto& row : rowsOf(*subject.built)) {
        for (auto& element : tubeSample(
                 at, {at.x + kSwatch, at.y}, 1.15 * subject.sizes.body, row.style, row.bare)) {
            sketch.add(Stratum::objects, std::move(element));
        }
        drawWords(sketch, at, row.text, subject.sizes);
        at.y += height;
    }
    if (hasMarks(subject)) {
        drawMark(sketch, {at.x + 0.5 * kSwatch, at.y}, subject.sizes);
        drawWords(sketch, at, "place of finding no. 1", subject.sizes);
    }
}

}  // namespace gw::drawing
