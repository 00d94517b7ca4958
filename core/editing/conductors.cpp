#include "editing/conductors.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>

#include "base/tolerance.h"
#include "checks/least_radius.h"
#include "editing/place.h"
#include "editing/plan.h"
#include "editing/settle.h"
#include "editing/way.h"
#include "geometry/built_pieces.h"

namespace gw::editing {

using geometry::BuiltLayout;
using layout::Conductor;
using layout::Phase;

// ---- names ----------------------------------------------------------------------------------

namespace {

std::string lettersOf(const layout::Circuit& circuit) {
    constexpr std::size_t kShort = 3;
    const std::string& id = circuit.id.text();
    if (id.size() <= kShort || id.empty()) {
        return id;
    }
    return {static_cast<char>(std::toupper(static_cast<unsigned char>(id.front())))};
}

bool endsInDigit(const std::string& text) {
    return !text.empty() && std::isdigit(static_cast<unsigned char>(text.back())) != 0;
}

bool tagTaken(const layout::Layout& layout, const std::string& tag) {
    return std::any_of(layout.conductors.begin(), layout.conductors.end(), [&](const auto& one) {
        return one.tag == tag;
    });
}

std::string freeTag(const layout::Layout& layout, const std::string& wanted) {
    std::string tag = wanted;
    for (int again = 2; tagTaken(layout, tag); ++again) {
        tag = wanted + "-" + std::to_string(again);
    }
    return tag;
}

}  // namespace

std::string tagFor(const layout::Circuit& circuit, int set, Phase phase) {
    std::string text = lettersOf(circuit);
    if (circuit.sets > 1 || circuit.role == layout::Role::service) {
        text += (endsInDigit(text) ? "." : "") + std::to_string(set);
    }
    return text + "-" + std::string(layout::phaseText(phase));
}

Result<Conductor> newConductor(const layout::Layout& layout, const ConductorFacts& facts) {
    const auto index = indexOf(layout, facts.circuit);
    if (!index) {
        return fail(notThere("circuit", facts.circuit.text()));
    }
    const layout::Circuit& circuit = layout.circuits[*index];
    const auto& phases = circuit.phases;
    if (facts.set < 1 || facts.set > circuit.sets ||
        std::find(phases.begin(), phases.end(), facts.phase) == phases.end()) {
        return fail(
            {ErrorCode::outOfRange, itemName(layout, circuit.id) + " has no such set or phase"});
    }
    Conductor conductor;
    conductor.tag = freeTag(layout, tagFor(circuit, facts.set, facts.phase));
    const bool usable = isValidId(conductor.tag) && !idTaken(layout, conductor.tag);
    conductor.id = layout::ConductorId(usable ? conductor.tag : nextId(layout, "W"));
    conductor.circuit = facts.circuit;
    conductor.set = facts.set;
    conductor.phase = facts.phase;
    conductor.size = facts.kind.size;
    conductor.metal = facts.kind.metal;
    conductor.insulation = facts.kind.insulation;
    conductor.stranding = facts.kind.stranding;
    conductor.colour = facts.colour;
    return conductor;
}

double legalRadius(const layout::Layout& layout, const Conductor& conductor) {
    constexpr double kStep = 0.25;
    const auto thickness = geometry::thicknessOf(conductor, layout.edition);
    const double least = checks::leastBendRadius(layout, conductor, thickness.diameter);
    return std::ceil(least / kStep - kLimitSlack) * kStep;
}

// ---- slots and ports ------------------------------------------------------------------------

int freeSlot(const layout::Layout& layout, const layout::EntryId& entry) {
    std::vector<int> taken;
    for (const Conductor& conductor : layout.conductors) {
        for (const auto* end : {&conductor.from, &conductor.to}) {
            const auto* at = std::get_if<layout::AtEntry>(end);
            if (at != nullptr && at->entry == entry) {
                taken.push_back(at->slot);
            }
        }
    }
    int slot = 1;
    while (std::find(taken.begin(), taken.end(), slot) != taken.end()) {
        ++slot;
    }
    return slot;
}

namespace {

/// Where a port is: its block and its place among the part's.
struct PortAt {
    std::size_t block;
    std::size_t port;
};

Result<PortAt> findPort(const BuiltLayout& built,
                        const layout::BlockId& block,
                        const parts::PortName& name) {
    const auto index = indexOf(built.layout, block);
    if (!index) {
        return fail(notThere("block", block.text()));
    }
    const auto& ports = built.blocks[*index].part->ports;
    const auto found = std::find_if(
        ports.begin(), ports.end(), [&](const auto& port) { return port.name == name; });
    if (found == ports.end()) {
        return fail(notThere("port", name.text()));
    }
    return PortAt{*index, static_cast<std::size_t>(found - ports.begin())};
}

}  // namespace

Result<layout::End> endInPort(const BuiltLayout& built,
                              const layout::BlockId& block,
                              const parts::PortName& port) {
    const auto at = findPort(built, block, port);
    if (!at) {
        return fail(at.error());
    }
    const parts::Port& bore = built.blocks[at->block].part->ports[at->port];
    layout::InPort end{block, port, bore.stripLength, std::nullopt};
    if (bore.opening == parts::PortOpening::both && bore.stripLength) {
        end.inserted = std::min(*bore.stripLength, bore.boreDepth);
    }
    return end;
}

// ---- bringing them in -----------------------------------------------------------------------

namespace {

bool isWanted(const layout::Layout& layout, const layout::Circuit& circuit, int set, Phase phase) {
    return std::none_of(layout.conductors.begin(), layout.conductors.end(), [&](const auto& one) {
        return one.circuit == circuit.id && one.set == set && one.phase == phase;
    });
}

/// How far a ray goes before it is within `radius` of a body.
double freeBefore(const geometry::Box& body, const Vec3& from, const Vec3& axis, double radius) {
    const Vec3 grown{radius, radius, radius};
    const Vec3 least = body.least - grown;
    const Vec3 greatest = body.greatest + grown;
    double enters = 0.0;
    double leaves = std::numeric_limits<double>::infinity();
    const auto slab = [&](double at, double step, double low, double high) {
        if (std::abs(step) < kSamePoint) {
            leaves = low < at && at < high ? leaves : -1.0;
            return;
        }
        enters = std::max(enters, std::min((low - at) / step, (high - at) / step));
        leaves = std::min(leaves, std::max((low - at) / step, (high - at) / step));
    };
    slab(from.x, axis.x, least.x, greatest.x);
    slab(from.y, axis.y, least.y, greatest.y);
    slab(from.z, axis.z, least.z, greatest.z);
    return enters < leaves ? enters : std::numeric_limits<double>::infinity();
}

/// inches from the wall to a capped tip straight ahead.
double reachInside(const BuiltLayout& built, const Vec3& from, const Vec3& axis, double radius) {
    constexpr double kLongest = 24.0;
    constexpr double kFromWall = 0.5;
    constexpr double kLeast = 0.5;
    const Vec3& inside = built.gutter().inside;
    const double across =
        std::abs(axis.x) * inside.x + std::abs(axis.y) * inside.y + std::abs(axis.z) * inside.z;
    double reach = std::min(kLongest, across - kFromWall);
    for (const auto& block : built.blocks) {
        reach = std::min(reach, freeBefore(block.body, from, axis, radius));
    }
    return std::max(kLeast, reach);
}

}  // namespace

Result<Made> fanIn(const BuiltLayout& built,
                   const layout::EntryId& entry,
                   const layout::CircuitId& circuit,
                   const ConductorKind& kind) {
    const auto entryAt = indexOf(built.layout, entry);
    const auto circuitAt = indexOf(built.layout, circuit);
    if (!entryAt || !circuitAt) {
        return fail(entryAt ? notThere("circuit", circuit.text())
                            : notThere("entry", entry.text()));
    }
    const layout::Circuit& whole = built.layout.circuits[*circuitAt];
    const auto& hole = built.entries[*entryAt];
    Made made{built.layout, {}};
    for (int set = 1; set <= whole.sets; ++set) {
        for (const Phase phase : whole.phases) {
            if (!isWanted(made.layout, whole, set, phase)) {
                continue;
            }
            auto conductor = newConductor(made.layout, {circuit, set, phase, kind, std::nullopt});
            if (!conductor) {
                return fail(conductor.error());
            }
            conductor->from = layout::AtEntry{entry, freeSlot(made.layout, entry)};
            conductor->to = layout::Spare{hole.centre + hole.axis};
            made.items.emplace_back(conductor->id);
            made.layout.conductors.push_back(std::move(*conductor));
        }
    }
    if (made.items.empty()) {
        return fail(
            {ErrorCode::missing,
             "all conductors of " + itemName(built.layout, circuit) + " are there already"});
    }
    Settled settled = settledAndBuilt(built, std::move(made.layout), built.shelf);
    for (const Item& item : made.items) {
        const auto index = *indexOf(settled.layout, std::get<layout::ConductorId>(item));
        const auto& placed = settled.built.conductors[index];
        const double reach =
            reachInside(built, placed.from.mouth, placed.from.axis, placed.radius());
        settled.layout.conductors[index].to =
            layout::Spare{placed.from.mouth + placed.from.axis * reach};
    }
    auto valid = accepted(std::move(settled.layout), built.shelf);
    if (!valid) {
        return fail(valid.error());
    }
    return Made{std::move(*valid), std::move(made.items)};
}

// ---- drawing and landing --------------------------------------------------------------------

Result<Made> drawConductor(const BuiltLayout& built,
                           Conductor conductor,
                           const layout::End& from,
                           const layout::End& to,
                           std::span<const Vec3> via) {
    const layout::ConductorId id = conductor.id;
    conductor.from = from;
    conductor.to = to;
    conductor.corners.clear();
    layout::Layout after = built.layout;
    after.conductors.push_back(std::move(conductor));
    auto drawn = replanned(built, std::move(after), id, via);
    if (!drawn) {
        return fail(drawn.error());
    }
    return Made{std::move(*drawn), {id}};
}

namespace {

layout::End& endOf(Conductor& conductor, ConductorEnd end) {
    return end == ConductorEnd::from ? conductor.from : conductor.to;
}

const geometry::BuiltEnd& endOf(const geometry::BuiltConductor& conductor, ConductorEnd end) {
    return end == ConductorEnd::from ? conductor.from : conductor.to;
}

Edit noConductor(const layout::ConductorId& id) {
    return fail(notThere("conductor", id.text()));
}

}  // namespace

Edit landEnd(const BuiltLayout& built,
             const layout::ConductorId& conductor,
             ConductorEnd end,
             const layout::BlockId& block,
             const parts::PortName& port) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    const auto landed = endInPort(built, block, port);
    if (!landed) {
        return fail(landed.error());
    }
    layout::Layout after = built.layout;
    Conductor& moved = after.conductors[*index];
    endOf(moved, end) = *landed;
    auto& phase = after.blocks[*indexOf(after, block)].phase;
    phase = phase.value_or(moved.phase);
    return replanned(built, std::move(after), conductor);
}

