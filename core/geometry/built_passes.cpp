#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/tolerance.h"
#include "geometry/built_pieces.h"

namespace gw::geometry {
namespace {

/// Arc length within a piece of its point nearest to p.
double nearestWithin(const Piece& piece, const Vec3& p) {
    const Vec3 out = p - piece.origin;
    if (!piece.isArc()) {
        return std::clamp(dot(out, piece.u), 0.0, piece.length);
    }
    const double angle = std::atan2(dot(out, piece.v), dot(out, piece.u));
    const double turned = angle < 0.0 ? angle + 2.0 * std::numbers::pi : angle;
    if (turned <= piece.angle()) {
        return turned * piece.radius;
    }
    return distance(piece.pointAt(0.0), p) <= distance(piece.pointAt(piece.length), p)
               ? 0.0
               : piece.length;
}

/// Arc length of the path's point nearest to p; the first on a tie.
double nearestOn(const Path& path, const Vec3& p) {
    double best = 0.0;
    double least = std::numeric_limits<double>::infinity();
    const auto pieces = path.pieces();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const double s = nearestWithin(pieces[i], p);
        const double away = distance(pieces[i].pointAt(s), p);
        if (away < least) {
            least = away;
            best = path.startOf(i) + s;
        }
    }
    return best;
}

double strayFromAxis(const Path& path, double s, const BuiltPort& bore) {
    const Vec3 out = path.pointAt(s) - bore.mouth;
    return norm(out - bore.direction * dot(out, bore.direction));
}

/// The furthest of both mouths and of looks between: on a leg the ends stray most, on an arc the
/// looks find its middle to within 0.1 %.
double furthestOffAxis(const Path& path, const BuiltPass& pass, const BuiltPort& bore) {
    constexpr int kLooks = 64;
    double furthest = std::max(distance(path.pointAt(pass.nearAt), bore.mouth),
                               distance(path.pointAt(pass.farAt), bore.farMouth));
    for (int i = 1; i < kLooks; ++i) {
        const double s = pass.nearAt + (pass.farAt - pass.nearAt) * i / kLooks;
        furthest = std::max(furthest, strayFromAxis(path, s, bore));
    }
    return furthest;
}

using Stretch = std::pair<double, double>;

void addStretch(std::vector<Stretch>& stretches, double a, double b, double length) {
    const double from = std::clamp(std::min(a, b), 0.0, length);
    const double to = std::clamp(std::max(a, b), 0.0, length);
    if (to > from) {
        stretches.emplace_back(from, to);
    }
}

void markEnds(BuiltConductor& conductor) {
    const double length = conductor.built.path.length().in();
    const BuiltEnd& from = conductor.from;
    const BuiltEnd& to = conductor.to;
    addStretch(conductor.inBlocks, 0.0, from.inserted, length);
    addStretch(conductor.inBlocks, length - to.inserted, length, length);
    addStretch(conductor.bare, 0.0, from.strip.value_or(0.0), length);
    addStretch(conductor.bare, length - to.strip.value_or(0.0), length, length);
}

void markPass(const BuiltBlock& block, const BuiltPass& pass, BuiltConductor& conductor) {
    const double length = conductor.built.path.length().in();
    const double bore = block.part->ports[pass.port].boreDiameter.in();
    // A path that misses the bore is not inside the block, whatever the layout calls it.
    if (atMost(pass.offAxis, bore * 0.5)) {
        addStretch(conductor.inBlocks, pass.nearAt, pass.farAt, length);
    }
    if (pass.window) {
        const double way = pass.farAt >= pass.nearAt ? 1.0 : -1.0;
        addStretch(conductor.bare,
                   pass.nearAt + way * pass.window->first,
                   pass.nearAt + way * pass.window->second,
                   length);
    }
}

std::vector<Stretch> joined(std::vector<Stretch> stretches) {
    std::sort(stretches.begin(), stretches.end());
    std::vector<Stretch> apart;
    for (const Stretch& stretch : stretches) {
        if (apart.empty() || stretch.first > apart.back().second) {
            apart.push_back(stretch);
        } else {
            apart.back().second = std::max(apart.back().second, stretch.second);
        }
    }
    return apart;
}

}  // namespace

BuiltPass buildPass(const BuiltBlock& block,
                    std::size_t blockIndex,
                    const layout::Pass& pass,
                    const Path& path) {
    BuiltPass through;
    through.block = blockIndex;
    through.port = portIndex(*block.part, pass.port);
    const BuiltPort& bore = block.ports[through.port];
    through.nearAt = nearestOn(path, bore.mouth);
    through.farAt = nearestOn(path, bore.farMouth);
    through.offAxis = furthestOffAxis(path, through, bore);
    through.onAxis = through.offAxis <= kOnAxis;
    if (pass.windowStart && pass.windowLength) {
        through.window = {pass.windowStart->in(), pass.windowStart->in() + pass.windowLength->in()};
    }
    return through;
}

void markStretches(const std::vector<BuiltBlock>& blocks, BuiltConductor& conductor) {
    markEnds(conductor);
    for (const BuiltPass& pass : conductor.passes) {
        markPass(blocks[pass.block], pass, conductor);
    }
    conductor.inBlocks = joined(std::move(conductor.inBlocks));
    conductor.bare = joined(std::move(conductor.bare));
}

}  // namespace gw::geometry
