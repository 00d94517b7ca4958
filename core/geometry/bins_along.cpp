#include "geometry/bins_along.h"

#include <algorithm>

namespace gw::geometry {
namespace {

/// inches. About as wide as what stands or runs across a gutter.
constexpr double kBin = 4.0;

bool overlap(const Box& a, const Box& b) {
    return a.least.x <= b.greatest.x && b.least.x <= a.greatest.x && a.least.y <= b.greatest.y &&
           b.least.y <= a.greatest.y && a.least.z <= b.greatest.z && b.least.z <= a.greatest.z;
}

}  // namespace

BinsAlong::BinsAlong(double length, std::size_t things)
    : bins_(static_cast<std::size_t>(length / kBin) + 1), boxes_(things), placed_(things, false) {}

std::pair<std::size_t, std::size_t> BinsAlong::binsOf(const Box& box) const {
    const auto last = static_cast<double>(bins_.size() - 1);
    const auto binAt = [&](double x) {
        return static_cast<std::size_t>(std::clamp(x / kBin, 0.0, last));
    };
    return {binAt(box.least.x), binAt(box.greatest.x)};
}

void BinsAlong::takeOut(std::size_t thing) {
    const auto [first, last] = binsOf(boxes_[thing]);
    for (std::size_t i = first; i <= last; ++i) {
        const auto at = std::find(bins_[i].begin(), bins_[i].end(), thing);
        *at = bins_[i].back();
        bins_[i].pop_back();
    }
}

void BinsAlong::place(std::size_t thing, const Box& box) {
    if (placed_[thing]) {
        takeOut(thing);
    }
    placed_[thing] = true;
    boxes_[thing] = box;
    const auto [first, last] = binsOf(box);
    for (std::size_t i = first; i <= last; ++i) {
        bins_[i].push_back(static_cast<std::uint32_t>(thing));
    }
}

std::vector<std::size_t> BinsAlong::overlapping(const Box& box) const {
    std::vector<std::size_t> found;
    const auto [first, last] = binsOf(box);
    for (std::size_t i = first; i <= last; ++i) {
        for (const std::uint32_t thing : bins_[i]) {
            const bool firstShared = std::max(binsOf(boxes_[thing]).first, first) == i;
            if (firstShared && overlap(boxes_[thing], box)) {
                found.push_back(thing);
            }
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace gw::geometry
