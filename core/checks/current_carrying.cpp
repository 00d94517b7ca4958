#include "checks/current_carrying.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "checks/entry_users.h"
#include "geometry/solids.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Phase;

/// A conductor laid in pieces is one conductor.
using Key = std::tuple<std::string_view, int, Phase>;

Key keyOf(const layout::Conductor& conductor) {
    return {conductor.circuit.text(), conductor.set, conductor.phase};
}

bool isPhase(Phase phase) {
    return phase == Phase::a || phase == Phase::b || phase == Phase::c;
}

void insertSorted(std::vector<double>& values, double value) {
    values.insert(std::upper_bound(values.begin(), values.end(), value), value);
}

void eraseSorted(std::vector<double>& values, double value) {
    values.erase(std::lower_bound(values.begin(), values.end(), value));
}

}  // namespace

void CurrentCarrying::Row::put(const Stretch& stretch) {
    insertSorted(begins_, stretch.from);
    insertSorted(ends_, stretch.to);
}

void CurrentCarrying::Row::take(const Stretch& stretch) {
    eraseSorted(begins_, stretch.from);
    eraseSorted(ends_, stretch.to);
}

int CurrentCarrying::Row::mostWithin(const Stretch& stretch) const {
    auto begun = std::upper_bound(begins_.begin(), begins_.end(), stretch.from) - begins_.begin();
    auto ended = std::lower_bound(ends_.begin(), ends_.end(), stretch.from) - ends_.begin();
    auto most = begun - ended;
    const auto count = static_cast<std::ptrdiff_t>(begins_.size());
    while (begun < count && begins_[static_cast<std::size_t>(begun)] <= stretch.to) {
        const double x = begins_[static_cast<std::size_t>(begun++)];
        while (ends_[static_cast<std::size_t>(ended)] < x) {
            ++ended;
        }
        most = std::max(most, begun - ended);
    }
    return static_cast<int>(most);
}

std::vector<CurrentCarrying::Stretch> CurrentCarrying::coveredBy(std::size_t whole) const {
    std::vector<Stretch> sorted;
    for (const std::size_t piece : pieces_[whole]) {
        sorted.push_back(stretches_[piece]);
    }
    std::sort(sorted.begin(), sorted.end(), [](const Stretch& a, const Stretch& b) {
        return std::tie(a.from, a.to) < std::tie(b.from, b.to);
    });
    std::vector<Stretch> covered;
    for (const Stretch& one : sorted) {
        if (!covered.empty() && one.from <= covered.back().to) {
            covered.back().to = std::max(covered.back().to, one.to);
        } else {
            covered.push_back(one);
        }
    }
    return covered;
}

void CurrentCarrying::putInRows(std::size_t whole) {
    for (const Stretch& one : coveredBy(whole)) {
        withNeutrals_.put(one);
        if (!neutral_[whole]) {
            without_.put(one);
        }
    }
}

void CurrentCarrying::takeOutOfRows(std::size_t whole) {
    for (const Stretch& one : coveredBy(whole)) {
        withNeutrals_.take(one);
        if (!neutral_[whole]) {
            without_.take(one);
        }
    }
}

CurrentCarrying::Count CurrentCarrying::countBeside(const Stretch& stretch) const {
    return {withNeutrals_.mostWithin(stretch), without_.mostWithin(stretch)};
}

/// Whether it is another one now.
bool CurrentCarrying::setStretch(const BuiltLayout& built, std::size_t conductor) {
    const auto& one = built.conductors[conductor];
    const geometry::Tube tube{&one.built.path, one.radius(), 0.0, one.built.path.length().in()};
    constexpr Vec3 kAlong{1, 0, 0};
    const Stretch now{-geometry::reach(tube, -kAlong).value, geometry::reach(tube, kAlong).value};
    const bool other = now != stretches_[conductor];
    stretches_[conductor] = now;
    return other;
}

CurrentCarrying::CurrentCarrying(const BuiltLayout& built)
    : stretches_(built.conductors.size()), gutter_(built.conductors.size()) {
    std::map<Key, std::size_t> known;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& one = built.layout.conductors[i];
        const auto [place, isNew] = known.try_emplace(keyOf(one), pieces_.size());
        if (isNew) {
            pieces_.emplace_back();
            counted_.push_back(isPhase(one.phase) || one.phase == Phase::n);
            neutral_.push_back(one.phase == Phase::n);
        }
        pieces_[place->second].push_back(i);
        wholes_.push_back(place->second);
        setStretch(built, i);
    }
    for (std::size_t whole = 0; whole < pieces_.size(); ++whole) {
        if (counted_[whole]) {
            putInRows(whole);
        }
    }
    for (std::size_t i = 0; i < gutter_.size(); ++i) {
        gutter_[i] = countBeside(stretches_[i]);
    }
    for (const auto& users : conductorsAtEntries(built)) {
        std::set<std::size_t> all;
        std::set<std::size_t> phases;
        for (const std::size_t i : users) {
            if (counted_[wholes_[i]]) {
                all.insert(wholes_[i]);
            }
            if (isPhase(built.layout.conductors[i].phase)) {
                phases.insert(wholes_[i]);
            }
        }
        raceways_.push_back({static_cast<int>(all.size()), static_cast<int>(phases.size())});
    }
}

std::vector<std::size_t> CurrentCarrying::update(const BuiltLayout& built,
                                                 const std::vector<std::size_t>& moved) {
    Stretch touched{std::numeric_limits<double>::infinity(),
                    -std::numeric_limits<double>::infinity()};
    const auto touch = [&](const Stretch& one) {
        touched = {std::min(touched.from, one.from), std::max(touched.to, one.to)};
    };
    for (const std::size_t i : moved) {
        const Stretch before = stretches_[i];
        const std::size_t whole = wholes_[i];
        if (counted_[whole]) {
            takeOutOfRows(whole);
        }
        if (setStretch(built, i)) {
            touch(before);
            touch(stretches_[i]);
        }
        if (counted_[whole]) {
            putInRows(whole);
        }
    }
    std::vector<std::size_t> changed;
    for (std::size_t i = 0; i < stretches_.size(); ++i) {
        if (stretches_[i].from > touched.to || stretches_[i].to < touched.from) {
            continue;
        }
        const Count now = countBeside(stretches_[i]);
        if (now != gutter_[i]) {
            gutter_[i] = now;
            changed.push_back(i);
        }
    }
    return changed;
}

}  // namespace gw::checks
