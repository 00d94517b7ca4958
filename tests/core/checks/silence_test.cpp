#include <gtest/gtest.h>

#include <filesystem>
#include <functional>
#include <map>
#include <stdexcept>

#include "base/read_file.h"
#include "core/checks/gutter_builder.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

/// No finding passes by silence: whatever a layout or a part leaves unsaid, no check gets better by
/// it. Each optional fact is taken away in turn, from every thing that has it, and no subject may
/// then have fewer findings that are not `meets`.
///
/// Not taken away, because the layout's format gives their absence a meaning of its own:
/// - a circuit's `joins`: without it the circuit is said to join none;
/// - a measured outside diameter: without it the published tables speak;
/// - the insertion into a bore with a stop: without it the end is said to be pushed to the stop;
/// - the diameter of a conductor that shares an entry with others says where it comes in: they are
///   packed anew. The gutters here give each conductor an entry of its own where overlaps are
///   looked for.
namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;

struct Case {
    layout::Layout layout;
    parts::Shelf shelf;
};

/// Takes one fact from one thing; false where it was not stated.
using Taking = std::function<bool(Case&)>;
struct Removal {
    std::string name;
    Taking take;
};

template <class T>
bool clear(std::optional<T>& fact) {
    const bool had = fact.has_value();
    fact.reset();
    return had;
}

template <class T>
bool clear(std::vector<T>& facts) {
    const bool had = !facts.empty();
    facts.clear();
    return had;
}

layout::InPort* portEnd(layout::End& end) {
    return std::get_if<layout::InPort>(&end);
}

const parts::Part& partOf(const Case& at, const layout::BlockId& id) {
    for (const auto& block : at.layout.blocks) {
        if (block.id == id) {
            return *layout::findPart(at.layout, at.shelf, block.part);
        }
    }
    throw std::logic_error("no block " + id.text());
}

/// Only where there is no stop: see above.
bool clearInsertion(Case& at, layout::End& end) {
    auto* in = portEnd(end);
    if (in == nullptr) {
        return false;
    }
    for (const auto& port : partOf(at, in->block).ports) {
        if (port.name == in->port && port.opening == parts::PortOpening::both) {
            return clear(in->inserted);
        }
    }
    return false;
}

void addConductorFacts(std::vector<Removal>& all, std::size_t i) {
    const auto add = [&](const std::string& name, bool (*take)(layout::Conductor&)) {
        all.push_back({name + " of conductor " + std::to_string(i),
                       [i, take](Case& at) { return take(at.layout.conductors[i]); }});
    };
    add("metal", [](layout::Conductor& one) { return clear(one.metal); });
    add("insulation", [](layout::Conductor& one) { return clear(one.insulation); });
    add("stranding", [](layout::Conductor& one) { return clear(one.stranding); });
    add("colour", [](layout::Conductor& one) { return clear(one.colour); });
    add("strip at its start", [](layout::Conductor& one) {
        auto* in = portEnd(one.from);
        return in != nullptr && clear(in->strip);
    });
    add("strip at its end", [](layout::Conductor& one) {
        auto* in = portEnd(one.to);
        return in != nullptr && clear(in->strip);
    });
    add("window starts", [](layout::Conductor& one) {
        bool had = false;
        for (auto& pass : one.passes) {
            had = clear(pass.windowStart) || had;
        }
        return had;
    });
    add("window lengths", [](layout::Conductor& one) {
        bool had = false;
        for (auto& pass : one.passes) {
            had = clear(pass.windowLength) || had;
        }
        return had;
    });
    all.push_back({"insertions of conductor " + std::to_string(i), [i](Case& at) {
                       auto& one = at.layout.conductors[i];
                       const bool from = clearInsertion(at, one.from);
                       return clearInsertion(at, one.to) || from;
                   }});
}

