#pragma once

#include <optional>
#include <string>

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// Blocks, entries, systems, circuits: putting them there and turning them.
namespace gw::editing {

/// The prefix with the least number from 1 that no id of the layout has: "E" -> "E4".
std::string nextId(const layout::Layout& layout, const std::string& prefix);

/// "Block D": by the first letter that no block has.
std::string freeBlockName(const layout::Layout& layout);

bool idTaken(const layout::Layout& layout, const std::string& id);

// ---- blocks ---------------------------------------------------------------------------------

/// The corner moved as little as it takes for a body of these extents to lie inside the gutter;
/// against the back, bottom and left walls where it is too large.
Vec3 cornerInside(const layout::Gutter& gutter, const Vec3& corner, const Vec3& extents);

/// Moved within the gutter; named by the first letter that no block has: "A", "B", …
/// Error unknown: no such part in the layout or on the shelf.
Result<Made> placeBlock(const geometry::BuiltLayout& built,
                        const parts::Shelf& shelf,
                        const parts::PartId& part,
                        const Vec3& corner,
                        const parts::Attitude& attitude,
                        std::optional<bool> mounted);

/// Turned about the middle of its body by quarter turns about a gutter axis (0 x, 1 y, 2 z),
/// right-handed, then moved within the gutter. Conductors that end in it get a new path, those that
/// pass it keep theirs.
Edit turnBlock(const geometry::BuiltLayout& built,
               const layout::BlockId& block,
               int axis,
               int quarters = 1);
/// The same to a given attitude.
Edit setAttitude(const geometry::BuiltLayout& built,
                 const layout::BlockId& block,
                 const parts::Attitude& attitude);

Edit setMounted(const geometry::BuiltLayout& built,
                const layout::BlockId& block,
                std::optional<bool> mounted);
Edit setPhase(const geometry::BuiltLayout& built,
              const layout::BlockId& block,
              std::optional<layout::Phase> phase);

// ---- entries --------------------------------------------------------------------------------

struct EntryFacts {
    layout::Wall wall = layout::Wall::top;
    double u = 0.0;  ///< inches, as layout::Entry; moved onto the wall
    double v = 0.0;
    std::optional<standards::RacewayType> raceway;
    std::optional<standards::TradeSize> tradeSize;
};
Result<Made> addEntry(const geometry::BuiltLayout& built, const EntryFacts& facts);

/// Where a point nearest to a wall lies on it: what to make of a click. Top, bottom, left, right
/// and back by distance, in this order where they are equally near.
EntryFacts entryNear(const layout::Gutter& gutter, const Vec3& point);

/// What its hole takes of the wall and of other things: known once raceway and size are stated.
struct HoleRoom {
    std::optional<units::Inches> knockout;  ///< nominal hole
    std::optional<units::Inches> locknut;   ///< across, a sketch's value
    std::vector<std::string> collides;      ///< "the locknut of entry Service", "the edge of the
                                            ///< wall", "block A"
};
HoleRoom holeRoom(const geometry::BuiltLayout& built, const layout::EntryId& entry);

// ---- systems and circuits -------------------------------------------------------------------

/// `system` without an id gets one.
Edit addSystem(const geometry::BuiltLayout& built, layout::System system);
/// Without an id it gets one; without a system that of the first, which is made where there is
/// none. Phases must be stated.
Result<Made> addCircuit(const geometry::BuiltLayout& built, layout::Circuit circuit);

// ---- the gutter -----------------------------------------------------------------------------

/// Another inside: entries stay on their walls (those of the right and the top wall go along with
/// it, the others are moved onto what is left of theirs), their conductors follow; blocks are moved
/// within it. Error outOfRange below 1 in or above 1200 in.
Edit setGutterSize(const geometry::BuiltLayout& built, const Vec3& inside);

}  // namespace gw::editing
