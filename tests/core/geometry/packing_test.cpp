#include "geometry/packing.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace gw::geometry {
namespace {

struct EqualCircles {
    std::size_t count;
    double ratio;  ///< bore over diameter of the best packing
};

void PrintTo(const EqualCircles& row, std::ostream* out) {
    *out << row.count << " circles";
}

class BestPackings : public ::testing::TestWithParam<EqualCircles> {};

TEST_P(BestPackings, AreFoundWithinOnePercent) {
    const std::vector<double> diameters(GetParam().count, 1.0);
    EXPECT_NEAR(boreNeeded(diameters), GetParam().ratio, 0.01 * GetParam().ratio);
}

// Source: proven optimal packings of equal circles in a circle, closed forms: 2: 2; 3: 1 + 2/sqrt
// 3; 4: 1 + sqrt 2; 5: 1 + sqrt(2 (1 + 1/sqrt 5)); 6 and 7: 3; 8: 1 + 1/sin(pi/7).
INSTANTIATE_TEST_SUITE_P(
    Rows,
    BestPackings,
    ::testing::Values(EqualCircles{1, 1.0},
                      EqualCircles{2, 2.0},
                      EqualCircles{3, 1.0 + 2.0 / std::sqrt(3.0)},
                      EqualCircles{4, 1.0 + std::sqrt(2.0)},
                      EqualCircles{5, 1.0 + std::sqrt(2.0 * (1.0 + 1.0 / std::sqrt(5.0)))},
                      EqualCircles{6, 3.0},
                      EqualCircles{7, 3.0},
                      EqualCircles{8, 1.0 + 1.0 / std::sin(3.14159265358979 / 7.0)}));

void expectApartAndInside(const std::vector<double>& diameters, double bore) {
    const auto places = packCircles(diameters, bore);
    ASSERT_TRUE(places) << toLine(places.error());
    ASSERT_EQ(places->size(), diameters.size());
    for (std::size_t i = 0; i < diameters.size(); ++i) {
        const auto& a = (*places)[i];
        EXPECT_LE(std::hypot(a.u, a.v) + diameters[i] / 2, bore / 2 + 1e-3);
        for (std::size_t j = 0; j < i; ++j) {
            const auto& b = (*places)[j];
            EXPECT_GE(std::hypot(a.u - b.u, a.v - b.v), (diameters[i] + diameters[j]) / 2);
        }
    }
}

TEST(Packing, UnequalCirclesLieApartAndInside) {
    std::mt19937 random(20231);
    std::uniform_real_distribution<double> diameter(0.2, 1.2);
    for (int scene = 0; scene < 60; ++scene) {
        std::vector<double> diameters(2 + std::size_t(scene) % 11);
        for (auto& value : diameters) {
            value = diameter(random);
        }
        SCOPED_TRACE("seed 20231, scene " + std::to_string(scene));
        expectApartAndInside(diameters, boreNeeded(diameters));
    }
}

// NFPA 70 Chapter 9 Table 1: over two conductors fill 40 % of the raceway, two 31 %, one 53 %. A
// lawful raceway always has room for its conductors as circles; mixed sizes up to 4 to 1.
TEST(Packing, LawfulFillsOfMixedSizesFit) {
    std::mt19937 random(31);
    const auto share = [&random] { return double(random()) / 4294967295.0; };
    for (int scene = 0; scene < 400; ++scene) {
        std::vector<double> diameters(1 + std::size_t(scene) % 16);
        double squares = 0.0;
        for (auto& value : diameters) {
            value = 0.3 + 0.9 * share();
            squares += value * value;
        }
        const std::size_t count = diameters.size();
        const double percent = count == 1 ? 0.53 : count == 2 ? 0.31 : 0.40;
        SCOPED_TRACE("seed 31, scene " + std::to_string(scene));
        expectApartAndInside(diameters, std::sqrt(squares / percent));
    }
}

// Closed forms of the proven optima, to the promised 1e-3 in and the hairs across the bore: at most
// four half hairs of 1e-3 in a way, twice.
TEST(Packing, SmallGroupsOfEqualCirclesNeedTheLeastBoreThereIs) {
    const std::vector<std::pair<std::size_t, double>> rows = {
        {2, 2.0}, {3, 1.0 + 2.0 / std::sqrt(3.0)}, {4, 1.0 + std::sqrt(2.0)}, {7, 3.0}};
    for (const auto& [count, ratio] : rows) {
        EXPECT_NEAR(boreNeeded(std::vector<double>(count, 1.0)), ratio, 5e-3) << count;
    }
}

TEST(Packing, TwoLieSideBySideAndThreeOnABase) {
    const auto two = packTightly(std::vector<double>{1.0, 0.5}).places;
    EXPECT_NEAR(two[0].u, -0.25, 2e-3);  // both against a bore of 1.5: centres at -0.25 and 0.5
    EXPECT_NEAR(two[1].u, 0.5, 2e-3);
    EXPECT_EQ(two[0].v, 0.0);
    EXPECT_EQ(two[1].v, 0.0);
    const auto three = packTightly(std::vector<double>(3, 1.0)).places;
    EXPECT_NEAR(three[0].u, 0.0, 1e-9);
    EXPECT_NEAR(three[0].v, 1.0 / std::sqrt(3.0), 2e-3);  // centres of a triangle of side 1
    EXPECT_NEAR(three[1].v, three[2].v, 1e-9);
    EXPECT_NEAR(std::abs(three[1].u), 0.5, 2e-3);
}

TEST(Packing, PlacesFollowTheirCirclesWhateverTheSlots) {
    const std::vector<double> diameters = {0.3, 0.9, 0.5, 0.7, 0.4, 0.6};
    const std::vector<std::size_t> order = {4, 2, 0, 5, 1, 3};
    std::vector<double> shuffled;
    for (const std::size_t i : order) {
        shuffled.push_back(diameters[i]);
    }
    const auto plain = packTightly(diameters);
    const auto moved = packTightly(shuffled);
    EXPECT_EQ(plain.bore, moved.bore);
    for (std::size_t i = 0; i < order.size(); ++i) {
        EXPECT_EQ(moved.places[i].u, plain.places[order[i]].u);
        EXPECT_EQ(moved.places[i].v, plain.places[order[i]].v);
    }
}

TEST(Packing, EverySlotTakesItsOwnPlace) {
    const auto places = packTightly(std::vector<double>(9, 0.5)).places;
    ASSERT_EQ(places.size(), 9U);
    for (std::size_t i = 0; i < places.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            EXPECT_GT(std::hypot(places[i].u - places[j].u, places[i].v - places[j].v), 0.5);
        }
    }
}

