#pragma once

#include <cstdint>
#include <memory>
#include <utility>
#include <vector>

#include "support/scene.h"

/// The same scenes in a general collision library (libfcl), as reference and as peer. Arcs become
/// chords that lie half inside and half outside their arc; every leg or chord is a capsule.
namespace gw::test_support {

using ItemPairs = std::vector<std::pair<std::uint32_t, std::uint32_t>>;

class FclScene {
public:
    /// chordAngle: radians, the most an arc's chord may turn. within: inches, the greatest gap that
    /// `nearPairs` looks for.
    FclScene(const Scene& scene, double chordAngle, double within);
    ~FclScene();
    FclScene(const FclScene&) = delete;
    FclScene& operator=(const FclScene&) = delete;

    /// What the library is asked. All give the same pairs.
    enum class Way {
        distances,   ///< its tree's distance query, kept to `within`; distances of shapes
        overlaps,    ///< its tree's collision query on shapes grown by within / 2; distances of
                     ///< shapes
        collisions,  ///< the same query; its yes-or-no collision of the grown shapes
    };

    /// Indices of items (tubes first, then blocks) with a gap of at most `within`, a < b, in order.
    /// A pair of items that is already known is not tested again. The tree stands already.
    ItemPairs nearPairs(Way way) const;

    /// Makes the dynamic tree of boxes anew, as a full check from nothing has to.
    void setUpTree();

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

/// Gap between two tubes of the scene, or a tube and a block, by the library's distances. Only its
/// sign means anything where they overlap.
double fclGap(const Scene& scene, std::size_t tubeA, std::size_t tubeB, double chordAngle);
double fclGapToBlock(const Scene& scene, std::size_t tube, std::size_t block, double chordAngle);

}  // namespace gw::test_support
