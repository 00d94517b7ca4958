#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "checks/finding.h"
#include "layout/layout.h"

/// Finds a path for every conductor: legal first, then short, with few bends, straight along the
/// gutter, at the back. Conductors that want the same room settle it by rising prices.
namespace gw::routing {

/// How far it is; told after each conductor and each round.
struct Progress {
    std::size_t prepared = 0;   ///< conductors whose ways have been collected
    std::size_t asked = 0;      ///< of these
    std::size_t round = 0;      ///< of the negotiation; 0: before it
    std::size_t conflicts = 0;  ///< pairs that overlap after that round
};

struct Options {
    std::vector<layout::ConductorId> only;  ///< empty: all; the others are left as they lie
    std::size_t mostRounds = 80;            ///< cap of the negotiation; >= 1
    /// Told now and then; false stops the work. Empty: never stopped.
    std::function<bool(const Progress&)> onProgress;
};

/// What one conductor's path is. Inches.
struct Routed {
    layout::ConductorId conductor;
    double length = 0.0;
    std::size_t bends = 0;
    double turn = 0.0;  ///< radians, of all bends
    /// No path with these ends can be shorter: straight from lead-in to lead-in and through the
    /// ports it passes.
    double straightLine = 0.0;
    /// The shortest of the ways tried with no other conductor there: an estimate, not a bound.
    double alone = 0.0;
};

struct Unresolved {
    enum class Why {
        provenImpossible,  ///< no path whatever meets the limits
        notFound,          ///< none among the ways tried, or not within the rounds
        stopped,
    };
    layout::ConductorId conductor;
    Why why = Why::notFound;
    std::string sentence;  ///< in trade words, with place and numbers
    std::optional<Vec3> place;
    std::optional<double> needed;  ///< inches
    std::optional<double> free;
};

struct Routing {
    /// The layout with a path for every conductor asked for. Empty where one is unresolved.
    std::optional<layout::Layout> answer;
    /// The paths that were found, legal among themselves; what is unresolved lies as it lay.
    layout::Layout partial;
    std::vector<Routed> routed;          ///< in order of ids
    std::vector<Unresolved> unresolved;  ///< in order of ids
    /// Breaches of the space checks and of bend radius in `answer` that no path could cure, such
    /// as a gutter too small for the fill: of `partial` where there is no answer.
    std::vector<checks::Finding> breaches;
    std::vector<std::size_t> conflictsByRound;
    bool stopped = false;
};

/// Does not hang on the order of conductors, blocks and entries in the layout, nor on paths that
/// the conductors asked for have already. Every path it gives has been judged by the checks.
/// Error: as of layout::validate; dangling: no such conductor in `only`.
Result<Routing> route(const layout::Layout& layout,
                      const parts::Shelf& shelf,
                      const Options& options = {});

std::string_view whyText(Unresolved::Why why);  ///< "proven impossible", "not found", "stopped"

/// For people and for scripts. file: path as given.
std::string textReport(const Routing& routing, const std::string& file);
std::string jsonReport(const Routing& routing, const std::string& file);

}  // namespace gw::routing
