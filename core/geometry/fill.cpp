#include "geometry/fill.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <utility>

#include "base/contract.h"
#include "base/tolerance.h"
#include "geometry/arc_turns.h"

namespace gw::geometry {

namespace {

// ---- one conductor: over which x does how many of its parts get cut --------------------------
//
// A plane at x cuts the disc at arc length s when |x - X(s)| <= r sqrt(1 - tx(s)^2). As long as X
// only rises (or only falls), both ends of that span move the same way, because a bend's radius
// exceeds the conductor's: d/ds of either end is X'(s) times a factor of one sign. So the discs cut
// by one plane on such a run are consecutive: one part. Two runs meet in a joint; where both are
// cut within the joint's disc they are one part, not two. Hence
//     parts cut at x = runs whose range holds x - joints whose common range holds x.

/// slope or fraction of the radius. Below it a piece stands still in x: it moves by less than
/// 1e-7 in over a whole gutter, and its sign is noise.
constexpr double kStandsStill = 1e-9;

struct Range {
    double low = 0.0;
    double high = 0.0;
};

Range hull(const Range& a, const Range& b) {
    return {std::min(a.low, b.low), std::max(a.high, b.high)};
}

Range overlap(const Range& a, const Range& b) {
    return {std::max(a.low, b.low), std::min(a.high, b.high)};
}

/// A stretch of path on which X only rises (sense 1), only falls (-1) or stands still (0).
struct Run {
    Range range;
    int sense = 0;
    double joint = 0.0;  ///< X where it begins
};

int senseOf(double rise, double scale) {
    if (std::abs(rise) <= kStandsStill * scale) {
        return 0;
    }
    return rise > 0.0 ? 1 : -1;
}

constexpr Vec3 kAlongX{1.0, 0.0, 0.0};
constexpr double kQuarter = std::numbers::pi / 2.0 + 1e-9;  // a quarter turn, with rounding

/// Where a centreline is in x, and how fast it goes along x.
struct Passing {
    double x = 0.0;
    double slope = 0.0;  ///< by arc length, -1 to 1
};

Passing passingAt(const Piece& piece, double s) {
    if (!piece.isArc()) {
        return {piece.origin.x + piece.u.x * s, piece.u.x};
    }
    if (s == 0.0) {  // where most arcs begin: nothing to work out
        return {piece.origin.x + piece.u.x * piece.radius, piece.v.x};
    }
    const double sine = std::sin(s / piece.radius);
    const double cosine = std::cos(s / piece.radius);
    return {piece.origin.x + (piece.u.x * cosine + piece.v.x * sine) * piece.radius,
            piece.v.x * cosine - piece.u.x * sine};
}

/// The runs of a part of one path.
class Runs {
public:
    void find(const Path& path, double radius, double from, double to) {
        runs_.clear();
        radius_ = radius;
        bool afterLeg = false;
        for (std::size_t i = 0; i < path.pieces().size(); ++i) {
            const Piece& piece = path.pieces()[i];
            const double first = std::max(0.0, from - path.startOf(i));
            const double last = std::min(piece.length, to - path.startOf(i));
            if (last - first <= kSamePoint) {
                continue;
            }
            if (!(afterLeg && legFollows(path, i, to) && addPlainBend(piece))) {
                addPiece(piece, first, last);
            }
            afterLeg = !piece.isArc();
        }
    }
    const std::vector<Run>& runs() const { return runs_; }

    /// Where run i and the one before it are cut as one. Empty (low > high) when nowhere.
    Range joint(std::size_t i) const {
        const Range disc{runs_[i].joint - radius_, runs_[i].joint + radius_};
        return overlap(disc, overlap(runs_[i - 1].range, runs_[i].range));
    }

private:
    /// The disc's range in x.
    Range disc(const Passing& at) const {
        const double half = radius_ * std::sqrt(std::max(0.0, 1.0 - at.slope * at.slope));
        return {at.x - half, at.x + half};
    }

    /// Whether a leg comes after piece i, before arc length `to`.
    static bool legFollows(const Path& path, std::size_t i, double to) {
        if (i + 1 >= path.pieces().size() || path.pieces()[i + 1].isArc()) {
            return false;
        }
        return std::min(path.pieces()[i + 1].length, to - path.startOf(i + 1)) > kSamePoint;
    }

    /// A whole bend between two legs, up to a quarter turn, that starts along x one way and bends
    /// toward the same way or starts across: X does not turn on it, and as it joins the legs
    /// smoothly, their discs at its ends are its own. So most bends need no sine. False: not such.
    bool addPlainBend(const Piece& piece) {
        const int out = senseOf(piece.v.x, 1.0);
        const int toward = senseOf(-piece.u.x, 1.0);
        if (piece.radius <= radius_ || piece.length > piece.radius * kQuarter || out * toward < 0) {
            return false;
        }
        const double start = passingAt(piece, 0.0).x;
        append({{start, start}, out != 0 ? out : toward, start});
        return true;
    }

