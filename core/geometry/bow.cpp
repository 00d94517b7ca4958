#include "geometry/bow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/contract.h"
#include "base/tolerance.h"

namespace gw::geometry {

namespace {

/// inches. How much smaller than the answer a distance may be and not be looked for.
constexpr double kSlack = kClearanceError / 2.0;

/// inches. Sags that add up to this or less: the chords' nearest points, moved onto the arcs, are
/// within twice this of the bound, so halving further gains nothing.
constexpr double kLeafSag = kSlack / 2.0;

double sagOf(double radius, const Vec3& start, const Vec3& end) {
    const double square = squaredNorm(end - start) * 0.25;
    return square / (radius + std::sqrt(std::max(0.0, radius * radius - square)));
}

Bow bowOf(const Piece& piece, double offset, double first, double last) {
    const Vec3 start = piece.pointAt(first);
    const Vec3 end = piece.pointAt(last);
    return {&piece,
            offset,
            first,
            last,
            start,
            end,
            piece.isArc() ? sagOf(piece.radius, start, end) : 0.0};
}

void appendBows(std::vector<Bow>& bows,
                const Piece& piece,
                double offset,
                const std::pair<double, double>& span,
                const Cuts& cuts) {
    const double longest = piece.isArc() ? piece.radius * cuts.turn : cuts.leg;
    const double length = span.second - span.first;
    constexpr double kRounding = 1e-9;
    const int count = std::max(1, static_cast<int>(std::ceil(length / longest - kRounding)));
    for (int i = 0; i < count; ++i) {
        bows.push_back(bowOf(
            piece, offset, span.first + length * i / count, span.first + length * (i + 1) / count));
    }
}

}  // namespace

std::vector<Bow> bowsOf(const Path& path, double from, double to, const Cuts& cuts) {
    CONTRACT(!path.empty() && cuts.leg > 0.0 && cuts.turn > 0.0 && cuts.turn <= kQuarterTurn);
    const double begin = std::clamp(from, 0.0, path.length().in());
    const double end = std::clamp(to, begin, path.length().in());
    std::vector<Bow> bows;
    for (std::size_t i = 0; i < path.pieces().size(); ++i) {
        const Piece& piece = path.pieces()[i];
        const double offset = path.startOf(i);
        const double first = std::max(0.0, begin - offset);
        const double last = std::min(piece.length, end - offset);
        if (first < last) {
            appendBows(bows, piece, offset, {first, last}, cuts);
        }
    }
    if (bows.empty()) {
        std::size_t i = path.pieces().size() - 1;
        while (i > 0 && path.startOf(i) > begin) {
            --i;
        }
        const double at = std::min(begin - path.startOf(i), path.pieces()[i].length);
        bows.push_back(bowOf(path.pieces()[i], path.startOf(i), at, at));
    }
    return bows;
}

// ---- segments -----------------------------------------------------------------------------------

namespace {

double fraction(double numerator, double denominator) {
    return denominator > 0.0 ? std::clamp(numerator / denominator, 0.0, 1.0) : 0.0;
}

/// Directions, and the products the normal equations are made of.
struct SegmentPair {
    Vec3 u, v, w;  ///< along a, along b, from b's start to a's
    double uu, vv, uv, uw, vw;

