#include "drawing/end_labels.h"

#include <algorithm>
#include <cmath>

#include "drawing/gutter_view.h"
#include "drawing/placer.h"
#include "drawing/wrap.h"

namespace gw::drawing {
namespace {

constexpr double kLine = 3.0;    // mm from the raceway's end to the dimension line
constexpr double kLeader = 3.0;  // mm from the number to the label
constexpr double kMoved = 0.5;   // mm a label stands off its number's line before a leader is drawn
constexpr double kGap = 1.0;     // mm between labels

}  // namespace

EndLabels::EndLabels(const Subject& subject, layout::Wall wall) : subject_(&subject), wall_(wall) {}

double EndLabels::numberRoom() const {
    return 4.1 + 4.6 * subject_->sizes.body;
}
double EndLabels::labelRoom() const {
    return 12.5 * subject_->sizes.body;
}

double EndLabels::depth() const {
    return subject_->hasEntries(wall_)
               ? kWall + kStub + kLine + numberRoom() + kLeader + labelRoom()
               : 0.0;
}

/// detail: 2 everything, 1 the head, 0 the name.
std::vector<EndLabels::Label> EndLabels::labels(const Sketch& sketch,
                                                const ViewFrame& frame,
                                                int detail) const {
    std::vector<Label> all;
    const auto& entries = subject_->layout().entries;
    const double height = subject_->sizes.body;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (entries[i].wall != wall_) {
            continue;
        }
        Label label{frame.at(subject_->built->entries[i].centre).y, {}};
        const auto add = [&](const std::string& text, Face face) {
            for (auto& line : wrapped(text, labelRoom(), height, face, sketch.metrics())) {
                label.lines.emplace_back(std::move(line), face);
            }
        };
        add(detail > 0 ? entryHead(entries[i]) : entryName(entries[i]), Face::condensedBold);
        if (detail > 1 && !entries[i].leadsTo.empty()) {
            add("to " + entries[i].leadsTo, Face::condensed);
        }
        all.push_back(std::move(label));
    }
    std::stable_sort(
        all.begin(), all.end(), [](const Label& a, const Label& b) { return a.y < b.y; });
    return all;
}

void EndLabels::draw(Sketch& sketch, const ViewFrame& frame) const {
    if (!subject_->hasEntries(wall_)) {
        return;
    }
    const bool left = wall_ == layout::Wall::left;
    const double away = left ? -1.0 : 1.0;
    const auto interior = interiorOf(frame, subject_->inside());
    const double edge = left ? interior.x : interior.right();
    auto running = runningOf(
        entryPlaces(*subject_, {wall_}, 1), *subject_, interior.bottom(), frame.mmPerInch, -1.0);
    running.feature = edge + away * kWall;
    running.line = edge + away * (kWall + kStub + kLine);
    runningAlongY(sketch, running, subject_->sizes);
    const double x = running.line + away * (numberRoom() + kLeader);
    for (const int detail : {2, 1, 0}) {
        const auto all = labels(sketch, frame, detail);
        std::vector<double> wishes;
        std::vector<double> heights;
        for (const auto& label : all) {
            wishes.push_back(label.y);
            heights.push_back(subject_->sizes.line() * static_cast<double>(label.lines.size()));
        }
        const auto places =
            spreadOut(wishes, heights, kGap, interior.y - 5.0, interior.bottom() + 5.0);
        for (std::size_t i = 0; places && i < all.size(); ++i) {
            if (std::abs((*places)[i] - all[i].y) > kMoved) {
                sketch.line(Stratum::dimensions,
                            {x - away * (kLeader - 0.5), all[i].y},
                            {x - away * 0.6, (*places)[i]},
                            inkPen(kThin));
            }
            drawLabel(sketch, all[i], x, (*places)[i]);
        }
        if (places) {
            return;
        }
    }
}

void EndLabels::drawLabel(Sketch& sketch, const Label& label, double x, double y) const {
    const double line = subject_->sizes.line();
    double top = y - 0.5 * line * static_cast<double>(label.lines.size());
    for (const auto& [words, face] : label.lines) {
        Text text;
        text.at = {x, top + 0.5 * line};
        text.text = words;
        text.height = subject_->sizes.body;
        text.face = face;
        text.anchorX = wall_ == layout::Wall::left ? AnchorX::right : AnchorX::left;
        text.anchorY = AnchorY::middle;
        sketch.plate(text);  // on a low gutter the lines of its height run there
        top += line;
    }
}

}  // namespace gw::drawing
