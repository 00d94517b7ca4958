#include "drawing/tubes.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

namespace gw::drawing {
namespace {

constexpr double kDeviation = 0.02;     // mm that a chord may stray from its arc
constexpr double kEdge = 0.18;          // mm of dark edge on each side
constexpr double kBareWidth = 0.8;      // bare copper as a part of the width over insulation
constexpr double kSeenEndOn = 0.02;     // mm: a run shorter than this on the paper is a disc
constexpr double kPatternWidth = 0.12;  // of the conductor's width
constexpr double kLay = 1.3;            // mm between the slanting strokes on bare copper

/// One sampled point of a conductor's centreline.
struct Sample {
    double s = 0.0;      ///< arc length, inches
    double along = 0.0;  ///< mm on the paper from the start
    double nearness = 0.0;
    Point at;
};

bool isBareAt(const geometry::BuiltConductor& conductor, double s) {
    return std::any_of(conductor.bare.begin(), conductor.bare.end(), [&](const auto& stretch) {
        return s > stretch.first && s < stretch.second;
    });
}

/// Never insulated: its diameter is the copper's.
bool isBare(const geometry::BuiltLayout& built, std::size_t conductor) {
    return built.layout.conductors[conductor].insulation == standards::Insulation::bare;
}

double angleStep(double radiusOnPaper) {
    const double ratio =
        std::clamp(1.0 - kDeviation / std::max(radiusOnPaper, kDeviation), 0.0, 1.0);
    return std::clamp(2.0 * std::acos(ratio), 0.02, std::numbers::pi / 8);
}

/// Arc lengths to sample at: ends of pieces, steps on arcs, steps on legs that come nearer, and the
/// ends of bare stretches.
std::vector<double> samplePlaces(const geometry::BuiltConductor& conductor,
                                 const ViewFrame& frame) {
    const auto& path = conductor.built.path;
    std::vector<double> places;
    for (std::size_t i = 0; i < path.pieces().size(); ++i) {
        const auto& piece = path.pieces()[i];
        const double rise =
            std::abs(frame.nearness(piece.pointAt(piece.length)) - frame.nearness(piece.origin));
        const double steps = piece.isArc() ? piece.angle() / angleStep(frame.mm(piece.radius))
                                           : rise / (0.5 * conductor.radius());
        const int count = std::clamp(static_cast<int>(std::ceil(steps)), 1, 256);
        for (int k = 0; k <= count; ++k) {
            places.push_back(path.startOf(i) + piece.length * k / count);
        }
    }
    const double length = path.length().in();
    for (const auto& [from, to] : conductor.bare) {
        places.push_back(std::clamp(from, 0.0, length));
        places.push_back(std::clamp(to, 0.0, length));
    }
    std::sort(places.begin(), places.end());
    places.erase(
        std::unique(places.begin(), places.end(), [](double a, double b) { return b - a < 1e-7; }),
        places.end());
    return places;
}

std::vector<Sample> samplesOf(const geometry::BuiltConductor& conductor, const ViewFrame& frame) {
    std::vector<Sample> samples;
    if (conductor.built.path.empty()) {
        return samples;
    }
    for (const double s : samplePlaces(conductor, frame)) {
        const auto point = conductor.built.path.pointAt(s);
        Sample sample{s, 0.0, frame.nearness(point), frame.at(point)};
        if (!samples.empty()) {
            const auto& last = samples.back();
            sample.along =
                last.along + std::hypot(sample.at.x - last.at.x, sample.at.y - last.at.y);
        }
        samples.push_back(sample);
    }
    return samples;
}

/// First and last sample of one run.
struct Stretch {
    std::size_t first = 0;
    std::size_t last = 0;
    bool bare = false;
};

/// wholly: bare from end to end. Longest stretches of one kind whose nearness changes by no more
/// than the conductor's radius.
std::vector<Stretch> stretchesOf(const geometry::BuiltConductor& conductor,
                                 std::span<const Sample> samples,
                                 bool wholly) {
    std::vector<Stretch> stretches;
    double least = 0.0;
    double greatest = 0.0;
    for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
        const auto [low, high] = std::minmax(samples[i].nearness, samples[i + 1].nearness);
        const bool bare = wholly || isBareAt(conductor, 0.5 * (samples[i].s + samples[i + 1].s));
        const bool goesOn = !stretches.empty() && stretches.back().bare == bare &&
                            std::max(greatest, high) - std::min(least, low) <= conductor.radius();
        if (goesOn) {
            stretches.back().last = i + 1;
            least = std::min(least, low);
            greatest = std::max(greatest, high);
        } else {
            stretches.push_back({i, i + 1, bare});
            least = low;
            greatest = high;
        }
    }
    return stretches;
}

std::vector<Point> pointsOf(std::span<const Sample> samples, std::size_t first, std::size_t last) {
    std::vector<Point> points;
    for (std::size_t i = first; i <= last; ++i) {
        points.push_back(samples[i].at);
    }
    return points;
}

double nearnessOf(std::span<const Sample> samples, const Stretch& stretch) {
    double least = samples[stretch.first].nearness;
    double greatest = least;
    for (std::size_t i = stretch.first; i <= stretch.last; ++i) {
        least = std::min(least, samples[i].nearness);
        greatest = std::max(greatest, samples[i].nearness);
    }
    return 0.5 * (least + greatest);
}

Pen stroke(double width, Colour colour, bool round = false) {
    return {std::max(width, 0.05), colour, Dash::solid, round};
}

Colour fillOf(const PhaseStyle& style, bool bare) {
    return bare ? kCopperFill : style.fill;
}

Polyline chainOf(std::vector<Point> points, Pen pen) {
    return {std::move(points), false, pen, std::nullopt};
}

/// Slanting strokes across a chain of points, as the lay of strands shows.
void addLay(std::vector<Element>& elements, std::span<const Point> points, double width) {
    double next = 0.5 * kLay;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const double dx = points[i + 1].x - points[i].x;
        const double dy = points[i + 1].y - points[i].y;
        const double length = std::hypot(dx, dy);
        for (; next < length; next += kLay) {
            const double t = next / length;
            const Point at{points[i].x + t * dx, points[i].y + t * dy};
            const double half = 0.5 * (width - 2 * kEdge);
            const Point along{dx / length * half * 0.6, dy / length * half * 0.6};
            const Point across{-dy / length * half, dx / length * half};
            elements.push_back(chainOf({{at.x - along.x - across.x, at.y - along.y - across.y},
                                        {at.x + along.x + across.x, at.y + along.y + across.y}},
                                       stroke(0.13, kCopperLine)));
        }
        next -= length;
    }
}

