#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "checks/support.h"
#include "checks/units.h"

/// At every port: no copper outside the mouth, no insulation under a screw, the tip past the last
/// screw, the strip as long as the connector asks; for a conductor passing through, the window
/// inside the bore and under every screw.
///
/// Parts state where a screw is and not how wide. What is clear of a screw as wide as the bore is
/// clear of it; what does not reach past its middle is not; between the two it cannot be told,
/// unless the conductor is stripped as the part asks and pushed to the stop.
///
/// An end whose insertion the layout does not state is pushed to the stop, as the layout's format
/// says, and the finding says so. A bore open at both mouths has no stop: then only what holds
/// however far the end is pushed in can be told.
namespace gw::checks {
namespace {

using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::BuiltPass;
using standards::Citation;

/// One thing that is judged at an end or pass.
struct Aspect {
    Verdict verdict = Verdict::meets;
    Quantity measured;
    Quantity limit;
    Quantity margin;
    Citation citation;
    std::string text;
    std::vector<std::string> missing;
};

Aspect judged(double measured, double limit, Bound bound, Citation citation, std::string text) {
    Aspect aspect;
    aspect.measured = inches(measured);
    aspect.limit = inches(limit);
    aspect.margin = marginOf(aspect.measured, aspect.limit, bound);
    aspect.verdict = holds(aspect.measured, aspect.limit, bound) ? Verdict::meets : Verdict::breach;
    aspect.citation = std::move(citation);
    aspect.text = std::move(text);
    return aspect;
}

Aspect unknown(Citation citation, std::string missing, std::string text) {
    Aspect aspect;
    aspect.verdict = Verdict::cannotTell;
    aspect.citation = std::move(citation);
    aspect.missing = {std::move(missing)};
    aspect.text = std::move(text);
    return aspect;
}

/// Where one screw bears, along the bore from the conductor's own mouth, inches.
struct Bearing {
    double from = 0.0;  ///< as wide as the bore at the most, and no wider than the bore is long
    double middle = 0.0;
    double to = 0.0;
};

/// The bore as the conductor meets it: lengths from its own mouth, inches.
struct Bore {
    std::size_t block = 0;
    std::size_t port = 0;
    double depth = 0.0;
    std::vector<Bearing> screws;  ///< first to last
};

Bore boreFrom(const BuiltLayout& built,
              std::size_t block,
              std::size_t port,
              const std::vector<double>& screws) {
    Bore bore{block, port, boreDepth(built, block, port), {}};
    const double half = built.blocks[block].part->ports[port].boreDiameter.in() / 2.0;
    for (const double middle : screws) {
        bore.screws.push_back(
            {std::max(0.0, middle - half), middle, std::min(bore.depth, middle + half)});
    }
    return bore;
}

/// Whether another conductor's end comes from the other mouth of the same bore.
bool isFaced(const BuiltLayout& built, const Occupancy& occupancy, const BuiltEnd& end) {
    const auto others = occupancy.of(given(end.block), given(end.port));
    return std::any_of(others.begin(), others.end(), [&](const Occupant& other) {
        const BuiltEnd* facing = endOf(built, other);
        return facing != nullptr && entersFar(built, *facing) != entersFar(built, end);
    });
}

/// Screws this end has to be under, from its own mouth: all, or those of its own half where another
/// conductor comes from the other side (all again where its half has none: then it is not clamped).
std::vector<double> screwsFor(const BuiltLayout& built,
                              const Occupancy& occupancy,
                              const BuiltEnd& end) {
    auto screws = screwsAlongBore(built, given(end.block), given(end.port));
    const double depth = boreDepth(built, given(end.block), given(end.port));
    if (entersFar(built, end)) {
        for (double& screw : screws) {
            screw = depth - screw;
        }
        std::reverse(screws.begin(), screws.end());
    }
    if (!isFaced(built, occupancy, end)) {
        return screws;
    }
    std::vector<double> own;
    std::copy_if(screws.begin(), screws.end(), std::back_inserter(own), [&](double screw) {
        return screw <= depth / 2.0;
    });
    return own.empty() ? screws : own;
}

Citation instructions(const BuiltLayout& built) {
    Citation citation = sectionFor(built, standards::Rule::listingAndInstructions);
    citation.note = "by the data of the part";
    return citation;
}

Citation insulated(const BuiltLayout& built) {
    return sectionFor(built, standards::Rule::splicesInsulated);
}

Aspect copperShowing(const BuiltLayout& built, double showing) {
    const double shown = std::max(0.0, showing);
    Aspect aspect = judged(shown, 0.0, Bound::atMost, insulated(built), "no copper shows");
    if (aspect.verdict == Verdict::breach) {
        aspect.text = inText(shown) + " of copper shows outside the mouth";
    }
    return aspect;
}

/// Clear of the screw at its widest, or not even past its middle: between the two it is not known.
void leaveToWidth(Aspect& aspect, const BuiltLayout& built, const Bore& bore, bool pastMiddle) {
    if (aspect.verdict == Verdict::breach && pastMiddle) {
        aspect.verdict = Verdict::cannotTell;
        aspect.missing = {"width of the screws of " + portName(built, bore.block, bore.port)};
    }
}

Aspect insulationUnderScrew(const BuiltLayout& built, const Bore& bore, double into) {
    const Bearing& first = bore.screws.front();
    const auto [measured, limit] = inTexts(std::max(0.0, into), first.from);
    Aspect aspect = judged(std::max(0.0, into),
                           first.from,
                           Bound::atMost,
                           instructions(built),
                           "insulation to " + measured + ", screw from " + limit);
    leaveToWidth(aspect, built, bore, !atLeast(into, first.middle));
    return aspect;
}

Aspect tipPastScrew(const BuiltLayout& built, const Bore& bore, double inserted) {
    const Bearing& last = bore.screws.back();
    const auto [measured, limit] = inTexts(inserted, last.to);
    Aspect aspect = judged(inserted,
                           last.to,
                           Bound::atLeast,
                           instructions(built),
                           "tip at " + measured + ", screw to " + limit);
    leaveToWidth(aspect, built, bore, !atMost(inserted, last.middle));
    return aspect;
}

Aspect stripAsAsked(const BuiltLayout& built, const Bore& bore, double strip) {
    const auto& port = built.blocks[bore.block].part->ports[bore.port];
    const std::string name = portName(built, bore.block, bore.port);
    if (!port.stripLength) {
        return unknown(instructions(built),
                       "strip length of " + name,
                       "the strip length " + name + " asks for is not stated");
    }
    const double asked = port.stripLength->in();
    const double off = std::abs(strip - asked);
    const auto [measured, wanted] = inTexts(strip, asked);
    const std::string text = "strip " + measured + ", asked " + wanted;
    const bool exact = holds(inches(off), inches(0.0), Bound::atMost);
    if (!port.stripTolerance && !exact) {
        return unknown(
            instructions(built), "strip tolerance of " + name, text + " ± a tolerance not stated");
    }
    const double tolerance = port.stripTolerance ? port.stripTolerance->in() : 0.0;
    Aspect aspect = judged(off, tolerance, Bound::atMost, instructions(built), {});
    aspect.text = text + (port.stripTolerance ? " ± " + inText(tolerance) : "");
    aspect.measured = inches(strip);
    aspect.limit = inches(strip < asked ? asked - tolerance : asked + tolerance);
    return aspect;
}

Aspect noScrews(const BuiltLayout& built, const Bore& bore) {
    const std::string name = portName(built, bore.block, bore.port);
    return unknown(
        instructions(built), "screws of " + name, "where " + name + " has its screw is not stated");
}

/// One end in its bore. insertionKnown: stated, or the bore has a stop.
struct Seat {
    std::size_t conductor = 0;
    const BuiltEnd& end;
    const Bore& bore;
    bool insertionKnown = true;
};

bool isBare(const BuiltLayout& built, std::size_t conductor) {
    return built.layout.conductors[conductor].insulation == standards::Insulation::bare;
}

std::string seatName(const BuiltLayout& built, const Seat& seat) {
    return conductorName(built, seat.conductor) + " in " +
           portName(built, seat.bore.block, seat.bore.port);
}

std::vector<Aspect> aspectsAt(const BuiltLayout& built, const Seat& seat, double inserted) {
    std::vector<Aspect> aspects;
    const auto& strip = seat.end.strip;
    const bool clothed = !isBare(built, seat.conductor);
    bool asInstructed = false;
    if (clothed && !strip) {
        aspects = {unknown(
            insulated(built), "strip of " + seatName(built, seat), "the strip is not stated")};
    } else if (clothed) {
        aspects = {copperShowing(built, *strip - inserted), stripAsAsked(built, seat.bore, *strip)};
        asInstructed =
            aspects.back().verdict == Verdict::meets && atLeast(inserted, seat.bore.depth);
    }
    if (seat.bore.screws.empty()) {
        aspects.push_back(noScrews(built, seat.bore));
        return aspects;
    }
    if (clothed && strip) {
        aspects.push_back(insulationUnderScrew(built, seat.bore, inserted - *strip));
        if (asInstructed && aspects.back().verdict == Verdict::cannotTell) {
            aspects.back().verdict = Verdict::meets;
            aspects.back().missing.clear();
        }
    }
    aspects.push_back(tipPastScrew(built, seat.bore, inserted));
    return aspects;
}

/// How far to push in an end whose insertion is not known, so that it does best: until no copper
/// shows and the tip is past the last screw, if the bore is deep enough.
double bestInsertion(const Seat& seat) {
    const double pastScrews = seat.bore.screws.empty() ? 0.0 : seat.bore.screws.back().to;
    return std::min(seat.bore.depth, std::max(seat.end.strip.value_or(0.0), pastScrews));
}

std::vector<Aspect> aspectsOfEnd(const BuiltLayout& built, const Seat& seat) {
    if (seat.insertionKnown) {
        return aspectsAt(built, seat, seat.end.inserted);
    }
    auto aspects = aspectsAt(built, seat, bestInsertion(seat));
    aspects.push_back(unknown(insulated(built),
                              "insertion of " + seatName(built, seat),
                              "how far it is pushed in is not stated, and the bore has no stop"));
    return aspects;
}

/// The worse of the two sides: by how much the window falls short of the screws' width.
Aspect windowUnderScrew(const BuiltLayout& built, const Bore& bore, double from, double to) {
    const Bearing& first = bore.screws.front();
    const Bearing& last = bore.screws.back();
    Aspect aspect = judged(std::max({0.0, from - first.from, last.to - to}),
                           0.0,
                           Bound::atMost,
                           instructions(built),
                           "window " + inText(from) + " to " + inText(to) + ", screws " +
                               inText(first.from) + " to " + inText(last.to));
    leaveToWidth(aspect, built, bore, !atLeast(from, first.middle) && !atMost(to, last.middle));
    return aspect;
}

std::vector<Aspect> aspectsOfPass(const BuiltLayout& built,
                                  std::size_t conductor,
                                  const BuiltPass& pass,
                                  const Bore& bore) {
    if (isBare(built, conductor)) {
        Aspect aspect = copperShowing(built, 0.0);
        aspect.text = "a bare conductor needs no window";
        return {aspect};
    }
    if (!pass.window) {
        const std::string where =
            conductorName(built, conductor) + " through " + portName(built, bore.block, bore.port);
        return {unknown(insulated(built), "strip window of " + where, "the window is not stated")};
    }
    const auto [from, to] = *pass.window;
    std::vector<Aspect> aspects = {copperShowing(built, std::max(-from, to - bore.depth))};
    aspects.push_back(bore.screws.empty() ? noScrews(built, bore)
                                          : windowUnderScrew(built, bore, from, to));
    return aspects;
}

/// Breaches first, the greatest first; then what cannot be told; then what meets.
void sortWorstFirst(std::vector<Aspect>& aspects) {
    std::stable_sort(aspects.begin(), aspects.end(), [&](const Aspect& a, const Aspect& b) {
        if (a.verdict != b.verdict) {
            return gravity(a.verdict) > gravity(b.verdict);
        }
        return a.verdict == Verdict::breach && a.margin.value < b.margin.value;
    });
}

Finding findingFrom(std::vector<Aspect> aspects, const std::string& head) {
    sortWorstFirst(aspects);
    const Aspect& worst = aspects.front();
    Finding finding;
    finding.check = Check::exposedCopper;
    finding.verdict = worst.verdict;
    finding.citation = worst.citation;
    if (worst.verdict != Verdict::cannotTell) {
        finding.measured = worst.measured;
        finding.limit = worst.limit;
        finding.margin = worst.margin;
    }
    std::string text;
    for (const Aspect& aspect : aspects) {
        // What is right beside something that is not would only make the sentence long.
        if (aspect.verdict == Verdict::meets && finding.verdict != Verdict::meets) {
            continue;
        }
        text += (text.empty() ? "" : "; ") + aspect.text;
        finding.missing.insert(finding.missing.end(), aspect.missing.begin(), aspect.missing.end());
    }
    finding.working = sentence(head + ": " + text);
    return finding;
}

Finding closedMouth(const BuiltLayout& built, std::size_t conductor, const BuiltEnd& end) {
    const std::string port = portName(built, given(end.block), given(end.port));
    return findingFrom({unknown(instructions(built),
                                "open mouth of " + port,
                                "which of its mouths is open and which capped is not stated")},
                       conductorName(built, conductor) + " in " + port);
}

Finding endFinding(const BuiltLayout& built,
                   const Occupancy& occupancy,
                   std::size_t conductor,
                   const BuiltEnd& end) {
    const Bore bore =
        boreFrom(built, given(end.block), given(end.port), screwsFor(built, occupancy, end));
    const Seat seat{conductor, end, bore, insertionKnown(built, conductor, end)};
    const bool toTheStop = seat.insertionKnown && !insertionStated(built, conductor, end);
    Finding finding = end.intoClosedMouth
                          ? closedMouth(built, conductor, end)
                          : findingFrom(aspectsOfEnd(built, seat),
                                        seatName(built, seat) + (toTheStop ? ", to the stop" : ""));
    finding.subjects = {built.layout.conductors[conductor].id,
                        built.layout.blocks[given(end.block)].id};
    finding.place = end.mouth;
    return finding;
}

Finding passFinding(const BuiltLayout& built, std::size_t conductor, const BuiltPass& pass) {
    const Bore bore =
        boreFrom(built, pass.block, pass.port, screwsAlongBore(built, pass.block, pass.port));
    Finding finding = findingFrom(
        aspectsOfPass(built, conductor, pass, bore),
        conductorName(built, conductor) + " through " + portName(built, bore.block, bore.port));
    finding.subjects = {built.layout.conductors[conductor].id, built.layout.blocks[pass.block].id};
    finding.place = built.blocks[pass.block].ports[pass.port].mouth;
    return finding;
}

void ofConductor(std::vector<Finding>& findings,
                 const BuiltLayout& built,
                 const Facts& facts,
                 std::size_t index) {
    const auto& conductor = built.conductors[index];
    for (const BuiltEnd* end : {&conductor.from, &conductor.to}) {
        if (end->kind == BuiltEnd::Kind::port) {
            findings.push_back(endFinding(built, facts.occupancy, index, *end));
        }
    }
    for (const BuiltPass& pass : conductor.passes) {
        findings.push_back(passFinding(built, index, pass));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::conductor, reads::kPaths, ofConductor}});

}  // namespace

std::span<const Section> exposedCopperSections() {
    return kSections;
}

std::vector<Finding> checkExposedCopper(const BuiltLayout& built) {
    return runChecks(built, {Check::exposedCopper});
}

}  // namespace gw::checks
