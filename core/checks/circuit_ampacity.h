#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "checks/finding.h"

/// What the phase conductors of a circuit may carry in this gutter and in the raceways at its
/// entries. Where a fact is not stated that may turn out either way, both ways are reckoned.
namespace gw::checks {

struct Facts;

struct CircuitAmpacity {
    double least = 0.0;  ///< amperes, all sets together, whatever is not stated taken badly
    double most = 0.0;   ///< and taken well
    std::optional<std::size_t> conductor;  ///< the one that carries least; empty: none is drawn
    std::string working;                   ///< how `least` comes about
    std::vector<std::string> doubts;       ///< what would tell least from most
    std::vector<std::string> missing;      ///< without these neither is known; then both are 0
};

/// The least of its phase conductors times the number of sets.
CircuitAmpacity circuitAmpacity(const geometry::BuiltLayout& built,
                                const Facts& facts,
                                std::size_t circuit);

/// "272 A".
std::string ampereText(double amperes);
Quantity amperes(double value);

/// Meets where `suits` holds for the least, breach where not even for the most, else cannotTell
/// with the doubts. REQUIRES nothing missing.
template <class Suits>
void judgeAmpacity(Finding& finding, const CircuitAmpacity& ampacity, const Suits& suits) {
    if (suits(ampacity.least)) {
        finding.verdict = Verdict::meets;
    } else if (suits(ampacity.most)) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = ampacity.doubts;
    } else {
        finding.verdict = Verdict::breach;
    }
}

}  // namespace gw::checks
