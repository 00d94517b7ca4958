#include "checks/circuit_ampacity.h"

#include <algorithm>
#include <limits>

#include "base/tolerance.h"
#include "checks/entry_users.h"
#include "checks/facts.h"
#include "checks/run_length.h"
#include "checks/support.h"
#include "standards/tables.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;
using standards::Insulation;
using standards::Location;

bool isPhase(Phase phase) {
    return phase == Phase::a || phase == Phase::b || phase == Phase::c;
}

// ---- one conductor --------------------------------------------------------------------------

/// Degrees Celsius the insulation stands, in the worst and the best place it may be in. Source:
/// NFPA 70 Table 310.4(A), from memory. Empty for bare.
struct Stands {
    int wet;
    int damp;
    int dry;
};
std::optional<Stands> standsOf(Insulation insulation) {
    switch (insulation) {
        case Insulation::tw:
            return Stands{60, 60, 60};
        case Insulation::thw:
        case Insulation::thwn:
        case Insulation::rhw:
        case Insulation::rhwNoCover:
            return Stands{75, 75, 75};
        case Insulation::thhw:
            return Stands{75, 75, 90};
        case Insulation::xhhw:
            return Stands{75, 90, 90};
        case Insulation::thhn:
        case Insulation::xhh:
        case Insulation::rhh:
        case Insulation::rhhNoCover:  // none of the four is for wet places: judged there
        case Insulation::thwn2:
        case Insulation::thw2:
        case Insulation::rhw2:
        case Insulation::rhw2NoCover:
        case Insulation::xhhw2:
            return Stands{90, 90, 90};
        case Insulation::bare:
            break;
    }
    return std::nullopt;
}

/// Reckons one conductor, with everything that is not stated taken well or badly.
struct Reckoning {
    const BuiltLayout& built;
    const Facts& facts;
    std::size_t conductor;
    bool kindly;
    std::vector<std::string> doubts{};

    const layout::Conductor& meant() const { return built.layout.conductors[conductor]; }
    const layout::Circuit& circuit() const {
        return built.layout.circuits[facts.links.circuitOf[conductor]];
    }
};

int standsHere(Reckoning& at) {
    const Stands stands = given(standsOf(given(at.meant().insulation)));
    const auto& around = at.built.layout.surroundings;
    if (stands.wet == stands.dry) {
        return stands.dry;
    }
    if (!around.location || (!around.floods && *around.location < Location::wet)) {
        at.doubts.emplace_back(around.location ? "whether the gutter floods"
                                               : "location of the gutter");
        return at.kindly ? stands.dry : stands.wet;
    }
    const bool wet = around.floods == true || *around.location >= Location::wet;
    return wet ? stands.wet : *around.location == Location::damp ? stands.damp : stands.dry;
}

/// How many current-carrying conductors an adjustment is for; 0 where none is made.
int adjustedFor(Reckoning& at) {
    const auto pick = [&](const CurrentCarrying::Count& count, int above) {
        if (count.withNeutrals > above && count.withNeutrals != count.without) {
            at.doubts.emplace_back("which neutrals carry only the unbalance");
        }
        const int used = at.kindly ? count.without : count.withNeutrals;
        return used > above ? used : 0;
    };
    const auto& gutter = at.built.gutter();
    const bool nonmetallic = gutter.material == layout::GutterMaterial::nonmetallic ||
                             gutter.article == standards::GutterArticle::nonmetallicWireway;
    constexpr int kInMetal = 30;   // NFPA 70 366.23(A), 376.22(B)
    constexpr int kElsewhere = 3;  // 366.23(B), 378.22, and 310.15(C)(1) for raceways
    int most = pick(at.facts.carrying.besides(at.conductor), nonmetallic ? kElsewhere : kInMetal);
    for (const std::size_t entry : entriesOf(at.built.conductors[at.conductor])) {
        constexpr double kNipple = 24.0;  // inches; NFPA 70 310.15(C)(1)(b)
        const auto& length = at.built.layout.entries[entry].racewayLength;
        if (length && length->in() <= kNipple + kLimitSlack) {
            continue;
        }
        const int here = pick(at.facts.carrying.inRaceway(entry), kElsewhere);
        if (here > 0 && !length) {
            const auto inputs = racewayLengthsOf(at.built, {entry});
            at.doubts.insert(at.doubts.end(), inputs.begin(), inputs.end());
        }
        most = std::max(most, !length && at.kindly ? 0 : here);
    }
    return most;
}

int columnUpTo(int celsius) {
    return celsius >= 90 ? 90 : celsius >= 75 ? 75 : 60;
}

/// What 110.14(C)(1) takes where the equipment is not marked.
int unmarked(const Reckoning& at) {
    const auto& device = at.circuit().deviceAmperes;
    const bool small = at.meant().size <= units::WireSize::of("1");
    return small || !device || *device <= 100.0 ? 60 : 75;
}

int atBlock(Reckoning& at, std::size_t block) {
    const auto& part = *at.built.blocks[block].part;
    if (part.listing.celsius) {
        return columnUpTo(*part.listing.celsius);
    }
    at.doubts.push_back("listed temperature of part " + part.id.text());
    return at.kindly ? 90 : 60;
}

/// The equipment beyond an entry, whose marking the layout does not state.
int beyond(Reckoning& at) {
    const int assumed = unmarked(at);
    if (assumed < 75) {
        at.doubts.push_back("temperature marked on the terminals of circuit " +
                            at.circuit().id.text());
    }
    return at.kindly ? 75 : assumed;
}

