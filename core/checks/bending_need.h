#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/finding.h"

/// How much room the tables of NFPA 70 312.6 ask for one conductor.
namespace gw::checks {

struct SpaceNeed {
    enum class Kind {
        space,         ///< `least` is asked
        notSpecified,  ///< the table prints "not specified": nothing is asked
        noValue,       ///< the table has no entry: it cannot be judged
    };
    Kind kind = Kind::noValue;
    double least = 0.0;  ///< inches
    /// Where it is not known whether the conductor is compact aluminium: what that column asks.
    /// `least` is then the ordinary column's, which never asks for less.
    std::optional<double> leastIfCompact;
    std::vector<std::string> missing;  ///< what is not known, or what the table lacks
    standards::Citation source;
    std::string text;  ///< "6 in is needed for 1 wire of 500 kcmil (Table 312.6(A))"
};

/// wires: at the terminal; 1 for the width of a gutter.
SpaceNeed needByTableA(const geometry::BuiltLayout& built,
                       std::size_t conductor,
                       std::size_t wires);
SpaceNeed needByTableB(const geometry::BuiltLayout& built,
                       std::size_t conductor,
                       std::size_t wires);

/// meets, breach, or cannotTell where the answer rests on what is missing.
Verdict verdictOf(const SpaceNeed& need, double space);

/// Order by severity: the graver verdict, then the smaller margin, comes first.
bool isWorse(const SpaceNeed& a, double spaceA, const SpaceNeed& b, double spaceB);

/// Writes verdict, measured, limit, margin and missing.
void judgeSpace(Finding& finding, const SpaceNeed& need, double space);

}  // namespace gw::checks
