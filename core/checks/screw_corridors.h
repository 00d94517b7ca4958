#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "checks/occupancy.h"
#include "geometry/built_layout.h"
#include "geometry/solids.h"
#include "geometry/things.h"

/// The straight way a driver takes from the open cover side to a screw, and what stands in it.
namespace gw::checks {

/// inches. How wide the way has to be for the drive a part states, "hex 3/8 in", "square 3/8 in" or
/// "slot 1/4 in": the driver's greatest width, across the corners of a hex (w 2/√3) or of a square
/// (w √2), the blade as long as the slot, and kRoundDriver on each side for its shank and sleeve.
/// Empty: not stated, or none of these. Source: common practice, no source.
std::optional<double> driverDiameter(std::string_view drive);

/// inches, on each side of the driver. *Common practice, no source.*
inline constexpr double kRoundDriver = 0.125;

/// Whether the screw looks at the cover.
bool facesCover(const geometry::BuiltBlock::Screw& screw);

/// A thing in or near a screw's corridor.
struct NearCorridor {
    enum class Kind { conductor, block, wall };
    Kind kind = Kind::conductor;
    std::size_t index = 0;  ///< of the conductor or block; of a wall its layout::Wall
    double gap = 0.0;       ///< inches, surface to surface; negative: it stands in it by that much
    Vec3 place;             ///< on the thing
    friend bool operator==(const NearCorridor&, const NearCorridor&) = default;
};

/// The corridor of one screw: a cylinder from the head's face to the plane of the cover.
struct ScrewCorridor {
    std::size_t block = 0;
    std::size_t port = 0;
    std::size_t screw = 0;  ///< index into the part's screws
    bool facesCover = false;
    std::optional<double> diameter;  ///< inches; empty: see driverDiameter
    /// The things within kNeighbourhood, nearest first. Empty unless it faces the cover and the
    /// diameter is known. A screw's own block is never in its way, nor is a conductor where that
    /// block holds it.
    std::vector<NearCorridor> near;
};

/// By block, of every screw of every port that holds a conductor, in order of ports, screws. The
/// gap to what lies wholly in front of the head is exact to kClearanceError; to what reaches behind
/// the head it may be too small, never too large. Cost near-linear in screws and conductors.
using Corridors = std::vector<std::vector<ScrewCorridor>>;
Corridors corridorsOf(const geometry::BuiltLayout& built, const Occupancy& occupancy);

/// Makes the corridors those of the built layout as it is, after some things moved. near: blocks
/// with corridors that may be within kNeighbourhood of where these are or were. around: all things
/// that may be as near to the corridors of blocks that moved. Gives back the blocks whose corridors
/// are others, or have others near them.
std::vector<std::size_t> updateCorridors(Corridors& corridors,
                                         const geometry::BuiltLayout& built,
                                         const Occupancy& occupancy,
                                         const geometry::Things& moved,
                                         const std::vector<std::size_t>& near,
                                         const geometry::Things& around);

/// A box that holds all corridors of the block's screws and what is within kNeighbourhood of them,
/// whoever is in its ports.
geometry::Box reachOfScrews(const geometry::BuiltLayout& built, std::size_t block);

/// The things in the corridor, of those near it, deepest first. A loan from the corridor.
std::span<const NearCorridor> standingIn(const ScrewCorridor& corridor);

/// "conductor S1-A", "block A", "the top wall".
std::string nearName(const geometry::BuiltLayout& built, const NearCorridor& thing);

}  // namespace gw::checks