/// The pattern of the phase along the middle, carried on from run to run.
Polyline patternOf(std::vector<Point> points, double along, double width, const PhaseStyle& style) {
    Pen pen = stroke(std::clamp(kPatternWidth * width, 0.16, 0.5), style.line);
    pen.dash = style.dash;
    pen.dashOffset = along;
    return chainOf(std::move(points), pen);
}

std::vector<Element> discOf(Point at, double width, const PhaseStyle& style, bool bare) {
    return {Circle{at, 0.5 * width - 0.5 * kEdge, stroke(kEdge, kInk), fillOf(style, bare)}};
}

/// Paints one run: edge, fill, pattern. The fill reaches over into the neighbours of its own kind,
/// so that no edge is left across the conductor where two runs meet.
class RunPainter {
public:
    RunPainter(std::span<const Sample> samples, double width, PhaseStyle style)
        : samples_(samples), width_(width), style_(style) {}

    std::vector<Element> paint(const Stretch& stretch, bool joinsBefore, bool joinsAfter) const {
        const double width = stretch.bare ? kBareWidth * width_ : width_;
        const auto& first = samples_[stretch.first];
        const auto& last = samples_[stretch.last];
        if (last.along - first.along < kSeenEndOn) {
            return discOf(last.at, width, style_, stretch.bare);
        }
        std::vector<Element> elements;
        const bool round = isForeshortened(stretch);
        elements.push_back(
            chainOf(pointsOf(samples_, stretch.first, stretch.last), stroke(width, kInk, round)));
        const double reach = 0.6 * width;
        const double from = joinsBefore ? first.along - reach : first.along + (round ? 0.0 : kEdge);
        const double to = joinsAfter ? last.along + reach : last.along - (round ? 0.0 : kEdge);
        if (to - from > 1e-6) {
            const auto inner = between(from, to);
            elements.push_back(
                chainOf(inner, stroke(width - 2 * kEdge, fillOf(style_, stretch.bare), round)));
            if (stretch.bare) {
                addLay(elements, pointsOf(samples_, stretch.first, stretch.last), width);
            } else {
                elements.push_back(patternOf(inner, std::max(from, 0.0), width, style_));
            }
        }
        return elements;
    }

private:
    /// Shorter on the paper than in space by a tenth or more: its ends are seen as round.
    bool isForeshortened(const Stretch& stretch) const {
        const auto& first = samples_[stretch.first];
        const auto& last = samples_[stretch.last];
        return std::abs(last.nearness - first.nearness) > 0.4 * (last.s - first.s);
    }

