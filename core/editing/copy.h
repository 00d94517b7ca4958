#pragma once

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// Copies of what is selected, in the same gutter or another.
namespace gw::editing {

/// The things alone, as a layout of their own in the same gutter: with the parts, circuits and
/// systems they need. A circuit stands for its conductors. Conductors whose block or raceway does
/// not come along are capped where they come out of it; circuits join nothing there that is not
/// among them. Error missing: nothing of it lies in the gutter.
Result<layout::Layout> pieceOf(const geometry::BuiltLayout& built, const Items& items);

/// Puts the things of a piece into the gutter, moved by `by` as moveItems moves, and names them
/// anew where their ids or names are taken. Conductors join the circuit of the same id where it has
/// their set and phase, else the piece's circuit comes along. A piece from another gutter is fitted
/// into this one first. piece: passes layout::validate with the shelf, all parts at hand.
Result<Made> putPiece(const geometry::BuiltLayout& built,
                      const parts::Shelf& shelf,
                      const layout::Layout& piece,
                      const Vec3& by);

/// How far a piece must move so as not to lie on blocks, entries or conductors that are there:
/// beside itself along the gutter; conductors alone a lane toward the cover. Zero where its own
/// place is free; one step where there is no free place.
Vec3 shiftToFreePlace(const geometry::BuiltLayout& built, const layout::Layout& piece);

/// A copy beside it.
Result<Made> duplicated(const geometry::BuiltLayout& built,
                        const parts::Shelf& shelf,
                        const Items& items);

/// So many copies beside the thing itself, each `pitch` (inches) further than the one before.
/// Error outOfRange: no copies are asked for, or not all of them have room in the gutter.
Result<Made> arrayed(const geometry::BuiltLayout& built,
                     const parts::Shelf& shelf,
                     const Items& items,
                     int copies,
                     const Vec3& pitch);

inline constexpr int kMostCopies = 100;

}  // namespace gw::editing
