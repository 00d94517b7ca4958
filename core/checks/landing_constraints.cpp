#include "checks/landing_constraints.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <numbers>
#include <span>
#include <tuple>

#include "base/tolerance.h"
#include "checks/diameters.h"
#include "checks/support.h"
#include "geometry/bow.h"

namespace gw::checks {
namespace {

using geometry::Bow;
using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;

constexpr geometry::Cuts kCuts{std::numbers::pi / 12.0};

/// Of the smaller radius: depths nearer than this are alike.
constexpr double kSameDepth = 0.25;

using Mouth = LandingMouth;
using Segment = LandingSegment;

/// A stretch beside a mouth, or in the bore behind it: arc lengths.
struct Beside {
    Mouth mouth;
    double from = 0.0;
    double to = 0.0;
};

// ---- conductors in pieces -------------------------------------------------------------------

/// Arc length at which a conductor has turned aside or run far enough from the mouth of an end.
double partedAt(const BuiltConductor& conductor, const BuiltEnd& end, bool forward) {
    const auto& path = conductor.built.path;
    const double thickness = conductor.diameter.in();
    const double farthest = kBesideMouth * thickness;
    double run = farthest;
    const double from = forward ? end.mouthAt : end.mouthAt - farthest;
    geometry::forEachBow(path, from, from + farthest, kCuts, [&](const Bow& bow) {
        const Vec3 offset = path.pointAt(bow.offset + bow.last) - end.mouth;
        const double aside = norm(offset - end.axis * dot(offset, end.axis));
        const double here = std::abs(bow.offset + bow.last - end.mouthAt);
        if (aside > thickness && here > kSamePoint) {
            run = std::min(run, here);
        }
    });
    return forward ? end.mouthAt + run : end.mouthAt - run;
}

Mouth mouthOf(const BuiltEnd& end) {
    return end.kind == BuiltEnd::Kind::entry ? Mouth{given(end.entry), 0, 0}
                                             : Mouth{{}, given(end.block), given(end.port)};
}

/// What is beside mouths, and what lies in bores.
struct Held {
    std::vector<Beside> beside;
    std::vector<std::pair<double, double>> bores;
};

Held heldOf(const BuiltConductor& conductor) {
    Held held;
    const double length = conductor.built.path.length().in();
    if (conductor.from.kind != BuiltEnd::Kind::spare) {
        held.beside.push_back(
            {mouthOf(conductor.from), 0.0, partedAt(conductor, conductor.from, true)});
        held.bores.emplace_back(0.0, conductor.from.mouthAt);
    }
    const double reach = kBesideMouth * conductor.diameter.in();
    for (const auto& pass : conductor.passes) {
        const auto [first, last] = std::minmax(pass.nearAt, pass.farAt);
        held.beside.push_back({{{}, pass.block, pass.port}, first - reach, last + reach});
        held.bores.emplace_back(first, last);
    }
    if (conductor.to.kind != BuiltEnd::Kind::spare) {
        held.beside.push_back(
            {mouthOf(conductor.to), partedAt(conductor, conductor.to, false), length});
        held.bores.emplace_back(conductor.to.mouthAt, length);
    }
    return held;
}

/// Where the held stretches begin and end, inside the path, in order.
std::vector<double> cutsOf(const Held& held, double length) {
    std::vector<double> cuts{0.0, length};
    for (const Beside& one : held.beside) {
        cuts.push_back(std::clamp(one.from, 0.0, length));
        cuts.push_back(std::clamp(one.to, 0.0, length));
    }
    for (const auto& [from, to] : held.bores) {
        cuts.push_back(std::clamp(from, 0.0, length));
        cuts.push_back(std::clamp(to, 0.0, length));
    }
    std::sort(cuts.begin(), cuts.end());
    return cuts;
}

void addSegments(std::vector<Segment>& segments, const BuiltLayout& built, std::size_t index) {
    const BuiltConductor& conductor = built.conductors[index];
    const Held held = heldOf(conductor);
    const auto cuts = cutsOf(held, conductor.built.path.length().in());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        const double middle = (cuts[i] + cuts[i + 1]) / 2.0;
        const auto holds = [&](double from, double to) { return from <= middle && middle <= to; };
        const bool inBore =
            std::any_of(held.bores.begin(), held.bores.end(), [&](const auto& bore) {
                return holds(bore.first, bore.second);
            });
        if (inBore || cuts[i + 1] - cuts[i] <= kSamePoint) {
            continue;
        }
        std::vector<Mouth> mouths;
        for (const Beside& one : held.beside) {
            if (holds(one.from, one.to)) {
                mouths.push_back(one.mouth);
            }
        }
        geometry::forEachBow(
            conductor.built.path, cuts[i], cuts[i + 1], kCuts, [&](const Bow& bow) {
                segments.push_back({index, bow.start, bow.end, bow.stray, mouths});
            });
    }
}

bool shareAMouth(const Segment& a, const Segment& b) {
    return std::any_of(a.beside.begin(), a.beside.end(), [&](const Mouth& mouth) {
        return std::find(b.beside.begin(), b.beside.end(), mouth) != b.beside.end();
    });
}

// ---- who is in front ------------------------------------------------------------------------

Vec3 inFrontView(const Vec3& point) {
    return {point.x, point.y, 0.0};
}

/// The depth of a segment at a fraction of its way; of one that looks at the cover, its depth
/// nearest to the other's.
double depthAt(const Segment& segment, double fraction, double other) {
    const double along = distance(inFrontView(segment.start), inFrontView(segment.end));
    if (along <= kSamePoint) {
        const auto [back, front] = std::minmax(segment.start.z, segment.end.z);
        return std::clamp(other, back, front);
    }
    return segment.start.z + (segment.end.z - segment.start.z) * fraction;
}

/// Of two for one pair: certain before not, crossing before screw, then where they are nearest.
bool comesBefore(const KeptConstraint& a, const KeptConstraint& b) {
    const auto key = [](const KeptConstraint& one) {
        const Vec3& place = one.constraint.place;
        return std::tuple(!one.constraint.certain,
                          one.constraint.screw.has_value(),
                          one.apart,
                          place.x,
                          place.y,
                          place.z);
    };
    return key(a) < key(b);
}

/// The crossing of two segments. Empty: they miss each other, or lie at one depth.
std::optional<KeptConstraint> crossingOf(const BuiltLayout& built,
                                         const Segment& a,
                                         const Segment& b) {
    const auto radius = [&](const Segment& one) {
        return built.conductors[one.conductor].radius();
    };
    const auto feet = geometry::nearestOnSegments(
        inFrontView(a.start), inFrontView(a.end), inFrontView(b.start), inFrontView(b.end));
    const double apart = std::sqrt(feet.squaredDistance);
    const double overlap = radius(a) + radius(b) - a.stray - b.stray - apart;
    if (atMost(overlap, 0.0)) {
        return std::nullopt;
    }
    const double doubtA = radiusInDoubt(built, a.conductor);
    const double doubtB = radiusInDoubt(built, b.conductor);
    const double depthA = depthAt(a, feet.a, depthAt(b, feet.b, a.start.z));
    const double depthB = depthAt(b, feet.b, depthA);
    const double alike = kSameDepth * std::min(radius(a) - doubtA, radius(b) - doubtB);
    if (std::abs(depthA - depthB) <= alike) {
        return std::nullopt;
    }
    const bool aFirst = depthA < depthB;
    const Segment& front = aFirst ? b : a;
    const Vec3 place = front.start + (front.end - front.start) * (aFirst ? feet.b : feet.a);
    return KeptConstraint{{aFirst ? a.conductor : b.conductor,
                           front.conductor,
                           std::nullopt,
                           place,
                           !atMost(overlap, doubtA + doubtB)},
                          apart};
}

// ---- the sweep ------------------------------------------------------------------------------

/// What a segment covers in the front view.
struct Shadow {
    std::size_t segment = 0;
    double left = 0.0;
    double right = 0.0;
    double bottom = 0.0;
    double top = 0.0;
};

/// index: of the segment in a list.
Shadow shadowOf(const BuiltLayout& built, const Segment& segment, std::size_t index) {
    const double radius = built.conductors[segment.conductor].radius();
    const auto [left, right] = std::minmax(segment.start.x, segment.end.x);
    const auto [bottom, top] = std::minmax(segment.start.y, segment.end.y);
    return {index, left - radius, right + radius, bottom - radius, top + radius};
}

bool apart(const Shadow& a, const Shadow& b) {
    return a.right < b.left || b.right < a.left || a.top < b.bottom || b.top < a.bottom;
}

std::vector<Shadow> shadowsOf(const BuiltLayout& built, const std::vector<Segment>& segments) {
    std::vector<Shadow> shadows;
    shadows.reserve(segments.size());
    for (std::size_t i = 0; i < segments.size(); ++i) {
        shadows.push_back(shadowOf(built, segments[i], i));
    }
    std::sort(shadows.begin(), shadows.end(), [](const Shadow& a, const Shadow& b) {
        return std::tie(a.left, a.segment) < std::tie(b.left, b.segment);
    });
    return shadows;
}

/// Every two segments of two conductors whose shadows overlap.
template <class Visit>
void forOverlaps(const BuiltLayout& built, const std::vector<Segment>& segments, Visit visit) {
    std::vector<Shadow> open;
    for (const Shadow& shadow : shadowsOf(built, segments)) {
        open.erase(std::remove_if(open.begin(),
                                  open.end(),
                                  [&](const Shadow& one) { return one.right < shadow.left; }),
                   open.end());
        const Segment& segment = segments[shadow.segment];
        for (const Shadow& other : open) {
            const Segment& before = segments[other.segment];
            if (!apart(other, shadow) && before.conductor != segment.conductor) {
                visit(before, segment);
            }
        }
        open.push_back(shadow);
    }
}

/// Whether two segments are compared: not where they come out of one mouth.
std::optional<KeptConstraint> crossingUnlessBesideAMouth(const BuiltLayout& built,
                                                         const Segment& a,
                                                         const Segment& b) {
    if (shareAMouth(a, b)) {
        return std::nullopt;
    }
    // By id: so that no rounding hangs on the order of the layout.
    const auto& conductors = built.layout.conductors;
    const bool inOrder = conductors[a.conductor].id < conductors[b.conductor].id;
    return crossingOf(built, inOrder ? a : b, inOrder ? b : a);
}

void keep(LandingWays& ways, const KeptConstraint& found) {
    const auto& [first, second] = std::tie(found.constraint.first, found.constraint.second);
    const auto [place, isNew] = ways.crossings[first].try_emplace(second, found);
    if (isNew) {
        ways.behind[second].insert(first);
    } else if (comesBefore(found, place->second)) {
        place->second = found;
    }
}

/// One that the port itself holds has to be there when its screw is tightened: it is judged with
/// the reach of screws.
std::vector<KeptConstraint> waysToScrews(const BuiltLayout& built,
                                         const Occupancy& occupancy,
                                         const std::vector<ScrewCorridor>& corridors) {
    std::vector<KeptConstraint> ways;
    for (const ScrewCorridor& corridor : corridors) {
        const auto held = occupancy.of(corridor.block, corridor.port);
        for (const NearCorridor& thing : standingIn(corridor)) {
            const bool own = std::any_of(held.begin(), held.end(), [&](const Occupant& one) {
                return one.conductor == thing.index;
            });
            if (thing.kind != NearCorridor::Kind::conductor || own) {
                continue;
            }
            const bool certain = !atLeast(thing.gap + radiusInDoubt(built, thing.index), 0.0);
            for (const Occupant& occupant : held) {
                ways.push_back({{occupant.conductor,
                                 thing.index,
                                 LandingConstraint::Screw{corridor.block, corridor.port},
                                 thing.place,
                                 certain},
                                thing.gap});
            }
        }
    }
    return ways;
}

// ---- what moved -----------------------------------------------------------------------------

void note(std::vector<LandingPair>& pairs, const KeptConstraint& one) {
    pairs.emplace_back(one.constraint.first, one.constraint.second);
}

/// Pairs with one of these conductors, and those about screws of these blocks, in order.
std::vector<LandingPair> pairsOf(const LandingWays& ways,
                                 const std::vector<std::size_t>& conductors,
                                 const std::vector<std::size_t>& blocks) {
    std::vector<LandingPair> pairs;
    for (const std::size_t i : conductors) {
        for (const auto& [second, kept] : ways.crossings[i]) {
            note(pairs, kept);
        }
        for (const std::size_t first : ways.behind[i]) {
            if (!std::binary_search(conductors.begin(), conductors.end(), first)) {
                pairs.emplace_back(first, i);
            }
        }
    }
    for (const std::size_t block : blocks) {
        for (const KeptConstraint& one : ways.toScrews[block]) {
            note(pairs, one);
        }
    }
    std::sort(pairs.begin(), pairs.end());
    return pairs;
}

std::vector<LandingPair> without(const std::vector<LandingPair>& pairs,
                                 const std::vector<LandingPair>& others) {
    std::vector<LandingPair> left;
    std::set_difference(
        pairs.begin(), pairs.end(), others.begin(), others.end(), std::back_inserter(left));
    return left;
}

void strike(LandingWays& ways, std::size_t conductor) {
    for (const auto& [second, kept] : ways.crossings[conductor]) {
        ways.behind[second].erase(conductor);
    }
    for (const std::size_t first : ways.behind[conductor]) {
        ways.crossings[first].erase(conductor);
    }
    ways.crossings[conductor].clear();
    ways.behind[conductor].clear();
}

std::vector<Segment> segmentsOf(const BuiltLayout& built, std::size_t conductor) {
    std::vector<Segment> segments;
    addSegments(segments, built, conductor);
    return segments;
}

std::vector<Segment> allSegments(const LandingWays& ways) {
    std::vector<Segment> all;
    for (const auto& segments : ways.segments) {
        all.insert(all.end(), segments.begin(), segments.end());
    }
    return all;
}

/// Keeps where the segments of two conductors cross.
void keepCrossings(LandingWays& ways, const BuiltLayout& built, std::size_t a, std::size_t b) {
    for (const Segment& one : ways.segments[a]) {
        const Shadow shadow = shadowOf(built, one, 0);
        for (const Segment& other : ways.segments[b]) {
            if (!apart(shadow, shadowOf(built, other, 0))) {
                if (const auto crossing = crossingUnlessBesideAMouth(built, one, other)) {
                    keep(ways, *crossing);
                }
            }
        }
    }
}

}  // namespace