    double bFor(double a) const { return fraction(vw + uv * a, vv); }
    double aFor(double b) const { return fraction(uv * b - uw, uu); }
    SegmentFeet feet(double a, double b) const { return {squaredNorm(w + u * a - v * b), a, b}; }
};

SegmentFeet better(const SegmentFeet& a, const SegmentFeet& b) {
    return b.squaredDistance < a.squaredDistance ? b : a;
}

/// Some end of one of them is a nearest point.
SegmentFeet nearestParallel(const SegmentPair& p) {
    const SegmentFeet ofA = better(p.feet(0.0, p.bFor(0.0)), p.feet(1.0, p.bFor(1.0)));
    const SegmentFeet ofB = better(p.feet(p.aFor(0.0), 0.0), p.feet(p.aFor(1.0), 1.0));
    return better(ofA, ofB);
}

}  // namespace

SegmentFeet nearestOnSegments(const Vec3& a0, const Vec3& a1, const Vec3& b0, const Vec3& b1) {
    const Vec3 u = a1 - a0;
    const Vec3 v = b1 - b0;
    const Vec3 w = a0 - b0;
    const SegmentPair p{u, v, w, dot(u, u), dot(v, v), dot(u, v), dot(u, w), dot(v, w)};
    const double determinant = p.uu * p.vv - p.uv * p.uv;
    if (determinant <= 1e-9 * p.uu * p.vv) {  // sine below 3e-5, or a segment of no length
        const SegmentFeet ends = nearestParallel(p);
        const double b = p.bFor(ends.a);
        return better(ends, p.feet(p.aFor(b), b));
    }
    const double b = p.bFor(std::clamp((p.uv * p.vw - p.uw * p.vv) / determinant, 0.0, 1.0));
    const double a = p.aFor(b);
    return p.feet(a, b);
}

// ---- bow to bow ---------------------------------------------------------------------------------

namespace {

/// The point of the arc (or leg) nearest to a point of its chord.
Vec3 ontoPiece(const Piece& piece, const Vec3& onChord) {
    if (!piece.isArc()) {
        return onChord;
    }
    return piece.origin + unit(onChord - piece.origin) * piece.radius;
}

/// Arc length on the piece of a point on it, known to lie within first..last.
double lengthTo(const Piece& piece, const Vec3& point, double first, double last) {
    const Vec3 from = point - piece.origin;
    if (!piece.isArc()) {
        return std::clamp(dot(from, piece.u), first, last);
    }
    const double middle = (first + last) * 0.5 / piece.radius;
    double angle = std::atan2(dot(from, piece.v), dot(from, piece.u));
    angle += std::round((middle - angle) / (2.0 * std::numbers::pi)) * 2.0 * std::numbers::pi;
    return std::clamp(angle * piece.radius, first, last);
}

/// Second derivative of the point by arc length.
Vec3 curvatureAt(const Piece& piece, const Vec3& point) {
    return piece.isArc() ? (piece.origin - point) / (piece.radius * piece.radius) : Vec3{};
}

double stayWithin(double s, const Bow& bow) {
    return std::clamp(s, bow.first, bow.last);
}

/// The step that Newton's method asks for: minus the inverse of the second derivatives times the
/// first. A variable at its bound that wants to leave is held.
std::array<double, 2> newtonStep(const Bow& a, const Bow& b, double s, double t) {
    const Vec3 onA = a.piece->pointAt(s);
    const Vec3 onB = b.piece->pointAt(t);
    const Vec3 gap = onA - onB;
    const Vec3 alongA = a.piece->tangentAt(s);
    const Vec3 alongB = b.piece->tangentAt(t);
    const double ga = dot(gap, alongA);
    const double gb = -dot(gap, alongB);
    const double haa = 1.0 + dot(gap, curvatureAt(*a.piece, onA));
    const double hbb = 1.0 - dot(gap, curvatureAt(*b.piece, onB));
    const double hab = -dot(alongA, alongB);
    const bool heldA = (s <= a.first && ga > 0.0) || (s >= a.last && ga < 0.0);
    const bool heldB = (t <= b.first && gb > 0.0) || (t >= b.last && gb < 0.0);
    constexpr double kFlat = 1e-12;
    if (!heldA && !heldB) {
        const double determinant = haa * hbb - hab * hab;
        if (determinant > kFlat && haa > 0.0) {
            return {(hab * gb - hbb * ga) / determinant, (hab * ga - haa * gb) / determinant};
        }
    }
    return {!heldA && haa > kFlat ? -ga / haa : 0.0,
            heldA && !heldB && hbb > kFlat ? -gb / hbb : 0.0};
}

/// Newton's steps from (s, t) as long as they bring the points nearer.
void polish(const Bow& a, const Bow& b, double& s, double& t, double& distanceNow) {
    constexpr int kMostSteps = 8;
    constexpr double kStill = 1e-9;
    for (int i = 0; i < kMostSteps; ++i) {
        const auto [stepA, stepB] = newtonStep(a, b, s, t);
        const double nextS = stayWithin(s + stepA, a);
        const double nextT = stayWithin(t + stepB, b);
        if (std::abs(nextS - s) + std::abs(nextT - t) < kStill) {
            return;
        }
        const double next = distance(a.piece->pointAt(nextS), b.piece->pointAt(nextT));
        if (!(next < distanceNow)) {
            return;
        }
        s = nextS;
        t = nextT;
        distanceNow = next;
    }
}

}  // namespace

class PairSearch {
public:
    using Half = NearestFinder::Half;
    using Node = NearestFinder::Node;

