#pragma once

#include <array>
#include <string>
#include <vector>

#include "tools/sample_builder.h"

/// What the samples of the riverside yard have in common.
namespace gw::tools {

using Phases = std::vector<layout::Phase>;

inline const Phases kFourWire = {
    layout::Phase::a, layout::Phase::b, layout::Phase::c, layout::Phase::n};
inline const Phases kThreeWire = {layout::Phase::a, layout::Phase::b, layout::Phase::n};
inline const Phases kDelta = {layout::Phase::a, layout::Phase::b, layout::Phase::c};

std::string letter(layout::Phase phase);

struct Raceway {
    standards::RacewayType type;
    std::string size;
    double length;  ///< inches beyond the gutter
};

layout::Entry entry(const std::string& id,
                    const std::string& name,
                    layout::Wall wall,
                    double u,
                    double v,
                    const Raceway& raceway,
                    const std::string& leadsTo);

/// Of the one system "yard".
layout::Circuit circuit(const std::string& id,
                        const std::string& name,
                        layout::Role role,
                        const Phases& phases,
                        int sets,
                        double device,
                        double load);

/// The circuit tapped from another.
layout::Circuit joining(layout::Circuit made,
                        const std::string& joins,
                        layout::TapRule rule,
                        const std::string& supplies);

/// Evenly spaced values from `first` to `last`.
std::vector<double> steps(double first, double last, double step);

/// Lays a circuit's conductors, the last first, in the first order of slots that lets all pass.
/// wishes: one a conductor; the last also for those beyond.
void laySet(SampleBuilder& maker,
            const std::vector<std::size_t>& conductors,
            const std::string& entry,
            const std::vector<LaneWishes>& wishes);

/// A tap of one set from a block of every phase to an entry, not laid yet.
struct Tap {
    std::string id;
    std::string name;
    std::string port;  ///< of every block
    ConductorKind kind;
};

/// The tap's conductors, in the order of the phases; slots 1, 2, … of the entry "E" + id.
std::vector<std::size_t> addTapConductors(SampleBuilder& maker,
                                          const Tap& tap,
                                          const Phases& phases);

}  // namespace gw::tools
