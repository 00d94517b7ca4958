#include "routing/ways.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <tuple>

#include "base/tolerance.h"
#include "checks/clearance_scene.h"

namespace gw::routing {
namespace {

using Points = std::vector<Vec3>;

// What makes one way better than another, in inches of conductor. *Common practice, no source.*
constexpr double kPerBend = 1.0;
constexpr double kPerRadian = 0.5;
constexpr double kPerDepth = 0.25;  // an inch of mean distance from the back
constexpr double kPerSlant = 0.3;   // an inch on a leg along none of the gutter's axes
constexpr double kPerScrew = 8.0;   // over a screw that could not be reached any more
constexpr double kOtherMouth = 6.0;

/// Clear of walls and bodies by so much where it may choose, inches: room for rounding.
constexpr double kClear = 0.01;

/// Legal ways kept of one lane, and of all.
constexpr std::size_t kMostOfLane = 5;
constexpr std::size_t kMost = 700;

double along(const Vec3& v, int axis) {
    return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}

int mainAxis(const Vec3& v) {
    const double x = std::abs(v.x);
    const double y = std::abs(v.y);
    return x >= y && x >= std::abs(v.z) ? 0 : y >= std::abs(v.z) ? 1 : 2;
}

double tidy(double value) {
    constexpr double kFinest = 1e9;
    return std::round(value * kFinest) / kFinest + 0.0;
}

Points withoutIdle(const Points& points) {
    Points kept{points.front()};
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        if (distance(kept.back(), points[i]) < 1e-6) {
            continue;
        }
        const Vec3 after = points[i + 1] - points[i];
        if (norm(after) > 1e-6 && angleBetween(unit(points[i] - kept.back()), unit(after)) > 1e-6) {
            kept.push_back({tidy(points[i].x), tidy(points[i].y), tidy(points[i].z)});
        }
    }
    kept.push_back(points.back());
    return kept;
}

/// A polyline with what it would cost, before anything is built.
struct Draft {
    Points points;
    double cost = 0.0;
};

/// Whether it can be bent, leaves straight and keeps its lead-ins; and about what it costs.
class Drafter {
public:
    Drafter(const Span& span, const Terminal& a, const Terminal& b) : span_(span), a_(a), b_(b) {}

    std::optional<Draft> draft(const Points& raw) const {
        Draft draft{withoutIdle(raw), 0.0};
        const Points& p = draft.points;
        const std::size_t legs = p.size() - 1;
        if (distance(p[0], p[1]) < kSamePoint || !leaves(p[0], p[1], a_) ||
            !leaves(p[legs], p[legs - 1], b_)) {
            return std::nullopt;
        }
        double tangent = 0.0;  // of the bend at the leg's start
        for (std::size_t i = 0; i < legs; ++i) {
            const Vec3 leg = p[i + 1] - p[i];
            const double length = norm(leg);
            double next = 0.0;
            if (i + 1 < legs) {
                const double turn = angleBetween(leg / length, unit(p[i + 2] - p[i + 1]));
                if (turn > kSteepest) {
                    return std::nullopt;
                }
                next = geometry::tangentLength(span_.bend, turn);
                draft.cost += kPerBend + kPerRadian * turn + span_.bend * turn - 2.0 * next;
            }
            const double lead = (i == 0 ? a_.lead : 0.0) + (i + 1 == legs ? b_.lead : 0.0);
            if (length < tangent + next + lead - 1e-9) {
                return std::nullopt;
            }
            draft.cost += length + slant(leg, length);
            tangent = next;
        }
        return draft;
    }

private:
    static constexpr double kSteepest = 2.4;  // radians; beyond it a tangent is long for nothing

    static bool leaves(const Vec3& tip, const Vec3& next, const Terminal& terminal) {
        return !terminal.held() || angleBetween(unit(next - tip), terminal.axis) < 1e-6;
    }
    static double slant(const Vec3& leg, double length) {
        const double most = std::abs(along(leg, mainAxis(leg)));
        return most > 0.9999 * length ? 0.0 : kPerSlant * length;
    }

