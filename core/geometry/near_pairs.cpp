#include "geometry/near_pairs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <tuple>

#include "base/contract.h"
#include "geometry/bow.h"

namespace gw::geometry {

namespace {

/// inches, radians. Long legs would fill many cells, and a wide bend's chord says little about it.
constexpr Cuts kCuts{4.0, kQuarterTurn / 3.0};

/// inches. Side of a cell of the grid: about what a cut leg's box measures across its short sides.
constexpr double kCell = 2.0;

/// More cells than this for every chunk, and the cells grow: a sparse scene must not cost memory.
constexpr double kMostCellsPerChunk = 16.0;

/// A bow or a box with the box around it, grown so that two that are near enough overlap.
struct Chunk {
    std::uint32_t item = 0;
    Bow bow;  ///< no piece: the item's box
    Box around;
};

void grow(Box& box, const Vec3& point) {
    box.least = {std::min(box.least.x, point.x),
                 std::min(box.least.y, point.y),
                 std::min(box.least.z, point.z)};
    box.greatest = {std::max(box.greatest.x, point.x),
                    std::max(box.greatest.y, point.y),
                    std::max(box.greatest.z, point.z)};
}

Box widened(const Box& box, double by) {
    const Vec3 all{by, by, by};
    return {box.least - all, box.greatest + all};
}

/// Around chord and arc: an arc lies between its chord and the chord moved by the sag.
Box aroundBow(const Bow& bow) {
    Box box{bow.start, bow.start};
    grow(box, bow.end);
    if (bow.sag > 0.0) {
        const Vec3 middle = (bow.start + bow.end) * 0.5;
        const Vec3 bulge = unit(middle - bow.piece->origin) * bow.sag;
        grow(box, bow.start + bulge);
        grow(box, bow.end + bulge);
    }
    return box;
}

std::vector<Chunk> chunksOf(std::span<const SceneItem> items, double within) {
    std::vector<Chunk> chunks;
    for (std::uint32_t i = 0; i < items.size(); ++i) {
        const SceneItem& item = items[i];
        if (item.path == nullptr) {
            chunks.push_back({i, {}, widened(item.box, within * 0.5)});
        } else if (!item.path->empty()) {
            for (const Bow& bow : bowsOf(*item.path, item.from, item.to, kCuts)) {
                chunks.push_back({i, bow, widened(aroundBow(bow), item.radius + within * 0.5)});
            }
        }
    }
    return chunks;
}

// ---- broad phase --------------------------------------------------------------------------------

using CellIndex = std::array<std::int32_t, 3>;

/// What a cell holds of a chunk: enough to dismiss most pairs without looking elsewhere.
struct Entry {
    std::array<float, 3> least;
    std::array<float, 3> greatest;
    std::uint32_t chunk = 0;
    std::uint32_t group = 0;
};

float roundedDown(double value) {
    return std::nextafter(static_cast<float>(value), -std::numeric_limits<float>::infinity());
}

float roundedUp(double value) {
    return std::nextafter(static_cast<float>(value), std::numeric_limits<float>::infinity());
}

bool overlap(const Entry& a, const Entry& b) {
    return a.least[0] <= b.greatest[0] && b.least[0] <= a.greatest[0] &&
           a.least[1] <= b.greatest[1] && b.least[1] <= a.greatest[1] &&
           a.least[2] <= b.greatest[2] && b.least[2] <= a.greatest[2];
}

/// A uniform grid filled by counting sort.
class Grid {
public:
    Grid(std::span<const Chunk> chunks, std::span<const SceneItem> items) {
        place(chunks);
        count();
        fill(chunks, items);
    }

    /// Calls found(chunk, chunk) once for every pair whose boxes overlap, groups differing.
    template <class Found>
    void forEachPair(Found found) const {
        CellIndex cell{};
        std::size_t at = 0;
        for (cell[2] = 0; cell[2] < size_[2]; ++cell[2]) {
            for (cell[1] = 0; cell[1] < size_[1]; ++cell[1]) {
                for (cell[0] = 0; cell[0] < size_[0]; ++cell[0], ++at) {
                    pairsIn(cell, at, found);
                }
            }
        }
    }

private:
    struct Span {
        CellIndex low;
        CellIndex high;
    };

    void place(std::span<const Chunk> chunks) {
        Box all = chunks.front().around;
        for (const Chunk& chunk : chunks) {
            grow(all, chunk.around.least);
            grow(all, chunk.around.greatest);
        }
        const Vec3 extents = all.extents();
        const auto most = kMostCellsPerChunk * static_cast<double>(chunks.size());
        cell_ = kCell;
        while (cellsAlong(extents.x) * cellsAlong(extents.y) * cellsAlong(extents.z) > most) {
            cell_ *= 1.25;
        }
        origin_ = all.least;
        size_ = {static_cast<std::int32_t>(cellsAlong(extents.x)),
                 static_cast<std::int32_t>(cellsAlong(extents.y)),
                 static_cast<std::int32_t>(cellsAlong(extents.z))};
        spans_.reserve(chunks.size());
        for (const Chunk& chunk : chunks) {
            spans_.push_back({cellOf(chunk.around.least), cellOf(chunk.around.greatest)});
        }
    }