void addLayoutFacts(std::vector<Removal>& all, const Case& at) {
    all.push_back({"location", [](Case& one) { return clear(one.layout.surroundings.location); }});
    all.push_back({"flooding", [](Case& one) { return clear(one.layout.surroundings.floods); }});
    all.push_back(
        {"ambient", [](Case& one) { return clear(one.layout.surroundings.ambientCelsius); }});
    all.push_back(
        {"enclosure type", [](Case& one) { return clear(one.layout.gutter.enclosureType); }});
    all.push_back({"supports", [](Case& one) { return clear(one.layout.gutter.supportSpacing); }});
    all.push_back(
        {"equipment", [](Case& one) { return clear(one.layout.gutter.beyondEquipment); }});
    all.push_back(
        {"largest conductor", [](Case& one) { return clear(one.layout.gutter.largestConductor); }});
    all.push_back({"sheet", [](Case& one) { return clear(one.layout.gutter.sheet); }});
    all.push_back(
        {"reading of fill", [](Case& one) { return clear(one.layout.readings.fillAtSplice); }});
    all.push_back({"reading of terminal space",
                   [](Case& one) { return clear(one.layout.readings.terminalSpace); }});
    all.push_back({"reading of a weatherproof inside",
                   [](Case& one) { return clear(one.layout.readings.insideWeatherproof); }});
    for (std::size_t i = 0; i < at.layout.systems.size(); ++i) {
        all.push_back({"volts of system " + std::to_string(i),
                       [i](Case& one) { return clear(one.layout.systems[i].voltsBetweenPhases); }});
    }
    for (std::size_t i = 0; i < at.layout.systems.size(); ++i) {
        const std::string system = " of system " + std::to_string(i);
        all.push_back({"volts between phases" + system,
                       [i](Case& one) { return clear(one.layout.systems[i].voltsBetweenPhases); }});
        all.push_back({"volts to ground" + system,
                       [i](Case& one) { return clear(one.layout.systems[i].voltsToGround); }});
        all.push_back({"fault current" + system,
                       [i](Case& one) { return clear(one.layout.systems[i].faultKiloamperes); }});
    }
    for (std::size_t i = 0; i < at.layout.circuits.size(); ++i) {
        const std::string circuit = " of circuit " + std::to_string(i);
        const auto add = [&](const std::string& name, bool (*take)(layout::Circuit&)) {
            all.push_back(
                {name + circuit, [i, take](Case& one) { return take(one.layout.circuits[i]); }});
        };
        add("neutral bond", [](layout::Circuit& one) { return clear(one.bondsNeutral); });
        add("device", [](layout::Circuit& one) { return clear(one.deviceAmperes); });
        add("load", [](layout::Circuit& one) { return clear(one.loadAmperes); });
        add("tap rule", [](layout::Circuit& one) { return clear(one.tapRule); });
        add("equipment", [](layout::Circuit& one) { return clear(one.supplies); });
    }
    for (std::size_t i = 0; i < at.layout.entries.size(); ++i) {
        const std::string entry = " of entry " + std::to_string(i);
        all.push_back({"bushing" + entry,
                       [i](Case& one) { return clear(one.layout.entries[i].insulatingBushing); }});
        all.push_back(
            {"bonding" + entry, [i](Case& one) { return clear(one.layout.entries[i].bondedBy); }});
        all.push_back({"jumper" + entry,
                       [i](Case& one) { return clear(one.layout.entries[i].bondingJumper); }});
        all.push_back({"length" + entry,
                       [i](Case& one) { return clear(one.layout.entries[i].racewayLength); }});
        all.push_back(
            {"raceway" + entry, [i](Case& one) { return clear(one.layout.entries[i].raceway); }});
        all.push_back({"trade size" + entry,
                       [i](Case& one) { return clear(one.layout.entries[i].tradeSize); }});
    }
    for (std::size_t i = 0; i < at.layout.blocks.size(); ++i) {
        const std::string block = " of block " + std::to_string(i);
        all.push_back({"open mouths" + block,
                       [i](Case& one) { return clear(one.layout.blocks[i].openMouths); }});
        all.push_back(
            {"mounting" + block, [i](Case& one) { return clear(one.layout.blocks[i].mounted); }});
    }
}

