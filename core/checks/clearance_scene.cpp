#include "checks/clearance_scene.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>
#include <span>
#include <tuple>
#include <utility>

#include "base/tolerance.h"
#include "checks/support.h"
#include "geometry/near_pairs.h"

namespace gw::checks {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::BuiltPass;
using geometry::Closest;
using geometry::SceneItem;

/// How a stretch of a conductor belongs to a port.
struct Hold {
    enum class Kind {
        bore,    ///< inside the bore
        mouth,   ///< a little beyond, where the round end of a tube would touch the body
        shared,  ///< beyond, until conductors of one port have parted
    };
    std::size_t block = 0;
    std::size_t port = 0;
    Kind kind = Kind::bore;

    bool byBlock() const { return kind != Kind::shared; }
};

/// The stretch.
struct Held {
    double from = 0.0;
    double to = 0.0;
    Hold hold;
};

/// Whose item of the scene it is, and what holds it: some of the scene's holds, in a row.
struct Owner {
    std::size_t thing = 0;
    std::size_t firstHold = 0;
    std::size_t holds = 0;
};

/// How far a conductor runs from a mouth until it is `aside` from the axis it left on: its straight
/// leg, and as much of the first bend and the leg behind it as that takes.
double untilAside(const BuiltConductor& conductor, double mouth, bool forward, double aside) {
    const auto& bends = conductor.built.bends;
    double least = conductor.built.path.length().in();
    const geometry::BuiltPath::Bend* first = nullptr;
    for (const auto& bend : bends) {
        const double near =
            forward ? bend.start - mouth : mouth - (bend.start + bend.radius * bend.turn);
        if (bend.turn > kSameDirection && near >= -kLimitSlack && near < least) {
            least = near;
            first = &bend;
        }
    }
    if (first == nullptr) {
        return least;
    }
    const double after = first->radius * (1.0 - std::cos(first->turn));
    if (after >= aside) {
        return least + first->radius * std::acos(1.0 - aside / first->radius);
    }
    return least + first->radius * first->turn + (aside - after) / std::sin(first->turn);
}

/// How far from the port's axis an occupant has to be to be clear of the others: its own radius and
/// the thickest other's, and as much again for one that follows its turn. Empty where the port
/// holds one conductor.
std::optional<double> asideIn(const BuiltLayout& built,
                              std::span<const Occupant> occupants,
                              std::size_t conductor) {
    std::optional<double> widest;
    for (const Occupant& other : occupants) {
        if (other.conductor != conductor) {
            const double radius = built.conductors[other.conductor].radius();
            widest = std::max(widest.value_or(0.0), radius);
        }
    }
    const double own = built.conductors[conductor].radius();
    return widest ? std::optional(2.0 * (*widest + own)) : std::nullopt;
}

/// The tubes and bodies of some things, conductors first. A thing is a conductor by its index, or a
/// block by its index behind the conductors'.
class Scene {
public:
    Scene(const BuiltLayout& built, const Occupancy& occupancy, const geometry::Things& things)
        : built_(built), occupancy_(occupancy) {
        const std::size_t likely = 5 * things.conductors.size() + things.blocks.size();
        items_.reserve(likely);
        owners_.reserve(likely);
        holds_.reserve(likely);
        for (const std::size_t i : things.conductors) {
            addConductor(i);
        }
        for (const std::size_t i : things.blocks) {
            SceneItem item;
            item.box = built.blocks[i].body;
            items_.push_back(item);
            owners_.push_back({built.conductors.size() + i, holds_.size(), 0});
        }
    }

    const std::vector<SceneItem>& items() const { return items_; }
    std::size_t thingOf(std::size_t item) const { return owners_[item].thing; }

    /// Whether two items belong together, or are kept apart by a block's body. REQUIRES a before b.
    bool belongTogether(std::size_t a, std::size_t b) const {
        if (isBlock(b)) {
            return !isBlock(a) && isHeldBy(a, thingOf(b) - built_.conductors.size());
        }
        const bool held = owners_[a].holds > 0 && owners_[b].holds > 0;
        return held && (shareAPort(a, b) || blockParts(a, b) || blockParts(b, a));
    }

private:
    bool isBlock(std::size_t item) const { return items_[item].path == nullptr; }

