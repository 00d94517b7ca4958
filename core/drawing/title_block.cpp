#include "drawing/title_block.h"

#include <array>

#include "drawing/schedules.h"
#include "drawing/wrap.h"

namespace gw::drawing {
namespace {

constexpr double kAir = 3.0;  // mm between the border and the drawing

struct Cell {
    const char* caption;
    std::string value;
    double share;  ///< of the strip's width
    bool large = false;
};

std::string orDash(const std::string& text) {
    return text.empty() ? "–" : text;
}

void drawCell(Sketch& sketch, const Rect& box, const Cell& cell, const TextSizes& sizes) {
    sketch.rect(Stratum::frame, box, inkPen(kFine));
    Text caption;
    caption.at = {box.x + 1.2, box.y + 1.1 + 0.73 * sizes.body * 0.85};
    caption.text = cell.caption;
    caption.height = std::max(2.2, sizes.body * 0.85);
    caption.face = Face::condensed;
    caption.colour = kGrey;
    sketch.text(caption);
    const double room = box.width - 2.4;
    Text value;
    value.face = cell.large ? Face::bold : Face::condensedBold;
    value.height = cell.large ? sizes.large : sizes.body * 1.1;
    double y = caption.at.y + 1.25 * value.height;
    if (cell.large) {
        value.text = shortened(cell.value, room, value.height, value.face, sketch.metrics());
        value.at = {caption.at.x, y};
        sketch.text(value);
        return;
    }
    auto lines = wrapped(cell.value, room, value.height, value.face, sketch.metrics());
    for (std::size_t i = 0; i < lines.size() && i < 2; ++i, y += 1.25 * value.height) {
        const bool cut = i == 1 && lines.size() > 2;
        value.text =
            cut ? shortened(lines[i] + " …", room, value.height, value.face, sketch.metrics())
                : lines[i];
        value.at = {caption.at.x, y};
        if (!value.text.empty()) {
            sketch.text(value);
        }
    }
}

}  // namespace

double marginOf(const Rect& paper) {
    return paper.width > 500.0 ? 12.0 : 8.0;
}

double titleBlockHeight(const TextSizes& sizes) {
    return 8.3 * sizes.body;
}

Rect drawingArea(const Rect& paper, const TextSizes& sizes) {
    const double margin = marginOf(paper) + kAir;
    return {margin,
            margin,
            paper.width - 2 * margin,
            paper.height - 2 * margin - titleBlockHeight(sizes)};
}

void drawTitleBlock(Sketch& sketch,
                    const layout::Layout& layout,
                    const TitleBlock& block,
                    const Rect& paper,
                    const TextSizes& sizes) {
    const Rect border = grown(paper, -marginOf(paper));
    sketch.rect(Stratum::frame, border, inkPen(kHeavy));
    const double height = titleBlockHeight(sizes);
    const double foot = 2.2 * sizes.body;  // the sentence's line
    const Rect strip{border.x, border.bottom() - height, border.width, height};
    sketch.line(Stratum::frame, {strip.x, strip.y}, {strip.right(), strip.y}, inkPen(kHeavy));
    const std::array<Cell, 10> cells = {{
        {"Project", orDash(layout.project), 0.15},
        {"Title", orDash(layout.title), 0.25, true},
        {"Sheet", block.views, 0.09},
        {"Findings", block.findings, 0.13},
        {"Scale", block.scale, 0.10},
        {"Code edition", "NFPA 70-" + std::string(standards::editionText(layout.edition)), 0.07},
        {"Drawn by", orDash(layout.drawnBy), 0.08},
        {"Date", orDash(layout.date), 0.06},
        {"Revision", orDash(layout.revision), 0.04},
        {"Page", std::to_string(block.sheet) + " of " + std::to_string(block.of), 0.03},
    }};
    double x = strip.x;
    for (const auto& cell : cells) {
        const double width = cell.share * strip.width;
        drawCell(sketch, {x, strip.y, width, height - foot}, cell, sizes);
        x += width;
    }
    Text sentence;
    sentence.height = sizes.body;
    sentence.face = Face::condensedBold;
    sentence.anchorY = AnchorY::middle;
    sentence.at = {strip.x + 1.2, strip.bottom() - 0.5 * foot};
    sentence.text = planningAidSentence() + (layout.displayUnit == units::LengthUnit::millimetre
                                                 ? " Dimensions in millimetres."
                                                 : " Dimensions in inches.");
    sketch.text(sentence);
}

}  // namespace gw::drawing