LandingWays landingWaysOf(const BuiltLayout& built,
                          const Occupancy& occupancy,
                          const Corridors& corridors) {
    LandingWays ways;
    ways.crossings.resize(built.conductors.size());
    ways.behind.resize(built.conductors.size());
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        ways.segments.push_back(segmentsOf(built, i));
    }
    const auto segments = allSegments(ways);
    forOverlaps(built, segments, [&](const Segment& a, const Segment& b) {
        if (const auto crossing = crossingUnlessBesideAMouth(built, a, b)) {
            keep(ways, *crossing);
        }
    });
    for (const auto& ofBlock : corridors) {
        ways.toScrews.push_back(waysToScrews(built, occupancy, ofBlock));
    }
    return ways;
}

PairsChanged updateLandingWays(LandingWays& ways,
                               const BuiltLayout& built,
                               const Occupancy& occupancy,
                               const Corridors& corridors,
                               const std::vector<std::size_t>& moved,
                               const std::vector<std::size_t>& around,
                               const std::vector<std::size_t>& blocks) {
    const auto before = pairsOf(ways, moved, blocks);
    for (const std::size_t i : moved) {
        strike(ways, i);
    }
    for (const std::size_t i : moved) {
        ways.segments[i] = segmentsOf(built, i);
    }
    for (const std::size_t i : moved) {
        for (const std::size_t other : around) {
            const bool both = std::binary_search(moved.begin(), moved.end(), other);
            if (!both || i < other) {
                keepCrossings(ways, built, i, other);
            }
        }
    }
    for (const std::size_t block : blocks) {
        ways.toScrews[block] = waysToScrews(built, occupancy, corridors[block]);
    }
    const auto now = pairsOf(ways, moved, blocks);
    return {without(before, now), without(now, before)};
}