    double cellsAlong(double extent) const { return std::floor(extent / cell_) + 1.0; }

    CellIndex cellOf(const Vec3& point) const {
        const Vec3 steps = (point - origin_) / cell_;
        const auto within = [](double step, std::int32_t size) {
            return std::clamp(static_cast<std::int32_t>(step), 0, size - 1);
        };
        return {within(steps.x, size_[0]), within(steps.y, size_[1]), within(steps.z, size_[2])};
    }

    template <class Visit>
    void forEachCell(const Span& span, Visit visit) const {
        for (std::int32_t z = span.low[2]; z <= span.high[2]; ++z) {
            for (std::int32_t y = span.low[1]; y <= span.high[1]; ++y) {
                const auto row = (static_cast<std::size_t>(z) * static_cast<std::size_t>(size_[1]) +
                                  static_cast<std::size_t>(y)) *
                                 static_cast<std::size_t>(size_[0]);
                for (std::int32_t x = span.low[0]; x <= span.high[0]; ++x) {
                    visit(row + static_cast<std::size_t>(x));
                }
            }
        }
    }

    void count() {
        const auto cells = static_cast<std::size_t>(size_[0]) * static_cast<std::size_t>(size_[1]) *
                           static_cast<std::size_t>(size_[2]);
        starts_.assign(cells + 1, 0);
        for (const Span& span : spans_) {
            forEachCell(span, [&](std::size_t cell) { ++starts_[cell + 1]; });
        }
        for (std::size_t i = 1; i < starts_.size(); ++i) {
            starts_[i] += starts_[i - 1];
        }
    }

    void fill(std::span<const Chunk> chunks, std::span<const SceneItem> items) {
        entries_.resize(starts_.back());
        std::vector<std::uint32_t> next(starts_.begin(), starts_.end() - 1);
        for (std::uint32_t i = 0; i < chunks.size(); ++i) {
            const Box& box = chunks[i].around;
            const SceneItem& item = items[chunks[i].item];
            const Entry entry{
                {roundedDown(box.least.x), roundedDown(box.least.y), roundedDown(box.least.z)},
                {roundedUp(box.greatest.x), roundedUp(box.greatest.y), roundedUp(box.greatest.z)},
                i,
                item.group};
            forEachCell(spans_[i], [&](std::size_t cell) { entries_[next[cell]++] = entry; });
        }
    }

    /// The first cell both are in: there, and only there, the pair counts.
    bool isFirstShared(const CellIndex& cell, std::uint32_t a, std::uint32_t b) const {
        const CellIndex& lowA = spans_[a].low;
        const CellIndex& lowB = spans_[b].low;
        return std::max(lowA[0], lowB[0]) == cell[0] && std::max(lowA[1], lowB[1]) == cell[1] &&
               std::max(lowA[2], lowB[2]) == cell[2];
    }

    template <class Found>
    void pairsIn(const CellIndex& cell, std::size_t at, Found& found) const {
        for (std::uint32_t i = starts_[at]; i < starts_[at + 1]; ++i) {
            const Entry& a = entries_[i];
            for (std::uint32_t j = i + 1; j < starts_[at + 1]; ++j) {
                const Entry& b = entries_[j];
                if (overlap(a, b) && (a.group != b.group || a.group == 0) &&
                    isFirstShared(cell, a.chunk, b.chunk)) {
                    found(a.chunk, b.chunk);
                }
            }
        }
    }

    double cell_ = kCell;
    Vec3 origin_;
    CellIndex size_{};
    std::vector<Span> spans_;
    std::vector<std::uint32_t> starts_;
    std::vector<Entry> entries_;
};

// ---- narrow phase -------------------------------------------------------------------------------

/// Two chunks that may be near enough, and the least their distance can be.
struct Candidate {
    std::uint32_t itemA = 0;
    std::uint32_t itemB = 0;
    double lower = 0.0;
    std::uint32_t chunkA = 0;
    std::uint32_t chunkB = 0;

    auto order() const { return std::tie(itemA, itemB, lower, chunkA, chunkB); }
};

class Narrow {
public:
    Narrow(std::span<const SceneItem> items, std::span<const Chunk> chunks, double within)
        : items_(items), chunks_(chunks), within_(within) {}

    void consider(std::uint32_t first, std::uint32_t second) {
        const bool inOrder = chunks_[first].item < chunks_[second].item;
        const std::uint32_t a = inOrder ? first : second;
        const std::uint32_t b = inOrder ? second : first;
        if (chunks_[a].item == chunks_[b].item) {
            return;
        }
        const double lower = lowerBound(chunks_[a].bow, chunks_[b].bow);
        if (lower <= limit(chunks_[a].item, chunks_[b].item)) {
            candidates_.push_back({chunks_[a].item, chunks_[b].item, lower, a, b});
        }
    }

