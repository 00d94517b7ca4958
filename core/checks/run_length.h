#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "geometry/built_layout.h"

/// How long the conductors of a circuit are from end to end: as drawn in the gutter, and in the
/// raceways beyond it.
namespace gw::checks {

/// The conductors of one phase of one circuit, by set.
struct PhaseRuns {
    std::size_t circuit = 0;
    layout::Phase phase = layout::Phase::a;
    /// [set - 1] -> its conductors by id; more than one where the set is laid in pieces; none where
    /// it is not drawn.
    std::vector<std::vector<std::size_t>> sets;

    std::vector<std::size_t> all() const;  ///< set by set
};

/// In the order of the circuit's phases; only phases of which a conductor is drawn. members: the
/// circuit's conductors by id.
std::vector<PhaseRuns> phaseRuns(const geometry::BuiltLayout& built,
                                 std::size_t circuit,
                                 const std::vector<std::size_t>& members);

struct RunLength {
    double drawn = 0.0;                 ///< inches in the gutter, tip to tip
    double raceways = 0.0;              ///< inches in the raceways beyond, as far as stated
    std::vector<std::size_t> unstated;  ///< entries whose raceway's length is not stated
    double total() const { return drawn + raceways; }
};

/// The pieces one after the other.
RunLength runLength(const geometry::BuiltLayout& built, const std::vector<std::size_t>& pieces);

/// Entries at which the conductor leaves the gutter.
std::vector<std::size_t> entriesOf(const geometry::BuiltConductor& conductor);

/// "length of the raceway at entry Main", one each, none twice.
std::vector<std::string> racewayLengthsOf(const geometry::BuiltLayout& built,
                                          const std::vector<std::size_t>& entries);

}  // namespace gw::checks
