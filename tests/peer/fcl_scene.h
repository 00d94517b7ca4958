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

struct ItemGap {
    std::uint32_t a = 0;
    std::uint32_t b = 0;
    double gap = 0.0;
};

class FclScene {
public:
    /// chordAngle: radians, the most an arc's chord may turn. within: inches, the greatest gap that
    /// `nearPairs` looks for.
    FclScene(const Scene& scene, double chordAngle, double within);
    ~FclScene();
    FclScene(const FclScene&) = delete;
    FclScene& operator=(const FclScene&) = delete;

    /// Gap of every pair of items (tubes first, then blocks) that is at most `within`, in order of
    /// (a, b), a < b: what our own check gives, but for the place. The tree's distance query kept
    /// to `within`, the library's distance of shapes. The tree stands already.
    std::vector<ItemGap> nearGaps() const;

    /// Moves one item and gives the gaps it then has, to what is within `within`: the tree is told
    /// which shapes moved and is asked for these alone.
    std::vector<ItemGap> gapsAfterMove(std::uint32_t item, const Vec3& by);

    /// Less than our own check gives: only which pairs are near. A pair that is already known is
    /// not tested again.
    enum class Way {
        overlaps,    ///< the tree's collision query on shapes grown by within / 2; their distance
        collisions,  ///< the same query; yes-or-no collision of the grown shapes
    };
    ItemPairs nearPairs(Way way) const;

    /// Makes the dynamic tree of boxes that nearGaps (plain shapes) or nearPairs (grown ones) asks
    /// anew, as a full check from nothing has to.
    enum class Tree { plain, grown };
    void setUpTree(Tree tree);

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

/// Gap between two tubes of the scene, or a tube and a block, by the library's distances. Only its
/// sign means anything where they overlap.
double fclGap(const Scene& scene, std::size_t tubeA, std::size_t tubeB, double chordAngle);
double fclGapToBlock(const Scene& scene, std::size_t tube, std::size_t block, double chordAngle);

}  // namespace gw::test_support