    PairSearch(const Bow& a, const Bow& b, double ceiling, std::vector<Node>& nodes)
        : a_(a), b_(b), ceiling_(ceiling), best_(ceiling + kSlack), nodes_(nodes) {}

    std::optional<Feet> run() {
        nodes_.clear();
        nodes_.push_back(node(halfOf(a_), halfOf(b_)));
        while (!nodes_.empty()) {
            const Node next = nodes_.back();
            nodes_.pop_back();
            if (next.lower < best_ - kSlack || !found_) {
                visit(next);
            }
        }
        if (!found_ || best_ > ceiling_) {
            return std::nullopt;
        }
        return Feet{
            best_, a_.piece->pointAt(s_), b_.piece->pointAt(t_), a_.offset + s_, b_.offset + t_};
    }

    static Half halfOf(const Bow& bow) {
        return {bow.first, bow.last, bow.sag, bow.start, bow.end};
    }

    static std::array<Half, 2> halve(const Piece& arc, const Half& whole) {
        const double middle = (whole.first + whole.last) * 0.5;
        const Vec3 point = ontoPiece(arc, (whole.start + whole.end) * 0.5);
        const double sag = sagOf(arc.radius, whole.start, point);
        return {Half{whole.first, middle, sag, whole.start, point},
                Half{middle, whole.last, sag, point, whole.end}};
    }

private:
    static Node node(const Half& a, const Half& b) {
        const SegmentFeet feet = nearestOnSegments(a.start, a.end, b.start, b.end);
        const double lower = std::sqrt(feet.squaredDistance) - a.sag - b.sag;
        return {a, b, std::max(0.0, lower), feet.a, feet.b};
    }

    void visit(const Node& node) {
        if (node.lower > ceiling_) {
            return;
        }
        improve(node);
        if (node.a.sag + node.b.sag <= kLeafSag) {
            finish();
            return;
        }
        const bool splitA = node.a.sag >= node.b.sag;
        const auto halves = splitA ? halve(*a_.piece, node.a) : halve(*b_.piece, node.b);
        const Node first =
            splitA ? PairSearch::node(halves[0], node.b) : PairSearch::node(node.a, halves[0]);
        const Node second =
            splitA ? PairSearch::node(halves[1], node.b) : PairSearch::node(node.a, halves[1]);
        const bool firstNearer = first.lower < second.lower;
        nodes_.push_back(firstNearer ? second : first);
        nodes_.push_back(firstNearer ? first : second);
    }

    void improve(const Node& node) {
        const Vec3 onA =
            ontoPiece(*a_.piece, node.a.start + (node.a.end - node.a.start) * node.alongA);
        const Vec3 onB =
            ontoPiece(*b_.piece, node.b.start + (node.b.end - node.b.start) * node.alongB);
        const double here = distance(onA, onB);
        if (here < best_) {
            best_ = here;
            found_ = true;
            polished_ = false;
            s_ = lengthTo(*a_.piece, onA, node.a.first, node.a.last);
            t_ = lengthTo(*b_.piece, onB, node.b.first, node.b.last);
        }
    }