    void addPiece(const Piece& piece, double first, double last) {
        if (piece.isArc() && piece.radius <= radius_) {
            addKnot(piece, first, last);
            return;
        }
        Passing start = passingAt(piece, first);
        const Passing end = passingAt(piece, last);
        if (piece.isArc() && mayTurn(piece, first, last, start, end)) {
            const Wave wave = waveOf(piece, kAlongX);
            for (const double turn : Turns(wave, first / piece.radius, last / piece.radius)) {
                const Passing there = passingAt(piece, turn * piece.radius);
                addStretch(start, there, turn * piece.radius - first);
                start = there;
                first = turn * piece.radius;
            }
        }
        addStretch(start, end, last - first);
    }

    /// Below half a turn X cannot turn unless its slope changes sign. A slope of nothing at an end
    /// is a turn there, not between.
    static bool mayTurn(
        const Piece& arc, double first, double last, const Passing& start, const Passing& end) {
        const bool below = last - first < arc.radius * std::numbers::pi;
        const bool alike = senseOf(start.slope, 1.0) * senseOf(end.slope, 1.0) >= 0;
        return !below || !alike;
    }

    void addStretch(const Passing& start, const Passing& end, double length) {
        append({hull(disc(start), disc(end)), senseOf(end.x - start.x, length), start.x});
    }

    /// A bend tighter than the conductor's own radius (only in faulty paths): one lump.
    void addKnot(const Piece& piece, double first, double last) {
        const Extent extent = extentAlong(piece, first, last, radius_, kAlongX);
        append({{extent.least, extent.greatest}, 0, piece.pointAt(first).x});
    }

    void append(const Run& next) {
        if (runs_.empty() || runs_.back().sense * next.sense < 0) {
            runs_.push_back(next);
            return;
        }
        runs_.back().range = hull(runs_.back().range, next.range);
        if (runs_.back().sense == 0) {
            runs_.back().sense = next.sense;
        }
    }

    double radius_ = 0.0;
    std::vector<Run> runs_;
};

// ---- all of them: steps in x ----------------------------------------------------------------

/// x in steps of 2^-24 in (6e-8): tubes that merely touch in x do not count together by a rounding
/// error. Areas in steps of 2^-40 in2: what is added and taken away again leaves exactly nothing.
constexpr double kStepsPerInch = 16777216.0;
constexpr double kStepsPerSquareInch = 1099511627776.0;

struct Step {
    std::int64_t at = 0;
    std::int64_t conductors = 0;
    std::int64_t outside = 0;
    std::int64_t blocks = 0;

    /// The areas; not the place.
    Step& operator+=(const Step& other) {
        conductors += other.conductors;
        outside += other.outside;
        blocks += other.blocks;
        return *this;
    }
    Step opposite() const { return {at, -conductors, -outside, -blocks}; }
};

double squareInches(std::int64_t steps) {
    return static_cast<double>(steps) / kStepsPerSquareInch;
}

FillSlice sliceOf(const Step& sum) {
    return {static_cast<double>(sum.at) / kStepsPerInch,
            squareInches(sum.conductors),
            squareInches(sum.outside),
            squareInches(sum.blocks)};
}

/// What a slice was made from: doubles hold these steps exactly up to 8192 in2.
Step stepOf(const FillSlice& slice) {
    return {std::llround(slice.from * kStepsPerInch),
            std::llround(slice.conductors * kStepsPerSquareInch),
            std::llround(slice.outsideBlocks * kStepsPerSquareInch),
            std::llround(slice.blocks * kStepsPerSquareInch)};
}

bool sameAreas(const FillSlice& a, const FillSlice& b) {
    return a.conductors == b.conductors && a.outsideBlocks == b.outsideBlocks &&
           a.blocks == b.blocks;
}

class Sweep {
public:
    Sweep(double length, std::size_t bodies) : length_(length) { steps_.reserve(bodies * 4); }

    void add(const FillConductor& conductor) {
        if (conductor.path == nullptr || conductor.path->empty()) {
            return;
        }
        const Path& path = *conductor.path;
        const double end = path.length().in();
        Step count{0, std::llround(conductor.area * kStepsPerSquareInch), 0, 0};
        if (conductor.inBlocks.empty()) {
            count.outside = count.conductors;
            addParts(path, conductor.radius, {0.0, end}, count);
            return;
        }
        addParts(path, conductor.radius, {0.0, end}, count);
        addOutside(conductor, {0, 0, count.conductors, 0});
    }

