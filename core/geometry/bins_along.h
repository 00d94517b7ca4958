#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "geometry/solids.h"

/// Which things lie near a box: bins along the gutter, kept current while things move.
namespace gw::geometry {

class BinsAlong {
public:
    /// length: of the gutter, inches. Things: 0 to things - 1, none of them placed.
    BinsAlong(double length, std::size_t things);

    /// Puts the thing into its box, out of the one it may have had. Cost: the bins it reaches into.
    void place(std::size_t thing, const Box& box);

    const Box& boxOf(std::size_t thing) const { return boxes_[thing]; }

    /// The things whose boxes touch or overlap this one, ascending. Cost: the things in its bins.
    std::vector<std::size_t> overlapping(const Box& box) const;

private:
    std::pair<std::size_t, std::size_t> binsOf(const Box& box) const;  ///< first and last
    void takeOut(std::size_t thing);

    std::vector<std::vector<std::uint32_t>> bins_;
    std::vector<Box> boxes_;
    std::vector<bool> placed_;
};

}  // namespace gw::geometry
