#include "geometry/near_pairs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <memory_resource>
#include <tuple>

#include "base/contract.h"
#include "base/tolerance.h"
#include "geometry/bow.h"

namespace gw::geometry {

namespace {

/// radians, inches. The box around a slanting leg is mostly empty: it is cut. Legs along an axis
/// stay whole, and so do bends up to a quarter turn (finer ones cost more than they dismiss).
constexpr Cuts kCuts{kQuarterTurn, 1.5};

/// inches. Side of a column, in y and z.
constexpr double kColumn = 4.0;

/// More columns than this for every chunk, and the columns grow: a sparse scene must not cost
/// memory.
constexpr double kMostColumnsPerChunk = 4.0;

/// bytes. All workspace lies in one block of this size for every chunk, or a few more. Many blocks,
/// each given back to the system and taken anew at the next call, cost as much as the search.
constexpr std::size_t kBytesPerChunk = 512;

/// About as many as there will be: items in a row that are parts of one path share its pieces.
std::size_t likelyChunks(std::span<const SceneItem> items) {
    std::size_t count = items.size();
    const Path* last = nullptr;
    for (const SceneItem& item : items) {
        if (item.path != nullptr && item.path != last) {
            count += item.path->pieces().size();
        }
        last = item.path;
    }
    return count;
}

/// A bow, or the box of an item.
struct Chunk {
    Bow bow;               ///< no piece: the item's box
    double keepOff = 0.0;  ///< inches: tube's radius and what the bow strays; far for a box
    std::uint32_t item = 0;
};

/// The box around a chunk, grown so that two that are near enough overlap.
struct Around {
    std::array<float, 3> least;
    std::array<float, 3> greatest;
    std::uint32_t group = 0;
    std::uint32_t chunk = 0;
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

/// An arc lies between its chord and the chord moved by the sagitta.
Box aroundBow(const Bow& bow) {
    const Vec3 lift = bow.lift();
    Box box{bow.start - lift, bow.start - lift};
    grow(box, bow.end - lift);
    if (bow.stray > 0.0) {
        grow(box, bow.start + lift);
        grow(box, bow.end + lift);
    }
    return box;
}

/// At most, at least `value` in spite of rounding: single precision is exact to 6e-8 of the value.
float roundedDown(double value) {
    return static_cast<float>(value - std::abs(value) * 1.2e-7 - 1e-30);
}

float roundedUp(double value) {
    return static_cast<float>(value + std::abs(value) * 1.2e-7 + 1e-30);
}

/// All items cut up. Equal indices belong together.
struct Chunks {
    std::pmr::vector<Chunk> chunks;
    std::pmr::vector<Around> arounds;
    Box all;

    Chunks(std::span<const SceneItem> items,
           double within,
           std::size_t likely,
           std::pmr::memory_resource* memory)
        : chunks(memory), arounds(memory) {
        chunks.reserve(likely);
        arounds.reserve(likely);
        for (std::uint32_t i = 0; i < items.size(); ++i) {
            const SceneItem& item = items[i];
            if (item.path == nullptr) {
                constexpr double kFar = std::numeric_limits<double>::infinity();
                add({{}, kFar, i}, item.group, widened(item.box, within * 0.5));
            } else if (!item.path->empty()) {
                forEachBow(*item.path, item.from, item.to, kCuts, [&](const Bow& bow) {
                    const Box box = widened(aroundBow(bow), item.radius + within * 0.5);
                    add({bow, item.radius + bow.stray, i}, item.group, box);
                });
            }
        }
    }

private:
    void add(const Chunk& chunk, std::uint32_t group, const Box& box) {
        all = chunks.empty() ? box : all;
        grow(all, box.least);
        grow(all, box.greatest);
        arounds.push_back(
            {{roundedDown(box.least.x), roundedDown(box.least.y), roundedDown(box.least.z)},
             {roundedUp(box.greatest.x), roundedUp(box.greatest.y), roundedUp(box.greatest.z)},
             group,
             static_cast<std::uint32_t>(chunks.size())});
        chunks.push_back(chunk);
    }
};

// ---- broad phase --------------------------------------------------------------------------------

/// Boxes that overlap in x: do they in y and z, and do groups differ? Without branches: which one
/// would fail is hard to guess.
std::size_t mayMeet(const Around& a, const Around& b) {
    const auto reaches = [](const Around& low, const Around& high, std::size_t axis) {
        return static_cast<unsigned>(low.least[axis] <= high.greatest[axis]);
    };
    const unsigned overlap =
        reaches(a, b, 1) & reaches(b, a, 1) & reaches(a, b, 2) & reaches(b, a, 2);
    const unsigned apart =
        static_cast<unsigned>(a.group != b.group) | static_cast<unsigned>(a.group == 0);
    return overlap & apart;
}

bool overlapInX(const Around& a, const Around& b) {
    return a.least[0] <= b.greatest[0] && b.least[0] <= a.greatest[0];
}

/// Columns along x, a square grid in y and z. Each holds the boxes that reach into it in the order
/// in which they begin in x, and is swept once. A gutter is long and thin, so this leaves about as
/// little to test as cells would, and one leg along x lies in few columns.
class Columns {
public:
    Columns(Chunks& chunks, std::pmr::memory_resource* memory)
        : arounds_(chunks.arounds), spans_(memory), starts_(memory), held_(memory), hits_(memory) {
        std::sort(chunks.arounds.begin(), chunks.arounds.end(), [](const auto& a, const auto& b) {
            return std::tie(a.least[0], a.chunk) < std::tie(b.least[0], b.chunk);
        });
        place(chunks.all);
        fill();
    }