    std::span<const Hold> holdsOf(std::size_t item) const {
        return {holds_.data() + owners_[item].firstHold, owners_[item].holds};
    }

    bool isHeldBy(std::size_t item, std::size_t block) const {
        const auto holds = holdsOf(item);
        return std::any_of(holds.begin(), holds.end(), [&](const Hold& hold) {
            return hold.byBlock() && hold.block == block;
        });
    }

    /// Whether a lies in a bore of a block that holds b: the block's body is between them.
    bool blockParts(std::size_t a, std::size_t b) const {
        const auto holds = holdsOf(a);
        return std::any_of(holds.begin(), holds.end(), [&](const Hold& hold) {
            return hold.kind == Hold::Kind::bore && isHeldBy(b, hold.block);
        });
    }

    bool shareAPort(std::size_t a, std::size_t b) const {
        const auto isShared = [](const Hold& hold) { return hold.kind == Hold::Kind::shared; };
        const auto ofA = holdsOf(a);
        const auto ofB = holdsOf(b);
        return std::any_of(ofA.begin(), ofA.end(), [&](const Hold& one) {
            return isShared(one) && std::any_of(ofB.begin(), ofB.end(), [&](const Hold& other) {
                       return isShared(other) && one.block == other.block && one.port == other.port;
                   });
        });
    }

    /// The bore between two arc lengths, and the stretches beyond its mouths (cut off at the tips).
    void hold(std::size_t index, double from, double to, std::size_t block, std::size_t port) {
        const BuiltConductor& conductor = built_.conductors[index];
        const double beyond = kHeldRadii * conductor.radius();
        held_.push_back({from, to, {block, port, Hold::Kind::bore}});
        held_.push_back({from - beyond, from, {block, port, Hold::Kind::mouth}});
        held_.push_back({to, to + beyond, {block, port, Hold::Kind::mouth}});
        if (const auto aside = asideIn(built_, occupancy_.of(block, port), index)) {
            const double before = std::max(beyond, untilAside(conductor, from, false, *aside));
            const double after = std::max(beyond, untilAside(conductor, to, true, *aside));
            held_.push_back({from - before, to + after, {block, port, Hold::Kind::shared}});
        }
    }

    /// Fills held_.
    void holdAll(std::size_t index, double length) {
        held_.clear();
        const BuiltConductor& conductor = built_.conductors[index];
        const auto& [from, to] = std::tie(conductor.from, conductor.to);
        if (from.kind == BuiltEnd::Kind::port) {
            hold(index, 0.0, from.mouthAt, given(from.block), given(from.port));
        }
        for (const BuiltPass& pass : conductor.passes) {
            const auto [first, last] = std::minmax(pass.nearAt, pass.farAt);
            hold(index, first, last, pass.block, pass.port);
        }
        if (to.kind == BuiltEnd::Kind::port) {
            hold(index, to.mouthAt, length, given(to.block), given(to.port));
        }
    }

    /// Fills cuts_: the ends of held stretches, inside the path.
    void cutAtHolds(double length) {
        cuts_.assign({0.0, length});
        for (const Held& one : held_) {
            cuts_.push_back(std::clamp(one.from, 0.0, length));
            cuts_.push_back(std::clamp(one.to, 0.0, length));
        }
        std::sort(cuts_.begin(), cuts_.end());
    }

    void addConductor(std::size_t index) {
        const BuiltConductor& conductor = built_.conductors[index];
        const double length = conductor.built.path.length().in();
        holdAll(index, length);
        cutAtHolds(length);
        for (std::size_t i = 0; i + 1 < cuts_.size(); ++i) {
            if (cuts_[i + 1] - cuts_[i] > kSamePoint) {
                addStretch(index, cuts_[i], cuts_[i + 1]);
            }
        }
    }

