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
constexpr double kSlack = kClearanceError;

/// inches. When both bows together stray no more, the segments' distance is within half of kSlack
/// of the true one both ways: halving further gains nothing.
constexpr double kLeafStray = kSlack / 2.0;

/// How an arc between these points leaves its chord.
struct Bulge {
    Vec3 lift;           ///< half its sagitta, outward
    double stray = 0.0;  ///< length of lift
};

Bulge bulgeOf(const Piece& arc, const Vec3& start, const Vec3& end) {
    const double square = squaredNorm(end - start) * 0.25;
    const double toChord = std::sqrt(std::max(0.0, arc.radius * arc.radius - square));
    const double stray = 0.5 * square / (arc.radius + toChord);
    const Vec3 outward = (start + end) * 0.5 - arc.origin;
    return {outward * (stray / toChord), stray};
}

}  // namespace

int bowCount(const Piece& piece, double first, double last, const Cuts& cuts) {
    constexpr double kRounding = 1e-9;
    double pieces = 1.0;
    if (piece.isArc()) {
        pieces = (last - first) / piece.radius / cuts.turn;
    } else {
        const std::array<double, 3> sides{
            std::abs(piece.u.x), std::abs(piece.u.y), std::abs(piece.u.z)};
        const double greatest = std::max({sides[0], sides[1], sides[2]});
        const double least = std::min({sides[0], sides[1], sides[2]});
        const double second = sides[0] + sides[1] + sides[2] - greatest - least;
        pieces = second * (last - first) / cuts.breadth;
    }
    return std::max(1, static_cast<int>(std::ceil(pieces - kRounding)));
}

Bow bowBetween(const Piece& piece,
               double offset,
               double first,
               double last,
               const Vec3& start,
               const Vec3& end) {
    if (!piece.isArc()) {
        return {&piece, offset, first, last, start, end, 0.0};
    }
    const Bulge bulge = bulgeOf(piece, start, end);
    return {&piece, offset, first, last, start + bulge.lift, end + bulge.lift, bulge.stray};
}

