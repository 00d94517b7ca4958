#include "tools/lane_planner.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "checks/landing_order.h"
#include "geometry/path.h"
#include "geometry/solids.h"

namespace gw::tools {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltLayout;
using geometry::BuiltPath;
using geometry::CornerInput;
using geometry::Tube;

double rounded(double value) {
    return std::round(value * 1e4) / 1e4;
}
Vec3 rounded(const Vec3& p) {
    return {rounded(p.x), rounded(p.y), rounded(p.z)};
}

/// One of the polylines to try: all points, ends included.
using Polyline = std::vector<Vec3>;

/// The tip-to-tip frame of a conductor: where it starts and how it leaves.
struct Terminal {
    Vec3 tip;
    Vec3 mouth;
    Vec3 axis;  ///< into the gutter
    bool port;
};

Terminal terminalOf(const geometry::BuiltEnd& end, const Vec3& tip) {
    return {tip, end.mouth, end.axis, end.kind == geometry::BuiltEnd::Kind::port};
}

bool alongX(const Vec3& axis) {
    return std::abs(axis.x) > 0.5;
}

Polyline simplified(const Polyline& points) {
    Polyline kept{points.front()};
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        if (distance(kept.back(), points[i]) < 1e-3) {
            continue;
        }
        const Vec3 before = unit(points[i] - kept.back());
        const Vec3 after = points[i + 1] - points[i];
        if (norm(after) < 1e-3 || angleBetween(before, unit(after)) > 2e-3) {
            kept.push_back(points[i]);
        }
    }
    kept.push_back(points.back());
    return kept;
}

/// Where a conductor may turn first: so far out along the terminal's axis.
std::vector<double> distancesOut(const Terminal& terminal, double lead, double furthest) {
    std::vector<double> out;
    for (const double more : {0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0}) {
        if (more <= furthest) {
            out.push_back((terminal.port ? lead : 0.5) + more);
        }
    }
    return out;
}

void addJogs(const Terminal& a,
             const Terminal& b,
             double lead,
             double furthest,
             std::vector<Polyline>& all) {
    for (const double outA : distancesOut(a, lead, furthest)) {
        for (const double outB : distancesOut(b, lead, furthest)) {
            all.push_back({a.tip, a.mouth + a.axis * outA, b.mouth + b.axis * outB, b.tip});
        }
    }
}

/// Points between a terminal and the lane (y, z): a corner on the axis where it turns toward the
/// lane, and the corner on the lane. Terminals along x reach the lane by a jog of length `run`.
std::vector<std::array<Vec3, 2>> approaches(
    const Terminal& terminal, double y, double z, double lead, double furthest) {
    std::vector<std::array<Vec3, 2>> ways;
    if (alongX(terminal.axis)) {
        for (const double out : distancesOut(terminal, lead, furthest)) {
            const Vec3 first = terminal.mouth + terminal.axis * out;
            for (const double run : {3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0}) {
                ways.push_back({first, Vec3{first.x + terminal.axis.x * run, y, z}});
            }
        }
        return ways;
    }
    for (const double out : {lead, lead + 0.5, lead + 1.0, lead + 2.0}) {
        ways.push_back({terminal.mouth + terminal.axis * (terminal.port ? out : out * 0.6),
                        Vec3{terminal.mouth.x, y, z}});
    }
    return ways;
}

void addLanes(const Terminal& a,
              const Terminal& b,
              double lead,
              const LaneWishes& wishes,
              std::vector<Polyline>& all) {
    const double toward = b.mouth.x > a.mouth.x ? 1.0 : -1.0;
    std::vector<double> depths = wishes.z;
    std::vector<double> heights = wishes.y;
    if (!wishes.lanesOnly) {
        depths.insert(depths.end(), {a.mouth.z, b.mouth.z});
        heights.insert(heights.end(), {a.mouth.y, b.mouth.y});
    }
    for (const double y : heights) {
        for (const double z : depths) {
            for (const auto& from : approaches(a, y, z, lead, wishes.furthest)) {
                for (const auto& to : approaches(b, y, z, lead, wishes.furthest)) {
                    if ((to[1].x - from[1].x) * toward > 0.5) {
                        all.push_back({a.tip, from[0], from[1], to[1], to[0], b.tip});
                    }
                }
            }
        }
    }
}

