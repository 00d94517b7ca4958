#include "drawing/label_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/names.h"
#include "drawing/sketch.h"
#include "drawing/wrap.h"
#include "units/length.h"

namespace gw::drawing {

using geometry::BuiltLayout;

namespace {

constexpr double kMm = 25.4;
constexpr double kEdge = 12.7;   // mm of plain paper that printers may leave blank
constexpr double kInset = 1.8;   // mm between a label's edge and its text
constexpr double kLarge = 6.5;   // mm: the text that is looked for
constexpr double kSmall = 2.75;  // mm: capitals of 2 mm, the least on any sheet
constexpr double kSlack = 1e-6;  // inches

// ---- the grid as typed ----------------------------------------------------------------------

tl::unexpected<Error> noGrid(std::string_view found) {
    return fail({ErrorCode::syntax,
                 "no such sheet of labels",
                 "",
                 "",
                 "columns x rows, width x height, left x top, and from label to label, as \"3 x "
                 "10, 2 5/8 x 1, 3/16 x 1/2, 2 3/4 x 1\"",
                 std::string(found)});
}

std::vector<std::string_view> parted(std::string_view text, char by) {
    std::vector<std::string_view> parts;
    while (true) {
        const auto at = text.find(by);
        parts.push_back(text.substr(0, at));
        if (at == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(at + 1);
    }
}

/// "2 5/8 x 1" as two lengths in inches.
std::optional<std::array<double, 2>> pairOf(std::string_view text) {
    const auto parts = parted(text, 'x');
    if (parts.size() != 2) {
        return std::nullopt;
    }
    const auto first = units::parseLength(parts[0]);
    const auto second = units::parseLength(parts[1]);
    if (!first || !second) {
        return std::nullopt;
    }
    return {{first->in(), second->in()}};
}

bool whole(double value, double greatest) {
    return value >= 1.0 && value <= greatest && value == std::floor(value);
}

/// Labels of some size that do not overlap one another.
bool sensible(const LabelGrid& grid) {
    constexpr double kLeast = 0.3;  // inches: lower holds no line of text
    return grid.width >= kLeast && grid.height >= kLeast && grid.left >= 0.0 && grid.top >= 0.0 &&
           grid.pitchAcross >= grid.width - kSlack && grid.pitchDown >= grid.height - kSlack;
}

double across(const LabelGrid& grid) {
    return grid.left + (grid.columns - 1) * grid.pitchAcross + grid.width;
}
double down(const LabelGrid& grid) {
    return grid.top + (grid.rows - 1) * grid.pitchDown + grid.height;
}

// ---- paper held upright ---------------------------------------------------------------------

Rect upright(Paper paper) {
    const Rect wide = paperSize(paper);
    return {0.0, 0.0, wide.height, wide.width};
}

/// As many labels of 2 by 3/4 in as fit on plain paper, side by side.
LabelGrid plainGrid(Paper paper) {
    constexpr double kWidth = 2.0;
    constexpr double kHeight = 0.75;
    const Rect sheet = upright(paper);
    const int columns = static_cast<int>(std::floor((sheet.width - 2.0 * kEdge) / (kWidth * kMm)));
    const int rows = static_cast<int>(std::floor((sheet.height - 2.0 * kEdge) / (kHeight * kMm)));
    return {columns, rows, kWidth, kHeight, kEdge / kMm, kEdge / kMm, kWidth, kHeight};
}

Result<void> fits(const LabelGrid& grid, Paper paper) {
    const Rect sheet = upright(paper);
    if (across(grid) * kMm <= sheet.width + kSlack && down(grid) * kMm <= sheet.height + kSlack) {
        return {};
    }
    const auto size = [](double width, double height) {
        return units::formatDecimal(width, 2) + " x " + units::formatDecimal(height, 2) + " in";
    };
    return fail({ErrorCode::outOfRange,
                 "the labels do not fit on the paper",
                 "",
                 "",
                 "at most " + size(sheet.width / kMm, sheet.height / kMm) + ", " +
                     std::string(paperText(paper)) + " held upright",
                 size(across(grid), down(grid))});
}

// ---- what is written ------------------------------------------------------------------------

struct Label {
    std::string large;
    std::vector<std::string> small;
};

std::string circuitText(const layout::Circuit& circuit) {
    return circuit.name.empty() ? circuit.id.text() : circuit.name;
}

/// One for each end of each conductor, one for each block.
std::vector<Label> labelsOf(const BuiltLayout& built) {
    std::vector<Label> labels;
    for (const auto& conductor : built.layout.conductors) {
        const auto& circuit = built.layout.circuits[*built.circuitIndex(conductor.circuit)];
        Label label{
            tagOf(conductor),
            {circuitText(circuit) + ", phase " + std::string(layout::phaseText(conductor.phase))}};
        if (circuit.supplies) {
            label.small.push_back(*circuit.supplies);
        }
        labels.push_back(label);
        labels.push_back(std::move(label));
    }
    for (const auto& block : built.layout.blocks) {
        Label label{blockName(block), {}};
        if (block.phase) {
            label.small.push_back("phase " + std::string(layout::phaseText(*block.phase)));
        }
        labels.push_back(std::move(label));
    }
    return labels;
}

// ---- drawing --------------------------------------------------------------------------------

Text lineAt(Point at, std::string words, double height, Face face) {
    Text text;
    text.at = at;
    text.text = std::move(words);
    text.height = height;
    text.face = face;
    text.anchorX = AnchorX::middle;
    text.anchorY = AnchorY::top;
    return text;
}

/// The large text as large as the label is wide and high, the small ones below it as far as there
/// is room.
void drawLabel(Sketch& sketch, const Label& label, const Rect& place) {
    const double width = place.width - 2.0 * kInset;
    const double room = place.height - 2.0 * kInset;
    const double small = kSmall * 1.25;
    const auto lines = static_cast<std::size_t>(
        std::clamp((room - kSmall * 1.3) / small, 0.0, static_cast<double>(label.small.size())));
    const double left = room - small * static_cast<double>(lines);
    const double asWide = sketch.metrics().width(label.large, 1.0, Face::bold);
    const double large =
        std::clamp(std::min(left / 1.25, width / std::max(asWide, 1e-6)), kSmall, kLarge);
    const double height = large * 1.25 + small * static_cast<double>(lines);
    const double middle = place.x + place.width / 2.0;
    double y = place.y + (place.height - height) / 2.0;
    const auto fitted = [&](const std::string& words, double size, Face face) {
        return shortened(words, width, size, face, sketch.metrics());
    };
    sketch.text(lineAt(
        {middle, y + large * 0.2}, fitted(label.large, large, Face::bold), large, Face::bold));
    y += large * 1.25;
    for (std::size_t i = 0; i < lines; ++i) {
        sketch.text(lineAt({middle, y + small * 0.15},
                           fitted(label.small[i], kSmall, Face::condensed),
                           kSmall,
                           Face::condensed));
        y += small;
    }
}

Rect placeOf(const LabelGrid& grid, int at) {
    const int column = at % grid.columns;
    const int row = at / grid.columns;
    return {(grid.left + column * grid.pitchAcross) * kMm,
            (grid.top + row * grid.pitchDown) * kMm,
            grid.width * kMm,
            grid.height * kMm};
}

}  // namespace

Result<LabelGrid> parseLabelGrid(std::string_view text) {
    const auto parts = parted(text, ',');
    if (parts.size() < 3 || parts.size() > 4) {
        return noGrid(text);
    }
    std::vector<std::array<double, 2>> pairs;
    for (const auto part : parts) {
        const auto pair = pairOf(part);
        if (!pair) {
            return noGrid(text);
        }
        pairs.push_back(*pair);
    }
    if (!whole(pairs[0][0], 40.0) || !whole(pairs[0][1], 100.0)) {
        return noGrid(text);
    }
    const auto& pitch = pairs.size() == 4 ? pairs[3] : pairs[1];
    const LabelGrid grid{static_cast<int>(pairs[0][0]),
                         static_cast<int>(pairs[0][1]),
                         pairs[1][0],
                         pairs[1][1],
                         pairs[2][0],
                         pairs[2][1],
                         pitch[0],
                         pitch[1]};
    if (!sensible(grid)) {
        return fail({ErrorCode::outOfRange,
                     "labels that overlap, or that hold no text",
                     "",
                     "",
                     "labels of 0.3 x 0.3 in or more, and from label to label at least a label",
                     std::string(text)});
    }
    return grid;
}

Result<std::vector<Drawing>> labelSheet(const BuiltLayout& built,
                                        const LabelOptions& options,
                                        const TextMetrics& metrics) {
    const LabelGrid grid = options.grid.value_or(plainGrid(options.paper));
    if (const auto fit = fits(grid, options.paper); !fit) {
        return fail(fit.error());
    }
    const int onPage = grid.columns * grid.rows;
    std::vector<Sketch> pages;
    int at = options.skip;
    for (const Label& label : labelsOf(built)) {
        while (at / onPage >= static_cast<int>(pages.size())) {
            pages.emplace_back(metrics);
        }
        const Rect place = placeOf(grid, at % onPage);
        if (!options.grid) {
            pages.back().rect(Stratum::frame, place, inkPen(kThin, Dash::dotted));
        }
        drawLabel(pages.back(), label, place);
        ++at;
    }
    std::vector<Drawing> drawings;
    for (Sketch& page : pages) {
        drawings.push_back(
            std::move(page).finish(upright(options.paper), "Labels: " + built.layout.title));
    }
    return drawings;
}

}  // namespace gw::drawing