    /// Calls found(chunk, chunk) once for every pair whose boxes overlap, groups differing.
    template <class Found>
    void forEachPair(Found found) {
        std::size_t at = 0;
        for (std::int32_t z = 0; z < size_[1]; ++z) {
            for (std::int32_t y = 0; y < size_[0]; ++y, ++at) {
                sweep({y, z}, at, found);
            }
        }
    }

private:
    using Index = std::array<std::int32_t, 2>;  ///< in y, in z
    struct Span {
        Index low;
        Index high;
    };

    void place(const Box& all) {
        const Vec3 extents = all.extents();
        const auto most = kMostColumnsPerChunk * static_cast<double>(arounds_.size());
        while (columnsOver(extents.y) * columnsOver(extents.z) > most) {
            side_ *= 1.25;
        }
        origin_ = {all.least.y, all.least.z};
        size_ = {static_cast<std::int32_t>(columnsOver(extents.y)),
                 static_cast<std::int32_t>(columnsOver(extents.z))};
        spans_.resize(arounds_.size());
        for (const Around& around : arounds_) {
            spans_[around.chunk] = {indexOf(around.least), indexOf(around.greatest)};
        }
    }

    double columnsOver(double extent) const { return std::floor(extent / side_) + 1.0; }

    Index indexOf(const std::array<float, 3>& corner) const {
        const auto index = [&](std::size_t axis) {
            const double from = static_cast<double>(corner[axis + 1]) - origin_[axis];
            return std::clamp(static_cast<std::int32_t>(from / side_), 0, size_[axis] - 1);
        };
        return {index(0), index(1)};
    }

    template <class Visit>
    void forEachColumn(const Span& span, Visit visit) const {
        for (std::int32_t z = span.low[1]; z <= span.high[1]; ++z) {
            const auto row = static_cast<std::size_t>(z) * static_cast<std::size_t>(size_[0]);
            for (std::int32_t y = span.low[0]; y <= span.high[0]; ++y) {
                visit(row + static_cast<std::size_t>(y));
            }
        }
    }

    /// By counting: how many are in each column, where each begins, and then they go in, in order.
    void fill() {
        const auto columns =
            static_cast<std::size_t>(size_[0]) * static_cast<std::size_t>(size_[1]);
        starts_.assign(columns + 2, 0);  // shifted by one, so that filling moves them into place
        for (const Span& span : spans_) {
            forEachColumn(span, [&](std::size_t column) { ++starts_[column + 2]; });
        }
        for (std::size_t i = 2; i < starts_.size(); ++i) {
            starts_[i] += starts_[i - 1];
        }
        held_.resize(starts_.back());
        for (const Around& around : arounds_) {
            forEachColumn(spans_[around.chunk],
                          [&](std::size_t column) { held_[starts_[column + 1]++] = around; });
        }
        hits_.resize(spans_.size());
    }

    /// The first column both are in: there, and only there, the pair counts.
    bool isFirstShared(const Index& column, const Span& a, const Span& b) const {
        return std::max(a.low[0], b.low[0]) == column[0] &&
               std::max(a.low[1], b.low[1]) == column[1];
    }

    template <class Found>
    void sweep(const Index& column, std::size_t at, Found& found) {
        for (std::uint32_t i = starts_[at]; i < starts_[at + 1]; ++i) {
            const Around& around = held_[i];
            const std::size_t hits = hitsAfter(around, i + 1, starts_[at + 1]);
            for (std::size_t k = 0; k < hits; ++k) {
                if (isFirstShared(column, spans_[around.chunk], spans_[hits_[k]])) {
                    found(around.chunk, hits_[k]);
                }
            }
        }
    }