Bow bowAt(const Path& path, double at) {
    CONTRACT(!path.empty());
    std::size_t i = path.pieces().size() - 1;
    while (i > 0 && path.startOf(i) > at) {
        --i;
    }
    const Piece& piece = path.pieces()[i];
    const double s = std::min(at - path.startOf(i), piece.length);
    const Vec3 point = piece.pointAt(s);
    return bowBetween(piece, path.startOf(i), s, s, point, point);
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

/// A bow as Newton's steps see it.
class Track {
public:
    explicit Track(const Bow& bow) : piece_(*bow.piece), start_(bow.start), end_(bow.end) {
        if (piece_.isArc()) {
            const Vec3 lift = bow.lift();
            start_ = start_ - lift;
            end_ = end_ - lift;
            turn_ = cross(piece_.u, piece_.v) / piece_.radius;
            bend_ = 1.0 / (piece_.radius * piece_.radius);
        }
    }

    /// A point of it and how it goes on from there.
    struct Place {
        Vec3 point;
        Vec3 tangent;
        Vec3 curvature;  ///< second derivative of the point by arc length
        bool atStart = false;
        bool atEnd = false;
    };

    Place placeAt(const Vec3& point) const {
        return {point, tangentAt(point), curvatureAt(point), false, false};
    }

    /// As far along the tangent, and back onto the piece; not beyond the ends.
    Place moved(const Place& from, double by) const {
        const Vec3 point = ontoPiece(piece_, from.point + from.tangent * by);
        if (dot(point - start_, tangentAt(start_)) <= 0.0) {
            return {start_, tangentAt(start_), curvatureAt(start_), true, false};
        }
        if (dot(point - end_, tangentAt(end_)) >= 0.0) {
            return {end_, tangentAt(end_), curvatureAt(end_), false, true};
        }
        return placeAt(point);
    }

private:
    Vec3 tangentAt(const Vec3& point) const {
        return piece_.isArc() ? cross(turn_, point - piece_.origin) : piece_.u;
    }
    Vec3 curvatureAt(const Vec3& point) const { return (piece_.origin - point) * bend_; }

    const Piece& piece_;
    Vec3 start_;
    Vec3 end_;
    Vec3 turn_;          ///< along the axis of the arc, 1 / radius long
    double bend_ = 0.0;  ///< 1 / radius^2; 0 for a leg
};

/// The steps along a and b that Newton's method asks for: minus the inverse of the second
/// derivatives times the first. A place at its end that wants to leave is held.
std::pair<double, double> newtonStep(const Track::Place& a, const Track::Place& b) {
    const Vec3 gap = a.point - b.point;
    const double ga = dot(gap, a.tangent);
    const double gb = -dot(gap, b.tangent);
    const double haa = 1.0 + dot(gap, a.curvature);
    const double hbb = 1.0 - dot(gap, b.curvature);
    const double hab = -dot(a.tangent, b.tangent);
    const bool heldA = (a.atStart && ga > 0.0) || (a.atEnd && ga < 0.0);
    const bool heldB = (b.atStart && gb > 0.0) || (b.atEnd && gb < 0.0);
    constexpr double kFlat = 1e-12;
    const double determinant = haa * hbb - hab * hab;
    if (!heldA && !heldB && determinant > kFlat && haa > 0.0) {
        return {(hab * gb - hbb * ga) / determinant, (hab * ga - haa * gb) / determinant};
    }
    return {!heldA && haa > kFlat ? -ga / haa : 0.0,
            heldA && !heldB && hbb > kFlat ? -gb / hbb : 0.0};
}

/// Newton's steps from two points as long as they bring them nearer.
Feet polished(const Track& trackA, const Track& trackB, const Vec3& onA, const Vec3& onB) {
    constexpr int kMostSteps = 8;
    constexpr double kStill = 1e-2;  // inches; what is left is about its square
    Track::Place a = trackA.placeAt(onA);
    Track::Place b = trackB.placeAt(onB);
    double square = squaredNorm(onA - onB);
    for (int i = 0; i < kMostSteps; ++i) {
        const auto [stepA, stepB] = newtonStep(a, b);
        const Track::Place nextA = trackA.moved(a, stepA);
        const Track::Place nextB = trackB.moved(b, stepB);
        const double next = squaredNorm(nextA.point - nextB.point);
        if (!(next < square)) {
            break;
        }
        a = nextA;
        b = nextB;
        square = next;
        if (std::abs(stepA) + std::abs(stepB) < kStill) {
            break;
        }
    }
    return {std::sqrt(square), a.point, b.point};
}

}  // namespace

double lengthAt(const Bow& bow, const Vec3& point) {
    const Piece& piece = *bow.piece;
    const Vec3 from = point - piece.origin;
    if (!piece.isArc()) {
        return bow.offset + std::clamp(dot(from, piece.u), bow.first, bow.last);
    }
    const double middle = (bow.first + bow.last) * 0.5 / piece.radius;
    double angle = std::atan2(dot(from, piece.v), dot(from, piece.u));
    angle += std::round((middle - angle) / (2.0 * std::numbers::pi)) * 2.0 * std::numbers::pi;
    return bow.offset + std::clamp(angle * piece.radius, bow.first, bow.last);
}

/// The bows of a search and what they are halved into, each once.
class HalfStore {
public:
    using Half = NearestFinder::Half;

    explicit HalfStore(std::vector<Half>& halves) : halves_(halves) { halves_.clear(); }

    const Half& operator[](std::uint32_t index) const { return halves_[index]; }

    std::uint32_t add(const Bow& bow) {
        const Vec3 lift = bow.lift();
        halves_.push_back({bow.start - lift, bow.end - lift, lift, bow.stray, 0});
        return static_cast<std::uint32_t>(halves_.size() - 1);
    }

