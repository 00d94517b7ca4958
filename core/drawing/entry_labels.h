#pragma once

#include <string>
#include <vector>

#include "drawing/sketch.h"

namespace gw::drawing {

struct EntryLabel {
    double anchor = 0.0;  ///< mm along x, from the interior's left end
    std::string head;     ///< name, trade size, raceway
    std::string leadsTo;
    bool leader = true;  ///< a line from the anchor
};

/// Labels of raceways in a row above or below a view, each as near its raceway as the others allow:
/// lying when there is room, upright when not, and only the heads when even that is too much.
class EntryLabels {
public:
    /// low, high: mm along x that the row may use. labels: any order.
    EntryLabels(std::vector<EntryLabel> labels,
                double low,
                double high,
                const TextSizes& sizes,
                const TextMetrics& metrics);

    /// Space across the row takes, leaders included; 0 without labels.
    double height() const { return labels_.empty() ? 0.0 : kLeaderBand + textHeight_; }
    /// edge: y of the row's side toward the view. x0: where x = 0 of the anchors lies. from: y
    /// where the leaders begin.
    void draw(Sketch& sketch, double x0, double edge, double from, bool above) const;

private:
    static constexpr double kLeaderBand = 4.0;
    enum class Setting { lying, upright, headsOnly };

    struct Line {
        std::string text;
        Face face = Face::condensed;
    };

    /// width: mm, the most that a label may have.
    bool trySetting(
        Setting setting, double width, double low, double high, const TextMetrics& metrics);
    std::vector<Line> linesOf(const EntryLabel& label,
                              double width,
                              const TextMetrics& metrics) const;
    void drawLabel(Sketch& sketch, std::size_t label, double x, double edge, bool above) const;

    std::vector<EntryLabel> labels_;
    TextSizes sizes_;
    Setting setting_ = Setting::headsOnly;
    std::vector<std::vector<Line>> lines_;  ///< of each label, head first
    std::vector<double> middles_;
    double textHeight_ = 0.0;
};

}  // namespace gw::drawing
