#include "checks/landing_order.h"

#include <algorithm>
#include <array>
#include <deque>
#include <iterator>
#include <numeric>
#include <tuple>

#include "checks/diameters.h"
#include "checks/support.h"
#include "checks/units.h"

/// Whether conductors can be laid in and landed one after the other, from the back to the cover,
/// none in the way of the place or the screw of a later one.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;

// ---- the order ------------------------------------------------------------------------------

using Lists = std::vector<std::vector<std::size_t>>;

Lists linked(std::size_t count, const std::vector<LandingConstraint>& constraints, bool forward) {
    Lists links(count);
    for (const LandingConstraint& one : constraints) {
        links[forward ? one.first : one.second].push_back(forward ? one.second : one.first);
    }
    return links;
}

/// Everything that is reached from a node and not seen yet, each after all it leads to.
void visit(const Lists& links,
           std::size_t start,
           std::vector<bool>& seen,
           std::vector<std::size_t>& finished) {
    std::vector<std::pair<std::size_t, std::size_t>> path;  // node, its next link
    if (!seen[start]) {
        seen[start] = true;
        path.emplace_back(start, 0);
    }
    while (!path.empty()) {
        const std::size_t node = path.back().first;
        if (path.back().second == links[node].size()) {
            finished.push_back(node);
            path.pop_back();
            continue;
        }
        const std::size_t next = links[node][path.back().second++];
        if (!seen[next]) {
            seen[next] = true;
            path.emplace_back(next, 0);
        }
    }
}

/// Conductors that block one another all round, and single ones: each after all that come before
/// it. By Kosaraju's two walks.
Lists components(std::size_t count, const std::vector<LandingConstraint>& constraints) {
    const Lists after = linked(count, constraints, true);
    const Lists before = linked(count, constraints, false);
    std::vector<bool> seen(count, false);
    std::vector<std::size_t> finished;
    for (std::size_t i = 0; i < count; ++i) {
        visit(after, i, seen, finished);
    }
    seen.assign(count, false);
    Lists found;
    for (auto last = finished.rbegin(); last != finished.rend(); ++last) {
        std::vector<std::size_t> members;
        visit(before, *last, seen, members);
        if (!members.empty()) {
            found.push_back(std::move(members));
        }
    }
    return found;
}

/// How many rounds come before each component, by its place in the list.
std::vector<std::size_t> roundsOf(const Lists& components,
                                  const std::vector<std::size_t>& componentOf,
                                  const std::vector<LandingConstraint>& constraints) {
    const Lists after = linked(componentOf.size(), constraints, true);
    std::vector<std::size_t> rounds(components.size(), 0);
    for (std::size_t i = 0; i < components.size(); ++i) {
        for (const std::size_t member : components[i]) {
            for (const std::size_t follower : after[member]) {
                const std::size_t next = componentOf[follower];
                if (next != i) {
                    rounds[next] = std::max(rounds[next], rounds[i] + 1);
                }
            }
        }
    }
    return rounds;
}

/// By round, then by id; knots as their first.
void sortComponents(Lists& components, std::vector<std::size_t>& rounds, const BuiltLayout& built) {
    const auto idOf = [&](std::size_t conductor) -> const layout::ConductorId& {
        return built.layout.conductors[conductor].id;
    };
    for (auto& members : components) {
        std::sort(members.begin(), members.end(), [&](std::size_t a, std::size_t b) {
            return idOf(a) < idOf(b);
        });
    }
    std::vector<std::size_t> places(components.size());
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::sort(places.begin(), places.end(), [&](std::size_t a, std::size_t b) {
        return std::tie(rounds[a], idOf(components[a].front())) <
               std::tie(rounds[b], idOf(components[b].front()));
    });
    Lists sorted;
    std::vector<std::size_t> sortedRounds;
    for (const std::size_t place : places) {
        sorted.push_back(std::move(components[place]));
        sortedRounds.push_back(rounds[place]);
    }
    components = std::move(sorted);
    rounds = std::move(sortedRounds);
}

// ---- words ----------------------------------------------------------------------------------

std::string tagOf(const BuiltLayout& built, std::size_t conductor) {
    const auto& one = built.layout.conductors[conductor];
    return one.tag.empty() ? one.id.text() : one.tag;
}

