#include "geometry/packing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>
#include <optional>

#include "base/contract.h"
#include "base/tolerance.h"
#include "units/length.h"

namespace gw::geometry {
namespace {

constexpr double kHair =
    1e-3;  // inches between neighbours, so that rounding in a file never overlaps
constexpr double kBoreStep = 4e-4;       // inches of radius: how near to the least the search goes
constexpr std::size_t kMostPlaced = 40;  // beyond this a hexagonal grid: one by one costs n^4

using Places = std::vector<SlotPlace>;

struct Circle {
    SlotPlace at;
    double r = 0.0;
};

double squaredAway(const SlotPlace& a, const SlotPlace& b) {
    return (a.u - b.u) * (a.u - b.u) + (a.v - b.v) * (a.v - b.v);
}

// Where circles of radii `a` and `b` about two points meet; empty when they do not.
std::optional<std::array<SlotPlace, 2>> meet(const SlotPlace& p,
                                             double a,
                                             const SlotPlace& q,
                                             double b) {
    const double d = std::sqrt(squaredAway(p, q));
    if (d <= 0.0) {
        return std::nullopt;
    }
    const double along = (d * d + a * a - b * b) / (2.0 * d);
    const double squared = a * a - along * along;
    if (squared < 0.0) {
        return std::nullopt;
    }
    const double aside = std::sqrt(squared);
    const double cu = (q.u - p.u) / d;
    const double cv = (q.v - p.v) / d;
    return std::array{SlotPlace{p.u + cu * along - cv * aside, p.v + cv * along + cu * aside},
                      SlotPlace{p.u + cu * along + cv * aside, p.v + cv * along - cu * aside}};
}

/// Sets circles one by one into a bore, each where it touches two things: the bore or circles set
/// before. Of the places that are free the outermost or the innermost is taken, the first found on
/// a tie.
class Placer {
public:
    enum class Order { outermost, innermost };
    Placer(double bore, Order order) : bore_(bore), order_(order) {}

    /// False when there is no room.
    bool add(double r) {
        if (r > bore_) {
            return false;
        }
        best_.reset();
        if (placed_.size() < 2) {
            offer(early(r), r);
        }
        const SlotPlace middle{};
        for (std::size_t i = 0; i < placed_.size(); ++i) {
            const double reach = placed_[i].r + r + kHair;
            offerBoth(meet(middle, bore_ - r, placed_[i].at, reach), r);
            for (std::size_t j = 0; j < i; ++j) {
                offerBoth(meet(placed_[i].at, reach, placed_[j].at, placed_[j].r + r + kHair), r);
            }
        }
        if (best_) {
            placed_.push_back({*best_, r});
        }
        return best_.has_value();
    }

    const std::vector<Circle>& placed() const { return placed_; }

private:
    // The first two have too little to touch: the first lies against the bore or in the middle, the
    // second beside it.
    SlotPlace early(double r) const {
        if (placed_.empty()) {
            return order_ == Order::outermost ? SlotPlace{0.0, r - bore_} : SlotPlace{};
        }
        const Circle& first = placed_.front();
        return {first.at.u, first.at.v + first.r + r + kHair};
    }

    void offerBoth(const std::optional<std::array<SlotPlace, 2>>& places, double r) {
        if (places) {
            offer((*places)[0], r);
            offer((*places)[1], r);
        }
    }

    void offer(const SlotPlace& place, double r) {
        constexpr double kTie = 1e-9;
        const double out = std::sqrt(squaredAway(place, {}));
        const double rank = order_ == Order::outermost ? out : -out;
        if ((!best_ || rank > bestRank_ + kTie) && isFree(place, out, r)) {
            best_ = place;
            bestRank_ = rank;
        }
    }

    bool isFree(const SlotPlace& place, double out, double r) const {
        constexpr double kRounding = 1e-9;
        return out + r <= bore_ + kRounding &&
               std::all_of(placed_.begin(), placed_.end(), [&](const Circle& other) {
                   const double reach = other.r + r + kHair * 0.5;
                   return squaredAway(place, other.at) >= reach * reach;
               });
    }

