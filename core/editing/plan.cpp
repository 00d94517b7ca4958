#include "editing/plan.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "editing/places.h"
#include "geometry/solids.h"

namespace gw::editing {
namespace {

using geometry::BuiltEnd;
using geometry::BuiltLayout;

// What makes one way better than another, in inches of conductor. *Common practice, no source.*
constexpr double kPerBend = 1.5;
constexpr double kPerDepth = 0.25;  // an inch of mean distance from the back
constexpr double kPerSlant = 1.0;   // an inch on a leg along none of the gutter's axes
constexpr double kPerMissed = 3.0;  // an inch between the way and a point asked for
constexpr double kPerMissing = 1e4;
constexpr double kPerOutside = 1e2;

/// Corners are put on this grid where they may lie anywhere.
constexpr double kGrid = 0.25;

double coordinate(const Vec3& v, int axis) {
    return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}
double& coordinate(Vec3& v, int axis) {
    return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}

/// 0, 1 or 2: along which of x, y, z it runs most.
int mainAxis(const Vec3& v) {
    const double x = std::abs(v.x);
    const double y = std::abs(v.y);
    return x >= y && x >= std::abs(v.z) ? 0 : y >= std::abs(v.z) ? 1 : 2;
}

using Points = std::vector<Vec3>;

struct Candidate {
    Way way;
    double cost = 0.0;
};

class Planner {
public:
    Planner(const PlanEnd& from, const PlanEnd& to, const PlanFacts& facts)
        : from_(from), to_(to), facts_(facts) {}

    void offerDirect();
    void offerRuns(bool elbowed);
    void offerThrough(std::span<const Vec3> via);
    bool hasGood() const;
    Way best();

private:
    /// An end as the runs see it: itself, or turned aside after a first bend.
    struct Start {
        Points lead;  ///< from the tip on, without the last point
        Vec3 at;      ///< where it leaves from
        Vec3 axis;
        double out = 0.0;  ///< least distance along the axis to the next corner
    };
    std::vector<Start> starts(const PlanEnd& end, bool elbowed) const;
    std::vector<double> outs(const PlanEnd& end) const;
    std::vector<double> levels(const Start& a, const Start& b, int axis) const;
    void offerRun(const Start& a, const Start& b, double y, double z);
    void offerWithOffset(const Points& points, std::size_t run, const Vec3& aside);
    void offer(const Points& points, double extra = 0.0);
    void offer(const Way& way, double extra);
    Way wayThrough(const Points& points) const;
    double costOf(const Way& way) const;
    double outside(const geometry::Path& path) const;
    bool isClear(const Way& way) const;