    const Span& span_;
    const Terminal& a_;
    const Terminal& b_;
};

// ---- lanes ----------------------------------------------------------------------------------

struct Lane {
    double y = 0.0;
    double z = 0.0;
};

/// Heights or depths of lanes: the ends' own, some near these, and some at either wall.
std::vector<double> levels(double room,
                           double radius,
                           double pitch,
                           const std::vector<double>& own) {
    constexpr int kAtWalls = 5;
    constexpr double kBeside = 5.0;  // lanes
    const double low = *std::min_element(own.begin(), own.end()) - kBeside * pitch;
    const double high = *std::max_element(own.begin(), own.end()) + kBeside * pitch;
    const auto near = [&](double at) { return at > low && at < high; };
    std::vector<double> found;
    const int most = static_cast<int>((room - 2.0 * radius) / pitch);
    for (int i = 0; i <= most; ++i) {
        const double fromZero = radius + kClear + i * pitch;
        const double fromRoom = room - fromZero;
        for (const double at : {fromZero, fromRoom}) {
            if (i < kAtWalls || near(at)) {
                found.push_back(at);
            }
        }
    }
    found.insert(found.end(), own.begin(), own.end());
    std::sort(found.begin(), found.end());
    std::vector<double> kept;
    for (const double at : found) {
        const bool isOwn = std::find(own.begin(), own.end(), at) != own.end();
        const bool fits = at >= radius - kLimitSlack && at <= room - radius + kLimitSlack;
        if (fits && (kept.empty() || at - kept.back() > 0.1 || isOwn)) {
            kept.push_back(at);
        }
    }
    return kept;
}

std::vector<Lane> lanesOf(const Span& span,
                          const Surroundings& around,
                          const Terminal& a,
                          const Terminal& b) {
    const auto ys = levels(around.inside.y, span.radius, around.pitch, {a.mouth.y, b.mouth.y});
    const auto zs = levels(around.inside.z, span.radius, around.pitch, {a.mouth.z, b.mouth.z});
    std::vector<Lane> lanes;
    for (const double y : ys) {
        for (const double z : zs) {
            lanes.push_back({y, z});
        }
    }
    return lanes;
}

// ---- from a terminal on to a lane -----------------------------------------------------------

/// Corners from the terminal on, the last on the lane. sx: which way along x it goes on.
class Approaches {
public:
    Approaches(double bend, const Terminal& terminal, double sx)
        : bend_(bend), terminal_(terminal), sx_(sx) {}

    std::vector<Points> to(const Lane& lane) const {
        std::vector<Points> all;
        if (!terminal_.held()) {
            fromLoose(lane, all);
        } else if (mainAxis(terminal_.axis) == 0) {
            fromAlong(lane, all);
        } else {
            fromAcross(lane, all);
        }
        return all;
    }

private:
    Vec3 onAxis(double out) const { return terminal_.mouth + terminal_.axis * out; }

    /// Run along x of an offset of `aside` with bends of at most `steepest`; its turn.
    std::pair<double, double> offset(double aside, double steepest) const {
        const double turn =
            std::min(steepest, std::acos(std::clamp(1.0 - aside / (2.0 * bend_), -1.0, 1.0)));
        return {aside / std::tan(turn), turn};
    }

    void fromLoose(const Lane& lane, std::vector<Points>& all) const {
        const Vec3& tip = terminal_.mouth;
        const double aside = std::hypot(lane.y - tip.y, lane.z - tip.z);
        if (aside < 1e-6) {
            all.push_back({});
            return;
        }
        all.push_back({Vec3{tip.x, lane.y, lane.z}});
        for (const double steepness : kSteepness) {
            const double run = aside / std::tan(steepness);
            all.push_back({Vec3{tip.x + sx_ * run, lane.y, lane.z}});
        }
    }

    void fromAlong(const Lane& lane, std::vector<Points>& all) const {
        const Vec3& mouth = terminal_.mouth;
        const double aside = std::hypot(lane.y - mouth.y, lane.z - mouth.z);
        const bool onward = terminal_.axis.x * sx_ > 0.0;
        if (aside < 1e-6) {
            if (onward) {
                all.push_back({});
            }
            return;
        }
        for (const double more : kOuts) {
            if (onward) {
                double before = 0.0;
                for (const double steepness : kSteepness) {
                    const auto [run, turn] = offset(aside, steepness);
                    if (std::abs(turn - before) > 1e-6) {
                        offsetOn(lane, more, run, turn, all);
                    }
                    before = turn;
                }
            }
            if (aside >= 2.0 * bend_) {
                const Vec3 first = onAxis(terminal_.lead + bend_ + more);
                all.push_back({first, Vec3{first.x, lane.y, lane.z}});
            }
        }
    }