    double bore_;
    Order order_;
    std::vector<Circle> placed_;
    std::optional<SlotPlace> best_;
    double bestRank_ = 0.0;
};

/// Indices of the circles, largest first; equal ones in slot order.
std::vector<std::size_t> largestFirst(const std::vector<double>& r) {
    std::vector<std::size_t> order(r.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(
        order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return r[a] > r[b]; });
    return order;
}

std::optional<Places> placedIn(double bore,
                               Placer::Order how,
                               const std::vector<double>& r,
                               const std::vector<std::size_t>& order) {
    Placer placer(bore, how);
    for (const std::size_t i : order) {
        if (!placer.add(r[i])) {
            return std::nullopt;
        }
    }
    Places places(r.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        places[order[i]] = placer.placed()[i].at;
    }
    return places;
}

double reachOf(const std::vector<double>& r, const Places& places) {
    double reach = 0.0;
    for (std::size_t i = 0; i < r.size(); ++i) {
        reach = std::max(reach, std::hypot(places[i].u, places[i].v) + r[i]);
    }
    return reach;
}

/// No bore below this can do: the area of the circles, and the two largest side by side.
double leastThinkable(const std::vector<double>& r, const std::vector<std::size_t>& order) {
    const double squares = std::inner_product(r.begin(), r.end(), r.begin(), 0.0);
    return std::max(std::sqrt(squares), r[order[0]] + r[order[1]]);
}

/// Halves the radii between what cannot do and what did. `loosest` has places already.
Places tightest(Placer::Order how,
                const std::vector<double>& r,
                const std::vector<std::size_t>& order,
                const Places& loosest) {
    Places best = loosest;
    double least = leastThinkable(r, order);
    double most = reachOf(r, best);
    while (most - least > kBoreStep) {
        const double bore = (least + most) * 0.5;
        if (auto places = placedIn(bore, how, r, order)) {
            best = *std::move(places);
            most = std::min(bore, reachOf(r, best));
        } else {
            least = bore;
        }
    }
    return best;
}

/// `count` equal circles on a ring, from `first` radians on, each touching its neighbours.
Places ring(std::size_t count, double r, double first) {
    const double step = 2.0 * std::numbers::pi / static_cast<double>(count);
    const double radius = (r + kHair) / std::sin(step * 0.5);
    Places places;
    for (std::size_t i = 0; i < count; ++i) {
        const double angle = first + step * static_cast<double>(i);
        places.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    return places;
}

/// A hexagonal grid, from the middle outward.
Places hexagons(std::size_t count, double pitch) {
    Places grid;
    const int reach = static_cast<int>(std::ceil(std::sqrt(static_cast<double>(count)))) + 2;
    for (int row = -reach; row <= reach; ++row) {
        for (int column = -reach; column <= reach; ++column) {
            const double shift = row % 2 == 0 ? 0.0 : 0.5;
            grid.push_back({pitch * (column + shift), pitch * row * std::sqrt(3.0) * 0.5});
        }
    }
    // Rounded, so that places on one ring stay in the order of rows and columns.
    const auto ringOf = [&](const SlotPlace& p) {
        constexpr double kRings = 1e6;
        return std::llround((p.u * p.u + p.v * p.v) / (pitch * pitch) * kRings);
    };
    std::stable_sort(grid.begin(), grid.end(), [&](const SlotPlace& a, const SlotPlace& b) {
        return ringOf(a) < ringOf(b);
    });
    grid.resize(count);
    return grid;
}

/// The places that have a name: one to four circles.
std::optional<Places> symmetric(const std::vector<double>& r) {
    constexpr double kPi = std::numbers::pi;
    if (r.size() == 1) {
        return Places{{0.0, 0.0}};
    }
    if (r.size() == 2) {
        // Both ends of the row against the bore.
        return Places{{-r[1] - kHair, 0.0}, {r[0] + kHair, 0.0}};
    }
    const bool equal = std::all_of(r.begin(), r.end(), [&](double other) { return other == r[0]; });
    if (equal && r.size() == 3) {
        return ring(3, r[0], kPi * 0.5);
    }
    if (equal && r.size() == 4) {
        return ring(4, r[0], kPi * 0.25);
    }
    return std::nullopt;
}

Places packed(const std::vector<double>& r) {
    if (auto places = symmetric(r)) {
        return *std::move(places);
    }
    const auto order = largestFirst(r);
    Places grid = hexagons(r.size(), 2.0 * r[order[0]] + kHair);
    if (r.size() > kMostPlaced) {
        return grid;
    }
    const Places outer = tightest(Placer::Order::outermost, r, order, grid);
    const Places inner = tightest(Placer::Order::innermost, r, order, grid);
    return reachOf(r, inner) < reachOf(r, outer) - kBoreStep ? inner : outer;
}

}  // namespace

TightPacking packTightly(std::span<const double> diameters) {
    std::vector<double> r;
    for (const double diameter : diameters) {
        CONTRACT(diameter > 0.0);
        r.push_back(diameter * 0.5);
    }
    if (r.empty()) {
        return {};
    }
    Places places = packed(r);
    const double bore = 2.0 * reachOf(r, places);
    return {std::move(places), bore};
}

bool fits(const TightPacking& packing, double bore) {
    return packing.bore <= bore + 2.0 * kBoreStep;
}

Result<std::vector<SlotPlace>> packCircles(std::span<const double> diameters, double bore) {
    TightPacking packing = packTightly(diameters);
    if (!fits(packing, bore)) {
        return fail(
            {.code = ErrorCode::outOfRange,
             .sentence = "the conductors do not fit in the raceway",
             .expected = "a bore of at least " + units::formatDecimal(packing.bore, 3) + " in",
             .found = units::formatDecimal(bore, 3) + " in"});
    }
    return std::move(packing.places);
}

double boreNeeded(std::span<const double> diameters) {
    return packTightly(diameters).bore;
}

}  // namespace gw::geometry
