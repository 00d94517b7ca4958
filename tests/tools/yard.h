#pragma once

#include <string>
#include <utility>
#include <vector>

#include "tools/sample_builder.h"

/// What the samples of the riverside yard have in common.
namespace gw::tools {

using Phases = std::vector<layout::Phase>;

inline const Phases kFourWire = {
    layout::Phase::a, layout::Phase::b, layout::Phase::c, layout::Phase::n};
inline const Phases kThreePhase = {layout::Phase::a, layout::Phase::b, layout::Phase::c};
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

/// One conductor a phase from entry "E1" to port 1 of every phase's block; slots 1, 2, … in the
/// order of the phases.
std::vector<std::size_t> addMains(SampleBuilder& maker,
                                  const std::string& circuit,
                                  const std::string& tagPrefix,
                                  const Phases& phases,
                                  const std::string& size);

/// A tap of one set from that port of every phase's block down through the bottom wall.
struct Tap {
    std::string id;
    std::string name;
    std::string port;
    std::string size;
    double device;  ///< amperes
    double load;    ///< amperes
    double x;       ///< inches: centre of its entry
    double z;
    Raceway raceway;
    std::string leadsTo;
};

/// Adds the tap's circuit, its entry "E" + id and its conductors, not laid yet, in the order of the
/// phases; slots 1, 2, ….
std::vector<std::size_t> addTap(SampleBuilder& maker,
                                const Tap& tap,
                                const Phases& phases,
                                const std::string& joins,
                                layout::TapRule rule);

/// From one end wall to the other, straight through: tagged by circuit and phase.
void addStraight(SampleBuilder& maker,
                 const std::string& circuit,
                 const Phases& phases,
                 const std::string& size,
                 const std::pair<std::string, std::string>& entries,
                 int firstSlot = 1);

/// Entries facing each other in the end walls at that height.
void addFacing(SampleBuilder& maker,
               const std::pair<std::string, std::string>& entries,
               double height,
               const Raceway& raceway);

/// A metal wireway of 24 x 8 x 6 in.
SampleBuilder straightWireway(const parts::Shelf& shelf, const std::string& title);

}  // namespace gw::tools
