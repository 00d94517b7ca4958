#include "drawing/tags.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "drawing/gutter_view.h"

namespace gw::drawing {
namespace {

constexpr double kPlate = 0.35;  // mm of paper around a tag

// What a tag in a place would spoil. Only their order matters.
constexpr double kHidesFarther = 1.0;  // a conductor behind its own
constexpr double kHidesNearer = 4.0;   // a conductor in front, beside the tag
constexpr double kHidesBlock = 6.0;
constexpr double kNotSeenThere = 60.0;  // its own conductor is covered there
constexpr double kWorst = 50.0;         // dearer places are not used

/// A straight stretch of a conductor on the paper.
struct Leg {
    std::size_t conductor = 0;
    Point from;
    Point to;
    double nearness = 0.0;
    double width = 0.0;
    double length() const { return std::hypot(to.x - from.x, to.y - from.y); }
    Point at(double t) const {
        return {from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)};
    }
};

std::vector<Leg> legsOf(const geometry::BuiltLayout& built, const ViewFrame& frame) {
    std::vector<Leg> legs;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        for (const auto& run : runsOf(built, i, frame)) {
            for (std::size_t k = 0; k + 1 < run.points.size(); ++k) {
                legs.push_back({i, run.points[k], run.points[k + 1], run.nearness, run.width});
            }
        }
    }
    return legs;
}

bool covers(const Leg& leg, const Rect& rect) {
    return crosses(grown(rect, 0.45 * leg.width), leg.from, leg.to);
}

class TagPlacer {
public:
    TagPlacer(Sketch& sketch,
              Placer& placer,
              const geometry::BuiltLayout& built,
              const ViewFrame& frame,
              const TagOptions& options)
        : sketch_(sketch),
          placer_(placer),
          built_(built),
          frame_(frame),
          options_(options),
          legs_(legsOf(built, frame)) {}

    bool place(std::size_t conductor) {
        auto best = bestOnConductor(conductor);
        if (best && best->cost <= (options_.onlyWhereFree ? 0.0 : kWorst)) {
            put(best->text);
            return true;
        }
        return !options_.onlyWhereFree && placeWithLeader(conductor);
    }

private:
    struct Candidate {
        double cost = 0.0;
        Text text;
    };

    Text tag(std::size_t conductor, Point at) const {
        Text text;
        text.at = at;
        text.text = built_.layout.conductors[conductor].tag;
        text.height = options_.sizes.body;
        text.face = Face::condensed;
        text.anchorX = AnchorX::middle;
        text.anchorY = AnchorY::middle;
        return text;
    }

    std::vector<Leg> longestFirst(std::size_t conductor) const {
        std::vector<Leg> own;
        std::copy_if(legs_.begin(), legs_.end(), std::back_inserter(own), [&](const Leg& leg) {
            return leg.conductor == conductor;
        });
        std::stable_sort(own.begin(), own.end(), [](const Leg& a, const Leg& b) {
            return a.length() > b.length() + 1e-6;
        });
        return own;
    }

    std::optional<Candidate> bestOnConductor(std::size_t conductor) const {
        std::optional<Candidate> best;
        for (const auto& leg : longestFirst(conductor)) {
            // Tags of neighbours in a bundle step along it, so that they do not stand in one line.
            const double stagger = 0.07 * static_cast<double>(conductor % 5);
            for (const double t : {0.36, 0.52, 0.2, 0.66, 0.8, 0.1, 0.9}) {
                const auto text = along(leg, std::clamp(t + stagger, 0.05, 0.95));
                const auto cost = text ? costOf(leg, *text) : std::nullopt;
                if (cost && (!best || *cost < best->cost)) {
                    best = Candidate{*cost, *text};
                    if (*cost == 0.0) {
                        return best;
                    }
                }
            }
        }
        return best;
    }

    /// The tag on a leg, upright or lying along it; none where the leg is too short for it.
    std::optional<Text> along(const Leg& leg, double t) const {
        auto text = tag(leg.conductor, leg.at(t));
        const double dx = std::abs(leg.to.x - leg.from.x);
        const double dy = std::abs(leg.to.y - leg.from.y);
        if (dy > dx) {
            text.rotationDegrees = 90.0;
        }
        const auto box = sketch_.extentOf(text);
        const double needed = std::max(box.width, box.height) + 2.0;
        return leg.length() >= needed ? std::optional(text) : std::nullopt;
    }