    PlanEnd from_;
    PlanEnd to_;
    const PlanFacts& facts_;
    std::vector<Candidate> candidates_;
};

// ---- what a way costs -----------------------------------------------------------------------

WayEnd wayEnd(const PlanEnd& end) {
    return {end.held, end.axis, end.held ? distance(end.tip, end.mouth) + end.lead : 0.0};
}

geometry::BuiltPath bent(const Way& way) {
    std::vector<geometry::CornerInput> corners;
    for (std::size_t i = 0; i < way.radii.size(); ++i) {
        corners.push_back({way.points[i + 1], way.radii[i]});
    }
    return geometry::buildPath(way.points.front(), corners, way.points.back());
}

/// Inches on legs along none of the axes.
double slantOf(const Way& way) {
    double slant = 0.0;
    for (std::size_t i = 0; i < way.legs(); ++i) {
        const Vec3 leg = way.leg(i);
        const double most = std::abs(coordinate(leg, mainAxis(leg)));
        slant += most > 0.9999 * norm(leg) ? 0.0 : norm(leg);
    }
    return slant;
}

double meanDepth(const geometry::Path& path) {
    constexpr int kSamples = 16;
    double depth = 0.0;
    for (int i = 0; i <= kSamples; ++i) {
        depth += path.pointAt(path.length().in() * i / kSamples).z / (kSamples + 1);
    }
    return depth;
}

double Planner::outside(const geometry::Path& path) const {
    const geometry::Tube tube{&path, facts_.diameter / 2.0, 0.0, path.length().in()};
    const auto box = geometry::bounds(tube);
    const auto beyond = [](double least, double greatest, double inside) {
        constexpr double kTouching = 1e-3;
        return std::max(0.0, -least - kTouching) + std::max(0.0, greatest - inside - kTouching);
    };
    return beyond(box.least.x, box.greatest.x, facts_.inside.x) +
           beyond(box.least.y, box.greatest.y, facts_.inside.y) +
           beyond(box.least.z, box.greatest.z, facts_.inside.z);
}

double Planner::costOf(const Way& way) const {
    const auto path = bent(way).path;
    return path.length().in() + kPerBend * static_cast<double>(way.radii.size()) +
           kPerSlant * slantOf(way) + kPerDepth * meanDepth(path) + kPerOutside * outside(path) +
           kPerMissing * std::min(shortfall(way), 1e6);
}

/// Outside its own ports it does not enter a body.
bool Planner::isClear(const Way& way) const {
    const auto path = bent(way).path;
    const double radius = facts_.diameter / 2.0;
    const auto hidden = [&](const PlanEnd& end) {
        return end.held ? distance(end.tip, end.mouth) + 1.6 * radius : 0.0;
    };
    const geometry::Tube tube{&path, radius, hidden(from_), path.length().in() - hidden(to_)};
    return tube.from >= tube.to ||
           std::all_of(facts_.bodies.begin(), facts_.bodies.end(), [&](const geometry::Box& body) {
               return geometry::clearance(tube, geometry::toOriented(body)).gap.in() >= 0.0;
           });
}

// ---- collecting -----------------------------------------------------------------------------

Way Planner::wayThrough(const Points& points) const {
    Way way;
    way.first = wayEnd(from_);
    way.last = wayEnd(to_);
    way.radius = facts_.radius;
    for (const Vec3& point : points) {
        if (way.points.empty() || distance(way.points.back(), point) > 1e-6) {
            way.points.push_back(point);
        }
    }
    if (way.points.size() < 2) {
        way.points.push_back(points.back());
    }
    way.points.back() = points.back();
    way.radii.assign(way.points.size() - 2, facts_.radius);
    return withoutIdleCorners(way);
}

void Planner::offer(const Way& way, double extra) {
    candidates_.push_back({way, costOf(way) + extra});
}

void Planner::offer(const Points& points, double extra) {
    offer(wayThrough(points), extra);
}

bool Planner::hasGood() const {
    return std::any_of(candidates_.begin(), candidates_.end(), [](const Candidate& candidate) {
        return candidate.cost < kPerOutside;
    });
}

Way Planner::best() {
    constexpr std::size_t kLooks = 60;
    std::stable_sort(candidates_.begin(),
                     candidates_.end(),
                     [](const Candidate& a, const Candidate& b) { return a.cost < b.cost; });
    const double least = candidates_.front().cost;
    for (std::size_t i = 0; i < std::min(kLooks, candidates_.size()); ++i) {
        if (candidates_[i].cost < std::max(least, kPerOutside) + kPerOutside &&
            isClear(candidates_[i].way)) {
            return candidates_[i].way;
        }
    }
    return candidates_.front().way;
}

// ---- straight across ------------------------------------------------------------------------

std::vector<double> Planner::outs(const PlanEnd& end) const {
    if (!end.held) {
        return {0.0};
    }
    std::vector<double> found;
    for (const double more : {0.25, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0}) {
        found.push_back(end.lead + more);
    }
    return found;
}

void Planner::offerDirect() {
    offer(Points{from_.tip, to_.tip});
    for (const double a : outs(from_)) {
        for (const double b : outs(to_)) {
            offer(
                Points{from_.tip, from_.mouth + from_.axis * a, to_.mouth + to_.axis * b, to_.tip});
        }
    }
    if (from_.held && to_.held) {
        const double along = dot(to_.mouth - from_.mouth, from_.axis);
        const Vec3 foot = from_.mouth + from_.axis * along;
        const double back = dot(foot - to_.mouth, to_.axis);
        offer(Points{from_.tip, foot, to_.mouth + to_.axis * back, to_.tip});
    }
}

// ---- a run along the gutter -----------------------------------------------------------------

constexpr std::array<Vec3, 6> kDirections{
    {{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}}};

std::vector<Planner::Start> Planner::starts(const PlanEnd& end, bool elbowed) const {
    std::vector<Start> found;
    if (!end.held) {
        for (const Vec3& axis : kDirections) {
            found.push_back({{}, end.tip, axis, facts_.radius});
        }
        return found;
    }
    const double out = end.lead + facts_.radius;
    found.push_back({{end.tip}, end.mouth, end.axis, out});
    if (elbowed) {
        for (const Vec3& axis : kDirections) {
            if (std::abs(dot(axis, end.axis)) < 0.5) {
                found.push_back({{end.tip}, end.mouth + end.axis * out, axis, 2.0 * facts_.radius});
            }
        }
    }
    return found;
}

/// Heights (axis 1) or depths (2) that a run may have: for an end that runs along this axis as far
/// out as it must and further, on the grid.
std::vector<double> Planner::levels(const Start& a, const Start& b, int axis) const {
    std::vector<double> found;
    for (const Start* start : {&a, &b}) {
        const double sign = coordinate(start->axis, axis);
        if (std::abs(sign) < 0.5) {
            continue;
        }
        const double from = coordinate(start->at, axis);
        for (const double more : {0.0, 0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0}) {
            const double level = from + sign * (start->out + more);
            found.push_back(sign > 0.0 ? std::ceil(level / kGrid - 1e-9) * kGrid
                                       : std::floor(level / kGrid + 1e-9) * kGrid);
        }
        // The other end's own level saves an offset.
        const double other = coordinate((start == &a ? b : a).at, axis);
        if ((other - from) * sign >= start->out - kLimitSlack) {
            found.push_back(other);
        }
    }
    if (found.empty()) {
        found.push_back(coordinate(a.at, axis));
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
}

/// With the offset that brings the end of leg `run` aside, at either end of it.
void Planner::offerWithOffset(const Points& points, std::size_t run, const Vec3& aside) {
    Way way = wayThrough(points);
    if (norm(aside) < 1e-6) {
        offer(way, 0.0);
        return;
    }
    if (run >= way.legs()) {
        return;
    }
    const double length = norm(way.leg(run));
    for (const double at : {0.0, length}) {
        Way made = withOffset(way, run, at, aside);
        made.points.back() = to_.tip;
        offer(made, 0.0);
    }
}

void Planner::offerRun(const Start& a, const Start& b, double y, double z) {
    // A leg along y sets the height of the run, one along z its depth.
    const auto runEnd = [&](const Start& start) {
        Vec3 at = start.at;
        const int axis = mainAxis(start.axis);
        if (axis != 0) {
            coordinate(at, axis) = axis == 1 ? y : z;
        }
        return at;
    };
    const Vec3 first = runEnd(a);
    const Vec3 last = runEnd(b);
    const double dx = last.x - first.x;
    const bool wrongWay = (mainAxis(a.axis) == 0 && a.axis.x * dx <= 0.0) ||
                          (mainAxis(b.axis) == 0 && b.axis.x * dx >= 0.0);
    if (std::abs(dx) < 1e-6 || wrongWay) {
        return;
    }
    const Vec3 aside{0.0, last.y - first.y, last.z - first.z};
    Points points = a.lead;
    points.push_back(a.at);
    points.push_back(first);
    // Everything behind the offset is drawn where it would be without it.
    points.push_back(last - aside);
    points.push_back(b.at - aside);
    for (auto point = b.lead.rbegin(); point != b.lead.rend(); ++point) {
        points.push_back(*point - aside);
    }
    const Way plain = wayThrough(points);
    std::size_t run = 0;
    double longest = 0.0;
    for (std::size_t i = 0; i < plain.legs(); ++i) {
        const Vec3 leg = plain.leg(i);
        if (mainAxis(leg) == 0 && norm(leg) > longest) {
            longest = norm(leg);
            run = i;
        }
    }
    offerWithOffset(points, run, aside);
}

void Planner::offerRuns(bool elbowed) {
    for (const Start& a : starts(from_, elbowed)) {
        for (const Start& b : starts(to_, elbowed)) {
            for (const double y : levels(a, b, 1)) {
                for (const double z : levels(a, b, 2)) {
                    offerRun(a, b, y, z);
                }
            }
        }
    }
}

// ---- through points -------------------------------------------------------------------------

/// How a way may reach the first point asked for: by the foot on the end's axis, or at the foot
/// itself with the point left out.
struct Reaching {
    Points points;
    bool leavesOut = false;
    double missed = 0.0;
};

std::vector<Reaching> reachings(const PlanEnd& end, const Vec3& point, double radius) {
    if (!end.held) {
        return {{{end.tip}, false, 0.0}};
    }
    const double along = std::max(dot(point - end.mouth, end.axis), end.lead + 0.25);
    const Vec3 foot = end.mouth + end.axis * along;
    const double missed = distance(foot, point);
    std::vector<Reaching> found{{{end.tip, foot}, false, 0.0}};
    if (missed < 2.0 * radius) {
        found.push_back({{end.tip, foot}, true, missed});
    }
    for (const double out : {0.25, 0.5, 1.0, 2.0, 3.0, 4.0, 6.0}) {
        found.push_back({{end.tip, end.mouth + end.axis * (end.lead + out)}, false, 0.0});
    }
    return found;
}

void Planner::offerThrough(std::span<const Vec3> via) {
    for (const Reaching& a : reachings(from_, via.front(), facts_.radius)) {
        for (const Reaching& b : reachings(to_, via.back(), facts_.radius)) {
            const std::size_t first = a.leavesOut ? 1 : 0;
            const std::size_t last = via.size() - (b.leavesOut ? 1 : 0);
            Points points = a.points;
            for (std::size_t i = first; i < last; ++i) {
                points.push_back(via[i]);
            }
            points.insert(points.end(), b.points.rbegin(), b.points.rend());
            offer(points, kPerMissed * (a.missed + b.missed));
        }
    }
}

}  // namespace

// ---- the whole ------------------------------------------------------------------------------

Way planned(const PlanEnd& from,
            const PlanEnd& to,
            const PlanFacts& facts,
            std::span<const Vec3> via) {
    Planner planner(from, to, facts);
    if (!via.empty()) {
        planner.offerThrough(via);
        return planner.best();
    }
    planner.offerDirect();
    planner.offerRuns(false);
    if (!planner.hasGood()) {
        planner.offerRuns(true);
    }
    return planner.best();
}

namespace {

bool mayUse(const layout::Block& block, const parts::Port& port, bool near) {
    switch (port.opening) {
        case parts::PortOpening::near:
            return near;
        case parts::PortOpening::both:
            return true;
        case parts::PortOpening::either:
            break;
    }
    for (const auto& open : block.openMouths) {
        if (open.port == port.name) {
            return open.near == near;
        }
    }
    return true;
}

std::vector<PlanEnd> inPort(const BuiltLayout& built, const BuiltEnd& end, double lead) {
    const std::size_t block = *end.block;
    const auto& bore = built.blocks[block].ports[*end.port];
    const auto& port = built.blocks[block].part->ports[*end.port];
    std::vector<PlanEnd> ends;
    for (const bool near : {true, false}) {
        if (mayUse(built.layout.blocks[block], port, near)) {
            const Vec3 mouth = near ? bore.mouth : bore.farMouth;
            const Vec3 axis = near ? -bore.direction : bore.direction;
            ends.push_back({mouth - axis * end.inserted, mouth, axis, true, lead});
        }
    }
    return ends;
}

}  // namespace

std::vector<PlanEnd> planEnds(const BuiltLayout& built, std::size_t conductor, ConductorEnd which) {
    const auto& laid = built.conductors[conductor];
    const BuiltEnd& end = which == ConductorEnd::from ? laid.from : laid.to;
    switch (end.kind) {
        case BuiltEnd::Kind::entry:
            return {{end.mouth, end.mouth, end.axis, true, 0.0}};
        case BuiltEnd::Kind::port:
            return inPort(built, end, kLeadInDiameters * laid.diameter.in());
        case BuiltEnd::Kind::spare:
            return {{end.mouth, end.mouth, {}, false, 0.0}};
    }
    return {};
}

namespace {

/// A port that is passed: where the path comes in and where it goes on, either way round.
struct Passage {
    PlanEnd in;
    PlanEnd out;
};

std::vector<Passage> passagesOf(const BuiltLayout& built, std::size_t conductor, std::size_t pass) {
    const auto& laid = built.conductors[conductor];
    const auto& through = laid.passes[pass];
    const auto& bore = built.blocks[through.block].ports[through.port];
    const double lead = kLeadInDiameters * laid.diameter.in();
    const PlanEnd near{bore.mouth, bore.mouth, -bore.direction, true, lead};
    const PlanEnd far{bore.farMouth, bore.farMouth, bore.direction, true, lead};
    return {{near, far}, {far, near}};
}

struct Trial {
    Points points;
    double cost = 0.0;
};

double lengthOf(const Way& way) {
    return bent(way).path.length().in() + kPerMissing * std::min(shortfall(way), 1e6);
}

/// The best way on from each of the ends that the way so far may come out of.
std::vector<Trial> continued(const std::vector<std::pair<Trial, PlanEnd>>& soFar,
                             const PlanEnd& to,
                             const PlanFacts& facts,
                             std::span<const Vec3> via) {
    std::vector<Trial> found;
    for (const auto& [trial, from] : soFar) {
        const Way way = planned(from, to, facts, via);
        Trial longer = trial;
        longer.points.insert(longer.points.end(), way.points.begin(), way.points.end());
        longer.cost += lengthOf(way);
        found.push_back(std::move(longer));
    }
    return found;
}

const Trial& cheapest(const std::vector<Trial>& trials) {
    return *std::min_element(trials.begin(), trials.end(), [](const Trial& a, const Trial& b) {
        return a.cost < b.cost;
    });
}

Trial planThrough(const BuiltLayout& built,
                  std::size_t conductor,
                  const PlanFacts& facts,
                  std::span<const Vec3> via) {
    std::vector<std::pair<Trial, PlanEnd>> soFar;
    for (const PlanEnd& from : planEnds(built, conductor, ConductorEnd::from)) {
        soFar.emplace_back(Trial{}, from);
    }
    const std::size_t passes = built.conductors[conductor].passes.size();
    for (std::size_t pass = 0; pass < passes; ++pass) {
        std::vector<std::pair<Trial, PlanEnd>> next;
        for (const Passage& passage : passagesOf(built, conductor, pass)) {
            next.emplace_back(cheapest(continued(soFar, passage.in, facts, {})), passage.out);
        }
        soFar = std::move(next);
    }
    std::vector<Trial> whole;
    for (const PlanEnd& to : planEnds(built, conductor, ConductorEnd::to)) {
        auto more = continued(soFar, to, facts, passes == 0 ? via : std::span<const Vec3>());
        whole.insert(whole.end(), more.begin(), more.end());
    }
    return cheapest(whole);
}

/// The mouth that a path uses, stated where it can be opened at either and none is.
void stateMouth(layout::Layout& layout,
                const BuiltLayout& built,
                const BuiltEnd& end,
                const Vec3& tip,
                const Vec3& next) {
    if (end.kind != BuiltEnd::Kind::port) {
        return;
    }
    auto& block = layout.blocks[*end.block];
    const auto& port = built.blocks[*end.block].part->ports[*end.port];
    const bool stated = std::any_of(block.openMouths.begin(),
                                    block.openMouths.end(),
                                    [&](const auto& open) { return open.port == port.name; });
    if (port.opening != parts::PortOpening::either || stated) {
        return;
    }
    const auto& bore = built.blocks[*end.block].ports[*end.port];
    block.openMouths.push_back({port.name, dot(next - tip, bore.direction) <= 0.0});
}

PlanFacts factsFor(const BuiltLayout& built, std::size_t conductor) {
    PlanFacts facts;
    facts.radius = legalRadius(built.layout, built.layout.conductors[conductor]);
    facts.diameter = built.conductors[conductor].diameter.in();
    facts.inside = built.gutter().inside;
    for (const auto& block : built.blocks) {
        facts.bodies.push_back(block.body);
    }
    return facts;
}

double tidy(double value) {
    constexpr double kFinest = 1e9;
    return std::round(value * kFinest) / kFinest + 0.0;
}

}  // namespace

void planPath(layout::Layout& layout,
              const BuiltLayout& built,
              std::size_t conductor,
              std::span<const Vec3> via) {
    const PlanFacts facts = factsFor(built, conductor);
    Way way;
    way.points = planThrough(built, conductor, facts, via).points;
    way.radii.assign(way.points.size() - 2, facts.radius);
    // Where two parts meet in a mouth, the points there lie in line.
    way = withoutIdleCorners(way);
    auto& corners = layout.conductors[conductor].corners;
    corners.clear();
    for (std::size_t i = 1; i + 1 < way.points.size(); ++i) {
        const Vec3& p = way.points[i];
        corners.push_back({{tidy(p.x), tidy(p.y), tidy(p.z)}, units::Inches::of(facts.radius)});
    }
    const auto& laid = built.conductors[conductor];
    stateMouth(layout, built, laid.from, way.points.front(), way.points[1]);
    stateMouth(layout, built, laid.to, way.points.back(), way.points[way.points.size() - 2]);
}

}  // namespace gw::editing
