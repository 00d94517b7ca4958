#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "checks/landing_rounds.h"
#include "checks/occupancy.h"
#include "checks/screw_corridors.h"
#include "geometry/built_layout.h"

/// Which conductor has to be laid in and landed before which. Conductors are laid in from the cover
/// toward the back wall, and screws are tightened from the cover.
namespace gw::checks {

/// `first` comes before `second`.
struct LandingConstraint {
    /// A port's screw that holds `first`, with `second` standing in the driver's way to it.
    struct Screw {
        std::size_t block = 0;
        std::size_t port = 0;
    };
    std::size_t first = 0;
    std::size_t second = 0;
    std::optional<Screw> screw;  ///< empty: `second` crosses in front of `first`
    Vec3 place;                  ///< on the centreline of `second`, near where it is in the way
    bool certain = true;         ///< false: only if diameters that are not known are large
};

/// The opening of a raceway, or a port at either mouth.
struct LandingMouth {
    std::optional<std::size_t> entry;
    std::size_t block = 0;
    std::size_t port = 0;
    friend bool operator==(const LandingMouth&, const LandingMouth&) = default;
};

/// A piece of a conductor, as a segment.
struct LandingSegment {
    std::size_t conductor = 0;
    Vec3 start;
    Vec3 end;
    double stray = 0.0;                  ///< inches: how far the piece is from it at the most
    std::vector<LandingMouth> beside{};  ///< mouths it lies beside
};

/// A constraint, and how far apart what it is about lies: of several for a pair the nearest counts.
struct KeptConstraint {
    LandingConstraint constraint;
    double apart = 0.0;  ///< inches
};

/// Which conductors cross in front of which, and which stand in the way to whose screws.
///
/// Seen from the cover, conductors cross where their centrelines come nearer than the sum of their
/// radii; there the one nearer to the cover (greater z) comes later. Arcs count as chords of 15
/// degrees at most, which stray from them by less than 0.0043 radii of the bend; an overlap smaller
/// than what they stray is none. Neither is in front where their depths differ by a quarter of the
/// smaller radius or less. Not compared: what lies in the bores of blocks; and two conductors
/// beside a mouth they share, raceway or port, until one has turned aside by its own thickness or
/// run kBesideMouth of them.
struct LandingWays {
    std::vector<std::vector<LandingSegment>> segments;             ///< [conductor] outside bores
    std::vector<std::map<std::size_t, KeptConstraint>> crossings;  ///< [first] second -> nearest
    std::vector<std::set<std::size_t>> behind;                     ///< [second] -> firsts
    std::vector<std::vector<KeptConstraint>> toScrews;             ///< [block]
};

/// Cost: a sort and a sweep along the gutter, O(n log n) in the pieces n, and a comparison for
/// every two pieces that lie beside each other at one x: as many as the gutter's cross-section
/// holds, so near-linear in the length of a gutter of one density.
LandingWays landingWaysOf(const geometry::BuiltLayout& built,
                          const Occupancy& occupancy,
                          const Corridors& corridors);

struct PairsChanged {
    std::vector<LandingPair> gone;
    std::vector<LandingPair> come;
};

/// Makes the ways those of the built layout as it is, after some conductors moved and the corridors
/// of some blocks were updated. around: all conductors that may cross one that moved, at whatever
/// depth, these themselves among them. Gives back which pairs are gone and which have come. Cost:
/// by what is around.
PairsChanged updateLandingWays(LandingWays& ways,
                               const geometry::BuiltLayout& built,
                               const Occupancy& occupancy,
                               const Corridors& corridors,
                               const std::vector<std::size_t>& moved,
                               const std::vector<std::size_t>& around,
                               const std::vector<std::size_t>& blocks);

/// Of every crossing and every way to a screw, as often as there is one.
std::vector<LandingPair> pairsOf(const LandingWays& ways);

/// One each for every ordered pair of conductors, in their order: both ways round where each is in
/// front of the other somewhere, a knot of two.
std::vector<LandingConstraint> constraintsOf(const LandingWays& ways);
std::vector<LandingConstraint> landingConstraints(const geometry::BuiltLayout& built);

/// Thicknesses. *Common practice, no source*: what comes out of one mouth is spread by hand.
inline constexpr double kBesideMouth = 4.0;

}  // namespace gw::checks
