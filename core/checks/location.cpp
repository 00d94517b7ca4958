#include <algorithm>
#include <array>

#include "base/contract.h"
#include "checks/support.h"
#include "checks/units.h"

/// Blocks and conductors suit the place where the gutter hangs: dry, damp, wet or buried, and water
/// that may stand in it.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Readings;
using standards::Insulation;
using standards::Location;
using standards::Rule;

/// Insulations for wet locations. Source: NFPA 70 310.10(C) (THWN, THWN-2, XHHW, XHHW-2, THW, RHW
/// seen; TW, THHW, THW-2, RHW-2 from memory).
constexpr std::array kWetRated = {Insulation::thwn,
                                  Insulation::thwn2,
                                  Insulation::xhhw,
                                  Insulation::xhhw2,
                                  Insulation::tw,
                                  Insulation::thw,
                                  Insulation::thhw,
                                  Insulation::thw2,
                                  Insulation::rhw,
                                  Insulation::rhw2,
                                  Insulation::rhwNoCover,
                                  Insulation::rhw2NoCover};

/// Enclosure types that keep rain out. Source: NFPA 70 Table 110.28, from memory.
constexpr std::array<std::string_view, 10> kWeatherproof = {
    "3", "3R", "3S", "3X", "3RX", "3SX", "4", "4X", "6", "6P"};

constexpr const char* kWhetherItFloods = "whether the gutter floods";

/// What is asked of a thing in one location, and the answer.
struct Answer {
    Verdict verdict = Verdict::meets;
    std::string text;
    std::vector<std::string> missing{};
    std::vector<Reading> readings{};
};

/// How the inside of the gutter counts.
struct Inside {
    enum class Kind {
        notStated,    ///< the location is missing
        certain,      ///< `location`
        disputed,     ///< wet, or damp because the enclosure keeps the weather out
        typeMissing,  ///< certain or disputed: the enclosure type would tell
    };
    Kind kind = Kind::notStated;
    Location location = Location::dry;
    std::string why;  ///< empty: it is the location as stated
};

bool isWeatherproof(const std::string& type) {
    return std::find(kWeatherproof.begin(), kWeatherproof.end(), type) != kWeatherproof.end();
}

Inside insideWetPlace(const BuiltLayout& built) {
    const auto& gutter = built.gutter();
    if (gutter.article != standards::GutterArticle::auxiliaryGutter) {
        return {Inside::Kind::certain,
                Location::wet,
                "the inside of a raceway in a wet location is wet (" +
                    sectionFor(built, Rule::wetRaceway).section + ")"};
    }
    if (!gutter.enclosureType) {
        return {Inside::Kind::typeMissing, Location::wet, "the enclosure type is not stated"};
    }
    if (isWeatherproof(*gutter.enclosureType)) {
        return {Inside::Kind::disputed,
                Location::wet,
                "an auxiliary gutter is no raceway, and whether the inside of type " +
                    *gutter.enclosureType + " is wet is disputed"};
    }
    return {Inside::Kind::certain,
            Location::wet,
            "enclosure type " + *gutter.enclosureType + " does not keep the weather out"};
}

Inside insideOf(const BuiltLayout& built) {
    const auto& around = built.layout.surroundings;
    if (!around.location) {
        return {Inside::Kind::notStated, Location::dry, "the location is not stated"};
    }
    if (around.floods == true && *around.location != Location::buried) {
        return {Inside::Kind::certain, Location::wet, "water may stand in it"};
    }
    if (*around.location == Location::wet) {
        return insideWetPlace(built);
    }
    return {Inside::Kind::certain, *around.location, {}};
}

Reading readingOf(std::string name, const Answer& answer, bool chosen) {
    Reading reading;
    reading.name = std::move(name);
    reading.verdict = answer.verdict;
    reading.sentence = sentence(answer.text);
    reading.chosen = chosen;
    return reading;
}