    /// Index of the first half; the second follows it.
    std::uint32_t halve(const Piece& arc, std::uint32_t index) {
        if (halves_[index].halves == 0) {
            const Half whole = halves_[index];
            halves_[index].halves = static_cast<std::uint32_t>(halves_.size());
            const Vec3 middle = (whole.start + whole.end) * 0.5 + whole.lift * 2.0;
            add(arc, whole.start, middle);
            add(arc, middle, whole.end);
        }
        return halves_[index].halves;
    }

private:
    void add(const Piece& arc, const Vec3& start, const Vec3& end) {
        const Bulge bulge = bulgeOf(arc, start, end);
        halves_.push_back({start, end, bulge.lift, bulge.stray, 0});
    }

    std::vector<Half>& halves_;
};

namespace {

/// A piece seen along a direction: how far its parts reach.
class Facing {
public:
    Facing() = default;
    Facing(const Piece& piece, const Vec3& direction)
        : direction_(direction), centre_(piece.origin) {
        if (piece.isArc()) {
            turn_ = cross(direction, cross(piece.u, piece.v));
            rim_ = dot(direction, centre_) + piece.radius * norm(turn_);
        }
    }

    /// The greatest direction . point. Of an arc: at an end, or at its circle's rim where it rises
    /// toward that from the start and falls from it to the end.
    double furthest(const Vec3& start, const Vec3& end) const {
        if (dot(turn_, start - centre_) > 0.0 && dot(turn_, end - centre_) < 0.0) {
            return rim_;
        }
        return std::max(dot(direction_, start), dot(direction_, end));
    }

private:
    Vec3 direction_;
    Vec3 centre_;
    Vec3 turn_;  ///< turn . (point - centre): how direction . point grows along the arc
    double rim_ = 0.0;
};

}  // namespace

double apartAlong(const Vec3& direction, const Bow& a, const Bow& b) {
    const auto furthest = [](const Bow& bow, const Vec3& toward) {
        if (bow.stray == 0.0) {
            return std::max(dot(toward, bow.start), dot(toward, bow.end));
        }
        const Vec3 lift = bow.lift();
        return Facing(*bow.piece, toward).furthest(bow.start - lift, bow.end - lift);
    };
    return -furthest(a, -direction) - furthest(b, direction);
}

class PairSearch {
public:
    using Half = NearestFinder::Half;
    using Node = NearestFinder::Node;

    PairSearch(const Bow& a, const Bow& b, double ceiling, NearestFinder& space)
        : a_(a),
          b_(b),
          ceiling_(ceiling),
          goal_(ceiling),
          halves_(space.halves_),
          nodes_(space.nodes_) {}

    std::optional<Feet> run() {
        nodes_.clear();
        const std::uint32_t wholeA = halves_.add(a_);
        const std::uint32_t wholeB = halves_.add(b_);
        const Node root = node(wholeA, wholeB);
        if (root.lower > ceiling_) {
            return std::nullopt;
        }
        improve(root);
        push(root);
        while (!nodes_.empty()) {
            const Node next = nodes_.back();
            nodes_.pop_back();
            if (canGain(next)) {
                visit(next);
            }
        }
        return best_.distance <= ceiling_ ? std::optional(best_) : std::nullopt;
    }

private:
    Node node(std::uint32_t a, std::uint32_t b) {
        const Half& halfA = halves_[a];
        const Half& halfB = halves_[b];
        const SegmentFeet feet = nearestOnSegments(halfA.start + halfA.lift,
                                                   halfA.end + halfA.lift,
                                                   halfB.start + halfB.lift,
                                                   halfB.end + halfB.lift);
        const double stray = halfA.stray + halfB.stray;
        return {a, b, std::sqrt(feet.squaredDistance) - stray, feet.a, feet.b};
    }

    /// How far a lies beyond b along the direction between the best points.
    double apart(std::uint32_t a, std::uint32_t b) const {
        return -facingA_.furthest(halves_[a].start, halves_[a].end) -
               facingB_.furthest(halves_[b].start, halves_[b].end);
    }

    bool canGain(const Node& node) const {
        return node.lower <= goal_ && apart(node.a, node.b) <= goal_;
    }

    void push(const Node& node) {
        if (canGain(node)) {
            nodes_.push_back(node);
        }
    }