std::vector<LandingPair> pairsOf(const LandingWays& ways) {
    std::vector<LandingPair> pairs;
    for (const auto& ofFirst : ways.crossings) {
        for (const auto& [second, kept] : ofFirst) {
            note(pairs, kept);
        }
    }
    for (const auto& ofBlock : ways.toScrews) {
        for (const KeptConstraint& one : ofBlock) {
            note(pairs, one);
        }
    }
    return pairs;
}

std::vector<LandingConstraint> constraintsOf(const LandingWays& ways) {
    std::map<std::pair<std::size_t, std::size_t>, KeptConstraint> best;
    const auto consider = [&](const KeptConstraint& one) {
        const std::pair pair{one.constraint.first, one.constraint.second};
        const auto [place, isNew] = best.try_emplace(pair, one);
        if (!isNew && comesBefore(one, place->second)) {
            place->second = one;
        }
    };
    for (const auto& ofFirst : ways.crossings) {
        for (const auto& [second, kept] : ofFirst) {
            consider(kept);
        }
    }
    for (const auto& ofBlock : ways.toScrews) {
        std::for_each(ofBlock.begin(), ofBlock.end(), consider);
    }
    std::vector<LandingConstraint> all;
    all.reserve(best.size());
    for (const auto& [pair, kept] : best) {
        all.push_back(kept.constraint);
    }
    return all;
}

std::vector<LandingConstraint> landingConstraints(const BuiltLayout& built) {
    const Occupancy occupancy(built);
    return constraintsOf(landingWaysOf(built, occupancy, corridorsOf(built, occupancy)));
}

}  // namespace gw::checks