    void offsetOn(
        const Lane& lane, double more, double run, double turn, std::vector<Points>& all) const {
        const Vec3 first =
            onAxis(terminal_.lead + geometry::tangentLength(bend_, turn) + more + 1e-6);
        all.push_back({first, Vec3{first.x + sx_ * run, lane.y, lane.z}});
    }

    void fromAcross(const Lane& lane, std::vector<Points>& all) const {
        const Vec3& mouth = terminal_.mouth;
        const int out = mainAxis(terminal_.axis);
        const int side = 3 - out;  // the other of y (1) and z (2)
        const Vec3 foot{mouth.x, lane.y, lane.z};
        const double height = dot(foot - mouth, terminal_.axis);
        const double aside = std::abs(along(foot, side) - along(mouth, side));
        if (height < terminal_.lead) {
            return;
        }
        if (aside < 1e-6) {
            all.push_back({foot});
            return;
        }
        slanting(foot, height, all);
        fanning(foot, height, aside, all);
    }

    /// Aside first, in the plane across the gutter.
    void slanting(const Vec3& foot, double height, std::vector<Points>& all) const {
        for (const double more : {0.0, 0.5, 1.0, 2.0, 3.5, 5.0}) {
            const double out = terminal_.lead + 0.05 + more;
            if (out < height - 0.2) {
                all.push_back({onAxis(out), foot});
            }
        }
        all.push_back({onAxis(height), foot});
    }

    /// Along x first, aside on the way.
    void fanning(const Vec3& foot, double height, double aside, std::vector<Points>& all) const {
        const Vec3 elbow = onAxis(height);
        for (const double steepness : {kSteepness[0], kSteepness[1], kSteepness[2]}) {
            Vec3 lands = foot;
            lands.x = elbow.x + sx_ * aside / std::tan(steepness);
            all.push_back({elbow, lands});
        }
        for (const double steepness : {kSteepness[0], kSteepness[2]}) {
            const auto [run, turn] = offset(aside, steepness);
            for (const double more : {0.0, 3.0}) {
                Vec3 leaves = elbow;
                leaves.x += sx_ * (bend_ + geometry::tangentLength(bend_, turn) + more + 1e-6);
                Vec3 lands = foot;
                lands.x = leaves.x + sx_ * run;
                all.push_back({elbow, leaves, lands});
            }
        }
    }

    static constexpr std::array<double, 5> kOuts = {0.0, 0.75, 1.75, 3.5, 6.0};
    static constexpr std::array<double, 4> kSteepness = {
        std::numbers::pi / 12, std::numbers::pi / 6, std::numbers::pi / 4, std::numbers::pi / 2.7};

    double bend_;
    const Terminal& terminal_;
    double sx_;
};

// ---- collecting -----------------------------------------------------------------------------

double meanDepth(const Ribbon& ribbon) {
    double sum = 0.0;
    for (std::size_t i = 0; i + 1 < ribbon.points.size(); ++i) {
        sum +=
            (ribbon.points[i].z + ribbon.points[i + 1].z) / 2.0 * (ribbon.at[i + 1] - ribbon.at[i]);
    }
    return sum / std::max(ribbon.to - ribbon.from, kSamePoint);
}

double beyond(double least, double greatest, double inside) {
    return std::max({0.0, -least, greatest - inside});
}

double overlapLengthFree(const Terminal& terminal, double radius) {
    return terminal.block ? checks::kHeldRadii * radius + 1e-9 : 0.0;
}

class Collector {
public:
    Collector(const Span& span, const Surroundings& around) : span_(span), around_(around) {}

    void collect(std::size_t start, std::size_t end, const GoOn& goOn) {
        start_ = start;
        end_ = end;
        const Terminal& a = span_.starts[start];
        const Terminal& b = span_.ends[end];
        keepOf(jogs(a, b), 80);
        for (const Lane& lane : lanesOf(span_, around_, a, b)) {
            if (goOn && !goOn()) {
                return;
            }
            keepOf(runs(a, b, lane), kMostOfLane);
        }
    }

