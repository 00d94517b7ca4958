#include "support/drawn_layout.h"

#include <array>

#include "support/shipped_shelf.h"

namespace gw::test {
namespace {

using layout::Phase;
using layout::Wall;
using units::Inches;

constexpr std::array<Phase, 4> kPhases = {Phase::a, Phase::b, Phase::c, Phase::n};
constexpr double kHeight = 12.0;
constexpr double kBlockY = 10.1;

std::string letter(Phase phase) {
    return std::string(layout::phaseText(phase));
}

layout::Entry entry(const std::string& id,
                    const std::string& name,
                    Wall wall,
                    double u,
                    double v,
                    const std::string& size,
                    const std::string& leadsTo) {
    layout::Entry made;
    made.id = layout::EntryId(id);
    made.name = name;
    made.wall = wall;
    made.u = u;
    made.v = v;
    made.raceway = wall == Wall::left ? standards::RacewayType::rmc : standards::RacewayType::emt;
    made.tradeSize = standards::TradeSize::of(size);
    made.leadsTo = leadsTo;
    return made;
}

layout::Circuit circuit(const std::string& id,
                        const std::string& name,
                        layout::Role role,
                        int sets) {
    layout::Circuit made;
    made.id = layout::CircuitId(id);
    made.name = name;
    made.role = role;
    made.system = layout::SystemId("yard");
    made.sets = sets;
    made.phases.assign(kPhases.begin(), kPhases.end());
    return made;
}

layout::Conductor conductor(const std::string& tag,
                            const std::string& circuitId,
                            int set,
                            Phase phase,
                            const std::string& size) {
    layout::Conductor made;
    made.id = layout::ConductorId(tag);
    made.tag = tag;
    made.circuit = layout::CircuitId(circuitId);
    made.set = set;
    made.phase = phase;
    made.size = units::WireSize::of(size);
    made.metal = standards::Metal::copper;
    made.insulation = standards::Insulation::thwn2;
    made.stranding = standards::Stranding::classB;
    return made;
}

class Drawer {
public:
    explicit Drawer(const DrawnOptions& options) : options_(options) {
        describe();
        addBlocks();
        addService();
        for (int i = 0; i < options.tenants; ++i) {
            addTenant(i);
        }
        if (options.conductors) {
            addBareConductor();
        }
    }

    geometry::BuiltLayout build() {
        const auto straight = geometry::build(layout_, shelf_);
        for (std::size_t i = 0; i < layout_.conductors.size(); ++i) {
            layout_.conductors[i].corners = cornersOf(straight, i);
        }
        return geometry::build(layout_, shelf_);
    }

private:
    void describe() {
        layout_.title = "Five workshops on one service";
        layout_.project = "Riverside yard, building 4";
        layout_.drawnBy = "Office of the yard";
        layout_.date = "2024-03-05";
        layout_.revision = "B";
        layout_.displayUnit = options_.unit;
        layout_.gutter.inside = {options_.length, kHeight, 12.0};
        layout_.gutter.orientation =
            options_.vertical ? layout::Orientation::vertical : layout::Orientation::horizontal;
        layout::System system;
        system.id = layout::SystemId("yard");
        system.name = "208Y/120 V, 3-phase, 4-wire";
        system.voltsBetweenPhases = 208;
        layout_.systems.push_back(system);
    }

    /// Phases that have a block, or all when the service runs through.
    std::size_t phases() const {
        return options_.blocks == 0 ? kPhases.size() : static_cast<std::size_t>(options_.blocks);
    }

    double blockX(std::size_t phase) const {
        return options_.length *
               ((options_.blocks == 1 ? 0.1 : 0.2) + 0.18 * static_cast<double>(phase));
    }