    void add(const Filling& filling) {
        for (const FillConductor& conductor : filling.conductors) {
            add(conductor);
        }
        for (const Box& block : filling.blocks) {
            add(block);
        }
    }

    void add(const Box& block) {
        const Vec3 size = block.extents();
        addRange({block.least.x, block.greatest.x},
                 {0, 0, 0, std::llround(size.y * size.z * kStepsPerSquareInch)});
    }

    /// What was added so far becomes taken away.
    void negate() {
        std::transform(steps_.begin(), steps_.end(), steps_.begin(), [](const Step& step) {
            return step.opposite();
        });
    }

    /// Adds what was gathered to a profile in its least form: no two slices in a row alike.
    void addTo(std::vector<FillSlice>& slices) {
        std::sort(
            steps_.begin(), steps_.end(), [](const Step& a, const Step& b) { return a.at < b.at; });
        const auto behind = std::find_if(
            steps_.begin(), steps_.end(), [&](const Step& step) { return xOf(step) >= length_; });
        const bool toTheEnd = behind != steps_.end();
        steps_.erase(behind, steps_.end());
        if (steps_.empty()) {
            return;
        }
        const std::size_t first = behindOf(slices, steps_.front()) - 1;
        const std::size_t last = toTheEnd ? slices.size() : behindOf(slices, steps_.back());
        const std::vector<FillSlice> fresh = merged(slices, first, last);
        const std::size_t kept = std::min(fresh.size(), last - first);
        const auto at = slices.begin() + static_cast<std::ptrdiff_t>(first);
        std::copy_n(fresh.begin(), kept, at);
        const auto middle = static_cast<std::ptrdiff_t>(kept);
        if (kept < fresh.size()) {
            slices.insert(at + middle, fresh.begin() + middle, fresh.end());
        } else {
            slices.erase(at + middle, slices.begin() + static_cast<std::ptrdiff_t>(last));
        }
    }

private:
    static double xOf(const Step& step) { return static_cast<double>(step.at) / kStepsPerInch; }

    /// Behind the slice in which the step lies.
    static std::size_t behindOf(const std::vector<FillSlice>& slices, const Step& step) {
        const auto after = std::upper_bound(
            slices.begin(), slices.end(), xOf(step), [](double value, const FillSlice& slice) {
                return value < slice.from;
            });
        return static_cast<std::size_t>(after - slices.begin());
    }

    /// The slices first to last with the steps added, told apart from the slice before them.
    std::vector<FillSlice> merged(const std::vector<FillSlice>& slices,
                                  std::size_t first,
                                  std::size_t last) const {
        std::vector<FillSlice> fresh;
        fresh.reserve(last - first + steps_.size());
        const FillSlice* before = first > 0 ? &slices[first - 1] : nullptr;
        Step stood;  // of the slices
        Step added;  // of the steps so far
        for (std::size_t slice = first, step = 0; slice < last || step < steps_.size();) {
            const Step next = slice < last ? stepOf(slices[slice]) : Step{};
            const bool slicesTurn =
                slice < last && (step == steps_.size() || next.at <= steps_[step].at);
            Step sum{slicesTurn ? next.at : steps_[step].at};
            if (slicesTurn) {
                stood = next;
                ++slice;
            }
            for (; step < steps_.size() && steps_[step].at == sum.at; ++step) {
                added += steps_[step];
            }
            sum += stood;
            sum += added;
            const FillSlice made = sliceOf(sum);
            if (before == nullptr || !sameAreas(*before, made)) {
                fresh.push_back(made);
                before = &fresh.back();
            }
        }
        return fresh;
    }

    /// The nearest step, within the gutter.
    std::int64_t stepAt(double x) const {
        // Never negative, so this rounds rightly; a library call would be the slowest step here.
        // NOLINTNEXTLINE(bugprone-incorrect-roundings)
        return static_cast<std::int64_t>(std::clamp(x, 0.0, length_) * kStepsPerInch + 0.5);
    }

    void addRange(const Range& range, const Step& amount) {
        const std::int64_t low = stepAt(range.low);
        const std::int64_t high = stepAt(range.high);
        if (range.low < range.high && low < high) {
            steps_.push_back({low, amount.conductors, amount.outside, amount.blocks});
            steps_.push_back({high, -amount.conductors, -amount.outside, -amount.blocks});
        }
    }

    void addParts(const Path& path, double radius, const Range& span, const Step& count) {
        runs_.find(path, radius, span.low, span.high);
        for (std::size_t i = 0; i < runs_.runs().size(); ++i) {
            addRange(runs_.runs()[i].range, count);
            if (i > 0) {
                addRange(runs_.joint(i), count.opposite());
            }
        }
    }

