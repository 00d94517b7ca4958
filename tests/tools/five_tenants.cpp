#include <map>

#include "tools/samples.h"
#include "tools/yard.h"

namespace gw::tools {
namespace {

using layout::Phase;
using layout::Role;
using layout::TapRule;
using layout::Wall;
using standards::RacewayType;

struct Tenant {
    std::string id;
    std::string name;
    std::string size;
    double amperes;
    double x;  ///< of its entry in the bottom wall
    double z;
    std::string raceway;
};

}  // namespace

layout::Layout fiveTenants(const parts::Shelf& shelf) {
    SampleBuilder maker(shelf, "Five workshops on one service", {72.0, 12.0, 12.0});
    auto& layout = maker.layout();
    layout.project = "Riverside yard, building 4";
    maker.addSystem("yard", "208Y/120 V, 3-phase, 4-wire", 208, 120, 22.0);
    layout.readings.terminalSpace = layout::Readings::TerminalSpace::asForBlocks;

    auto service =
        circuit("service", "Service, two sets in parallel", Role::service, kFourWire, 2, 600, 470);
    service.tapRule = TapRule::serviceConductors;
    maker.addCircuit(service);
    maker.addEntry(entry(
        "E1", "Service set 1", Wall::top, 3.0, 2.4, {RacewayType::rmc, "3", 360}, "Meter, set 1"));
    maker.addEntry(entry(
        "E2", "Service set 2", Wall::top, 7.7, 4.0, {RacewayType::rmc, "3", 360}, "Meter, set 2"));

    for (auto& entry : layout.entries) {
        entry.bondedBy = layout::BondedBy::bushingAndJumper;  // rings of the knockouts are left
        entry.bondingJumper = units::WireSize::of("2");
    }

    const std::array<Tenant, 5> tenants = {{
        {"T1", "Boat repair", "3", 90, 20.0, 5.4, "1-1/4"},
        {"T2", "Sail loft", "3", 90, 31.0, 5.4, "1-1/4"},
        {"T3", "Bakery", "3/0", 200, 40.8, 5.8, "2"},
        {"T4", "Print shop", "3", 90, 53.0, 5.4, "1-1/4"},
        {"T5", "Joinery", "3/0", 200, 68.5, 5.8, "2"},
    }};
    for (std::size_t i = 0; i < kFourWire.size(); ++i) {
        maker.addBlock("B" + letter(kFourWire[i]),
                       "row-one-side-8-to-350",
                       {15.5 + 12.5 * double(i), 10.1, 0.0},
                       "+x+y",
                       kFourWire[i]);
    }
    // The neutral's lane lies lowest and phase A's highest, so that no riser crosses a lane.
    for (int set = 1; set <= 2; ++set) {
        std::vector<std::size_t> conductors;
        for (int i = 0; i < 4; ++i) {
            const auto phase = kFourWire[std::size_t(i)];
            conductors.push_back(
                maker.addConductor("S" + std::to_string(set) + "-" + letter(phase),
                                   "service",
                                   set,
                                   phase,
                                   {"350"},
                                   maker.atEntry("E" + std::to_string(set), i + 1),
                                   maker.inPort("B" + letter(phase), std::to_string(set))));
        }
        std::vector<LaneWishes> wishes(4);
        for (int i = 0; i < 4; ++i) {
            wishes[std::size_t(i)].y = {i < 2 ? 1.8 : 0.9};
            wishes[std::size_t(i)].z = {(set == 1 ? 0.79 : 2.61) + (i % 2 == 0 ? 0.91 : 0.0)};
            wishes[std::size_t(i)].lanesOnly = true;
        }
        laySet(maker, conductors, "E" + std::to_string(set), wishes);
    }

    LaneWishes taps;
    taps.perSlant = 0.5;
    taps.perDepth = 1.2;
    taps.y = steps(1.8, 7.2, 0.45);
    taps.z = steps(2.8, 11.2, 0.42);
    std::map<std::string, std::vector<std::size_t>> conductors;
    int port = 4;
    for (const auto& tenant : tenants) {
        conductors[tenant.id] = addTap(maker,
                                       {tenant.id,
                                        tenant.name,
                                        std::to_string(port),
                                        tenant.size,
                                        tenant.amperes,
                                        tenant.amperes * 0.75,
                                        tenant.x,
                                        tenant.z,
                                        {RacewayType::emt, tenant.raceway, 12},
                                        tenant.name + " disconnect"},
                                       kFourWire,
                                       "service",
                                       TapRule::serviceConductors);
        ++port;
    }
    // The thick ones first: they have the least choice.
    for (const char* id : {"T3", "T5", "T2", "T1", "T4"}) {
        laySet(maker, conductors[id], "E" + std::string(id), {taps});
    }
    return layout;
}

}  // namespace gw::tools
