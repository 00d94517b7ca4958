#include "drawing/title_block.h"

#include <algorithm>
#include <array>

#include "drawing/schedules.h"
#include "drawing/wrap.h"

namespace gw::drawing {
namespace {

constexpr double kAir = 3.0;       // mm between the border and the drawing
constexpr double kPad = 1.2;       // mm inside a cell
constexpr double kNarrow = 320.0;  // mm of paper on which the sentence takes two lines

struct Cell {
    const char* caption;
    std::string value;
    std::string shorter = {};  ///< where the value is too wide
};

/// One above the other, both as wide as their column.
struct Column {
    double share;  ///< of the strip's width
    Cell upper;
    Cell lower;
};

std::string orDash(const std::string& text) {
    return text.empty() ? "–" : text;
}

Text line(Point at, std::string words, double height, Face face, Colour colour = kInk) {
    Text text;
    text.at = at;
    text.text = std::move(words);
    text.height = height;
    text.face = face;
    text.colour = colour;
    return text;
}

/// Caption, and under it the value in one line.
void drawCell(Sketch& sketch,
              const Rect& box,
              const Cell& cell,
              double height,
              Face face,
              const TextSizes& sizes) {
    sketch.rect(Stratum::frame, box, inkPen(kFine));
    const double small = std::max(2.75, 0.85 * sizes.body);
    const double x = box.x + kPad;
    sketch.text(line({x, box.y + 0.8 + 0.75 * small}, cell.caption, small, Face::condensed, kGrey));
    const double room = box.width - 2 * kPad;
    const bool fits = sketch.metrics().width(cell.value, height, face) <= room;
    const auto value = shortened(fits || cell.shorter.empty() ? cell.value : cell.shorter,
                                 room,
                                 height,
                                 face,
                                 sketch.metrics());
    sketch.text(line({x, box.bottom() - 0.9 - 0.2 * height}, value, height, face));
}

/// As large as fits the cell, no smaller than body text.
double titleHeight(const Sketch& sketch,
                   const std::string& title,
                   double width,
                   double most,
                   const TextSizes& sizes) {
    const double wide = sketch.metrics().width(orDash(title), most, Face::bold);
    return std::clamp(most * (width - 2 * kPad) / wide, sizes.body, most);
}

/// What the sheet is not, and its unit, in as many lines as the paper is narrow.
std::string sentenceOf(const layout::Layout& layout) {
    return planningAidSentence() + (layout.displayUnit == units::LengthUnit::millimetre
                                        ? " Dimensions in millimetres."
                                        : " Dimensions in inches.");
}

void drawSentence(Sketch& sketch,
                  const layout::Layout& layout,
                  const Rect& box,
                  const TextSizes& sizes) {
    const auto lines = wrapped(sentenceOf(layout),
                               box.width - 2 * kPad,
                               sizes.body,
                               Face::condensedBold,
                               sketch.metrics());
    double y = box.y + 0.5 * (box.height - sizes.line() * static_cast<double>(lines.size() - 1));
    for (const auto& words : lines) {
        auto text = line({box.x + kPad, y}, words, sizes.body, Face::condensedBold);
        text.anchorY = AnchorY::middle;
        sketch.text(text);
        y += sizes.line();
    }
}

}  // namespace

double marginOf(const Rect& paper) {
    return paper.width > 500.0 ? 12.0 : 8.0;
}

double footHeight(const Rect& paper, const TextSizes& sizes) {
    return (paper.width < kNarrow ? 3.3 : 2.0) * sizes.body;
}

double titleBlockHeight(const Rect& paper, const TextSizes& sizes) {
    return 6.6 * sizes.body + footHeight(paper, sizes);
}

Rect drawingArea(const Rect& paper, const TextSizes& sizes) {
    const double margin = marginOf(paper) + kAir;
    return {margin,
            margin,
            paper.width - 2 * margin,
            paper.height - 2 * margin - titleBlockHeight(paper, sizes)};
}

void drawTitleBlock(Sketch& sketch,
                    const layout::Layout& layout,
                    const TitleBlock& block,
                    const Rect& paper,
                    const TextSizes& sizes) {
    const Rect border = grown(paper, -marginOf(paper));
    sketch.rect(Stratum::frame, border, inkPen(kHeavy));
    const double foot = footHeight(paper, sizes);
    const double height = titleBlockHeight(paper, sizes);
    const Rect strip{border.x, border.bottom() - height, border.width, height};
    sketch.line(Stratum::frame, {strip.x, strip.y}, {strip.right(), strip.y}, inkPen(kHeavy));
    const std::array<Column, 4> columns = {{
        {0.30, {"Sheet", block.views}, {"Findings", block.findings}},
        {0.21,
         {"Scale", block.scale, "as noted"},
         {"Edition", "NFPA 70-" + std::string(standards::editionText(layout.edition))}},
        {0.12, {"Drawn by", orDash(layout.drawnBy)}, {"Date", orDash(layout.date)}},
        {0.07,
         {"Revision", orDash(layout.revision)},
         {"Page", std::to_string(block.sheet) + " of " + std::to_string(block.of)}},
    }};
    const double row = 0.5 * (height - foot);
    const double value = sizes.body;
    const Rect first{strip.x, strip.y, 0.30 * strip.width, row};
    const double project = 0.85 * row;
    drawCell(sketch,
             {first.x, first.y, first.width, project},
             {"Project", orDash(layout.project)},
             value,
             Face::condensedBold,
             sizes);
    drawCell(
        sketch,
        {first.x, first.y + project, first.width, 2 * row - project},
        {"Title", orDash(layout.title)},
        titleHeight(sketch, layout.title, first.width, std::min(sizes.large, 0.55 * row), sizes),
        Face::bold,
        sizes);
    double x = first.right();
    for (const auto& column : columns) {
        const double width = column.share * strip.width;
        drawCell(sketch, {x, strip.y, width, row}, column.upper, value, Face::condensedBold, sizes);
        drawCell(sketch,
                 {x, strip.y + row, width, row},
                 column.lower,
                 value,
                 Face::condensedBold,
                 sizes);
        x += width;
    }
    drawSentence(sketch, layout, {strip.x, strip.bottom() - foot, strip.width, foot}, sizes);
}

}  // namespace gw::drawing