Edit enterEnd(const BuiltLayout& built,
              const layout::ConductorId& conductor,
              ConductorEnd end,
              const layout::EntryId& entry,
              std::optional<int> slot) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    layout::Layout after = built.layout;
    endOf(after.conductors[*index], end) =
        layout::AtEntry{entry, slot.value_or(freeSlot(built.layout, entry))};
    return replanned(built, std::move(after), conductor);
}

Edit freeEnd(const BuiltLayout& built, const layout::ConductorId& conductor, ConductorEnd end) {
    constexpr double kOut = 0.5;
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    const auto& at = endOf(built.conductors[*index], end);
    layout::Layout after = built.layout;
    if (at.kind != geometry::BuiltEnd::Kind::spare) {
        const double out = std::min(kOut, at.leadIn / 2.0);
        endOf(after.conductors[*index], end) = layout::Spare{at.mouth + at.axis * out};
    }
    return accepted(settled(built, std::move(after), built.shelf), built.shelf);
}

Edit moveEnd(const BuiltLayout& built,
             const layout::ConductorId& conductor,
             ConductorEnd end,
             const Vec3& tip) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    layout::Layout after = built.layout;
    const bool wasCapped =
        std::holds_alternative<layout::Spare>(endOf(after.conductors[*index], end));
    endOf(after.conductors[*index], end) = layout::Spare{tip};
    const Way way = wayOf(built, *index);
    if (wasCapped && !way.radii.empty()) {
        const Way moved = end == ConductorEnd::from ? withFirstMoved(way, tip - way.points.front())
                                                    : withLastMoved(way, tip - way.points.back());
        if (isSound(moved)) {
            lay(after.conductors[*index], moved);
            return accepted(std::move(after), built.shelf);
        }
    }
    return replanned(built, std::move(after), conductor);
}