/// Where it is not said whether water may stand in the gutter, what would not do in a wet place
/// cannot be told: not stated is not taken for no.
template <class Suits>
void unlessItFloods(Answer& answer, const BuiltLayout& built, const Suits& suits) {
    const bool wouldMatter = answer.verdict == Verdict::meets || answer.verdict == Verdict::caution;
    if (!built.layout.surroundings.floods.has_value() && wouldMatter &&
        suits(Location::wet).verdict != Verdict::meets) {
        answer.verdict = Verdict::cannotTell;
        answer.text += ", and whether water may stand in the gutter is not stated";
        answer.missing.emplace_back(kWhetherItFloods);
    }
}

/// Both readings of a weatherproof enclosure in a wet location.
template <class Suits>
Answer disputedAnswer(const BuiltLayout& built, const Suits& suits, const std::string& why) {
    const auto recorded = built.layout.readings.insideWeatherproof;
    const Answer wet = suits(Location::wet);
    const Answer damp = suits(Location::damp);
    Answer answer;
    answer.readings = {
        readingOf("the inside is wet", wet, recorded == Readings::InsideWeatherproof::wet),
        readingOf("the inside is no more than damp",
                  damp,
                  recorded == Readings::InsideWeatherproof::notWet)};
    answer.verdict = settle(answer.readings);
    answer.text = wet.text + "; " + why;
    if (answer.verdict == Verdict::cannotTell) {
        answer.missing = wet.missing.empty() ? damp.missing : wet.missing;
    }
    unlessItFloods(answer, built, suits);
    return answer;
}

template <class Suits>
Answer certainAnswer(const BuiltLayout& built, const Inside& inside, const Suits& suits) {
    Answer answer = suits(inside.location);
    answer.text += inside.why.empty() ? std::string() : "; " + inside.why;
    if (inside.location < Location::wet) {
        unlessItFloods(answer, built, suits);
    }
    return answer;
}

/// The answer for a thing whose answer in one certain location is suits(location).
template <class Suits>
Answer answerFor(const BuiltLayout& built, const Inside& inside, const Suits& suits) {
    switch (inside.kind) {
        case Inside::Kind::notStated:
            return {Verdict::cannotTell, inside.why, {"location of the gutter"}};
        case Inside::Kind::certain:
            return certainAnswer(built, inside, suits);
        case Inside::Kind::disputed:
            return disputedAnswer(built, suits, inside.why);
        case Inside::Kind::typeMissing:
            break;
    }
    Answer open = suits(Location::wet);
    const Answer weatherproof = disputedAnswer(built, suits, inside.why);
    if (open.verdict != weatherproof.verdict) {
        open.missing = {"enclosure type of the gutter"};
        open.verdict = Verdict::cannotTell;
    }
    open.text += "; " + inside.why;
    return open;
}

// ---- blocks ---------------------------------------------------------------------------------

/// A listing for a harder place covers the easier ones; direct burial is a listing of its own.
bool covers(Location listed, Location location) {
    if (listed == Location::buried || location == Location::buried) {
        return listed == location;
    }
    return listed >= location;
}

std::string placesText(const std::vector<Location>& locations) {
    std::vector<std::string> words;
    words.reserve(locations.size());
    for (const Location location : locations) {
        words.emplace_back(standards::locationText(location));
    }
    return listed(words);
}

Answer blockIn(const BuiltLayout& built, std::size_t block, Location location) {
    const auto& part = *built.blocks[block].part;
    const auto& places = part.listing.locations;
    const std::string here = std::string(standards::locationText(location)) + " location";
    if (places.empty()) {
        return {Verdict::cannotTell,
                "for which locations its part " + part.id.text() +
                    " is listed is not stated, and it is in a " + here,
                {"listed locations of part " + part.id.text()}};
    }
    const bool suits = std::any_of(
        places.begin(), places.end(), [&](Location listed) { return covers(listed, location); });
    return {suits ? Verdict::meets : Verdict::breach,
            "its part " + part.id.text() + " is listed for " + placesText(places) +
                " locations and is in a " + here};
}