    /// Nothing where another text is in the way.
    std::optional<double> costOf(const Leg& own, const Text& text) const {
        const auto plate = grown(sketch_.extentOf(text), kPlate);
        if (!placer_.isFree(plate)) {
            return std::nullopt;
        }
        const Rect middle = grown({text.at.x, text.at.y, 0.0, 0.0}, 0.2);
        std::map<std::size_t, double> costs;  // a neighbour counts once
        for (const auto& leg : legs_) {
            if (leg.conductor == own.conductor || !covers(leg, plate)) {
                continue;
            }
            const bool nearer = leg.nearness > own.nearness;
            const double cost = !nearer               ? kHidesFarther
                                : covers(leg, middle) ? kNotSeenThere
                                                      : kHidesNearer;
            costs[leg.conductor] = std::max(costs[leg.conductor], cost);
        }
        double total = blockCost(plate, own.nearness);
        for (const auto& [conductor, cost] : costs) {
            total += cost;
        }
        return total;
    }

    double blockCost(const Rect& plate, double nearness) const {
        double cost = 0.0;
        for (const auto& block : built_.blocks) {
            if (overlap(plate, blockRect(block, frame_))) {
                const double face = std::max(frame_.nearness(block.body.least),
                                             frame_.nearness(block.body.greatest));
                cost += face > nearness ? kNotSeenThere : kHidesBlock;
            }
        }
        return cost;
    }

    bool isSeen(const Leg& own, Point at) const {
        const Rect spot = grown({at.x, at.y, 0.0, 0.0}, 0.2);
        const bool covered = std::any_of(legs_.begin(), legs_.end(), [&](const Leg& leg) {
            return leg.conductor != own.conductor && leg.nearness > own.nearness &&
                   covers(leg, spot);
        });
        return !covered && blockCost(spot, own.nearness) < kNotSeenThere;
    }

    /// Beside the conductor, a thin line to a dot on it.
    bool placeWithLeader(std::size_t conductor) {
        static constexpr std::array<Point, 8> kSteps = {
            {{1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1.4}, {0, 1.4}, {1.4, 0}, {-1.4, 0}}};
        for (const double reach : {4.0, 7.0, 11.0, 16.0}) {
            for (const auto& leg : longestFirst(conductor)) {
                const auto foot = leg.at(0.5);
                if (!isSeen(leg, foot)) {
                    continue;
                }
                for (const auto& step : kSteps) {
                    const Point at{foot.x + step.x * reach, foot.y + step.y * reach};
                    if (putWithLeader(tag(conductor, at), foot)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    bool putWithLeader(const Text& text, Point foot) {
        const auto box = grown(sketch_.extentOf(text), kPlate);
        const Point start{std::clamp(foot.x, box.x, box.right()),
                          std::clamp(foot.y, box.y, box.bottom())};
        if (!placer_.isFree(box) || !placer_.isFree(start, foot)) {
            return false;
        }
        sketch_.line(Stratum::dimensions, start, foot, inkPen(kThin));
        sketch_.add(Stratum::dimensions, Circle{foot, 0.4, std::nullopt, kInk});
        placer_.takeLine(start, foot);
        put(text);
        return true;
    }

    void put(const Text& text) {
        const auto plate = grown(sketch_.extentOf(text), kPlate);
        sketch_.rect(Stratum::dimensions, plate, std::nullopt, kPaper);
        sketch_.text(text);
        placer_.take(plate);
    }

    Sketch& sketch_;
    Placer& placer_;
    const geometry::BuiltLayout& built_;
    const ViewFrame& frame_;
    const TagOptions& options_;
    std::vector<Leg> legs_;
};

}  // namespace

std::set<std::size_t> placeTags(Sketch& sketch,
                                Placer& placer,
                                const geometry::BuiltLayout& built,
                                const ViewFrame& frame,
                                const TagOptions& options) {
    TagPlacer tags(sketch, placer, built, frame, options);
    std::set<std::size_t> placed;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        if (tags.place(i)) {
            placed.insert(i);
        }
    }
    return placed;
}

}  // namespace gw::drawing
