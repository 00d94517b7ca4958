#include <algorithm>
#include <array>
#include <map>

#include "checks/colour_text.h"
#include "checks/support.h"
#include "checks/units.h"
#include "standards/tables.h"

/// Conductors can be told apart by their colours: the grounded one, the grounding one, the phases.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Conductor;
using layout::Phase;
using layout::System;
using standards::Citation;
using standards::Rule;

/// What is to be said of one conductor.
struct Look {
    std::size_t conductor = 0;
    Verdict verdict = Verdict::meets;
    std::string why;  ///< after the conductor's name and colour
    std::optional<Citation> citation;
    std::string missing;
};

Look lookOf(Verdict verdict, const std::string& why) {
    Look look;
    look.verdict = verdict;
    look.why = why;
    return look;
}
Look fails(const std::string& why) {
    return lookOf(Verdict::breach, why);
}
Look hangsOn(const std::string& missing, const std::string& why) {
    Look look = lookOf(Verdict::cannotTell, why);
    look.missing = missing;
    return look;
}

using Custom = standards::Cited<standards::ColourCustom>;
using Customs = std::vector<Custom>;

/// One circuit and its conductors in the gutter, by id.
struct OfCircuit {
    const BuiltLayout& built;
    const Facts& facts;
    std::size_t circuit = 0;

    const std::vector<std::size_t>& conductors() const { return facts.links.members[circuit]; }
    std::size_t systemIndex() const { return facts.links.systemOf[circuit]; }
    const System& system() const { return built.layout.systems[systemIndex()]; }
    const SystemLinks& systemLinks() const { return facts.links.systems[systemIndex()]; }
};

/// A long text is not repeated.
std::string shown(const Conductor& conductor) {
    constexpr std::size_t kMost = 40;  // bytes
    const std::string& text = given(conductor.colour);
    return text.size() <= kMost ? "is " + text : std::string("has a colour in many words");
}

/// Where marking at the ends is enough.
bool isLarge(const Conductor& conductor) {
    return conductor.size >= units::WireSize::of("4");
}

bool isWhiteOrGray(Hue hue) {
    return hue == Hue::white || hue == Hue::gray;
}
bool isKept(Hue hue) {
    return isWhiteOrGray(hue) || hue == Hue::green;
}

std::string keptFor(Hue hue) {
    return ", and " + std::string(hueText(hue)) + " is kept for " +
           (isWhiteOrGray(hue) ? "grounded" : "equipment grounding") + " conductors";
}

// ---- what the code asks ---------------------------------------------------------------------

/// Stripes by themselves identify where there are three of them.
Look groundedByStripes(const Conductor& conductor, const ColourText& colour) {
    constexpr int kStripes = 3;
    if (colour.stripes && isWhiteOrGray(colour.stripes->hue)) {
        if (!colour.stripes->count) {
            return hangsOn("number of stripes of a grounded conductor",
                           ", and how many stripes it has is not said");
        }
        if (*colour.stripes->count == kStripes) {
            return {};
        }
    }
    return fails(
        isLarge(conductor)
            ? ", and a grounded conductor is white or gray, or marked so at its ends"
            : ", and a grounded conductor smaller than 4 AWG is white or gray along its length");
}

Look grounded(const Conductor& conductor, const ColourText& colour) {
    if (colour.base == Hue::green) {
        return fails(keptFor(Hue::green));
    }
    const bool marked = isLarge(conductor) && colour.marking && isWhiteOrGray(*colour.marking);
    return colour.base == Hue::bare || isWhiteOrGray(colour.base) || marked
               ? Look{}
               : groundedByStripes(conductor, colour);
}

/// Said the other way round, yellow and green are the same conductor.
bool isGreen(const ColourText& colour) {
    if (!colour.stripes) {
        return colour.base == Hue::green;
    }
    const Stripes& stripes = *colour.stripes;
    return (colour.base == Hue::green && stripes.hue == Hue::yellow) ||
           (colour.base == Hue::yellow && stripes.hue == Hue::green && !stripes.count);
}