/// Inches of legs along none of the gutter's axes.
double slantOf(const Polyline& points) {
    double slant = 0.0;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Vec3 leg = points[i + 1] - points[i];
        const double along = std::max({std::abs(leg.x), std::abs(leg.y), std::abs(leg.z)});
        slant += along > 0.999 * norm(leg) ? 0.0 : norm(leg);
    }
    return slant;
}

struct Candidate {
    std::vector<CornerInput> corners;
    double cost = 0.0;
};

/// Legal bends only; cost as wished.
std::optional<Candidate> assess(const Polyline& raw,
                                double radius,
                                const LaneWishes& wishes,
                                double diameter,
                                const Terminal& a,
                                const Terminal& b) {
    const Polyline points = simplified(raw);
    Candidate candidate;
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        candidate.corners.push_back({rounded(points[i]), radius});
    }
    const BuiltPath built = geometry::buildPath(points.front(), candidate.corners, points.back());
    if (!built.faults.empty()) {
        return std::nullopt;
    }
    const double length = built.path.length().in();
    const double lead = wishes.leadIn * diameter;
    if (!built.bends.empty()) {
        const auto& first = built.bends.front();
        const auto& last = built.bends.back();
        const double in = distance(a.tip, a.mouth);
        const double out = distance(b.tip, b.mouth);
        if (first.start < in + (a.port ? lead : 0.0) ||
            length - last.start - last.radius * last.turn < out + (b.port ? lead : 0.0)) {
            return std::nullopt;
        }
    }
    double depth = 0.0;
    const int samples = 20;
    for (int i = 0; i <= samples; ++i) {
        depth += built.path.pointAt(length * i / samples).z / (samples + 1);
    }
    candidate.cost = length + wishes.perBend * double(candidate.corners.size()) +
                     wishes.perDepth * depth + wishes.perSlant * slantOf(points);
    return candidate;
}

struct Obstacles {
    const BuiltLayout& built;
    const std::vector<std::size_t>& laid;
    std::vector<geometry::Box> bounds;  ///< of the laid conductors
};

Tube wholeTube(const BuiltConductor& conductor) {
    return {&conductor.built.path, conductor.radius(), 0.0, conductor.built.path.length().in()};
}

bool boxesNear(const geometry::Box& a, const geometry::Box& b, double gap) {
    return a.least.x <= b.greatest.x + gap && b.least.x <= a.greatest.x + gap &&
           a.least.y <= b.greatest.y + gap && b.least.y <= a.greatest.y + gap &&
           a.least.z <= b.greatest.z + gap && b.least.z <= a.greatest.z + gap;
}

bool insideWalls(const Tube& tube, const Vec3& inside, double gap) {
    const auto box = geometry::bounds(tube);
    // The wall it comes through is touched by the conductor's end: flat, so exactly zero.
    const double slack = 1e-3;
    return box.least.x >= -slack && box.least.y >= -slack && box.least.z >= gap &&
           box.greatest.x <= inside.x + slack && box.greatest.y <= inside.y + slack &&
           box.greatest.z <= inside.z - gap;
}

bool clear(const geometry::Path& path,
           const BuiltConductor& conductor,
           const Obstacles& obstacles,
           double gap) {
    const double radius = conductor.radius();
    const Tube tube{&path, radius, 0.0, path.length().in()};
    if (!insideWalls(tube, obstacles.built.layout.gutter.inside, gap)) {
        return false;
    }
    const auto box = geometry::bounds(tube);
    for (std::size_t i = 0; i < obstacles.laid.size(); ++i) {
        const auto& other = obstacles.built.conductors[obstacles.laid[i]];
        if (boxesNear(box, obstacles.bounds[i], gap) &&
            geometry::clearance(tube, wholeTube(other)).gap.in() < gap) {
            // Neighbours out of one raceway start touching; only a true overlap counts there.
            const bool sameEntry = conductor.from.entry && other.from.entry == conductor.from.entry;
            const bool sameExit = conductor.to.entry && other.to.entry == conductor.to.entry;
            if ((!sameEntry && !sameExit) ||
                geometry::clearance(tube, wholeTube(other)).gap.in() < -1e-4) {
                return false;
            }
        }
    }
    for (std::size_t b = 0; b < obstacles.built.blocks.size(); ++b) {
        const auto portEnd = [&](const geometry::BuiltEnd& end) {
            return end.block == b ? end.inserted + 1.6 * radius : 0.0;
        };
        const Tube outside{
            &path, radius, portEnd(conductor.from), path.length().in() - portEnd(conductor.to)};
        const auto body = geometry::toOriented(obstacles.built.blocks[b].body);
        if (geometry::clearance(outside, body).gap.in() < gap) {
            return false;
        }
    }
    return true;
}

