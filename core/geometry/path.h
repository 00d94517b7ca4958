#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "base/vec3.h"
#include "units/length.h"

/// A conductor's centreline: straight legs joined by circular arcs, in space.
namespace gw::geometry {

/// One leg or arc, parametrised by arc length from its start. Inches throughout.
struct Piece {
    Vec3 origin{};        ///< leg: its start. arc: the centre.
    Vec3 u{};             ///< unit. leg: its direction. arc: from the centre to the start point.
    Vec3 v{};             ///< arc: unit tangent at its start (perpendicular to u). leg: unused.
    double radius = 0.0;  ///< 0 for a leg, else > 0
    double length = 0.0;  ///< arc length, >= 0

    bool isArc() const { return radius > 0.0; }
    double angle() const { return isArc() ? length / radius : 0.0; }  ///< radians turned
    Vec3 pointAt(double s) const;                                     ///< s in [0, length]
    Vec3 tangentAt(double s) const;                                   ///< unit
};

/// Pieces in order, each starting where the one before ends (to kLimitSlack), tangent-continuous
/// except at kinks (zero-radius corners). At a joint the later piece speaks for the tangent.
class Path {
public:
    Path() = default;
    explicit Path(std::vector<Piece> pieces);

    std::span<const Piece> pieces() const { return pieces_; }
    double startOf(std::size_t piece) const { return starts_[piece]; }  ///< arc length
    units::Inches length() const { return units::Inches::of(length_); }
    bool empty() const { return pieces_.empty(); }

    /// s in inches from the start, clamped to [0, length] (NaN counts as 0). REQUIRES not empty.
    Vec3 pointAt(double s) const;
    Vec3 tangentAt(double s) const;
    Vec3 start() const { return pointAt(0.0); }
    Vec3 end() const { return pointAt(length_); }
    /// Points along the path: ends of legs, and arcs cut so that no chord strays more than
    /// `deviation` inches from its arc; a deviation below 1e-6 counts as that. For drawing and
    /// sampling.
    std::vector<Vec3> flattened(double deviation) const;

private:
    std::size_t pieceAt(double s) const;
    std::vector<Piece> pieces_;
    std::vector<double> starts_;
    double length_ = 0.0;
};

struct CornerInput {
    Vec3 at{};
    double radius = 0.0;  ///< inches, of the centreline; 0 is a kink
};

/// What cannot be bent as asked.
struct PathFault {
    enum class Kind {
        legTooShort,   ///< the tangent lengths of the bends at its ends do not fit on leg `index`
        turnTooSharp,  ///< corner `index` turns back on itself (more than 175 degrees)
        emptyLeg,      ///< leg `index` has no length, so no direction
    };
    Kind kind = Kind::legTooShort;
    std::size_t index = 0;      ///< leg i runs from point i to point i+1; corner i is corners[i]
    units::Inches needed{};     ///< legTooShort: sum of tangent lengths
    units::Inches available{};  ///< legTooShort: the leg's length
    Vec3 at{};                  ///< where, in gutter coordinates
};

struct BuiltPath {
    Path path;
    /// What every corner became: same count and order as the input's corners.
    struct Bend {
        double start = 0.0;   ///< arc length where the bend begins
        double radius = 0.0;  ///< inches as built; smaller than asked only with a fault, or
                              ///< 0 where the corner does not turn
        double turn = 0.0;    ///< radians
        Vec3 corner{};
    };
    std::vector<Bend> bends;
    std::vector<PathFault> faults;
};

/// Fillets the polyline start, corners, end. Tangent length at a corner is r tan(turn/2); the legs
/// must be at least the sum of the tangent lengths at their two ends (within kLimitSlack). Where
/// they are not, the fault says by how much, and the radii on that leg are shrunk in proportion so
/// that there is still a path to draw and check. A corner that does not turn (within
/// kSameDirection) makes no arc, and the two legs at it count as one, with the first one's index.
/// Never fails and never gives an empty path: a point within kSamePoint of the one before is left
/// out (the end is kept), a reversal becomes a kink, and both are faults; everything in one point
/// is one leg of no length along x. Faults come by kind (empty legs, sharp turns, short legs), each
/// in order along the path. REQUIRES finite coordinates up to 1e6 in and radii >= 0.
/// Source: geometry only; worked numbers in the tests.
BuiltPath buildPath(const Vec3& start, std::span<const CornerInput> corners, const Vec3& end);

/// r tan(turn/2). REQUIRES 0 <= turn < pi.
double tangentLength(double radius, double turn);

}  // namespace gw::geometry
