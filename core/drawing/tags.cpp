#include "drawing/tags.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "drawing/gutter_view.h"
#include "drawing/legs.h"
#include "drawing/names.h"

namespace gw::drawing {
namespace {

constexpr double kPlate = 0.3;     // mm of paper around a tag
constexpr double kStep = 2.0;      // mm between the places tried along a leg
constexpr double kShortest = 1.5;  // mm of a leg that a leader may start from
constexpr double kFootStep = 5.0;  // mm between the places a leader may start from

// What a tag in a place would spoil. Only their order and rough ratio matter.
constexpr double kHidesFarther = 2.0;   // a conductor behind its own
constexpr double kHidesNearer = 5.0;    // a conductor in front, beside the tag
constexpr double kNotSeenThere = 60.0;  // its own conductor is covered there
constexpr double kOffMiddle = 0.6;      // at the end of a leg instead of its middle
constexpr double kLeader = 2.5;         // a leader at all
constexpr double kLeaderMm = 0.12;      // each millimetre of it
constexpr double kLeaderOver = 0.4;     // each conductor it runs over
constexpr double kOverConductor = 6.0;  // each conductor under a tag that has a leader
constexpr double kWorst = 50.0;         // dearer places are not used

/// A place for a tag, and what it costs. With a leader where it does not stand on its conductor.
struct Candidate {
    double cost = 0.0;
    Text text;
    std::optional<Point> foot;  ///< of the leader
};

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
        best_.reset();
        const auto own = legsOfConductor(conductor);
        for (const auto& leg : own) {
            tryAlong(leg);
        }
        if (!options_.onlyWhereFree && (!best_ || best_->cost > kLeader)) {
            for (const auto& leg : own) {
                tryLeaders(leg);
            }
        }
        const bool good = best_ && best_->cost <= (options_.onlyWhereFree ? 1.0 : kWorst);
        if (good) {
            put(*best_, conductor);
        }
        return good;
    }

    /// The most that a tag could have: those with least go first.
    double longestLeg(std::size_t conductor) const {
        double longest = 0.0;
        for (const auto& leg : legs_) {
            longest = leg.conductor == conductor ? std::max(longest, leg.length()) : longest;
        }
        return longest;
    }

private:
    Text tag(std::size_t conductor, Point at) const {
        Text text;
        text.at = at;
        text.text = tagOf(built_.layout.conductors[conductor]);
        text.height = options_.sizes.body;
        text.face = Face::condensed;
        text.anchorX = AnchorX::middle;
        text.anchorY = AnchorY::middle;
        return text;
    }

    std::vector<Leg> legsOfConductor(std::size_t conductor) const {
        std::vector<Leg> own;
        std::copy_if(legs_.begin(), legs_.end(), std::back_inserter(own), [&](const Leg& leg) {
            return leg.conductor == conductor;
        });
        return own;
    }

    void consider(Candidate candidate) {
        if (!best_ || candidate.cost < best_->cost - 1e-9) {
            best_ = std::move(candidate);
        }
    }

    /// Upright on upright legs, lying on the others; nowhere on a leg too short for it.
    void tryAlong(const Leg& leg) {
        auto text = tag(leg.conductor, leg.from);
        const bool upright = std::abs(leg.to.y - leg.from.y) > std::abs(leg.to.x - leg.from.x);
        text.rotationDegrees = upright ? 90.0 : 0.0;
        const auto box = sketch_.extentOf(text);
        const double needed = std::max(box.width, box.height) + 2.0;
        const double spare = leg.length() - needed;
        if (spare < 0.0) {
            return;
        }
        const int steps = std::max(1, static_cast<int>(std::ceil(spare / kStep)));
        for (int i = 0; i <= steps; ++i) {
            const double place = 0.5 * needed + spare * i / steps;
            text.at = leg.at(place / leg.length());
            if (const auto cost = costOf(leg, text)) {
                const double off = std::abs(2.0 * place / leg.length() - 1.0);
                consider({*cost + kOffMiddle * off, text, std::nullopt});
            }
        }
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
        double total = isBehindBlock(text.at, own.nearness) ? kNotSeenThere : 0.0;
        for (const auto& [conductor, cost] : costs) {
            total += cost;
        }
        return total;
    }

    bool isBehindBlock(Point at, double nearness) const {
        const Rect spot{at.x, at.y, 0.0, 0.0};
        return std::any_of(built_.blocks.begin(), built_.blocks.end(), [&](const auto& block) {
            const double face =
                std::max(frame_.nearness(block.body.least), frame_.nearness(block.body.greatest));
            return face > nearness && overlap(grown(spot, 0.2), blockRect(block, frame_));
        });
    }