/// Whether those that have a path can be laid in one after the other.
bool canBeLaidIn(const layout::Layout& layout,
                 const parts::Shelf& shelf,
                 const std::vector<std::size_t>& withPath) {
    const auto among = [&](std::size_t index) {
        return std::find(withPath.begin(), withPath.end(), index) != withPath.end();
    };
    const auto built = geometry::build(layout, shelf);
    auto constraints = checks::landingConstraints(built);
    constraints.erase(std::remove_if(constraints.begin(),
                                     constraints.end(),
                                     [&](const auto& constraint) {
                                         return !among(constraint.first) ||
                                                !among(constraint.second);
                                     }),
                      constraints.end());
    return checks::landingOrder(built, constraints).knots.empty();
}

}  // namespace

double trainingRadius(double diameter) {
    const double multiple = diameter <= 1.0 ? 4.0 : 5.0;  // ICEA training radius, inner surface
    return std::ceil((multiple + 0.5) * diameter * 16.0 + 1e-9) / 16.0;
}

bool layConductor(layout::Layout& layout,
                  const parts::Shelf& shelf,
                  std::size_t index,
                  const std::vector<std::size_t>& laid,
                  const LaneWishes& wishes) {
    layout.conductors[index].corners.clear();
    const BuiltLayout built = geometry::build(layout, shelf);
    const auto& conductor = built.conductors[index];
    const auto a = terminalOf(conductor.from, conductor.built.path.start());
    const auto b = terminalOf(conductor.to, conductor.built.path.end());
    const double diameter = conductor.diameter.in();
    const double radius = trainingRadius(diameter);

    std::vector<Polyline> lines{{a.tip, b.tip}};
    if (!wishes.lanesOnly) {
        addJogs(a, b, wishes.leadIn * diameter, wishes.furthest, lines);
    }
    addLanes(a, b, wishes.leadIn * diameter, wishes, lines);
    std::vector<Candidate> candidates;
    for (const auto& line : lines) {
        if (auto candidate = assess(line, radius, wishes, diameter, a, b)) {
            candidates.push_back(std::move(*candidate));
        }
    }
    std::stable_sort(candidates.begin(), candidates.end(), [](const auto& p, const auto& q) {
        return p.cost < q.cost;
    });

    auto withPath = laid;
    withPath.push_back(index);
    Obstacles obstacles{built, laid, {}};
    for (const std::size_t other : laid) {
        obstacles.bounds.push_back(geometry::bounds(wholeTube(built.conductors[other])));
    }
    for (const auto& candidate : candidates) {
        const auto path = geometry::buildPath(a.tip, candidate.corners, b.tip).path;
        const Vec3 leaves = path.tangentAt(0.0);
        const Vec3 arrives = -path.tangentAt(path.length().in());
        const bool square =
            angleBetween(leaves, a.axis) < 2e-3 && angleBetween(arrives, b.axis) < 2e-3;
        if (square && clear(path, conductor, obstacles, wishes.gap)) {
            auto& corners = layout.conductors[index].corners;
            corners.clear();
            for (const auto& corner : candidate.corners) {
                corners.push_back({corner.at, units::Inches::of(corner.radius)});
            }
            if (canBeLaidIn(layout, shelf, withPath)) {
                return true;
            }
        }
    }
    return false;
}

}  // namespace gw::tools
