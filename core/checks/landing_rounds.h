#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "geometry/built_layout.h"

/// How many conductors have to be laid in before each, one after the other, kept current while
/// pairs come and go.
namespace gw::checks {

/// first, second: the first comes before the second.
using LandingPair = std::pair<std::size_t, std::size_t>;

class LandingRounds {
public:
    LandingRounds() = default;
    /// pairs: each as often as there is a reason for it.
    LandingRounds(const geometry::BuiltLayout& built, const std::vector<LandingPair>& pairs);

    /// Some block one another all round. Then the rounds say nothing.
    bool knotted() const { return knotted_; }
    /// By round: its conductors' places among all by id, in order.
    const std::vector<std::set<std::size_t>>& rounds() const { return members_; }
    std::size_t conductorAt(std::size_t rank) const { return byRank_[rank]; }

    /// Takes pairs out and puts others in, as often as each is named. Gives back whether any round
    /// is another now. Cost: by the conductors whose rounds change and what they lead to; a knot,
    /// come or gone, costs as much as from nothing.
    bool update(const std::vector<LandingPair>& gone, const std::vector<LandingPair>& come);

private:
    void add(const LandingPair& pair);
    void take(const LandingPair& pair);
    void settleAll();
    bool settle(std::vector<std::size_t> touched);
    std::size_t roundFor(std::size_t conductor) const;
    void move(std::size_t conductor, std::size_t round);

    std::vector<std::size_t> byRank_;
    std::vector<std::size_t> ranks_;
    std::vector<std::map<std::size_t, int>> before_;  ///< [second] first -> reasons
    std::vector<std::map<std::size_t, int>> after_;   ///< [first] second -> reasons
    std::vector<std::size_t> roundOf_;
    std::vector<std::set<std::size_t>> members_;
    bool knotted_ = false;
};

}  // namespace gw::checks
