#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "geometry/solids.h"
#include "units/length.h"

/// What fills the gutter, at every plane square to its length: exact, by events, not by samples.
namespace gw::geometry {

/// How a conductor counts: at plane x it counts its full circular area once for every connected
/// part of it that the plane cuts. So a run along the gutter counts once; a drop across the gutter
/// counts over its whole width (x ± its radius); a conductor that turns back counts twice where
/// both its limbs are cut.
struct FillConductor {
    const Path* path = nullptr;
    double radius = 0.0;
    double area = 0.0;  ///< square inches, as the published table states it
    /// Arc lengths inside block bodies: counted as conductor, not again beside the block's face.
    std::span<const std::pair<double, double>> inBlocks;
};

/// Piecewise constant in x. Boundaries are exact but for a grid of 2^-24 in (6e-8), so that things
/// that end where others begin do not count together by a rounding error; areas, of 2^-40 in2.
/// Slice i holds from `from` to the next slice's `from`; the last one ends at the gutter's length.
/// At a boundary the larger of the two sides counts.
struct FillSlice {
    double from = 0.0;           ///< inches
    double conductors = 0.0;     ///< square inches of all conductors
    double outsideBlocks = 0.0;  ///< of these, not inside a block body
    double blocks = 0.0;         ///< square inches of block faces
    double splice() const { return outsideBlocks + blocks; }
};

struct FillProfile {
    std::vector<FillSlice> slices;  ///< at least one, from 0
    double length = 0.0;            ///< inches
    double interior = 0.0;          ///< square inches of the gutter's cross-section

    /// The worst slice and its middle.
    struct Worst {
        double area = 0.0;
        double from = 0.0;
        double to = 0.0;
        double fraction = 0.0;  ///< of the interior
    };
    Worst worstConductors() const;
    /// Only slices that hold a block; area 0 when there is none.
    Worst worstSplice() const;
    /// Greatest conductor fill among slices with (true) or without (false) a block.
    Worst worstConductors(bool withBlock) const;
    const FillSlice& at(double x) const;  ///< clamped to the gutter
};

/// Things that fill the gutter.
struct Filling {
    std::span<const FillConductor> conductors{};
    std::span<const Box> blocks{};
    std::size_t size() const { return conductors.size() + blocks.size(); }
};

/// inside: length, height, depth of the interior, inches. Cost O(n log n) in the pieces.
FillProfile fillProfile(const Vec3& inside,
                        std::span<const FillConductor> conductors,
                        std::span<const Box> blocks);

/// Makes the profile that of a gutter where `out` is gone and `in` has come: the same, to the last
/// bit, as fillProfile() of what is there then. REQUIRES a profile that counts `out`. Cost: linear
/// in the slices between the outermost x at which either counts.
void exchange(FillProfile& profile, const Filling& out, const Filling& in);

}  // namespace gw::geometry
