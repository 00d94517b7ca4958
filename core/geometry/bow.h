#pragma once

#include <limits>
#include <optional>
#include <vector>

#include "base/vec3.h"
#include "geometry/path.h"
#include "geometry/solids.h"

/// Distances between parts of centrelines, and from them to boxes: what clearances are built on.
namespace gw::geometry {

/// A part of one piece with its chord. An arc's bow turns at most a quarter and strays from the
/// chord by at most `sag` inches; a leg's sag is 0.
struct Bow {
    const Piece* piece = nullptr;  ///< a loan: outlives the bow
    double offset = 0.0;           ///< arc length on the path at which the piece starts
    double first = 0.0;            ///< arc length on the piece
    double last = 0.0;
    Vec3 start;
    Vec3 end;
    double sag = 0.0;
};

inline constexpr double kQuarterTurn = 1.57079632679489661923;

/// How long a bow may be.
struct Cuts {
    double leg = std::numeric_limits<double>::infinity();  ///< inches, > 0
    double turn = kQuarterTurn;                            ///< radians, > 0, at most a quarter turn
};

/// The part of the path from..to (arc lengths, clamped to the path) in order, every piece in equal
/// bows. At least one bow, of no length when from >= to. REQUIRES path not empty.
std::vector<Bow> bowsOf(const Path& path, double from, double to, const Cuts& cuts = {});

/// Where two segments come nearest. a, b: fractions of the way along them, 0 to 1. Segments of no
/// length and parallel ones are fine. Closed form.
struct SegmentFeet {
    double squaredDistance = 0.0;
    double a = 0.0;
    double b = 0.0;
};
SegmentFeet nearestOnSegments(const Vec3& a0, const Vec3& a1, const Vec3& b0, const Vec3& b1);

struct Feet {
    double distance = 0.0;  ///< negative: as deep in the box
    Vec3 onA;
    Vec3 onB;
    double sA = 0.0;  ///< arc lengths on the paths
    double sB = 0.0;
};

/// Finds nearest points of bows. Keeps its workspace from one search to the next.
///
/// Branch and bound: the chords' distance less both sags bounds the distance from below, so a pair
/// of bows that cannot beat the best by more than half of kClearanceError is dropped, any other is
/// halved. The answer is a distance between two points that are really there; the true one is at
/// most kClearanceError / 2 smaller (in practice 1e-9: the end is polished by Newton's steps).
class NearestFinder {
public:
    /// Empty when the distance is greater than `ceiling`.
    std::optional<Feet> find(const Bow& a, const Bow& b, double ceiling);
    std::optional<Feet> find(const Bow& a, const OrientedBox& box, double ceiling);

private:
    struct Half {
        double first, last, sag;
        Vec3 start, end;
    };
    struct Node {
        Half a, b;
        double lower;
        double alongA, alongB;
    };
    struct BoxNode {
        Half half;
        double lower;
        double along;
    };
    friend class PairSearch;
    friend class BoxSearch;
    std::vector<Node> nodes_;
    std::vector<BoxNode> boxNodes_;
};

}  // namespace gw::geometry