    /// At a leaf: the best so far, made exact, prunes what is left.
    void finish() {
        if (found_ && !polished_ && (a_.sag > 0.0 || b_.sag > 0.0)) {
            polish(a_, b_, s_, t_, best_);
        }
        polished_ = true;
    }

    const Bow& a_;
    const Bow& b_;
    double ceiling_;
    double best_;
    bool found_ = false;
    bool polished_ = false;
    double s_ = 0.0;
    double t_ = 0.0;
    std::vector<Node>& nodes_;
};

namespace {

/// Arcs around one axis are the same distance apart wherever both are: there branch and bound would
/// have to look everywhere, and bundles bend just so. Empty when they have no angle in common or
/// not the same axis.
std::optional<Feet> nearestAroundOneAxis(const Bow& a, const Bow& b) {
    if (!a.piece->isArc() || !b.piece->isArc()) {
        return std::nullopt;
    }
    constexpr double kSame = 1e-9;
    const Vec3 axis = cross(a.piece->u, a.piece->v);
    const Vec3 apart = b.piece->origin - a.piece->origin;
    const bool parallel =
        std::abs(dot(axis, b.piece->u)) < kSame && std::abs(dot(axis, b.piece->v)) < kSame;
    if (!parallel || squaredNorm(apart - axis * dot(axis, apart)) > kSame * kSame) {
        return std::nullopt;
    }
    // b's ends as angles on a, counted from a's middle.
    const double radius = a.piece->radius;
    const double middle = (a.first + a.last) * 0.5 / radius;
    const auto angleOf = [&](const Vec3& point) {
        const Vec3 out = point - b.piece->origin;
        const double angle = std::atan2(dot(out, a.piece->v), dot(out, a.piece->u)) - middle;
        return angle - std::round(angle / (2.0 * std::numbers::pi)) * 2.0 * std::numbers::pi;
    };
    const auto [low, high] = std::minmax({angleOf(b.start), angleOf(b.end)});
    const double half = (a.last - a.first) * 0.5 / radius;
    const double from = std::max(low, -half);
    const double to = std::min(high, half);
    if (from > to || high - low > std::numbers::pi) {
        return std::nullopt;
    }
    const double sA = std::clamp((middle + (from + to) * 0.5) * radius, a.first, a.last);
    const Vec3 onA = a.piece->pointAt(sA);
    const Vec3 out = onA - a.piece->origin;
    const Vec3 onB = b.piece->origin + out * (b.piece->radius / radius);
    const double sB = lengthTo(*b.piece, onB, b.first, b.last);
    return Feet{distance(onA, onB), onA, onB, a.offset + sA, b.offset + sB};
}

}  // namespace

std::optional<Feet> NearestFinder::find(const Bow& a, const Bow& b, double ceiling) {
    if (const auto feet = nearestAroundOneAxis(a, b)) {
        return feet->distance <= ceiling ? feet : std::nullopt;
    }
    return PairSearch(a, b, ceiling, nodes_).run();
}

// ---- bow to box ---------------------------------------------------------------------------------
//
// The signed distance to a box is convex, so along a chord it has one least value, found in closed
// form; an arc can undercut that by no more than its sag.

namespace {

using Coordinates = std::array<double, 3>;

Coordinates coordinates(const Vec3& v) {
    return {v.x, v.y, v.z};
}

/// Outside: the distance. Inside: minus the depth below the nearest face.
double signedDistance(const Coordinates& p, const Coordinates& half) {
    double outside = 0.0;
    double deepest = -std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < 3; ++i) {
        const double beyond = std::abs(p[i]) - half[i];
        outside += beyond > 0.0 ? beyond * beyond : 0.0;
        deepest = std::max(deepest, beyond);
    }
    return deepest > 0.0 ? std::sqrt(outside) : deepest;
}

struct OnChord {
    double value = 0.0;
    double along = 0.0;  ///< fraction, 0 to 1
};

/// A chord seen from the box: from + d t, t from 0 to 1.
class ChordAtBox {
public:
    ChordAtBox(const Vec3& start, const Vec3& end, const Vec3& half)
        : from_(coordinates(start)), d_(coordinates(end - start)), half_(coordinates(half)) {}