/// The lowest terminal along the conductor.
int terminalColumn(Reckoning& at) {
    const auto& built = at.built.conductors[at.conductor];
    int lowest = 90;
    for (const auto* end : {&built.from, &built.to}) {
        if (end->kind == geometry::BuiltEnd::Kind::port) {
            lowest = std::min(lowest, atBlock(at, given(end->block)));
        } else if (end->kind == geometry::BuiltEnd::Kind::entry) {
            lowest = std::min(lowest, beyond(at));
        }
    }
    for (const auto& pass : built.passes) {
        lowest = std::min(lowest, atBlock(at, pass.block));
    }
    return lowest;
}

double tableAmperes(const Reckoning& at, int celsius) {
    const auto found = standards::ampacity(
        at.meant().size, given(at.meant().metal), celsius, at.built.layout.edition);
    return found ? found->value : 0.0;
}

struct Reckoned {
    double amperes = 0.0;
    int insulation = 0;  ///< degrees Celsius it stands here
    int column = 0;      ///< and what the terminals leave of it
    double inTable = 0.0;
    double warm = 0.0;
    double crowd = 1.0;
    int count = 0;  ///< carrying; 0: no adjustment
    double cap = 0.0;
};

Reckoned reckon(Reckoning& at) {
    const auto edition = at.built.layout.edition;
    Reckoned found;
    found.insulation = standsHere(at);
    const double ambient = given(at.built.layout.surroundings.ambientCelsius);
    const auto forAmbient = standards::ambientFactor(ambient, found.insulation, edition);
    found.warm = forAmbient ? forAmbient->value : 0.0;  // no factor: not permitted there
    found.count = adjustedFor(at);
    if (found.count > 0) {
        found.crowd = standards::adjustmentFactor(found.count, edition)->value;
    }
    found.column = std::min(found.insulation, terminalColumn(at));
    found.inTable = tableAmperes(at, found.insulation);
    found.cap = found.column == found.insulation ? found.inTable : tableAmperes(at, found.column);
    found.amperes = std::min(found.inTable * found.warm * found.crowd, found.cap);
    return found;
}

std::string factorText(double factor) {
    return units::formatDecimal(factor, 2);
}

std::string workingOf(const BuiltLayout& built, std::size_t conductor, const Reckoned& reckoned) {
    const auto& meant = built.layout.conductors[conductor];
    const double ambient = given(built.layout.surroundings.ambientCelsius);
    std::string text =
        meant.size.text() + " " + std::string(standards::metalText(given(meant.metal))) + ", " +
        ampereText(reckoned.inTable) + " at " + std::to_string(reckoned.insulation) + " °C x " +
        factorText(reckoned.warm) + " (" + units::formatDecimal(ambient, 1) + " °C)";
    if (reckoned.count > 0) {
        text += " x " + factorText(reckoned.crowd) + " (" + std::to_string(reckoned.count) +
                " carrying)";
    }
    return text + ", terminals " + std::to_string(reckoned.column) + " °C " +
           ampereText(reckoned.cap);
}

/// Facts without which nothing is known of a conductor.
std::vector<std::string> lacking(const BuiltLayout& built, std::size_t conductor) {
    const auto& meant = built.layout.conductors[conductor];
    std::vector<std::string> missing;
    if (!meant.metal) {
        missing.push_back("metal of " + conductorName(built, conductor));
    }
    if (!meant.insulation || !standsOf(*meant.insulation)) {
        missing.push_back("insulation of " + conductorName(built, conductor));
    }
    if (!built.layout.surroundings.ambientCelsius) {
        missing.emplace_back("ambient temperature");
    }
    return missing;
}

double reckonedWell(const BuiltLayout& built, const Facts& facts, std::size_t conductor) {
    Reckoning well{built, facts, conductor, true};
    return reckon(well).amperes;
}

void addOnce(std::vector<std::string>& all, const std::vector<std::string>& more) {
    for (const std::string& one : more) {
        if (std::find(all.begin(), all.end(), one) == all.end()) {
            all.push_back(one);
        }
    }
}

}  // namespace

CircuitAmpacity circuitAmpacity(const BuiltLayout& built, const Facts& facts, std::size_t circuit) {
    CircuitAmpacity sum;
    double least = std::numeric_limits<double>::infinity();
    double most = least;
    Reckoned lowest;
    for (const std::size_t i : facts.links.members[circuit]) {
        if (!isPhase(built.layout.conductors[i].phase)) {
            continue;
        }
        if (!sum.conductor) {
            sum.conductor = i;
        }
        const auto lacks = lacking(built, i);
        addOnce(sum.missing, lacks);
        if (!lacks.empty()) {
            continue;
        }
        Reckoning badly{built, facts, i, false};
        const Reckoned low = reckon(badly);
        const double high = badly.doubts.empty() ? low.amperes : reckonedWell(built, facts, i);
        most = std::min(most, high);
        addOnce(sum.doubts, badly.doubts);
        if (low.amperes < least) {
            least = low.amperes;
            sum.conductor = i;
            lowest = low;
        }
    }
    if (!sum.conductor || !sum.missing.empty()) {
        return sum;
    }
    sum.working = workingOf(built, *sum.conductor, lowest);
    const int sets = built.layout.circuits[circuit].sets;
    sum.least = least * sets;
    sum.most = most * sets;
    sum.working += sets > 1 ? "; " + std::to_string(sets) + " sets" : "";
    return sum;
}

Quantity amperes(double value) {
    return {value, Quantity::Unit::amperes};
}

std::string ampereText(double value) {
    return toText(amperes(value));
}

}  // namespace gw::checks
