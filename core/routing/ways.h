#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "geometry/path.h"
#include "routing/ribbon.h"
#include "routing/span.h"

/// The ways a span may take: whole paths that can be bent, from a set of templates.
namespace gw::routing {

struct Way {
    std::vector<Vec3> corners;
    std::size_t start = 0;  ///< index into the span's starts
    std::size_t end = 0;
    geometry::Path path;               ///< from mouth to mouth
    Ribbon ribbon;                     ///< of it
    double length = 0.0;               ///< inches
    double turn = 0.0;                 ///< radians
    double cost = 0.0;                 ///< inches of conductor that it is worth
    std::vector<std::uint32_t> cells;  ///< of the price list, each once
};

/// A conductor's tube or a body that stays where it is.
struct Fixed {
    Ribbon ribbon;
    std::size_t conductor = 0;
    Terminal start;  ///< of that span
    Terminal end;
};

/// The straight way to a screw, to be kept free.
struct Corridor {
    std::size_t block = 0;
    geometry::Path path;
    double radius = 0.0;
};

/// Everything that stays where it is.
struct Surroundings {
    Vec3 inside;                        ///< of the gutter
    std::vector<geometry::Box> bodies;  ///< as the layout's blocks
    std::vector<std::unique_ptr<Fixed>> fixed;
    std::vector<Corridor> corridors;
    std::vector<Ribbon> corridorRibbons;
    double pitch = 1.0;  ///< inches between lanes
};

/// What is in the way of the best way that would be there without it.
struct InTheWay {
    enum class Kind { nothing, wall, body, conductor };
    Kind kind = Kind::nothing;
    std::size_t index = 0;
    Overlap overlap;
};

struct Ways {
    std::vector<std::unique_ptr<Way>> ways;  ///< legal by themselves, cheapest first
    InTheWay inTheWay;                       ///< where there are none
};

/// Asked now and then; false: stop and give what there is.
using GoOn = std::function<bool()>;

Ways waysOf(const Span& span, const Surroundings& around, const GoOn& goOn);

/// Legal ways like this one: corners and legs shifted, and half a leg shifted from `place` on.
/// step: inches, the least of the shifts.
std::vector<std::unique_ptr<Way>> variantsOf(const Span& span,
                                             const Surroundings& around,
                                             const Way& way,
                                             const std::optional<Vec3>& place,
                                             double step);

/// How two spans overlap, less what belongs together: beyond a port that both are in, until they
/// have parted.
std::optional<Overlap> conflictOf(const Span& a, const Way& way, const Span& b, const Way& other);

/// Numbers of the cells a path goes through, for the price list. Cells are 1 x 1/2 x 1/2 in, larger
/// in large gutters.
class CellGrid {
public:
    explicit CellGrid(const Vec3& inside);
    std::size_t size() const { return nx_ * ny_ * nz_; }
    std::uint32_t cellAt(const Vec3& point) const;
    std::vector<std::uint32_t> cellsOf(const geometry::Path& path) const;

private:
    Vec3 cell_;
    std::size_t nx_, ny_, nz_;
};

}  // namespace gw::routing
