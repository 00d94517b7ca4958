#include "checks/bending_force.h"

#include <gtest/gtest.h>

namespace gw::checks {
namespace {

using standards::Edition;
using standards::Metal;

constexpr auto kEdition = Edition::nec2023;

BendingForce of(const char* size, std::optional<Metal> metal = Metal::copper) {
    return bendingForce(units::WireSize::of(size), metal, kEdition);
}

struct StiffRow {
    const char* size;
    int wires;
    Band stiffness;  ///< N m²
    Band moment;     ///< lbf-in
};

void PrintTo(const StiffRow& row, std::ostream* out) {
    *out << row.size << ", " << row.wires << " wires";
}

class StiffnessOfCopper : public testing::TestWithParam<StiffRow> {};

TEST_P(StiffnessOfCopper, IsThatOfItsWires) {
    constexpr double kNewtonSquareMetres = 4.4482216152605 * 0.0254 * 0.0254;  // per lbf-in²
    const auto force = of(GetParam().size);
    EXPECT_NEAR(force.stiffness.least * kNewtonSquareMetres, GetParam().stiffness.least, 1e-3);
    EXPECT_NEAR(
        force.stiffness.greatest * kNewtonSquareMetres, GetParam().stiffness.greatest, 1e-1);
    EXPECT_NEAR(force.moment.least, GetParam().moment.least, 0.01);
    EXPECT_NEAR(
        force.moment.greatest, GetParam().moment.greatest, 0.001 * GetParam().moment.greatest);
}

// Source: arithmetic for n wires of diameter d. 500 kcmil: 117e9 x 37 pi (2.9527e-3)^4 / 64 =
// 16.152 N m²; layers of 6, 12 and 18 wires at d, 2d, 3d: (37 + 48 x 36)/37 = 47.703 times that;
// 54 MPa x 37 d³/6 = 158.75 mm³ x 54 = 75.87 lbf-in; 100 MPa x 6.884 x 158.75 mm³ = 967.2 lbf-in,
// 6.884 being the sum of |y| dA over the wires, integrated numerically and averaged over attitudes.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, StiffnessOfCopper, testing::Values(
    StiffRow{"1/0", 19, { 1.4030,   33.303}, { 10.28,   92.3}},
    StiffRow{"4/0", 19, { 5.6334,  133.72 }, { 29.15,  261.8}},
    StiffRow{"250", 37, { 4.0380,  192.62 }, { 26.82,  342.0}},
    StiffRow{"500", 37, {16.1521,  770.50 }, { 75.87,  967.2}},
    StiffRow{"600", 61, {14.1079, 1124.24 }, { 77.68, 1281.1}},
    StiffRow{"750", 61, {22.0436, 1756.63 }, {108.56, 1790.4}}));
// clang-format on

// Source: arithmetic: 3.3953 x 100/(117000 x 0.11625 in) rad = 1.4303 degrees an inch of 500 kcmil
// copper; 3.3953 x 103/(69000 x 0.11088 in) = 2.6189 degrees an inch of 750 kcmil aluminium.
TEST(Opening, GrowsWithStressAndWithThinnerWires) {
    constexpr double kDegree = 3.14159265358979323846 / 180.0;
    EXPECT_NEAR(of("500").opening / kDegree, 1.4303, 1e-3);
    EXPECT_NEAR(of("750", Metal::aluminium).opening / kDegree, 2.6189, 1e-3);
}

struct PushRow {
    const char* size;
    double proud;
    double free;
    Band push;  ///< lbf
};

void PrintTo(const PushRow& row, std::ostream* out) {
    *out << row.size << ", " << row.proud << " in over " << row.free << " in";
}

class Push : public testing::TestWithParam<PushRow> {};

TEST_P(Push, IsThatOfABeamUntilItYields) {
    const Band push = pushOf(of(GetParam().size), GetParam().proud, GetParam().free);
    EXPECT_NEAR(push.least, GetParam().push.least, 1e-3);
    EXPECT_NEAR(push.greatest, GetParam().push.greatest, 1e-3 * GetParam().push.greatest);
}

// Source: arithmetic of 3 E I proud/free³ and M/free. 500 kcmil, 1 in over 12 in: elastic 9.77 and
// 466.1 lbf, yielding 75.87/12 = 6.323 and 967.2/12 = 80.60 lbf. 4/0, the same: 29.15/12 = 2.429,
// 261.8/12 = 21.82. 500 kcmil, 1/4 in over 18 in: elastic 3 x 5628.3 x 0.25/18³ = 0.7238, x 47.703
// = 34.53 lbf, and it does not yield.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, Push, testing::Values(
    PushRow{"500", 1.0,  12.0, {6.3226, 80.6014}},
    PushRow{"4/0", 1.0,  12.0, {2.4291, 21.8151}},
    PushRow{"500", 0.25, 18.0, {0.7238, 34.5272}},
    PushRow{"500", 0.0,  12.0, {0.0,    0.0}}));
// clang-format on

TEST(BendingForceOfUnknownMetal, HoldsBoth) {
    const auto unknown = of("500", std::nullopt);
    for (const Metal metal : {Metal::copper, Metal::aluminium, Metal::copperCladAluminium}) {
        const auto known = of("500", metal);
        EXPECT_LE(unknown.stiffness.least, known.stiffness.least);
        EXPECT_GE(unknown.stiffness.greatest, known.stiffness.greatest);
        EXPECT_LE(unknown.moment.least, known.moment.least);
        EXPECT_GE(unknown.moment.greatest, known.moment.greatest);
        EXPECT_GE(unknown.opening, known.opening);
    }
}

TEST(PushLaws, MoreProudNeverPushesLessAndLongerNeverMore) {
    const auto force = of("350");
    for (double proud = 0.0; proud < 3.0; proud += 0.25) {
        for (double free = 4.0; free < 30.0; free += 2.0) {
            EXPECT_LE(pushOf(force, proud, free).greatest,
                      pushOf(force, proud + 0.25, free).greatest);
            EXPECT_GE(pushOf(force, proud, free).least, pushOf(force, proud, free + 2.0).least);
        }
    }
}

}  // namespace
}  // namespace gw::checks
