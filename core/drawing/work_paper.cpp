#include "drawing/work_paper.h"

#include "drawing/names.h"
#include "drawing/schedules.h"
#include "drawing/wrap.h"

namespace gw::drawing {
namespace {

constexpr double kMargin = 12.7;  // mm: more than printers leave blank
constexpr double kHead = 15.0;    // mm
constexpr double kFoot = 12.0;    // mm

Text line(Point at, std::string words, double height, Face face, AnchorX anchor) {
    Text text;
    text.at = at;
    text.text = std::move(words);
    text.height = height;
    text.face = face;
    text.anchorX = anchor;
    text.anchorY = AnchorY::top;
    return text;
}

void drawHead(Sketch& sketch,
              const Rect& area,
              const std::string& title,
              const std::string& breaches,
              const std::string& number) {
    const auto sizes = workSizes();
    const double top = area.y - kHead;
    const double numberWidth = sketch.metrics().width(number, sizes.body, Face::regular) + 4.0;
    sketch.text(
        line({area.x, top},
             shortened(title, area.width - numberWidth, sizes.title, Face::bold, sketch.metrics()),
             sizes.title,
             Face::bold,
             AnchorX::left));
    sketch.text(line({area.right(), top}, number, sizes.body, Face::regular, AnchorX::right));
    sketch.text(
        line({area.x, top + sizes.title * 1.5}, breaches, sizes.body, Face::bold, AnchorX::left));
    const double y = area.y - 3.0;
    sketch.line(Stratum::frame, {area.x, y}, {area.right(), y}, inkPen(kObject));
}

void drawFoot(Sketch& sketch, const Rect& area, const std::string& caution) {
    const auto sizes = workSizes();
    double y = area.bottom() + 3.0;
    for (const auto& sentence : {caution, planningAidSentence()}) {
        for (const auto& words :
             wrapped(sentence, area.width, sizes.body, Face::regular, sketch.metrics())) {
            sketch.text(line({area.x, y}, words, sizes.body, Face::regular, AnchorX::left));
            y += sizes.line();
        }
    }
}

}  // namespace

Rect workArea(Paper paper) {
    const Rect sheet = paperSize(paper);
    return {kMargin,
            kMargin + kHead,
            sheet.width - 2.0 * kMargin,
            sheet.height - 2.0 * kMargin - kHead - kFoot};
}

TextSizes workSizes() {
    TextSizes sizes;
    sizes.body = 3.0;
    sizes.heading = 3.6;
    sizes.title = 4.6;
    return sizes;
}

std::string breachSentence(const std::vector<checks::Finding>& findings) {
    const auto counts = checks::tally(findings);
    std::string text = counts.breach == 0 ? std::string("No breach found by the program's checks")
                                          : counted(counts.breach, "breach", "breaches") +
                                                " found: mend the layout before anything is cut";
    if (counts.cannotTell > 0) {
        text += "; " + std::to_string(counts.cannotTell) + " could not be told";
    }
    return text + ".";
}

std::vector<Drawing> finished(std::vector<Sketch> pages,
                              const WorkPaper& paper,
                              const layout::Layout& layout,
                              const std::vector<checks::Finding>& findings) {
    const Rect area = workArea(paper.paper);
    const std::string title = paper.kind + ": " + layout.title;
    std::vector<Drawing> drawings;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        drawHead(pages[i],
                 area,
                 title,
                 breachSentence(findings),
                 "page " + std::to_string(i + 1) + " of " + std::to_string(pages.size()));
        drawFoot(pages[i], area, paper.caution);
        drawings.push_back(std::move(pages[i]).finish(paperSize(paper.paper), title));
    }
    return drawings;
}

}  // namespace gw::drawing