void addPartFacts(std::vector<Removal>& all, const parts::PartId& id) {
    const auto add = [&](const std::string& name, bool (*take)(parts::Part&)) {
        all.push_back({name + " of part " + id.text(),
                       [id, take](Case& at) { return take(at.shelf.at(id)); }});
    };
    add("wire ranges", [](parts::Part& part) {
        bool had = false;
        for (auto& port : part.ports) {
            had = clear(port.accepts) || had;
        }
        return had;
    });
    add("strip lengths", [](parts::Part& part) {
        bool had = false;
        for (auto& port : part.ports) {
            had = clear(port.stripLength) || had;
        }
        return had;
    });
    add("strip tolerances", [](parts::Part& part) {
        bool had = false;
        for (auto& port : part.ports) {
            had = clear(port.stripTolerance) || had;
        }
        return had;
    });
    add("numbers in ports", [](parts::Part& part) {
        bool had = false;
        for (auto& port : part.ports) {
            for (auto& range : port.accepts) {
                had = clear(range.conductors) || had;
            }
        }
        return had;
    });
    add("torques", [](parts::Part& part) {
        bool had = false;
        for (auto& screw : part.screws) {
            had = clear(screw.torque) || had;
        }
        return had;
    });
    add("screws", [](parts::Part& part) { return clear(part.screws); });
    add("kind", [](parts::Part& part) { return clear(part.listing.kind); });
    add("locations", [](parts::Part& part) { return clear(part.listing.locations); });
    add("submersion", [](parts::Part& part) { return clear(part.listing.temporarySubmersion); });
    add("line side", [](parts::Part& part) { return clear(part.listing.lineSideOfService); });
    add("temperature", [](parts::Part& part) { return clear(part.listing.celsius); });
    add("volts", [](parts::Part& part) { return clear(part.listing.volts); });
    add("short-circuit rating",
        [](parts::Part& part) { return clear(part.listing.shortCircuitKiloamperes); });
    add("drives", [](parts::Part& part) {
        bool had = false;
        for (auto& screw : part.screws) {
            had = had || !screw.drive.empty();
            screw.drive.clear();
        }
        return had;
    });
    add("least enclosure", [](parts::Part& part) { return clear(part.leastEnclosure); });
}

std::vector<Removal> removalsOf(const Case& at) {
    std::vector<Removal> all;
    for (std::size_t i = 0; i < at.layout.conductors.size(); ++i) {
        addConductorFacts(all, i);
    }
    addLayoutFacts(all, at);
    for (const auto& [id, part] : at.shelf) {
        addPartFacts(all, id);
    }
    return all;
}

std::string keyOf(const Finding& finding, const std::string& subject) {
    return std::string(checkName(finding.check)) + ": " + subject;
}

/// Findings that are not `meets`, by check and first subject.
std::map<std::string, int> objections(const std::vector<Finding>& findings) {
    std::map<std::string, int> all;
    for (const Finding& finding : findings) {
        const std::string subject =
            finding.subjects.empty() ? "the gutter" : subjectText(finding.subjects.front());
        all[keyOf(finding, subject)] += finding.verdict == Verdict::meets ? 0 : 1;
    }
    return all;
}

/// The same, and conductors that block one another also by their other subjects: less known, two
/// knots may be one, named by the first of both.
std::map<std::string, int> objectionsLessKnown(const std::vector<Finding>& findings) {
    auto all = objections(findings);
    for (const Finding& finding : findings) {
        const bool counts =
            finding.check == Check::landingOrder && finding.verdict != Verdict::meets;
        for (std::size_t i = 1; counts && i < finding.subjects.size(); ++i) {
            ++all[keyOf(finding, subjectText(finding.subjects[i]))];
        }
    }
    return all;
}

std::vector<Finding> findingsOf(const Case& at) {
    return checkAll(geometry::build(at.layout, at.shelf));
}

/// How many facts there were to take away.
int expectNoSilence(const Case& base) {
    const auto before = objections(findingsOf(base));
    int taken = 0;
    for (const Removal& removal : removalsOf(base)) {
        Case less = base;
        if (!removal.take(less)) {
            continue;
        }
        ++taken;
        auto after = objectionsLessKnown(findingsOf(less));
        for (const auto& [key, count] : before) {
            EXPECT_GE(after[key], count) << key << ", without the " << removal.name;
        }
    }
    return taken;
}