    OnChord nearest() const {
        const double outer = nearestOutside();
        OnChord found{signedDistance(at(outer), half_), outer};
        constexpr double kTouches = 1e-6;
        if (found.value < kTouches) {
            const OnChord inner = deepest();
            if (inner.value < found.value) {
                found = inner;
            }
        }
        return found;
    }

private:
    Coordinates at(double t) const {
        return {from_[0] + d_[0] * t, from_[1] + d_[1] * t, from_[2] + d_[2] * t};
    }

    /// Half the derivative of the squared distance outside: piecewise linear, never falling.
    double slope(double t) const {
        const Coordinates p = at(t);
        double sum = 0.0;
        for (std::size_t i = 0; i < 3; ++i) {
            const double beyond = std::abs(p[i]) - half_[i];
            sum += beyond > 0.0 ? std::copysign(beyond, p[i]) * d_[i] : 0.0;
        }
        return sum;
    }

    double nearestOutside() const {
        double low = 0.0;
        double high = 1.0;
        double slopeLow = slope(low);
        double slopeHigh = slope(high);
        if (slopeLow >= 0.0) {
            return low;
        }
        if (slopeHigh <= 0.0) {
            return high;
        }
        for (std::size_t i = 0; i < 3; ++i) {  // narrow down to where the slope is linear
            for (const double face : {-half_[i], half_[i]}) {
                const double t = (face - from_[i]) / d_[i];
                if (!(t > low && t < high)) {  // also where d is 0
                    continue;
                }
                const double here = slope(t);
                (here < 0.0 ? low : high) = t;
                (here < 0.0 ? slopeLow : slopeHigh) = here;
            }
        }
        return low + (high - low) * (-slopeLow / (slopeHigh - slopeLow));
    }

    /// Least of the greatest of six linear functions: at an end or where two of them cross.
    OnChord deepest() const {
        OnChord best{std::numeric_limits<double>::infinity(), 0.0};
        const auto consider = [&](double t) {
            if (t >= 0.0 && t <= 1.0) {
                const double value = greatestAt(t);
                best = value < best.value ? OnChord{value, t} : best;
            }
        };
        consider(0.0);
        consider(1.0);
        for (std::size_t i = 0; i < 6; ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                consider((levelOf(j) - levelOf(i)) / (riseOf(i) - riseOf(j)));
            }
        }
        return best;
    }

    double riseOf(std::size_t face) const { return face < 3 ? d_[face] : -d_[face - 3]; }
    double levelOf(std::size_t face) const {
        return face < 3 ? from_[face] - half_[face] : -from_[face - 3] - half_[face - 3];
    }
    double greatestAt(double t) const {
        const Coordinates p = at(t);
        return std::max(
            {std::abs(p[0]) - half_[0], std::abs(p[1]) - half_[1], std::abs(p[2]) - half_[2]});
    }

    Coordinates from_;
    Coordinates d_;
    Coordinates half_;
};

Vec3 turnedInto(const OrientedBox& box, const Vec3& v) {
    return {dot(box.axes[0], v), dot(box.axes[1], v), dot(box.axes[2], v)};
}

/// The bow's piece as the box sees it: centre at the origin, axes along x, y, z.
Piece pieceSeenFrom(const OrientedBox& box, const Piece& piece) {
    return {turnedInto(box, piece.origin - box.centre),
            turnedInto(box, piece.u),
            turnedInto(box, piece.v),
            piece.radius,
            piece.length};
}

/// Nearest point of the box's surface to a point outside, or to one inside.
Vec3 onSurface(const OrientedBox& box, const Vec3& point) {
    Coordinates p = coordinates(turnedInto(box, point - box.centre));
    const Coordinates half = coordinates(box.half);
    std::size_t nearest = 0;
    bool inside = true;
    for (std::size_t i = 0; i < 3; ++i) {
        inside = inside && std::abs(p[i]) < half[i];
        nearest = half[i] - std::abs(p[i]) < half[nearest] - std::abs(p[nearest]) ? i : nearest;
    }
    for (std::size_t i = 0; i < 3; ++i) {
        p[i] = std::clamp(p[i], -half[i], half[i]);
    }
    if (inside) {
        p[nearest] = std::copysign(half[nearest], p[nearest]);
    }
    return box.centre + box.axes[0] * p[0] + box.axes[1] * p[1] + box.axes[2] * p[2];
}

}  // namespace

