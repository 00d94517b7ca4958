#pragma once

#include "geometry/built_pieces.h"
#include "geometry/moved.h"

/// A built layout kept current while things move in it.
namespace gw::geometry {

class Rebuilder {
public:
    explicit Rebuilder(const layout::Layout& layout) : indices_(indicesOf(layout)) {}

    /// Builds what has moved anew, and the fill: then all is as build() makes it of built.layout.
    /// REQUIRES that what the layout says of these moved things is valid, and that nothing else in
    /// it differs from what it was built from. Cost: linear in what moved and in the slices of
    /// fill beside it.
    void rebuild(BuiltLayout& built, const Moved& moved) const;

private:
    Indices indices_;
};

}  // namespace gw::geometry
