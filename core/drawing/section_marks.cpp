#include "drawing/section_marks.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "geometry/section.h"

namespace gw::drawing {
namespace {

constexpr double kApart = 0.08;      // of the length: nearer planes show much the same
constexpr double kClear = 0.02;      // of the length, from a raceway's edge
constexpr int kEvenPlanes = 16;      // candidates spread over the length
constexpr int kBlockWeight = 4;      // a block tells more than a conductor
constexpr double kConductors = 0.2;  // NFPA 70 366.22(A), 376.22(A)
constexpr double kSplices = 0.75;    // NFPA 70 366.56(A), 376.56(B)(1)

std::vector<double> entryPlanes(const geometry::BuiltLayout& built) {
    std::vector<double> planes;
    for (const auto& entry : built.entries) {
        planes.push_back(entry.centre.x);
    }
    return planes;
}

double worstPlane(const geometry::BuiltLayout& built) {
    const auto conductors = built.fill.worstConductors();
    const auto splice = built.fill.worstSplice();
    const bool atSplice =
        splice.area > 0.0 && splice.fraction / kSplices >= conductors.fraction / kConductors;
    const auto& worst = atSplice ? splice : conductors;
    return clearPlane(worst.from, worst.to, entryPlanes(built));
}

/// Through each block beside its middle, and evenly over the length.
std::vector<double> candidates(const geometry::BuiltLayout& built) {
    std::vector<double> planes;
    for (const auto& block : built.blocks) {
        const double width = block.body.greatest.x - block.body.least.x;
        planes.push_back(block.body.least.x + 0.35 * width);
        planes.push_back(block.body.least.x + 0.65 * width);
    }
    for (int i = 0; i < kEvenPlanes; ++i) {
        planes.push_back(built.fill.length * (i + 0.5) / kEvenPlanes);
    }
    std::sort(planes.begin(), planes.end());
    return planes;
}

bool isClear(const geometry::BuiltLayout& built, double plane, double first) {
    const double length = built.fill.length;
    return std::abs(plane - first) >= kApart * length &&
           std::none_of(built.entries.begin(), built.entries.end(), [&](const auto& entry) {
               return std::abs(entry.centre.x - plane) < kClear * length + 0.5 * entry.bore;
           });
}

struct Seen {
    std::set<std::size_t> conductors;
    std::set<std::size_t> blocks;
};

Seen seenAt(const geometry::BuiltLayout& built, double plane) {
    const auto section = geometry::sectionAt(built, plane);
    Seen seen;
    for (const auto& cut : section.conductors) {
        seen.conductors.insert(cut.conductor);
    }
    for (const auto& cut : section.blocks) {
        seen.blocks.insert(cut.block);
    }
    return seen;
}

int countNew(const std::set<std::size_t>& all, const std::set<std::size_t>& known) {
    return static_cast<int>(std::count_if(
        all.begin(), all.end(), [&](std::size_t index) { return known.count(index) == 0; }));
}

std::optional<double> mostDifferent(const geometry::BuiltLayout& built, double first) {
    const auto known = seenAt(built, first);
    std::optional<double> best;
    int most = 0;
    for (const double plane : candidates(built)) {
        if (!isClear(built, plane, first)) {
            continue;
        }
        const auto seen = seenAt(built, plane);
        const int score = kBlockWeight * countNew(seen.blocks, known.blocks) +
                          countNew(seen.conductors, known.conductors);
        if (score > most) {
            most = score;
            best = plane;
        }
    }
    return best;
}

}  // namespace

std::vector<SectionMark> sectionMarks(const geometry::BuiltLayout& built) {
    std::vector<SectionMark> marks{{"A", worstPlane(built)}};
    if (const auto other = mostDifferent(built, marks.front().x)) {
        marks.push_back({"B", *other});
    }
    return marks;
}

}  // namespace gw::drawing