    void addBlocks() {
        for (std::size_t i = 0; i < static_cast<std::size_t>(options_.blocks); ++i) {
            layout::Block block;
            block.id = layout::BlockId("B" + letter(kPhases[i]));
            block.name = "Block " + letter(kPhases[i]);
            block.part = parts::PartId("row-one-side-8-to-350");
            block.corner = {blockX(i), kBlockY, 0.0};
            block.phase = kPhases[i];
            layout_.blocks.push_back(block);
        }
    }

    layout::InPort port(Phase phase, int number) const {
        layout::InPort port;
        port.block = layout::BlockId("B" + letter(phase));
        port.port = parts::PortName(std::to_string(number));
        return port;
    }

    void addService() {
        layout_.circuits.push_back(
            circuit("service", "Service, two sets", layout::Role::service, 2));
        for (int set = 1; set <= 2; ++set) {
            const auto id = "E" + std::to_string(set);
            layout_.entries.push_back(entry(id,
                                            id,
                                            Wall::left,
                                            set == 1 ? 2.6 : 7.2,
                                            2.4,
                                            "3",
                                            "meter, set " + std::to_string(set)));
            addFarSide(set);
            for (std::size_t i = 0; options_.conductors && i < phases(); ++i) {
                auto made = conductor("S" + std::to_string(set) + "-" + letter(kPhases[i]),
                                      "service",
                                      set,
                                      kPhases[i],
                                      "350");
                made.from = layout::AtEntry{layout::EntryId(id), static_cast<int>(i) + 1};
                made.to =
                    options_.blocks > 0
                        ? layout::End(port(kPhases[i], set))
                        : layout::End(layout::AtEntry{layout::EntryId("F" + std::to_string(set)),
                                                      static_cast<int>(i) + 1});
                layout_.conductors.push_back(made);
            }
        }
    }

    /// Without blocks the service goes on through the right wall.
    void addFarSide(int set) {
        if (options_.blocks == 0) {
            const auto id = "F" + std::to_string(set);
            layout_.entries.push_back(
                entry(id, id, Wall::right, set == 1 ? 2.6 : 7.2, 2.4, "3", "next gutter"));
        }
    }

    void addTenant(int index) {
        static const std::array<const char*, 5> kNames = {
            "boat repair", "sail loft", "bakery", "print shop", "joinery"};
        const auto id = "T" + std::to_string(index + 1);
        const double x =
            options_.length * (0.27 + 0.68 * index / std::max(options_.tenants - 1, 1));
        layout_.circuits.push_back(
            circuit(id, kNames[std::size_t(index) % 5], layout::Role::tap, 1));
        layout_.entries.push_back(
            entry("E" + id,
                  id,
                  options_.topEntries ? Wall::top : Wall::bottom,
                  x,
                  index % 2 == 0 ? 8.0 : 6.5,
                  index % 2 == 0 ? "1-1/4" : "2",
                  std::string(kNames[std::size_t(index) % 5]) + " disconnect"));
        for (std::size_t i = 0; hasTaps() && i < phases(); ++i) {
            auto made = conductor(
                id + "-" + letter(kPhases[i]), id, 1, kPhases[i], index % 2 == 0 ? "3" : "3/0");
            made.from = port(kPhases[i], 3 + index % 6);
            made.to = layout::AtEntry{layout::EntryId("E" + id), static_cast<int>(i) + 1};
            layout_.conductors.push_back(made);
        }
    }

    bool hasTaps() const { return options_.conductors && options_.blocks > 0; }

    void addBareConductor() {
        auto bonding = circuit("bonding", "Bonding jumper", layout::Role::bonding, 1);
        bonding.phases = {Phase::g};
        layout_.circuits.push_back(bonding);
        auto made = conductor("G1", "bonding", 1, Phase::g, "2/0");
        made.insulation = standards::Insulation::bare;
        made.from = layout::Spare{{1.0, 0.5, 10.5}};
        made.to = layout::Spare{{options_.length - 2.0, 0.5, 10.5}};
        layout_.conductors.push_back(made);
    }