class BoxSearch {
public:
    using Half = NearestFinder::Half;
    using Node = NearestFinder::BoxNode;

    BoxSearch(const Bow& bow, const OrientedBox& box, double ceiling, std::vector<Node>& nodes)
        : bow_(bow),
          box_(box),
          piece_(pieceSeenFrom(box, *bow.piece)),
          ceiling_(ceiling),
          best_(ceiling + kSlack),
          nodes_(nodes) {}

    std::optional<Feet> run() {
        nodes_.clear();
        nodes_.push_back(node({bow_.first,
                               bow_.last,
                               bow_.sag,
                               turnedInto(box_, bow_.start - box_.centre),
                               turnedInto(box_, bow_.end - box_.centre)}));
        while (!nodes_.empty()) {
            const Node next = nodes_.back();
            nodes_.pop_back();
            if (next.lower < best_ - kSlack || (!found_ && next.lower <= ceiling_)) {
                visit(next);
            }
        }
        if (found_ && piece_.isArc()) {
            narrow();
        }
        if (!found_ || best_ > ceiling_) {
            return std::nullopt;
        }
        const Vec3 onA = bow_.piece->pointAt(s_);
        return Feet{best_, onA, onSurface(box_, onA), bow_.offset + s_, 0.0};
    }

private:
    Node node(const Half& half) const {
        const OnChord found = ChordAtBox(half.start, half.end, box_.half).nearest();
        return {half, found.value - half.sag, found.along};
    }

    double valueAt(const Vec3& seen) const {
        return signedDistance(coordinates(seen), coordinates(box_.half));
    }

    void visit(const Node& next) {
        const Half& half = next.half;
        const Vec3 point = ontoPiece(piece_, half.start + (half.end - half.start) * next.along);
        const double here = valueAt(point);
        if (here < best_) {
            best_ = here;
            found_ = true;
            s_ = lengthTo(piece_, point, half.first, half.last);
        }
        if (half.sag <= kLeafSag) {
            return;
        }
        const auto halves = PairSearch::halve(piece_, half);
        const Node first = node(halves[0]);
        const Node second = node(halves[1]);
        nodes_.push_back(first.lower < second.lower ? second : first);
        nodes_.push_back(first.lower < second.lower ? first : second);
    }

    /// Thirds of a short stretch around the best point: the distance has one dip there, or the
    /// result is not used.
    void narrow() {
        constexpr int kRounds = 40;
        const double reach = std::sqrt(8.0 * kLeafSag * piece_.radius);
        double low = std::max(bow_.first, s_ - reach);
        double high = std::min(bow_.last, s_ + reach);
        for (int i = 0; i < kRounds; ++i) {
            const double third = (high - low) / 3.0;
            const bool dipBelow =
                valueAt(piece_.pointAt(low + third)) < valueAt(piece_.pointAt(high - third));
            (dipBelow ? high : low) = dipBelow ? high - third : low + third;
        }
        const double s = (low + high) * 0.5;
        const double value = valueAt(piece_.pointAt(s));
        if (value < best_) {
            best_ = value;
            s_ = s;
        }
    }

    const Bow& bow_;
    const OrientedBox& box_;
    Piece piece_;
    double ceiling_;
    double best_;
    bool found_ = false;
    double s_ = 0.0;
    std::vector<Node>& nodes_;
};

std::optional<Feet> NearestFinder::find(const Bow& a, const OrientedBox& box, double ceiling) {
    return BoxSearch(a, box, ceiling, boxNodes_).run();
}

}  // namespace gw::geometry