    void visit(const Node& next) {
        const double strayA = halves_[next.a].stray;
        const double strayB = halves_[next.b].stray;
        if (strayA + strayB <= kLeafStray) {
            improve(next);
            return;
        }
        const bool splitA = strayA >= strayB;
        const std::uint32_t half =
            splitA ? halves_.halve(*a_.piece, next.a) : halves_.halve(*b_.piece, next.b);
        const Node first = splitA ? node(half, next.b) : node(next.a, half);
        const Node second = splitA ? node(half + 1, next.b) : node(next.a, half + 1);
        const bool firstNearer = first.lower < second.lower;
        push(firstNearer ? second : first);
        push(firstNearer ? first : second);
    }

    /// From where the segments come nearest to points that are really there, and on from those.
    void improve(const Node& node) {
        const Half& a = halves_[node.a];
        const Half& b = halves_[node.b];
        const Vec3 alongA = a.start + a.lift + (a.end - a.start) * node.alongA;
        const Vec3 alongB = b.start + b.lift + (b.end - b.start) * node.alongB;
        const Feet feet = polished(
            Track(a_), Track(b_), ontoPiece(*a_.piece, alongA), ontoPiece(*b_.piece, alongB));
        if (feet.distance >= best_.distance) {
            return;
        }
        best_ = feet;
        goal_ = std::min(ceiling_, feet.distance - kSlack);
        constexpr double kRounding = 1e-12;
        if (feet.distance > kRounding) {
            const Vec3 direction = (feet.onA - feet.onB) / feet.distance;
            facingA_ = Facing(*a_.piece, -direction);
            facingB_ = Facing(*b_.piece, direction);
        }
    }

    const Bow& a_;
    const Bow& b_;
    double ceiling_;
    double goal_;  ///< inches: what a pair of halves has to come down to, or it is dropped
    Feet best_{std::numeric_limits<double>::infinity(), {}, {}};
    Facing facingA_;  ///< from a toward b, along the line between the best points
    Facing facingB_;  ///< from b toward a
    HalfStore halves_;
    std::vector<Node>& nodes_;
};

namespace {

std::optional<Feet> nearestOfLegs(const Bow& a, const Bow& b, double ceiling) {
    const SegmentFeet feet = nearestOnSegments(a.start, a.end, b.start, b.end);
    const double apart = std::sqrt(feet.squaredDistance);
    if (apart > ceiling) {
        return std::nullopt;
    }
    return Feet{apart, a.start + (a.end - a.start) * feet.a, b.start + (b.end - b.start) * feet.b};
}

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
    const Vec3 liftB = b.lift();
    const auto [low, high] = std::minmax({angleOf(b.start - liftB), angleOf(b.end - liftB)});
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
    return Feet{distance(onA, onB), onA, onB};
}

}  // namespace

std::optional<Feet> NearestFinder::find(const Bow& a, const Bow& b, double ceiling) {
    if (a.stray == 0.0 && b.stray == 0.0) {
        return nearestOfLegs(a, b, ceiling);
    }
    if (const auto feet = nearestAroundOneAxis(a, b)) {
        return feet->distance <= ceiling ? feet : std::nullopt;
    }
    return PairSearch(a, b, ceiling, *this).run();
}