Look grounding(const Conductor& conductor, const ColourText& colour) {
    const bool marked = isLarge(conductor) && colour.marking == Hue::green;
    if (colour.base == Hue::bare || isGreen(colour) || marked) {
        return {};
    }
    const std::string asked = "is green, green with yellow stripes or bare";
    return fails(isLarge(conductor)
                     ? ", and an equipment grounding conductor " + asked + ", or marked green"
                     : ", and an equipment grounding conductor smaller than 4 AWG " + asked);
}

bool hasGroundedCorner(const System& system) {
    return system.voltsToGround && system.voltsToGround == system.voltsBetweenPhases;
}

Look ungrounded(const System& system, const ColourText& colour) {
    const bool byMarking = colour.marking && isKept(*colour.marking);
    const Hue hue = byMarking ? *colour.marking : colour.base;
    const std::string name = "system " + system.id.text();
    if (isWhiteOrGray(hue) && hasGroundedCorner(system)) {
        return hangsOn("which corner of " + name + " is grounded",
                       ", which is right for the grounded corner of " + name);
    }
    if (isKept(hue)) {
        return fails(keptFor(hue));
    }
    return colour.stripes && isKept(colour.stripes->hue)
               ? lookOf(Verdict::caution, keptFor(colour.stripes->hue))
               : Look{};
}

Rule ruleFor(Phase phase) {
    switch (phase) {
        case Phase::a:
        case Phase::b:
        case Phase::c:
            return Rule::ungroundedIdentification;
        case Phase::n:
            return Rule::groundedIdentification;
        case Phase::g:
            return Rule::groundingIdentification;
    }
    return Rule::ungroundedIdentification;
}

bool isPhase(Phase phase) {
    return ruleFor(phase) == Rule::ungroundedIdentification;
}

Look byCode(const Conductor& conductor, const System& system, const ColourText& colour) {
    switch (conductor.phase) {
        case Phase::a:
        case Phase::b:
        case Phase::c:
            return ungrounded(system, colour);
        case Phase::n:
            return grounded(conductor, colour);
        case Phase::g:
            return grounding(conductor, colour);
    }
    return {};
}

// ---- what is customary ----------------------------------------------------------------------

/// The system's name in the table of customary colours; empty where it has none.
struct CustomSystem {
    std::string_view name;
    std::string missing;  ///< what would tell
};

CustomSystem customSystem(const OfCircuit& group) {
    const System& system = group.system();
    if (!system.voltsBetweenPhases) {
        return {{}, "volts between phases of system " + system.id.text()};
    }
    if (hasGroundedCorner(system)) {
        return {};
    }
    switch (*system.voltsBetweenPhases) {
        case 208:
            return {"208Y/120 V 3-phase", {}};
        case 480:
            return {"480Y/277 V 3-phase", {}};
        case 240:
            break;
        default:
            return {};
    }
    if (!group.systemLinks().threePhases) {
        return {"120/240 V 1-phase", {}};
    }
    if (!system.voltsToGround) {
        return {{}, "volts to ground of system " + system.id.text()};
    }
    const bool highLeg = *system.voltsToGround == 120;
    return {highLeg ? "240/120 V 3-phase 4-wire delta" : std::string_view(), {}};
}

/// "phase B" and "line 2" are both phase B.
bool isRowOf(std::string_view conductor, Phase phase) {
    constexpr std::string_view kLines = "12";
    const std::string wanted = "phase " + std::string(layout::phaseText(phase));
    const std::size_t line = phase == Phase::a ? 0 : phase == Phase::b ? 1 : kLines.size();
    return conductor.substr(0, wanted.size()) == wanted ||
           (line < kLines.size() && conductor == "line " + std::string(kLines.substr(line, 1)));
}

