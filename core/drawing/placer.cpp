#include "drawing/placer.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/contract.h"

namespace gw::drawing {
namespace {

/// Narrows [low, high] to where `from + t * step` lies in [least, greatest]; false when empty.
bool clip(double from, double step, double least, double greatest, double& low, double& high) {
    if (std::abs(step) < 1e-12) {
        return from >= least && from <= greatest;
    }
    const double a = (least - from) / step;
    const double b = (greatest - from) / step;
    low = std::max(low, std::min(a, b));
    high = std::min(high, std::max(a, b));
    return low <= high;
}

/// Neighbours that touch and so move together.
struct Cluster {
    double left = 0.0;   ///< of the first interval
    double width = 0.0;  ///< with the gaps between
    double wish = 0.0;   ///< sum of the lefts its members would like the cluster to have
    std::size_t count = 0;
};

double clampedLeft(const Cluster& cluster, double low, double high) {
    return std::clamp(cluster.wish / static_cast<double>(cluster.count),
                      low,
                      std::max(low, high - cluster.width));
}

Cluster joined(const Cluster& a, const Cluster& b, double gap) {
    const double shift = a.width + gap;  // b's first interval sits this far right of a's
    return {0.0,
            shift + b.width,
            a.wish + b.wish - shift * static_cast<double>(b.count),
            a.count + b.count};
}

}  // namespace

bool crosses(const Rect& rect, Point from, Point to) {
    double low = 0.0;
    double high = 1.0;
    return clip(from.x, to.x - from.x, rect.x, rect.right(), low, high) &&
           clip(from.y, to.y - from.y, rect.y, rect.bottom(), low, high);
}

bool cross(Point a, Point b, Point c, Point d) {
    const auto side = [](Point from, Point to, Point at) {
        return (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
    };
    return side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0;
}

bool Placer::isUnlabelled(const Rect& rect) const {
    return std::none_of(
        taken_.begin(), taken_.end(), [&](const Rect& other) { return overlap(rect, other); });
}

bool Placer::isFree(const Rect& rect) const {
    const auto meets = [&](const Rect& other) { return overlap(rect, other); };
    return holds(bounds_, rect) && isUnlabelled(rect) &&
           std::none_of(kept_.begin(), kept_.end(), meets) &&
           std::none_of(lines_.begin(), lines_.end(), [&](const Line& line) {
               return crosses(rect, line.from, line.to);
           });
}

bool Placer::isFree(Point from, Point foot, double dot) const {
    return isUnlabelled(grown({foot.x, foot.y, 0, 0}, dot)) &&
           std::none_of(taken_.begin(),
                        taken_.end(),
                        [&](const Rect& rect) { return crosses(rect, from, foot); }) &&
           std::none_of(lines_.begin(), lines_.end(), [&](const Line& line) {
               return cross(from, foot, line.from, line.to);
           });
}

std::optional<std::vector<double>> spreadOut(std::span<const double> wishes,
                                             std::span<const double> widths,
                                             double gap,
                                             double low,
                                             double high) {
    CONTRACT(wishes.size() == widths.size());
    if (wishes.empty()) {
        return std::vector<double>{};
    }
    const double needed = std::accumulate(widths.begin(), widths.end(), 0.0) +
                          gap * static_cast<double>(widths.size() - 1);
    if (needed > high - low + 1e-9) {
        return std::nullopt;
    }
    std::vector<Cluster> clusters;
    for (std::size_t i = 0; i < wishes.size(); ++i) {
        clusters.push_back({0.0, widths[i], wishes[i] - 0.5 * widths[i], 1});
        clusters.back().left = clampedLeft(clusters.back(), low, high);
        while (clusters.size() > 1) {
            const auto& before = clusters[clusters.size() - 2];
            if (before.left + before.width + gap <= clusters.back().left + 1e-12) {
                break;
            }
            auto both = joined(before, clusters.back(), gap);
            both.left = clampedLeft(both, low, high);
            clusters.pop_back();
            clusters.back() = both;
        }
    }
    std::vector<double> middles;
    for (const auto& cluster : clusters) {
        double left = cluster.left;
        for (std::size_t k = 0; k < cluster.count; ++k) {
            const double width = widths[middles.size()];
            middles.push_back(left + 0.5 * width);
            left += width + gap;
        }
    }
    return middles;
}

}  // namespace gw::drawing
