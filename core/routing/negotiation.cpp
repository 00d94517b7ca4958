#include "routing/negotiation.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace gw::routing {
namespace {

constexpr double kFirstPrice = 3.0;  // inches, of an overlap
constexpr double kRise = 1.5;
constexpr double kHighestPrice = 60.0;
constexpr double kHistory = 2.5;  // inches a cell, each round in which two clash there
constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr std::size_t kMostWays = 2500;  // of an item
constexpr std::size_t kLooks = 100;      // cheapest ways that are ranked for it
constexpr std::size_t kParents = 8;      // ways that are varied
constexpr std::size_t kChildren = 8;     // of these variants, kept
constexpr std::size_t kPatience = 6;     // rounds without fewer clashes
constexpr std::size_t kLongest = 30;     // then it is for the repair

struct Clash {
    std::size_t a = 0;
    std::size_t b = 0;
    Vec3 place;
};

class Negotiation {
public:
    Negotiation(std::vector<Item>& items, const Surroundings& around, const OnRound& onRound)
        : items_(items),
          around_(around),
          grid_(around.inside),
          onRound_(onRound),
          chosen_(items.size(), kNone),
          prices_(grid_.size(), 0.0) {
        order_.resize(items.size());
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t p, std::size_t q) {
            return least(p) > least(q);
        });
    }

    Settled run(std::size_t mostRounds) {
        std::vector<Clash> clashes = negotiate(mostRounds);
        if (!settled_.stopped) {
            clashes = repaired(std::move(clashes));
        }
        dropClashing(std::move(clashes));
        if (!settled_.stopped) {
            readmit();
            polish();
        }
        settled_.chosen = chosen_;
        return std::move(settled_);
    }