std::optional<Custom> customFor(const Customs& customs,
                                std::string_view system,
                                const Conductor& conductor) {
    for (const Custom& row : customs) {
        if (row.value.system == system && isRowOf(row.value.conductor, conductor.phase)) {
            return row;
        }
    }
    return std::nullopt;
}

/// The high leg of a delta is the one custom that the code asks for, by orange or other means.
Look byCustom(const OfCircuit& group, const Conductor& conductor, const ColourText& colour) {
    const CustomSystem known = customSystem(group);
    if (!known.missing.empty()) {
        return hangsOn(known.missing,
                       ", and which colour is customary hangs on the volts of its system");
    }
    const auto custom = customFor(group.facts.colourCustoms, known.name, conductor);
    const Hue hue = colour.marking.value_or(colour.base);
    if (!custom || (custom->value.requiredByCode && !group.systemLinks().neutralDrawn) ||
        custom->value.colour.find(hueText(hue)) != std::string_view::npos) {
        return {};
    }
    const std::string asked =
        custom->value.requiredByCode ? "orange" : std::string(custom->value.colour);
    Look look = lookOf(Verdict::caution, ", where " + asked + " is customary");
    look.citation = custom->source;
    if (custom->value.requiredByCode) {
        look.why =
            ", and the high leg, customarily phase B, is " + asked + " or marked by other means";
        look.citation = sectionFor(group.built, Rule::highLeg);
    }
    return look;
}

// ---- two systems ----------------------------------------------------------------------------

/// What is seen of a conductor where it ends.
bool lookAlike(const ColourText& a, const ColourText& b) {
    const auto stripes = [](const ColourText& colour) {
        return colour.stripes ? std::optional(colour.stripes->hue) : std::nullopt;
    };
    return a.marking.value_or(a.base) == b.marking.value_or(b.base) && stripes(a) == stripes(b);
}

/// A neutral of another system in the gutter that looks the same.
std::optional<std::size_t> alikeElsewhere(const OfCircuit& group, const ColourText& colour) {
    const auto& systems = group.facts.links.systems;
    for (std::size_t system = 0; system < systems.size(); ++system) {
        if (system == group.systemIndex()) {
            continue;
        }
        for (const std::size_t i : systems[system].neutralsByColour) {
            const auto& other = group.built.layout.conductors[i];
            const auto seen = readColour(*other.colour);
            if (seen && other.insulation != standards::Insulation::bare &&
                lookAlike(colour, *seen)) {
                return i;
            }
        }
    }
    return std::nullopt;
}

/// Grounded conductors of different systems in one enclosure look different.
Look apartFromOthers(const OfCircuit& group, const ColourText& colour) {
    const auto other = alikeElsewhere(group, colour);
    if (!other) {
        return {};
    }
    const std::size_t circuit = group.facts.links.circuitOf[*other];
    Look look = fails(", as is " + conductorName(group.built, *other) + " of system " +
                      group.built.layout.circuits[circuit].system.text() +
                      ", and the neutrals of two systems in one enclosure have to look different");
    look.citation = sectionFor(group.built, Rule::groundedBySystem);
    return look;
}

// ---- one conductor, one circuit -------------------------------------------------------------

/// Bare conductors have no colour.
Look lookAtColour(const OfCircuit& group, std::size_t index) {
    const Conductor& conductor = group.built.layout.conductors[index];
    if (conductor.insulation == standards::Insulation::bare) {
        return {};
    }
    const std::string input = "colour of " + conductorName(group.built, index);
    if (!conductor.colour) {
        return hangsOn(input, ": its colour is not stated");
    }
    const auto colour = readColour(*conductor.colour);
    if (!colour) {
        return hangsOn(input + " in plain words",
                       ": what is stated of its colour is not understood");
    }
    Look look = byCode(conductor, group.system(), *colour);
    if (look.verdict == Verdict::meets && isPhase(conductor.phase)) {
        look = byCustom(group, conductor, *colour);
    }
    if (look.verdict == Verdict::meets && conductor.phase == Phase::n) {
        look = apartFromOthers(group, *colour);
    }
    look.why = " " + shown(conductor) + look.why;
    return look;
}

