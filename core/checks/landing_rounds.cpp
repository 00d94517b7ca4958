#include "checks/landing_rounds.h"

#include <algorithm>
#include <numeric>

namespace gw::checks {
namespace {

/// One reason more or less; without any the pair is gone.
void count(std::map<std::size_t, int>& reasons, std::size_t other, int more) {
    const auto at = reasons.try_emplace(other, 0).first;
    at->second += more;
    if (at->second == 0) {
        reasons.erase(at);
    }
}

}  // namespace

LandingRounds::LandingRounds(const geometry::BuiltLayout& built,
                             const std::vector<LandingPair>& pairs)
    : byRank_(built.conductors.size()),
      ranks_(built.conductors.size()),
      before_(built.conductors.size()),
      after_(built.conductors.size()),
      roundOf_(built.conductors.size(), 0) {
    std::iota(byRank_.begin(), byRank_.end(), std::size_t{0});
    std::sort(byRank_.begin(), byRank_.end(), [&](std::size_t a, std::size_t b) {
        return built.layout.conductors[a].id < built.layout.conductors[b].id;
    });
    for (std::size_t rank = 0; rank < byRank_.size(); ++rank) {
        ranks_[byRank_[rank]] = rank;
    }
    for (const LandingPair& pair : pairs) {
        add(pair);
    }
    settleAll();
}

void LandingRounds::add(const LandingPair& pair) {
    count(after_[pair.first], pair.second, 1);
    count(before_[pair.second], pair.first, 1);
}

void LandingRounds::take(const LandingPair& pair) {
    count(after_[pair.first], pair.second, -1);
    count(before_[pair.second], pair.first, -1);
}

std::size_t LandingRounds::roundFor(std::size_t conductor) const {
    std::size_t round = 0;
    for (const auto& [first, reasons] : before_[conductor]) {
        round = std::max(round, roundOf_[first] + 1);
    }
    return round;
}

void LandingRounds::move(std::size_t conductor, std::size_t round) {
    members_[roundOf_[conductor]].erase(ranks_[conductor]);
    members_.resize(std::max(members_.size(), round + 1));
    members_[round].insert(ranks_[conductor]);
    roundOf_[conductor] = round;
}

void LandingRounds::settleAll() {
    knotted_ = false;
    std::fill(roundOf_.begin(), roundOf_.end(), std::size_t{0});
    members_.assign(byRank_.empty() ? 0 : 1, {});
    for (std::size_t rank = 0; rank < byRank_.size(); ++rank) {
        members_.front().insert(members_.front().end(), rank);
    }
    settle(byRank_);
}

/// Until every round follows from those before it. Round a knot they would rise for ever: none is
/// as great as the number of conductors otherwise.
bool LandingRounds::settle(std::vector<std::size_t> touched) {
    bool changed = false;
    while (!touched.empty() && !knotted_) {
        const std::size_t conductor = touched.back();
        touched.pop_back();
        const std::size_t round = roundFor(conductor);
        if (round == roundOf_[conductor]) {
            continue;
        }
        changed = true;
        knotted_ = round >= byRank_.size();
        if (!knotted_) {
            move(conductor, round);
            for (const auto& [second, reasons] : after_[conductor]) {
                touched.push_back(second);
            }
        }
    }
    while (!members_.empty() && members_.back().empty()) {
        members_.pop_back();
    }
    return changed;
}

bool LandingRounds::update(const std::vector<LandingPair>& gone,
                           const std::vector<LandingPair>& come) {
    std::vector<std::size_t> touched;
    for (const LandingPair& pair : gone) {
        take(pair);
        touched.push_back(pair.second);
    }
    for (const LandingPair& pair : come) {
        add(pair);
        touched.push_back(pair.second);
    }
    if (knotted_) {
        settleAll();
        return true;
    }
    return settle(std::move(touched));
}

}  // namespace gw::checks
