#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "checks/finding.h"

/// How much metal the ungrounded conductors of a circuit have: what bonding jumpers are sized by.
namespace gw::checks {

struct UngroundedArea {
    double circularMils = 0.0;  ///< of the phase that has most, parallel conductors added
    layout::Phase phase = layout::Phase::a;
    std::size_t conductors = 0;  ///< how many of them
    std::optional<standards::Metal> metal;
    std::vector<std::string> missing;  ///< metals not stated
};

/// Of the largest ungrounded phase among these conductors; empty where none of them is ungrounded.
std::optional<UngroundedArea> ungroundedArea(const geometry::BuiltLayout& built,
                                             const std::vector<std::size_t>& conductors);

/// A bonding jumper as it is.
struct Jumper {
    units::WireSize size;
    standards::Metal metal;
};

/// Meets or breach by Table 250.102(C)(1), with its citation; cannotTell where a metal is not
/// stated or the table has no value.
void judgeJumper(Finding& finding,
                 const Jumper& jumper,
                 const UngroundedArea& area,
                 standards::Edition edition);

/// "2/0 AWG is needed for 750 kcmil in 3 conductors of phase A".
std::string neededText(const UngroundedArea& area,
                       standards::Metal jumper,
                       const geometry::BuiltLayout& built);

}  // namespace gw::checks