    void addStretch(std::size_t index, double from, double to) {
        const BuiltConductor& conductor = built_.conductors[index];
        items_.push_back({.path = &conductor.built.path,
                          .radius = conductor.radius(),
                          .from = from,
                          .to = to,
                          .box = {},
                          .group = static_cast<std::uint32_t>(index + 1)});
        const std::size_t first = holds_.size();
        const double middle = (from + to) / 2.0;
        for (const Held& one : held_) {
            if (one.from <= middle && middle <= one.to) {
                holds_.push_back(one.hold);
            }
        }
        owners_.push_back({index, first, holds_.size() - first});
    }

    const BuiltLayout& built_;
    const Occupancy& occupancy_;
    std::vector<SceneItem> items_;
    std::vector<Owner> owners_;  ///< as the items
    std::vector<Hold> holds_;
    std::vector<Held> held_;    ///< of the conductor being added
    std::vector<double> cuts_;  ///< of the conductor being added
};

using Pair = std::pair<std::size_t, std::size_t>;

struct NearPlace {
    Pair pair;  ///< of things
    Closest closest;
};

/// Keeps the nearest place of each pair of things. Pairs come grouped by the first.
class NearestPlaces {
public:
    NearestPlaces(std::size_t things, std::size_t pairs) : places_(things, 0) {
        found_.reserve(pairs);
    }

    void keep(const Pair& pair, const Closest& closest) {
        if (found_.empty() || found_.back().pair.first != pair.first) {
            sortGroup();
            group_ = found_.size();
        }
        std::size_t& place = places_[pair.second];
        if (place < group_ || place >= found_.size() || found_[place].pair.second != pair.second) {
            place = found_.size();
            found_.push_back({pair, closest});
        } else if (closest.gap < found_[place].closest.gap) {
            found_[place].closest = closest;
        }
    }

    /// In order of pairs.
    std::vector<NearPlace> take() {
        sortGroup();
        return std::move(found_);
    }

private:
    void sortGroup() {
        std::sort(found_.begin() + static_cast<std::ptrdiff_t>(group_),
                  found_.end(),
                  [](const NearPlace& a, const NearPlace& b) { return a.pair < b.pair; });
    }

    std::vector<NearPlace> found_;
    std::vector<std::size_t> places_;  ///< [second] -> where in found_ it last went
    std::size_t group_ = 0;            ///< where the pairs of the current first begin
};

/// In order of pairs.
std::vector<NearPlace> nearestPlaces(const BuiltLayout& built,
                                     const Scene& scene,
                                     const std::vector<geometry::NearPair>& pairs) {
    NearestPlaces places(built.conductors.size() + built.blocks.size(), pairs.size());
    for (const auto& pair : pairs) {
        places.keep({scene.thingOf(pair.a), scene.thingOf(pair.b)}, pair.closest);
    }
    return places.take();
}

Closest seenFromB(const Closest& closest) {
    return {closest.gap, closest.onB, closest.onA, closest.sB, closest.sA};
}

/// Neighbours by things, conductors and blocks alike.
class Register {
public:
    explicit Register(Neighbours& neighbours) : neighbours_(neighbours) {}

    NearThings& of(std::size_t thing) {
        const std::size_t conductors = neighbours_.ofConductors.size();
        return thing < conductors ? neighbours_.ofConductors[thing]
                                  : neighbours_.ofBlocks[thing - conductors];
    }

    void write(const NearPlace& place) {
        const auto& [a, b] = place.pair;
        insert(listFor(a, b), {indexOf(b), place.closest});
        insert(listFor(b, a), {indexOf(a), seenFromB(place.closest)});
    }

    /// Strikes a thing out of its neighbours' lists, and empties its own. Calls struck(thing) for
    /// each of them.
    template <class Struck>
    void strike(std::size_t thing, Struck struck) {
        NearThings& own = of(thing);
        for (const Neighbour& one : own.conductors) {
            erase(listFor(one.other, thing), indexOf(thing));
            struck(one.other);
        }
        for (const Neighbour& one : own.blocks) {
            const std::size_t block = neighbours_.ofConductors.size() + one.other;
            erase(listFor(block, thing), indexOf(thing));
            struck(block);
        }
        own = {};
    }

private:
    using List = std::vector<Neighbour>;