    /// Writes to hits_ the chunks that begin before this one ends and may meet it.
    std::size_t hitsAfter(const Around& around, std::uint32_t from, std::uint32_t end) {
        std::size_t hits = 0;
        for (std::uint32_t j = from; j < end && held_[j].least[0] <= around.greatest[0]; ++j) {
            hits_[hits] = held_[j].chunk;
            hits += mayMeet(around, held_[j]);
        }
        return hits;
    }

    std::span<const Around> arounds_;  ///< as they begin in x
    double side_ = kColumn;
    std::array<double, 2> origin_{};
    Index size_{};
    std::pmr::vector<Span> spans_;            ///< of the chunks
    std::pmr::vector<std::uint32_t> starts_;  ///< of each column in held_
    std::pmr::vector<Around> held_;           ///< column by column
    std::pmr::vector<std::uint32_t> hits_;
};

// ---- narrow phase -------------------------------------------------------------------------------

/// Two chunks that may be near enough, and the least their gap can be.
struct Candidate {
    std::uint32_t chunkA = 0;
    std::uint32_t chunkB = 0;
    std::uint32_t rank = 0;  ///< within item a: twice item b, one more when one of them is an arc
    float lower = 0.0F;

    std::uint32_t itemB() const { return rank / 2; }

    bool before(const Candidate& other) const {
        if (rank != other.rank) {
            return rank < other.rank;
        }
        if (lower != other.lower) {
            return lower < other.lower;
        }
        return std::tie(chunkA, chunkB) < std::tie(other.chunkA, other.chunkB);
    }
};

class Narrow {
public:
    Narrow(std::span<const SceneItem> items,
           std::span<const Chunk> chunks,
           double within,
           const Counts& counts,
           std::pmr::memory_resource* memory)
        : items_(items), chunks_(chunks), within_(within), counts_(counts), candidates_(memory) {
        candidates_.reserve(chunks.size() * 3);
    }

    void consider(std::uint32_t first, std::uint32_t second) {
        const bool inOrder = chunks_[first].item < chunks_[second].item;
        const std::uint32_t chunkA = inOrder ? first : second;
        const std::uint32_t chunkB = inOrder ? second : first;
        const Chunk& a = chunks_[chunkA];
        const Chunk& b = chunks_[chunkB];
        const SegmentFeet feet = nearestOnSegments(a.bow.start, a.bow.end, b.bow.start, b.bow.end);
        const double keepOff = a.keepOff + b.keepOff;
        const double reach = within_ + keepOff;
        if (feet.squaredDistance <= reach * reach && a.item != b.item &&
            (!counts_ || counts_(a.item, b.item))) {
            const std::uint32_t bent = a.bow.stray > 0.0 || b.bow.stray > 0.0 ? 1 : 0;
            const double lower = std::sqrt(feet.squaredDistance) - keepOff;
            candidates_.push_back({chunkA, chunkB, b.item * 2 + bent, roundedDown(lower)});
        }
    }

    std::vector<NearPair> pairs() {
        sortCandidates();
        std::vector<NearPair> pairs;
        pairs.reserve(candidates_.size() / 2);
        for (std::size_t i = 0; i < candidates_.size();) {
            std::size_t end = i;
            while (end < candidates_.size() && itemA(end) == itemA(i) &&
                   candidates_[end].itemB() == candidates_[i].itemB()) {
                ++end;
            }
            appendPair(pairs, {candidates_.data() + i, end - i});
            i = end;
        }
        return pairs;
    }

private:
    std::uint32_t itemA(std::size_t candidate) const {
        return chunks_[candidates_[candidate].chunkA].item;
    }

    /// By item a (counting sort), then by item b and lower bound.
    void sortCandidates() {
        auto* memory = candidates_.get_allocator().resource();
        std::pmr::vector<std::uint32_t> starts(items_.size() + 1, 0, memory);
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            ++starts[itemA(i) + 1];
        }
        for (std::size_t i = 1; i < starts.size(); ++i) {
            starts[i] += starts[i - 1];
        }
        std::pmr::vector<Candidate> sorted(candidates_.size(), memory);
        std::pmr::vector<std::uint32_t> next(starts.begin(), starts.end() - 1, memory);
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            sorted[next[itemA(i)]++] = candidates_[i];
        }
        for (std::size_t i = 0; i + 1 < starts.size(); ++i) {
            std::sort(sorted.begin() + starts[i],
                      sorted.begin() + starts[i + 1],
                      [](const Candidate& a, const Candidate& b) { return a.before(b); });
        }
        candidates_ = std::move(sorted);
    }

    bool isBox(std::uint32_t item) const { return items_[item].path == nullptr; }

    double radii(std::uint32_t a, std::uint32_t b) const {
        return (isBox(a) ? 0.0 : items_[a].radius) + (isBox(b) ? 0.0 : items_[b].radius);
    }