/// Water that may stand in the gutter. Not stated is not taken for no, in a dry place either.
Answer underWater(const BuiltLayout& built, std::size_t block) {
    const auto& around = built.layout.surroundings;
    const auto& submersion = built.blocks[block].part->listing.temporarySubmersion;
    if (around.floods == false || submersion == true) {
        return {};
    }
    const std::string part = built.blocks[block].part->id.text();
    if (!around.floods) {
        return {Verdict::cannotTell,
                "whether water may stand in the gutter is not stated",
                {kWhetherItFloods}};
    }
    if (!submersion) {
        return {
            Verdict::cannotTell,
            "water may stand in the gutter, and whether the part is listed for that is not stated",
            {"temporary submersion of part " + part}};
    }
    return {Verdict::breach, "water may stand in the gutter, and the part is not listed for that"};
}

Finding blockFinding(const BuiltLayout& built, const Inside& inside, std::size_t block) {
    const Answer place = answerFor(
        built, inside, [&](Location location) { return blockIn(built, block, location); });
    const Answer water = underWater(built, block);
    Finding finding;
    finding.check = Check::location;
    finding.verdict = graver(place.verdict, water.verdict);
    finding.subjects = {built.layout.blocks[block].id};
    finding.place = built.blocks[block].body.centre();
    const bool buried = built.layout.surroundings.location == Location::buried;
    finding.citation =
        sectionFor(built, buried ? Rule::directBurial : Rule::listingAndInstructions);
    finding.readings = place.readings;
    finding.missing = place.missing;
    bool told = false;
    for (const auto& input : water.missing) {
        told = std::find(finding.missing.begin(), finding.missing.end(), input) !=
               finding.missing.end();
        if (!told) {
            finding.missing.push_back(input);
        }
    }
    finding.working = sentence(blockName(built, block) + ": " + place.text +
                               (water.text.empty() || told ? "" : "; " + water.text));
    return finding;
}

// ---- conductors -----------------------------------------------------------------------------

Answer conductorIn(const BuiltLayout& built, std::size_t conductor, Location location) {
    const auto& insulation = built.layout.conductors[conductor].insulation;
    const bool wet = location == Location::wet || location == Location::buried;
    const std::string here =
        location == Location::buried
            ? "buried, which is wet"  // Article 100: underground installations are wet locations
            : "in a " + std::string(standards::locationText(location)) + " place";
    if (!insulation) {
        return {Verdict::cannotTell,
                "its insulation is not stated and it is " + here,
                {"insulation of " + conductorName(built, conductor)}};
    }
    const std::string text = std::string(standards::insulationText(*insulation));
    if (*insulation == Insulation::bare) {
        return {Verdict::meets, "it is bare, with no insulation to be harmed, " + here};
    }
    const bool rated =
        std::find(kWetRated.begin(), kWetRated.end(), *insulation) != kWetRated.end();
    return {!wet || rated ? Verdict::meets : Verdict::breach,
            text + (rated ? " is" : " is not") + " for wet locations and it is " + here};
}

Finding conductorFinding(const BuiltLayout& built, const Inside& inside, std::size_t conductor) {
    const Answer answer = answerFor(
        built, inside, [&](Location location) { return conductorIn(built, conductor, location); });
    const auto& path = built.conductors[conductor].built.path;
    Finding finding;
    finding.check = Check::location;
    finding.verdict = answer.verdict;
    finding.subjects = {built.layout.conductors[conductor].id};
    finding.place = path.pointAt(path.length().in() / 2.0);
    finding.citation = sectionFor(built, Rule::wetInsulation);
    finding.readings = answer.readings;
    finding.missing = answer.missing;
    finding.working = sentence(conductorName(built, conductor) + ": " + answer.text);
    return finding;
}

void ofBlock(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts&,
             std::size_t block) {
    findings.push_back(blockFinding(built, insideOf(built), block));
}

void ofConductor(std::vector<Finding>& findings,
                 const BuiltLayout& built,
                 const Facts&,
                 std::size_t conductor) {
    findings.push_back(conductorFinding(built, insideOf(built), conductor));
}

constexpr auto kSections =
    std::to_array<Section>({{Unit::block, reads::kPaths | reads::kBlocks, ofBlock},
                            {Unit::conductor, reads::kPaths | reads::kBlocks, ofConductor}});

}  // namespace

std::span<const Section> locationSections() {
    return kSections;
}

std::vector<Finding> checkLocation(const BuiltLayout& built) {
    return runChecks(built, {Check::location});
}

}  // namespace gw::checks