private:
    double least(std::size_t item) const {
        const auto& ways = items_[item].ways.ways;
        return ways.empty() ? 0.0 : ways.front()->cost;
    }

    const Way& wayOf(std::size_t item, std::size_t way) const {
        return *items_[item].ways.ways[way];
    }

    /// Whether item i on its way w clashes with item j as it lies.
    std::optional<Overlap> clash(std::size_t i, std::size_t w, std::size_t j) const {
        return clash(i, wayOf(i, w), j);
    }
    std::optional<Overlap> clash(std::size_t i, const Way& way, std::size_t j) const {
        if (i == j || chosen_[j] == kNone || items_[i].span.conductor == items_[j].span.conductor) {
            return std::nullopt;
        }
        return conflictOf(items_[i].span, way, items_[j].span, wayOf(j, chosen_[j]));
    }

    /// A graze counts less than one through the other: then a way can be bettered step by step.
    double weight(std::size_t i, const Overlap& overlap) const {
        return 0.4 + 0.6 * std::min(1.0, overlap.depth / items_[i].span.radius);
    }

    // ---- the rounds -------------------------------------------------------------------------

    std::vector<Clash> negotiate(std::size_t mostRounds) {
        best_ = chosen_;
        std::size_t fewest = std::numeric_limits<std::size_t>::max();
        std::size_t since = 0;
        double price = kFirstPrice;
        std::vector<char> dirty(items_.size(), 1);
        for (std::size_t round = 1; round <= mostRounds && fewest > 0; ++round) {
            chooseAgain(dirty, price, round);
            const auto clashes = allClashes();
            settled_.conflictsByRound.push_back(clashes.size());
            if (clashes.size() < fewest) {
                fewest = clashes.size();
                best_ = chosen_;
                since = 0;
            } else {
                ++since;
            }
            if (stopped_ || (onRound_ && !onRound_(round, clashes.size()))) {
                settled_.stopped = true;
                break;
            }
            raisePrices(clashes);
            if (since > 0) {
                widenAll(clashes, price, round % 2 == 0 ? 0.15 : 0.35);
            }
            price = std::min(price * kRise, kHighestPrice);
            dirty.assign(items_.size(), 0);
            for (const Clash& clash : clashes) {
                dirty[clash.a] = 1;
                dirty[clash.b] = 1;
            }
            if (since >= kLongest) {
                break;
            }
            if (since > 0 && since % kPatience == 0) {
                // The true blocker may be a third: all choose again, at a low price.
                dirty.assign(items_.size(), 1);
                price = kFirstPrice * 2.0;
            }
        }
        chosen_ = best_;
        return allClashes();
    }

    void chooseAgain(const std::vector<char>& dirty, double price, std::size_t round) {
        for (std::size_t k = 0; k < order_.size() && !stopped_; ++k) {
            const bool backwards = round % 2 == 0;
            const std::size_t i = backwards ? order_[order_.size() - 1 - k] : order_[k];
            if (dirty[i] != 0 && !items_[i].ways.ways.empty()) {
                chosen_[i] = cheapest(i, price);
                if (onRound_ && !onRound_(0, 0)) {
                    stopped_ = true;
                }
            }
        }
    }

    double history(const Way& way) const {
        double sum = 0.0;
        for (const std::uint32_t cell : way.cells) {
            sum += prices_[cell];
        }
        return sum;
    }

    std::size_t cheapest(std::size_t i, double price) const {
        const auto& ways = items_[i].ways.ways;
        double least = std::numeric_limits<double>::infinity();
        std::size_t best = 0;
        for (std::size_t w = 0; w < ways.size() && ways[w]->cost < least; ++w) {
            double cost = ways[w]->cost + history(*ways[w]);
            for (std::size_t j = 0; j < items_.size() && cost < least; ++j) {
                const auto overlap = clash(i, w, j);
                cost += overlap ? price * weight(i, *overlap) : 0.0;
            }
            if (cost < least) {
                least = cost;
                best = w;
            }
        }
        return best;
    }

    std::vector<Clash> allClashes() const {
        std::vector<Clash> clashes;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            for (std::size_t j = i + 1; chosen_[i] != kNone && j < items_.size(); ++j) {
                if (const auto overlap = clash(i, chosen_[i], j)) {
                    clashes.push_back({i, j, overlap->place});
                }
            }
        }
        return clashes;
    }

    void raisePrices(const std::vector<Clash>& clashes) {
        for (const Clash& clash : clashes) {
            prices_[grid_.cellAt(clash.place)] += kHistory;
        }
    }

    // ---- more ways --------------------------------------------------------------------------

    double total(std::size_t i, const Way& way, double price, double most) const {
        double cost = way.cost + history(way);
        for (std::size_t j = 0; j < items_.size() && cost < most; ++j) {
            const auto overlap = clash(i, way, j);
            cost += overlap ? price * weight(i, *overlap) : 0.0;
        }
        return cost;
    }

    /// Each item once, by its first clash.
    void widenAll(const std::vector<Clash>& clashes, double price, double step) {
        std::vector<char> done(items_.size(), 0);
        for (const Clash& clash : clashes) {
            for (const std::size_t i : {clash.a, clash.b}) {
                if (done[i] == 0 && !stopped()) {
                    done[i] = 1;
                    widen(i, clash.place, price, step);
                }
            }
        }
    }

    /// Variants of the item's best ways that would be better now join its list.
    void widen(std::size_t i, const Vec3& place, double price, double step) {
        auto& ways = items_[i].ways.ways;
        if (ways.empty() || ways.size() > kMostWays) {
            return;
        }
        const double now = total(i, wayOf(i, chosen_[i]), price, kNever);
        std::vector<std::pair<double, std::size_t>> ranked;
        ranked.emplace_back(now, chosen_[i]);
        const std::size_t looks = std::min(ways.size(), kLooks);
        for (std::size_t w = 0; w < looks && ways[w]->cost < now; ++w) {
            if (w != chosen_[i]) {
                ranked.emplace_back(total(i, *ways[w], price, now + price), w);
            }
        }
        std::stable_sort(ranked.begin(), ranked.end());
        ranked.resize(std::min(ranked.size(), kParents));
        std::vector<std::pair<double, std::unique_ptr<Way>>> found;
        for (const auto& [cost, w] : ranked) {
            for (auto& variant : variantsOf(items_[i].span, around_, *ways[w], place, step)) {
                if (variant->cost < now) {
                    const double worth = total(i, *variant, price, now);
                    if (worth < now) {
                        found.emplace_back(worth, std::move(variant));
                    }
                }
            }
        }
        std::stable_sort(found.begin(), found.end(), [](const auto& p, const auto& q) {
            return p.first < q.first;
        });
        found.resize(std::min(found.size(), kChildren));
        for (auto& [worth, variant] : found) {
            add(i, std::move(variant));
        }
    }

    /// In its place by cost; what is chosen stays chosen.
    std::size_t add(std::size_t i, std::unique_ptr<Way> way) {
        auto& ways = items_[i].ways.ways;
        const auto at =
            std::upper_bound(ways.begin(), ways.end(), way, [](const auto& p, const auto& q) {
                return p->cost < q->cost;
            });
        const auto index = static_cast<std::size_t>(at - ways.begin());
        ways.insert(at, std::move(way));
        for (std::vector<std::size_t>* chosen : {&chosen_, &best_}) {
            if (i < chosen->size() && (*chosen)[i] != kNone && (*chosen)[i] >= index) {
                ++(*chosen)[i];
            }
        }
        return index;
    }

    // ---- repair -----------------------------------------------------------------------------

    std::vector<std::size_t> blockers(std::size_t i, std::size_t w, std::size_t most) const {
        std::vector<std::size_t> found;
        for (std::size_t j = 0; j < items_.size() && found.size() <= most; ++j) {
            if (clash(i, w, j)) {
                found.push_back(j);
            }
        }
        return found;
    }

    /// Gives i a free way, moving others aside where they have one: at most `depth` deep.
    bool place(std::size_t i, std::size_t depth) {
        const auto& ways = items_[i].ways.ways;
        const std::size_t before = chosen_[i];
        chosen_[i] = kNone;
        std::vector<std::pair<std::size_t, std::vector<std::size_t>>> tries;
        for (std::size_t w = 0; w < ways.size(); ++w) {
            auto others = blockers(i, w, depth > 0 ? kMostMoved : 0);
            if (others.empty()) {
                chosen_[i] = w;
                return true;
            }
            const bool mayMove = std::none_of(
                others.begin(), others.end(), [&](std::size_t j) { return moving_[j] != 0; });
            if (depth > 0 && others.size() <= kMostMoved && mayMove) {
                tries.emplace_back(w, std::move(others));
            }
        }
        std::stable_sort(tries.begin(), tries.end(), [](const auto& p, const auto& q) {
            return p.second.size() < q.second.size();
        });
        for (const auto& [w, others] : tries) {
            if (budget_ == 0 || stopped()) {
                break;
            }
            --budget_;
            if (moveAside(i, w, others, depth)) {
                return true;
            }
        }
        chosen_[i] = before;
        return false;
    }

    bool moveAside(std::size_t i,
                   std::size_t w,
                   const std::vector<std::size_t>& others,
                   std::size_t depth) {
        const auto saved = chosen_;
        chosen_[i] = w;
        moving_[i] = 1;
        for (const std::size_t j : others) {
            chosen_[j] = kNone;
        }
        const bool all = std::all_of(
            others.begin(), others.end(), [&](std::size_t j) { return place(j, depth - 1); });
        moving_[i] = 0;
        if (!all) {
            chosen_ = saved;
        }
        return all;
    }

    std::vector<Clash> repaired(std::vector<Clash> clashes) {
        moving_.assign(items_.size(), 0);
        for (std::size_t pass = 0; pass < 3 && !clashes.empty(); ++pass) {
            for (const Clash& clash : clashes) {
                for (const std::size_t i : {clash.a, clash.b}) {
                    if (this->clash(clash.a, chosen_[clash.a], clash.b)) {
                        budget_ = kBudget;
                        place(i, pass < 1 ? 1 : 2);
                    }
                }
            }
            clashes = allClashes();
        }
        return clashes;
    }

    // ---- the end ----------------------------------------------------------------------------

    void dropClashing(std::vector<Clash> clashes) {
        while (!clashes.empty()) {
            std::vector<std::size_t> counts(items_.size(), 0);
            for (const Clash& clash : clashes) {
                ++counts[clash.a];
                ++counts[clash.b];
            }
            const auto most = std::max_element(counts.begin(), counts.end());
            chosen_[static_cast<std::size_t>(most - counts.begin())] = kNone;
            clashes = allClashes();
        }
    }

    void readmit() {
        moving_.assign(items_.size(), 0);
        for (std::size_t i = 0; i < items_.size(); ++i) {
            if (chosen_[i] == kNone && !items_[i].ways.ways.empty()) {
                budget_ = kBudget;
                place(i, 2);
            }
        }
    }

    /// Each in turn takes the cheapest way that is free, till none finds a cheaper one.
    void polish() {
        for (int pass = 0; pass < 4; ++pass) {
            bool changed = false;
            for (const std::size_t i : order_) {
                for (std::size_t w = 0; chosen_[i] != kNone && w < chosen_[i]; ++w) {
                    if (blockers(i, w, 0).empty()) {
                        chosen_[i] = w;
                        changed = true;
                    }
                }
                changed = tighten(i) || changed;
                if (stopped()) {
                    return;
                }
            }
            if (!changed) {
                return;
            }
        }
    }

    /// The cheapest free variant of what it has.
    bool tighten(std::size_t i) {
        if (chosen_[i] == kNone) {
            return false;
        }
        const double now = wayOf(i, chosen_[i]).cost;
        for (auto& variant :
             variantsOf(items_[i].span, around_, wayOf(i, chosen_[i]), std::nullopt, kTighten)) {
            if (variant->cost > now - kWorthIt) {
                return false;
            }
            if (total(i, *variant, kNever, kNever) < kNever) {
                chosen_[i] = add(i, std::move(variant));
                return true;
            }
        }
        return false;
    }

    bool stopped() {
        stopped_ = stopped_ || (onRound_ && !onRound_(0, 0));
        settled_.stopped = settled_.stopped || stopped_;
        return stopped_;
    }

    static constexpr double kTighten = 0.3;   // inches
    static constexpr double kWorthIt = 0.05;  // inches
    static constexpr std::size_t kMostMoved = 2;
    static constexpr std::size_t kBudget = 60;

    std::vector<Item>& items_;
    const Surroundings& around_;
    CellGrid grid_;
    const OnRound& onRound_;
    std::vector<std::size_t> chosen_;
    std::vector<std::size_t> best_;  ///< chosen in the best round
    std::vector<double> prices_;
    std::vector<std::size_t> order_;
    std::vector<char> moving_;
    std::size_t budget_ = 0;
    bool stopped_ = false;
    Settled settled_;
};

}  // namespace

Settled settle(std::vector<Item>& items,
               const Surroundings& around,
               std::size_t mostRounds,
               const OnRound& onRound) {
    return Negotiation(items, around, onRound).run(mostRounds);
}

}  // namespace gw::routing
