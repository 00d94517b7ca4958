#pragma once

#include <span>
#include <string>

#include "editing/edited.h"
#include "geometry/built_layout.h"

/// Conductors: bringing them in, drawing them, landing them.
namespace gw::editing {

enum class ConductorEnd { from, to };

struct ConductorKind {
    units::WireSize size = units::WireSize::of("14");
    std::optional<standards::Metal> metal;
    std::optional<standards::Insulation> insulation;
    std::optional<standards::Stranding> stranding;
};

/// What a conductor is, apart from where it lies.
struct ConductorFacts {
    layout::CircuitId circuit;
    int set = 1;
    layout::Phase phase = layout::Phase::a;
    ConductorKind kind;
    std::optional<std::string> colour;  ///< empty: not stated
};

/// "S1-A": the circuit's letters, its set where there are several or it is a service, the phase.
std::string tagFor(const layout::Circuit& circuit, int set, layout::Phase phase);

/// With an id and a tag of its own, without ends or corners. Error dangling: no such circuit;
/// outOfRange: the circuit has no such set or phase.
Result<layout::Conductor> newConductor(const layout::Layout& layout, const ConductorFacts& facts);

/// The centreline radius (inches) that bends of this conductor may have, up to the next 1/4 in.
double legalRadius(const layout::Layout& layout, const layout::Conductor& conductor);

/// All conductors of the circuit that are not there yet, set by set and phase by phase, each
/// through the next free slot of the entry, straight in and capped as far in as walls and blocks
/// allow, 24 in at most.
/// Error missing: all are there already.
Result<Made> fanIn(const geometry::BuiltLayout& built,
                   const layout::EntryId& entry,
                   const layout::CircuitId& circuit,
                   const ConductorKind& kind);

/// The first slot of an entry that no conductor has.
int freeSlot(const layout::Layout& layout, const layout::EntryId& entry);

/// An end in a port, stripped as the part says; as far in as it is stripped where the port is open
/// at both mouths. Error dangling: no such block or port.
Result<layout::End> endInPort(const geometry::BuiltLayout& built,
                              const layout::BlockId& block,
                              const parts::PortName& port);

/// Draws it from end to end through the points pointed at, in their order: straight out of a
/// raceway or port along its axis, legs along the gutter's axes, bends of the legal radius, and two
/// equal ones where depth or height differ by too little for quarter turns. Where there is no room
/// for that the path is the one with the least faults, which the checks tell. It may clash with
/// others. `conductor`: as newConductor gives it.
Result<Made> drawConductor(const geometry::BuiltLayout& built,
                           layout::Conductor conductor,
                           const layout::End& from,
                           const layout::End& to,
                           std::span<const Vec3> via = {});

/// The end goes into the port, stripped as the part says, and the conductor gets a new path. A
/// block without a phase takes the conductor's.
Edit landEnd(const geometry::BuiltLayout& built,
             const layout::ConductorId& conductor,
             ConductorEnd end,
             const layout::BlockId& block,
             const parts::PortName& port);
/// The end comes through the entry in this slot, or in the first free one.
Edit enterEnd(const geometry::BuiltLayout& built,
              const layout::ConductorId& conductor,
              ConductorEnd end,
              const layout::EntryId& entry,
              std::optional<int> slot = std::nullopt);
/// The end is capped in the gutter where it comes out of its port or raceway; legs stay.
Edit freeEnd(const geometry::BuiltLayout& built,
             const layout::ConductorId& conductor,
             ConductorEnd end);
/// A capped end is drawn to another place. Any other end is freed first.
Edit moveEnd(const geometry::BuiltLayout& built,
             const layout::ConductorId& conductor,
             ConductorEnd end,
             const Vec3& tip);

/// Leads one leg of the conductor uncut through a port that is open at both mouths, with its window
/// as long as the bore less 1/32 in at either mouth. Error contradicts: the port is not open at
/// both mouths.
Edit passThrough(const geometry::BuiltLayout& built,
                 const layout::ConductorId& conductor,
                 std::size_t leg,
                 const layout::BlockId& block,
                 const parts::PortName& port);
/// No longer through it; the path stays.
Edit dropPass(const geometry::BuiltLayout& built,
              const layout::ConductorId& conductor,
              const layout::BlockId& block,
              const parts::PortName& port);

/// A new path from end to end, through the ports it passes.
Edit reroute(const geometry::BuiltLayout& built, const layout::ConductorId& conductor);

}  // namespace gw::editing