// ---- bow to box ---------------------------------------------------------------------------------
//
// The signed distance to a box is convex, so along a chord it has one least value, found in closed
// form; an arc can undercut that by no more than it strays.

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
            if (d_[i] == 0.0) {
                continue;
            }
            for (const double face : {-half_[i], half_[i]}) {
                const double t = (face - from_[i]) / d_[i];
                if (!(t > low && t < high)) {
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
    using Node = NearestFinder::Node;

    BoxSearch(const Bow& bow, const OrientedBox& box, double ceiling, NearestFinder& space)
        : bow_(bow),
          box_(box),
          piece_(pieceSeenFrom(box, *bow.piece)),
          ceiling_(ceiling),
          halves_(space.halves_),
          nodes_(space.nodes_) {}

    std::optional<Feet> run() {
        nodes_.clear();
        push(node(halves_.add(seen())));
        while (!nodes_.empty()) {
            const Node next = nodes_.back();
            nodes_.pop_back();
            if (canGain(next)) {
                visit(next);
            }
        }
        if (found_ && piece_.isArc() && best_ <= ceiling_ + kSlack) {
            narrow();
        }
        if (!found_ || best_ > ceiling_) {
            return std::nullopt;
        }
        const Vec3 onA =
            box_.centre + box_.axes[0] * at_.x + box_.axes[1] * at_.y + box_.axes[2] * at_.z;
        return Feet{best_, onA, onSurface(box_, onA)};
    }

private:
    /// The bow as the box sees it.
    Bow seen() const {
        Bow bow = bow_;
        bow.piece = &piece_;
        bow.start = turnedInto(box_, bow.start - box_.centre);
        bow.end = turnedInto(box_, bow.end - box_.centre);
        return bow;
    }

    Node node(std::uint32_t half) const {
        const auto& [start, end, lift, stray, halves] = halves_[half];
        const OnChord found = ChordAtBox(start + lift, end + lift, box_.half).nearest();
        return {half, 0, found.value - stray, found.along, 0.0};
    }

    bool canGain(const Node& node) const {
        return node.lower <= ceiling_ && (!found_ || node.lower < best_ - kSlack);
    }

    void push(const Node& node) {
        if (canGain(node)) {
            nodes_.push_back(node);
        }
    }

    double valueAt(const Vec3& point) const {
        return signedDistance(coordinates(point), coordinates(box_.half));
    }

    void visit(const Node& next) {
        improve(next);
        if (halves_[next.a].stray <= kLeafStray) {
            return;
        }
        const std::uint32_t half = halves_.halve(piece_, next.a);
        const Node first = node(half);
        const Node second = node(half + 1);
        push(first.lower < second.lower ? second : first);
        push(first.lower < second.lower ? first : second);
    }

    void improve(const Node& node) {
        const auto& half = halves_[node.a];
        const Vec3 point =
            ontoPiece(piece_, half.start + half.lift + (half.end - half.start) * node.alongA);
        const double here = valueAt(point);
        if (!found_ || here < best_) {
            best_ = here;
            found_ = true;
            at_ = point;
        }
    }

    /// Thirds of a short stretch around the best point: the distance has one dip there, or the
    /// result is not used.
    void narrow() {
        constexpr int kRounds = 16;
        const Track track(seen());
        const Track::Place from = track.placeAt(at_);
        double high = std::sqrt(16.0 * kLeafStray * piece_.radius);
        double low = -high;
        for (int i = 0; i < kRounds; ++i) {
            const double third = (high - low) / 3.0;
            const bool dipBelow = valueAt(track.moved(from, low + third).point) <
                                  valueAt(track.moved(from, high - third).point);
            (dipBelow ? high : low) = dipBelow ? high - third : low + third;
        }
        const Vec3 point = track.moved(from, (low + high) * 0.5).point;
        const double value = valueAt(point);
        if (value < best_) {
            best_ = value;
            at_ = point;
        }
    }

    const Bow& bow_;
    const OrientedBox& box_;
    Piece piece_;
    double ceiling_;
    bool found_ = false;
    double best_ = 0.0;
    Vec3 at_;  ///< best point, as the box sees it
    HalfStore halves_;
    std::vector<Node>& nodes_;
};

namespace {

std::optional<Feet> nearestOfLeg(const Bow& leg, const OrientedBox& box, double ceiling) {
    const OnChord found = ChordAtBox(turnedInto(box, leg.start - box.centre),
                                     turnedInto(box, leg.end - box.centre),
                                     box.half)
                              .nearest();
    if (found.value > ceiling) {
        return std::nullopt;
    }
    const Vec3 onA = leg.start + (leg.end - leg.start) * found.along;
    return Feet{found.value, onA, onSurface(box, onA)};
}

}  // namespace

std::optional<Feet> NearestFinder::find(const Bow& a, const OrientedBox& box, double ceiling) {
    if (a.stray == 0.0) {
        return nearestOfLeg(a, box, ceiling);
    }
    return BoxSearch(a, box, ceiling, *this).run();
}

}  // namespace gw::geometry
