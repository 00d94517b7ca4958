#include <algorithm>
#include <cmath>

#include "checks/occupancy.h"
#include "checks/support.h"

/// At every port: no copper outside the mouth, no insulation under a screw, the tip past the last
/// screw, the strip as long as the connector asks; for a conductor passing
/// through, the window inside the bore and under every screw.
///
/// A screw is taken as wide as the bore (common practice, no source): parts state its place only.
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

/// The bore as the conductor meets it: lengths from its own mouth, inches.
struct Bore {
    std::size_t block = 0;
    std::size_t port = 0;
    double depth = 0.0;
    double firstScrew = 0.0;  ///< where the first screw's width begins
    double lastScrew = 0.0;   ///< where the last screw's width ends
    bool hasScrews = false;
};

Bore boreFrom(const BuiltLayout& built,
              std::size_t block,
              std::size_t port,
              const std::vector<double>& screws) {
    Bore bore{block, port, boreDepth(built, block, port)};
    const double half = built.blocks[block].part->ports[port].boreDiameter.in() / 2.0;
    bore.hasScrews = !screws.empty();
    if (bore.hasScrews) {
        // A screw close to the mouth or the stop is not asked to be wider than the bore is long.
        bore.firstScrew = std::max(0.0, screws.front() - half);
        bore.lastScrew = std::min(bore.depth, screws.back() + half);
    }
    return bore;
}

/// Whether another conductor's end comes from the other mouth of the same bore.
bool isFaced(const BuiltLayout& built, const Occupancy& occupancy, const BuiltEnd& end) {
    const auto& others = occupancy[given(end.block)][given(end.port)];
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
    Aspect aspect = judged(shown,
                           0.0,
                           Bound::atMost,
                           insulated(built),
                           showing > 0.0 ? inText(shown) + " of copper shows outside the mouth"
                                         : "no copper shows outside the mouth");
    if (aspect.verdict == Verdict::meets) {
        aspect.text = "no copper shows outside the mouth";
    }
    return aspect;
}

Aspect insulationUnderScrew(const BuiltLayout& built, const Bore& bore, double into) {
    const auto [measured, limit] = inTexts(std::max(0.0, into), bore.firstScrew);
    return judged(
        std::max(0.0, into),
        bore.firstScrew,
        Bound::atMost,
        instructions(built),
        "insulation goes " + measured + " into the bore and the screw begins at " + limit);
}

Aspect tipPastScrew(const BuiltLayout& built, const Bore& bore, double inserted) {
    const auto [measured, limit] = inTexts(inserted, bore.lastScrew);
    return judged(inserted,
                  bore.lastScrew,
                  Bound::atLeast,
                  instructions(built),
                  "the tip is " + measured + " in and has to be past the last screw, " + limit);
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
    const std::string text = measured + " is stripped and the port asks for " + wanted;
    const bool exact = holds(inches(off), inches(0.0), Bound::atMost);
    if (!port.stripTolerance && !exact) {
        return unknown(instructions(built),
                       "strip tolerance of " + name,
                       text + " with a tolerance not stated");
    }
    const double tolerance = port.stripTolerance ? port.stripTolerance->in() : 0.0;
    Aspect aspect = judged(off, tolerance, Bound::atMost, instructions(built), {});
    aspect.text = text + (port.stripTolerance ? " within " + inText(tolerance) : "");
    aspect.measured = inches(strip);
    aspect.limit = inches(strip < asked ? asked - tolerance : asked + tolerance);
    return aspect;
}

Aspect noScrews(const BuiltLayout& built, const Bore& bore) {
    const std::string name = portName(built, bore.block, bore.port);
    return unknown(
        instructions(built), "screws of " + name, "where " + name + " has its screw is not stated");
}

std::vector<Aspect> aspectsOfEnd(const BuiltLayout& built,
                                 std::size_t conductor,
                                 const BuiltEnd& end,
                                 const Bore& bore) {
    const auto insulation = built.layout.conductors[conductor].insulation;
    std::vector<Aspect> aspects;
    const bool isBare = insulation == standards::Insulation::bare;
    if (!isBare && !end.strip) {
        const std::string where =
            conductorName(built, conductor) + " in " + portName(built, bore.block, bore.port);
        aspects = {unknown(insulated(built), "strip of " + where, "the strip is not stated")};
    } else if (!isBare) {
        aspects = {copperShowing(built, *end.strip - end.inserted),
                   stripAsAsked(built, bore, *end.strip)};
        if (bore.hasScrews) {
            aspects.push_back(insulationUnderScrew(built, bore, end.inserted - *end.strip));
        }
    }
    aspects.push_back(bore.hasScrews ? tipPastScrew(built, bore, end.inserted)
                                     : noScrews(built, bore));
    return aspects;
}

Aspect windowUnderScrew(const BuiltLayout& built, const Bore& bore, double from, double to) {
    // The worse of the two sides: by how much the window falls short of the screws' width.
    const double shortBy = std::max({0.0, from - bore.firstScrew, bore.lastScrew - to});
    return judged(shortBy,
                  0.0,
                  Bound::atMost,
                  instructions(built),
                  "the window lies from " + inText(from) + " to " + inText(to) +
                      " and the screws from " + inText(bore.firstScrew) + " to " +
                      inText(bore.lastScrew));
}

std::vector<Aspect> aspectsOfPass(const BuiltLayout& built,
                                  std::size_t conductor,
                                  const BuiltPass& pass,
                                  const Bore& bore) {
    const auto insulation = built.layout.conductors[conductor].insulation;
    if (insulation == standards::Insulation::bare) {
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
    aspects.push_back(bore.hasScrews ? windowUnderScrew(built, bore, from, to)
                                     : noScrews(built, bore));
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
    Finding finding = end.intoClosedMouth ? closedMouth(built, conductor, end)
                                          : findingFrom(aspectsOfEnd(built, conductor, end, bore),
                                                        conductorName(built, conductor) + " in " +
                                                            portName(built, bore.block, bore.port));
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

}  // namespace

std::vector<Finding> checkExposedCopper(const BuiltLayout& built) {
    const Occupancy occupancy = occupancyOf(built);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& conductor = built.conductors[i];
        for (const BuiltEnd* end : {&conductor.from, &conductor.to}) {
            if (end->kind == BuiltEnd::Kind::port) {
                findings.push_back(endFinding(built, occupancy, i, *end));
            }
        }
        for (const BuiltPass& pass : conductor.passes) {
            findings.push_back(passFinding(built, i, pass));
        }
    }
    return findings;
}

}  // namespace gw::checks