    void appendPair(std::vector<NearPair>& pairs, std::span<const Candidate> candidates) {
        const std::uint32_t a = chunks_[candidates.front().chunkA].item;
        const std::uint32_t b = candidates.front().itemB();
        const auto closest = isBox(a) && isBox(b) ? betweenBoxes(items_[a].box, items_[b].box)
                                                  : nearest(candidates, radii(a, b));
        if (closest && closest->gap.in() <= within_) {
            pairs.push_back({a, b, *closest});
        }
    }

    /// Legs come first, then the least lower bound. What cannot beat the best so far by what a
    /// clearance may be off is passed over; in bundles the line between the nearest legs mostly
    /// shows that for the bends.
    std::optional<Closest> nearest(std::span<const Candidate> candidates, double radii) {
        const Candidate* best = nullptr;
        Feet feet;
        double below = within_ + radii;
        for (const Candidate& candidate : candidates) {
            if (candidate.lower > below - radii ||
                (best != nullptr && isBeyond(candidate, feet, below))) {
                continue;
            }
            if (const auto found = find(candidate, below)) {
                best = &candidate;
                feet = *found;
                below = found->distance - kClearanceError;
            }
        }
        return best != nullptr ? std::optional(closest(*best, feet, radii)) : std::nullopt;
    }

    bool isBeyond(const Candidate& candidate, const Feet& feet, double below) const {
        const Bow& a = chunks_[candidate.chunkA].bow;
        const Bow& b = chunks_[candidate.chunkB].bow;
        if (a.piece == nullptr || b.piece == nullptr || !(feet.distance > kSamePoint)) {
            return false;
        }
        return apartAlong((feet.onA - feet.onB) / feet.distance, a, b) > below;
    }

    Closest closest(const Candidate& candidate, const Feet& feet, double radii) const {
        const auto s = [](const Bow& bow, const Vec3& point) {
            return bow.piece == nullptr ? 0.0 : lengthAt(bow, point);
        };
        return {units::Inches::of(feet.distance - radii),
                feet.onA,
                feet.onB,
                s(chunks_[candidate.chunkA].bow, feet.onA),
                s(chunks_[candidate.chunkB].bow, feet.onB)};
    }

    std::optional<Feet> find(const Candidate& candidate, double ceiling) {
        const Bow& a = chunks_[candidate.chunkA].bow;
        const Bow& b = chunks_[candidate.chunkB].bow;
        if (b.piece == nullptr) {
            return finder_.find(a, toOriented(items_[candidate.itemB()].box), ceiling);
        }
        if (a.piece != nullptr) {
            return finder_.find(a, b, ceiling);
        }
        const Box& box = items_[chunks_[candidate.chunkA].item].box;
        auto feet = finder_.find(b, toOriented(box), ceiling);
        if (feet) {
            std::swap(feet->onA, feet->onB);
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
    const Counts& counts_;
    std::pmr::vector<Candidate> candidates_;
    NearestFinder finder_;
};

}  // namespace

std::vector<NearPair> nearPairs(std::span<const SceneItem> items,
                                double within,
                                const Counts& counts) {
    CONTRACT(within >= 0.0);
    const std::size_t likely = likelyChunks(items);
    std::pmr::monotonic_buffer_resource memory((likely + 1) * kBytesPerChunk);
    Chunks chunks(items, within, likely, &memory);
    if (chunks.chunks.empty()) {
        return {};
    }
    Columns columns(chunks, &memory);
    Narrow narrow(items, chunks.chunks, within, counts, &memory);
    columns.forEachPair([&](std::uint32_t a, std::uint32_t b) { narrow.consider(a, b); });
    return narrow.pairs();
}

std::vector<NearPair> nearPairsOf(std::span<const SceneItem> items,
                                  std::span<const bool> asked,
                                  double within,
                                  const Counts& counts) {
    CONTRACT(within >= 0.0 && asked.size() == items.size());
    const std::size_t likely = likelyChunks(items);
    std::pmr::monotonic_buffer_resource memory((likely + 1) * kBytesPerChunk);
    const Chunks chunks(items, within, likely, &memory);
    const auto isAsked = [&](const Around& around) {
        return asked[chunks.chunks[around.chunk].item];
    };
    Narrow narrow(items, chunks.chunks, within, counts, &memory);
    for (const Around& one : chunks.arounds) {
        if (!isAsked(one)) {
            continue;
        }
        for (const Around& other : chunks.arounds) {
            const bool once = !isAsked(other) || one.chunk < other.chunk;
            if (once && overlapInX(one, other) && mayMeet(one, other) != 0) {
                narrow.consider(one.chunk, other.chunk);
            }
        }
    }
    return narrow.pairs();
}

}  // namespace gw::geometry