Look lookAt(const OfCircuit& group, std::size_t index) {
    const BuiltLayout& built = group.built;
    Look look = lookAtColour(group, index);
    look.conductor = index;
    if (!look.citation) {
        look.citation = sectionFor(built, ruleFor(built.layout.conductors[index].phase));
    }
    return look;
}

/// Each once; where there are many, how many.
std::vector<std::string> missingOf(const BuiltLayout& built,
                                   const OfCircuit& group,
                                   const std::vector<Look>& looks) {
    constexpr std::size_t kMost = 4;
    std::vector<std::string> missing;
    for (const Look& look : looks) {
        const bool told = std::find(missing.begin(), missing.end(), look.missing) != missing.end();
        if (!look.missing.empty() && !told) {
            missing.push_back(look.missing);
        }
    }
    return missing.size() <= kMost
               ? missing
               : std::vector<std::string>{"colours of " + std::to_string(missing.size()) +
                                          " conductors of " + circuitName(built, group.circuit)};
}

/// "A black, B red and N white", of the first conductor of each phase.
std::string coloursText(const BuiltLayout& built, const OfCircuit& group) {
    std::map<Phase, std::string> colours;
    for (const std::size_t i : group.conductors()) {
        const Conductor& one = built.layout.conductors[i];
        colours.try_emplace(one.phase, one.colour.value_or("bare"));
    }
    std::vector<std::string> words;
    for (const auto& [phase, colour] : colours) {
        words.push_back(std::string(layout::phaseText(phase)) + " " + colour);
    }
    constexpr std::size_t kMost = 130;  // bytes
    const std::string text = listed(words);
    return text.size() <= kMost ? text
                                : std::string("phases, neutral and ground can be told apart");
}

std::string workingFor(const BuiltLayout& built,
                       const OfCircuit& group,
                       const Look& worst,
                       std::size_t alike) {
    const std::string head = circuitName(built, group.circuit) + ": ";
    if (worst.verdict == Verdict::meets) {
        return head + coloursText(built, group);
    }
    return head + conductorName(built, worst.conductor) + worst.why +
           (alike > 1 ? " (and " + std::to_string(alike - 1) + " more like it)" : "");
}

std::vector<Look> looksAt(const OfCircuit& group) {
    std::vector<Look> looks;
    looks.reserve(group.conductors().size());
    for (const std::size_t i : group.conductors()) {
        looks.push_back(lookAt(group, i));
    }
    return looks;
}

Finding findingFor(const OfCircuit& group) {
    const BuiltLayout& built = group.built;
    const auto looks = looksAt(group);
    const auto worst =
        std::max_element(looks.begin(), looks.end(), [](const Look& a, const Look& b) {
            return gravity(a.verdict) < gravity(b.verdict);
        });
    Finding finding;
    finding.check = Check::colours;
    finding.verdict = worst->verdict;
    finding.subjects = {built.layout.circuits[group.circuit].id};
    for (const Look& look : looks) {
        if (look.verdict == worst->verdict && look.verdict != Verdict::meets) {
            finding.subjects.emplace_back(built.layout.conductors[look.conductor].id);
        }
    }
    finding.place = built.conductors[worst->conductor].built.path.start();
    finding.citation = given(worst->citation);
    finding.working = sentence(workingFor(built, group, *worst, finding.subjects.size() - 1));
    if (finding.verdict == Verdict::cannotTell) {
        finding.missing = missingOf(built, group, looks);
    }
    return finding;
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t circuit) {
    if (!facts.links.members[circuit].empty()) {
        findings.push_back(findingFor({built, facts, circuit}));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::circuit, reads::kBlocks, ofCircuit}});

}  // namespace

std::span<const Section> coloursSections() {
    return kSections;
}

std::vector<Finding> checkColours(const BuiltLayout& built) {
    return runChecks(built, {Check::colours});
}

}  // namespace gw::checks