    /// From the one end straight on, over a lane of its own, and straight into the other.
    std::vector<layout::Corner> cornersOf(const geometry::BuiltLayout& straight,
                                          std::size_t index) const {
        const auto& built = straight.conductors[index];
        if (built.from.kind == geometry::BuiltEnd::Kind::spare) {
            return {};
        }
        const double radius = built.diameter.in() * 4.0;
        const auto a = built.from.mouth;
        const auto b = built.to.mouth;
        if (built.from.kind == geometry::BuiltEnd::Kind::entry) {
            const double lane = 4.4 - 0.9 * static_cast<double>(index % 4);
            const double depth = index < 4 ? 0.8 : 1.8;
            if (options_.blocks == 0) {
                return {};
            }
            return {{{2.5, a.y, a.z}, Inches::of(1.0)},
                    {{7.5, lane, depth}, Inches::of(1.0)},
                    {{b.x, lane, depth}, Inches::of(2.5)},
                    {{b.x, b.y - 3.0, depth}, Inches::of(0.5)},
                    {{b.x, b.y - 1.5, b.z}, Inches::of(0.5)}};
        }
        const double lane = 5.0 + 0.5 * static_cast<double>(index % 4);
        const double depth = 3.0 + 0.55 * static_cast<double>(index % 9);
        return {{{a.x, a.y - 1.2, a.z}, Inches::of(0.5)},
                {{a.x, lane + 2.0, depth}, Inches::of(0.5)},
                {{a.x, lane, depth}, Inches::of(std::min(radius, 1.2))},
                {{b.x, lane, depth}, Inches::of(std::min(radius, 1.2))},
                {{b.x, options_.topEntries ? lane + 2.0 : lane - 2.0, b.z}, Inches::of(0.5)}};
    }

    DrawnOptions options_;
    parts::Shelf shelf_ = shippedShelf();
    layout::Layout layout_;
};

checks::Finding finding(checks::Check check, checks::Verdict verdict, std::string working) {
    checks::Finding made;
    made.check = check;
    made.verdict = verdict;
    made.working = std::move(working);
    made.citation = {"NFPA 70-2023", "376.56(B)(1)", standards::Basis::seenTwice};
    made.measured = checks::Quantity{21.25, checks::Quantity::Unit::percent};
    made.limit = checks::Quantity{20.0, checks::Quantity::Unit::percent};
    return made;
}

}  // namespace

geometry::BuiltLayout drawnLayout(const DrawnOptions& options) {
    return Drawer(options).build();
}

std::vector<checks::Finding> drawnFindings(const geometry::BuiltLayout& built, int meets) {
    using checks::Verdict;
    std::vector<checks::Finding> findings;
    const auto& conductors = built.layout.conductors;
    for (int i = 0; i < meets && !conductors.empty(); ++i) {
        findings.push_back(
            finding(checks::Check::bendRadius, Verdict::meets, "The bend is wide enough."));
        findings.back().subjects = {conductors[std::size_t(i) % conductors.size()].id};
    }
    findings.push_back(finding(
        checks::Check::conductorFill,
        Verdict::breach,
        "At 21 1/2 in the conductors take 21.25 % of the cross-section, 1.25 % over the 20 %."));
    findings.back().place = Vec3{21.5, 6.0, 6.0};
    if (!conductors.empty() && !built.blocks.empty()) {
        findings.push_back(finding(checks::Check::exposedCopper,
                                   Verdict::caution,
                                   "The strip is 1/16 in longer than the part asks for."));
        findings.back().subjects = {conductors.front().id, built.layout.blocks.front().id};
        findings.back().place = built.conductors.front().to.mouth;
        findings.push_back(finding(checks::Check::location,
                                   Verdict::cannotTell,
                                   "Whether the connector may lie in a wet place is not known."));
        findings.back().subjects = {built.layout.blocks.front().id};
        findings.back().missing = {"surroundings.location"};
        findings.back().measured.reset();
    }
    return findings;
}

}  // namespace gw::test