    /// These as they are, between the ends that they are for.
    void collect(const std::vector<Points>& lines, std::size_t start, std::size_t end) {
        start_ = start;
        end_ = end;
        const Drafter drafter(span_, span_.starts[start], span_.ends[end]);
        for (const Points& line : lines) {
            if (const auto draft = drafter.draft(line)) {
                keep(*draft);
            }
        }
    }

    Ways take() {
        std::stable_sort(found_.ways.begin(), found_.ways.end(), [](const auto& p, const auto& q) {
            return p->cost < q->cost;
        });
        dropTwins();
        if (found_.ways.size() > kMost) {
            found_.ways.resize(kMost);
        }
        const CellGrid grid(around_.inside);
        for (auto& way : found_.ways) {
            way->cells = grid.cellsOf(way->path);
        }
        return std::move(found_);
    }

private:
    std::vector<Draft> jogs(const Terminal& a, const Terminal& b) const {
        const Drafter drafter(span_, a, b);
        std::vector<Draft> drafts;
        const auto add = [&](const Points& points) {
            if (auto draft = drafter.draft(points)) {
                drafts.push_back(std::move(*draft));
            }
        };
        if (distance(a.mouth, b.mouth) > 1e-3) {
            add({a.mouth, b.mouth});
        }
        for (const double outA : outsOf(a, b)) {
            for (const double outB : outsOf(b, a)) {
                add({a.mouth, a.mouth + a.axis * outA, b.mouth + b.axis * outB, b.mouth});
            }
        }
        return drafts;
    }

    std::vector<double> outsOf(const Terminal& terminal, const Terminal& other) const {
        if (!terminal.held()) {
            return {0.0};
        }
        std::vector<double> outs;
        for (const double more :
             {0.1, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.5, 8.0, 10.0, 13.0, 17.0, 22.0}) {
            outs.push_back(terminal.lead + more);
        }
        const double foot = dot(other.mouth - terminal.mouth, terminal.axis);
        if (foot > terminal.lead) {
            outs.push_back(foot);
        }
        return outs;
    }

    std::vector<Draft> runs(const Terminal& a, const Terminal& b, const Lane& lane) const {
        const Drafter drafter(span_, a, b);
        std::vector<Draft> drafts;
        for (const double sx : {1.0, -1.0}) {
            const auto from = Approaches(span_.bend, a, sx).to(lane);
            const auto to = Approaches(span_.bend, b, -sx).to(lane);
            for (const Points& first : from) {
                for (const Points& last : to) {
                    const double x0 = first.empty() ? a.mouth.x : first.back().x;
                    const double x1 = last.empty() ? b.mouth.x : last.back().x;
                    if ((x1 - x0) * sx <= 0.0) {
                        continue;
                    }
                    Points points{a.mouth};
                    points.insert(points.end(), first.begin(), first.end());
                    points.insert(points.end(), last.rbegin(), last.rend());
                    points.push_back(b.mouth);
                    if (auto draft = drafter.draft(points)) {
                        drafts.push_back(std::move(*draft));
                    }
                }
            }
        }
        return drafts;
    }

    /// The cheapest legal ones.
    void keepOf(std::vector<Draft> drafts, std::size_t most) {
        std::stable_sort(drafts.begin(), drafts.end(), [](const Draft& p, const Draft& q) {
            return p.cost < q.cost;
        });
        std::size_t kept = 0;
        std::size_t tried = 0;
        for (const Draft& draft : drafts) {
            if (kept >= most || tried >= 12 * most) {
                return;
            }
            ++tried;
            if (keep(draft)) {
                ++kept;
            }
        }
    }

    bool keep(const Draft& draft) {
        auto way = std::make_unique<Way>();
        way->start = start_;
        way->end = end_;
        way->corners.assign(draft.points.begin() + 1, draft.points.end() - 1);
        std::vector<geometry::CornerInput> corners;
        for (const Vec3& corner : way->corners) {
            corners.push_back({corner, span_.bend});
        }
        auto built = geometry::buildPath(draft.points.front(), corners, draft.points.back());
        if (!built.faults.empty()) {
            return false;
        }
        way->path = std::move(built.path);
        way->length = way->path.length().in();
        for (const auto& bend : built.bends) {
            way->turn += bend.turn;
        }
        way->ribbon = ribbonOf(way->path, 0.0, way->length, span_.radius);
        if (const InTheWay here = inTheWay(*way); here.kind != InTheWay::Kind::nothing) {
            noteBlocked(here, draft.cost);
            return false;
        }
        way->cost = draft.cost + kPerDepth * meanDepth(way->ribbon) + screws(*way) +
                    kOtherMouth * static_cast<double>(start_ + end_);
        found_.ways.push_back(std::move(way));
        return true;
    }