// ---- the gutters ----------------------------------------------------------------------------

struct Gutter {
    std::string name;
    std::function<GutterBuilder()> make;
};

void PrintTo(const Gutter& gutter, std::ostream* out) {
    *out << gutter.name;
}

GutterBuilder spliceWith(const std::function<void(GutterBuilder&)>& spoil) {
    auto builder = check_test::straightSplice();
    spoil(builder);
    return builder;
}

GutterBuilder inAWetPlace(const std::string& type, standards::GutterArticle article) {
    return spliceWith([&](GutterBuilder& builder) {
        builder.layout().surroundings.location = standards::Location::wet;
        builder.layout().gutter.enclosureType = type;
        builder.layout().gutter.article = article;
        builder.conductorNamed("S-A").insulation = standards::Insulation::thhn;
    });
}

/// Tight bends in a low gutter, a wrong size, a missing insulation, overlaps.
GutterBuilder crowded() {
    GutterBuilder builder({60.0, 7.0, 7.0});
    builder.add(check_test::rowPart(3)).block("A", "row", {30.0, 2.0, 2.0});
    for (int i = 1; i <= 3; ++i) {
        const double x = 29.5 + 1.5 * i;
        const std::string name = std::to_string(i);
        const double z = 2.7 + 0.3 * i;
        builder.entry("in" + name, layout::Wall::left, 5.5, z);
        builder.conductor(
            "alike" + name, atEntry("in" + name), inPort("A", name), {corner({x, 5.5, z}, 1.0)});
    }
    builder.conductorNamed("alike2").size = units::WireSize::of("1");
    builder.conductor("tight", spare({5, 2, 2}), spare({20, 6, 2}), {corner({20, 2, 2}, 3.5)})
        .insulation.reset();
    return builder;
}

GutterBuilder bondsInOneBlock(bool bondsNeutral) {
    GutterBuilder builder;
    builder.add(check_test::rowPart(3)).block("N", "row", {5.0, 4.0, 2.0});
    builder.circuitNamed("S").phases = {layout::Phase::n};
    builder.circuit("bond", {layout::Phase::g});
    builder.circuitNamed("bond").role = layout::Role::bonding;
    builder.circuitNamed("bond").bondsNeutral = bondsNeutral;
    builder.conductor("SN", spare({3, 11, 3}), inPort("N", "1")).phase = layout::Phase::n;
    auto& jumper = builder.conductor("jumper", inPort("N", "2"), spare({12, 11, 3}));
    jumper.circuit = layout::CircuitId("bond");
    jumper.phase = layout::Phase::g;
    return builder;
}

GutterBuilder throughBore(double strip, double inserted, std::optional<double> windowEnd) {
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.entry("above", layout::Wall::top, 12.0, 3.0);
    builder.entry("below", layout::Wall::bottom, 12.0, 3.0);
    auto& end = builder.conductor("S-A", spare({10, 11, 3}), inPort("A", "1", strip));
    std::get<layout::InPort>(end.to).inserted = units::Inches::of(inserted);
    auto& facing = builder.conductor("S-B", spare({10, 1, 3}), inPort("A", "1", 1.4));
    std::get<layout::InPort>(facing.to).inserted = units::Inches::of(1.4);
    if (windowEnd) {
        builder.conductor("pass", atEntry("below"), atEntry("above")).passes = {
            {layout::BlockId("A"),
             parts::PortName("2"),
             units::Inches::of(0.0),
             units::Inches::of(*windowEnd)}};
    }
    return builder;
}

