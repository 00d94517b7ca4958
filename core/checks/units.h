#pragma once

#include <span>

#include "checks/facts.h"
#include "checks/finding.h"

/// The checks unit by unit: what the findings of each hang on, so that only those of what is
/// touched need be found again.
namespace gw::checks {

/// What a row of findings is about.
enum class Unit { gutter, conductor, circuit, entry, block };

/// How many of them there are: one gutter.
std::size_t countOf(Unit unit, const geometry::BuiltLayout& built);

/// What findings hang on beside what the layout says: where things lie, and which of the facts that
/// follow from it. By bits.
namespace reads {
inline constexpr unsigned kNothing = 0;
inline constexpr unsigned kPaths = 1U << 0U;       ///< of the unit's conductors
inline constexpr unsigned kBlocks = 1U << 1U;      ///< the unit's, or its conductors' blocks
inline constexpr unsigned kBlockRow = 1U << 2U;    ///< what stands before the unit's ports
inline constexpr unsigned kFill = 1U << 3U;        ///< the built layout's
inline constexpr unsigned kCarrying = 1U << 4U;    ///< of the unit's conductors
inline constexpr unsigned kNeighbours = 1U << 5U;  ///< of the unit
inline constexpr unsigned kCoverGaps = 1U << 6U;
inline constexpr unsigned kCorridors = 1U << 7U;  ///< of the unit's screws
inline constexpr unsigned kLanding = 1U << 8U;
inline constexpr unsigned kSprings = 1U << 9U;
}  // namespace reads

/// A check is one section or a few, one after the other; a section its units, in the order of the
/// layout.
struct Section {
    Unit unit;
    unsigned reads;
    /// Appends the findings of one unit. Reads what the layout says, what is attached to what, the
    /// facts, and of the geometry only that of the unit and of what is attached to it: a circuit's
    /// conductors, an entry's, those in a block's ports. A finding with its place on a conductor's
    /// path is one of a unit this conductor is attached to, or of the gutter.
    void (*find)(std::vector<Finding>& findings,
                 const geometry::BuiltLayout& built,
                 const Facts& facts,
                 std::size_t index);
};

/// REQUIRES facts of this built layout.
std::span<const Section> sectionsOf(Check check);

/// All findings of one section.
void runSection(std::vector<Finding>& findings,
                const Section& section,
                const geometry::BuiltLayout& built,
                const Facts& facts);

// The sections of each check, each in its own file.
std::span<const Section> conductorFillSections();
std::span<const Section> spliceFillSections();
std::span<const Section> entryBendingSpaceSections();
std::span<const Section> terminalBendingSpaceSections();
std::span<const Section> pullDistancesSections();
std::span<const Section> clearanceSections();
std::span<const Section> supportSpacingSections();
std::span<const Section> lengthBeyondSections();
std::span<const Section> coverPushSections();
std::span<const Section> faultForcesSections();
std::span<const Section> bendRadiusSections();
std::span<const Section> ampacitySections();
std::span<const Section> parallelSetsSections();
std::span<const Section> racewayFillSections();
std::span<const Section> circuitTogetherSections();
std::span<const Section> largestConductorSections();
std::span<const Section> mixedVoltagesSections();
std::span<const Section> portSuitsConductorSections();
std::span<const Section> exposedCopperSections();
std::span<const Section> jointsSections();
std::span<const Section> screwReachSections();
std::span<const Section> landingOrderSections();
std::span<const Section> torqueKnownSections();
std::span<const Section> connectorListingSections();
std::span<const Section> locationSections();
std::span<const Section> tapRuleSections();
std::span<const Section> serviceDisconnectsSections();
std::span<const Section> serviceApartSections();
std::span<const Section> insulatingBushingSections();
std::span<const Section> groundingSizeSections();
std::span<const Section> serviceBondingSections();
std::span<const Section> coloursSections();
std::span<const Section> tapLabelsSections();

}  // namespace gw::checks
