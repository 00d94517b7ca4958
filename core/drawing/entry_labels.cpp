#include "drawing/entry_labels.h"

#include <algorithm>

#include "drawing/placer.h"
#include "drawing/wrap.h"

namespace gw::drawing {
namespace {

constexpr double kNarrowest = 20.0;  // mm of a lying label, in 2.5 mm text
constexpr double kWidest = 44.0;
constexpr double kGap = 2.0;  // mm between labels
constexpr std::size_t kMostLines = 5;

}  // namespace

EntryLabels::EntryLabels(std::vector<EntryLabel> labels,
                         double low,
                         double high,
                         const TextSizes& sizes,
                         const TextMetrics& metrics)
    : labels_(std::move(labels)), sizes_(sizes) {
    std::stable_sort(labels_.begin(), labels_.end(), [](const EntryLabel& a, const EntryLabel& b) {
        return a.anchor < b.anchor;
    });
    const double widest = kWidest * sizes_.body / 2.5;
    const double share = (high - low) / std::max(1.0, static_cast<double>(labels_.size()));
    if (labels_.empty() || trySetting(Setting::lying, widest, low, high, metrics) ||
        trySetting(Setting::lying, std::min(share - kGap, widest), low, high, metrics) ||
        trySetting(Setting::upright, widest, low, high, metrics) ||
        trySetting(Setting::headsOnly, widest, low, high, metrics)) {
        return;
    }
    labels_.clear();  // more raceways than a sheet can name: the table of entries has them all
}

std::vector<EntryLabels::Line> EntryLabels::linesOf(const EntryLabel& label,
                                                    double width,
                                                    const TextMetrics& metrics) const {
    std::vector<Line> lines;
    const auto add = [&](const std::string& text, Face face) {
        for (auto& line : wrapped(text, width, sizes_.body, face, metrics)) {
            lines.push_back({std::move(line), face});
        }
    };
    add(label.head, Face::condensedBold);
    if (setting_ != Setting::headsOnly && !label.leadsTo.empty()) {
        add("to " + label.leadsTo, Face::condensed);
    }
    if (lines.size() > kMostLines) {
        lines.resize(kMostLines);
        lines.back().text =
            shortened(lines.back().text + " …", width, sizes_.body, lines.back().face, metrics);
    }
    return lines;
}

bool EntryLabels::trySetting(
    Setting setting, double width, double low, double high, const TextMetrics& metrics) {
    setting_ = setting;
    const bool lying = setting == Setting::lying;
    if (lying && width < kNarrowest * sizes_.body / 2.5) {
        return false;
    }
    lines_.clear();
    textHeight_ = 0.0;
    std::vector<double> wishes;
    std::vector<double> widths;
    for (const auto& label : labels_) {
        lines_.push_back(linesOf(label, width, metrics));
        double widest = 0.0;
        for (const auto& line : lines_.back()) {
            widest = std::max(widest, metrics.width(line.text, sizes_.body, line.face));
        }
        const double stacked = sizes_.line() * static_cast<double>(lines_.back().size());
        wishes.push_back(label.anchor);
        widths.push_back(lying ? widest : stacked);
        textHeight_ = std::max(textHeight_, lying ? stacked : widest);
    }
    const auto places = spreadOut(wishes, widths, kGap, low, high);
    if (places) {
        middles_ = *places;
    }
    return places.has_value();
}

void EntryLabels::draw(Sketch& sketch, double x0, double edge, double from, bool above) const {
    const double away = above ? -1.0 : 1.0;
    for (std::size_t i = 0; i < labels_.size(); ++i) {
        const double x = x0 + middles_[i];
        const double textEdge = edge + away * (kLeaderBand - 0.8);
        const double anchor = x0 + labels_[i].anchor;
        sketch.chain(
            Stratum::dimensions, {{anchor, from}, {anchor, edge}, {x, textEdge}}, inkPen(kThin));
        drawLabel(sketch, i, x, edge + away * kLeaderBand, above);
    }
}

void EntryLabels::drawLabel(
    Sketch& sketch, std::size_t label, double x, double edge, bool above) const {
    const auto& lines = lines_[label];
    const bool lying = setting_ == Setting::lying;
    const double count = static_cast<double>(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        Text text;
        text.text = lines[i].text;
        text.height = sizes_.body;
        text.face = lines[i].face;
        const double step = sizes_.line() * static_cast<double>(i);
        if (lying) {
            const double top = above ? edge - sizes_.line() * count : edge;
            text.at = {x, top + step + sizes_.body};
            text.anchorX = AnchorX::middle;
        } else {
            text.at = {x - 0.5 * sizes_.line() * count + step + sizes_.body, edge};
            text.anchorX = above ? AnchorX::left : AnchorX::right;
            text.rotationDegrees = 90.0;
        }
        sketch.text(text);
    }
}

}  // namespace gw::drawing