// ---- through ports --------------------------------------------------------------------------

namespace {

/// Where among the passes one on this leg belongs.
std::size_t passesBefore(const BuiltLayout& built, std::size_t conductor, std::size_t leg) {
    const auto& laid = built.conductors[conductor];
    const auto& bends = laid.built.bends;
    const double from =
        leg == 0 || bends.empty() ? 0.0 : bends[std::min(leg, bends.size()) - 1].start;
    const double until = leg < bends.size() ? bends[leg].start : laid.built.path.length().in();
    const double middle = (from + until) / 2.0;
    return static_cast<std::size_t>(
        std::count_if(laid.passes.begin(), laid.passes.end(), [&](const auto& pass) {
            return (pass.nearAt + pass.farAt) / 2.0 < middle;
        }));
}

layout::Pass passThat(const layout::BlockId& block, const parts::Port& port) {
    constexpr double kMargin = 1.0 / 32.0;
    return {block,
            port.name,
            units::Inches::of(kMargin),
            units::Inches::of(std::max(0.0, port.boreDepth.in() - 2.0 * kMargin))};
}

/// The leg brought sideways onto the bore, where it runs along it and everything still fits.
std::optional<Way> legOntoBore(const BuiltLayout& built,
                               std::size_t conductor,
                               std::size_t leg,
                               const geometry::BuiltPort& bore) {
    const Way way = wayOf(built, conductor);
    const Vec3 span = way.leg(leg);
    if (norm(span) < kSamePoint ||
        std::abs(std::abs(dot(unit(span), bore.direction)) - 1.0) > kSameDirection) {
        return std::nullopt;
    }
    const Vec3 across = bore.mouth - way.points[leg];
    const Vec3 by = across - bore.direction * dot(across, bore.direction);
    const Way moved = pulled(way, {leg, leg + 1, by});
    return isSound(moved) ? std::optional(moved) : std::nullopt;
}

bool runsThrough(const layout::Layout& layout, const BuiltLayout& built, std::size_t conductor) {
    const auto again = geometry::build(layout, built.shelf);
    const auto& passes = again.conductors[conductor].passes;
    return std::all_of(passes.begin(), passes.end(), [](const auto& pass) { return pass.onAxis; });
}

}  // namespace