/// Named one by one where they are few, else the first and how many more. first: as many as may be
/// named, of so many.
std::string tagsOf(const BuiltLayout& built,
                   const std::vector<std::size_t>& first,
                   std::size_t count,
                   std::size_t most) {
    std::vector<std::string> tags;
    for (const std::size_t i : first) {
        if (tags.size() + 1 == most && count > most) {
            tags.push_back(std::to_string(count - tags.size()) + " more");
            break;
        }
        tags.push_back(tagOf(built, i));
    }
    return listed(tags);
}

/// One round as it is told: those that may be named, of so many.
struct ToldRound {
    std::vector<std::size_t> first;
    std::size_t count = 0;
};

std::vector<ToldRound> toldRounds(const LandingRounds& rounds, std::size_t mostTags) {
    std::vector<ToldRound> told;
    for (const auto& round : rounds.rounds()) {
        told.push_back({{}, round.size()});
        for (auto rank = round.begin(); rank != round.end(); ++rank) {
            if (told.back().first.size() == mostTags) {
                break;
            }
            told.back().first.push_back(rounds.conductorAt(*rank));
        }
    }
    return told;
}

/// "first A and B, then C": with so many tags a round and so many rounds.
std::string roundsText(const BuiltLayout& built,
                       const LandingRounds& rounds,
                       std::size_t mostTags,
                       std::size_t mostRounds) {
    const auto told = toldRounds(rounds, mostTags);
    const auto tags = [&](const ToldRound& round) {
        return tagsOf(built, round.first, round.count, mostTags);
    };
    std::string text;
    for (std::size_t i = 0; i < told.size(); ++i) {
        if (i + 1 == mostRounds && told.size() > mostRounds) {
            return text + "; and so on, last " + tags(told.back());
        }
        text += (i == 0 ? "first " : "; then ") + tags(told[i]);
    }
    return text;
}

/// Whole where that is short. Every tag takes two letters or more, with what stands before it.
std::string orderText(const BuiltLayout& built, const LandingRounds& rounds) {
    constexpr std::size_t kLetters = 120;
    constexpr std::size_t kAll = 1000000;
    if (built.conductors.size() <= kLetters / 2) {
        std::string whole = roundsText(built, rounds, kAll, kAll);
        if (whole.size() <= kLetters) {
            return whole;
        }
    }
    return roundsText(built, rounds, 3, 3);
}

// ---- knots ----------------------------------------------------------------------------------

using Links = std::vector<std::vector<const LandingConstraint*>>;

/// From each conductor to those that come after it, by id.
Links linksOf(const BuiltLayout& built, const std::vector<LandingConstraint>& constraints) {
    Links links(built.conductors.size());
    for (const LandingConstraint& one : constraints) {
        links[one.first].push_back(&one);
    }
    for (auto& after : links) {
        std::sort(after.begin(), after.end(), [&](const auto* a, const auto* b) {
            return built.layout.conductors[a->second].id < built.layout.conductors[b->second].id;
        });
    }
    return links;
}

/// The fewest constraints that lead from the first member of a knot round to itself.
std::vector<LandingConstraint> roundTrip(const Links& links, const std::vector<std::size_t>& knot) {
    std::vector<bool> inside(links.size(), false);
    for (const std::size_t member : knot) {
        inside[member] = true;
    }
    std::vector<const LandingConstraint*> cameBy(links.size(), nullptr);
    std::deque<std::size_t> next{knot.front()};
    while (cameBy[knot.front()] == nullptr) {
        CONTRACT(!next.empty());  // all members of a knot lead to one another
        for (const LandingConstraint* link : links[next.front()]) {
            if (inside[link->second] && cameBy[link->second] == nullptr) {
                cameBy[link->second] = link;
                next.push_back(link->second);
            }
        }
        next.pop_front();
    }
    std::vector<LandingConstraint> trip{*cameBy[knot.front()]};
    while (trip.back().first != knot.front()) {
        trip.push_back(*cameBy[trip.back().first]);
    }
    std::reverse(trip.begin(), trip.end());
    return trip;
}

