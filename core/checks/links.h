#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "checks/run_length.h"
#include "checks/service_side.h"
#include "geometry/built_layout.h"

/// What belongs to what, by index: conductors to circuits and entries, circuits to systems and to
/// each other. It follows from the layout alone, wherever things lie.
namespace gw::checks {

struct SystemLinks {
    bool threePhases = false;   ///< one of its circuits has phase C
    bool neutralDrawn = false;  ///< a neutral of it is in the gutter
    /// One of its neutrals for each colour that is stated of them, by id.
    std::vector<std::size_t> neutralsByColour;
};

struct Links {
    std::vector<std::size_t> rank;                   ///< [conductor] -> its place among all by id
    std::vector<std::size_t> circuitOf;              ///< [conductor] -> its circuit
    std::vector<std::vector<std::size_t>> members;   ///< [circuit] -> its conductors, by id
    std::vector<std::vector<PhaseRuns>> runs;        ///< [circuit] -> its phases of which a
                                                     ///< conductor is drawn, in its order
    std::vector<std::size_t> systemOf;               ///< [circuit] -> its system
    std::vector<SystemLinks> systems;                ///< [system]
    std::vector<std::optional<std::size_t>> joins;   ///< [circuit] -> the circuit it joins
    std::vector<std::vector<std::size_t>> joinedBy;  ///< [circuit] -> those that join it, in order
    std::vector<Side> sides;                         ///< [circuit] -> its side of the service
    /// [entry] -> the conductors that come through it, in the order of the layout. One with both
    /// ends at one entry is named twice: it lies twice in its raceway.
    std::vector<std::vector<std::size_t>> atEntries;

    /// Of a conductor; grounding conductors are exempt.
    Side sideOf(const geometry::BuiltLayout& built, std::size_t conductor) const;
    bool areServiceConductors(std::size_t circuit) const { return sides[circuit] == Side::service; }
    /// The conductors by their ids, so that the order of the layout tells nothing.
    void sortById(std::vector<std::size_t>& conductors) const;
};

/// Cost n log n in conductors.
Links linksOf(const geometry::BuiltLayout& built);

}  // namespace gw::checks