    /// The chain of points between two places along the paper.
    std::vector<Point> between(double from, double to) const {
        const double low = std::max(from, 0.0);
        const double high = std::min(to, samples_.back().along);
        std::vector<Point> points{pointAt(low)};
        for (const auto& sample : samples_) {
            if (sample.along > low + 1e-9 && sample.along < high - 1e-9) {
                points.push_back(sample.at);
            }
        }
        points.push_back(pointAt(high));
        return points;
    }

    Point pointAt(double along) const {
        const auto next = std::lower_bound(
            samples_.begin(), samples_.end(), along, [](const Sample& sample, double a) {
                return sample.along < a;
            });
        if (next == samples_.begin()) {
            return samples_.front().at;
        }
        if (next == samples_.end()) {
            return samples_.back().at;
        }
        const auto& before = *(next - 1);
        const double t = (along - before.along) / (next->along - before.along);
        return {before.at.x + t * (next->at.x - before.at.x),
                before.at.y + t * (next->at.y - before.at.y)};
    }

    std::span<const Sample> samples_;
    double width_;
    PhaseStyle style_;
};

}  // namespace

std::vector<TubeRun> runsOf(const geometry::BuiltLayout& built,
                            std::size_t conductor,
                            const ViewFrame& frame) {
    const auto& tube = built.conductors[conductor];
    const auto samples = samplesOf(tube, frame);
    std::vector<TubeRun> runs;
    for (const auto& stretch : stretchesOf(tube, samples, isBare(built, conductor))) {
        runs.push_back({conductor,
                        pointsOf(samples, stretch.first, stretch.last),
                        nearnessOf(samples, stretch),
                        frame.mm(tube.diameter.in()),
                        samples[stretch.first].s,
                        samples[stretch.last].s,
                        stretch.bare});
    }
    return runs;
}

std::vector<SceneItem> tubeItems(const geometry::BuiltLayout& built,
                                 std::size_t conductor,
                                 const ViewFrame& frame) {
    const auto& tube = built.conductors[conductor];
    const auto samples = samplesOf(tube, frame);
    const bool bare = isBare(built, conductor);
    const auto stretches = stretchesOf(tube, samples, bare);
    const RunPainter painter(samples,
                             frame.mm(tube.diameter.in()) / (bare ? kBareWidth : 1.0),
                             styleOf(built.layout.conductors[conductor], built.layout));
    std::vector<SceneItem> items;
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        const bool joinsBefore = i > 0 && stretches[i - 1].bare == stretches[i].bare;
        const bool joinsAfter =
            i + 1 < stretches.size() && stretches[i + 1].bare == stretches[i].bare;
        items.push_back({nearnessOf(samples, stretches[i]),
                         painter.paint(stretches[i], joinsBefore, joinsAfter)});
    }
    return items;
}

std::vector<Element> tubeSample(
    Point from, Point to, double width, const PhaseStyle& style, bool bare) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const std::vector<Sample> samples{{0.0, 0.0, 0.0, from}, {length, length, 0.0, to}};
    return RunPainter(samples, bare ? width / kBareWidth : width, style)
        .paint({0, 1, bare}, false, false);
}

}  // namespace gw::drawing