    /// Walls first: what is blocked by something that could be elsewhere is told rather.
    InTheWay inTheWay(const Way& way) const {
        InTheWay here;
        if (outside(way)) {
            here.kind = InTheWay::Kind::wall;
            return here;
        }
        for (std::size_t i = 0; i < around_.bodies.size(); ++i) {
            if (const auto overlap = overlapOf(partBeside(way, i), around_.bodies[i])) {
                return {InTheWay::Kind::body, i, *overlap};
            }
        }
        for (const auto& fixed : around_.fixed) {
            if (const auto overlap = withFixed(way, *fixed)) {
                return {InTheWay::Kind::conductor, fixed->conductor, *overlap};
            }
        }
        return here;
    }

    bool outside(const Way& way) const {
        const auto box = geometry::bounds({&way.path, span_.radius, 0.0, way.length});
        const Vec3& in = around_.inside;
        return beyond(box.least.x, box.greatest.x, in.x) > kLimitSlack / 2.0 ||
               beyond(box.least.y, box.greatest.y, in.y) > kLimitSlack / 2.0 ||
               beyond(box.least.z, box.greatest.z, in.z) > kLimitSlack / 2.0;
    }

    /// The part that must keep clear of a body: not what the body holds.
    Part partBeside(const Way& way, std::size_t body) const {
        Part part{&way.ribbon, 0.0, way.length};
        const Terminal& a = span_.starts[way.start];
        const Terminal& b = span_.ends[way.end];
        if (a.block == body) {
            part.from += overlapLengthFree(a, span_.radius);
        }
        if (b.block == body) {
            part.to -= overlapLengthFree(b, span_.radius);
        }
        return part;
    }

    std::optional<Overlap> withFixed(const Way& way, const Fixed& fixed) const;

    double screws(const Way& way) const {
        double cost = 0.0;
        for (std::size_t i = 0; i < around_.corridors.size(); ++i) {
            const Part part = partBeside(way, around_.corridors[i].block);
            const Ribbon& corridor = around_.corridorRibbons[i];
            if (overlapOf(part, Part{&corridor, corridor.from, corridor.to})) {
                cost += kPerScrew;
            }
        }
        return cost;
    }

    void noteBlocked(const InTheWay& here, double cost) {
        const bool better = here.kind != InTheWay::Kind::wall && cost < blockedCost_;
        if (better || found_.inTheWay.kind == InTheWay::Kind::nothing) {
            found_.inTheWay = here;
            blockedCost_ =
                here.kind == InTheWay::Kind::wall ? std::numeric_limits<double>::infinity() : cost;
        }
    }

    void dropTwins() {
        auto& ways = found_.ways;
        const auto end = std::unique(ways.begin(), ways.end(), [](const auto& p, const auto& q) {
            return p->corners == q->corners && p->start == q->start && p->end == q->end;
        });
        ways.erase(end, ways.end());
    }

    const Span& span_;
    const Surroundings& around_;
    std::size_t start_ = 0;
    std::size_t end_ = 0;
    Ways found_;
    double blockedCost_ = std::numeric_limits<double>::infinity();
};

// ---- variants -------------------------------------------------------------------------------

constexpr std::array<Vec3, 3> kAxes = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};

class Variants {
public:
    Variants(const Span& span, const Way& way, double step)
        : a_(span.starts[way.start]), b_(span.ends[way.end]), bend_(span.bend), step_(step) {
        points_.push_back(a_.mouth);
        points_.insert(points_.end(), way.corners.begin(), way.corners.end());
        points_.push_back(b_.mouth);
    }

    std::vector<Points> all(const std::optional<Vec3>& place) {
        for (const double times : {1.0, 2.5, 6.0}) {
            for (const double sign : {1.0, -1.0}) {
                shiftAll(sign * times * step_);
            }
        }
        if (place) {
            splitAll(*place);
        }
        dropEach();
        return std::move(lines_);
    }

private:
    std::size_t corners() const { return points_.size() - 2; }