    bool isSeen(const Leg& own, Point at) const {
        const Rect spot = grown({at.x, at.y, 0.0, 0.0}, 0.2);
        return !isBehindBlock(at, own.nearness) &&
               std::none_of(legs_.begin(), legs_.end(), [&](const Leg& leg) {
                   return leg.conductor != own.conductor && leg.nearness > own.nearness &&
                          covers(leg, spot);
               });
    }

    /// Beside the conductor, a thin line to a dot on it.
    void tryLeaders(const Leg& leg) {
        if (leg.length() < kShortest) {
            return;
        }
        const int steps = std::max(1, static_cast<int>(leg.length() / kFootStep));
        for (int i = 0; i < steps; ++i) {
            const auto foot = leg.at((i + 0.5) / steps);
            if (!isSeen(leg, foot)) {
                continue;
            }
            for (const double reach : {4.0, 6.0, 9.0, 13.0, 18.0, 24.0}) {
                if (!best_ || best_->cost > kLeader + kLeaderMm * reach) {
                    tryLeadersFrom(leg, foot, reach);
                }
            }
        }
    }

    void tryLeadersFrom(const Leg& leg, Point foot, double reach) {
        static constexpr std::array<Point, 12> kSteps = {{{0.71, -0.71},
                                                          {-0.71, -0.71},
                                                          {0.71, 0.71},
                                                          {-0.71, 0.71},
                                                          {0.4, -0.92},
                                                          {-0.4, -0.92},
                                                          {0.4, 0.92},
                                                          {-0.4, 0.92},
                                                          {0.92, -0.4},
                                                          {-0.92, -0.4},
                                                          {0.92, 0.4},
                                                          {-0.92, 0.4}}};
        for (const auto& step : kSteps) {
            const auto text =
                tag(leg.conductor, {foot.x + step.x * reach, foot.y + step.y * reach});
            const auto box = grown(sketch_.extentOf(text), kPlate);
            const auto start = nearestOn(box, foot);
            if (placer_.isFree(box) && placer_.isFree(start, foot, kLeaderDot)) {
                consider({leaderCost(box, start, foot), text, foot});
            }
        }
    }

    static Point nearestOn(const Rect& box, Point foot) {
        return {std::clamp(foot.x, box.x, box.right()), std::clamp(foot.y, box.y, box.bottom())};
    }

    double leaderCost(const Rect& box, Point start, Point foot) const {
        return kLeader + kLeaderMm * std::hypot(start.x - foot.x, start.y - foot.y) +
               kOverConductor * static_cast<double>(conductorsUnder(legs_, box)) +
               kLeaderOver * static_cast<double>(conductorsCrossed(legs_, start, foot));
    }

    /// On a wide conductor the tag stands on the tint; else the paper shows around it.
    void put(const Candidate& candidate, std::size_t conductor) {
        const auto& text = candidate.text;
        const auto plate = grown(sketch_.extentOf(text), kPlate);
        Colour colour = kPaper;
        if (candidate.foot) {
            const auto start = nearestOn(plate, *candidate.foot);
            sketch_.line(Stratum::dimensions, start, *candidate.foot, inkPen(kThin));
            sketch_.add(Stratum::dimensions,
                        Circle{*candidate.foot, kLeaderDot, std::nullopt, kInk});
            placer_.takeLeader(start, *candidate.foot, kLeaderDot);
        } else if (std::min(plate.width, plate.height) <
                   frame_.mm(built_.conductors[conductor].diameter.in()) - 0.4) {
            const auto& own = built_.layout.conductors[conductor];
            colour = own.insulation == standards::Insulation::bare
                         ? kCopperFill
                         : styleOf(own, built_.layout).fill;
        }
        sketch_.rect(Stratum::dimensions, plate, std::nullopt, colour);
        sketch_.text(text);
        placer_.take(plate);
    }

    Sketch& sketch_;
    Placer& placer_;
    const geometry::BuiltLayout& built_;
    const ViewFrame& frame_;
    const TagOptions& options_;
    std::vector<Leg> legs_;
    std::optional<Candidate> best_;  ///< of the conductor being placed
};

std::vector<std::size_t> mostConstrainedFirst(const TagPlacer& tags, std::size_t count) {
    std::vector<double> longest;
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < count; ++i) {
        longest.push_back(tags.longestLeg(i));
        order.push_back(i);
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return longest[a] < longest[b] - 1e-6;
    });
    return order;
}

}  // namespace

std::set<std::size_t> placeTags(Sketch& sketch,
                                Placer& placer,
                                const geometry::BuiltLayout& built,
                                const ViewFrame& frame,
                                const TagOptions& options) {
    TagPlacer tags(sketch, placer, built, frame, options);
    std::set<std::size_t> placed;
    for (const auto i : mostConstrainedFirst(tags, built.conductors.size())) {
        if (tags.place(i)) {
            placed.insert(i);
        }
    }
    return placed;
}

}  // namespace gw::drawing