Edit passThrough(const BuiltLayout& built,
                 const layout::ConductorId& conductor,
                 std::size_t leg,
                 const layout::BlockId& block,
                 const parts::PortName& port) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    const auto at = findPort(built, block, port);
    if (!at) {
        return fail(at.error());
    }
    if (leg > built.layout.conductors[*index].corners.size()) {
        return fail({ErrorCode::outOfRange, "no such leg"});
    }
    layout::Layout after = built.layout;
    Conductor& led = after.conductors[*index];
    const auto place = static_cast<std::ptrdiff_t>(passesBefore(built, *index, leg));
    led.passes.insert(led.passes.begin() + place,
                      passThat(block, built.blocks[at->block].part->ports[at->port]));
    auto& phase = after.blocks[at->block].phase;
    phase = phase.value_or(led.phase);
    if (auto valid = accepted(after, built.shelf); !valid) {
        return valid;
    }
    if (const auto way = legOntoBore(built, *index, leg, built.blocks[at->block].ports[at->port])) {
        layout::Layout kept = after;
        lay(kept.conductors[*index], *way);
        if (runsThrough(kept, built, *index)) {
            return kept;
        }
    }
    return replanned(built, std::move(after), conductor);
}

Edit dropPass(const BuiltLayout& built,
              const layout::ConductorId& conductor,
              const layout::BlockId& block,
              const parts::PortName& port) {
    const auto index = indexOf(built.layout, conductor);
    if (!index) {
        return noConductor(conductor);
    }
    layout::Layout after = built.layout;
    std::erase_if(after.conductors[*index].passes, [&](const layout::Pass& pass) {
        return pass.block == block && pass.port == port;
    });
    return after;
}

Edit reroute(const BuiltLayout& built, const layout::ConductorId& conductor) {
    return replanned(built, built.layout, conductor);
}

}  // namespace gw::editing