std::string linkText(const BuiltLayout& built, const LandingConstraint& link) {
    const std::string first = tagOf(built, link.first);
    const std::string second = tagOf(built, link.second);
    if (link.screw) {
        return second + " over the screw that holds " + first + " in " +
               portName(built, link.screw->block, link.screw->port);
    }
    return second + " in front of " + first + " at x = " + units::formatDecimal(link.place.x, 1) +
           ", y = " + inText(std::round(link.place.y * 10.0) / 10.0);
}

std::string tripText(const BuiltLayout& built, const std::vector<LandingConstraint>& trip) {
    constexpr std::size_t kMostLinks = 2;
    std::string text;
    for (std::size_t i = 0; i < std::min(trip.size(), kMostLinks); ++i) {
        text += (i == 0 ? "" : "; ") + linkText(built, trip[i]);
    }
    return text + (trip.size() > kMostLinks ? "; and so on round" : "");
}

/// A screw of a power distribution block has to stay unobstructed by the code; else it is practice.
standards::Citation citationOf(const BuiltLayout& built,
                               const std::vector<LandingConstraint>& trip) {
    const bool byCode = std::any_of(trip.begin(), trip.end(), [&](const LandingConstraint& one) {
        return one.screw && built.blocks[one.screw->block].part->listing.kind ==
                                parts::ConnectorKind::distributionBlock;
    });
    return byCode ? sectionFor(built, standards::Rule::blocksUnobstructed)
                  : standards::Citation{"", {}, standards::Basis::commonPractice, {}};
}

Finding knotFinding(const BuiltLayout& built,
                    const Links& links,
                    const std::vector<std::size_t>& knot) {
    const auto trip = roundTrip(links, knot);
    Finding finding;
    finding.check = Check::landingOrder;
    finding.verdict = Verdict::caution;
    for (const std::size_t i : knot) {
        finding.subjects.emplace_back(built.layout.conductors[i].id);
    }
    finding.place = trip.front().place;
    finding.citation = citationOf(built, trip);
    finding.working =
        sentence(tagsOf(built, knot, knot.size(), 4) + " block one another in whatever order " +
                 "they are laid in: " + tripText(built, trip));
    return finding;
}

std::vector<LandingConstraint> certainOnes(const std::vector<LandingConstraint>& constraints) {
    std::vector<LandingConstraint> certain;
    std::copy_if(constraints.begin(),
                 constraints.end(),
                 std::back_inserter(certain),
                 [](const LandingConstraint& one) { return one.certain; });
    return certain;
}

/// Knots whatever the diameters that are not known, and what else may be one.
std::vector<Finding> knotFindings(const BuiltLayout& built,
                                  const std::vector<LandingConstraint>& constraints,
                                  const LandingOrder& order) {
    const auto sure = certainOnes(constraints);
    const auto sureKnots = landingOrder(built, sure).knots;
    const Links sureLinks = linksOf(built, sure);
    const Links links = linksOf(built, constraints);
    std::vector<Finding> findings;
    for (const auto& knot : sureKnots) {
        findings.push_back(knotFinding(built, sureLinks, knot));
    }
    for (const auto& knot : order.knots) {
        if (std::find(sureKnots.begin(), sureKnots.end(), knot) == sureKnots.end()) {
            findings.push_back(knotFinding(built, links, knot));
            findings.back().verdict = Verdict::cannotTell;
            findings.back().missing = diametersUnknown(built, knot);
        }
    }
    return findings;
}

// ---- the findings ---------------------------------------------------------------------------

void addOnce(std::vector<std::string>& words, std::string word) {
    if (std::find(words.begin(), words.end(), word) == words.end()) {
        words.push_back(std::move(word));
    }
}

/// What is not stated of the screws of a port: where they are, or how wide a way to one that looks
/// at the cover has to be.
void addMissing(std::vector<std::string>& missing,
                const parts::Part& part,
                std::size_t port,
                const std::vector<ScrewCorridor>& corridors) {
    bool any = false;
    for (const ScrewCorridor& corridor : corridors) {
        any = any || corridor.port == port;
        if (corridor.port == port && corridor.facesCover && !corridor.diameter) {
            addOnce(missing,
                    "drive of screw " + part.screws[corridor.screw].name.text() + " of part " +
                        part.id.text());
        }
    }
    if (!any) {
        addOnce(missing,
                "screws of port " + part.ports[port].name.text() + " of part " + part.id.text());
    }
}