    /// Corners on the axis of a held end stay on it.
    Vec3 allowed(std::size_t point, const Vec3& by) const {
        Vec3 kept = by;
        if (point == 1 && a_.held()) {
            kept = a_.axis * dot(kept, a_.axis);
        }
        if (point == corners() && b_.held()) {
            kept = b_.axis * dot(kept, b_.axis);
        }
        return kept;
    }

    void shift(std::size_t first, std::size_t last, const Vec3& by) {
        Points moved = points_;
        bool changed = false;
        for (std::size_t i = first; i <= last; ++i) {
            const Vec3 own = allowed(i, by);
            moved[i] = moved[i] + own;
            changed = changed || norm(own) > kSamePoint;
        }
        if (changed) {
            lines_.push_back(std::move(moved));
        }
    }

    void shiftAll(double by) {
        for (std::size_t i = 1; i <= corners(); ++i) {
            for (const Vec3& axis : kAxes) {
                shift(i, i, axis * by);
                if (i + 1 <= corners()) {
                    shift(i, i + 1, axis * by);
                }
                if (i + 2 <= corners()) {
                    shift(i, i + 2, axis * by);
                }
            }
        }
    }

    /// Before or behind the place the leg nearest to it runs in another lane.
    void splitAll(const Vec3& place) {
        for (std::size_t leg = 1; leg + 1 < points_.size() - 1; ++leg) {
            const Vec3 along = points_[leg + 1] - points_[leg];
            const double length = norm(along);
            if (length < 2.0 * bend_) {
                continue;
            }
            const double at = dot(place - points_[leg], along / length);
            if (at < 0.0 || at > length) {
                continue;
            }
            for (const Vec3& axis : kAxes) {
                if (std::abs(dot(axis, along)) < 1e-6 * length) {
                    split(leg, along / length, at, axis);
                }
            }
        }
    }

    void split(std::size_t leg, const Vec3& along, double at, const Vec3& axis) {
        for (const double aside : {0.75, -0.75, 1.5, -1.5}) {
            const double turn =
                std::min(std::numbers::pi / 6,
                         std::acos(std::clamp(1.0 - std::abs(aside) / (2.0 * bend_), -1.0, 1.0)));
            const double run = std::abs(aside) / std::tan(turn) + 1e-6;
            for (const double from : {at - run - 2.0, at + 2.0}) {
                const Vec3 first = points_[leg] + along * from;
                const Vec3 second = first + along * run;
                Points behind = points_;
                behind.insert(behind.begin() + static_cast<std::ptrdiff_t>(leg) + 1,
                              {first, second + axis * aside});
                behind[leg + 3] = behind[leg + 3] + axis * aside;
                lines_.push_back(behind);
                Points before = points_;
                before[leg] = before[leg] + axis * aside;
                before.insert(before.begin() + static_cast<std::ptrdiff_t>(leg) + 1,
                              {first + axis * aside, second});
                lines_.push_back(std::move(before));
            }
        }
    }

    void dropEach() {
        for (std::size_t i = 1; i <= corners(); ++i) {
            Points fewer = points_;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
            lines_.push_back(std::move(fewer));
        }
    }

    const Terminal& a_;
    const Terminal& b_;
    double bend_;
    double step_;
    Points points_;
    std::vector<Points> lines_;
};

// ---- pairs ----------------------------------------------------------------------------------

bool sharePort(const Terminal& a, const Terminal& b) {
    return a.block && a.block == b.block && a.port == b.port;
}

/// How far from its first point a ribbon runs until it is `aside` from the axis it left on.
double untilAside(const Ribbon& ribbon, const Terminal& terminal, bool fromStart, double aside) {
    const std::size_t n = ribbon.points.size();
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t i = fromStart ? k : n - 1 - k;
        const Vec3 off = ribbon.points[i] - terminal.mouth;
        if (norm(off - terminal.axis * dot(off, terminal.axis)) >= aside) {
            return fromStart ? ribbon.at[i] - ribbon.from : ribbon.to - ribbon.at[i];
        }
    }
    return ribbon.to - ribbon.from;
}