TEST(Packing, ManyCirclesStillLieApartAndInside) {
    const std::vector<double> diameters(100, 0.352);
    expectApartAndInside(diameters, boreNeeded(diameters));
}

TEST(Packing, FourLieInASquareWithSidesAlongTheAxes) {
    const std::vector<double> diameters(4, 0.817);
    const auto places = packCircles(diameters, 3.09);
    ASSERT_TRUE(places);
    for (const auto& place : *places) {
        EXPECT_NEAR(std::abs(place.u), 0.4085, 2e-3);
        EXPECT_NEAR(std::abs(place.v), 0.4085, 2e-3);
    }
}

TEST(Packing, SameDiametersGiveTheSamePlaces) {
    const std::vector<double> diameters = {0.817, 0.5, 0.642, 0.642, 0.3};
    const auto once = packCircles(diameters, 3.0);
    const auto again = packCircles(diameters, 4.0);
    ASSERT_TRUE(once && again);
    for (std::size_t i = 0; i < once->size(); ++i) {
        EXPECT_EQ((*once)[i].u, (*again)[i].u);
        EXPECT_EQ((*once)[i].v, (*again)[i].v);
    }
}

TEST(Packing, TooSmallABoreNamesTheOneNeeded) {
    const std::vector<double> diameters(4, 1.0);
    const auto places = packCircles(diameters, 2.2);
    ASSERT_FALSE(places);
    EXPECT_EQ(places.error().code, ErrorCode::outOfRange);
    EXPECT_NE(places.error().expected.find("2.41"), std::string::npos) << places.error().expected;
}

TEST(Packing, NothingToPackIsNoPlaces) {
    EXPECT_TRUE(packCircles({}, 1.0)->empty());
}

}  // namespace
}  // namespace gw::geometry
