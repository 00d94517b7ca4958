#pragma once

#include "geometry/built_pieces.h"
#include "geometry/things.h"

/// A built layout kept current while things move in it.
namespace gw::geometry {

class Rebuilder {
public:
    explicit Rebuilder(const layout::Layout& layout) : indices_(indicesOf(layout)) {}

    /// Builds what has moved anew, and the fill: then all is as build() makes it of built.layout.
    /// moved: blocks that stand elsewhere, and conductors that run otherwise between the same ends,
    /// those attached to such blocks among them. REQUIRES that built.layout is valid and that
    /// nothing else in it differs from what it was built from. Cost: linear in what moved and in
    /// the slices of fill beside it.
    void rebuild(BuiltLayout& built, const Things& moved) const;

private:
    Indices indices_;
};

}  // namespace gw::geometry
