#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "geometry/fill.h"
#include "geometry/path.h"
#include "geometry/solids.h"
#include "layout/layout.h"
#include "parts/part.h"
#include "standards/citation.h"

/// The layout as shapes: what checks, takeoff and drawing read. Indices are into the layout's own
/// vectors (conductor i here is layout.conductors[i]).
namespace gw::geometry {

/// How one end of a conductor sits. `axis` is the unit direction in which a straight conductor
/// leaves the terminal or raceway into the gutter.
///
/// Which mouth of a port: the only open one; of a port open at both, or of an `either` port whose
/// open mouth is not stated, the one on the side the conductor comes from (its next corner, or the
/// other end), the near one when it comes from neither. How far in, where not stated: to the stop
/// or the cap; half way into a bore open at both mouths, so that two conductors can meet in it.
struct BuiltEnd {
    enum class Kind { entry, port, spare };
    Kind kind = Kind::spare;
    std::optional<std::size_t> entry;
    std::optional<std::size_t> block;
    std::optional<std::size_t> port;  ///< index into the part's ports
    Vec3 mouth;  ///< where it enters: on the wall, at the port's mouth, or a spare's tip
    Vec3 axis;
    double kink = 0.0;             ///< radians between the first leg and `axis`; 0 for spare
    double mouthAt = 0.0;          ///< arc length of the mouth, from the path's start
    double leadIn = 0.0;           ///< inches of straight conductor outside the mouth
    double inserted = 0.0;         ///< ports only, inches: tip beyond the mouth
    std::optional<double> strip;   ///< ports only, inches; empty: not stated
    bool intoClosedMouth = false;  ///< an `either` port whose open mouth is not stated
};

/// How a conductor goes through a port uncut: between its points nearest to the two mouths.
struct BuiltPass {
    std::size_t block = 0;
    std::size_t port = 0;
    bool onAxis = false;   ///< the path runs straight through the whole bore, on its axis
    double offAxis = 0.0;  ///< inches: furthest from the two mouths, and from the axis between
    double nearAt = 0.0;   ///< arc length at the near mouth
    double farAt = 0.0;    ///< and at the far mouth; less than nearAt when run backwards
    // The window along the port's direction from the near mouth, inches. Empty: not stated.
    std::optional<std::pair<double, double>> window;
};

struct BuiltConductor {
    units::Inches diameter;  ///< over the insulation
    units::SquareInches area;
    standards::Citation diameterSource;
    /// What was missing, so that the largest published for the size is taken: "insulation",
    /// "stranding", "outside diameter" (no table has the combination), or empty.
    std::string assumed;
    BuiltPath built;  ///< path from `from` to `to`, tip to tip
    BuiltEnd from;
    BuiltEnd to;
    std::vector<BuiltPass> passes;
    std::vector<std::pair<double, double>> inBlocks;  ///< arc lengths inside block bodies
    std::vector<std::pair<double, double>> bare;      ///< arc lengths without insulation
    double radius() const { return diameter.in() * 0.5; }
};

struct BuiltPort {
    Vec3 mouth;      ///< near mouth, gutter coordinates
    Vec3 direction;  ///< unit, into the bore from the near mouth
    Vec3 farMouth;   ///< near mouth + direction * boreDepth
};

struct BuiltBlock {
    const parts::Part* part = nullptr;  ///< owned by the BuiltLayout's shelf
    Box body;
    std::vector<BuiltPort> ports;  ///< as the part's ports
    struct Screw {
        Vec3 head;
        Vec3 outward;
    };
    std::vector<Screw> screws;  ///< as the part's screws
    std::vector<Vec3> mountingHoles;
};

struct BuiltEntry {
    Vec3 centre;        ///< on the wall's inner face
    Vec3 axis;          ///< unit, into the gutter
    double bore = 0.0;  ///< inches: raceway's inside diameter, or what its conductors need
    bool boreStated = false;
    std::map<int, Vec3> slots;  ///< slot number -> point on the wall
    bool packed = true;  ///< false: the conductors do not fit in the raceway; slots spill over
};

struct BuiltLayout {
    layout::Layout layout;
    parts::Shelf shelf;  ///< only the parts in use
    std::vector<BuiltEntry> entries;
    std::vector<BuiltBlock> blocks;
    std::vector<BuiltConductor> conductors;
    FillProfile fill;

    BuiltLayout() = default;
    BuiltLayout(BuiltLayout&&) = default;  // part pointers stay good: map nodes move
    BuiltLayout& operator=(BuiltLayout&&) = default;
    BuiltLayout(const BuiltLayout&) = delete;
    BuiltLayout& operator=(const BuiltLayout&) = delete;

    const layout::Gutter& gutter() const { return layout.gutter; }
    std::optional<std::size_t> circuitIndex(const layout::CircuitId& id) const;
};

/// REQUIRES validate(layout, shelf) passed.
BuiltLayout build(const layout::Layout& layout, const parts::Shelf& shelf);

}  // namespace gw::geometry