/// One side of a pair: a ribbon with its two terminals.
struct Side {
    const Ribbon* ribbon;
    const Terminal* start;
    const Terminal* end;
};

/// Without what lies near a port that the other shares.
Part trimmed(const Side& side, const Side& other, double aside) {
    Part part{side.ribbon, side.ribbon->from, side.ribbon->to};
    for (const Terminal* theirs : {other.start, other.end}) {
        if (sharePort(*side.start, *theirs)) {
            part.from = std::max(
                part.from, side.ribbon->from + untilAside(*side.ribbon, *side.start, true, aside));
        }
        if (sharePort(*side.end, *theirs)) {
            part.to = std::min(part.to,
                               side.ribbon->to - untilAside(*side.ribbon, *side.end, false, aside));
        }
    }
    return part;
}

std::optional<Overlap> conflictOf(const Side& a, const Side& b) {
    const bool share = sharePort(*a.start, *b.start) || sharePort(*a.start, *b.end) ||
                       sharePort(*a.end, *b.start) || sharePort(*a.end, *b.end);
    if (!share) {
        return overlapOf(*a.ribbon, *b.ribbon);
    }
    const double aside = 2.0 * (a.ribbon->radius + b.ribbon->radius);
    if (auto overlap =
            overlapOf(trimmed(a, b, aside), Part{b.ribbon, b.ribbon->from, b.ribbon->to})) {
        return overlap;
    }
    return overlapOf(Part{a.ribbon, a.ribbon->from, a.ribbon->to}, trimmed(b, a, aside));
}

std::optional<Overlap> Collector::withFixed(const Way& way, const Fixed& fixed) const {
    if (fixed.conductor == span_.conductor) {
        return std::nullopt;
    }
    return conflictOf(Side{&way.ribbon, &span_.starts[way.start], &span_.ends[way.end]},
                      Side{&fixed.ribbon, &fixed.start, &fixed.end});
}

}  // namespace

std::optional<Overlap> conflictOf(const Span& a, const Way& way, const Span& b, const Way& other) {
    return conflictOf(Side{&way.ribbon, &a.starts[way.start], &a.ends[way.end]},
                      Side{&other.ribbon, &b.starts[other.start], &b.ends[other.end]});
}

Ways waysOf(const Span& span, const Surroundings& around, const GoOn& goOn) {
    Collector collector(span, around);
    for (std::size_t start = 0; start < span.starts.size(); ++start) {
        for (std::size_t end = 0; end < span.ends.size(); ++end) {
            collector.collect(start, end, goOn);
        }
    }
    return collector.take();
}

std::vector<std::unique_ptr<Way>> variantsOf(const Span& span,
                                             const Surroundings& around,
                                             const Way& way,
                                             const std::optional<Vec3>& place,
                                             double step) {
    Collector collector(span, around);
    collector.collect(Variants(span, way, step).all(place), way.start, way.end);
    return std::move(collector.take().ways);
}

CellGrid::CellGrid(const Vec3& inside)
    : cell_{std::max(1.0, inside.x / 200.0),
            std::max(0.5, inside.y / 60.0),
            std::max(0.5, inside.z / 60.0)},
      nx_(static_cast<std::size_t>(inside.x / cell_.x) + 1),
      ny_(static_cast<std::size_t>(inside.y / cell_.y) + 1),
      nz_(static_cast<std::size_t>(inside.z / cell_.z) + 1) {}

std::uint32_t CellGrid::cellAt(const Vec3& point) const {
    const auto number = [](double at, double cell, std::size_t most) {
        return std::min(static_cast<std::size_t>(std::max(at, 0.0) / cell), most - 1);
    };
    return static_cast<std::uint32_t>(
        (number(point.x, cell_.x, nx_) * ny_ + number(point.y, cell_.y, ny_)) * nz_ +
        number(point.z, cell_.z, nz_));
}

std::vector<std::uint32_t> CellGrid::cellsOf(const geometry::Path& path) const {
    std::vector<std::uint32_t> cells;
    const double length = path.length().in();
    const int steps = static_cast<int>(length / 0.4) + 1;
    for (int i = 0; i <= steps; ++i) {
        cells.push_back(cellAt(path.pointAt(length * i / steps)));
    }
    std::sort(cells.begin(), cells.end());
    cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
    return cells;
}

}  // namespace gw::routing
