#pragma once

#include <vector>

#include "checks/facts.h"
#include "checks/units.h"
#include "geometry/bins_along.h"

/// The facts of a built layout, kept current while things move in it.
namespace gw::live {

/// Whose findings may be others now, by what they read.
struct Touched {
    geometry::Things moved;
    std::vector<std::size_t> circuits;   ///< of the conductors that moved; ascending, as all here
    std::vector<std::size_t> entries;    ///< these come through
    std::vector<std::size_t> blocks;     ///< that moved, or in whose ports they are
    geometry::Things neighbours;         ///< whose neighbours are others or elsewhere
    std::vector<std::size_t> carrying;   ///< circuits with a conductor whose count is another
    std::vector<std::size_t> corridors;  ///< blocks with a screw that has others near its way
    std::vector<std::size_t> blockRow;   ///< blocks before whose ports another stands or stood
    bool landing = false;                ///< the order is told anew
};

class LiveFacts {
public:
    explicit LiveFacts(const geometry::BuiltLayout& built);

    const checks::Facts& facts() const { return facts_; }

    /// Makes them those of the built layout after these things moved in it, as factsOf() would.
    /// Cost: by what lies near them; a glance at every conductor, and at every block where a block
    /// moved.
    Touched update(const geometry::BuiltLayout& built, const geometry::Things& moved);

private:
    std::vector<geometry::Box> place(const geometry::BuiltLayout& built,
                                     const geometry::Things& moved);
    geometry::Things thingsIn(const std::vector<geometry::Box>& boxes, const Vec3& wider) const;
    std::vector<std::size_t> screwsIn(const std::vector<geometry::Box>& boxes) const;
    void touchAttached(Touched& touched, const geometry::BuiltLayout& built) const;
    void updateCorridors(Touched& touched,
                         const geometry::BuiltLayout& built,
                         const std::vector<geometry::Box>& before,
                         const std::vector<geometry::Box>& now);

    checks::Facts facts_;
    std::size_t conductors_;
    geometry::BinsAlong things_;  ///< conductors, then blocks
    geometry::BinsAlong screws_;  ///< by block: what reachOfScrews() says
};

}  // namespace gw::live