    /// A part counts as outside when any of it is: the parts of the path outside, less one where
    /// the plane cuts right through a block's stretch and so joins the parts before and after it.
    void addOutside(const FillConductor& conductor, const Step& count) {
        const double end = conductor.path->length().in();
        double outsideFrom = 0.0;
        for (const Range& inside : stretchesInside(conductor)) {
            addParts(*conductor.path, conductor.radius, {outsideFrom, inside.low}, count);
            if (inside.low > kSamePoint && inside.high < end - kSamePoint) {
                addRange(cutThrough(conductor, inside), count.opposite());
            }
            outsideFrom = inside.high;
        }
        addParts(*conductor.path, conductor.radius, {outsideFrom, end}, count);
    }

    /// inBlocks in order, overlaps merged.
    static std::vector<Range> stretchesInside(const FillConductor& conductor) {
        std::vector<std::pair<double, double>> sorted(conductor.inBlocks.begin(),
                                                      conductor.inBlocks.end());
        std::sort(sorted.begin(), sorted.end());
        std::vector<Range> merged;
        for (const auto& [from, to] : sorted) {
            if (!merged.empty() && from <= merged.back().high + kSamePoint) {
                merged.back().high = std::max(merged.back().high, to);
            } else {
                merged.push_back({from, to});
            }
        }
        return merged;
    }

    static Range discAt(const FillConductor& conductor, double s) {
        const double x = conductor.path->pointAt(s).x;
        const double half = discReach(conductor.radius, kAlongX, conductor.path->tangentAt(s));
        return {x - half, x + half};
    }

    Range cutThrough(const FillConductor& conductor, const Range& inside) {
        Range through = overlap(discAt(conductor, inside.low), discAt(conductor, inside.high));
        runs_.find(*conductor.path, conductor.radius, inside.low, inside.high);
        for (std::size_t i = 1; i < runs_.runs().size(); ++i) {
            through = overlap(through, runs_.joint(i));
        }
        return through;
    }

    double length_;
    std::vector<Step> steps_;
    Runs runs_;
};

// ---- reading a profile ------------------------------------------------------------------------

/// The greatest `area` among slices that pass `counts`, over the first unbroken row of slices that
/// have it.
template <class Counts, class Area>
FillProfile::Worst worst(const FillProfile& profile, Counts counts, Area area) {
    FillProfile::Worst found;
    bool open = false;
    for (std::size_t i = 0; i < profile.slices.size(); ++i) {
        const FillSlice& slice = profile.slices[i];
        const double to =
            i + 1 < profile.slices.size() ? profile.slices[i + 1].from : profile.length;
        const bool in = counts(slice);
        if (in && area(slice) > found.area) {
            found = {area(slice), slice.from, to, area(slice) / profile.interior};
            open = true;
        } else if (open && in && area(slice) == found.area) {
            found.to = to;
        } else {
            open = false;
        }
    }
    return found;
}

bool fuller(const FillSlice& a, const FillSlice& b) {
    return std::pair(a.conductors, a.splice()) > std::pair(b.conductors, b.splice());
}

}  // namespace

FillProfile::Worst FillProfile::worstConductors() const {
    return worst(
        *this,
        [](const FillSlice&) { return true; },
        [](const FillSlice& s) { return s.conductors; });
}

FillProfile::Worst FillProfile::worstSplice() const {
    return worst(
        *this,
        [](const FillSlice& s) { return s.blocks > 0.0; },
        [](const FillSlice& s) { return s.splice(); });
}

FillProfile::Worst FillProfile::worstConductors(bool withBlock) const {
    return worst(
        *this,
        [withBlock](const FillSlice& s) { return (s.blocks > 0.0) == withBlock; },
        [](const FillSlice& s) { return s.conductors; });
}

const FillSlice& FillProfile::at(double x) const {
    CONTRACT(!slices.empty());
    const auto after = std::upper_bound(
        slices.begin() + 1, slices.end(), x, [](double value, const FillSlice& slice) {
            return value < slice.from;
        });
    auto best = after - 1;
    if (best != slices.begin() && x - best->from <= kSamePoint && fuller(*(best - 1), *best)) {
        return *(best - 1);
    }
    if (after != slices.end() && after->from - x <= kSamePoint && fuller(*after, *best)) {
        return *after;
    }
    return *best;
}

FillProfile fillProfile(const Vec3& inside,
                        std::span<const FillConductor> conductors,
                        std::span<const Box> blocks) {
    FillProfile profile{{FillSlice{}}, inside.x, inside.y * inside.z};
    exchange(profile, {}, {conductors, blocks});
    return profile;
}

void exchange(FillProfile& profile, const Filling& out, const Filling& in) {
    Sweep sweep(profile.length, out.size() + in.size());
    sweep.add(out);
    sweep.negate();
    sweep.add(in);
    sweep.addTo(profile.slices);
}

}  // namespace gw::geometry