/// Of all screws that hold conductors.
std::vector<std::string> screwsMissing(const BuiltLayout& built, const Facts& facts) {
    std::vector<std::string> missing;
    for (std::size_t block = 0; block < built.blocks.size(); ++block) {
        for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
            if (!facts.occupancy.of(block, port).empty()) {
                addMissing(missing, *built.blocks[block].part, port, facts.corridors[block]);
            }
        }
    }
    std::sort(missing.begin(), missing.end());
    return missing;
}

/// About the gutter as a whole: the order, or that the screws might ask for another.
Finding orderFinding(const BuiltLayout& built, const Facts& facts) {
    const LandingRounds& rounds = facts.landing.rounds;
    Finding finding;
    finding.check = Check::landingOrder;
    finding.citation = geometryOnly();
    finding.missing = screwsMissing(built, facts);
    if (finding.missing.empty()) {
        finding.working =
            sentence(counted(built.conductors.size(), "conductor", "conductors") +
                     " can be laid in and landed from back to front: " + orderText(built, rounds));
        return finding;
    }
    finding.verdict = Verdict::cannotTell;
    finding.working = sentence(
        "whether conductors stand in the way to every screw cannot be told" +
        (rounds.knotted() ? std::string() : "; without the screws: " + orderText(built, rounds)));
    return finding;
}

/// What is told of knots, if there are any.
std::vector<Finding> knotFindings(const BuiltLayout& built, const Landing& landing) {
    if (!landing.rounds.knotted()) {
        return {};
    }
    const auto constraints = constraintsOf(landing.ways);
    return knotFindings(built, constraints, landingOrder(built, constraints));
}

void findOrder(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t /*gutter*/) {
    if (built.conductors.empty()) {
        return;
    }
    auto knots = knotFindings(built, facts.landing);
    if (knots.empty()) {
        knots.push_back(orderFinding(built, facts));
    } else if (Finding whole = orderFinding(built, facts); whole.verdict == Verdict::cannotTell) {
        knots.push_back(std::move(whole));
    }
    std::move(knots.begin(), knots.end(), std::back_inserter(findings));
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kLanding, findOrder}});

}  // namespace

LandingOrder landingOrder(const BuiltLayout& built,
                          const std::vector<LandingConstraint>& constraints) {
    const std::size_t count = built.conductors.size();
    Lists parts = components(count, constraints);
    std::vector<std::size_t> partOf(count, 0);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        for (const std::size_t member : parts[i]) {
            partOf[member] = i;
        }
    }
    auto rounds = roundsOf(parts, partOf, constraints);
    sortComponents(parts, rounds, built);
    LandingOrder order;
    order.rounds.resize(count);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        for (const std::size_t member : parts[i]) {
            order.order.push_back(member);
            order.rounds[member] = rounds[i];
        }
        if (parts[i].size() > 1) {
            order.knots.push_back(parts[i]);
        }
    }
    return order;
}

LandingOrder landingOrder(const BuiltLayout& built) {
    return landingOrder(built, landingConstraints(built));
}

Landing landingOf(const BuiltLayout& built,
                  const Occupancy& occupancy,
                  const Corridors& corridors) {
    Landing landing{landingWaysOf(built, occupancy, corridors), {}};
    landing.rounds = LandingRounds(built, pairsOf(landing.ways));
    return landing;
}

bool updateLanding(Landing& landing,
                   const BuiltLayout& built,
                   const Occupancy& occupancy,
                   const Corridors& corridors,
                   const std::vector<std::size_t>& moved,
                   const std::vector<std::size_t>& around,
                   const std::vector<std::size_t>& blocks) {
    const auto pairs =
        updateLandingWays(landing.ways, built, occupancy, corridors, moved, around, blocks);
    return landing.rounds.update(pairs.gone, pairs.come) || landing.rounds.knotted();
}

std::span<const Section> landingOrderSections() {
    return kSections;
}

std::vector<Finding> checkLandingOrder(const geometry::BuiltLayout& built) {
    return runChecks(built, {Check::landingOrder});
}

}  // namespace gw::checks
