#include "support/fill_sampler.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gw::test_support {

FillSampler::FillSampler(std::span<const geometry::FillConductor> conductors, double arcStep) {
    for (const auto& conductor : conductors) {
        conductors_.push_back(sample(conductor, arcStep));
    }
}

FillSampler::Conductor FillSampler::sample(const geometry::FillConductor& conductor,
                                           double arcStep) {
    constexpr double kFar = std::numeric_limits<double>::infinity();
    Conductor sampled{conductor.area, {kFar, -kFar}, {}, {}};
    for (const geometry::Piece& piece : conductor.path->pieces()) {
        const double cuts = piece.isArc() ? std::ceil(piece.angle() / arcStep) : 1.0;
        Group group{{kFar, -kFar}, sampled.spans.size(), 0};
        Span before{kFar, -kFar};
        for (double i = 0.0; i <= cuts; i += 1.0) {
            const double s = piece.length * i / cuts;
            const double tilt = piece.tangentAt(s).x;
            const double half = conductor.radius * std::sqrt(std::max(0.0, 1.0 - tilt * tilt));
            const double x = piece.pointAt(s).x;
            const Span here{x - half, x + half};
            group.all = {std::min(group.all.low, here.low), std::max(group.all.high, here.high)};
            if (i > 0.0) {
                sampled.spans.push_back(
                    {std::min(before.low, here.low), std::max(before.high, here.high)});
            }
            before = here;
        }
        group.last = sampled.spans.size();
        sampled.groups.push_back(group);
        sampled.all = {std::min(sampled.all.low, group.all.low),
                       std::max(sampled.all.high, group.all.high)};
    }
    return sampled;
}

int FillSampler::Conductor::partsAt(double x) const {
    int parts = 0;
    bool cutBefore = false;
    for (const Group& group : groups) {
        if (!group.all.holds(x)) {
            cutBefore = false;
            continue;
        }
        for (std::size_t i = group.first; i < group.last; ++i) {
            const bool cut = spans[i].holds(x);
            parts += cut && !cutBefore ? 1 : 0;
            cutBefore = cut;
        }
    }
    return parts;
}

double FillSampler::areaAt(double x) const {
    double area = 0.0;
    for (const Conductor& conductor : conductors_) {
        if (conductor.all.holds(x)) {
            area += conductor.area * conductor.partsAt(x);
        }
    }
    return area;
}

double FillSampler::peak(double first, double step, double length) const {
    double peak = 0.0;
    for (int i = 0; first + step * i < length; ++i) {
        peak = std::max(peak, areaAt(first + step * i));
    }
    return peak;
}

}  // namespace gw::test_support