std::vector<Gutter> gutters() {
    using standards::GutterArticle;
    return {
        {"in order", [] { return check_test::straightSplice(); }},
        {"copper shows",
         [] {
             return spliceWith([](GutterBuilder& builder) {
                 auto& end = std::get<layout::InPort>(builder.conductorNamed("S-A").to);
                 end.strip = units::Inches::of(1.75);
             });
         }},
        {"strip too short",
         [] {
             return spliceWith([](GutterBuilder& builder) {
                 auto& end = std::get<layout::InPort>(builder.conductorNamed("S-A").to);
                 end.strip = units::Inches::of(0.5);
             });
         }},
        {"fine strands in aluminium's place",
         [] {
             return spliceWith([](GutterBuilder& builder) {
                 builder.conductorNamed("S-A").stranding = standards::Stranding::classK;
                 builder.conductorNamed("T-A").metal = standards::Metal::aluminium;
             });
         }},
        {"wet, weatherproof gutter",
         [] { return inAWetPlace("3R", GutterArticle::auxiliaryGutter); }},
        {"wet, weatherproof wireway",
         [] { return inAWetPlace("3R", GutterArticle::metalWireway); }},
        {"wet, open gutter", [] { return inAWetPlace("1", GutterArticle::auxiliaryGutter); }},
        {"wet, read as dry inside",
         [] {
             auto builder = inAWetPlace("4", GutterArticle::auxiliaryGutter);
             builder.layout().readings.insideWeatherproof =
                 layout::Readings::InsideWeatherproof::notWet;
             builder.part("splice").listing.locations = {standards::Location::wet};
             return builder;
         }},
        {"flooding",
         [] {
             return spliceWith(
                 [](GutterBuilder& builder) { builder.layout().surroundings.floods = true; });
         }},
        {"buried",
         [] {
             return spliceWith([](GutterBuilder& builder) {
                 builder.layout().surroundings.location = standards::Location::buried;
                 builder.conductorNamed("S-A").insulation = standards::Insulation::thhn;
             });
         }},
        {"crowded", crowded},
        {"bonded on purpose", [] { return bondsInOneBlock(true); }},
        {"bonded without purpose", [] { return bondsInOneBlock(false); }},
        {"bore shared by two", [] { return throughBore(1.4, 1.4, 3.0); }},
        {"tips that meet", [] { return throughBore(1.7, 1.7, 3.0); }},
        {"tip too short", [] { return throughBore(0.5, 0.5, 2.0); }},
        {"window too long", [] { return throughBore(1.4, 1.4, 3.25); }},
    };
}

class Silence : public testing::TestWithParam<Gutter> {};

TEST_P(Silence, MakesNoFindingBetter) {
    const auto builder = GetParam().make();
    EXPECT_GE(expectNoSilence({builder.build().layout, builder.shelf()}), 10)
        << "the gutter states too little to take away";
}

INSTANTIATE_TEST_SUITE_P(Gutters, Silence, testing::ValuesIn(gutters()), [](const auto& row) {
    return "Gutter" + std::to_string(row.index);
});

TEST(SilenceInASample, MakesNoFindingBetter) {
    const auto shelf = test::shippedShelf();
    for (const std::string name : {"five-tenants",
                                   "gate-house",
                                   "shallow-loft",
                                   "slipway-pumps",
                                   "boat-hall",
                                   "rope-walk",
                                   "broken-exposed-copper",
                                   "broken-ampacity",
                                   "broken-tap-rule",
                                   "broken-screw-reach",
                                   "broken-grounding-size",
                                   "broken-service-bonding",
                                   "broken-connector-listing",
                                   "broken-colours",
                                   "broken-pull-distances",
                                   "broken-raceway-fill"}) {
        SCOPED_TRACE(name);
        const auto file =
            (std::filesystem::path(GW_SOURCE_DIR) / "samples" / name / "layout.json").string();
        const auto bytes = readFile(file);
        ASSERT_TRUE(bytes) << toLine(bytes.error());
        const auto layout = files::readLayout(*bytes, file, shelf);
        ASSERT_TRUE(layout) << toLine(layout.error());
        Case base{*layout, {}};
        for (const auto& block : layout->blocks) {
            if (const auto found = shelf.find(block.part); found != shelf.end()) {
                base.shelf.insert(*found);  // the others are the layout's own
            }
        }
        EXPECT_GE(expectNoSilence(base), 25);
    }
}

}  // namespace
}  // namespace gw::checks
