#include "geometry/packing.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "base/contract.h"
#include "units/length.h"

namespace gw::geometry {
namespace {

constexpr double kPi = 3.14159265358979323846;
constexpr double kHair =
    1e-3;  // inches between neighbours: a hair, so that rounding never overlaps
constexpr double kSettled = 2e-7;         // inches: overlaps below this count as none
constexpr double kBoreStep = 2e-4;        // inches: how near to the least bore the search goes
constexpr std::size_t kManyCircles = 40;  // beyond this a hexagonal grid, without relaxing

using Places = std::vector<SlotPlace>;

/// Circles of half diameters `r` being pushed apart and into a bore until nothing overlaps.
class Relaxation {
public:
    Relaxation(const std::vector<double>& r, Places start) : r_(r), places_(std::move(start)) {}

    /// True when all fit in a bore of radius `bore`.
    bool settle(double bore) {
        constexpr int kRounds = 1500;
        for (int round = 0; round < kRounds; ++round) {
            if (push(bore) < kSettled) {
                return true;
            }
        }
        return false;
    }

    const Places& places() const { return places_; }

private:
    double push(double bore) {
        double worst = 0.0;
        for (std::size_t i = 0; i < places_.size(); ++i) {
            for (std::size_t j = i + 1; j < places_.size(); ++j) {
                worst = std::max(worst, part(i, j));
            }
        }
        for (std::size_t i = 0; i < places_.size(); ++i) {
            worst = std::max(worst, pullIn(i, bore));
        }
        return worst;
    }

    double part(std::size_t i, std::size_t j) {
        auto& a = places_[i];
        auto& b = places_[j];
        const double du = b.u - a.u;
        const double dv = b.v - a.v;
        const double apart = std::hypot(du, dv);
        const double overlap = r_[i] + r_[j] + kHair - apart;
        if (overlap <= 0.0) {
            return 0.0;
        }
        // Coincident centres part along u: any fixed direction will do.
        const double cu = apart > 0.0 ? du / apart : 1.0;
        const double cv = apart > 0.0 ? dv / apart : 0.0;
        a.u -= cu * overlap * 0.5;
        a.v -= cv * overlap * 0.5;
        b.u += cu * overlap * 0.5;
        b.v += cv * overlap * 0.5;
        return overlap;
    }

    double pullIn(std::size_t i, double bore) {
        auto& p = places_[i];
        const double away = std::hypot(p.u, p.v);
        const double over = away + r_[i] - bore;
        if (over <= 0.0 || away == 0.0) {
            return std::max(over, 0.0);
        }
        p.u -= p.u / away * over;
        p.v -= p.v / away * over;
        return over;
    }

    const std::vector<double>& r_;
    Places places_;
};

/// `count` places on a ring; two lie along u, three stand on a base along u, four make a square
/// with its sides along the axes.
Places ring(std::size_t count, double radius) {
    Places places;
    const double first = count == 2 ? kPi : count == 3 ? kPi / 2.0 : kPi / double(count);
    for (std::size_t i = 0; i < count; ++i) {
        const double angle = first + 2.0 * kPi * double(i) / double(count);
        places.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    return places;
}

/// The first `inner` circles in the middle, the others round them.
Places rings(std::size_t inner, std::size_t count, double size) {
    Places places = inner == 1 ? Places{{0.0, 0.0}} : ring(inner, inner > 1 ? size * 0.5 : 0.0);
    for (const auto& place : ring(count - inner, size)) {
        places.push_back(place);
    }
    return places;
}

/// A hexagonal grid, from the middle outward.
Places hexagons(std::size_t count, double pitch) {
    Places grid;
    const int reach = int(std::ceil(std::sqrt(double(count)))) + 2;
    for (int row = -reach; row <= reach; ++row) {
        for (int column = -reach; column <= reach; ++column) {
            const double shift = row % 2 == 0 ? 0.0 : 0.5;
            grid.push_back({pitch * (column + shift), pitch * row * std::sqrt(3.0) * 0.5});
        }
    }
    std::stable_sort(grid.begin(), grid.end(), [](const SlotPlace& a, const SlotPlace& b) {
        return std::hypot(a.u, a.v) < std::hypot(b.u, b.v) - 1e-9;
    });
    grid.resize(count);
    return grid;
}

double reachOf(const std::vector<double>& r, const Places& places) {
    double reach = 0.0;
    for (std::size_t i = 0; i < r.size(); ++i) {
        reach = std::max(reach, std::hypot(places[i].u, places[i].v) + r[i]);
    }
    return reach;
}

/// The circles, and the radius of the bore they were settled in.
struct Packing {
    Places places;
    double bore = 0.0;
};

/// Halves the bore's interval until the start settles no tighter. A bore of infinity: it never did.
Packing tightest(const std::vector<double>& r, const Places& start, double loosest) {
    Relaxation loose(r, start);
    if (!loose.settle(loosest)) {
        return {{}, std::numeric_limits<double>::infinity()};
    }
    Packing best{loose.places(), loosest};
    double least = *std::max_element(r.begin(), r.end());
    while (best.bore - least > kBoreStep) {
        const double bore = (least + best.bore) * 0.5;
        Relaxation relaxation(r, best.places);
        if (relaxation.settle(bore)) {
            best = {relaxation.places(), bore};
        } else {
            least = bore;
        }
    }
    return best;
}

Packing packed(const std::vector<double>& r) {
    const double largest = *std::max_element(r.begin(), r.end());
    if (r.size() == 1) {
        return {{{0.0, 0.0}}, r.front()};
    }
    const auto grid = hexagons(r.size(), 2.0 * largest + kHair);
    Packing best{grid, reachOf(r, grid)};
    if (r.size() > kManyCircles) {
        return best;
    }
    const double loosest = best.bore * 1.2;
    const auto take = [&](const Places& start) {
        const auto candidate = tightest(r, start, loosest);
        if (candidate.bore < best.bore - kBoreStep) {
            best = candidate;
        }
    };
    const std::size_t mostInner = r.size() < 5 ? 0 : r.size() / 2;
    for (std::size_t inner = 0; inner <= mostInner; ++inner) {
        take(rings(inner, r.size(), largest * (inner == 0 ? double(r.size()) / kPi : 2.0)));
    }
    take(grid);
    return best;
}

std::vector<double> halves(std::span<const double> diameters) {
    std::vector<double> r;
    for (const double diameter : diameters) {
        CONTRACT(diameter > 0.0);
        r.push_back(diameter * 0.5);
    }
    return r;
}

}  // namespace

Result<std::vector<SlotPlace>> packCircles(std::span<const double> diameters, double bore) {
    if (diameters.empty()) {
        return Places{};
    }
    const auto r = halves(diameters);
    const auto packing = packed(r);
    const double needed = 2.0 * reachOf(r, packing.places);
    if (needed > bore + kBoreStep) {
        return fail({ErrorCode::outOfRange,
                     "the conductors do not fit in the raceway",
                     {},
                     {},
                     "a bore of at least " + units::formatDecimal(needed, 3) + " in",
                     units::formatDecimal(bore, 3) + " in"});
    }
    return packing.places;
}

double boreNeeded(std::span<const double> diameters) {
    if (diameters.empty()) {
        return 0.0;
    }
    const auto r = halves(diameters);
    return 2.0 * reachOf(r, packed(r).places);
}

}  // namespace gw::geometry