    std::vector<NearPair> pairs() {
        std::sort(candidates_.begin(),
                  candidates_.end(),
                  [](const Candidate& a, const Candidate& b) { return a.order() < b.order(); });
        std::vector<NearPair> pairs;
        for (std::size_t i = 0; i < candidates_.size();) {
            std::size_t end = i;
            while (end < candidates_.size() && candidates_[end].itemA == candidates_[i].itemA &&
                   candidates_[end].itemB == candidates_[i].itemB) {
                ++end;
            }
            appendPair(pairs, {candidates_.data() + i, end - i});
            i = end;
        }
        return pairs;
    }

private:
    bool isBox(std::uint32_t item) const { return items_[item].path == nullptr; }

    double radii(std::uint32_t a, std::uint32_t b) const {
        return (isBox(a) ? 0.0 : items_[a].radius) + (isBox(b) ? 0.0 : items_[b].radius);
    }

    /// The greatest distance between centrelines (or centreline and box) that still counts.
    double limit(std::uint32_t a, std::uint32_t b) const { return within_ + radii(a, b); }

    static double lowerBound(const Bow& a, const Bow& b) {
        if (a.piece == nullptr || b.piece == nullptr) {
            return -std::numeric_limits<double>::infinity();
        }
        const SegmentFeet feet = nearestOnSegments(a.start, a.end, b.start, b.end);
        return std::sqrt(feet.squaredDistance) - a.sag - b.sag;
    }

    void appendPair(std::vector<NearPair>& pairs, std::span<const Candidate> candidates) {
        const std::uint32_t a = candidates.front().itemA;
        const std::uint32_t b = candidates.front().itemB;
        const auto closest = isBox(a) && isBox(b) ? betweenBoxes(items_[a].box, items_[b].box)
                                                  : closestOf(candidates);
        if (closest && closest->gap.in() <= within_) {
            pairs.push_back({a, b, *closest});
        }
    }

    std::optional<Closest> closestOf(std::span<const Candidate> candidates) {
        const std::uint32_t a = candidates.front().itemA;
        const std::uint32_t b = candidates.front().itemB;
        const auto feet = nearest(candidates, limit(a, b));
        if (!feet) {
            return std::nullopt;
        }
        const auto gap = units::Inches::of(feet->distance - radii(a, b));
        return Closest{gap, feet->onA, feet->onB, feet->sA, feet->sB};
    }

    /// Candidates come with the least lower bound first, so the first that cannot beat the best
    /// ends the search.
    std::optional<Feet> nearest(std::span<const Candidate> candidates, double ceiling) {
        std::optional<Feet> best;
        for (const Candidate& candidate : candidates) {
            const double below = best ? best->distance : ceiling;
            if (best && candidate.lower >= below) {
                break;
            }
            const auto feet = find(candidate, below);
            if (feet && (!best || feet->distance < best->distance)) {
                best = feet;
            }
        }
        return best;
    }

    std::optional<Feet> find(const Candidate& candidate, double ceiling) {
        const Bow& a = chunks_[candidate.chunkA].bow;
        const Bow& b = chunks_[candidate.chunkB].bow;
        if (isBox(candidate.itemB)) {
            return finder_.find(a, toOriented(items_[candidate.itemB].box), ceiling);
        }
        if (!isBox(candidate.itemA)) {
            return finder_.find(a, b, ceiling);
        }
        auto feet = finder_.find(b, toOriented(items_[candidate.itemA].box), ceiling);
        if (feet) {
            std::swap(feet->onA, feet->onB);
            std::swap(feet->sA, feet->sB);
        }
        return feet;
    }

    /// Points of the boxes nearest to the middle of what they share, or of the gap between them.
    static std::optional<Closest> betweenBoxes(const Box& a, const Box& b) {
        const auto middle = [](double lowA, double highA, double lowB, double highB) {
            return (std::max(lowA, lowB) + std::min(highA, highB)) * 0.5;
        };
        const Vec3 at{middle(a.least.x, a.greatest.x, b.least.x, b.greatest.x),
                      middle(a.least.y, a.greatest.y, b.least.y, b.greatest.y),
                      middle(a.least.z, a.greatest.z, b.least.z, b.greatest.z)};
        const auto within = [&](const Box& box) {
            return Vec3{std::clamp(at.x, box.least.x, box.greatest.x),
                        std::clamp(at.y, box.least.y, box.greatest.y),
                        std::clamp(at.z, box.least.z, box.greatest.z)};
        };
        return Closest{clearance(a, b), within(a), within(b), 0.0, 0.0};
    }

    std::span<const SceneItem> items_;
    std::span<const Chunk> chunks_;
    double within_;
    std::vector<Candidate> candidates_;
    NearestFinder finder_;
};

}  // namespace

std::vector<NearPair> nearPairs(std::span<const SceneItem> items, double within) {
    CONTRACT(within >= 0.0);
    const std::vector<Chunk> chunks = chunksOf(items, within);
    if (chunks.empty()) {
        return {};
    }
    const Grid grid(chunks, items);
    Narrow narrow(items, chunks, within);
    grid.forEachPair([&](std::uint32_t a, std::uint32_t b) { narrow.consider(a, b); });
    return narrow.pairs();
}

}  // namespace gw::geometry
