#pragma once

#include <cstddef>
#include <vector>

#include "geometry/built_layout.h"

/// How many conductors carry current beside one another.
namespace gw::checks {

/// Current-carrying conductors at the fullest cross-section every one of them crosses, and in the
/// raceway at every entry. A conductor laid in pieces is one conductor.
class CurrentCarrying {
public:
    explicit CurrentCarrying(const geometry::BuiltLayout& built);

    /// How many neutrals are among them does not follow from the layout: with and without.
    struct Count {
        int withNeutrals = 0;
        int without = 0;
        friend bool operator==(const Count&, const Count&) = default;
    };
    /// REQUIRES a phase conductor.
    Count besides(std::size_t conductor) const { return gutter_[conductor]; }
    Count inRaceway(std::size_t entry) const { return raceways_[entry]; }

    /// Makes the counts those of the built layout as it is, after these conductors moved. Gives
    /// back the conductors, ascending, whose count is another. Cost: a look at every conductor, and
    /// for those beside what moved one at everything beside them.
    std::vector<std::size_t> update(const geometry::BuiltLayout& built,
                                    const std::vector<std::size_t>& moved);

private:
    /// Inches along the gutter.
    struct Stretch {
        double from = 0.0;
        double to = 0.0;
        friend bool operator==(const Stretch&, const Stretch&) = default;
    };

    /// Where conductors begin and end along the gutter, each in order.
    class Row {
    public:
        void put(const Stretch& stretch);
        void take(const Stretch& stretch);
        /// The most that are at one plane of the stretch, both its ends among them.
        int mostWithin(const Stretch& stretch) const;

    private:
        std::vector<double> begins_;
        std::vector<double> ends_;
    };

    /// What one conductor covers, its pieces taken together where they overlap.
    std::vector<Stretch> coveredBy(std::size_t whole) const;
    void putInRows(std::size_t whole);
    void takeOutOfRows(std::size_t whole);
    Count countBeside(const Stretch& stretch) const;
    bool setStretch(const geometry::BuiltLayout& built, std::size_t conductor);

    std::vector<std::size_t> wholes_;               ///< [conductor] -> what it is a piece of
    std::vector<std::vector<std::size_t>> pieces_;  ///< [whole] -> its conductors
    std::vector<bool> counted_;                     ///< [whole] -> phase or neutral
    std::vector<bool> neutral_;                     ///< [whole]
    std::vector<Stretch> stretches_;                ///< [conductor]
    Row withNeutrals_;
    Row without_;
    std::vector<Count> gutter_;
    std::vector<Count> raceways_;
};

}  // namespace gw::checks