    bool isBlock(std::size_t thing) const { return thing >= neighbours_.ofConductors.size(); }
    std::size_t indexOf(std::size_t thing) const {
        return isBlock(thing) ? thing - neighbours_.ofConductors.size() : thing;
    }
    /// Of a thing, where the other belongs.
    List& listFor(std::size_t thing, std::size_t other) {
        return isBlock(other) ? of(thing).blocks : of(thing).conductors;
    }

    static List::iterator placeIn(List& list, std::size_t other) {
        return std::lower_bound(
            list.begin(), list.end(), other, [](const Neighbour& one, std::size_t index) {
                return one.other < index;
            });
    }
    static void insert(List& list, const Neighbour& one) {
        list.insert(placeIn(list, one.other), one);
    }
    static void erase(List& list, std::size_t other) {
        const auto at = placeIn(list, other);
        if (at != list.end() && at->other == other) {
            list.erase(at);
        }
    }

    Neighbours& neighbours_;
};

/// One flag an item: whether its thing is one of these.
class Flags {
public:
    Flags(const Scene& scene, const std::vector<std::size_t>& things)
        : flags_(std::make_unique<bool[]>(scene.items().size())), size_(scene.items().size()) {
        for (std::size_t i = 0; i < size_; ++i) {
            flags_[i] = std::binary_search(things.begin(), things.end(), scene.thingOf(i));
        }
    }
    std::span<const bool> all() const { return {flags_.get(), size_}; }

private:
    std::unique_ptr<bool[]> flags_;  // a vector of bool has no bools to span
    std::size_t size_;
};

/// Things by their numbers, ascending and each once.
geometry::Things thingsOf(std::vector<std::size_t> numbers, std::size_t conductors) {
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    geometry::Things things;
    for (const std::size_t number : numbers) {
        if (number < conductors) {
            things.conductors.push_back(number);
        } else {
            things.blocks.push_back(number - conductors);
        }
    }
    return things;
}

std::vector<std::size_t> numbersOf(const geometry::Things& things, std::size_t conductors) {
    std::vector<std::size_t> numbers = things.conductors;
    for (const std::size_t block : things.blocks) {
        numbers.push_back(conductors + block);
    }
    return numbers;
}

}  // namespace

Neighbours neighboursOf(const BuiltLayout& built, const Occupancy& occupancy) {
    const Scene scene(built, occupancy, geometry::allThings(built));
    const auto pairs =
        geometry::nearPairs(scene.items(), kNeighbourhood, [&](std::uint32_t a, std::uint32_t b) {
            return !scene.belongTogether(a, b);
        });
    Neighbours neighbours;
    neighbours.ofConductors.resize(built.conductors.size());
    neighbours.ofBlocks.resize(built.blocks.size());
    Register all(neighbours);
    for (const NearPlace& place : nearestPlaces(built, scene, pairs)) {
        all.write(place);
    }
    return neighbours;
}

geometry::Things updateNeighbours(Neighbours& neighbours,
                                  const BuiltLayout& built,
                                  const Occupancy& occupancy,
                                  const geometry::Things& moved,
                                  const geometry::Things& around) {
    const std::size_t conductors = built.conductors.size();
    const std::vector<std::size_t> numbers = numbersOf(moved, conductors);
    std::vector<std::size_t> changed = numbers;
    Register all(neighbours);
    for (const std::size_t thing : numbers) {
        all.strike(thing, [&](std::size_t other) { changed.push_back(other); });
    }
    const Scene scene(built, occupancy, around);
    const auto pairs = geometry::nearPairsOf(
        scene.items(),
        Flags(scene, numbers).all(),
        kNeighbourhood,
        [&](std::uint32_t a, std::uint32_t b) { return !scene.belongTogether(a, b); });
    for (const NearPlace& place : nearestPlaces(built, scene, pairs)) {
        all.write(place);
        changed.push_back(place.pair.first);
        changed.push_back(place.pair.second);
    }
    return thingsOf(std::move(changed), conductors);
}

}  // namespace gw::checks
