#pragma once

#include "geometry/things.h"
#include "layout/layout.h"
#include "support/random.h"

/// Moves such as a person makes, for tests and benchmarks: the same for the same seed.
namespace gw::test_support {

struct Move {
    layout::Layout after;
    geometry::Things moved;
};

/// A corner of a conductor, or all its corners, by up to `reach` inches in steps of 1/16.
/// REQUIRES a conductor with corners.
Move moveOfAConductor(const layout::Layout& before, Random& random, double reach);

/// A block by up to `reach` inches; what is attached to it follows at its end. REQUIRES a block.
Move moveOfABlock(const layout::Layout& before, Random& random, double reach);

/// The conductors with an end or a pass in the block, ascending.
std::vector<std::size_t> attachedTo(const layout::Layout& layout, const layout::BlockId& block);

}  // namespace gw::test_support
